"""From a record to a sealed version that is kept with the record it was made from."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from inspector.handover import sellers_copy
from inspector.issuing import Place, issue_of, sealed_sheet
from inspector.record.versions import attached, canonical, next_version, stands_as_sealed, version_of

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import Version
    from inspector.sheet.keys import SealKey

Paper = Literal["A4", "Letter"]


def drawn(profile: Profile, record: Record, place: Place, made_at: str, paper: Paper = "A4") -> bytes:
    """The seller's copy as it stands: the sealed sheet itself while nothing on it was changed, else the next version.

    Raises StorageTrouble.
    """
    from inspector.sheet.pdf import as_pdf

    standing = stands_as_sealed(record)
    if standing is not None:
        return sealed_sheet(standing, place)
    issue = issue_of(profile, record, place)
    return as_pdf(sellers_copy(profile, record, place.photographs, made_at, issue), paper)


def seal_version(profile: Profile, record: Record, place: Place, key: SealKey, at: str, paper: Paper = "A4") -> Version:
    """The next version is drawn, sealed and kept with the record it was made from; the record has yet to name it.

    Raises StorageTrouble.
    """
    from inspector.sheet.checking import reason_of
    from inspector.sheet.pdf import as_pdf
    from inspector.sheet.seal import sealed

    issue = issue_of(profile, record, place, key.fingerprint)
    pdf = as_pdf(sellers_copy(profile, record, place.photographs, at, issue), paper)
    reason = reason_of(record.id, next_version(record))
    sheet = sealed(pdf, attached(record), key, at, reason)
    version = version_of(record, at, sheet, key.fingerprint, tuple(str(line) for line in issue.differences))
    place.frozen.keep(canonical(record))
    place.frozen.keep(sheet)
    return version
