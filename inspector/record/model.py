"""The record: one inspection, frozen; changes make a new one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from inspector.record.base import Key, Line, Piece
from inspector.record.claim import Claim, Inquiry, Paper, Person, Statement
from inspector.record.earlier import Earlier
from inspector.record.finding import Finding, Photograph, Question
from inspector.record.money import Adjustment, Comparable, Money, Remedy, Signature, Version
from inspector.record.reading import Reading
from inspector.record.words import PatternPolicy, Role


class ProfileRef(Piece):
    """The very profile that was used."""

    id: Key
    version: Line
    sha256: str = ""
    title: Line = ""


class CameraClock(Piece):
    """How far a camera's clock was off, by one photograph of a clock; the camera's own times stay as they are."""

    camera: Line = ""
    seconds: int = Field(0, description="to be added to the camera's time")
    photograph: Line = Field("", description="id of the photograph of a clock")
    shows: Line = Field("", description="what the clock shows, as typed")


class Choices(Piece):
    """Choices of the user that change how things are counted or walked, not what was seen."""

    pattern_parts: PatternPolicy = PatternPolicy.PENALISED
    points: bool = False
    place_told: bool = Field(False, description="whether copies that are handed over tell where it was looked at")
    order: tuple[str, ...] = Field((), description="item ids in the order of this walk; the profile's where empty")
    clocks: tuple[CameraClock, ...] = ()


class Record(Piece):
    """One inspection: claim, readings, findings, photographs, money, signatures."""

    format: Literal[1] = 1
    id: Key
    created: Line
    invented: bool = False
    profile: ProfileRef
    claim: Claim = Claim()
    people: tuple[Person, ...] = ()
    papers: tuple[Paper, ...] = ()
    inquiries: tuple[Inquiry, ...] = ()
    statements: tuple[Statement, ...] = ()
    readings: tuple[Reading, ...] = ()
    findings: tuple[Finding, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    questions: tuple[Question, ...] = ()
    comparables: tuple[Comparable, ...] = ()
    adjustments: tuple[Adjustment, ...] = ()
    remedies: tuple[Remedy, ...] = ()
    signatures: tuple[Signature, ...] = ()
    versions: tuple[Version, ...] = ()
    choices: Choices = Choices()
    money: Money = Money()
    earlier: Earlier | None = Field(None, description="the visit before; nothing in it counts as seen on this one")

    def findings_at(self, item: str) -> tuple[Finding, ...]:
        """What each person found at the item, in the order first entered."""
        return tuple(f for f in self.findings if f.item == item)

    def finding(self, item: str, by: str) -> Finding | None:
        """What this person found at the item, or None."""
        return next((f for f in self.findings if f.item == item and f.by == by), None)

    def photographs_at(self, item: str) -> tuple[Photograph, ...]:
        """The photographs tied to the item, in the order brought in."""
        return tuple(p for p in self.photographs if p.item == item)

    def people_as(self, role: Role) -> Iterator[Person]:
        """The people with this role, in the order entered."""
        return (p for p in self.people if p.role is role)

    def person(self, key: str) -> Person | None:
        """The person with this id, or None."""
        return next((p for p in self.people if p.id == key), None)

    def name_of(self, key: str) -> str:
        """The person's name, or the id where no name was entered."""
        person = self.person(key)
        return person.name if person and person.name else key
