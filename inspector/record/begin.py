"""A new record."""

from __future__ import annotations

from inspector.record.claim import Person
from inspector.record.model import ProfileRef, Record
from inspector.record.words import Role

INSPECTOR = "inspector"
SELLER = "seller"


def new_record(record_id: str, created: str, profile: ProfileRef, *, inspector: str = "") -> Record:
    """An empty record with its two parties to be named: nothing claimed, nothing seen."""
    people = (
        Person(id=INSPECTOR, name=inspector, role=Role.INSPECTOR),
        Person(id=SELLER, role=Role.SELLER),
    )
    return Record(id=record_id, created=created, profile=profile, people=people)
