"""A photograph to read from: shown whole, made larger, and pulled about by hand, wheel or keys."""

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QPinchGesture, QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.ring import Ringed, show_ring
from inspector.window.look.type import CENTRE

LARGEST, STEP, REACH = 12.0, 1.5, 0.12
_MOVES = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
}  # fmt: skip


class Picture(Ringed, Measured, QWidget):
    """One picture; ``share`` 1 shows all of it. At first it fills its room. Without one, words stand there."""

    def __init__(self, look: Look, high: float, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.high = look, high
        self.share, self.middle = 1.0, QPointF(0.5, 0.5)  # of the picture, as shares of its sides
        self._fills = True  # until somebody makes it larger or smaller
        self._image, self._words = QImage(), ""
        self._held: QPointF | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.grabGesture(Qt.GestureType.PinchGesture)
        look.changed.connect(self.updateGeometry)

    def show_image(self, image: QImage, name: str, words: str = "") -> None:
        """This picture fills the room; ``words`` stand there where there is none."""
        self._image, self._words = image, words
        self.setAccessibleName(name)
        self.fill()

    def fill(self) -> None:
        """The middle of the picture fills the room: a number is wide and not high."""
        self.share, self.middle, self._fills = 1.0, QPointF(0.5, 0.5), True
        size = self._image.size()
        if not size.isEmpty() and self.height():
            sides = self.width() / size.width(), self.height() / size.height()
            self.share = min(max(sides) / max(min(sides), 1e-6), LARGEST)
        self.update()

    def zoom(self, times: float, at: QPointF | None = None) -> None:
        """So many times larger, the point ``at`` (in the widget) staying where it is."""
        spot, self._fills = at or QPointF(self.rect().center()), False
        before = self._shares(spot)
        self.share = min(max(self.share * times, 1.0), LARGEST)
        after = self._shares(spot)
        self._move(self.middle + before - after)

    def whole(self) -> None:
        """All of the picture is shown."""
        self.share, self._fills = 1.0, False
        self._move(QPointF(0.5, 0.5))

    def _move(self, middle: QPointF) -> None:
        room = self._target()
        half_x = min(self.width() / max(room.width(), 1.0), 1.0) / 2
        half_y = min(self.height() / max(room.height(), 1.0), 1.0) / 2
        x, y = min(max(middle.x(), half_x), 1 - half_x), min(max(middle.y(), half_y), 1 - half_y)
        self.middle = QPointF(x, y)
        self.update()

    def _scale(self) -> float:
        size = self._image.size()
        if size.isEmpty():
            return 1.0
        return min(self.width() / size.width(), self.height() / size.height()) * self.share

    def _target(self) -> QRectF:
        """Where the whole picture lies, reaching past the widget when it is larger."""
        wide, high = self._image.width() * self._scale(), self._image.height() * self._scale()
        left = self.width() / 2 - self.middle.x() * wide
        top = self.height() / 2 - self.middle.y() * high
        return QRectF(left, top, wide, high)

    def _shares(self, spot: QPointF) -> QPointF:
        room = self._target()
        x = (spot.x() - room.x()) / max(room.width(), 1.0)
        return QPointF(x, (spot.y() - room.y()) / max(room.height(), 1.0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A picture that filled its room fills it again."""
        super().resizeEvent(event)
        if self._fills:
            self.fill()

    def sizeHint(self) -> QSize:
        """As high as it is to be, whatever the width."""
        return QSize(self.look.px(60), self.look.px(self.high))

    def minimumSizeHint(self) -> QSize:
        """Room for a finger."""
        return QSize(self.look.px(12), self.look.px(self.high))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture on tray, or the words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.fillRect(self.rect(), self.look.colour("tray"))
        if self._image.isNull():
            words = self.look.words(self._words, "small")
            room = QRectF(0, (self.height() - words.leading) / 2, self.width(), words.leading)
            words.paint(painter, room, self.look.colour("soft"), CENTRE)
        else:
            painter.drawImage(self._target(), self._image)
        painter.setPen(self.look.colour("line"))
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()

    # hands

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The picture is taken hold of."""
        self._held = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The picture follows the hand."""
        if self._held is None:
            return
        moved = event.position() - self._held
        self._held = event.position()
        room = self._target()
        self._move(self.middle - QPointF(moved.x() / max(room.width(), 1.0), moved.y() / max(room.height(), 1.0)))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The picture is let go."""
        self._held = None

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Twice as large there, or whole again."""
        self.zoom(2.0, event.position()) if self.share == 1.0 else self.whole()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """With Ctrl the wheel makes it larger or smaller; without, it scrolls the page."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.angleDelta().y():
            self.zoom(STEP if event.angleDelta().y() > 0 else 1 / STEP, event.position())
            event.accept()
        else:
            event.ignore()

    def event(self, event: QEvent) -> bool:
        """Two fingers make it larger or smaller."""
        if event.type() == QEvent.Type.Gesture:
            pinch = event.gesture(Qt.GestureType.PinchGesture)  # type: ignore[attr-defined]
            if isinstance(pinch, QPinchGesture):
                self.zoom(pinch.scaleFactor(), self.mapFromGlobal(pinch.centerPoint()))
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Plus and minus make it larger and smaller, arrows move it, 0 shows all."""
        show_ring(self, self.look)
        if event.text() in ("+", "-"):
            self.zoom(STEP if event.text() == "+" else 1 / STEP)
        elif event.text() == "0":
            self.whole()
        elif Qt.Key(event.key()) in _MOVES and self.share > 1.0:
            x, y = _MOVES[Qt.Key(event.key())]
            self._move(self.middle + QPointF(x, y) * (REACH / self.share))
        else:
            super().keyPressEvent(event)
