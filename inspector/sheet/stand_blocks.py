"""The parts of a sheet that tell how numbers stand to each other, and which years the parts allow."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class StandRow:
    """What stands beside what, the word for it, and why; ``grade`` is that of the rule's source.

    ``sign`` is the word that the two ruled lines say, or "" where nothing is compared.
    """

    sign: str
    about: str
    says: str = ""
    detail: str = ""
    grade: int | None = None


@dataclass(frozen=True, slots=True)
class StandsBlock:
    """Rows that tell how two numbers stand to each other."""

    title: str
    rows: tuple[StandRow, ...]
    note: str = ""


class BesideBlock(StandsBlock):
    """The numbers of the machine beside each other, those that raise a question first."""


class PapersBlock(StandsBlock):
    """The papers, what lay on the table, and how the numbers they quote stand to the metal."""


class SeventeenBlock(StandsBlock):
    """Numbers of 17 characters, and what their check digit and year code say."""


@dataclass(frozen=True, slots=True)
class YearSpan:
    """Years ``first`` to ``last``; ``kind`` is "allowed", "condition" or "odd"."""

    first: int
    last: int
    kind: str


@dataclass(frozen=True, slots=True)
class YearRow:
    """One assembly: its years as bars and in words, and what must be said beside them; without bars no evidence."""

    name: str
    spans: tuple[YearSpan, ...]
    years: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class YearsBlock:
    """The answer in a sentence, the chart that says the same, what it rests on, and how the years weigh.

    The chart goes from ``first`` to ``last``; ``claimed`` is ruled through all its rows. ``table`` has the years at
    its head and a row for each assumption, each as a name and its cells.
    """

    title: str
    sentence: str
    lines: tuple[str, ...]
    first: int
    last: int
    claimed: int | None
    claimed_word: str
    rows: tuple[YearRow, ...]
    weight: tuple[str, ...] = ()
    table: tuple[tuple[str, tuple[str, ...]], ...] = ()
    reasons: tuple[str, ...] = ()
