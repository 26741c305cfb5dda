"""Opening the database of a library: to write where that can be, else to read, with a sentence that says why."""

from __future__ import annotations

import os
import tempfile
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.storage import backups, database, lock
from inspector.storage.failing import damaged, environment, lost
from inspector.storage.landing import make_folder
from inspector.storage.trouble import NewerFormat, ReadOnly, StorageTrouble
from inspector.texts import Say, say, tr

if TYPE_CHECKING:
    import sqlite3


@dataclass(slots=True)
class Opened:
    """An open database, and what has to be let go with it; ``notice`` says why it cannot be written."""

    db: sqlite3.Connection
    held: ExitStack
    notice: Say | None = None

    @property
    def read_only(self) -> bool:
        """Whether it can only be read."""
        return self.notice is not None

    def close(self) -> None:
        """The database and the lock of its folder are let go."""
        self.held.close()


def open_database(folder: Path, since: str, *, look_only: bool = False) -> Opened:
    """The checked database of the folder, made when there was none.

    Raises Locked, ReadOnly (where there is nothing to read yet), NewerFormat (where this program finds none of
    its tables), Damaged and other StorageTrouble.
    """
    with environment(folder), ExitStack() as held:
        opened = _to_look(folder, held) if look_only else _to_work(folder, since, held)
        fault = database.faults(opened.db)
        if fault:
            raise damaged(folder, fault)
        opened.held = held.pop_all()
        return opened


def _to_look(folder: Path, held: ExitStack) -> Opened:
    file = folder / database.NAME
    if not file.exists():
        raise StorageTrouble(say("There is no library in {folder}. Open one there first.", folder=folder))
    if _writable(folder):
        db = _held(database.open_to_read(file), held)
    else:
        spare = held.enter_context(tempfile.TemporaryDirectory())
        db = _held(database.open_where_nothing_can_be_written(file, Path(spare)), held)
    if database.is_empty(db):
        raise StorageTrouble(say("There is nothing in the library in {folder} yet.", folder=folder))
    newer = _newer(folder, database.format_of(db))
    if newer and not database.is_known(db):
        raise NewerFormat(newer)
    return Opened(db, held, newer or say("The library was opened to be read only."))


def _to_work(folder: Path, since: str, held: ExitStack) -> Opened:
    file = folder / database.NAME
    try:
        make_folder(folder)
        _must_be_writable(file)
        guard = lock.take(folder, since)
    except ReadOnly as trouble:
        if not file.exists():
            raise
        found = _to_look(folder, held)
        found.notice = say("{why} Until then everything can be read and nothing changed.", why=trouble.said)
        return found
    held.callback(guard.release)
    return _locked(folder, file, held)


def _locked(folder: Path, file: Path, held: ExitStack) -> Opened:
    if file.exists():
        database.roll_back(file)
        probe = database.open_to_read(file)
        try:
            written, empty = database.format_of(probe), database.is_empty(probe)
        finally:
            probe.close()
        if written > database.FORMAT:
            held.pop_all().close()
            return _to_look(folder, held)
        if not written and not empty:
            raise StorageTrouble(
                say("{file} is not a library of this program. Move it away, or choose another folder.", file=file)
            )
        if empty and backups.newest_good(folder):  # as a file system may leave it that lost its power
            raise damaged(folder, tr("there is nothing in it"))
    elif backup := backups.newest_good(folder):  # an empty library in its place would push the backups out
        raise lost(folder, backup)
    db = _held(database.open_to_write(file), held)
    if database.is_empty(db):
        database.make(db)
    return Opened(db, held)


def _held(db: sqlite3.Connection, held: ExitStack) -> sqlite3.Connection:
    held.callback(db.close)
    return db


def _writable(path: Path) -> bool:
    """Whether the system lets this program write there; the file is not opened, as closing it would drop locks."""
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)


def _must_be_writable(file: Path) -> None:
    if file.exists() and not _writable(file):
        raise ReadOnly(say("{file} cannot be written. Allow writing there, or choose another folder.", file=file))


def _newer(folder: Path, written: int) -> Say | None:
    if written <= database.FORMAT:
        return None
    return say(
        "The library in {folder} was last used by a newer version of this program (format {written}; this one writes"
        " {known}). What this version knows of it can be read, nothing can be changed. Install the newer version to"
        " go on.",
        folder=folder,
        written=written,
        known=database.FORMAT,
    )
