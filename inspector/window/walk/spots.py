"""A photograph in which two spots are set, the one that is moved shown larger beside the finger."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.ring import Ringed, show_ring
from inspector.window.look.type import CENTRE

HIGH, GLASS, TIMES = 62.0, 26.0, 8.0  # of the picture and of the magnifier in millimetres; how much larger it shows
HALF = 0.006  # half the side of a spot, of the longer side of the picture
_MOVES = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
}  # fmt: skip


class Spots(Ringed, Measured, QWidget):
    """Spots as shares of the picture, one of them active; a press or a drag sets it, arrows move it by a pixel.

    ``moved`` tells that a spot is somewhere else.
    """

    moved = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.spots: list[QPointF | None] = [None, None]
        self.active = 0
        self._image, self._words = QImage(), ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def show_image(self, image: QImage, name: str, words: str = "") -> None:
        """This picture is shown without spots; ``words`` stand there where there is none."""
        self._image, self._words = image, words
        self.spots, self.active = [None, None], 0
        self.setAccessibleName(tr("{name}: press where the colour is to be taken", name=name))
        self.update()
        self.moved.emit()

    def pixels(self, spot: int) -> list[tuple[int, int, int]]:
        """Red, green and blue of every pixel of a spot; none where it is not set."""
        at = self.spots[spot]
        if at is None or self._image.isNull():
            return []
        half, centre = self._half(), self._pixel(at)
        found = []
        for y in range(max(centre[1] - half, 0), min(centre[1] + half + 1, self._image.height())):
            for x in range(max(centre[0] - half, 0), min(centre[0] + half + 1, self._image.width())):
                colour = self._image.pixelColor(x, y)
                found.append((colour.red(), colour.green(), colour.blue()))
        return found

    def _half(self) -> int:
        return max(round(HALF * max(self._image.width(), self._image.height())), 2)

    def _pixel(self, at: QPointF) -> tuple[int, int]:
        return int(at.x() * (self._image.width() - 1)), int(at.y() * (self._image.height() - 1))

    def sizeHint(self) -> QSize:
        """As high as it is to be, whatever the width."""
        return QSize(self.look.px(80), self.look.px(HIGH))

    def minimumSizeHint(self) -> QSize:
        """Room for a finger."""
        return QSize(self.look.px(12), self.look.px(HIGH))

    # drawing

    def _target(self) -> QRectF:
        size = self._image.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        room = QRectF(0, 0, size.width(), size.height())
        room.moveCenter(QRectF(self.rect()).center())
        return room

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture, both spots and the magnifier."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.fillRect(self.rect(), self.look.colour("tray"))
        if self._image.isNull():
            words = self.look.words(self._words)
            room = QRectF(0, (self.height() - words.leading) / 2, self.width(), words.leading)
            words.paint(painter, room, self.look.colour("soft"), CENTRE)
        else:
            painter.drawImage(self._target(), self._image)
            for n, spot in enumerate(self.spots):
                if spot is not None:
                    self._paint_spot(painter, self._there(spot), str(n + 1))
            self._paint_glass(painter)
        painter.setPen(self.look.colour("line"))
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()

    def _there(self, spot: QPointF) -> QPointF:
        room = self._target()
        return QPointF(room.x() + spot.x() * room.width(), room.y() + spot.y() * room.height())

    def _paint_spot(self, painter: QPainter, at: QPointF, word: str) -> None:
        """A ring of ink within a ring of paper, so that it shows on any colour, and its number beside it."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        radius = self.look.mm(2.4)
        for ink, wide in (("paper", 1.4), ("ink", 0.5)):
            painter.setPen(QPen(self.look.colour(ink), self.look.mm(wide)))
            painter.drawEllipse(at, radius, radius)
        words = self.look.words(word, "small", True)
        left = at.x() + self.look.mm(3.4)
        if left + self.look.mm(5) > self.width():
            left = at.x() - self.look.mm(8.4)
        box = QRectF(left, at.y() - words.leading / 2, self.look.mm(5), words.leading)
        painter.fillRect(box, self.look.colour("paper"))
        words.paint(painter, box, self.look.colour("ink"), CENTRE)

    def _paint_glass(self, painter: QPainter) -> None:
        """The active spot larger, in the corner that is farther from it, with the patch that is taken outlined."""
        spot = self.spots[self.active]
        if spot is None:
            return
        side = min(self.look.mm(GLASS), self.height() * 0.45)
        left = self.width() - side if self._there(spot).x() < self.width() / 2 else 0.0
        box = QRectF(left, 0, side, side)
        seen = (2 * self._half() + 1) * TIMES / 2
        x, y = self._pixel(spot)
        painter.fillRect(box, self.look.colour("tray"))
        painter.drawImage(box, self._image, QRectF(x + 0.5 - seen / 2, y + 0.5 - seen / 2, seen, seen))
        patch = QRectF(0, 0, side * 2 / TIMES, side * 2 / TIMES)
        patch.moveCenter(box.center())
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, wide in (("paper", 1.2), ("ink", 0.4)):
            painter.setPen(QPen(self.look.colour(ink), self.look.mm(wide)))
            painter.drawRect(patch)
            painter.drawRect(box)

    # hands

    def _set(self, spot: QPointF) -> None:
        self.spots[self.active] = QPointF(min(max(spot.x(), 0.0), 1.0), min(max(spot.y(), 0.0), 1.0))
        self.update()
        self.moved.emit()

    def _press(self, at: QPointF) -> None:
        room = self._target()
        if not self._image.isNull() and not room.isEmpty():
            self._set(QPointF((at.x() - room.x()) / room.width(), (at.y() - room.y()) / room.height()))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The active spot is there."""
        self._press(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The active spot follows."""
        self._press(event.position())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the active spot by a pixel, with Shift by ten; the first sets it in the middle."""
        show_ring(self, self.look)
        way = _MOVES.get(Qt.Key(event.key()))
        if way is None or self._image.isNull():
            super().keyPressEvent(event)
            return
        spot = self.spots[self.active] or QPointF(0.5, 0.5)
        far = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        step = QPointF(way[0] * far / self._image.width(), way[1] * far / self._image.height())
        self._set(spot + step if self.spots[self.active] is not None else spot)
