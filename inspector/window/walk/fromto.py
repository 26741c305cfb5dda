"""From where to where something is measured, drawn as a draughtsman puts a dimension."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured, measured
from inspector.window.look.type import LEFT, RIGHT, Words

WITNESS, GAP, HEAD = 6.0, 4.0, 2.6  # height of the lines at both ends, between words, of an arrow, in millimetres
LINE, FINE = 0.5, 0.3  # strokes, in millimetres


class FromTo(Measured, QWidget):
    """A line with an arrow at each end between two upright lines; under each stands what it is."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look, self.begin, self.end = look, "", ""
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)

    def say(self, begin: str, end: str) -> None:
        """What is measured begins and ends there."""
        if (begin, end) == (self.begin, self.end):
            return
        self.begin, self.end = begin, end
        self.setAccessibleName(tr("Measure from {begin} to {end}", begin=begin, end=end))
        self.restyle()

    def restyle(self) -> None:
        """The drawing is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def _words(self) -> tuple[Words, Words]:
        look = self.look
        return look.words(self.begin, lead=tr("from")), look.words(self.end, lead=tr("to"))

    def _half(self, width: int) -> float:
        return max((width - self.look.mm(GAP)) / 2, 1.0)

    def hasHeightForWidth(self) -> bool:
        """The words wrap."""
        return True

    @measured
    def heightForWidth(self, width: int) -> int:
        """The line, and the higher of both words below it."""
        words = max(one.height(self._half(width)) for one in self._words())
        return round(self.look.mm(WITNESS) + words)

    def sizeHint(self) -> QSize:
        """A width at which the words take a few lines."""
        wide = self.look.grown(80)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """No word is broken."""
        return QSize(round(2 * max(one.least for one in self._words()) + self.look.mm(GAP)) + 2, 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the line and the words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_line(painter)
        half, top = self._half(self.width()), self.look.mm(WITNESS)
        begin, end = self._words()
        ink = self.look.colour("ink")
        begin.paint(painter, QRectF(0, top, half, self.height() - top), ink, LEFT)
        end.paint(painter, QRectF(self.width() - half, top, half, self.height() - top), ink, RIGHT)
        painter.end()

    def _paint_line(self, painter: QPainter) -> None:
        look, mm = self.look, self.look.mm
        high, edge, head = mm(WITNESS) - mm(1), mm(LINE), mm(HEAD)
        level, right = high / 2, self.width() - edge
        painter.setPen(QPen(look.colour("ink"), mm(LINE)))
        for x in (edge, right):
            painter.drawLine(QPointF(x, 0), QPointF(x, high))
        painter.setPen(QPen(look.colour("ink"), mm(FINE)))
        painter.drawLine(QPointF(edge, level), QPointF(right, level))
        painter.setBrush(look.colour("ink"))
        for x, way in ((edge, 1), (right, -1)):
            tail = x + way * head
            painter.drawPolygon(
                QPolygonF([QPointF(x, level), QPointF(tail, level - head / 3), QPointF(tail, level + head / 3)])
            )
