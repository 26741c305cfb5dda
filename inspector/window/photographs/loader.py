"""Small pictures for a list, fetched and scaled beside the window; what is looked at now comes first."""

from collections import OrderedDict, deque
from threading import Lock

from PySide6.QtCore import QObject, QRunnable, QSize, Qt, QThreadPool, Signal
from PySide6.QtGui import QImage

from inspector.storage.thumbs import Thumbs

MOST_IMAGES, MOST_WAITING = 400, 64
PX = 320


class Loader(QObject):
    """``came(sha256)`` tells that a picture is there, or that there is none."""

    came = Signal(str)
    _made = Signal(str, QSize, QImage)

    def __init__(self, thumbs: Thumbs, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._thumbs = thumbs
        self._images: OrderedDict[str, QImage] = OrderedDict()
        self._waiting: deque[str] = deque()
        self._lock = Lock()
        self._working = 0
        self._size = QSize(90, 60)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._made.connect(self._take)

    def set_size(self, size: QSize) -> None:
        """The pictures fill this many pixels; those of another size are let go."""
        if size != self._size:
            self._size = size
            self._images.clear()

    def image(self, sha256: str) -> QImage | None:
        """The picture; None while it is fetched, and an empty one where there is none."""
        found = self._images.get(sha256)
        if found is not None:
            self._images.move_to_end(sha256)
            return found
        self._ask(sha256)
        return None

    def forget(self) -> None:
        """Every picture is fetched anew when it is next asked for."""
        self._images.clear()

    def idle(self) -> bool:
        """Whether nothing is being fetched."""
        with self._lock:
            return not self._working and not self._waiting

    def _ask(self, sha256: str) -> None:
        with self._lock:
            if sha256 in self._waiting:
                return
            self._waiting.append(sha256)
            if len(self._waiting) > MOST_WAITING:  # scrolled past long ago
                self._waiting.popleft()
            if self._working:
                return
            self._working = 1
        self._pool.start(_Fetch(self))

    def _take(self, sha256: str, size: QSize, image: QImage) -> None:
        if size == self._size:
            self._images[sha256] = image
            while len(self._images) > MOST_IMAGES:
                self._images.popitem(last=False)
        self.came.emit(sha256)


class _Fetch(QRunnable):
    """Fetches what is waiting, the latest first, until nothing is."""

    def __init__(self, loader: Loader) -> None:
        super().__init__()
        self._waiting, self._lock, self._loader = loader._waiting, loader._lock, loader
        self._thumbs, self._emit = loader._thumbs, loader._made.emit

    def run(self) -> None:
        while True:
            with self._lock:
                if not self._waiting:
                    self._loader._working = 0
                    return
                sha256 = self._waiting.pop()
            size = self._loader._size
            try:
                image = _filling(self._thumbs.get(sha256, PX), size)
            except Exception:  # whatever goes wrong, the row says that there is no picture
                image = QImage()
            self._emit(sha256, size, image)


def _filling(data: bytes | None, size: QSize) -> QImage:
    """The picture cut to fill this size."""
    image = QImage.fromData(data) if data else QImage()
    if image.isNull():
        return image
    scaled = image.scaled(
        size, Qt.AspectRatioMode.KeepAspectRatioByExpanding, Qt.TransformationMode.SmoothTransformation
    )
    left, top = (scaled.width() - size.width()) // 2, (scaled.height() - size.height()) // 2
    return scaled.copy(left, top, size.width(), size.height()).convertToFormat(QImage.Format.Format_RGB32)
