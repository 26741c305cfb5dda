"""A composed sheet as plain text, for reading aloud, searching and comparing."""

from __future__ import annotations

from typing import TYPE_CHECKING
from unicodedata import category

from inspector.sheet import blocks as b
from inspector.sheet import figure_text
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

FIRST = "among the first, if there are only ten minutes"
GRADE_SIGNS = ("(no grade)", "(grade 1)", "(grade 2)", "(grade 3)")


def as_text(sheet: b.Sheet) -> str:
    """The whole sheet in order, one blank line between its parts."""
    parts = ["\n".join((sheet.title, *sheet.stamp))]
    parts += ["\n".join(block_lines(block)) for block in sheet.blocks]
    return shown("\n\n".join((*parts, sheet.foot))) + "\n"


def block_lines(block: b.Block) -> list[str]:
    """The lines of one block, its title first; two spaces before a line that belongs to the one above."""
    return [line for line in _lines(block) if line.strip()]


def shown(text: str) -> str:
    """The text with the number of each character that would steer a screen in its place."""
    return "".join(_shown(char) for char in text)


def _shown(char: str) -> str:
    """The character, or its number where it would steer a screen instead of being read."""
    steers = category(char) in ("Cc", "Cs") or char in "\u202a\u202b\u202c\u202d\u202e"
    return f"[U+{ord(char):04X}]" if steers and char not in "\n\t" else char


def _lines(block: b.Block) -> Iterable[str]:
    return next(write for kind, write in WRITERS if isinstance(block, kind))(block)


def _head(block: b.Head) -> Iterator[str]:
    yield from (block.name, str(block.claimed), *block.lines)


def _safety(block: b.SafetyBlock) -> Iterator[str]:
    yield from (block.title, *block.findings, block.not_seen, block.caution)


def _seen(block: b.SeenBlock) -> Iterator[str]:
    yield from (block.title, f"{block.percent} % {block.coverage}", block.total)
    yield from (f"  {count.number} {count.word}" for count in block.counts)


def _numbers(block: b.NumbersBlock) -> Iterator[str]:
    yield block.title
    for row in block.rows:
        said = f"{row.place}: {row.typed}" if row.typed else row.place
        yield "  " + "; ".join(part for part in (said, row.says, row.how) if part)
        for read in row.reads:
            yield f"    {read.words}"
            yield from (f"      {cited(source)}" for source in read.sources)
            yield f"      {read.note}"
        yield from ("    " + more for more in row.more)
    yield block.note


def _stands(block: b.StandsBlock) -> Iterator[str]:
    yield block.title
    for row in block.rows:
        indent = "    " if isinstance(block, b.PapersBlock) and row.sign else "  "
        yield f"{indent}{row.about}: {row.says}"
        yield f"{indent}  {graded(row.detail, row.grade)}"
    yield block.note


def graded(words: str, grade: int | None) -> str:
    """The words, and the grade of their source where they have one."""
    return f"{words} {tr(GRADE_SIGNS[grade])}" if words and grade is not None else words


def _years(block: b.YearsBlock) -> Iterator[str]:
    yield from (block.title, block.sentence)
    for row in block.rows:
        yield f"  {row.name}: {row.years}" + (f"; {row.note}" if row.note else "")
    yield from (f"  {line}" for line in (*block.lines, " ".join(block.reasons), *block.weight[:1]))
    yield from (f"    {name}: {'; '.join(cells)}" for name, cells in block.table)
    yield "  " + " ".join(block.weight[1:])


def _not_examined(block: b.NotExaminedBlock) -> Iterator[str]:
    yield block.title
    yield from (f"  {group.word}: {group.joined()}" for group in block.groups)
    yield block.closing


def _score(block: b.ScoreBlock) -> Iterator[str]:
    yield from (block.title, block.coverage, f"{block.whole.name}: {block.whole.says}")
    for name, rows in block.tables:
        yield name
        yield from (f"  {row.name}: {row.says}" for row in rows)
    yield from (block.policy, *block.reasons)


def cited(source: b.Cited) -> str:
    """A source with its grade in words."""
    return graded(source.words, source.grade)


def _sources(block: b.SourcesBlock) -> Iterator[str]:
    yield from (block.title, *(f"  {cited(grade)}" for grade in block.grades))


def _source_list(block: b.SourceListBlock) -> Iterator[str]:
    yield from (block.title, block.note)
    for row in block.rows:
        yield f"  {graded(row.words, row.grade)}"
        yield f"    {row.small}"


def _expected(expected: Iterable[b.Expectation]) -> Iterator[str]:
    for one in expected:
        yield f"  {tr('Expected')}: {one.words}"
        yield from (f"    {cited(source)}" for source in one.sources)
        yield f"    {one.note}"


def _rows(rows: Iterable[b.Row]) -> Iterator[str]:
    for row in rows:
        yield "  " + (f"{row.label}: {row.said}" if row.label else str(row.said))
        yield "    " + row.small


def _findings(block: b.FindingsBlock) -> Iterator[str]:
    yield from (block.title, block.note, block.none)
    for entry in block.entries:
        yield f"{entry.number} {entry.word}: {entry.name}"
        yield from _expected(entry.expected)
        for voice in entry.voices:
            yield from _rows(voice.rows)
            yield f"  {tr('Said by')}: {voice.said}" if voice.said else ""
        yield from (f"  {picture.missing or picture.caption}" for picture in entry.pictures)


def _list(block: b.ListBlock) -> Iterator[str]:
    yield block.title
    yield block.note
    if not block.numbered:
        yield from _rows(block.rows)
        return
    for number, row in enumerate(block.rows, 1):
        yield f"  {number} {row.said}"
        yield f"    {row.small}"


def _pictures(block: b.PicturesBlock) -> Iterator[str]:
    yield from (block.title, *(f"  {picture.missing or picture.caption}" for picture in block.pictures))


def _reply(block: b.ReplyBlock) -> Iterator[str]:
    yield from (block.title, block.invites)


def _signed(block: b.SignatureBlock) -> Iterator[str]:
    yield block.title
    for one in block.signatures:
        yield f"  {one.who}: {one.state}"
        if one.typed:
            yield f"    {one.typed}"
        yield f"    {one.statement}"
    yield block.note


def _station(block: b.StationBlock) -> Iterator[str]:
    yield from (block.title, block.first)
    for item in block.items:
        yield f"{item.number} {item.name}: {item.question}"
        yield item.caution
        yield from _expected(item.expected)
        yield from _rows(item.rows)
        yield from (f"  {blank}: ____" for blank in item.blanks)
        yield f"  {tr('Mark')}: ____  {tr('Note')}: ____"


def _table(block: b.TableBlock) -> Iterator[str]:
    yield from (block.title, block.first, "; ".join(block.heads))
    for item in block.items:
        yield f"  {item.number} {item.name}" + (f": {item.expected}" if item.expected else "") + " ____ ____"
        yield from (f"    {word}" for word in (item.caution, tr(FIRST) if item.first else "") if word)


def _blanks(block: b.BlanksBlock) -> Iterator[str]:
    yield from (block.title, block.note, *(f"  {blank} ____" for blank in block.blanks))


WRITERS: tuple[tuple[type, Callable[..., Iterable[str]]], ...] = (
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
    (b.ListBlock, _list),
    (b.PicturesBlock, _pictures),
    (b.ReplyBlock, _reply),
    (b.SignatureBlock, _signed),
    (b.StationBlock, _station),
    (b.TableBlock, _table),
    (b.BlanksBlock, _blanks),
    (b.StoryBlock, figure_text.story),
    (b.ContentsBlock, figure_text.contents),
    (b.FiguresBlock, figure_text.figures),
    (b.RangesBlock, figure_text.ranges),
    (b.SourceListBlock, _source_list),
    (b.HistoryBlock, figure_text.history),
    (b.ViewsBlock, figure_text.views),
)
