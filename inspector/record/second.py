"""A second visit: a new record begun from an old one, in which nothing counts as seen yet."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.record.begin import INSPECTOR, SELLER
from inspector.record.claim import Claim, Person
from inspector.record.earlier import Earlier
from inspector.record.finding import Question
from inspector.record.model import ProfileRef, Record
from inspector.record.words import Role

OF_THE_DAY = ("asking_price", "place", "conditions")  # claimed or so on that day, to be asked anew


def second_visit(
    old: Record, record_id: str, created: str, profile: ProfileRef, open_questions: Iterable[Question] = ()
) -> Record:
    """A record of the same machine with the old one inside it as the visit before.

    It claims what was claimed and knows the people, whose interests are to be asked again. It has no finding,
    reading, paper, photograph, money or signature. Questions not settled then, and ``open_questions``, are open in it.
    """
    claim = old.claim.model_copy(update={**dict.fromkeys(OF_THE_DAY, ""), "date": created[:10]})
    return Record(
        id=record_id,
        created=created,
        invented=old.invented,
        profile=profile,
        claim=Claim.model_validate(claim),
        people=_people(old),
        questions=tuple(_questions(old, open_questions)),
        choices=old.choices.model_copy(update={"clocks": ()}),
        earlier=earlier_of(old),
    )


def earlier_of(old: Record) -> Earlier:
    """What a later visit keeps of this record."""
    own = {
        "record": old.id,
        "profile_version": old.profile.version,
        "claim": old.claim.model_copy(update={"asking_price": ""}),
    }
    return Earlier(**{field: own.get(field, getattr(old, field, None)) for field in Earlier.model_fields})


def visit_before(record: Record) -> Record | None:
    """The visit before as a record of its own, or None where there was none."""
    was = record.earlier
    if was is None:
        return None
    seen = {field: getattr(was, field) for field in Earlier.model_fields if field in Record.model_fields}
    return Record(
        id=was.record,
        invented=record.invented,
        profile=record.profile.model_copy(update={"version": was.profile_version, "sha256": ""}),
        choices=record.choices,
        **seen,
    )


def _people(old: Record) -> tuple[Person, ...]:
    kept = [p.model_copy(update={"interest": ""}) for p in old.people]
    known = {p.id for p in kept}
    begun = ((INSPECTOR, Role.INSPECTOR), (SELLER, Role.SELLER))
    return (*kept, *(Person(id=key, role=role) for key, role in begun if key not in known))


def _questions(old: Record, more: Iterable[Question]) -> Iterable[Question]:
    used: set[str] = set()
    for question in (*(q for q in old.questions if not q.closed.strip()), *more):
        key = next(k for k in (question.id, *(f"{question.id}-{n}" for n in range(2, 10_000))) if k not in used)
        used.add(key)
        yield question.model_copy(update={"id": key})
