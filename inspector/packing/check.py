"""What the check of a bag tells: each file that is not as packed, what the bag is, and what is newer here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.checking import Answer
from inspector.packing.inside import inside
from inspector.packing.take import Here, offer
from inspector.storage.bags.archive import opened
from inspector.storage.bags.checking import check
from inspector.storage.bags.refusal import BagRefused
from inspector.storage.trouble import StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from inspector.packing.inside import Inside
    from inspector.storage.bags.checking import Checked
    from inspector.storage.library import Library


def check_bag(path: Path, library: Library | None) -> Answer:
    """Every fault of the bag, and what it is; a bag of others is checked by its lists alone."""
    try:
        with opened(path) as archive:
            checked = check(archive)
            try:
                found: Inside | StorageTrouble = inside(archive)
            except BagRefused as refused:
                found = refused
    except StorageTrouble as trouble:
        return Answer((trouble.said,))
    faults = tuple(say("{path}: {what}", path=path, what=fault.said) for fault in checked.faults)
    return Answer(faults, tuple(_notes(path, checked, found, library)))


def _notes(path: Path, checked: Checked, found: Inside | StorageTrouble, library: Library | None) -> Iterator[Say]:
    if isinstance(found, StorageTrouble):
        yield found.said
    else:
        record = found.record
        template = "Inspection {id} of {machine}, {day}, last changed {updated}, {count} photographs."
        yield say(template, id=record.id, machine=record.claim.model or record.profile.title,
                  day=record.claim.date or record.created[:10], updated=found.kept.updated,
                  count=len(record.photographs))  # fmt: skip
        if found.sharing:
            yield say("It was made to be shared: what it leaves out stands in data/left-out.txt.")
        if library is not None and checked.whole:
            yield _newer(path, library)
    if checked.sha256:
        yield say("Sum of its lists (SHA-256): {sum}. Written down elsewhere, it shows later that nothing was changed.",
                  sum=checked.sha256)  # fmt: skip
    if checked.weak:
        yield say("Its sums are of an old kind that can be forged on purpose; they show only damage by chance.")


def _newer(path: Path, library: Library) -> Say:
    try:
        made = offer(path, library)
    except StorageTrouble as trouble:
        return trouble.said
    if made.here is Here.NEW:
        return say("This inspection is not in the library here.")
    if made.here is Here.SAME:
        return say("It is in the library here, the same.")
    if made.sharing:
        return say("The whole inspection is in the library here.")
    return say("In the library here: {standing}; {here} changes here are not in the bag, {there} in the bag not here.",
               standing=say(made.here.value), here=made.later_here, there=made.later_there)  # fmt: skip
