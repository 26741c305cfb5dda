"""The one database file of a library: how it is opened, made and checked."""

from __future__ import annotations

import shutil
import sqlite3
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

NAME = "library.sqlite"
FORMAT = 1  # a program that knows only a smaller one reads and does not write
BESIDE = ("-wal", "-shm")
HALF_MADE = "-journal"  # beside the file only until its write-ahead log is switched on
PATIENCE = 2.0  # seconds for a reader or a virus scanner to let go

READ = {
    "records": "id, updated, touched, removed, profile, summary, search",
    "edits": "seq, record, kind, joined, at, who, label, format, step, inverse",
    "snapshots": "record, seq, format, body",
    "notes": "record, key, value",
}
SCHEMA = f"""
CREATE TABLE records (
    id TEXT PRIMARY KEY, created TEXT NOT NULL, updated TEXT NOT NULL, touched INTEGER NOT NULL,
    removed TEXT, profile TEXT NOT NULL, summary TEXT NOT NULL, search TEXT NOT NULL
);
CREATE INDEX records_touched ON records (touched);
CREATE TABLE edits (
    seq INTEGER PRIMARY KEY AUTOINCREMENT, record TEXT NOT NULL REFERENCES records (id),
    kind TEXT NOT NULL CHECK (kind IN ('do', 'undo', 'redo')), joined INTEGER NOT NULL DEFAULT 0,
    at TEXT NOT NULL, who TEXT NOT NULL, label TEXT NOT NULL, format INTEGER NOT NULL,
    step TEXT NOT NULL, inverse TEXT NOT NULL
);
CREATE INDEX edits_record ON edits (record, seq);
CREATE TRIGGER edits_stay BEFORE UPDATE ON edits
    BEGIN SELECT RAISE(ABORT, 'an edit never changes'); END;
CREATE TRIGGER edits_are_kept BEFORE DELETE ON edits
    WHEN (SELECT removed FROM records WHERE id = OLD.record) IS NULL
    BEGIN SELECT RAISE(ABORT, 'the edits of a record in use are kept'); END;
CREATE TABLE snapshots (
    record TEXT NOT NULL REFERENCES records (id), seq INTEGER NOT NULL, format INTEGER NOT NULL,
    body TEXT NOT NULL, PRIMARY KEY (record, seq)
);
CREATE TABLE notes (
    record TEXT NOT NULL, key TEXT NOT NULL, value TEXT NOT NULL, PRIMARY KEY (record, key)
);
PRAGMA user_version = {FORMAT};
"""


def open_to_write(file: Path) -> sqlite3.Connection:
    """A connection whose every commit is on the disk when it returns; the file is made if need be."""
    db = sqlite3.connect(file, timeout=PATIENCE, isolation_level=None, check_same_thread=False)
    try:
        db.execute("PRAGMA journal_mode = WAL")
        db.execute("PRAGMA synchronous = FULL")
        db.execute("PRAGMA foreign_keys = ON")
    except BaseException:
        db.close()
        raise
    return db


def open_to_read(file: Path, *, still: bool = False) -> sqlite3.Connection:
    """A connection that cannot write; ``still`` promises that nobody else writes and needs no file beside it."""
    how = "mode=ro&immutable=1" if still else "mode=ro"
    address = f"{file.resolve().as_uri()}?{how}"
    return sqlite3.connect(address, uri=True, timeout=PATIENCE, isolation_level=None, check_same_thread=False)


def roll_back(file: Path) -> None:
    """What a program that died while it made the file left half written is undone.

    A connection that cannot write refuses such a file: https://www.sqlite.org/rescode.html#readonly_rollback
    """
    if not file.with_name(file.name + HALF_MADE).exists():
        return
    db = sqlite3.connect(f"{file.resolve().as_uri()}?mode=rw", uri=True, timeout=PATIENCE, isolation_level=None)
    try:
        format_of(db)
    finally:
        db.close()


def open_where_nothing_can_be_written(file: Path, spare: Path) -> sqlite3.Connection:
    """A reading connection in a folder that is write-protected.

    What a program that died left in the write-ahead log counts too; file and log are then read from
    a copy in the folder ``spare``.
    """
    log = file.with_name(file.name + BESIDE[0])
    if not log.exists() or not log.stat().st_size:
        return open_to_read(file, still=True)
    for path in (file, log):
        shutil.copyfile(path, spare / path.name)
    db = sqlite3.connect(spare / file.name, isolation_level=None, check_same_thread=False)
    db.execute("PRAGMA query_only = ON")
    return db


def make(db: sqlite3.Connection) -> None:
    """The empty database has its tables, whole or not at all."""
    db.executescript(f"BEGIN IMMEDIATE; {SCHEMA} COMMIT;")


def format_of(db: sqlite3.Connection) -> int:
    """The format the file was written in; 0 for a new file."""
    return int(db.execute("PRAGMA user_version").fetchone()[0])


def is_empty(db: sqlite3.Connection) -> bool:
    """Whether there is no table in the file yet."""
    return not db.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]


def is_known(db: sqlite3.Connection) -> bool:
    """Whether the tables and columns that this program reads are there."""
    try:
        for table, columns in READ.items():
            db.execute(f"SELECT {columns} FROM {table} LIMIT 0")
    except sqlite3.OperationalError as error:
        if error.sqlite_errorcode != sqlite3.SQLITE_ERROR:
            raise
        return False
    return True


def faults(db: sqlite3.Connection) -> str:
    """The first thing that a quick check finds wrong, or nothing."""
    first = str(db.execute("PRAGMA quick_check(1)").fetchone()[0])
    return "" if first == "ok" else " ".join(first.split())
