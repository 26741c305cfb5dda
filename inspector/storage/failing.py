"""Errors of the machine become sentences for the person; errors of the program stay what they are."""

from __future__ import annotations

import errno
import os
import sqlite3
from contextlib import contextmanager
from typing import TYPE_CHECKING

from inspector.storage import backups, database
from inspector.storage.trouble import Damaged, StorageTrouble, writing
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

AS_SYSTEM = {
    sqlite3.SQLITE_FULL: errno.ENOSPC,
    sqlite3.SQLITE_READONLY: errno.EACCES,
    sqlite3.SQLITE_PERM: errno.EACCES,
    sqlite3.SQLITE_CANTOPEN: errno.EACCES,
    sqlite3.SQLITE_BUSY: errno.EBUSY,
    sqlite3.SQLITE_LOCKED: errno.EBUSY,
    sqlite3.SQLITE_IOERR: errno.EIO,
}
DAMAGE = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}
PRIMARY = 0xFF  # the low byte of an extended result code (sqlite.org/rescode.html)


@contextmanager
def environment(folder: Path) -> Iterator[None]:
    """What fails inside for want of disk, leave or health leaves as StorageTrouble; a bug passes unchanged."""
    try:
        yield
    except sqlite3.Error as error:
        trouble = _trouble(error, folder)
        if trouble is None:
            raise
        raise trouble from error


def damaged(folder: Path, what: str) -> Damaged:
    """The trouble of a damaged library, naming the newest good backup and how to put it back."""
    good = backups.newest_good(folder)
    shared = {"file": folder / database.NAME, "what": what}
    if good is None:
        return Damaged(
            say(
                "The library {file} is damaged ({what}) and no good backup was found. Keep the file as it is and"
                " choose another folder to go on. The photographs are kept apart and are still there.",
                **shared,
            )
        )
    return Damaged(
        say(
            "The library {file} is damaged ({what}). The newest good backup is {backup}. To go on from it, move every"
            " file whose name begins with {name} to another folder and copy the backup into their place as {name}."
            " The photographs are kept apart and are still there.",
            **shared,
            backup=good,
            name=database.NAME,
        )
    )


def lost(folder: Path, backup: Path) -> Damaged:
    """The trouble of a library whose database is gone while its backups are there."""
    return Damaged(
        say(
            "The library {file} is not where it was, but its backups are. The newest good one is {backup}. To go on"
            " from it, copy it to {file}; to begin anew, choose another folder.",
            file=folder / database.NAME,
            backup=backup,
        )
    )


def _trouble(error: sqlite3.Error, folder: Path) -> StorageTrouble | None:
    code = getattr(error, "sqlite_errorcode", 0) & PRIMARY
    if code in DAMAGE:
        return damaged(folder, str(error))
    number = AS_SYSTEM.get(code)
    if number is None:
        return None
    return writing(OSError(number, os.strerror(number)), folder)
