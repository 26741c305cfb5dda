"""A record with all that led to it, as it is kept: read out to go elsewhere, and put in as it came."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.storage import rows

if TYPE_CHECKING:
    import sqlite3

    from inspector.record.model import Record
    from inspector.storage.lines import Row


@dataclass(frozen=True, slots=True)
class Whole:
    """The record as it was begun, as text of a format, every edit since, and when it was last changed.

    ``hashes`` are all that stand in it, those of photographs that were taken out again among them.
    """

    format: int
    begun: str
    edits: tuple[Row, ...]
    updated: str
    hashes: frozenset[str] = frozenset()


def whole_of(db: sqlite3.Connection, record_id: str) -> Whole | None:
    """All that is kept of the record; None where there is no such record."""
    place = rows.place_of(db, record_id)
    if place is None:
        return None
    begun = rows.first_snapshot(db, record_id)
    if begun is None:
        return None
    edits = tuple(rows.edits(db, record_id))
    return Whole(*begun, edits, place[1], frozenset(rows.hashes(db, record_id)))


def put(db: sqlite3.Connection, record: Record, kept: Whole, profile: str) -> None:
    """The record is in the list under its own id, which may be another than it had; within one transaction."""
    rows.add_record(db, record, profile)
    rows.put_first_snapshot(db, record.id, kept.format, _with_id(kept.begun, record.id))
    last = 0
    for row in kept.edits:
        last = rows.add_row(db, record.id, row)
    rows.touch(db, record, kept.updated)
    if last:
        rows.add_snapshot(db, record, last)


def _with_id(body: str, record_id: str) -> str:
    begun = json.loads(body)
    if begun.get("id") == record_id:
        return body
    return json.dumps({**begun, "id": record_id}, ensure_ascii=False, separators=(",", ":"))
