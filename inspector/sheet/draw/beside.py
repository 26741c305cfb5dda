"""Two columns side by side that flow over pages, each on its own."""

from __future__ import annotations

from typing import Any, NamedTuple

from inspector.sheet.draw.kit import INK, LABEL, MM, Piece, clean

SHORT = 40 * MM  # what is to be kept whole and is shorter than this moves to the next page
LONE = 10 * MM  # less than this does not go on to the next page alone


class Mark(NamedTuple):
    """A place that can be reached: its key, its name in the list of contents, and its depth there."""

    key: str
    title: str
    level: int = 0


def cut(pieces: list[Any], canvas: Any, width: float, height: float) -> tuple[list[Any], list[Any]]:
    """What of a column fits into the height, and the rest; a head never stays behind without what it heads."""
    taken: list[Any] = []
    rest, left = list(pieces), height
    while rest:
        high = rest[0].wrapOn(canvas, width, left)[1]
        if high <= left + 0.01:
            taken.append(rest.pop(0))
            left -= high
            continue
        parts = rest[0].splitOn(canvas, width, left)
        if parts:  # one alone where all of it fits but the clear space below it
            taken.append(parts[0])
            rest[:1] = parts[1:]
        break
    while rest and taken and (getattr(taken[-1], "head", False) or getattr(taken[-1], "gap", False)):
        rest.insert(0, taken.pop())
    while rest and getattr(rest[0], "gap", False):
        rest.pop(0)
    return taken, rest


class Beside(Piece):
    """A left and a right column, under an optional rule; the rule is drawn once, and not under the head of a page."""

    def __init__(
        self, left: list[Any], right: list[Any], *, at: float = LABEL, gap: float = 2 * MM, rule: float = 0,
        above: float = 0, below: float = 0, whole: bool = False, mark: Mark | None = None, short: float = SHORT,
    ) -> None:  # fmt: skip
        super().__init__()
        self.left, self.right, self.at, self.between = left, right, at, gap
        self.rule, self.above, self.below, self.whole, self.mark = rule, above, below, whole, mark
        self.short = short

    def _columns(self) -> tuple[tuple[list[Any], float, float], ...]:
        return (self.left, 0.0, self.at - self.between), (self.right, self.at, self.width - self.at)

    def _high(self, column: list[Any], width: float) -> float:
        return sum(float(piece.wrapOn(self.canv, width, 1e6)[1]) for piece in column)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width, and the height of the taller column."""
        if self.width == width and self.height:
            return width, self.height
        self.width = width
        tallest = max(self._high(column, wide) for column, _, wide in self._columns())
        self.height = self.above + tallest + self.below
        return self.width, self.height

    def split(self, width: float, height: float) -> list[Any]:
        """Itself as the part that fits and the part that does not; nothing where too little would stay."""
        self.width = width
        room = height - self.above
        if room <= 0 or (self.whole and self.height < self.short):
            return []
        (left, _, left_wide), (right, _, right_wide) = self._columns()
        first_left, later_left = cut(left, self.canv, left_wide, room)
        first_right, later_right = cut(right, self.canv, right_wide, room)
        if (left and not first_left) or (right and not first_right):
            return []
        if self.whole and len(first_right) > 3 and self._high(later_right, right_wide) < LONE:
            later_right.insert(0, first_right.pop())
        if not later_left and not later_right:
            return [self._part(first_left, first_right, first=True, below=0)]
        first = self._part(first_left, first_right, first=True, below=0)
        return [first, self._part(later_left, later_right, first=False, below=self.below)]

    def _part(self, left: list[Any], right: list[Any], *, first: bool, below: float) -> Beside:
        return Beside(
            left, right, at=self.at, gap=self.between, rule=self.rule if first else 0,
            above=self.above if first else 0, below=below, mark=self.mark if first else None,
        )  # fmt: skip

    def counted(self, canvas: Any) -> None:
        """The page of its mark, and whatever must be known of what stands in it."""
        if self.mark:
            canvas.places[self.mark.key] = canvas.getPageNumber()
        for piece in (*self.left, *self.right):
            piece.drawOn(canvas, 0, 0)

    def draw(self) -> None:
        """The rule, then the left column, then the right."""
        canvas = self.canv
        if self.mark:
            canvas.bookmarkHorizontal(self.mark.key, 0, self.height + 4 * MM)
            canvas.addOutlineEntry(clean(self.mark.title).replace("\n", " "), self.mark.key, self.mark.level, False)
        if self.rule and canvas.absolutePosition(0, self.height)[1] < canvas.text_top - 1:
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(self.rule)
            canvas.line(0, self.height, self.width, self.height)
        for column, left, width in self._columns():
            y = self.height - self.above
            for piece in column:
                high = piece.wrapOn(canvas, width, 1e6)[1]
                y -= high
                piece.drawOn(canvas, left, y)
