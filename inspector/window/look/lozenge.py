"""Lozenges for what was paid, bid or asked: filled, half filled, open."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from inspector.window.look.look import Look

SOLD, BID, ASKED = "sold", "bid", "asked"
SIZE, RING, LINE = 4.2, 1.9, 0.42  # across a lozenge, across a ring, thickness of both, in millimetres


def paint_lozenge(painter: QPainter, middle: QPointF, kind: str, look: Look) -> None:
    """Filled where sold, its left half where bid, open where asked."""
    half, ink = look.grown(SIZE) / 2, look.colour("ink")
    shape = _points(middle, half)
    painter.setPen(QPen(ink, look.mm(LINE), Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(ink if kind == SOLD else look.colour("paper"))
    painter.drawPolygon(shape)
    if kind == BID:
        painter.save()
        painter.setClipRect(QRectF(middle.x() - half, middle.y() - half, half, 2 * half))
        painter.setBrush(ink)
        painter.drawPolygon(shape)
        painter.restore()


def paint_ring(painter: QPainter, middle: QPointF, look: Look) -> None:
    """A ring where the figure was entered."""
    half = look.grown(RING) / 2
    painter.setPen(QPen(look.colour("line"), look.mm(0.36)))
    painter.setBrush(look.colour("paper"))
    painter.drawEllipse(middle, half, half)


def paint_way(painter: QPainter, entered: QPointF, adjusted: QPointF, kind: str, look: Look) -> None:
    """A fine line from the ring of a figure as entered to the lozenge of the adjusted one."""
    painter.setPen(QPen(look.colour("line"), look.mm(0.36)))
    painter.drawLine(QLineF(entered, adjusted))
    if abs(entered.x() - adjusted.x()) > look.mm(0.3):
        paint_ring(painter, entered, look)
    paint_lozenge(painter, adjusted, kind, look)


def broken(look: Look) -> QPen:
    """The pen of a broken upright."""
    pen = QPen(look.colour("ink"), look.mm(0.42), Qt.PenStyle.CustomDashLine, Qt.PenCapStyle.FlatCap)
    pen.setDashPattern([5.0, 3.0])
    return pen


def _points(middle: QPointF, half: float) -> QPolygonF:
    x, y = middle.x(), middle.y()
    return QPolygonF([QPointF(x - half, y), QPointF(x, y - half), QPointF(x + half, y), QPointF(x, y + half)])
