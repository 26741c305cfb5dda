"""Whole copies of the database, each checked before it counts; the newest ten are kept."""

from __future__ import annotations

import contextlib
import json
import re
import sqlite3
from dataclasses import dataclass
from datetime import UTC, datetime
from itertools import chain, count
from typing import TYPE_CHECKING, Any

from inspector.storage import database, lock
from inspector.storage.landing import READ_ONLY, UNFINISHED, discard, land, make_folder, write_unfinished
from inspector.storage.trouble import Damaged, writing
from inspector.texts import say

if TYPE_CHECKING:
    from pathlib import Path

FOLDER = "backups"
KEPT = 10
NAME = re.compile(r"library-(\d{6,})-(\w+)\.sqlite")
STAMP = "%Y%m%dT%H%M%SZ"
WHAT_CHANGES = """
SELECT (SELECT coalesce(max(seq), 0) FROM edits), count(*), count(removed), coalesce(max(touched), 0),
(SELECT at FROM edits ORDER BY seq DESC LIMIT 1), (SELECT updated FROM records ORDER BY touched DESC LIMIT 1)
FROM records
"""  # the moments tell two libraries apart that came from one backup and were changed equally often
LATEST = "FROM records WHERE removed IS NULL ORDER BY touched DESC LIMIT 1"
WHAT_IT_HOLDS = f"""
SELECT (SELECT count(*) FROM records WHERE removed IS NULL), (SELECT summary {LATEST}), (SELECT updated {LATEST})
"""


def listing(folder: Path) -> list[Path]:
    """The backups of the library in this folder, newest first."""
    with contextlib.suppress(OSError):
        found = [p for p in (folder / FOLDER).iterdir() if NAME.fullmatch(p.name)]
        return sorted(found, key=number, reverse=True)
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
    """A new checked backup; None when nothing changed since the last.

    No older backup is touched before the new one is whole. Raises Damaged where the copy has a fault, other
    StorageTrouble, and sqlite3.Error.
    """
    if not _worth_it(db, folder):
        return None
    home = folder / FOLDER
    make_folder(home)
    unfinished = home / f"{UNFINISHED}{database.NAME}"
    try:
        _copy(db, unfinished)
        if not is_good(unfinished):
            raise Damaged(
                say(
                    "The copy of the library had a fault, so no backup was made of it. Close the program and open it"
                    " again: then the library is checked."
                )
            )
        target = home / _next_name(folder, moment)
        land(unfinished, target, READ_ONLY)  # SQLite has flushed it
    except BaseException:
        discard(unfinished)
        raise
    for old in listing(folder)[KEPT:]:
        discard(old)
    return target


@dataclass(frozen=True, slots=True)
class Backup:
    """One backup: when it was made, and what it holds as far as it can be read."""

    path: Path
    made: datetime
    sound: bool
    machines: int = 0
    last: str = ""  # the machine that was changed last
    changed: str = ""  # and when


def described(path: Path) -> Backup:
    """What the backup holds; ``sound`` is false where a quick check finds a fault. Raises no error."""
    when = made(path)
    if not is_good(path):
        return Backup(path, when, sound=False)
    try:
        with contextlib.closing(database.open_to_read(path, still=True)) as db:
            machines, text, changed = db.execute(WHAT_IT_HOLDS).fetchone()
    except sqlite3.Error:
        return Backup(path, when, sound=False)
    last = ""
    with contextlib.suppress(ValueError, AttributeError):
        last = str(json.loads(text).get("title", "")) if text else ""
    return Backup(path, when, sound=True, machines=machines, last=last, changed=changed or "")


def restore(folder: Path, backup: Path, moment: str) -> Path:
    """The backup stands as the library; the folder to which the damaged files were moved.

    Raises Damaged for a backup with a fault, Locked while a program has the library open, and other StorageTrouble.
    """
    guard = lock.take(folder, moment)
    try:
        if not is_good(backup):
            raise Damaged(say("The backup {backup} is damaged too. Choose another one.", backup=backup))
        unfinished = write_unfinished(folder, [backup.read_bytes()])
        aside = _put_aside(folder, moment)
        land(unfinished, folder / database.NAME)
    except OSError as error:
        raise writing(error, folder) from error
    finally:
        guard.release()
    return aside


def set_aside(folder: Path, moment: str) -> Path:
    """The files of the library were moved to the folder given back, so that an empty library can be begun.

    Raises Locked while a program has the library open, and other StorageTrouble.
    """
    guard = lock.take(folder, moment)
    try:
        return _put_aside(folder, moment)
    except OSError as error:
        raise writing(error, folder) from error
    finally:
        guard.release()


def aside_folder(folder: Path, moment: str) -> Path:
    """Where damaged files would be moved now: a folder that is not there yet, so that none is ever overwritten."""
    plain = folder / f"damaged-{_stamp(moment)}"
    others = (plain.with_name(f"{plain.name}-{n}") for n in count(2))
    return next(path for path in chain([plain], others) if not path.exists())


def _put_aside(folder: Path, moment: str) -> Path:
    aside = aside_folder(folder, moment)
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
        return bool(now[1])
    try:
        with contextlib.closing(database.open_to_read(last, still=True)) as old:
            return _state(old) != now
    except sqlite3.Error:
        return True


def _state(db: sqlite3.Connection) -> tuple[Any, ...]:
    return tuple(db.execute(WHAT_CHANGES).fetchone())


def _next_name(folder: Path, moment: str) -> str:
    return f"library-{next_number(folder):06}-{_stamp(moment)}.sqlite"


def next_number(folder: Path) -> int:
    """The number of the backup that is made next."""
    return max((number(path) for path in listing(folder)), default=0) + 1


def number(path: Path) -> int:
    """The number that this backup bears; 0 where its name is not that of a backup."""
    found = NAME.fullmatch(path.name)
    return int(found[1]) if found else 0


def made(path: Path) -> datetime:
    """When the backup was made, by its name or else by its file; in UTC."""
    found = NAME.fullmatch(path.name)
    with contextlib.suppress(ValueError):
        return datetime.strptime(found[2] if found else "", STAMP).replace(tzinfo=UTC)
    with contextlib.suppress(OSError):
        return datetime.fromtimestamp(path.stat().st_mtime, UTC)
    return datetime.fromtimestamp(0, UTC)


def _stamp(moment: str) -> str:
    """The moment in a form that every file system takes."""
    try:
        return datetime.fromisoformat(moment).astimezone(UTC).strftime(STAMP)
    except ValueError:
        return re.sub(r"\W", "", moment) or "undated"
