"""What a person does, each as an unstarted step: menus, keys, commands and tests share these.

Every verb takes the record as it stands and gives a ``Step``; none changes anything by itself.
"""

from __future__ import annotations

from typing import Any

from pydantic import JsonValue
from pydantic_core import to_jsonable_python

from inspector.record.base import Piece
from inspector.record.edits import LISTED, Part, Put, Step
from inspector.record.finding import Concluded, Finding, Measured, Photograph
from inspector.record.model import Record
from inspector.record.words import Conclusion, Evidence, Mark, PatternPolicy, Seen, Sureness

WORDS = frozenset({"note", "next_step", "reply", "book"})  # of a finding: can be written without a look


def set_claim(field: str, value: JsonValue) -> Step:
    """The claim with one field set."""
    return Step(
        label="Claim: " + field.replace("_", " "),
        puts=(Put(part=Part.CLAIM, key=field, value=value),),
        joins=f"claim {field}",
    )


def choose_pattern_policy(policy: PatternPolicy) -> Step:
    """The record with pattern parts counted that way."""
    return Step(
        label="Pattern parts " + policy.value,
        puts=(Put(part=Part.CHOICES, key="pattern_parts", value=policy.value),),
    )


def choose_points(shown: bool) -> Step:
    """The record with the profile's points scheme counted or not."""
    return Step(label="Points scheme", puts=(Put(part=Part.CHOICES, key="points", value=shown),))


def choose_place_told(told: bool) -> Step:
    """The record with the place of the inspection on copies that are handed over, or not."""
    return Step(label="Place on copies", puts=(Put(part=Part.CHOICES, key="place_told", value=told),))


def set_order(order: tuple[str, ...]) -> Step:
    """The record walked in that order of item ids."""
    return Step(label="Order of the walk", puts=(Put(part=Part.CHOICES, key="order", value=list(order)),))


def put_entry(part: Part, entry: Piece, *, label: str, joins: str = "") -> Step:
    """The record with one entry of a listed part (person, paper, reading, photograph ...) added or replaced."""
    key = str(getattr(entry, LISTED[part][1]))
    return Step(
        label=label,
        puts=(Put(part=part, key=key, value=entry.model_dump(mode="json")),),
        joins=joins,
    )


def drop_entry(part: Part, key: str, *, label: str) -> Step:
    """The record without that entry."""
    return Step(label=label, puts=(Put(part=part, key=key),))


def change_finding(record: Record, item: str, by: str, at: str, *, label: str, joins: str = "", **changes: Any) -> Step:
    """The finding of that person at that item with these fields changed; begun when there was none.

    Words alone do not say that the item was looked at; anything that can only be seen does.
    """
    old = record.finding(item, by) or Finding(item=item, by=by, seen=Seen.NOT_CHECKED)
    looked = old.seen is Seen.NOT_CHECKED and not changes.keys() <= WORDS
    seen = Seen.EXAMINED if looked else old.seen
    # Whether it can be kept is found when the step is done: there what does not hold is refused in a sentence.
    value = {**old.model_dump(mode="json"), **to_jsonable_python({"at": at, "seen": seen, **changes})}
    return Step(label=label, puts=(Put(part=Part.FINDINGS, key=old.key, value=value),), joins=joins)


def mark(record: Record, item: str, by: str, at: str, value: Mark | None) -> Step:
    """The item marked pass, doubt or fail; a mark says that it was examined. None takes the mark away."""
    label = f"Mark {value.value}" if value else "Take the mark away"
    return change_finding(record, item, by, at, label=label, mark=value, seen=Seen.EXAMINED)


def set_seen(record: Record, item: str, by: str, at: str, state: Seen) -> Step:
    """The item's seen state set; a state other than examined takes the mark away."""
    changes: dict[str, Any] = {"seen": state}
    if state is not Seen.EXAMINED:
        changes["mark"] = None
    return change_finding(record, item, by, at, label=state.value.capitalize(), **changes)


def choose_fitted(record: Record, item: str, by: str, at: str, variant: str, *, other: str = "") -> Step:
    """The item with this variant noted as fitted. Mark and conclusion stay as the person left them."""
    return change_finding(record, item, by, at, label="Fitted", fitted=variant, fitted_other=other, seen=Seen.EXAMINED)


def toggle_conclusion(
    record: Record,
    item: str,
    by: str,
    at: str,
    what: Conclusion,
    sureness: Sureness = Sureness.SURE,
) -> Step:
    """The conclusion added, changed in sureness, or taken away when it stood just so."""
    old = record.finding(item, by)
    kept = tuple(c for c in (old.conclusions if old else ()) if c.what is not what)
    stood = old is not None and Concluded(what=what, sureness=sureness) in old.conclusions
    new = kept if stood else (*kept, Concluded(what=what, sureness=sureness))
    return change_finding(record, item, by, at, label=f"Why: {what.value}", conclusions=new)


def toggle_evidence(record: Record, item: str, by: str, at: str, kind: Evidence) -> Step:
    """The kind of evidence added, or taken away when it was there."""
    old = record.finding(item, by)
    had = old.evidence if old else ()
    new = tuple(e for e in had if e is not kind) if kind in had else (*had, kind)
    return change_finding(record, item, by, at, label=f"How it shows: {kind.value}", evidence=new)


def set_note(record: Record, item: str, by: str, at: str, text: str) -> Step:
    """The note at the item; typing in one visit undoes as one."""
    return change_finding(record, item, by, at, label="Note", joins=f"note {item}", note=text)


def add_to_note(
    record: Record, item: str, by: str, at: str, text: str, evidence: tuple[Evidence, ...] = ()
) -> Step:  # fmt: skip
    """The note with this sentence on a line of its own, once, and these kinds of evidence besides."""
    old = record.finding(item, by) or Finding(item=item, by=by)
    lines = old.note.splitlines()
    note = old.note if text in lines else "\n".join([*lines, text])
    kinds = tuple(dict.fromkeys((*old.evidence, *evidence)))
    return change_finding(record, item, by, at, label="Note", note=note, evidence=kinds)


def set_measured(record: Record, item: str, by: str, at: str, value: Measured) -> Step:
    """The item with this measure as read; without any reading it is taken away. One visit undoes as one."""
    old = record.finding(item, by)
    kept = [m for m in (old.measured if old else ()) if m.measure != value.measure]
    if any(reading.strip() for reading in value.readings):
        kept.append(value)
    joins = f"measured {item} {value.measure}"
    return change_finding(record, item, by, at, label="Measure", joins=joins, measured=tuple(kept), seen=Seen.EXAMINED)


def fit_by_measure(record: Record, item: str, by: str, at: str, variant: str) -> Step:
    """The item with this variant noted as fitted because it was measured. Mark and conclusion stay."""
    old = record.finding(item, by)
    evidence = tuple(dict.fromkeys((*(old.evidence if old else ()), Evidence.MEASUREMENT)))
    return change_finding(
        record, item, by, at, label="Fitted", fitted=variant, fitted_other="", evidence=evidence, seen=Seen.EXAMINED
    )


def add_photographs(photographs: tuple[Photograph, ...]) -> Step:
    """The record with these photographs, as one thing to undo."""
    puts = tuple(Put(part=Part.PHOTOGRAPHS, key=p.id, value=p.model_dump(mode="json")) for p in photographs)
    return Step(label="Photographs", puts=puts)


def take_proposal(
    record: Record,
    item: str,
    by: str,
    at: str,
    value: Mark,
    what: Conclusion | None,
    evidence: tuple[Evidence, ...] = (),
) -> Step:
    """The proposed mark and conclusion taken by the person as one step."""
    old = record.finding(item, by)
    conclusions = tuple(c for c in (old.conclusions if old else ()) if c.what is not what)
    if what is not None:
        conclusions = (*conclusions, Concluded(what=what))
    had = old.evidence if old else ()
    return change_finding(
        record,
        item,
        by,
        at,
        label=f"Mark {value.value}",
        mark=value,
        seen=Seen.EXAMINED,
        conclusions=conclusions,
        evidence=tuple(dict.fromkeys((*had, *evidence))),
    )
