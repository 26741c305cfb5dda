"""Numbers beside each other: two ruled lines for how they stand, then the words and why."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.sheet.blocks import PapersBlock
from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import INK, LISTED, MM, SMALL, Gap, Piece, flowing, para, rich
from inspector.sheet.draw.setting import part
from inspector.sheet.draw.signs import Grade

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.blocks import StandRow, StandsBlock

HIGH, WIDE = 24.0, 26.0  # the field on which the two lines are drawn
LINE, SECOND = 5.0, 5.0  # how thick a line is, and where the second one's foot lies
HOLLOW = 1.5  # the outline of a hollow line
FIRST = 15.0
# left, drop, width and height of what the second line is made of
PIECES = {
    "agree as read": ((0, 0, 26, 5),),
    "agree if": ((0, 0, 15, 5), (21, 0, 5, 5)),
    "close as usual": ((0, 0, 20, 5),),
    "unusual gap": ((0, 0, 5, 5), (21, 0, 5, 5)),
    "differ, as built": ((9, 0, 17, 5),),
    "one slip": ((0, 0, 11, 5), (10, 4, 8, 5), (17, 0, 9, 5)),
    "cannot compare": tuple((left, 1, 3, 3) for left in (0, 7.67, 15.33, 23)),
}
SIGNED = 8 * MM  # the room of a sign at the left of its words
INDENT = 6 * MM  # how far what a paper quotes is moved in


class Lines(Piece):
    """Two ruled lines, the second of which says how two numbers stand, mid in a line of words of this height."""

    def __init__(self, sign: str, height: float, high: float = 3.6 * MM) -> None:
        super().__init__(high * WIDE / HIGH, height)
        self.sign, self.unit, self.high = sign, high / HIGH, high

    def draw(self) -> None:
        """The first line whole, the second by the sign: hollow where the two do not agree."""
        canvas = self.canv
        canvas.saveState()
        canvas.translate(0, (self.height - self.high) / 2)
        canvas.scale(self.unit, self.unit)
        canvas.setFillColor(INK)
        canvas.setStrokeColor(INK)
        canvas.rect(0, FIRST, WIDE, LINE, stroke=0, fill=1)
        for left, drop, wide, high in PIECES.get(self.sign, ()):
            canvas.rect(left, SECOND + LINE - drop - high, wide, high, stroke=0, fill=1)
        if self.sign not in PIECES:
            canvas.setLineWidth(HOLLOW)
            canvas.rect(HOLLOW / 2, SECOND + HOLLOW / 2, WIDE - HOLLOW, LINE - HOLLOW, stroke=1, fill=0)
        canvas.restoreState()


def stands(block: StandsBlock, key: str) -> list[Any]:
    """The rows beside the title, what a paper quotes moved in below it."""
    rows: list[Any] = []
    papers = isinstance(block, PapersBlock)
    for row in block.rows:
        if rows and not (papers and row.sign):
            rows.append(Gap(0.7))
        rows.append(_row(row, inward=INDENT if papers and row.sign else 0.0))
    note: list[Any] = [Gap(0.6), para(block.note, SMALL, soft=True)] if block.note else []
    return [part([para(block.title, bold=True)], [*rows, *note], Mark(key, block.title))]


def _row(row: StandRow, inward: float = 0.0) -> Beside:
    if not row.sign:
        said = [*flowing(row.about + ":", row.says, size=LISTED), *_why(row)]
        return Beside([], said, at=0, gap=0, below=0.5 * MM, whole=True)
    sign = Beside([], [Lines(row.sign, LISTED * 1.17)], at=inward, gap=0)
    said = [rich((row.about + ":", False), (row.says, True), size=LISTED), *_why(row)]
    return Beside([sign], said, at=inward + SIGNED, gap=0, below=0.5 * MM, whole=True)


def _why(row: StandRow) -> Iterator[Any]:
    """The rule behind the strokes of its source, or only the words."""
    if not row.detail:
        return
    said = para(row.detail, SMALL, soft=True, tight=True)
    if row.grade is None:
        yield said
    else:
        yield Beside([Grade(row.grade, SMALL * 1.15)], [said], at=5.6 * MM, gap=0)
