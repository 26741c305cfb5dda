"""The parts of a walk sheet to fill in on paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.sheet.pieces import Expectation, Row


@dataclass(frozen=True, slots=True)
class WalkItem:
    """One item of a walk sheet, with room to write."""

    number: int
    name: str
    question: str
    rows: tuple[Row, ...]
    expected: tuple[Expectation, ...]
    blanks: tuple[str, ...]
    comb: bool
    caution: str


@dataclass(frozen=True, slots=True)
class StationBlock:
    """One station of a walk sheet."""

    title: str
    first: str
    items: tuple[WalkItem, ...]


@dataclass(frozen=True, slots=True)
class BlanksBlock:
    """Named lines to write on, ``across`` of them side by side."""

    title: str
    blanks: tuple[str, ...]
    comb: bool = False
    note: str = ""
    across: int = 1


@dataclass(frozen=True, slots=True)
class TableItem:
    """One item of a walk sheet on one ruled line; ``first`` where it belongs to the first ten minutes."""

    number: int
    name: str
    expected: str
    caution: str
    first: bool


@dataclass(frozen=True, slots=True)
class TableBlock:
    """One station of a walk sheet as a table; ``heads`` stand over what is expected, the mark and the word."""

    title: str
    first: str
    heads: tuple[str, str, str]
    items: tuple[TableItem, ...]
