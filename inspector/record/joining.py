"""What another person's record of the same machine brings to one: every difference kept, with its name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from inspector.record.base import Piece
from inspector.record.claim import Claim, Person, Statement
from inspector.record.edits import LISTED, EditRefused, Part, Put, Step
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.words import Role
from inspector.texts import Say, say

# Money is private to whoever entered it; signatures and versions are of the record that was signed.
BROUGHT = (Part.PAPERS, Part.INQUIRIES, Part.STATEMENTS, Part.READINGS, Part.PHOTOGRAPHS, Part.QUESTIONS)
BY_PERSON = frozenset({Part.READINGS, Part.PHOTOGRAPHS})


def why_not(here: Record, other: Record) -> Say | None:
    """Why the two cannot be joined, or None."""
    if here.id == other.id:
        return say("This is the same record. Choose another one of this machine.")
    if here.profile.id != other.profile.id:
        return say(
            "The other record was made with the profile {other}, this one with {here}. Only records of one profile"
            " can be joined.",
            other=other.profile.title or other.profile.id,
            here=here.profile.title or here.profile.id,
        )
    return None


def join(here: Record, other: Record) -> Step:
    """The step that brings into this record what the other has more or differently; it undoes as one.

    Findings stand beside those of this record under the name of who made them, readings of both stay, claims that
    differ are noted as said by the other. Raises EditRefused where there is nothing to bring, or they cannot be joined.
    """
    refused = why_not(here, other)
    if refused is not None:
        raise EditRefused(refused)
    people = _people(here, other)
    puts = (
        *(Put(part=Part.PEOPLE, key=p.id, value=p.model_dump(mode="json")) for p in _new_people(here, other, people)),
        *_findings(here, other, people),
        *(put for part in BROUGHT for put in _entries(here, other, part, people)),
        *_claims(here, other),
    )
    if not puts:
        raise EditRefused(say("The other record holds nothing that is not here already. Nothing was changed."))
    return Step(label=f"Join record {other.id}", puts=puts)


def _people(here: Record, other: Record) -> dict[str, str]:
    """The id in this record of each person of the other: the same only for one name in one role who agrees."""
    taken = {person.id for person in here.people}
    ids: dict[str, str] = {}
    for person in other.people:
        brought = person.model_copy(update={"name": _told_apart(person, other)})
        like = (p.id for one in (brought, person) for p in here.people if _same(p, one))
        same = next(like, None)
        if same is None or _contradicts(here, other, same, person.id):
            same = next(k for k in _keys(person.id, other.id) if k not in taken)
            taken.add(same)
        ids[person.id] = same
    return ids


def _same(one: Person, other: Person) -> bool:
    if one.role is not other.role:
        return False
    names = [" ".join(p.name.casefold().split()) for p in (one, other)]
    # Two inspectors without a name may be two people; nothing is said by a seller without one.
    return names[0] == names[1] and (bool(names[0]) or one.role is not Role.INSPECTOR)


def _contradicts(here: Record, other: Record, key: str, theirs: str) -> bool:
    """Whether the one person says different things of one item in the two records."""
    own = {f.item: f for f in here.findings if f.by == key}
    return any(
        f.item in own and own[f.item] != f.model_copy(update={"by": key}) for f in other.findings if f.by == theirs
    )


def _new_people(here: Record, other: Record, ids: dict[str, str]) -> Iterator[Person]:
    known = {person.id for person in here.people}
    for person in other.people:
        key = ids[person.id]
        if key not in known:
            twice = any(_same(one, person) for one in here.people)
            name = _told_apart(person, other) if twice or not person.name else person.name
            yield person.model_copy(update={"id": key, "name": name})


def _told_apart(person: Person, other: Record) -> str:
    return f"{person.name or person.id} (record {other.id})"[:500]


def _findings(here: Record, other: Record, ids: dict[str, str]) -> Iterator[Put]:
    known = {finding.key for finding in here.findings}
    for finding in other.findings:
        new = finding.model_copy(update={"by": ids.get(finding.by, finding.by)})
        if new.key not in known:
            yield _put(Part.FINDINGS, Finding.model_validate(new))


def _entries(here: Record, other: Record, part: Part, ids: dict[str, str]) -> Iterator[Put]:
    kind, key_name = LISTED[part]
    own = {getattr(entry, key_name): entry for entry in getattr(here, part.value)}
    equal = [_bare(entry, key_name) for entry in own.values()]
    for entry in (_of_person(one, part, ids) for one in getattr(other, part.value)):
        if _bare(entry, key_name) in equal:
            continue
        key = next(k for k in _keys(getattr(entry, key_name), other.id) if k not in own)
        own[key] = entry
        yield _put(part, kind.model_validate(entry.model_copy(update={key_name: key})))


def _of_person(entry: Any, part: Part, ids: dict[str, str]) -> Any:
    """The entry under the id that its person has in this record."""
    if part not in BY_PERSON or entry.by not in ids:
        return entry
    return entry.model_copy(update={"by": ids[entry.by]})


def _bare(entry: Piece, key_name: str) -> dict[str, object]:
    return entry.model_dump(exclude={key_name})


def _claims(here: Record, other: Record) -> Iterator[Put]:
    """What is claimed otherwise in the other record stands as said there; this record's claim stays."""
    names = ", ".join(p.name for p in other.people_as(Role.INSPECTOR) if p.name) or f"record {other.id}"
    taken = {statement.id for statement in (*here.statements, *other.statements)}
    said = {(statement.text, statement.medium) for statement in here.statements}
    for field in Claim.model_fields:
        mine, theirs = getattr(here.claim, field), getattr(other.claim, field)
        if theirs in ("", None) or theirs == mine or field == "asking_price":
            continue
        key = next(k for k in _keys(f"claim-{field}", other.id) if k not in taken)
        text, medium = f"Claim: {field.replace('_', ' ')}: {theirs}", f"record {other.id}"
        if (text, medium) not in said:
            yield _put(Part.STATEMENTS, Statement(id=key, text=text, by=names, medium=medium))


def _put(part: Part, entry: Piece) -> Put:
    return Put(part=part, key=str(getattr(entry, LISTED[part][1])), value=entry.model_dump(mode="json"))


def _keys(key: str, record: str) -> Iterable[str]:
    """The key, or others made from it."""
    short = key[:90]
    yield key
    yield f"{short}-{record}"[:120]
    yield from (f"{short}-{record[:20]}-{n}" for n in range(2, 100_000))
