"""Findings in full, a photograph at the left of each, and photographs that stand by themselves."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import BIG, CONTENT, HEAD, LISTED, MM, SMALL, TEXT, Gap, flowing, para
from inspector.sheet.draw.setting import RULED, Running, abreast, graded, labelled, lettered, part, sized, stack
from inspector.sheet.draw.shapes import Photo, Rule
from inspector.sheet.draw.signs import Grade, Sign
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from inspector.sheet.blocks import Entry, Expectation, FindingsBlock, Picture, Row, Voice

PHOTO_WIDE, PHOTO_HIGH = 34.6 * MM, 46 * MM
SIGN = 6.2 * MM
BETWEEN = 3 * MM
BESIDE, ACROSS = 2, 3  # photographs beside a finding, and abreast below it


def findings(block: FindingsBlock, key: str) -> Iterator[Any]:
    """The heading with the first finding, then the others; a page that goes on says so."""
    heading = lettered(block.title, block.note, BIG)
    heading.mark = Mark(key, block.title)
    begin = [heading, Running(block.title, _continued(block.note))]
    begin[1].head = True
    if not block.entries:
        yield stack([heading, part([], [para(block.none)])])
        return
    first, *others = (_entry(entry) for entry in block.entries)
    yield stack([*begin, first])
    yield from others
    yield Running()


def _continued(note: str) -> str:
    return tr("continued; {note}", note=note)


def _entry(entry: Entry) -> Beside:
    said = para(entry.word, bold=True)
    word = Beside([Sign(entry.sign, SIGN, 16)], [Gap(0.4), said], at=11.4 * MM, gap=0.6 * MM)
    number = Beside([para(str(entry.number), HEAD, bold=True)], [word], at=8 * MM, gap=0)
    number.head = bool(entry.pictures)
    left: list[Any] = [number, Gap(1)]
    beside, below = _shared_out(entry.pictures)
    for picture in beside:
        left += [*single(picture, PHOTO_WIDE, PHOTO_HIGH), Gap(1.4)]
    right: list[Any] = [_named(entry), Gap(0.6)]
    if entry.expected:
        right.append(labelled(tr("Expected"), list(expected(entry.expected, LISTED)), size=LISTED))
    for voice in entry.voices:
        right += _voice(voice, alone=len(entry.voices) == 1)
    right += pictures(below, CONTENT, ACROSS)
    mark = Mark(f"finding-{entry.number}", f"{entry.number} {entry.word}: {entry.name}", 1)
    return Beside(left, right, rule=RULED, above=1.8 * MM, below=1.6 * MM, whole=True, mark=mark)


def _shared_out(shown: tuple[Picture, ...]) -> tuple[tuple[Picture, ...], tuple[Picture, ...]]:
    """The photographs beside the words, and those abreast below them: all but the first where they are many."""
    return (shown, ()) if len(shown) <= BESIDE else (shown[:1], shown[1:])


def _named(entry: Entry) -> Beside:
    """The name, at its right who says so where that is one person."""
    name = para(entry.name, max(SMALL, sized(entry.name, HEAD)), bold=True)
    said = entry.voices[0].said if len(entry.voices) == 1 else ""
    line = Beside([name], [Gap(1.2), para(said, SMALL, soft=True, right=True)], at=66 * MM) if said else stack([name])
    line.head = True
    return line


def _voice(voice: Voice, *, alone: bool) -> list[Any]:
    """What one person says; who that is stands first where there are several."""
    said = [_row(row) for row in voice.rows]
    if alone or not voice.said:
        return said
    return [Rule(hair=True), Gap(0.8), para(voice.said, SMALL, soft=True), Gap(0.4), *said]


def _row(row: Row) -> Beside:
    said = flowing(row.said.strong, row.said.words, row.small, size=LISTED)
    return labelled(row.label, said, size=LISTED) if row.label else Beside([], said, at=0, gap=0, below=0.9 * MM)


def expected(forms: Iterable[Expectation], size: float = TEXT) -> Iterator[Any]:
    """Each form that may be right with its one source behind it, several one under the other; what is noted last."""
    for number, form in enumerate(forms):
        if number:
            yield Gap(0.5)
        first, *others = form.sources or (None,)
        if first and not others:
            said = flowing("", form.words + ".", first.words, size=size)
            yield Beside([Grade(first.grade, size * 1.28)], said, at=5.6 * MM, gap=0)
        else:
            yield para(form.words, size)
            yield from (graded(cited.grade, cited.words) for cited in form.sources)
        if form.note:
            yield para(form.note, SMALL, soft=True)


def single(picture: Picture, wide: float, high: float) -> Iterator[Any]:
    """The photograph no larger than this and its caption kept together, or the sentence why it is not there."""
    if picture.jpeg is None:
        yield para(picture.missing, SMALL)
        return
    photo = Photo(picture, wide, high)
    photo.head = True
    yield photo
    yield Gap(0.6)
    yield para(picture.caption, SMALL, soft=True, tight=True)


def pictures(shown: tuple[Picture, ...], width: float, across: int) -> list[Any]:
    """Photographs so many across, each with its caption."""
    wide = (width - (across - 1) * BETWEEN) / across
    return abreast([list(single(picture, wide, PHOTO_HIGH)) for picture in shown], across, width, BETWEEN, 1.4 * MM)
