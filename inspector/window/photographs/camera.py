"""A camera of this computer: what it sees, and a key that takes it in. Loaded only when it is asked for."""

import sys
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path
from typing import Any, Protocol

from PySide6.QtCore import QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.text import Text

DEVICES = Path("/dev")


class Feed(Protocol):
    """What shows a picture again and again until it is stopped."""

    def start(self, show: Callable[[QImage], None], fail: Callable[[str], None]) -> None:
        """Pictures arrive at ``show`` from now on; ``fail`` hears why none do."""

    def stop(self) -> None:
        """No picture arrives any more, and the camera is free for others."""


def may_be_there() -> bool:
    """Whether it is worth a try: the part of Qt is installed, and the system does not say that there is no camera."""
    if find_spec("PySide6.QtMultimedia") is None:
        return False
    return not sys.platform.startswith("linux") or any(DEVICES.glob("video*"))


def default_feed() -> Feed | None:
    """The first camera of this computer; None where there is none, or Qt cannot use it here."""
    try:
        from PySide6.QtMultimedia import QMediaDevices
    except ImportError:  # a system library that it needs is not installed
        return None
    devices = QMediaDevices.videoInputs()
    return QtFeed(devices[0]) if devices else None


class QtFeed(QObject):
    """One camera, its frames as images."""

    def __init__(self, device: Any) -> None:
        super().__init__()
        from PySide6.QtMultimedia import QCamera, QMediaCaptureSession, QVideoSink

        self._camera, self._session, self._sink = QCamera(device), QMediaCaptureSession(), QVideoSink()
        self._session.setCamera(self._camera)
        self._session.setVideoSink(self._sink)

    def start(self, show: Callable[[QImage], None], fail: Callable[[str], None]) -> None:
        """The camera is on."""
        self._sink.videoFrameChanged.connect(lambda frame: show(frame.toImage()))
        self._camera.errorOccurred.connect(lambda _, words: fail(words))
        self._camera.start()

    def stop(self) -> None:
        """The camera is off."""
        self._camera.stop()


class Finder(QWidget):
    """What the camera sees, or words while it sees nothing."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.image = look, QImage()
        self.words = tr("The camera begins.")
        self.setAccessibleName(tr("What the camera sees"))
        self.setMinimumSize(QSize(look.px(60), look.px(45)))

    def show_image(self, image: QImage) -> None:
        """The latest picture."""
        self.image = image
        self.update()

    def say(self, words: str) -> None:
        """Why there is no picture."""
        self.words, self.image = words, QImage()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture whole."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour("tray"))
        if self.image.isNull():
            self.look.words(self.words, "text").paint(painter, QRectF(self.rect()), self.look.colour("ink"))
        else:
            kept = Qt.AspectRatioMode.KeepAspectRatio
            shown = self.image.scaled(self.size(), kept)
            painter.drawImage((self.width() - shown.width()) // 2, (self.height() - shown.height()) // 2, shown)
        painter.end()


class CameraSheet(QDialog):
    """The camera's picture and the key that takes it; ``taken`` carries the image."""

    taken = Signal(QImage)

    def __init__(self, look: Look, feed: Feed, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Camera of this computer"))
        self.feed = feed
        self.finder = Finder(look)
        self.take = Key(look, tr("take it"), name=tr("Take this picture"), step="key")
        self.take.hold("chosen")
        self.close_key = Key(look, tr("close"))
        self.take.clicked.connect(self._take)
        self.close_key.clicked.connect(self.close)
        box = QVBoxLayout(self)
        box.addWidget(self.finder, 1)
        box.addWidget(Text(look, tr("A picture taken here carries no time of its own."), ink="soft"))
        box.addWidget(KeyRow(look, [self.take, self.close_key], fit="flow"))
        self.resize(look.px(150), look.px(130))
        self.finished.connect(lambda _: feed.stop())
        feed.start(self.finder.show_image, self.finder.say)

    def _take(self) -> None:
        if not self.finder.image.isNull():
            self.taken.emit(self.finder.image.copy())

    def closeEvent(self, event: Any) -> None:
        """The camera is off before the window goes."""
        self.feed.stop()
        super().closeEvent(event)
