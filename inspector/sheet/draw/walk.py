"""A walk sheet: stations and items with room to write."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.finding import expected
from inspector.sheet.draw.kit import BIG, CONTENT, MM, SMALL, WIDE, Gap, para, rich, width_of
from inspector.sheet.draw.setting import RULED, Running, abreast, labelled, lettered, stack
from inspector.sheet.draw.shapes import Comb, Ruled
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.blocks import BlanksBlock, StationBlock, WalkItem

LINE_HIGH = 8 * MM
BETWEEN = 4 * MM
WHOLE = 120 * MM  # an item is not parted from the lines to write on while it is lower than this


def station(block: StationBlock, key: str) -> Iterator[Any]:
    """The heading with what is said first and the first item, then the others."""
    heading = lettered(block.title, "", BIG)
    heading.mark = Mark(key, block.title)
    running = Running(block.title, tr("continued"))
    running.head = True
    begin: list[Any] = [heading, running]
    if block.first:
        first_said = Beside([], [para(block.first, bold=True)], at=0, gap=0, below=2 * MM)
        first_said.head = True
        begin.append(first_said)
    first, *others = (_item(item) for item in block.items)
    yield stack([*begin, first])
    yield from others
    yield Running()


def _item(item: WalkItem) -> Beside:
    left = [Beside([para(str(item.number), bold=True)], [para(item.name, bold=True)], at=8 * MM, gap=1 * MM)]
    right: list[Any] = [para(item.question), Gap(1)]
    if item.caution:
        right += [para(item.caution, bold=True), Gap(1)]
    right += [labelled(tr("Expected"), list(expected(item.expected)))]
    right += [labelled(row.label, [rich((row.said.strong, True), (row.said.words, False))]) for row in item.rows]
    for blank in item.blanks:
        right += _named_line(blank, CONTENT)
    if item.comb:
        right += [Gap(1), para(tr("Number, figure by figure"), SMALL, soft=True), Comb(8 * MM), Gap(1)]
    mark = Beside([Ruled(LINE_HIGH, tr("Mark"))], [Ruled(LINE_HIGH, tr("Why"))], at=44 * MM, gap=4 * MM)
    right += [Beside([], [mark, Ruled(LINE_HIGH, tr("Note"))], at=0, gap=0, whole=True)]
    return Beside(left, right, rule=RULED, above=2.4 * MM, below=4 * MM, whole=True, short=WHOLE)


def _named_line(word: str, width: float) -> list[Any]:
    """A line to write on behind its word, or under it where the word is long."""
    if width_of(word, SMALL) < 0.6 * width:
        return [Ruled(LINE_HIGH, word)]
    return [Gap(1.5), para(word, SMALL, soft=True), Ruled(6.5 * MM)]


def blanks(block: BlanksBlock, width: float = CONTENT) -> Iterator[Any]:
    """Each named line, or places for figures under each name, as many side by side as the block wants."""
    if block.note:
        yield para(block.note, SMALL, soft=True)
    wide = (width - (block.across - 1) * BETWEEN) / block.across
    cells = [_figure_places(blank) if block.comb else _named_line(blank, wide) for blank in block.blanks]
    yield from abreast(cells, block.across, width, BETWEEN)


def _figure_places(name: str) -> list[Any]:
    said = para(name, SMALL, tight=True)
    said.head = True
    return [Gap(1), said, Comb(8.5 * MM)]


def blanks_across(block: BlanksBlock, mark: Mark) -> Beside:
    """The lines over the whole width, under their title."""
    title = para(block.title, bold=True)
    title.head = True
    return Beside([], [title, Gap(0.6), *blanks(block, WIDE)], at=0, gap=0, rule=RULED, above=2 * MM, below=2.6 * MM,
                  whole=True, mark=mark)  # fmt: skip
