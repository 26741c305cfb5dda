"""The parts of a sheet that hold figures in columns, ranges on a scale, the first page in short, and contents."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.sheet.pieces import Picture


@dataclass(frozen=True, slots=True)
class Fraction:
    """Something of a hundred on the first page: its name, the figure, its words, and where it may end.

    ``value`` is None where nothing was seen; ``low`` and ``high`` are None where there is no band but coverage.
    """

    name: str
    value: int | None
    figure: str
    words: str
    low: int | None = None
    high: int | None = None


@dataclass(frozen=True, slots=True)
class StoryBlock:
    """How much was seen, and how much of it is right, side by side and never one without the other."""

    title: str
    seen: Fraction
    right: Fraction
    note: str = ""


@dataclass(frozen=True, slots=True)
class ContentsBlock:
    """What follows, by title; ``entries`` are the numbers of the parts on the sheet and their titles."""

    title: str
    entries: tuple[tuple[int, str], ...]


@dataclass(frozen=True, slots=True)
class FigureRow:
    """A line of a table: a name, a smaller second line, and figures from the right; ``level`` 1 is moved in."""

    name: str
    cells: tuple[str, ...]
    said: str = ""
    strong: bool = False
    level: int = 0


@dataclass(frozen=True, slots=True)
class FiguresBlock:
    """Sentences, a table under the heads of its columns of figures, sentences after it, and what it rests on."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[FigureRow, ...]
    lines: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    column: float = 20.0
    first: str = ""


@dataclass(frozen=True, slots=True)
class RangeRow:
    """A line of a scale: a range with its middle, or a price as entered and as adjusted, and the same in words.

    ``kind`` is "range", "sold", "bid" or "asked". Figures are for drawing only; ``words`` says them exactly.
    """

    name: str
    kind: str
    words: str
    low: float
    middle: float
    high: float
    said: str = ""


@dataclass(frozen=True, slots=True)
class RangesBlock:
    """Ranges and prices over one scale; ``ruled`` is a price drawn through all rows, with its word."""

    title: str
    unit: str
    rows: tuple[RangeRow, ...]
    lines: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    ruled: float | None = None
    ruled_word: str = ""


@dataclass(frozen=True, slots=True)
class SourceLine:
    """One source: its grade 0 to 3, what it is, and where it is to be found."""

    grade: int
    words: str
    small: str = ""


@dataclass(frozen=True, slots=True)
class SourceListBlock:
    """Every source by name, and by which profile."""

    title: str
    note: str
    rows: tuple[SourceLine, ...]


@dataclass(frozen=True, slots=True)
class HistoryBlock:
    """What was entered, by whom and when, in the order it was done; each row is time, person and words."""

    title: str
    note: str
    rows: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class ViewsBlock:
    """Photographs of one view, large; ``missing`` says so where there is none."""

    title: str
    pictures: tuple[Picture, ...]
    missing: str = ""
