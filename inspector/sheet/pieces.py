"""What the parts of a sheet are made of: phrases, rows, sources, pictures."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Phrase:
    """Words with a stronger beginning."""

    strong: str
    words: str = ""

    def __str__(self) -> str:
        return " ".join(part for part in (self.strong, self.words) if part)


@dataclass(frozen=True, slots=True)
class Row:
    """A label and what stands against it, with a smaller second line."""

    label: str
    said: Phrase
    small: str = ""


@dataclass(frozen=True, slots=True)
class Cited:
    """A source in words, and its grade 0 to 3."""

    grade: int
    words: str


@dataclass(frozen=True, slots=True)
class Expectation:
    """One thing that may be right, and who says so."""

    words: str
    sources: tuple[Cited, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """A photograph of the record, with its print copy where there is one; ``jpeg`` is whole and bare of metadata."""

    number: int
    caption: str
    jpeg: bytes | None = None
    width: int = 0
    height: int = 0
    missing: str = ""
