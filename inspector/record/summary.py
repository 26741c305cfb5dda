"""What a list of machines shows of one record."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.record.words import Mark

if TYPE_CHECKING:
    from inspector.record.model import Record


@dataclass(frozen=True, slots=True)
class Summary:
    """One line of the list of machines; ``readings`` are its numbers once more, each with its place."""

    id: str
    title: str
    model_year: int | None = None
    place: str = ""
    date: str = ""
    seller: str = ""
    numbers: str = ""
    passes: int = 0
    doubts: int = 0
    fails: int = 0
    photographs: int = 0
    invented: bool = False
    readings: tuple[tuple[str, str], ...] = ()


def summary(record: Record) -> Summary:
    """The record in one line, its numbers included so that a search finds them."""
    marks = [f.mark for f in record.findings]
    return Summary(
        id=record.id,
        title=record.claim.model or record.profile.title or record.profile.id,
        model_year=record.claim.model_year,
        place=record.claim.place,
        date=record.claim.date,
        seller=", ".join(p.name for p in record.people if p.role.value == "seller"),
        numbers=" ".join(r.typed() for r in record.readings),
        passes=marks.count(Mark.PASS),
        doubts=marks.count(Mark.DOUBT),
        fails=marks.count(Mark.FAIL),
        photographs=len(record.photographs),
        invented=record.invented,
        readings=tuple((r.place, r.typed()) for r in record.readings if r.figures),
    )
