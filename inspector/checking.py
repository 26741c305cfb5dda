"""Is a profile, a record, a sheet or a bag as it should be? One kind of file, one checker; the answer as data too."""

from __future__ import annotations

import stat
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from inspector.answer import Answer, Kind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.library import Library

    Checker = Callable[[Path, Library | None], "Answer"]

LARGEST = 300_000_000  # bytes of a sheet or record that is read; the largest sheet has a twentieth of it
ENDS: dict[str, Kind] = {".zip": "bag", ".pdf": "sheet", ".json": "record", ".toml": "profile"}
BEGINS: tuple[tuple[bytes, Kind], ...] = ((b"%PDF-", "sheet"), (b"PK\x03\x04", "bag"), (b"PK\x05\x06", "bag"))


def check(path: Path, library: Library | None = None) -> Answer:
    """What a check of the file or folder finds; ``library`` tells what is newer here."""
    kind = kind_of(path)
    if isinstance(kind, Say):
        return Answer((kind,))
    return replace(CHECKERS[kind](path, library), kind=kind)


def kind_of(path: Path) -> Kind | Say:
    """What kind of file it is, by how it begins and else by its name; a sentence where it cannot be looked into."""
    try:
        if path.is_dir():
            return "bag" if (path / "bagit.txt").exists() else "profile"
        if not stat.S_ISREG(path.stat().st_mode):
            return say("It is a device or a pipe, not a file. Give the name of a file.")
        with path.open("rb") as file:
            head = file.read(1024)
    except OSError as error:
        return _unread(error)
    except ValueError:  # a name that no file can have
        return say("No file can have that name.")
    return _kind(path, head)


def _kind(path: Path, head: bytes) -> Kind:
    found = next((kind for begin, kind in BEGINS if head.startswith(begin)), None)
    return found or ENDS.get(path.suffix.casefold()) or ("record" if head.lstrip()[:1] == b"{" else "unknown")


def _unread(error: OSError) -> Say:
    return say("It cannot be read: {why}. Check name and rights.", why=error.strerror or type(error).__name__)


def _bytes(path: Path) -> bytes | Say:
    """All of the file, unless it is larger than any of ours."""
    large = say("It is larger than {most} MB, which nothing made here is; it was not checked.",
                most=LARGEST // 1_000_000)  # fmt: skip
    try:
        if path.stat().st_size > LARGEST:
            return large
        with path.open("rb") as file:
            data = file.read(LARGEST + 1)
    except OSError as error:
        return _unread(error)
    return data if len(data) <= LARGEST else large


# one kind, one checker


def _sheet(path: Path, library: Library | None) -> Answer:
    from inspector.storage.paths import data_folder

    data = _bytes(path)
    if isinstance(data, Say):
        return Answer((data,))
    return of_sheet(data, library.folder if library is not None else data_folder(), library)


def of_sheet(data: bytes, folder: Path, library: Library | None) -> Answer:
    """What a check of these bytes as a sheet finds; ``folder`` is the data folder with the keys made here."""
    from inspector.checked import told_of_sheet

    told = told_of_sheet(data, folder, library)
    return Answer(() if told.well else (told.first,), told.lines, told.plain(), told.first, "sheet")


def _bag(path: Path, library: Library | None) -> Answer:
    from inspector.packing.check import check_bag

    return check_bag(path, library)


def _record(path: Path, library: Library | None) -> Answer:
    record = read_record(path)
    if isinstance(record, Say):
        return Answer((record,))
    here = _record_here(record, library)
    facts = {
        "record": record.id, "format": record.format, "created": record.created, "sealed": False,
        "machine": record.claim.model or record.profile.title, "profile": record.profile.model_dump(mode="json"),
        "findings": len(record.findings), "photographs": len(record.photographs),
        "versions": [{"version": v.number, "sealed_at": v.at, "key": v.key} for v in record.versions], "here": here,
    }  # fmt: skip
    notes = (
        say("Inspection {id} of {machine}, begun {created}: {findings} findings, {photographs} photographs.",
            id=record.id, machine=facts["machine"], created=record.created[:10], findings=len(record.findings),
            photographs=len(record.photographs)),
        say("A record file carries no seal, so nothing tells whether it was changed."),
        *_said_here(record, here),
    )  # fmt: skip
    return Answer((), notes, facts)


def _record_here(record: Record, library: Library | None) -> dict[str, Any] | None:
    """How the record of this id in the library stands to it; None where there is no library."""
    from inspector.record.versions import last_version
    from inspector.storage.trouble import StorageTrouble

    if library is None:
        return None
    try:
        kept = library.load(record.id).record
    except StorageTrouble:
        return {"record": False, "same": False, "newest_version": None}
    last = last_version(kept)
    return {"record": True, "same": kept == record, "newest_version": last.number if last else None}


def _said_here(record: Record, here: dict[str, Any] | None) -> Iterator[Say]:
    if here is None:
        return
    if not here["record"]:
        yield say("No record {record} is in the library here.", record=record.id)
    elif here["same"]:
        yield say("It is in the library here, the same.")
    else:
        yield say("In the library here this inspection is not the same.")
    newest = max((version.number for version in record.versions), default=0)
    if (here["newest_version"] or 0) > newest:
        yield say("Newer here: version {version}.", version=here["newest_version"])


def read_record(path: Path) -> Record | Say:
    """The record of a file, or one sentence that says why it is none."""
    from pydantic import ValidationError

    from inspector.record.model import Record

    data = _bytes(path)
    if isinstance(data, Say):
        return data
    try:
        return Record.model_validate_json(data)
    except ValidationError as error:
        first = error.errors(include_url=False, include_input=False)[0]
        where = ".".join(str(part) for part in first["loc"])
        if not where:
            return say("It is not a record: {why}.", why=first["msg"])
        return say("It is not a record: {where}: {why}.", where=where, why=first["msg"])


def _profile(path: Path, _: Library | None) -> Answer:
    from inspector.profile.read import read_profile

    read = read_profile(path)
    stopping = [problem for problem in read.problems if problem.stops or read.profile is None]
    others = [problem for problem in read.problems if problem not in stopping]
    problems, notes = (tuple(say("{problem}", problem=str(p)) for p in some) for some in (stopping, others))
    if read.profile is None:
        return Answer(problems, notes)
    return Answer(problems, (*_shipped(read.profile), *notes), {**_of_profile(read.profile), "sha256": read.sha256})


def _of_profile(profile: Profile) -> dict[str, Any]:
    return {
        "profile": profile.id, "version": profile.version, "title": profile.title, "maker": profile.maker,
        "model_years": list(profile.model_years), "items": sum(1 for _ in profile.items()), "sealed": False,
    }  # fmt: skip


def _shipped(profile: Profile) -> Iterator[Say]:
    """Where the profile of this id that ships here is another version."""
    from inspector.profile.read import read_profile
    from inspector.resource import sample_profiles

    yield say("Profile {id}, version {version}: {title}.", id=profile.id, version=profile.version, title=profile.title)
    here = read_profile(sample_profiles() / profile.id).profile
    if here is not None and here.version != profile.version:
        yield say("The profile of this name that ships here is version {version}.", version=here.version)


def _unknown(_: Path, __: Library | None) -> Answer:
    return Answer((say("It is neither a profile, a record, a sheet nor a bag. Give the name of one of these."),))


CHECKERS: dict[Kind, Checker] = {
    "profile": _profile, "record": _record, "sheet": _sheet, "bag": _bag, "unknown": _unknown,
}  # fmt: skip
