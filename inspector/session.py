"""The open record: the one thing that changes. What is done is on the disk before anybody hears of it."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from inspector.record.begin import INSPECTOR
from inspector.record.edits import Changed, Step, apply, changed_by
from inspector.record.versions import seals
from inspector.storage.history import StepPair, merged

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.library import Library

    Listener = Callable[[Changed], None]

log = logging.getLogger(__name__)
NOTHING = Changed(frozenset(), frozenset())


class Session:
    """One record of a library, open; the record itself is replaced, never changed in place."""

    def __init__(
        self, library: Library, record_id: str, profile: Profile, clock: Callable[[], str], by: str = INSPECTOR
    ) -> None:
        """The record as it was left, with its undo and redo. Raises StorageTrouble."""
        loaded = library.load(record_id)
        self._library, self._clock = library, clock
        self.profile, self._by = profile, by
        self.record: Record = loaded.record
        self.profile_folder: Path = loaded.profile_folder
        self.kept_at, self.read_only = loaded.at, loaded.read_only
        self._undo, self._redo = list(loaded.undo), list(loaded.redo)
        self._joining = ""
        self._listeners: list[Listener] = []

    @property
    def by(self) -> str:
        """The id of the person whose edits these are."""
        return self._by

    @by.setter
    def by(self, person: str) -> None:
        self.end_visit()
        self._by = person

    @property
    def undo_label(self) -> str:
        """What undo would take back, in English; empty when nothing can be undone, as behind a sealed version."""
        return self._undo[-1].step.label if self._can_undo() else ""

    @property
    def redo_label(self) -> str:
        """What redo would do again, in English; empty when nothing can be redone."""
        return self._redo[-1].step.label if self._redo else ""

    def do(self, step: Step) -> Changed:
        """The step is done, on the disk and announced; one that changes nothing is let go.

        Raises EditRefused and StorageTrouble with the record as it was.
        """
        record, inverse = apply(self.record, step)
        if record == self.record:
            return NOTHING
        pair = StepPair(step, inverse, self._clock(), self._by)
        joined = bool(step.joins) and step.joins == self._joining
        self._library.commit(record, "do", step, inverse, pair.at, pair.by, joined=joined)
        self._undo.append(merged(self._undo.pop(), pair) if joined else pair)
        self._redo.clear()
        self._joining = step.joins
        return self._swap(record, pair)

    def undo(self) -> Changed | None:
        """The last thing done is taken back, on the disk and announced; None when none is there or it sealed a version.

        Raises StorageTrouble with the record as it was.
        """
        if not self._can_undo():
            return None
        pair = self._undo[-1]
        record = apply(self.record, pair.inverse).record
        at = self._clock()
        self._library.commit(record, "undo", pair.inverse, pair.step, at, self._by)
        self._redo.append(self._undo.pop())
        self.end_visit()
        return self._swap(record, pair._replace(at=at))

    def redo(self) -> Changed | None:
        """The last thing taken back is done again, on the disk and announced; None when there is none.

        Raises StorageTrouble with the record as it was.
        """
        if not self._redo:
            return None
        pair = self._redo[-1]
        record = apply(self.record, pair.step).record
        at = self._clock()
        self._library.commit(record, "redo", pair.step, pair.inverse, at, self._by)
        self._undo.append(self._redo.pop())
        self.end_visit()
        return self._swap(record, pair._replace(at=at))

    def _can_undo(self) -> bool:
        """What was sealed is in other hands: it stays, and so does what came before it."""
        return bool(self._undo) and not seals(self._undo[-1].step)

    def end_visit(self) -> None:
        """The next step stands alone, whatever it would join."""
        self._joining = ""

    def listen(self, listener: Listener) -> Callable[[], None]:
        """The listener hears of every change until the function given back is called."""
        self._listeners.append(listener)

        def leave() -> None:
            if listener in self._listeners:
                self._listeners.remove(listener)

        return leave

    def _swap(self, record: Record, pair: StepPair) -> Changed:
        self.record, self.kept_at = record, pair.at
        there, back = changed_by(pair.step), changed_by(pair.inverse)
        changed = Changed(there.parts | back.parts, there.items | back.items)
        for listener in tuple(self._listeners):
            try:
                listener(changed)
            except Exception:  # the change is kept already; the others must hear of it
                log.exception("a listener failed")
        return changed
