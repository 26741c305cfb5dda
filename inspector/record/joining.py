"""What another person's record of the same machine brings to one: every difference kept, with its name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import count
from typing import Any

from inspector.record.base import Piece
from inspector.record.claim import Claim, Person, Statement
from inspector.record.edits import LISTED, Part, Put, Step
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.refusing import EditRefused
from inspector.record.words import Role
from inspector.texts import Say, say

# Money is private to whoever entered it; signatures and versions are of the record that was signed.
BROUGHT = (Part.PAPERS, Part.INQUIRIES, Part.STATEMENTS, Part.READINGS, Part.PHOTOGRAPHS, Part.QUESTIONS)
CLAIM_SAID = "Claim: "  # begins what the other record claims otherwise
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
    people = _People(here, other)
    brought = (
        *_findings(here, other, people),
        *(put for part in BROUGHT for put in _entries(here, other, part, people.ids)),
        *_claims(here, other),
    )
    puts = (*(_put(Part.PEOPLE, person) for person in people.new), *brought)
    if not puts:
        raise EditRefused(say("The other record holds nothing that is not here already. Nothing was changed."))
    return Step(label=f"Join record {other.id}", puts=puts)


class _People:
    """The people of the other record under the ids that they have, or get, in this one."""

    def __init__(self, here: Record, other: Record) -> None:
        self.known, self.other = list(here.people), other
        self.new: list[Person] = []
        self.ids = {person.id: self._id(person) for person in other.people}

    def _id(self, person: Person) -> str:
        """The id of the same person here: one name in one role; else of a new one."""
        found = next((p.id for p in self.known if _same(p, person)), None)
        if found is not None:
            return found
        return self._named(person, person.name or _told_apart(person, self.other))

    def apart(self, theirs: str, number: int) -> str:
        """The id under which what somebody says otherwise in the other record stands, the n-th time."""
        person = self.other.person(theirs) or Person(id=theirs, name=theirs, role=Role.WITNESS)
        return self._named(person, _told_apart(person, self.other, number))

    def _named(self, person: Person, name: str) -> str:
        named = person.model_copy(update={"name": name})
        found = next((p.id for p in self.known if _same(p, named)), None)
        if found is not None:
            return found
        taken = {p.id for p in self.known}
        new = named.model_copy(update={"id": next(k for k in _keys(person.id, self.other.id) if k not in taken)})
        self.known.append(new)
        self.new.append(new)
        return new.id


def _same(one: Person, other: Person) -> bool:
    if one.role is not other.role:
        return False
    names = [" ".join(p.name.casefold().split()) for p in (one, other)]
    # Two inspectors without a name may be two people; nothing is said by a seller without one.
    return names[0] == names[1] and (bool(names[0]) or one.role is not Role.INSPECTOR)


def _told_apart(person: Person, other: Record, number: int = 1) -> str:
    told = f"record {other.id}" if number == 1 else f"record {other.id}, {number}"
    return f"{(person.name or person.id)[:400]} ({told})"


def _findings(here: Record, other: Record, people: _People) -> Iterator[Put]:
    """Findings that are not here; where one person says two things of an item, each stands under a name of its own."""
    known = {finding.key: finding for finding in here.findings}
    for finding in other.findings:
        by = people.ids.get(finding.by, finding.by)
        for number in count(1):
            new = finding.model_copy(update={"by": by})
            own = known.get(new.key)
            if own is None:
                known[new.key] = new
                yield _put(Part.FINDINGS, Finding.model_validate(new))
            if own is None or own == new.model_copy(update={"at": own.at}):
                break
            by = people.apart(finding.by, number)


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
        text, medium = f"{CLAIM_SAID}{field.replace('_', ' ')}: {theirs}", f"record {other.id}"
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
