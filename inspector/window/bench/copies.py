"""The working copies of one photograph: decoded, worked on and made smaller beside the window."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThreadPool, Signal
from PySide6.QtGui import QImage

from inspector.photo.refusal import Refusal
from inspector.photo.relief import Tools, worked
from inspector.photo.working import pixels, smaller
from inspector.texts import tr
from inspector.window.job import Job

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.record.finding import Photograph
    from inspector.window.desk import Desk

QUICK_PX = 2000  # while the light is turned, only copies up to this many pixels long are made


class WorkingCopy(QObject):
    """Pictures of one photograph, each half as large as the one before, with the tools used on them.

    ``ready`` tells that others are there, ``failed(sentence)`` that there is nothing to show, ``checked(sentence)``
    whether the kept file is as it was.
    """

    ready = Signal()
    failed = Signal(str)
    checked = Signal(bool, str)

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.photograph: Photograph | None = None
        self.size = (0, 0)
        self.images: dict[int, QImage] = {}  # by how often their sides were halved
        self.base: tuple = ()
        self.tools = Tools()
        self._wanted: tuple[Tools, bool] | None = None
        self._shown = 0  # how many pictures were wanted so far: what comes late of one before is left
        self._busy = False
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)

    @property
    def there(self) -> bool:
        """Whether there is a picture to look at."""
        return bool(self.images)

    def load(self, photograph: Photograph) -> None:
        """This photograph is read from its kept file; what was shown before goes."""
        kept, tools = self.desk.library.photographs, self.tools
        self._begin_another(photograph, lambda: _opened(kept.path(photograph.sha256), photograph.name, tools))
        self.check()

    def _begin_another(self, photograph: Photograph | None, open_: Callable[[], tuple | str]) -> None:
        self.photograph, self.images, self.base, self.size = photograph, {}, (), (0, 0)
        self._shown += 1
        number = self._shown
        job = Job(lambda report: open_())
        job.done.connect(lambda found: self._opened(found) if number == self._shown else None)
        job.failed.connect(lambda error: self._lost(error) if number == self._shown else None)
        job.start(self._pool)

    def show_pixels(self, levels: tuple) -> None:
        """These pictures are shown as they are; they come from no kept file."""
        self._begin_another(None, lambda: (levels, {n: image_of(level) for n, level in enumerate(levels)}, self.tools))

    def check(self) -> None:
        """The kept file is read whole, and its SHA-256 compared with its name."""
        photograph, kept = self.photograph, self.desk.library.photographs
        if photograph is None:
            return
        job = Job(lambda report: kept.check(photograph.sha256))
        job.done.connect(self._checked)
        job.failed.connect(self._unchecked)
        job.start(self._pool)

    def use(self, tools: Tools, *, quick: bool = False) -> None:
        """The copies are made anew with these tools; ``quick`` makes only those that fill a screen."""
        self.tools = tools
        if not self.base:
            return
        self._wanted = (tools, quick)
        if not self._busy:
            self._begin()

    def _begin(self) -> None:
        assert self._wanted is not None
        (tools, quick), self._wanted, self._busy = self._wanted, None, True
        base = self.base
        job = Job(lambda report: _made(base, tools, quick))
        job.done.connect(self._made)
        job.failed.connect(self._lost)
        job.start(self._pool)

    def _made(self, images: object) -> None:
        self._busy = False
        assert isinstance(images, dict)
        self._take(images)
        if self._wanted is not None:
            self._begin()

    def _opened(self, found: object) -> None:
        if isinstance(found, str):
            self.failed.emit(found)
            return
        assert isinstance(found, tuple)
        self.base, (images, made_with) = found[0], found[1:]
        self._take(images)
        if made_with != self.tools:
            self.use(self.tools)

    def _take(self, images: dict[int, QImage]) -> None:
        self.images = images
        high, wide = self.base[0].shape[:2]
        self.size = (wide, high)
        self.ready.emit()

    def _lost(self, error: object) -> None:
        self._busy = False
        self.failed.emit(tr("The photograph cannot be shown: {what}", what=str(error)))

    def _checked(self, state: object) -> None:
        from inspector.storage.photographs import State

        photograph = self.photograph
        if photograph is None:
            return
        short, time = photograph.sha256[:16], self.desk.clock()[11:16]
        words = {
            State.OK: tr("The original is untouched: SHA-256 {short}…, checked {time}", short=short, time=time),
            State.CHANGED: tr("The kept file is not as it was taken in: SHA-256 {short}… does not hold", short=short),
            State.MISSING: tr("The original is not in the store: SHA-256 {short}…", short=short),
        }
        unread = tr("The original could not be read: SHA-256 {short}…", short=short)
        self.checked.emit(state is State.OK, words.get(state, unread))  # type: ignore[call-overload]

    def _unchecked(self, error: object) -> None:
        self.checked.emit(False, tr("The original could not be checked: {what}", what=str(error)))

    def load_file(self, path: Path) -> None:
        """The picture in this file is shown; it is not taken into the record."""
        tools = self.tools
        self._begin_another(None, lambda: _opened(path, path.name, tools))

    def close(self) -> None:
        """What is being made is waited for."""
        self._wanted = None
        self._pool.waitForDone(10_000)


def _opened(path: object, name: str, tools: Tools) -> tuple | str:
    """The picture at every size, the same with the tools used, and the tools; or why there is none."""
    if not isinstance(path, Path):
        return tr(path.said)  # type: ignore[attr-defined]
    found = pixels(path, name)
    if isinstance(found, Refusal):
        return tr(found.why)
    base = smaller(found)
    return base, _made(base, tools, False), tools


def _made(base: tuple, tools: Tools, quick: bool) -> dict[int, QImage]:
    least = [n for n, level in enumerate(base) if max(level.shape) <= QUICK_PX] or [len(base) - 1]
    chosen = range(least[0], len(base)) if quick else range(len(base))
    if tools.plain:
        return {n: image_of(base[n]) for n in chosen}
    first = worked(base[chosen[0]], tools)
    return {chosen[0] + n: image_of(level) for n, level in enumerate(smaller(first)) if chosen[0] + n < len(base)}


def image_of(picture: object) -> QImage:
    """The pixels, (height, width) or (height, width, 3), as a picture that Qt draws without turning it over again."""
    import cv2
    import numpy as np

    pixels = np.asarray(picture, dtype=np.uint8)
    turn = cv2.COLOR_GRAY2BGRA if pixels.ndim == 2 else cv2.COLOR_RGB2BGRA
    four = np.ascontiguousarray(cv2.cvtColor(pixels, turn))
    high, wide = four.shape[:2]
    # The picture keeps its own bytes: those of the array may go.
    return QImage(four.data, wide, high, 4 * wide, QImage.Format.Format_RGB32).copy()
