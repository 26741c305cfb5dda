"""Is a profile, a record, a sheet or a bag as it should be? One kind of file, one checker."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from inspector.record.model import Record
    from inspector.storage.library import Library


@dataclass(frozen=True, slots=True)
class Answer:
    """What is not as it should be, each in one sentence that names the file; and what else is to be told of it."""

    problems: tuple[Say, ...] = ()
    notes: tuple[Say, ...] = ()

    @property
    def well(self) -> bool:
        """Whether it is as it should be."""
        return not self.problems


def check(path: Path, library: Library | None = None) -> Answer:
    """What a check of the file or folder finds; ``library`` tells what is newer here."""
    return _checker(path)(path, library)


def _checker(path: Path) -> Callable[[Path, Library | None], Answer]:
    end = path.suffix.casefold()
    if end == ".zip" or (path / "bagit.txt").exists():
        from inspector.packing.check import check_bag

        return check_bag
    if end == ".pdf":
        return _sheet
    return _record if end == ".json" else _profile


def _sheet(path: Path, library: Library | None) -> Answer:
    from inspector.checked import told_of_sheet
    from inspector.storage.paths import data_folder

    try:
        data = path.read_bytes()
    except OSError as error:
        return Answer((say("{path} cannot be read: {why}.", path=path, why=error.strerror),))
    told = told_of_sheet(data, data_folder(), library)
    first = say("{path}: {what}", path=path, what=told.first)
    return Answer((), (first, *told.lines)) if told.well else Answer((first,), told.lines)


def _record(path: Path, _: Library | None) -> Answer:
    read = read_record(path)
    return Answer((read,)) if isinstance(read, Say) else Answer()


def read_record(path: Path) -> Record | Say:
    """The record of a file, or one sentence that says why it is none."""
    from pydantic import ValidationError

    from inspector.record.model import Record

    try:
        return Record.model_validate_json(path.read_bytes())
    except OSError as error:
        return say("{path} cannot be read: {why}.", path=path, why=error.strerror)
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        return say("{path} is not a record: {where}: {why}.", path=path, where=where, why=first["msg"])


def _profile(path: Path, _: Library | None) -> Answer:
    from inspector.profile.read import read_profile

    read = read_profile(path)
    found = [problem for problem in read.problems if problem.stops or read.profile is None]
    return Answer(tuple(say("{problem}", problem=str(problem)) for problem in found))
