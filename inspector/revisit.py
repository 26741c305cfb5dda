"""A second visit begun from a kept record, and any two kept records compared."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.judge import judge
from inspector.judgement.questions import NO_NEXT_STEP
from inspector.judgement.visits import compare
from inspector.profile.read import read_profile
from inspector.record.finding import Question
from inspector.record.model import ProfileRef
from inspector.record.second import second_visit
from inspector.sheet.visits import visits_sheet
from inspector.storage.codes import new_record_id
from inspector.storage.trouble import StorageTrouble
from inspector.texts import say, tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.visits import Visits
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.sheet.blocks import Sheet
    from inspector.storage.library import Library


def begin_second_visit(library: Library, record_id: str, at: str) -> str:
    """A new record of the same machine is in the library, begun from this one; gives its id. Raises StorageTrouble.

    The profile is the one that the first visit used.
    """
    loaded = library.load(record_id)
    read = read_profile(loaded.profile_folder)
    if read.profile is None:
        problem = str(read.problems[0]) if read.problems else str(loaded.profile_folder)
        raise StorageTrouble(say("The profile kept with this machine cannot be read: {what}", what=problem))
    old = loaded.record
    ref = ProfileRef(id=read.profile.id, version=read.profile.version, sha256=old.profile.sha256,
                     title=read.profile.title)  # fmt: skip
    new = second_visit(old, new_record_id(), at, ref, carried_questions(read.profile, old))
    library.create(new, loaded.profile_folder)
    return new.id


def carried_questions(profile: Profile, old: Record) -> Iterator[Question]:
    """What the first visit left open, as questions of the second; those written by hand are kept by the record."""
    by_hand = {question.text for question in old.questions}
    number = 0
    for question in judge(profile, old).questions:
        text = tr(question.text)
        if text in by_hand:
            continue
        number += 1
        step = "" if question.next_step == NO_NEXT_STEP else tr(question.next_step)
        yield Question(id=f"was-{number}", text=tr("Open since {day}: {text}", day=old.claim.date or old.created[:10],
                                                   text=text), next_step=step, item=question.item)  # fmt: skip


def compared(library: Library, was_id: str, now_id: str) -> tuple[Record, Record, Visits]:
    """Two records of the library and what became of each item between them. Raises StorageTrouble.

    They are compared by the profile of the second.
    """
    was, loaded = library.load(was_id).record, library.load(now_id)
    read = read_profile(loaded.profile_folder)
    if read.profile is None:
        raise StorageTrouble(say("The profile kept with this machine cannot be read: {what}",
                                 what=str(read.problems[0])))  # fmt: skip
    return was, loaded.record, compare(read.profile, was, loaded.record)


def sheet_of_visits(library: Library, was_id: str, now_id: str, made_at: str) -> Sheet:
    """The comparison of two records as a sheet. Raises StorageTrouble."""
    was, now, visits = compared(library, was_id, now_id)
    return visits_sheet(was, now, visits, made_at)
