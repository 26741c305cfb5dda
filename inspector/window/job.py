"""Work beside the window: one job, its progress, and a way to stop it."""

import threading
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from inspector.photo.refusal import Cancelled

_running: set["Job"] = set()


class Job(QObject):
    """Work done in another thread; signals arrive in the thread that made it.

    ``work`` gets ``report(done, total, text)``, which raises Cancelled once ``stop`` was called.
    """

    progress = Signal(int, int, str)
    done = Signal(object)
    failed = Signal(object)

    def __init__(self, work: Callable[[Callable[[int, int, str], None]], Any]) -> None:
        super().__init__()
        self._work = work
        self._stop = threading.Event()

    def start(self, pool: QThreadPool) -> None:
        """The job is queued; it is kept alive until it has ended."""
        _running.add(self)
        self.done.connect(self._ended)
        self.failed.connect(self._ended)
        pool.start(_Task(self._work, self._report, self.done.emit, self.failed.emit))

    def stop(self) -> None:
        """The work is asked to end at its next report; what it kept stays kept."""
        self._stop.set()

    def _report(self, done: int, total: int, text: str) -> None:
        if self._stop.is_set():
            raise Cancelled
        self.progress.emit(done, total, text)

    def _ended(self, _: object) -> None:
        _running.discard(self)


def stop_all() -> None:
    """All work beside the window is asked to end at its next report."""
    for job in tuple(_running):
        job.stop()


class _Task(QRunnable):
    """Runs plain functions; owns no Qt object, so none dies in a thread that is not its own."""

    def __init__(self, work: Callable, report: Callable, done: Callable, failed: Callable) -> None:
        super().__init__()
        self._work, self._report, self._done, self._failed = work, report, done, failed

    def run(self) -> None:
        try:
            result = self._work(self._report)
        except Exception as error:
            self._failed(error)
        else:
            self._done(result)
