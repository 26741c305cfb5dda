"""Which item was open when, kept beside the record; and what is said when the walk comes to its end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThreadPool

from inspector.texts import tr, trn
from inspector.window.job import Job

if TYPE_CHECKING:
    from inspector.judgement.offers import Opened
    from inspector.storage.library import Library
    from inspector.window.desk import Desk

OPENED_ITEMS = "opened items"
MOST = 2000


class OpenLog(QObject):
    """Hears which item is open and writes it down, beside the window."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.desk = desk
        self._record, self._lines = "", [""]
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        desk.opened.connect(self._machine)
        desk.moved.connect(self._item)

    def _machine(self) -> None:
        """The machine before is left, and that which is open now begins at its item."""
        if self._record:
            self._note("")
        self._pool.waitForDone(5000)
        self._record = self.desk.record.id if self.desk.session is not None else ""
        if self._record:
            self._lines = (self.desk.library.recall(self._record, OPENED_ITEMS) or "").splitlines()
            self._note(self.desk.item)

    def _item(self, item: str) -> None:
        self._note(item)

    def _note(self, item: str) -> None:
        self._lines = [*self._lines[1 - MOST :], f"{self.desk.clock()}\t{item}"]
        record, text, library = self._record, "\n".join(self._lines), self.desk.library
        job = Job(lambda report: library.remember(record, OPENED_ITEMS, text))
        job.start(self._pool)


def opened_items(library: Library, record: str) -> tuple[Opened, ...]:
    """When which item of this record was open, as far as it was written down."""
    from inspector.judgement.offers import Opened

    lines = (library.recall(record, OPENED_ITEMS) or "").splitlines()
    return tuple(Opened(*line.split("\t", 1)) for line in lines if "\t" in line)


class BeforeLeaving(QObject):
    """At the end of the walk it is said how many photographs of the list are missing."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.desk = desk
        desk.ended.connect(self._say)

    def _say(self) -> None:
        from inspector.judgement.shots import shots

        desk = self.desk
        found = shots(desk.profile, desk.record, desk.judgement.states)
        left = len(found.missing)
        if left:
            words = trn(
                "Before you leave: {count} photograph of the list is missing.",
                "Before you leave: {count} photographs of the list are missing.",
                left,
            )
            desk.offered.emit(f"{words} {tr(found.caution)}", tr("show them"), lambda: desk.wanted.emit("photographs"))
