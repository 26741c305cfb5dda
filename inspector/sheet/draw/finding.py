"""Findings in full, a photograph at the left of each, and photographs that stand by themselves."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import BIG, HEAD, MM, SMALL, Gap, flowing, para
from inspector.sheet.draw.setting import RULED, Running, abreast, graded, labelled, lettered, part, stack
from inspector.sheet.draw.shapes import Photo, Rule
from inspector.sheet.draw.signs import Sign
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from inspector.sheet.blocks import Entry, Expectation, FindingsBlock, Picture, Row

PHOTO_WIDE, PHOTO_HIGH = 34.6 * MM, 46 * MM
SIGN = 6.2 * MM
BETWEEN = 3 * MM


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
    left: list[Any] = [Beside([para(str(entry.number), HEAD, bold=True)], [word], at=8 * MM, gap=0), Gap(1.6)]
    for picture in entry.pictures:
        left += [*_picture(picture, PHOTO_WIDE, PHOTO_HIGH), Gap(2)]
    name = para(entry.name, HEAD, bold=True)
    name.head = True
    right: list[Any] = [name, Gap(1.4)]
    if entry.expected:
        right.append(labelled(tr("Expected"), list(expected(entry.expected))))
    for number, voice in enumerate(entry.voices):
        right += [Rule(hair=True), Gap(1.6)] if number else []
        right += [_row(row) for row in voice.rows]
    mark = Mark(f"finding-{entry.number}", f"{entry.number} {entry.word}: {entry.name}", 1)
    return Beside(left, right, rule=RULED, above=2.4 * MM, below=3 * MM, whole=True, mark=mark)


def _row(row: Row) -> Beside:
    said = flowing(row.said.strong, row.said.words)
    if not row.label:
        return Beside([], said, at=0, gap=0, below=1.4 * MM)
    return labelled(row.label, [*said, *((para(row.small, SMALL, soft=True),) if row.small else ())])


def expected(forms: Iterable[Expectation]) -> Iterator[Any]:
    """Each form that may be right, its sources one under the other, what is said about them last."""
    for number, form in enumerate(forms):
        if number:
            yield Gap(1)
        yield para(form.words)
        yield from (graded(cited.grade, cited.words) for cited in form.sources)
        if form.note:
            yield para(form.note, SMALL, soft=True)


def _picture(picture: Picture, wide: float, high: float) -> Iterator[Any]:
    if picture.jpeg is None:
        yield para(picture.missing, SMALL)
        return
    photo = Photo(picture, wide, high)
    photo.head = True
    yield photo
    yield Gap(0.6)
    yield para(picture.caption, SMALL, soft=True)


def pictures(shown: tuple[Picture, ...], width: float, across: int) -> list[Any]:
    """Photographs so many across, each with its caption."""
    wide = (width - (across - 1) * BETWEEN) / across
    return abreast([list(_picture(picture, wide, PHOTO_HIGH)) for picture in shown], across, width, BETWEEN, 2.5 * MM)
