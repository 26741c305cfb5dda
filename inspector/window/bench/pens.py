"""Lines and words over a photograph: ink on a halo of paper, to be seen on any ground."""

from collections.abc import Callable, Sequence
from math import hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPen, QPolygonF

from inspector.photo.marks import HEAD, arrow_head
from inspector.window.look.look import Look

THIN, HALO = 0.35, 1.1  # of a line and of its halo, in millimetres
HANDLE = 2.4  # half the width of the cross of a handle


def twice(painter: QPainter, look: Look, ink: str, draw: Callable[[], object], *, thin: float = THIN) -> None:
    """Drawn once as a halo of paper, and once in ink over it."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, wide in (("paper", HALO + thin - THIN), (ink, thin)):
        pen = QPen(look.colour(colour), look.mm(wide))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        draw()


def paint_polygon(painter: QPainter, look: Look, spots: Sequence[QPointF], *, ink: str = "ink") -> None:
    """A closed outline through the points."""
    shape = QPolygonF(list(spots))
    twice(painter, look, ink, lambda: painter.drawPolygon(shape))


def paint_line(painter: QPainter, look: Look, spots: Sequence[QPointF], *, ink: str = "ink") -> None:
    """A line through the points."""
    shape = QPolygonF(list(spots))
    twice(painter, look, ink, lambda: painter.drawPolyline(shape))


def paint_handle(painter: QPainter, look: Look, spot: QPointF, *, held: bool = False) -> None:
    """A cross that leaves its middle free; the one that is held is larger and in the ink of the focus."""
    far, near = look.mm(HANDLE * (1.5 if held else 1.0)), look.mm(0.5)

    def cross() -> None:
        for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            painter.drawLine(spot + QPointF(x, y) * near, spot + QPointF(x, y) * far)

    twice(painter, look, "focus" if held else "ink", cross)


def paint_arrow(painter: QPainter, look: Look, start: QPointF, end: QPointF) -> None:
    """An arrow from the first point to the second."""
    one, other = arrow_head(start.toTuple(), end.toTuple(), HEAD * look.mm(0.5))

    def arrow() -> None:
        painter.drawLine(start, end)
        painter.drawPolyline(QPolygonF([QPointF(*one), end, QPointF(*other)]))

    twice(painter, look, "ink", arrow, thin=0.5)


def paint_ring(painter: QPainter, look: Look, middle: QPointF, rim: QPointF) -> None:
    """A ring round the first point through the second."""
    far = hypot(rim.x() - middle.x(), rim.y() - middle.y())
    twice(painter, look, "ink", lambda: painter.drawEllipse(middle, far, far), thin=0.5)


def paint_words(painter: QPainter, look: Look, spot: QPointF, text: str) -> None:
    """Words on a strip of paper, beginning at the point."""
    words = look.words(text, "small", True)
    room = QRectF(spot.x(), spot.y() - words.leading, words.natural + look.mm(1.6), words.leading)
    painter.fillRect(room, QBrush(look.colour("paper")))
    words.paint(painter, room.adjusted(look.mm(0.8), 0, 0, 0), look.colour("ink"))
