"""Tables of figures, headed again on every page, with the sentences before and after them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import LABEL, LISTED, MM, SMALL, TEXT, WIDE, Gap, flowing, para
from inspector.sheet.draw.setting import RULED, Running, part, stack
from inspector.sheet.draw.shapes import Rule
from inspector.sheet.draw.signs import Grade
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.figure_blocks import FigureRow, FiguresBlock, HistoryBlock, SourceListBlock

BETWEEN = 2 * MM
INWARD = 5 * MM
BEGIN = 2  # rows that stay with the head of their table
KEPT = 80 * MM  # a row with all that belongs to it is not parted while it is lower than this
WHEN, WHO = 36 * MM, 34 * MM


def figures(block: FiguresBlock, key: str) -> list[Any]:
    """Title and sentences, the table, and what it rests on; a table that goes on is headed again."""
    begin: list[Any] = [titled(block.title, block.lines, key)]
    rows = list(_rows(block))
    if rows:
        more = tr("{title}, continued", title=block.title)
        running = Running(block.title, again=lambda: stack([para(more, LISTED, bold=True), _heads(block)]))
        running.head = True
        begin += [running, _heads(block)]
    pieces = [_together([*begin, *rows[:BEGIN]]), *rows[BEGIN:]]
    if rows:
        pieces.append(Running())
    after: list[Any] = [Gap(1.2), *(para(line, LISTED) for line in block.after)] if block.after else []
    if block.notes:
        after += [Gap(1), para(" ".join(block.notes), SMALL, soft=True, tight=True)]
    return [*pieces, *after, Gap(3)]


def _together(pieces: list[Any]) -> Beside:
    """Pieces that are not parted while they are low."""
    return Beside([], pieces, at=0, gap=0, whole=True, short=KEPT)


def titled(title: str, lines: tuple[str, ...], key: str) -> Beside:
    """The title in the label column under a rule, the sentences beside it; kept with what follows."""
    said: list[Any] = [para(line, LISTED) for line in lines]
    if not said:
        return _alone(title, key)
    head = Beside([para(title, bold=True)], said, at=LABEL, rule=RULED, above=2.6 * MM, below=1.2 * MM,
                  mark=Mark(key, title))  # fmt: skip
    head.head = True
    return head


def _alone(title: str, key: str) -> Beside:
    head = Beside([], [para(title, bold=True)], at=0, gap=0, rule=RULED, above=2.6 * MM, below=1.2 * MM,
                  mark=Mark(key, title))  # fmt: skip
    head.head = True
    return head


def _heads(block: FiguresBlock) -> Beside:
    """The names of the columns over a line."""
    cells = [para(head, SMALL, soft=True, right=True, tight=True) for head in block.heads]
    line = _columns([para(block.first, SMALL, soft=True, tight=True)], cells, block.column * MM)
    heads = Beside([], [line, Gap(0.4), Rule(0.5)], at=0, gap=0, below=0.8 * MM)
    heads.head = True
    return heads


def _rows(block: FiguresBlock) -> Iterator[Beside]:
    """A row with those moved in under it as one piece, which is not parted while it is short."""
    group: list[Any] = []
    for row in block.rows:
        if group and not row.level:
            yield _together(group)
            group = []
        group.append(_row(row, block.column * MM))
    if group:
        yield _together(group)


def _row(row: FigureRow, column: float) -> Beside:
    size = TEXT if row.strong else LISTED
    cells = [para(cell, size, bold=row.strong, right=True, tight=True) for cell in row.cells]
    name: list[Any] = [para(row.name, size, bold=row.strong or (not row.level and bool(row.said)), tight=True)]
    if row.said:
        name += [para(row.said, SMALL, soft=True, tight=True)]
    inward = Beside([], name, at=INWARD, gap=0) if row.level else Beside([], name, at=0, gap=0)
    line = _columns([inward], cells, column)
    return Beside([], [line, Gap(0.7), Rule(hair=True)], at=0, gap=0, below=0.7 * MM, whole=True)


def _columns(name: list[Any], cells: list[Any], column: float) -> Beside:
    """The name at the left, each cell in its column at the right."""
    rest: list[Any] = []
    for cell in reversed(cells):
        rest = [Beside([cell], rest, at=column, gap=BETWEEN)]
    at = WIDE - len(cells) * column
    return Beside(name, rest, at=at, gap=BETWEEN) if cells else Beside([], name, at=0, gap=0)


def source_list(block: SourceListBlock, key: str) -> list[Any]:
    """Each source behind the strokes of its grade."""
    rows = [
        Beside([Grade(row.grade, LISTED * 1.28)], flowing("", row.words, row.small, size=LISTED), at=5.6 * MM, gap=0,
               below=0.6 * MM, whole=True)
        for row in block.rows
    ]  # fmt: skip
    note: list[Any] = [para(block.note, SMALL, soft=True), Gap(0.8)] if block.note else []
    return [part([para(block.title, bold=True)], [*note, *rows], Mark(key, block.title))]


def history(block: HistoryBlock, key: str) -> list[Any]:
    """A line a change: when, who, what; headed again on a new page."""
    head = titled(block.title, (block.note,) if block.note else (), key)
    running = Running(block.title, tr("continued"))
    running.head = True
    rows = [_change(row) for row in block.rows]
    return [stack([head, running, *rows[:1]]), *rows[1:], Running(), Gap(3)]


def _change(row: tuple[str, str, str]) -> Beside:
    when, who, what = row
    said = Beside([para(who, SMALL, tight=True)], [para(what, SMALL, tight=True)], at=WHO, gap=BETWEEN)
    return Beside([para(when, SMALL, soft=True, tight=True)], [said], at=WHEN, gap=BETWEEN, whole=True)

