"""From a record to a sealed version that is kept with the record it was made from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from inspector.handover import sellers_copy
from inspector.record.differing import differences
from inspector.record.model import Record
from inspector.record.versions import (
    attached,
    canonical,
    last_version,
    next_version,
    stands_as_sealed,
    version_of,
)
from inspector.sheet.versioning import Issue
from inspector.storage.trouble import StorageTrouble
from inspector.texts import say

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.money import Version
    from inspector.sheet.keys import SealKey
    from inspector.storage.frozen import Frozen
    from inspector.storage.library import Library
    from inspector.storage.photographs import Photographs

Paper = Literal["A4", "Letter"]


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

    Raises StorageTrouble where the version before cannot be read.
    """
    before = last_version(record)
    if before is None:
        return Issue(fingerprint=fingerprint)
    old = frozen_record(before, place)
    return Issue(before, differences(profile, old, record), fingerprint)


def _issue_or_lost(profile: Profile, record: Record, place: Place, fingerprint: str = "") -> Issue:
    """The same; where the version before is not kept here any more, the sheet says so and is made all the same."""
    try:
        return issue_of(profile, record, place, fingerprint)
    except StorageTrouble:
        lost = say("What differs cannot be told: that version is not kept whole on this computer any more.")
        return Issue(last_version(record), (lost,), fingerprint)


def frozen_record(version: Version, place: Place) -> Record:
    """The whole record as it was when this version was sealed. Raises StorageTrouble."""
    return Record.model_validate_json(place.frozen.read(version.whole))


def sealed_sheet(version: Version, place: Place) -> bytes:
    """The sealed sheet of this version, as it was handed out. Raises StorageTrouble."""
    return place.frozen.read(version.sheet)


def drawn(profile: Profile, record: Record, place: Place, made_at: str, paper: Paper = "A4") -> bytes:
    """The seller's copy as it stands: the sealed sheet itself while nothing on it was changed, else the next version.

    Raises StorageTrouble.
    """
    from inspector.sheet.pdf import as_pdf

    standing = stands_as_sealed(record)
    if standing is not None:
        return sealed_sheet(standing, place)
    issue = _issue_or_lost(profile, record, place)
    return as_pdf(sellers_copy(profile, record, place.photographs, made_at, issue), paper)


def seal_version(profile: Profile, record: Record, place: Place, key: SealKey, at: str, paper: Paper = "A4") -> Version:
    """The next version is drawn, sealed and kept with the record it was made from; the record has yet to name it.

    Raises StorageTrouble.
    """
    from inspector.sheet.checking import reason_of
    from inspector.sheet.pdf import as_pdf
    from inspector.sheet.seal import sealed

    issue = _issue_or_lost(profile, record, place, key.fingerprint)
    pdf = as_pdf(sellers_copy(profile, record, place.photographs, at, issue), paper)
    reason = reason_of(record.id, next_version(record))
    sheet = sealed(pdf, attached(record), key, at, reason)
    version = version_of(record, at, sheet, key.fingerprint, tuple(str(line) for line in issue.differences))
    place.frozen.keep(canonical(record))
    place.frozen.keep(sheet)
    return version
