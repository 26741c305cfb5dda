"""Every change as data: a put of one value at one key, its exact inverse, and steps of several puts.

``apply(record, step)`` gives the new record and the inverse step; applying the inverse gives the old
record back, to the letter. Undo, autosave, history and "what must be redrawn" all come from this.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Any, NamedTuple

from pydantic import Field, JsonValue, ValidationError

from inspector.record.base import Key, Line, Piece
from inspector.record.claim import Claim, Inquiry, Paper, Person, Statement
from inspector.record.finding import Finding, Photograph, Question
from inspector.record.model import Choices, Record
from inspector.record.money import Adjustment, Comparable, Money, Remedy, Signature, Version
from inspector.record.reading import Reading
from inspector.record.refusing import EditRefused, why_not
from inspector.texts import say


class Part(StrEnum):
    """The parts of a record that an edit can change; values are the record's field names."""

    CLAIM = "claim"
    CHOICES = "choices"
    MONEY = "money"
    PEOPLE = "people"
    PAPERS = "papers"
    INQUIRIES = "inquiries"
    STATEMENTS = "statements"
    READINGS = "readings"
    FINDINGS = "findings"
    PHOTOGRAPHS = "photographs"
    QUESTIONS = "questions"
    COMPARABLES = "comparables"
    ADJUSTMENTS = "adjustments"
    REMEDIES = "remedies"
    SIGNATURES = "signatures"
    VERSIONS = "versions"


SINGLE: dict[Part, type[Piece]] = {Part.CLAIM: Claim, Part.CHOICES: Choices, Part.MONEY: Money}
LISTED: dict[Part, tuple[type[Piece], str]] = {
    Part.PEOPLE: (Person, "id"),
    Part.PAPERS: (Paper, "id"),
    Part.INQUIRIES: (Inquiry, "id"),
    Part.STATEMENTS: (Statement, "id"),
    Part.READINGS: (Reading, "id"),
    Part.FINDINGS: (Finding, "key"),
    Part.PHOTOGRAPHS: (Photograph, "id"),
    Part.QUESTIONS: (Question, "id"),
    Part.COMPARABLES: (Comparable, "id"),
    Part.ADJUSTMENTS: (Adjustment, "id"),
    Part.REMEDIES: (Remedy, "key"),
    Part.SIGNATURES: (Signature, "id"),
    Part.VERSIONS: (Version, "number"),
}


class Put(Piece):
    """One value put at one key of one part; None takes it away.

    For a single part (claim, choices) the key is a field and the value that field's. For a listed part
    the key is the entry's and the value the whole entry; ``index`` says where a new entry stands
    (at the end without it).
    """

    part: Part
    key: Key
    value: JsonValue = None
    index: int | None = Field(None, ge=0)


class Step(Piece):
    """What the user did, as one thing to undo."""

    label: Line = Field(description="what was done, in English, for the history and the undo word")
    puts: tuple[Put, ...] = Field(min_length=1)
    joins: Line = Field("", description="steps with the same word here, in one visit, undo as one")


class Applied(NamedTuple):
    """A record after a step, and the step that takes it back."""

    record: Record
    inverse: Step


def apply(record: Record, step: Step) -> Applied:
    """The record after the step, and its inverse. Raises EditRefused when a value cannot hold."""
    inverses: list[Put] = []
    for put in step.puts:
        record, inverse = _apply_put(record, put)
        inverses.append(inverse)
    return Applied(record, Step(label=step.label, puts=tuple(reversed(inverses)), joins=step.joins))


def _apply_put(record: Record, put: Put) -> tuple[Record, Put]:
    return _put_field(record, put) if put.part in SINGLE else _put_entry(record, put)


def _put_field(record: Record, put: Put) -> tuple[Record, Put]:
    kind = SINGLE[put.part]
    if put.key not in kind.model_fields:
        raise EditRefused(say('"{key}" is not a part of the {part}.', key=put.key, part=put.part.value))
    old = getattr(record, put.part.value)
    before = old.model_dump(mode="json")
    new = _checked(kind, {**before, put.key: put.value})
    return record.model_copy(update={put.part.value: new}), Put(part=put.part, key=put.key, value=before[put.key])


def _put_entry(record: Record, put: Put) -> tuple[Record, Put]:
    kind, key_name = LISTED[put.part]
    entries: tuple[Any, ...] = getattr(record, put.part.value)
    at = next((i for i, e in enumerate(entries) if str(getattr(e, key_name)) == put.key), None)
    old = entries[at].model_dump(mode="json") if at is not None else None
    if put.value is None:
        new = entries if at is None else (*entries[:at], *entries[at + 1 :])
    else:
        new = _with_entry(entries, at, put, _entry(kind, key_name, put))
    inverse = Put(part=put.part, key=put.key, value=old, index=at if put.value is None else None)
    return record.model_copy(update={put.part.value: new}), inverse


def _entry(kind: type[Piece], key_name: str, put: Put) -> Piece:
    entry = _checked(kind, put.value)
    if str(getattr(entry, key_name)) != put.key:
        raise EditRefused(say("An entry of {part} does not carry the key it is put at.", part=put.part.value))
    return entry


def _with_entry(entries: tuple[Any, ...], at: int | None, put: Put, entry: Piece) -> tuple[Any, ...]:
    if at is not None:
        return (*entries[:at], entry, *entries[at + 1 :])
    where = len(entries) if put.index is None else min(put.index, len(entries))
    return (*entries[:where], entry, *entries[where:])


def _checked(kind: type[Piece], value: Any) -> Piece:
    try:
        return kind.model_validate(value)
    except ValidationError as trouble:
        raise EditRefused(why_not(trouble)) from trouble


class Changed(NamedTuple):
    """What a step touched, for those who redraw."""

    parts: frozenset[Part]
    items: frozenset[str]


def changed_by(step: Step) -> Changed:
    """The parts and items a step touches (findings and photographs name their item)."""
    return Changed(frozenset(p.part for p in step.puts), frozenset(i for p in step.puts if (i := _item_of(p))))


def _item_of(put: Put) -> str:
    if put.part is Part.FINDINGS:
        return put.key.rsplit("/", 1)[0]
    if isinstance(put.value, dict):
        return str(put.value.get("item") or "")
    return ""
