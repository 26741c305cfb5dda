"""Whole copies of the database, each checked before it counts; the newest ten are kept."""

from __future__ import annotations

import contextlib
import re
import sqlite3
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from inspector.storage import database, lock
from inspector.storage.landing import READ_ONLY, UNFINISHED, discard, land, make_folder, write_unfinished
from inspector.storage.trouble import writing

if TYPE_CHECKING:
    from pathlib import Path

FOLDER = "backups"
KEPT = 10
NAME = re.compile(r"library-(\d{6,})-\w+\.sqlite")
WHAT_CHANGES = """
SELECT (SELECT coalesce(max(seq), 0) FROM edits), count(*), count(removed), coalesce(max(touched), 0) FROM records
"""


def listing(folder: Path) -> list[Path]:
    """The backups of the library in this folder, newest first."""
    with contextlib.suppress(OSError):
        found = [p for p in (folder / FOLDER).iterdir() if NAME.fullmatch(p.name)]
        return sorted(found, key=_number, reverse=True)
    return []


def newest_good(folder: Path) -> Path | None:
    """The newest backup that a quick check finds nothing wrong with, or None."""
    return next((path for path in listing(folder) if is_good(path)), None)


def is_good(path: Path) -> bool:
    """Whether the file is a database without fault."""
    try:
        with contextlib.closing(database.open_to_read(path, still=True)) as db:
            return not database.faults(db) and not database.is_empty(db)
    except sqlite3.Error:
        return False


def make(db: sqlite3.Connection, folder: Path, moment: str) -> Path | None:
    """A new checked backup; None when nothing changed since the last or the database has a fault.

    No older backup is touched before the new one is whole. Raises StorageTrouble and sqlite3.Error.
    """
    if not _worth_it(db, folder):
        return None
    home = folder / FOLDER
    make_folder(home)
    unfinished = home / f"{UNFINISHED}{database.NAME}"
    try:
        _copy(db, unfinished)
        if not is_good(unfinished):
            discard(unfinished)
            return None
        target = home / _next_name(folder, moment)
        land(unfinished, target, READ_ONLY)  # SQLite has flushed it
    except BaseException:
        discard(unfinished)
        raise
    for old in listing(folder)[KEPT:]:
        discard(old)
    return target


def restore(folder: Path, backup: Path, moment: str) -> Path:
    """The backup stands as the library; the folder to which the damaged files were moved.

    Raises Locked while a program has the library open, and other StorageTrouble.
    """
    guard = lock.take(folder, moment)
    try:
        unfinished = write_unfinished(folder, [backup.read_bytes()])
        aside = _put_aside(folder, moment)
        land(unfinished, folder / database.NAME)
    except OSError as error:
        raise writing(error, folder) from error
    finally:
        guard.release()
    return aside


def _put_aside(folder: Path, moment: str) -> Path:
    aside = folder / f"damaged-{_stamp(moment)}"
    make_folder(aside)
    for end in ("", *database.BESIDE):
        path = folder / (database.NAME + end)
        if path.exists():
            path.replace(aside / path.name)
    return aside


def _copy(db: sqlite3.Connection, target: Path) -> None:
    discard(target)
    with contextlib.closing(sqlite3.connect(target)) as copy:
        db.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")  # one file that can be read where nothing can be written


def _worth_it(db: sqlite3.Connection, folder: Path) -> bool:
    now = _state(db)
    last = next(iter(listing(folder)), None)
    if last is None:
        return now[1] > 0
    try:
        with contextlib.closing(database.open_to_read(last, still=True)) as old:
            return _state(old) != now
    except sqlite3.Error:
        return True


def _state(db: sqlite3.Connection) -> tuple[int, ...]:
    return tuple(db.execute(WHAT_CHANGES).fetchone())


def _next_name(folder: Path, moment: str) -> str:
    number = max((_number(path) for path in listing(folder)), default=0) + 1
    return f"library-{number:06}-{_stamp(moment)}.sqlite"


def _number(path: Path) -> int:
    found = NAME.fullmatch(path.name)
    return int(found[1]) if found else 0


def _stamp(moment: str) -> str:
    """The moment in a form that every file system takes."""
    try:
        return datetime.fromisoformat(moment).astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")
    except ValueError:
        return re.sub(r"\W", "", moment) or "undated"
