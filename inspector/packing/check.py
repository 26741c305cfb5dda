"""What the check of a bag tells: each file that is not as packed, what the bag is, and what is newer here."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inspector.answer import Answer
from inspector.packing.inside import inside
from inspector.packing.standing import Here
from inspector.packing.take import offer
from inspector.sheet.keys import grouped
from inspector.sheet.words import moment
from inspector.storage.bags.archive import opened
from inspector.storage.bags.checking import check
from inspector.storage.bags.refusal import BagRefused
from inspector.storage.trouble import StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from inspector.packing.inside import Inside
    from inspector.packing.take import Offer
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
    faults = tuple(fault.said for fault in checked.faults)
    made = None
    if library is not None and checked.whole and not isinstance(found, StorageTrouble):
        made = _offered(path, library)
    return Answer(faults, tuple(_notes(checked, found, made)), _facts(checked, found, made))


def _offered(path: Path, library: Library) -> Offer | StorageTrouble:
    try:
        return offer(path, library)
    except StorageTrouble as trouble:
        return trouble


def _facts(checked: Checked, found: Inside | StorageTrouble, made: Offer | StorageTrouble | None) -> dict[str, Any]:
    """What was found as data; what the bag says of its inspection only where it is one."""
    facts: dict[str, Any] = {
        "whole": checked.whole,
        "changed": [{"file": fault.file, "what": fault.said} for fault in checked.faults],
        "bagit": ".".join(map(str, checked.version)), "files": checked.files, "bytes": checked.size,
        "sha256": checked.sha256, "weak_sums": checked.weak, "sealed": False, "here": None,
    }  # fmt: skip
    if not isinstance(found, StorageTrouble):
        record = found.record
        facts |= {
            "record": record.id, "machine": record.claim.model or record.profile.title,
            "updated": found.kept.updated, "photographs": len(record.photographs), "sharing": found.sharing,
            "versions": [{"version": v.number, "sealed_at": v.at, "key": v.key} for v in record.versions],
        }  # fmt: skip
    if made is not None and not isinstance(made, StorageTrouble):
        facts["here"] = {
            "record": made.here is not Here.NEW, "same": made.here is Here.SAME, "stands": say(made.here.value),
            "changes_here": made.later_here, "changes_in_bag": made.later_there,
        }  # fmt: skip
    return facts


def _notes(checked: Checked, found: Inside | StorageTrouble, made: Offer | StorageTrouble | None) -> Iterator[Say]:
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
        for version in record.versions:
            yield say("Version {version} was sealed on {when} by the key {key}.", version=version.number,
                      when=moment(version.at), key=grouped(version.key))  # fmt: skip
        if made is not None:
            yield _newer(made)
    if checked.sha256:
        yield say("Sum of its lists (SHA-256): {sum}. Written down elsewhere, it shows later that nothing was changed.",
                  sum=checked.sha256)  # fmt: skip
    if checked.weak:
        yield say("Its sums are of an old kind that can be forged on purpose; they show only damage by chance.")


def _newer(made: Offer | StorageTrouble) -> Say:
    if isinstance(made, StorageTrouble):
        return made.said
    if made.here is Here.NEW:
        return say("This inspection is not in the library here.")
    if made.here is Here.SAME:
        return say("It is in the library here, the same.")
    if made.sharing:
        return say("The whole inspection is in the library here.")
    return say("In the library here: {standing}; {here} changes here are not in the bag, {there} in the bag not here.",
               standing=say(made.here.value), here=made.later_here, there=made.later_there)  # fmt: skip
