"""Two records of one machine joined into a third; neither of the two is changed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.claim import Statement
from inspector.record.edits import Part, apply
from inspector.record.format import FORMAT
from inspector.record.joining import join
from inspector.record.verbs import put_entry
from inspector.record.words import Role
from inspector.storage.codes import new_record_id
from inspector.storage.formats import text_of
from inspector.storage.lines import Row
from inspector.storage.whole import Whole
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.record.edits import Step
    from inspector.record.model import Record
    from inspector.storage.library import Library


def join_as_new(library: Library, here_id: str, other_id: str, at: str, by: str) -> str:
    """A third record is in the library: that of ``here_id``, and as its one step what the other brings; gives its id.

    The two stay as they are, with their histories, signatures and sealed versions. Raises EditRefused where they
    cannot be joined or the other brings nothing, and StorageTrouble.
    """
    loaded, other = library.load(here_id), library.load(other_id).record
    here = loaded.record
    # What was signed and sealed was one record and not both.
    begun = here.model_copy(update={"id": new_record_id(), "signatures": (), "versions": ()})
    step = _told(begun, here, other)
    made = apply(begun, step)
    row = Row(1, "do", False, at, by, FORMAT, text_of(step), text_of(made.inverse))
    library.take_in(made.record, Whole(FORMAT, text_of(begun), (row,), at), loaded.profile_folder)
    return begun.id


def _told(begun: Record, here: Record, other: Record) -> Step:
    """The step of joining, and in it a statement that names both records."""
    step = join(begun, other)
    taken = {s.id for s in begun.statements} | {put.key for put in step.puts}
    keys = (f"joined-{other.id[:80]}{end}" for end in ("", *(f"-{n}" for n in range(2, 100_000))))
    told = Statement(
        id=next(key for key in keys if key not in taken),
        text=tr("This record joins {here} and {other}, said to be of one machine.", here=_named(here),
                other=_named(other)),
        by=", ".join(p.name for p in begun.people_as(Role.INSPECTOR) if p.name),
        medium=tr("joining"),
    )  # fmt: skip
    (put,) = put_entry(Part.STATEMENTS, told, label=step.label).puts
    return step.model_copy(update={"puts": (*step.puts, put)})


def _named(record: Record) -> str:
    who = ", ".join(p.name for p in record.people_as(Role.INSPECTOR) if p.name) or tr("no name entered")
    return tr("record {id} ({who}, {day})", id=record.id, who=who, day=record.claim.date or record.created[:10])
