"""Long work with its progress in words and a key to stop it."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING, Any

from inspector.photo.refusal import Cancelled, NotKept
from inspector.texts import tr
from inspector.window.job import Job
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from inspector.window.desk import Desk

    Report = Callable[[int, int, str], None]

log = logging.getLogger(__name__)


class Working(Column):
    """Hidden until something is at work; one piece of work at a time."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.words = LongWords(desk.look, ink="soft")
        self.stop = Key(desk.look, tr("stop"))
        self.add(self.words)
        self.add(self.stop, 2)
        self.stop.clicked.connect(self._stop)
        self.job: Job | None = None
        self._what = ""
        self.hide()

    def run(
        self, what: str, work: Callable[[Report], Any], done: Callable[[Any], object],
        failed: Callable[[], object] = lambda: None,
    ) -> bool:  # fmt: skip
        """The work is begun and ``done`` hears its result; False where other work is not finished yet.

        What goes wrong is told in one sentence, and ``failed`` is called.
        """
        if self.job is not None:
            self.desk.told.emit(tr("Wait until what is at work is done, or stop it."))
            return False
        self._what = what
        self.words.say(what)
        self.stop.turn_on()
        self.show()
        self.job = job = Job(work)
        job.progress.connect(self._progress)
        job.done.connect(lambda result: self._ended(lambda: done(result)))
        job.failed.connect(lambda error: self._ended(lambda: self._failed(error)))
        job.failed.connect(lambda _: failed())
        job.start(self.desk.pool)
        return True

    def _progress(self, done: int, total: int, name: str) -> None:
        if total > 1_000_000:
            words = tr("{done} of {total} million bytes", done=done // 1_000_000, total=total // 1_000_000)
        else:
            words = tr("{percent} %", percent=100 * done // total) if total else ""
        self.words.say(" ".join(part for part in (self._what, words, name.rpartition("/")[2][:40]) if part))

    def _stop(self) -> None:
        if self.job is not None:
            self.job.stop()
            self.stop.turn_off(tr("It is being stopped."))

    def _ended(self, then: Callable[[], object]) -> None:
        self.job = None
        self.hide()
        then()

    def _failed(self, error: object) -> None:
        if isinstance(error, Cancelled):
            self.desk.told.emit(tr("Stopped. Nothing was changed."))
        elif isinstance(error, NotKept):
            self.desk.told.emit(tr(error.said))
        else:
            log.error("what was at work failed", exc_info=error if isinstance(error, Exception) else None)
            self.desk.told.emit(tr("This could not be done: {what}. Nothing was changed.", what=error))
