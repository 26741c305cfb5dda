"""The visit before this one, kept whole inside the record: to be compared with, never to be taken as seen now."""

from __future__ import annotations

from inspector.record.base import Key, Line, Piece
from inspector.record.claim import Claim, Paper, Person
from inspector.record.finding import Finding, Photograph, Question
from inspector.record.reading import Reading


class Earlier(Piece):
    """What was seen on the visit before: its record's id, day, people, papers, readings, findings, photographs."""

    record: Key
    created: Line
    profile_version: Line = ""
    claim: Claim = Claim()
    people: tuple[Person, ...] = ()
    papers: tuple[Paper, ...] = ()
    readings: tuple[Reading, ...] = ()
    findings: tuple[Finding, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    questions: tuple[Question, ...] = ()

    @property
    def day(self) -> str:
        """The day of that visit."""
        return self.claim.date or self.created[:10]

    def findings_at(self, item: str) -> tuple[Finding, ...]:
        """What each person found at the item then."""
        return tuple(f for f in self.findings if f.item == item)

    def name_of(self, key: str) -> str:
        """The name of the person then, or the id where none was entered."""
        return next((p.name for p in self.people if p.id == key and p.name), key)
