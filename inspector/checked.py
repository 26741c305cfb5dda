"""What is said of a sheet that somebody holds: as sealed or not, by whose key, which version, what is newer here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from inspector.issuing import frozen_record, place_of
from inspector.profile.read import read_profile
from inspector.record.differing import differences
from inspector.record.versions import last_version, sha256_of, stands_as_sealed
from inspector.sheet.keys import grouped, own_fingerprints
from inspector.sheet.words import moment
from inspector.storage.trouble import Damaged, NewerFormat, StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from inspector.record.model import Record
    from inspector.record.money import Version
    from inspector.sheet.checking import SheetCheck
    from inspector.storage.library import Library, Loaded

MOST = 20  # differences of the record inside that are told


@dataclass(frozen=True, slots=True)
class Here:
    """What the library knows of the record and version that a sheet names; nothing where there is no library."""

    library: Library | None = None
    loaded: Loaded | None = None
    version: Version | None = None
    trouble: Say | None = None  # why the record cannot be read here, where it is here
    same_file: bool = False  # the very file that was sealed here
    same_record: bool = False  # the record inside is the one that was frozen here

    @property
    def last(self) -> Version | None:
        """The version sealed last here."""
        return last_version(self.loaded.record) if self.loaded else None

    @property
    def changed_since(self) -> bool:
        """Whether the record here was changed since its last version was sealed."""
        return self.loaded is not None and self.last is not None and stands_as_sealed(self.loaded.record) is None

    @property
    def another(self) -> bool:
        """Whether the version that the sheet claims to be was sealed here as another file."""
        return self.version is not None and not self.same_file

    def plain(self) -> dict[str, Any] | None:
        """All of it as data; None where there is no library to compare with."""
        if self.library is None:
            return None
        return {
            "record": self.loaded is not None,
            "version": self.version is not None,
            "same_file": self.same_file,
            "same_record": self.same_record,
            "newest_version": self.last.number if self.last else None,
            "newest_sealed": self.last.at if self.last else None,
            "changed_since": self.changed_since,
        }


@dataclass(frozen=True, slots=True)
class Told:
    """What is said of a checked sheet: whether all is as it should be, in one sentence first, then the rest."""

    check: SheetCheck
    here: Here
    own_key: bool
    first: Say
    lines: tuple[Say, ...]

    @property
    def well(self) -> bool:
        """Whether it is as it was sealed, and no other than the file that was sealed here, as far as that is known."""
        return self.check.as_sealed and not self.here.another

    def all(self) -> tuple[Say, ...]:
        """Every sentence, the first one first."""
        return (self.first, *self.lines)

    def plain(self) -> dict[str, Any]:
        """What was found as data."""
        check, key = self.check, None
        if check.fingerprint:
            key = {"fingerprint": check.fingerprint, "of_this_computer": self.own_key}
        changed = () if check.as_sealed else (check.changed, *(r for r in check.reasons if r != check.changed))
        return {
            "sealed": check.sealed,
            "as_sealed": check.as_sealed,
            "changed": list(changed),
            "key": key,
            "record": check.record_id or None,
            "version": check.version,
            "sealed_at": check.at or None,
            "here": self.here.plain(),
        }


def told_of_sheet(data: bytes, folder: Path, library: Library | None) -> Told:
    """What there is to say of a sheet: as sealed or changed where, by whose key, which version, what is newer here.

    ``folder`` is the data folder, for the keys that were made here; without a library nothing is compared.
    """
    from inspector.sheet.checking import check_sheet

    check = check_sheet(data)
    here = _here(check, data, library)
    kept = _kept(here.version, library)
    if not check.as_sealed and kept is not None:
        check = check_sheet(data, kept)
    own = check.fingerprint in own_fingerprints(folder)
    lines = [*_of_key(check, own), *_of_version(check)]
    if library is not None and check.record_id:
        lines += _of_library(check, here, library)
    rest = tuple(reason for reason in check.reasons if reason != check.changed)
    return Told(check, here, own, _first(check, here), (*rest, *lines))


def _first(check: SheetCheck, here: Here) -> Say:
    if check.as_sealed and here.another and here.version is not None:
        return say(
            "Sealed, but it is not the file that was sealed here as version {version}. Nothing in it was changed since"
            " its own seal.",
            version=here.version.number,
        )
    if check.as_sealed:
        return say("As sealed. Nothing in the file was changed since.")
    if check.sealed:
        return say("Not as sealed. {what}", what=check.changed)
    return say("Not sealed. {what}", what=check.changed)


def _of_key(check: SheetCheck, own: bool) -> Iterator[Say]:
    if not check.fingerprint:
        return
    whose = say("a key of this computer") if own else say("a key that is not of this computer")
    yield say("The seal is by {whose}: {key}.", whose=whose, key=grouped(check.fingerprint))
    if not own:
        yield say(
            "Compare these figures with those that the other person’s computer shows. What is printed on the sheet does"
            " not tell whose key it is."
        )


def _of_version(check: SheetCheck) -> Iterator[Say]:
    if check.record is None or check.version is None:
        return
    when = moment(check.at) if check.at else say("a time not noted")
    template = "It says: record {record}, version {version}, sealed on {when} by the clock of that computer."
    if not check.sealed:
        template = "It says: record {record}, version {version}."
    yield say(template, record=check.record_id, version=check.version, when=when)
    before = last_version(check.record)
    if before is not None and before.key and check.fingerprint not in ("", before.key):
        yield say(
            "It says that version {version} before it was sealed by another key: {key}.",
            version=before.number, key=grouped(before.key),
        )  # fmt: skip


def _of_library(check: SheetCheck, here: Here, library: Library) -> Iterator[Say]:
    loaded, version = here.loaded, here.version
    if loaded is None:
        yield here.trouble or say("No record {record} is in the library here.", record=check.record_id)
        return
    if version is None:
        yield say("The library here knows no sealed version {version} of this record.", version=check.version)
    elif here.same_file:
        yield say("It is the very file that was sealed here as version {version}.", version=version.number)
    else:
        yield from _another(check, here, version, library)
    yield from _newer(check, here)


def _another(check: SheetCheck, here: Here, version: Version, library: Library) -> Iterator[Say]:
    """How a file stands to the one that was sealed here under its record and version."""
    if check.fingerprint and version.key and check.fingerprint != version.key:
        yield say("Version {version} was sealed here by another key: {key}.", version=version.number,
                  key=grouped(version.key))  # fmt: skip
    if here.same_record and not check.as_sealed:
        yield say("The record inside is the one kept here as version {version}.", version=version.number)
    elif here.same_record:
        yield say("The record inside is the one kept here as version {version}; what its pages say may differ all the"
                  " same.", version=version.number)  # fmt: skip
    elif check.record is not None and here.loaded is not None:
        yield say("The record inside is not the one kept here as version {version}.", version=version.number)
        yield from _inside(check.record, here.loaded, version, library)


def _inside(record: Record, loaded: Loaded, version: Version, library: Library) -> Iterator[Say]:
    """Where the record inside a sheet differs from the one that was frozen here, as far as both can be read."""
    profile = read_profile(loaded.profile_folder).profile
    try:
        old = frozen_record(version, place_of(library))
    except StorageTrouble:
        return
    if profile is not None:
        yield from differences(profile, old, record)[:MOST]


def _newer(check: SheetCheck, here: Here) -> Iterator[Say]:
    last = here.last
    if last is not None and check.version is not None and last.number > check.version:
        yield say("Newer here: version {version}, sealed on {when}.", version=last.number, when=moment(last.at))
    if last is not None and here.changed_since:
        yield say("The record here was changed since version {version} was sealed.", version=last.number)


def _here(check: SheetCheck, data: bytes, library: Library | None) -> Here:
    if library is None or not check.record_id:
        return Here(library)
    try:
        loaded = library.load(check.record_id)
    except (Damaged, NewerFormat) as trouble:
        return Here(library, trouble=trouble.said)
    except StorageTrouble:
        return Here(library)
    version = next((v for v in loaded.record.versions if v.number == check.version), None)
    if version is None:
        return Here(library, loaded)
    same_record = bool(check.attached) and version.sha256 == sha256_of(check.attached)
    same_file = version.sheet == sha256_of(data)
    return Here(library, loaded, version, same_file=same_file, same_record=same_record)


def _kept(version: Version | None, library: Library | None) -> bytes | None:
    if version is None or library is None:
        return None
    try:
        return library.frozen.read(version.sheet)
    except StorageTrouble:
        return None
