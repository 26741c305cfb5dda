"""From the blocks of a sheet to what is drawn, in the order of the blocks."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Any

from inspector.sheet import blocks as b
from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.figures import figures, history, source_list
from inspector.sheet.draw.finding import expected, findings, pictures
from inspector.sheet.draw.first import contents, views
from inspector.sheet.draw.first import story as first_story
from inspector.sheet.draw.kit import (
    BIG,
    LABEL,
    LISTED,
    MM,
    NAME,
    SIGN_INKS,
    SMALL,
    WIDE,
    Gap,
    flowing,
    para,
    rich,
)
from inspector.sheet.draw.machine import Machine
from inspector.sheet.draw.ranges import ranges
from inspector.sheet.draw.setting import RULED, Barred, abreast, graded, labelled, part, sized, stack
from inspector.sheet.draw.shapes import Band, Coverage, Drawn, Figures, Rule, Ruled
from inspector.sheet.draw.signs import Sign
from inspector.sheet.draw.stands import stands
from inspector.sheet.draw.svg import read_outline
from inspector.sheet.draw.table import table
from inspector.sheet.draw.walk import blanks, blanks_across, station
from inspector.sheet.draw.years import years

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

PICTURED = 150 * MM  # what was seen is not parted from its drawing while both are lower than this
TO_WRITE = 90 * MM  # room to write and to sign is not parted while it is shorter than this
GRADES_AT = 32 * MM, 30 * MM, 55 * MM, 36 * MM  # how wide each grade stands, the last one first


def story(sheet: b.Sheet) -> list[Any]:
    """Everything of the sheet as pieces that flow over pages."""
    pieces: list[Any] = []
    for number, block in enumerate(sheet.blocks):
        draw = next(draw for kind, draw in DRAWERS if isinstance(block, kind))
        pieces += draw(block, f"part-{number}")
    return pieces


def _head(block: b.Head, key: str) -> list[Any]:
    size = sized(block.name, NAME)
    said = rich((block.claimed.strong, True), (block.claimed.words, False))
    return [para(block.name, size, bold=True), Gap(2.5), said, *(para(line) for line in block.lines), Gap(4)]


def _safety(block: b.SafetyBlock, key: str) -> list[Any]:
    title = para(block.title, 14.5, bold=True)
    signed = Beside([Sign(block.sign, 5.6 * MM, 18.5)], [title], at=10.4 * MM, gap=0) if block.sign else title
    said = [signed, Gap(1.2), *(para(sentence, bold=True) for sentence in block.findings)]
    said += [Gap(1.2), *(para(text) for text in (block.not_seen, block.caution) if text)]
    return [Barred(said, SIGN_INKS["fail"], Mark(key, block.title)), Gap(5)]


def _seen(block: b.SeenBlock, key: str) -> list[Any]:
    left: list[Any] = [para(block.title, bold=True), Gap(1.5), para(block.total, SMALL, soft=True), Gap(1)]
    for count in block.counts:
        number = para(str(count.number), bold=True, right=True)
        said = Beside([number], [para(count.word)], at=7.4 * MM, gap=1.7 * MM)
        left.append(Beside([Sign(count.sign, 3.5 * MM, 13.4, 6 * MM)], [said], at=6 * MM, gap=0, below=1.6 * MM))
    much = Beside([para(f"{block.percent} %", BIG, bold=True)], [Gap(1.7), para(block.coverage)], at=20 * MM)
    right: list[Any] = [much, Gap(1.5), Coverage(block.percent), Gap(5)]
    outline = read_outline(block.outline) if block.outline else None
    if outline:
        right += [Machine(outline, block.spots), Gap(1)]
    return [part(left, right, Mark(key, block.title), gap=0.5 * MM, short=PICTURED)]


def _numbers(block: b.NumbersBlock, key: str) -> list[Any]:
    rows: list[Any] = []
    for read, group in groupby(block.rows, key=lambda row: bool(row.cells or row.how or row.more)):
        for row in [_number(row) for row in group] if read else [_unread(tuple(group))]:
            rows += [Rule(hair=True), Gap(1.2), row] if rows else [row]
    note: list[Any] = [para(block.note, SMALL, soft=True, tight=True)] if block.note else []
    return [part([para(block.title, bold=True)], [*rows, *note], Mark(key, block.title))]


def _number(row: b.NumberRow) -> Beside:
    says: list[Any] = [para(row.says, LISTED, bold=bool(row.cells))] if row.says else []
    says += expected(row.reads, LISTED)
    says += [para(row.how, SMALL, soft=True, tight=True)] if row.how else []
    figures: list[Any] = [Figures(row.cells)] if row.cells else []
    more = [para(" ".join(row.more), SMALL, soft=True, tight=True)] if row.more else []
    beside = Beside(figures, says, at=34 * MM)
    return Beside([para(row.place)], [beside, *more], at=26 * MM, below=1.2 * MM, whole=True, short=TO_WRITE)


def _unread(rows: tuple[b.NumberRow, ...]) -> Beside:
    """The places of which there is nothing to show, in one line for each thing said of them."""
    said = (rich((says + ":", True), ("; ".join(row.place for row in group) + ".", False))
            for says, group in groupby(rows, key=lambda row: row.says))  # fmt: skip
    return Beside([], list(said), at=0, gap=0, below=1.2 * MM)


def _stands(block: b.StandsBlock, key: str) -> list[Any]:
    return stands(block, key)


def _years(block: b.YearsBlock, key: str) -> list[Any]:
    return years(block, key)


def _not_examined(block: b.NotExaminedBlock, key: str) -> list[Any]:
    said = [
        Beside(
            [Sign(group.sign, 3.5 * MM, 13.4)], [rich((group.word + ":", True), (group.joined(), False), size=LISTED)],
            at=6 * MM, gap=0, below=0.6 * MM,
        )
        for group in block.groups
    ]  # fmt: skip
    return [part([para(block.title, bold=True)], [*said, para(block.closing, LISTED)], Mark(key, block.title))]


def _score(block: b.ScoreBlock, key: str) -> list[Any]:
    whole = [para(block.coverage), Gap(1), _band(block.whole, 38 * MM, 40 * MM)]
    tables = abreast([_table_of_bands(name, rows) for name, rows in block.tables], 2, WIDE, 6 * MM)
    reasons = para(" ".join((block.policy, *block.reasons)), SMALL, soft=True)
    title = para(block.title, bold=True)
    return [part([title], whole, Mark(key, block.title)), stack([*tables, Gap(1.6), reasons, Gap(3)])]


def _table_of_bands(name: str, rows: tuple[b.PartRow, ...]) -> list[Any]:
    title = para(name, LISTED, bold=True)
    title.head = True
    return [title, Gap(0.4), *(_band(row, 29 * MM, 21 * MM) for row in rows)]


def _band(row: b.PartRow, at: float, wide: float) -> Beside:
    band = Band(row.value, row.low, row.high, wide)
    said = Beside([band], [para(row.says, SMALL, tight=True)], at=wide + 3 * MM)
    return Beside([para(row.name, SMALL, tight=True)], [said], at=at, below=0.3 * MM)


def _sources(block: b.SourcesBlock, key: str) -> list[Any]:
    lines: list[Any] = []
    for at, cited in zip(GRADES_AT, reversed(block.grades), strict=False):
        lines = [Beside([graded(cited.grade, cited.words)], lines, at=at)]
    title = para(block.title, bold=True)
    return [Beside([title], lines, at=20 * MM, rule=RULED, above=2.4 * MM, below=2.4 * MM, mark=Mark(key, block.title))]


def _passes(block: b.PassesBlock, key: str) -> list[Any]:
    """The sign and the name of each in the label column, everything else beside them."""
    head = Beside([para(block.title, bold=True)], [para(block.note, SMALL, soft=True)], at=LABEL, rule=RULED,
                  above=2.8 * MM, below=1 * MM, mark=Mark(key, block.title))  # fmt: skip
    rows = [
        Beside(
            [Beside([Sign(block.sign, 3.2 * MM, 11.4)], [para(row.said.strong, LISTED, bold=True)], at=5 * MM, gap=0)],
            flowing("", row.said.words, row.small, size=LISTED), at=LABEL, below=0.7 * MM, whole=True,
        )
        for row in block.rows
    ]  # fmt: skip
    return [stack([_kept(head), *rows[:1]]), *rows[1:], Gap(2.5)]


def _kept(head: Beside) -> Beside:
    head.head = True
    return head


def _wide(block: b.WideBlock, key: str) -> list[Any]:
    said = rich((block.title + ":", True), *_run(block.rows), size=SMALL)
    mark = Mark(key, block.title)
    return [Beside([], [said], at=0, gap=0, rule=RULED, above=2 * MM, below=2.4 * MM, whole=True, mark=mark)]


def _list(block: b.ListBlock, key: str) -> list[Any]:
    mark, title = Mark(key, block.title), para(block.title, bold=True)
    note: list[Any] = [para(block.note, SMALL, soft=True), Gap(0.8)] if block.note else []
    if note:
        note[0].head = bool(block.rows)
    rows = [_listed(block, number, row) for number, row in enumerate(block.rows, 1)]
    if block.running:
        rows = [rich(*_run(block.rows), size=SMALL)] if block.rows else []
    return [part([title], [*note, *rows], mark)]


def _short(block: b.ShortBlock, key: str) -> list[Any]:
    """Small lines close together, or all of them in one paragraph."""
    rows: list[Any] = [rich(*_run(block.rows), size=SMALL)] if block.running and block.rows else []
    if not block.running:
        rows = [
            Beside([para(row.label, SMALL, soft=True, tight=True)],
                   flowing(row.said.strong, row.said.words, row.small, size=SMALL, tight=True), at=30 * MM)
            for row in block.rows
        ]  # fmt: skip
    return [Beside([para(block.title, SMALL, bold=True)], rows, at=LABEL, rule=RULED, above=1.6 * MM, below=1.6 * MM,
                   whole=True, mark=Mark(key, block.title))]  # fmt: skip


def _questions(block: b.QuestionsBlock, key: str) -> list[Any]:
    """Two abreast across the page, one line of the sheet read before the next."""
    note: list[Any] = [para(block.note, SMALL, soft=True)] if block.note else []
    head = Beside([para(block.title, bold=True)], note, at=LABEL, rule=RULED, above=2.6 * MM, below=1 * MM,
                  mark=Mark(key, block.title))  # fmt: skip
    cells = [[_question(number, row)] for number, row in enumerate(block.rows, 1)]
    first, *others = abreast(cells, 2, WIDE, 6 * MM, 0.7 * MM) or [Gap(0)]
    return [stack([_kept(head), first]), *others, Gap(2)]


def _question(number: int, row: b.Row) -> Beside:
    said = flowing(row.said.strong, row.said.words, row.small, size=SMALL, tight=True)
    return Beside([para(str(number), SMALL, bold=True, tight=True)], said, at=6 * MM, gap=1 * MM)


def _run(rows: tuple[b.Row, ...]) -> Iterator[tuple[str, bool]]:
    for row in rows:
        yield from ((row.said.strong, True), (row.said.words, False))


def _listed(block: b.ListBlock, number: int, row: b.Row) -> Any:
    said = flowing(row.said.strong, row.said.words, row.small, size=LISTED)
    if block.numbered:
        return Beside([para(str(number), LISTED, bold=True)], said, at=7 * MM, gap=1 * MM, below=0.5 * MM)
    if row.label:
        return labelled(row.label, said, 34 * MM, size=LISTED)
    return Beside([], said, at=0, gap=0, below=0.7 * MM)


def _pictures(block: b.PicturesBlock, key: str) -> list[Any]:
    title = para(block.title, bold=True)
    title.head = True
    shown = [title, Gap(0.8), *pictures(block.pictures, WIDE, 4)]
    return [Beside([], shown, at=0, gap=0, rule=RULED, above=2 * MM, below=1 * MM, mark=Mark(key, block.title))]


def _reply(block: b.ReplyBlock, key: str) -> list[Any]:
    lines = [Ruled(7.6 * MM) for _ in range(block.lines)]
    right = [para(block.invites, SMALL, soft=True), *lines]
    return [part([para(block.title, bold=True)], right, Mark(key, block.title), short=TO_WRITE)]


def _signatures(block: b.SignatureBlock, key: str) -> list[Any]:
    cells = [_signature(one) for one in block.signatures]
    rows = [
        Beside(cells[n], cells[n + 1] if n + 1 < len(cells) else [], at=70.5 * MM, gap=7 * MM, below=3 * MM, whole=True)
        for n in range(0, len(cells), 2)
    ]
    right = [*rows, para(block.note, SMALL, soft=True)]
    return [part([para(block.title, bold=True)], right, Mark(key, block.title), short=TO_WRITE)]


def _signature(one: b.Signed) -> list[Any]:
    who, state = para(one.who, bold=True), para(one.state, SMALL, soft=True)
    above = [Gap(8.7), para(one.typed), Drawn((), 0.5 * MM)] if one.typed else [Drawn(one.strokes)]
    return [*above, Gap(1), who, state, *((para(one.statement, SMALL),) if one.statement else ())]


def _findings(block: b.FindingsBlock, key: str) -> list[Any]:
    return list(findings(block, key))


def _station(block: b.StationBlock, key: str) -> list[Any]:
    return list(station(block, key))


def _table(block: b.TableBlock, key: str) -> list[Any]:
    return list(table(block, key))


def _blanks(block: b.BlanksBlock, key: str) -> list[Any]:
    if block.across > 1:
        return [blanks_across(block, Mark(key, block.title))]
    title: list[Any] = [para(block.title, bold=True)]
    return [part(title, list(blanks(block)), Mark(key, block.title))]


DRAWERS: tuple[tuple[type, Callable[..., list[Any]]], ...] = (
    (b.Head, _head),
    (b.SafetyBlock, _safety),
    (b.SeenBlock, _seen),
    (b.NumbersBlock, _numbers),
    (b.StandsBlock, _stands),
    (b.YearsBlock, _years),
    (b.NotExaminedBlock, _not_examined),
    (b.ScoreBlock, _score),
    (b.SourcesBlock, _sources),
    (b.FindingsBlock, _findings),
    (b.PassesBlock, _passes),
    (b.WideBlock, _wide),
    (b.ShortBlock, _short),
    (b.QuestionsBlock, _questions),
    (b.ListBlock, _list),
    (b.PicturesBlock, _pictures),
    (b.ReplyBlock, _reply),
    (b.SignatureBlock, _signatures),
    (b.StationBlock, _station),
    (b.TableBlock, _table),
    (b.BlanksBlock, _blanks),
    (b.StoryBlock, first_story),
    (b.ContentsBlock, contents),
    (b.FiguresBlock, figures),
    (b.RangesBlock, ranges),
    (b.SourceListBlock, source_list),
    (b.HistoryBlock, history),
    (b.ViewsBlock, views),
)
