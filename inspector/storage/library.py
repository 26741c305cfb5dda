"""All inspections of one folder: kept at every step, listed, searched, loaded, backed up."""

from __future__ import annotations

import contextlib
from contextlib import contextmanager
from dataclasses import dataclass
from threading import RLock
from typing import TYPE_CHECKING, Literal

from inspector.storage import backups, removal, rows, whole
from inspector.storage.failing import environment
from inspector.storage.frozen import FOLDER as VERSIONS
from inspector.storage.frozen import Frozen
from inspector.storage.landing import sweep
from inspector.storage.opening import Opened, open_database
from inspector.storage.paths import PROFILES
from inspector.storage.photographs import Missing, Photographs
from inspector.storage.thumbs import Thumbs
from inspector.storage.trouble import Damaged, ReadOnly, StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Callable, Collection, Iterator
    from datetime import date
    from pathlib import Path
    from types import TracebackType

    from inspector.record.edits import Step
    from inspector.record.model import Record
    from inspector.record.summary import Summary
    from inspector.storage.history import StepPair
    from inspector.storage.lines import HistoryLine
    from inspector.storage.same import SameNumber
    from inspector.storage.whole import Whole

Kind = Literal["do", "undo", "redo"]
SNAPSHOT_EVERY = 50
PHOTOGRAPHS, THUMBNAILS = "photographs", "thumbnails"
PHOTOGRAPH_PART = "photographs"  # the word of Part.PHOTOGRAPHS


@dataclass(frozen=True, slots=True)
class Machine:
    """One line of the list, and when the record was last changed."""

    summary: Summary
    updated: str


@dataclass(frozen=True, slots=True)
class TakenOut:
    """One line of those out of the list: since when, and the last day on which it can be brought back."""

    summary: Summary
    at: str
    until: date


@dataclass(frozen=True, slots=True)
class Loaded:
    """A record as it was left, with what can be undone and redone, the next one last."""

    record: Record
    profile_folder: Path
    undo: tuple[StepPair, ...]
    redo: tuple[StepPair, ...]
    at: str
    read_only: bool


@dataclass(frozen=True, slots=True)
class _Latest:
    record: Record
    seq: int  # of the last edit in it
    edits: int  # that no snapshot holds


class Library:
    """The library of one folder. Several threads may use it; each call is whole or not at all."""

    def __init__(self, folder: Path, clock: Callable[[], str], opened: Opened) -> None:
        """Use ``Library.open``."""
        self.folder, self._clock, self._opened = folder, clock, opened
        self.photographs = Photographs(folder / PHOTOGRAPHS)
        self.thumbs = Thumbs(folder / THUMBNAILS, self.photographs)
        self.frozen = Frozen(folder / VERSIONS)
        self.notice: Say | None = opened.notice
        self._turn = RLock()
        self._latest: dict[str, _Latest] = {}

    @classmethod
    def open(cls, folder: Path, clock: Callable[[], str], *, look_only: bool = False) -> Library:
        """The library of the folder, checked and backed up; ``clock`` gives ISO 8601 moments with offset.

        ``look_only`` reads beside a program that has it open. Where nothing can be written, or a newer
        program wrote it, ``read_only`` is true and ``notice`` says why. Raises Locked, ReadOnly (where
        there is nothing to read), Damaged and other StorageTrouble.
        """
        opened = open_database(folder, clock(), look_only=look_only)
        try:
            library = cls(folder, clock, opened)
            if not opened.read_only:
                library._begin()
        except BaseException:
            opened.close()
            raise
        return library

    def __enter__(self) -> Library:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    @property
    def read_only(self) -> bool:
        """Whether nothing can be changed."""
        return self._opened.read_only

    def close(self) -> None:
        """Snapshots and a backup are made where there is room, and the folder is free for others."""
        with self._turn:
            try:
                if not self.read_only:
                    with contextlib.suppress(StorageTrouble):  # nothing hangs on them: every edit is kept
                        self._snapshots()
                        self.backup()
            finally:
                self._opened.close()

    def machines(self, search: str = "", most: int | None = None) -> tuple[Machine, ...]:
        """The records in the list in which every word of the search occurs, at most so many, the last changed first."""
        with self._reading() as db:
            return tuple(Machine(*line) for line in rows.summaries(db, search, most))

    def count(self, search: str = "") -> int:
        """How many records in the list the search finds."""
        with self._reading() as db:
            return rows.count(db, search)

    def create(self, record: Record, profile_folder: Path) -> None:
        """The record is kept, and the profile's files beside it. Raises StorageTrouble."""
        from inspector.storage import profiles

        self._must_write()
        name = profiles.keep(self.folder, profile_folder)
        with self._writing() as db:
            if rows.place_of(db, record.id):
                raise StorageTrouble(say("A record {id} is in this library already.", id=record.id))
            rows.add_record(db, record, name)
            self._latest[record.id] = _Latest(record, 0, 0)

    def load(self, record_id: str) -> Loaded:
        """The record as it was left. Raises StorageTrouble; Damaged when what is kept makes no record."""
        # What an edit means is loaded only with a record: the list of machines comes sooner.
        from inspector.storage import replaying

        with self._reading() as db:
            place = rows.place_of(db, record_id)
            if place is None:
                raise self._unknown(record_id)
            edits = rows.edits(db, record_id)
        found = replaying.replayed(edits, lambda below: self._snapshot(record_id, below))
        if found is None:
            raise self._no_record(record_id)
        with self._turn:
            # Another thread may have changed it meanwhile: then what that left is newer.
            known = self._latest.get(record_id)
            if known is None or known.seq <= found.seq:
                self._latest[record_id] = _Latest(*found)
        undo, redo = replaying.stacks(edits)
        return Loaded(found.record, self.folder / PROFILES / place[0], undo, redo, place[1], self.read_only)

    def commit(
        self, record: Record, kind: Kind, step: Step, inverse: Step, at: str, by: str, *, joined: bool = False
    ) -> None:
        """The edit that led to this record is on the disk, and so is the record.

        ``step`` is what was applied, also where it undoes. ``joined`` makes it one thing to undo with the
        edit before. Raises StorageTrouble with everything as it was; so it does for a photograph that is
        named before its file is kept.
        """
        self._must_write()
        if kind == "do":
            self._must_be_kept(step, inverse)
        with self._writing() as db:
            seq = rows.add_edit(db, record.id, kind, step, inverse, at, by, joined=joined)
            rows.touch(db, record, at)
            count = self._since_snapshot(db, record.id)
            if count >= SNAPSHOT_EVERY:
                rows.add_snapshot(db, record, seq)
                count = 0
        with self._turn:
            self._latest[record.id] = _Latest(record, seq, count)

    def whole(self, record_id: str) -> Whole:
        """All that is kept of the record, as it is kept. Raises StorageTrouble."""
        with self._reading() as db:
            known, found = rows.place_of(db, record_id), whole.whole_of(db, record_id)
        if known is None:
            raise self._unknown(record_id)
        if found is None:
            raise self._no_record(record_id)
        return found

    def take_in(self, record: Record, kept: Whole, profile_folder: Path) -> None:
        """A record is in the list with its whole history, at once or not at all. Raises StorageTrouble.

        Nothing that is here is touched; what photographs of it there are must be kept before.
        """
        from inspector.storage import profiles

        self._must_write()
        name = profiles.keep(self.folder, profile_folder)
        with self._writing() as db:
            if rows.place_of(db, record.id):
                raise StorageTrouble(say("A record {id} is in this library already.", id=record.id))
            whole.put(db, record, kept, name)

    def history(self, record_id: str) -> tuple[HistoryLine, ...]:
        """Every change of the record, oldest first."""
        with self._reading() as db:
            return rows.history(db, record_id)

    def remember(self, record_id: str, key: str, value: str) -> None:
        """The desk note is kept; where nothing can be changed it is let go."""
        if not self.read_only:
            with self._writing() as db:
                rows.put_note(db, record_id, key, value)

    def recall(self, record_id: str, key: str) -> str | None:
        """The desk note under this key, or None."""
        with self._reading() as db:
            return rows.note(db, record_id, key)

    def remove(self, record_id: str) -> date:
        """The record is out of the list; the last day on which it can be restored, 30 days from now."""
        at = removal.not_before(self._clock(), self.folder)
        self._set_removed(record_id, at)
        return removal.kept_until(at)

    def restore(self, record_id: str) -> None:
        """The record is in the list again."""
        self._set_removed(record_id, None)

    def taken_out(self) -> tuple[TakenOut, ...]:
        """The records out of the list that can be restored, the one taken out last first."""
        with self._reading() as db:
            return tuple(TakenOut(line, at, removal.kept_until(at)) for line, at in rows.taken_out(db))

    def same_numbers(self, record_id: str, places: Collection[str] | None = None) -> tuple[SameNumber, ...]:
        """The numbers of other records in the list that are, or may be, this record's; ``places`` keeps it to these."""
        from inspector.storage import same

        with self._reading() as db:
            return same.same_numbers(db, record_id, places)

    def backup(self) -> Path | None:
        """A new backup, or None where nothing changed since the last. Raises StorageTrouble, Damaged for a fault."""
        self._must_write()
        with self._reading() as db:
            return backups.make(db, self.folder, self._clock())

    def _begin(self) -> None:
        for home in (self.folder, self.folder / PROFILES, self.folder / VERSIONS):
            sweep(home)
        self._forget_removed()
        try:
            self.backup()
        except StorageTrouble as trouble:
            self.notice = say("No backup could be made. {why}", why=trouble.said)

    def _forget_removed(self) -> None:
        """What was removed more than 30 days ago goes for good, with the photographs that nothing else names."""
        with self._reading() as db:
            now = self._clock()
            for record_id, at in rows.removed(db):
                if removal.is_over(at, now):
                    with self._writing():
                        removal.forget(db, self.folder, record_id)
            self._let_photographs_go(db)

    def _let_photographs_go(self, db: sqlite3.Connection) -> None:
        leaving, staying = removal.settled(db, self.folder)
        gone = {sha256 for sha256 in leaving if self.photographs.forget(sha256) and self.frozen.forget(sha256)}
        for sha256 in gone:
            self.thumbs.forget(sha256)
        if gone or staying:
            with self._writing():
                rows.drop_notes(db, removal.LEAVING, gone | staying)

    def _set_removed(self, record_id: str, at: str | None) -> None:
        self._must_write()
        with self._writing() as db:
            rows.set_removed(db, record_id, at)

    def _snapshots(self) -> None:
        for latest in self._latest.values():
            if latest.edits:
                with self._writing() as db:
                    rows.add_snapshot(db, latest.record, latest.seq)

    def _since_snapshot(self, db: sqlite3.Connection, record_id: str) -> int:
        """How many edits no snapshot holds, the one just added included."""
        latest = self._latest.get(record_id)
        return rows.since_snapshot(db, record_id) if latest is None else latest.edits + 1

    def _must_write(self) -> None:
        if self.notice is not None and self.read_only:
            raise ReadOnly(self.notice)

    def _must_be_kept(self, step: Step, inverse: Step) -> None:
        old = {put.key for put in inverse.puts if put.part == PHOTOGRAPH_PART and put.value is not None}
        for put in step.puts:
            if put.part == PHOTOGRAPH_PART and isinstance(put.value, dict) and put.key not in old:
                found = self.photographs.path(str(put.value["sha256"]))
                if isinstance(found, Missing):
                    raise StorageTrouble(found.said)

    def _snapshot(self, record_id: str, below: int) -> tuple[int, int, str] | None:
        with self._reading() as db:
            return rows.snapshot_before(db, record_id, below)

    def _unknown(self, record_id: str) -> StorageTrouble:
        return StorageTrouble(say("There is no record {id} in {folder}.", id=record_id, folder=self.folder))

    def _no_record(self, record_id: str) -> Damaged:
        return Damaged(
            say(
                "The record {id} cannot be read as it was written. Its backups are in {folder}; the other records are"
                " not touched by this.",
                id=record_id,
                folder=self.folder / backups.FOLDER,
            )
        )

    @contextmanager
    def _reading(self) -> Iterator[sqlite3.Connection]:
        with self._turn, environment(self.folder):
            yield self._opened.db

    @contextmanager
    def _writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction, on the disk when it is left, or without trace when it fails."""
        with self._reading() as db:
            db.execute("BEGIN IMMEDIATE")
            try:
                yield db
                db.execute("COMMIT")
            except BaseException:
                if db.in_transaction:
                    db.execute("ROLLBACK")
                raise
