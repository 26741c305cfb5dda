"""A folder that is watched: what is new in it comes in by itself once it is whole. Nothing in it is ever changed."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QFileSystemWatcher, QObject, QThreadPool, QTimer, Signal

from inspector.photo.watch import Print, Watch, listed
from inspector.texts import Say, tr
from inspector.window.intake import Tie
from inspector.window.job import Job

if TYPE_CHECKING:
    from inspector.window.desk import Desk
    from inspector.window.intake import Bringing

WATCHED = "watched folder"
SETTLE_MS = 1000  # between two looks at files that may still be written
AGAIN_MS = 10_000  # where the system does not tell of changes, as on some cards and network folders


class Watching(QObject):
    """On or off for each machine, and remembered; ``changed`` tells that it is another folder, or none."""

    changed = Signal()

    def __init__(self, desk: Desk, bringing: Bringing, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk, self.bringing = desk, bringing
        self.watch: Watch | None = None
        self.trouble = ""
        self._looking = False
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._system = QFileSystemWatcher(self)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(SETTLE_MS)
        self._system.directoryChanged.connect(self.look)
        self._soon.timeout.connect(self.look)
        desk.opened.connect(self.show_machine)

    @property
    def folder(self) -> Path | None:
        """The folder that is watched, or None."""
        return self.watch.folder if self.watch is not None else None

    def show_machine(self) -> None:
        """The folder remembered for the open machine is watched again, or none is."""
        known = "" if self.desk.session is None else self.desk.library.recall(self.desk.record.id, WATCHED) or ""
        self._set(Path(known) if known else None)

    def turn_on(self, folder: Path) -> None:
        """This folder is watched from now on; what it holds already comes in too."""
        self._remember(str(folder))
        self._set(folder)

    def turn_off(self) -> None:
        """No folder is watched."""
        self._remember("")
        self._set(None)

    def _remember(self, folder: str) -> None:
        self.desk.library.remember(self.desk.record.id, WATCHED, folder)

    def _set(self, folder: Path | None) -> None:
        self._soon.stop()
        if self._system.directories():
            self._system.removePaths(self._system.directories())
        self.watch = Watch(folder) if folder is not None else None
        self.trouble = ""
        if folder is not None:
            self._system.addPath(str(folder))
            self.look()
        self.changed.emit()

    def look(self) -> None:
        """The folder is listed beside the window."""
        watch = self.watch
        if watch is None or self._looking:
            return
        self._looking = True
        job = Job(lambda report: listed(watch.folder))
        job.done.connect(lambda found: self._seen(watch, found))
        job.failed.connect(lambda error: self._seen(watch, {}))
        job.start(self._pool)

    def _seen(self, watch: Watch, found: dict[str, Print] | Say) -> None:
        self._looking = False
        if watch is not self.watch:
            self.look()  # another folder was waiting for this answer
            return
        if self.desk.session is None:
            return
        trouble = tr(found) if isinstance(found, Say) else ""
        if trouble != self.trouble:
            self.trouble = trouble
            self.changed.emit()
        ready = () if isinstance(found, Say) else watch.look(found)
        if ready:
            self.bringing.take_in(ready, Tie(), everywhere=True, quiet=True)
        self._soon.start(SETTLE_MS if watch.waiting and not trouble else AGAIN_MS)
