"""Which version a sheet is of: what is kept of the one before, and what differs since."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.record.differing import differences
from inspector.record.model import Record
from inspector.record.versions import last_version
from inspector.sheet.versioning import Issue
from inspector.storage.trouble import StorageTrouble
from inspector.texts import say

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.money import Version
    from inspector.storage.frozen import Frozen
    from inspector.storage.library import Library
    from inspector.storage.photographs import Photographs

LOST = say("What differs cannot be told: that version is not kept whole on this computer any more.")


@dataclass(frozen=True, slots=True)
class Place:
    """Where things are kept: photographs, and what is frozen."""

    photographs: Photographs
    frozen: Frozen


def place_of(library: Library) -> Place:
    """Where this library keeps them."""
    return Place(library.photographs, library.frozen)


def issue_of(profile: Profile, record: Record, place: Place, fingerprint: str = "") -> Issue:
    """What the next sheet says of its version: the one before, and what differs from it.

    Where the version before is not kept here any more, the sheet says so and is made all the same.
    """
    before = last_version(record)
    if before is None:
        return Issue(fingerprint=fingerprint)
    try:
        old = frozen_record(before, place)
    except StorageTrouble:
        return Issue(before, (LOST,), fingerprint)
    return Issue(before, differences(profile, old, record), fingerprint)


def frozen_record(version: Version, place: Place) -> Record:
    """The whole record as it was when this version was sealed. Raises StorageTrouble."""
    return Record.model_validate_json(place.frozen.read(version.whole))


def sealed_sheet(version: Version, place: Place) -> bytes:
    """The sealed sheet of this version, as it was handed out. Raises StorageTrouble."""
    return place.frozen.read(version.sheet)
