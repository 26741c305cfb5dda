"""Whether the kept files are still as they were: each is read and its hash taken, while nobody waits for it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThread, QThreadPool, Signal

from inspector.storage.photographs import Missing, State
from inspector.window.job import Job

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from inspector.storage.photographs import Photographs

EVERY = 25  # so many are told of at once
Seal = tuple[int, int]


class Keeping(QObject):
    """``found`` tells that more is known; ``states`` holds what is known so far, by hash."""

    found = Signal()
    _some = Signal(object)

    def __init__(self, photographs: Photographs, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._photographs = photographs
        self.states: dict[str, State] = {}
        self._seals: dict[str, Seal] = {}
        self._job: Job | None = None
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._pool.setThreadPriority(QThread.Priority.LowestPriority)
        self._some.connect(self._take)

    def look(self, hashes: Iterable[str]) -> None:
        """Those that were not read since they were last written are read; what ran before is stopped."""
        self.stop()
        wanted = tuple(dict.fromkeys(hashes))
        photographs, seals, tell = self._photographs, dict(self._seals), self._some.emit
        self._job = Job(lambda report: _look(photographs, wanted, seals, report, tell))
        self._job.start(self._pool)

    def stop(self) -> None:
        """No further file is read."""
        if self._job is not None:
            self._job.stop()
            self._job = None

    def _take(self, some: dict[str, tuple[State, Seal]]) -> None:
        for sha256, (state, seal) in some.items():
            self.states[sha256], self._seals[sha256] = state, seal
        self.found.emit()


def _look(
    photographs: Photographs, wanted: tuple[str, ...], seals: dict[str, Seal],
    report: Callable[[int, int, str], None], tell: Callable[[object], None],
) -> None:  # fmt: skip
    some: dict[str, tuple[State, Seal]] = {}
    for n, sha256 in enumerate(wanted):
        report(n, len(wanted), "")
        seal = _seal(photographs, sha256)
        if seals.get(sha256) != seal or seal == (0, 0):
            some[sha256] = (photographs.check(sha256), seal)
        if len(some) >= EVERY:
            tell(some)
            some = {}
    if some:
        tell(some)


def _seal(photographs: Photographs, sha256: str) -> Seal:
    """Size and time of the last writing: a file in which both are as before need not be read again."""
    path = photographs.path(sha256)
    try:
        state = None if isinstance(path, Missing) else path.stat()
    except OSError:
        state = None
    return (state.st_size, state.st_mtime_ns) if state is not None else (0, 0)
