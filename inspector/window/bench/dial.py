"""Where the light of the relief comes from: a round to turn by finger, wheel or keys."""

from math import atan2, cos, degrees, radians, sin

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.ring import Ringed, show_ring

SIDE, STEP = 24.0, 15.0
_KEYS = {Qt.Key.Key_Left: STEP, Qt.Key.Key_Up: STEP, Qt.Key.Key_Right: -STEP, Qt.Key.Key_Down: -STEP}


class LightDial(Ringed, Measured, QWidget):
    """``turned(degrees)`` while it is turned, ``set_down(degrees)`` when it is let go; 0 is from the right."""

    turned = Signal(float)
    set_down = Signal(float)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.degrees = look, 135.0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)
        self._describe()

    def _describe(self) -> None:
        self.setAccessibleName(tr("Light from {n} degrees, turn it", n=round(self.degrees)))

    def turn_to(self, angle: float, *, done: bool) -> None:
        """The light comes from there."""
        self.degrees = angle % 360
        self._describe()
        self.update()
        (self.set_down if done else self.turned).emit(self.degrees)

    def sizeHint(self) -> QSize:
        """As large as two fingers."""
        return QSize(self.look.grown(SIDE), self.look.grown(SIDE))

    def minimumSizeHint(self) -> QSize:
        """It does not shrink."""
        return self.sizeHint()

    def _angle(self, spot: QPointF) -> float:
        way = spot - QPointF(self.rect().center())
        return degrees(atan2(-way.y(), way.x()))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The light comes from where it is touched."""
        self.turn_to(self._angle(event.position()), done=False)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The light follows the finger."""
        self.turn_to(self._angle(event.position()), done=False)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """There it stays."""
        self.turn_to(self._angle(event.position()), done=True)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel turns it by steps."""
        self.turn_to(self.degrees + STEP * event.angleDelta().y() / 120, done=True)
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows turn it by steps."""
        show_ring(self, self.look)
        step = _KEYS.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
        else:
            self.turn_to(self.degrees + step, done=True)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws a round with a stroke from where the light comes."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle, far = QPointF(self.rect().center()), self.width() / 2 - self.look.mm(1)
        painter.setPen(QPen(self.look.colour("line"), self.look.mm(0.3)))
        painter.drawEllipse(middle, far, far)
        way = QPointF(cos(radians(self.degrees)), -sin(radians(self.degrees)))
        painter.setPen(QPen(self.look.colour("ink"), self.look.mm(0.8)))
        painter.drawLine(middle + way * far, middle + way * far * 0.25)
        painter.setBrush(self.look.colour("ink"))
        painter.drawEllipse(middle + way * (far - self.look.mm(1.6)), self.look.mm(1.6), self.look.mm(1.6))
        painter.end()
