"""What was taken out of the list: kept for 30 days, then gone with the photographs that nothing else names.

A photograph goes in two steps, so that a program that dies in between leaves nothing half done. With the record
goes a line that lists its photographs; the files follow once no record names them and no backup is left that
would bring the record back. A line leaves the list when its file is gone, or is named again.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from inspector.storage import backups, rows

if TYPE_CHECKING:
    import sqlite3
    from pathlib import Path

DAYS_KEPT = 30
LEAVING = ""  # the notes of no record: photographs by SHA-256, each with the first backup made without its record


def kept_until(at: str) -> date:
    """The last day on which what was taken out at that moment can be brought back; no day where it cannot be read."""
    try:
        return (datetime.fromisoformat(at) + timedelta(days=DAYS_KEPT)).date()
    except (ValueError, OverflowError):
        return date.max


def is_over(at: str, now: str) -> bool:
    """Whether the last day of what was taken out at that moment has passed."""
    until = kept_until(at)
    if until == date.max:
        return False
    return datetime.fromisoformat(now).astimezone(datetime.fromisoformat(at).tzinfo).date() > until


def not_before(moment: str, folder: Path) -> str:
    """The moment, or that of the newest backup where the clock stands before it.

    A clock that was set back, as after its battery ran down, would make the 30 days be over at once when it is right.
    """
    newest = next(iter(backups.listing(folder)), None)
    if newest is None:
        return moment
    made = backups.made(newest)
    try:
        return moment if datetime.fromisoformat(moment) >= made else made.isoformat()
    except (ValueError, TypeError):
        return moment


def forget(db: sqlite3.Connection, folder: Path, record_id: str) -> None:
    """Nothing of the record is in the tables, and its photographs are listed as leaving; within one transaction."""
    first_without = str(backups.next_number(folder))
    for sha256 in rows.hashes(db, record_id):
        rows.put_note(db, LEAVING, sha256, first_without)
    rows.forget(db, record_id)


def settled(db: sqlite3.Connection, folder: Path) -> tuple[frozenset[str], frozenset[str]]:
    """The leaving photographs whose files are to go now, and those that are named again and stay."""
    oldest = min((backups.number(path) for path in backups.listing(folder)), default=None)
    waiting = rows.notes(db, LEAVING)
    due = {sha256 for sha256, first in waiting if oldest is None or oldest >= int(first)}
    if not due:
        return frozenset(), frozenset()
    named = due & rows.hashes(db)
    return frozenset(due - named), frozenset(named)
