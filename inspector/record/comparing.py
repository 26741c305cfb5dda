"""Two records laid side by side, entry by entry: what only one has, and what both have differently."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from inspector.record.edits import LISTED, SINGLE, Part
from inspector.record.model import Record
from inspector.texts import Say, say

SHOWN = 4  # keys named in a sentence; the rest are counted
WORDS = {
    Part.CLAIM: "claim", Part.CHOICES: "choices", Part.MONEY: "money", Part.PEOPLE: "people", Part.PAPERS: "papers",
    Part.INQUIRIES: "checks asked of others", Part.STATEMENTS: "things said", Part.READINGS: "numbers as read",
    Part.FINDINGS: "findings", Part.PHOTOGRAPHS: "photographs", Part.QUESTIONS: "questions",
    Part.COMPARABLES: "comparables", Part.ADJUSTMENTS: "adjustments", Part.REMEDIES: "remedies",
    Part.SIGNATURES: "signatures", Part.VERSIONS: "versions",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class PartDiffers:
    """One part of two records: keys only in the one, only in the other, and in both with other values."""

    part: Part
    here: tuple[str, ...]
    there: tuple[str, ...]
    differ: tuple[str, ...]


def compared(here: Record, there: Record) -> tuple[PartDiffers, ...]:
    """The parts that are not the same in both, in the order of a record; ids of the records do not count."""
    found = [_single(part, here, there) for part in SINGLE] + [_listed(part, here, there) for part in LISTED]
    by_part = {one.part: one for one in found if one.here or one.there or one.differ}
    return tuple(by_part[part] for part in Part if part in by_part)


def differences_said(here: Record, there: Record) -> tuple[Say, ...]:
    """One sentence a part that differs, with the names of what differs; ``there`` is called the other."""
    return tuple(_said(one) for one in compared(here, there))


def _single(part: Part, here: Record, there: Record) -> PartDiffers:
    a, b = (getattr(record, part.value).model_dump(mode="json") for record in (here, there))
    return PartDiffers(part, (), (), tuple(key.replace("_", " ") for key in a if a[key] != b[key]))


def _listed(part: Part, here: Record, there: Record) -> PartDiffers:
    a, b = _entries(part, here), _entries(part, there)
    both = tuple(key for key in a if key in b and a[key] != b[key])
    return PartDiffers(part, tuple(k for k in a if k not in b), tuple(k for k in b if k not in a), both)


def _entries(part: Part, record: Record) -> dict[str, Any]:
    key = LISTED[part][1]
    return {str(getattr(entry, key)): entry for entry in getattr(record, part.value)}


def _said(one: PartDiffers) -> Say:
    parts = [
        say(template, names=_names(keys))
        for template, keys in (
            ("only here: {names}", one.here),
            ("only in the other: {names}", one.there),
            ("not the same in both: {names}", one.differ),
        )
        if keys
    ]
    told: Say = parts[0]
    for part in parts[1:]:
        told = say("{first}; {then}", first=told, then=part)
    return say("{part}: {told}.", part=say(WORDS[one.part].capitalize()), told=told)


def _names(keys: tuple[str, ...]) -> Say | str:
    first = ", ".join(keys[:SHOWN])
    return first if len(keys) <= SHOWN else say("{names} and {count} more", names=first, count=len(keys) - SHOWN)
