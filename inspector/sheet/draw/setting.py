"""Arrangements that several parts of a sheet share."""

from __future__ import annotations

from textwrap import shorten
from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import SHORT, Beside, Mark
from inspector.sheet.draw.kit import HEAD, LABEL, MM, SMALL, TEXT, Gap, Piece, para
from inspector.sheet.draw.signs import Grade

if TYPE_CHECKING:
    from collections.abc import Callable

ROW = 19.5 * MM
RULED = 0.85
HEADING_AGAIN = HEAD
MOST_AGAIN = 70  # characters of a heading that a page begins with again


def sized(name: str, most: float) -> float:
    """The type size for a name: the longer it is, the smaller, so that it stays a few lines."""
    return most if len(name) <= 60 else most * 0.7 if len(name) <= 160 else most * 0.5


def part(
    left: list[Any], right: list[Any], mark: Mark | None = None, *, gap: float = 2 * MM, short: float = SHORT
) -> Beside:  # fmt: skip
    """A part of the sheet: its label at the left, under a rule."""
    return Beside(left, right, at=LABEL, gap=gap, rule=RULED, above=2.6 * MM, below=2.8 * MM, whole=True, mark=mark,
                  short=short)  # fmt: skip


def stack(pieces: list[Any]) -> Beside:
    """Pieces one under the other, a head among them kept with what follows it."""
    return Beside([], pieces, at=0, gap=0)


def labelled(label: str, said: list[Any], at: float = ROW, size: float = TEXT) -> Beside:
    """A label in soft ink and what stands against it."""
    return Beside([para(label, size, soft=True)], said, at=at, gap=1.2 * MM, below=0.9 * MM)


def graded(grade: int, words: str, size: float = SMALL) -> Beside:
    """A source in words behind the strokes of its grade."""
    said = para(words, size, soft=size == SMALL)
    return Beside([Grade(grade, size * 1.28)], [said], at=5.6 * MM, gap=0)


def lettered(title: str, note: str, size: float) -> Beside:
    """A heading across the page, with a word about it at the right."""
    said: list[Any] = [Gap(1.4), para(note, soft=True, right=True)] if note else []
    heading = Beside([para(title, size, bold=True)], said, at=100 * MM, below=1.2 * MM)
    heading.head = True
    return heading


class Running(Piece):
    """From here on a new page begins with this heading, or with what ``again`` gives; without a title, no more."""

    def __init__(self, title: str = "", note: str = "", again: Callable[[], Any] | None = None) -> None:
        super().__init__()
        self.title, self.note, self.again = shorten(title, MOST_AGAIN, placeholder=" …"), note, again

    def heading(self) -> Any:
        """The heading of a page on which the part goes on; None where nothing does."""
        if not self.title:
            return None
        return self.again() if self.again else lettered(self.title, self.note, HEADING_AGAIN)

    def counted(self, canvas: Any) -> None:
        """The canvas remembers it."""
        canvas.running = self

    def draw(self) -> None:
        """The canvas remembers it."""
        self.canv.running = self


def abreast(cells: list[list[Any]], across: int, width: float, gap: float, below: float = 0) -> list[Any]:
    """The cells in lines of so many, each cell as wide as its share of the width."""
    wide = (width - (across - 1) * gap) / across
    return [_side_by_side(cells[n : n + across], wide, gap, below) for n in range(0, len(cells), across)]


def _side_by_side(cells: list[list[Any]], wide: float, gap: float, below: float) -> Beside:
    first, *others = cells
    rest: list[Any] = [_side_by_side(others, wide, gap, 0)] if others else []
    return Beside(first, rest, at=wide + gap, gap=gap, below=below)


class Barred(Beside):
    """A column with a thick bar down its whole left side, on every page it flows over."""

    BAR = 1.7 * MM

    def __init__(self, right: list[Any], ink: Any, mark: Mark | None = None) -> None:
        super().__init__([], right, at=5.6 * MM, gap=0, mark=mark)
        self.ink = ink

    def _part(self, left: list[Any], right: list[Any], *, first: bool, below: float) -> Beside:
        return Barred(right, self.ink, self.mark if first else None)

    def draw(self) -> None:
        """The bar, then the column."""
        self.canv.setFillColor(self.ink)
        self.canv.rect(0, 0, self.BAR, self.height, stroke=0, fill=1)
        super().draw()
