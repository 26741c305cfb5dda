"""The tables of the library in words: every statement of SQL that touches a record is here."""

from __future__ import annotations

import json
import re
import unicodedata
from dataclasses import asdict, fields
from typing import TYPE_CHECKING, NamedTuple

from inspector.record.format import FORMAT
from inspector.record.summary import Summary, summary
from inspector.storage.formats import text_of
from inspector.storage.lines import HistoryLine, Row
from inspector.texts import tr

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Iterable

    from inspector.record.edits import Step
    from inspector.record.model import Record

Readings = tuple[tuple[str, str], ...]
NEXT = "(SELECT coalesce(max(touched), 0) + 1 FROM records)"
KNOWN = frozenset(field.name for field in fields(Summary))
HASH = re.compile(r"\b[0-9a-f]{64}\b")
UNREADABLE = (ValueError, LookupError, TypeError, AttributeError)  # what damaged text gives
NEWEST_SNAPSHOTS = 2  # besides the first, from which the whole history can be replayed


def add_record(db: sqlite3.Connection, record: Record, profile: str) -> None:
    """The record is in the list, with its first snapshot."""
    line = summary(record)
    db.execute(
        "INSERT INTO records (id, created, updated, touched, profile, summary, search)"
        f" VALUES (?, ?, ?, {NEXT}, ?, ?, ?)",
        (record.id, record.created, record.created, profile, json.dumps(asdict(line)), search_text(line)),
    )
    db.execute(
        "INSERT INTO snapshots (record, seq, format, body) VALUES (?, 0, ?, ?)", (record.id, FORMAT, text_of(record))
    )


def add_edit(
    db: sqlite3.Connection, record: str, kind: str, step: Step, inverse: Step, at: str, by: str, *, joined: bool
) -> int:
    """The edit is the last one of the record; gives its number."""
    made = db.execute(
        "INSERT INTO edits (record, kind, joined, at, who, label, format, step, inverse)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (record, kind, joined, at, by, step.label, FORMAT, text_of(step), text_of(inverse)),
    )
    return int(made.lastrowid or 0)


def add_row(db: sqlite3.Connection, record: str, row: Row) -> int:
    """The edit as it was kept elsewhere is the last one of the record; gives its number, the next one here."""
    made = db.execute(
        "INSERT INTO edits (record, kind, joined, at, who, label, format, step, inverse)"
        " SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9",
        (record, row.kind, row.joined, row.at, row.who, label_of(row), row.format, row.step, row.inverse),
    )
    return int(made.lastrowid or 0)


def label_of(row: Row) -> str:
    """The label that the step of an edit bears."""
    return str(json.loads(row.step).get("label", ""))


def touch(db: sqlite3.Connection, record: Record, at: str) -> None:
    """The list shows the record as it is now, before all others."""
    line = summary(record)
    db.execute(
        f"UPDATE records SET updated = ?, touched = {NEXT}, summary = ?, search = ? WHERE id = ?",
        (at, json.dumps(asdict(line)), search_text(line), record.id),
    )


def add_snapshot(db: sqlite3.Connection, record: Record, seq: int) -> None:
    """The record as the edit of this number left it can be read without replaying what came before."""
    db.execute(
        "INSERT OR REPLACE INTO snapshots (record, seq, format, body) VALUES (?, ?, ?, ?)",
        (record.id, seq, FORMAT, text_of(record)),
    )
    db.execute(
        "DELETE FROM snapshots WHERE record = ?1 AND seq > 0 AND seq NOT IN"
        " (SELECT seq FROM snapshots WHERE record = ?1 ORDER BY seq DESC LIMIT ?2)",
        (record.id, NEWEST_SNAPSHOTS),
    )


def snapshot_before(db: sqlite3.Connection, record: str, seq: int) -> tuple[int, int, str] | None:
    """Number of the last edit in it, format and body of the newest snapshot below that number; None without one."""
    found: tuple[int, int, str] | None = db.execute(
        "SELECT seq, format, body FROM snapshots WHERE record = ? AND seq < ? ORDER BY seq DESC LIMIT 1", (record, seq)
    ).fetchone()
    return found


def first_snapshot(db: sqlite3.Connection, record: str) -> tuple[int, str] | None:
    """Format and body of the record as it was begun; None where that is lost."""
    found: tuple[int, str] | None = db.execute(
        "SELECT format, body FROM snapshots WHERE record = ? AND seq = 0", (record,)
    ).fetchone()
    return found


def put_first_snapshot(db: sqlite3.Connection, record: str, written: int, body: str) -> None:
    """The record was begun as this body says, in this format."""
    db.execute("UPDATE snapshots SET format = ?, body = ? WHERE record = ? AND seq = 0", (written, body, record))


def edits(db: sqlite3.Connection, record: str) -> list[Row]:
    """Every edit of the record, oldest first."""
    found = db.execute(
        "SELECT seq, kind, joined, at, who, format, step, inverse FROM edits WHERE record = ? ORDER BY seq", (record,)
    )
    return [Row(seq, kind, bool(joined), *rest) for seq, kind, joined, *rest in found]


def since_snapshot(db: sqlite3.Connection, record: str) -> int:
    """How many edits are not in a snapshot."""
    found = db.execute(
        "SELECT count(*) FROM edits WHERE record = ?1 AND seq > (SELECT max(seq) FROM snapshots WHERE record = ?1)",
        (record,),
    )
    return int(found.fetchone()[0])


def history(db: sqlite3.Connection, record: str) -> tuple[HistoryLine, ...]:
    """Every change of the record, oldest first."""
    found = db.execute("SELECT seq, at, who, kind, label FROM edits WHERE record = ? ORDER BY seq", (record,))
    return tuple(HistoryLine(*row) for row in found)


def summaries(db: sqlite3.Connection, search: str, most: int | None = None) -> list[tuple[Summary, str]]:
    """The lines of the list and when each was last changed, newest first, where every word of the search occurs."""
    where, words = _listed(search)
    found = db.execute(
        f"SELECT id, summary, updated FROM records WHERE {where} ORDER BY touched DESC LIMIT ?",
        (*words, -1 if most is None else most),
    )
    return [(_line(record, text), updated) for record, text, updated in found]


def count(db: sqlite3.Connection, search: str) -> int:
    """How many records in the list the search finds."""
    where, words = _listed(search)
    return int(db.execute(f"SELECT count(*) FROM records WHERE {where}", words).fetchone()[0])


def _listed(search: str) -> tuple[str, list[str]]:
    """The condition for a record in the list in which every word of the search occurs, and its values."""
    words = _plain(search).split()
    return "removed IS NULL" + " AND instr(search, ?) > 0" * len(words), words


class NumberLine(NamedTuple):
    """The numbers of one record; ``readings`` are places and numbers as typed, None in a line written without them."""

    id: str
    title: str
    numbers: str
    readings: Readings | None


def number_lines(db: sqlite3.Connection, record: str) -> list[NumberLine]:
    """The numbers of every record in the list and of this one, the last changed first."""
    found = db.execute(
        "SELECT id, summary FROM records WHERE removed IS NULL OR id = ? ORDER BY touched DESC", (record,)
    )
    return [line for record_id, text in found if (line := _number_line(record_id, text))]


def _number_line(record: str, text: str) -> NumberLine | None:
    """The numbers in a line of the list; None where the line cannot be read."""
    try:
        line = json.loads(text)
        readings = line.get("readings")
        if readings is not None:
            readings = tuple((str(place), str(typed)) for place, typed in readings)
        return NumberLine(record, str(line["title"]), str(line.get("numbers", "")), readings)
    except UNREADABLE:
        return None


def place_of(db: sqlite3.Connection, record: str) -> tuple[str, str] | None:
    """The name of the record's profile folder and when it was last changed, or None for an unknown record."""
    found: tuple[str, str] | None = db.execute(
        "SELECT profile, updated FROM records WHERE id = ?", (record,)
    ).fetchone()
    return found


def set_removed(db: sqlite3.Connection, record: str, at: str | None) -> None:
    """The record is out of the list since then, or in it again."""
    db.execute(f"UPDATE records SET removed = ?, touched = {NEXT} WHERE id = ?", (at, record))


def removed(db: sqlite3.Connection) -> list[tuple[str, str]]:
    """The records out of the list, and since when."""
    return list(db.execute("SELECT id, removed FROM records WHERE removed IS NOT NULL"))


def taken_out(db: sqlite3.Connection) -> list[tuple[Summary, str]]:
    """The lines of the records out of the list and since when, the last one first."""
    found = db.execute("SELECT id, summary, removed FROM records WHERE removed IS NOT NULL ORDER BY touched DESC")
    return [(_line(record, text), at) for record, text, at in found]


def hashes(db: sqlite3.Connection, record: str | None = None) -> set[str]:
    """Every SHA-256 that stands in what is kept of this record, or of any: also where it was undone."""
    where = "" if record is None else " WHERE record = ?1"
    texts = db.execute(
        f"SELECT body FROM snapshots{where} UNION ALL SELECT step FROM edits{where}"
        f" UNION ALL SELECT inverse FROM edits{where}",
        () if record is None else (record,),
    )
    return {found for (text,) in texts for found in HASH.findall(text)}


def forget(db: sqlite3.Connection, record: str) -> None:
    """Nothing of a record that is out of the list is left in the tables."""
    for table in ("edits", "snapshots", "notes"):
        db.execute(f"DELETE FROM {table} WHERE record = ?", (record,))
    db.execute("DELETE FROM records WHERE id = ?", (record,))


def put_note(db: sqlite3.Connection, record: str, key: str, value: str) -> None:
    """The note is kept under its key, in place of an older one."""
    db.execute("INSERT OR REPLACE INTO notes (record, key, value) VALUES (?, ?, ?)", (record, key, value))


def note(db: sqlite3.Connection, record: str, key: str) -> str | None:
    """The note under this key, or None."""
    found = db.execute("SELECT value FROM notes WHERE record = ? AND key = ?", (record, key)).fetchone()
    return found and str(found[0])


def notes(db: sqlite3.Connection, record: str) -> list[tuple[str, str]]:
    """Key and value of every note."""
    return list(db.execute("SELECT key, value FROM notes WHERE record = ? ORDER BY key", (record,)))


def drop_notes(db: sqlite3.Connection, record: str, keys: Iterable[str]) -> None:
    """No note is kept under these keys."""
    db.executemany("DELETE FROM notes WHERE record = ? AND key = ?", [(record, key) for key in keys])


def search_text(line: Summary) -> str:
    """What a search looks through: title, numbers as typed and without separators, place, seller, year."""
    numbers = [line.numbers, *("".join(filter(str.isalnum, number)) for number in line.numbers.split())]
    year = "" if line.model_year is None else str(line.model_year)
    return _plain(" ".join((line.title, *numbers, line.place, line.seller, year)))


def _line(record: str, text: str) -> Summary:
    """The line as far as this program knows it: a newer one may have written more; one that is damaged is named."""
    try:
        known = {key: value for key, value in json.loads(text).items() if key in KNOWN}
        known["readings"] = tuple(map(tuple, known.get("readings", ())))
        return Summary(**known)
    except UNREADABLE:
        return Summary(record, tr("Record {id}, whose line in this list cannot be read; open it", id=record))


def _plain(text: str) -> str:
    """The text as it is searched: capitals and accents make no difference."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(c for c in apart if not unicodedata.combining(c))
