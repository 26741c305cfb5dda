"""What is said of a sheet that somebody holds: as sealed or not, by whose key, which version, what is newer here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.profile.read import read_profile
from inspector.record.differing import differences
from inspector.record.versions import last_version, sha256_of, stands_as_sealed
from inspector.sealing import frozen_record, place_of
from inspector.sheet.keys import grouped, own_fingerprints
from inspector.sheet.words import moment
from inspector.storage.trouble import StorageTrouble
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
class Told:
    """What is said of a checked sheet: whether all is as it should be, in one sentence first, then the rest."""

    check: SheetCheck
    well: bool
    first: Say
    lines: tuple[Say, ...]

    def all(self) -> tuple[Say, ...]:
        """Every sentence, the first one first."""
        return (self.first, *self.lines)


def told_of_sheet(data: bytes, folder: Path, library: Library | None) -> Told:
    """What there is to say of a sheet: as sealed or changed where, by whose key, which version, what is newer here.

    ``folder`` is the data folder, for the keys that were made here; without a library nothing is compared.
    """
    from inspector.sheet.checking import check_sheet

    check = check_sheet(data)
    loaded = _loaded(check, library)
    versions = loaded.record.versions if loaded else ()
    version = next((v for v in versions if v.number == check.version), None)
    kept = _kept(version, library)
    if not check.as_sealed and kept is not None:
        check = check_sheet(data, kept)
    lines = [*_of_key(check, own_fingerprints(folder)), *_of_version(check)]
    if library is not None and check.record_id:
        lines += _of_library(check, data, loaded, version, library)
    return Told(check, check.as_sealed, _first(check), (*check.reasons[1:], *lines))


def _first(check: SheetCheck) -> Say:
    if check.as_sealed:
        return say("As sealed. Nothing in the file was changed since.")
    if check.sealed:
        return say("Not as sealed. {what}", what=check.changed)
    return say("Not sealed. {what}", what=check.changed)


def _of_key(check: SheetCheck, own: frozenset[str]) -> Iterator[Say]:
    if not check.fingerprint:
        return
    whose = say("a key of this computer") if check.fingerprint in own else say("a key that is not of this computer")
    yield say("The seal is by {whose}: {key}.", whose=whose, key=grouped(check.fingerprint))
    if check.fingerprint not in own:
        yield say("Compare these figures with those that the other person’s computer shows.")


def _of_version(check: SheetCheck) -> Iterator[Say]:
    if check.record is None or check.version is None:
        return
    when = moment(check.at) if check.at else say("a time not noted")
    template = "It says: record {record}, version {version}, sealed on {when} by the clock of that computer."
    if not check.sealed:
        template = "It says: record {record}, version {version}."
    yield say(template, record=check.record_id, version=check.version, when=when)


def _of_library(
    check: SheetCheck, data: bytes, loaded: Loaded | None, version: Version | None, library: Library
) -> Iterator[Say]:
    if loaded is None:
        yield say("No record {record} is in the library here.", record=check.record_id)
        return
    if version is None:
        yield say("The library here knows no sealed version {version} of this record.", version=check.version)
    elif version.sheet == sha256_of(data):
        yield say("It is the very file that was sealed here as version {version}.", version=version.number)
    elif version.sha256 == sha256_of(check.attached):
        yield say("The record inside is the one kept here as version {version}.", version=version.number)
    elif check.record is not None:
        yield say("The record inside is not the one kept here as version {version}.", version=version.number)
        yield from _inside(check.record, loaded, version, library)
    yield from _newer(check, loaded.record)


def _inside(record: Record, loaded: Loaded, version: Version, library: Library) -> Iterator[Say]:
    """Where the record inside a sheet differs from the one that was frozen here, as far as both can be read."""
    profile = read_profile(loaded.profile_folder).profile
    try:
        old = frozen_record(version, place_of(library))
    except StorageTrouble:
        return
    if profile is not None:
        yield from differences(profile, old, record)[:MOST]


def _newer(check: SheetCheck, record: Record) -> Iterator[Say]:
    last = last_version(record)
    if last is not None and check.version is not None and last.number > check.version:
        yield say("Newer here: version {version}, sealed on {when}.", version=last.number, when=moment(last.at))
    if last is not None and stands_as_sealed(record) is None:
        yield say("The record here was changed since version {version} was sealed.", version=last.number)


def _loaded(check: SheetCheck, library: Library | None) -> Loaded | None:
    if library is None or not check.record_id:
        return None
    try:
        return library.load(check.record_id)
    except StorageTrouble:
        return None


def _kept(version: Version | None, library: Library | None) -> bytes | None:
    if version is None or library is None:
        return None
    try:
        return library.frozen.read(version.sheet)
    except StorageTrouble:
        return None
