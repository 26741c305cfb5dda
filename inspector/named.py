"""What a command is told to work on: a record file, a bag, an id of the library, a profile or its name."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from inspector.clock import now
from inspector.terminal import MISUSE, Stop
from inspector.texts import Say, tr

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.library import Library


def open_library(*, look_only: bool = True) -> Library:
    """The user's library; read beside a window that has it open unless something is to be written."""
    from inspector.storage.database import NAME
    from inspector.storage.library import Library
    from inspector.storage.paths import data_folder

    folder = data_folder()
    return Library.open(folder, now, look_only=look_only and (folder / NAME).exists())


def library_if_any() -> Library | None:
    """The user's library, where there is one that can be read."""
    from inspector.storage.database import NAME
    from inspector.storage.paths import data_folder
    from inspector.storage.trouble import StorageTrouble

    try:
        return open_library() if (data_folder() / NAME).exists() else None
    except StorageTrouble:  # what is checked is another thing
        return None


def found(file: str) -> tuple[Profile, Record, Library | None]:
    """Profile and record of a record file, a bag or an id; with the open library, where they came out of it.

    Raises Stop and StorageTrouble.
    """
    from inspector.resource import sample_profiles

    path = Path(file)
    kind = path.suffix.casefold()
    if kind == ".json":
        record = _record_file(path)
        return read_at(sample_profiles() / record.profile.id), record, None
    if kind == ".zip" or (path / "bagit.txt").is_file():
        return *_bag(path), None
    library = open_library()
    try:
        profile, record = from_library(library, file)
    except BaseException:
        library.close()
        raise
    return profile, record, library


def _bag(path: Path) -> tuple[Profile, Record]:
    from inspector.packing.take import read_bag
    from inspector.storage.trouble import StorageTrouble

    try:
        return read_bag(path)
    except StorageTrouble as trouble:
        said = tr(trouble.said)
        raise Stop(said if str(path) in said else f"{path}: {said}") from trouble


def _record_file(path: Path) -> Record:
    from inspector.checking import read_record

    record = read_record(path)
    if isinstance(record, Say):
        raise Stop(f"{path}: {tr(record)}")
    return record


def from_library(library: Library, record_id: str) -> tuple[Profile, Record]:
    """The record of this id and the profile as it was used for it. Raises Stop and StorageTrouble."""
    loaded = library.load(record_id)
    return read_at(loaded.profile_folder), loaded.record


def profile_at(name: str) -> Profile:
    """The profile of a folder, or the one of that name that ships."""
    from inspector.profile.find import find_profiles
    from inspector.resource import sample_profiles

    if Path(name).is_dir():
        return read_at(Path(name))
    shipped = find_profiles([sample_profiles()])
    names = [folder.name for folder in shipped]
    if name not in names:
        known = ", ".join(names)
        raise Stop(tr("{name} is neither a folder nor a profile that ships ({known}).", name=name, known=known), MISUSE)
    return read_at(sample_profiles() / name)


def profile_for_blank(file: str, year: int | None) -> tuple[Profile, int | None]:
    """The profile of a blank sheet, and the model year that is asked for or claimed."""
    path = Path(file)
    if (path.is_dir() and not (path / "bagit.txt").exists()) or path.suffix.casefold() == ".toml":
        return read_at(path), year
    from inspector.resource import sample_profiles

    shipped = sample_profiles() / path.name
    if path.name == file and shipped.is_dir():
        return read_at(shipped), year
    profile, record, library = found(file)
    if library is not None:
        library.close()
    return profile, year or record.claim.model_year


def read_at(folder: Path) -> Profile:
    """The profile of this folder or file. Raises Stop with what is wrong with it."""
    from inspector.profile.read import read_profile

    read = read_profile(folder)
    if read.profile is None:
        raise Stop("; ".join(str(problem) for problem in read.problems[:5]))
    return read.profile
