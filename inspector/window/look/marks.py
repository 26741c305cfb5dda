"""How the round signs are drawn: three marks, and five ways of having seen or not seen."""

from math import cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen

CLEAR = 0.13  # width of the clear line, in diameters
STROKE = 0.085  # width of an outline, in diameters
SLIP = 0.26  # how far each half of a fail slips sideways, in diameters
GAP = 0.04  # what is left open between the halves of a fail, in diameters


def round_pen(colour: QColor, width: float) -> QPen:
    """A solid pen with flat ends and mitred corners, width in pixels."""
    join = Qt.PenJoinStyle.MiterJoin
    return QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, join)


def _filled(painter: QPainter, path: QPainterPath, colour: QColor) -> None:
    painter.fillPath(path, QBrush(colour))


def _round(centre: QPointF, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(centre, radius, radius)
    return path


def _box(left: float, top: float, right: float, bottom: float) -> QPainterPath:
    path = QPainterPath()
    path.addRect(QRectF(QPointF(left, top), QPointF(right, bottom)))
    return path


def _half(centre: QPointF, d: float, upper: bool) -> QPainterPath:
    """Half a round with its clear line left open."""
    x, y, r = centre.x(), centre.y(), d / 2
    side = _box(x - r, y - r, x + r, y) if upper else _box(x - r, y, x + r, y + r)
    clear = _box(x - CLEAR * d / 2, y - d, x + CLEAR * d / 2, y + d)
    return _round(centre, r).intersected(side).subtracted(clear)


def paint_pass(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """The whole round filled, one upright line left clear right through."""
    clear = _box(c.x() - CLEAR * d / 2, c.y() - d, c.x() + CLEAR * d / 2, c.y() + d)
    _filled(painter, _round(c, d / 2).subtracted(clear), colour)


def paint_doubt(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """The upper half filled with its clear line, the lower an outline, the joint drawn over."""
    w = STROKE * d
    _filled(painter, _half(QPointF(c.x(), c.y() - w / 2), d - w, True).united(
        _half(c, d, True)), colour)  # fmt: skip
    lower = QPainterPath()
    box = QRectF(c.x() - d / 2 + w / 2, c.y() - d / 2 + w / 2, d - w, d - w)
    lower.arcMoveTo(box, 180)
    lower.arcTo(box, 180, 180)
    painter.strokePath(lower, round_pen(colour, w))
    reach = d / 2 + 0.04 * d
    _filled(painter, _box(c.x() - reach, c.y() - w / 2, c.x() + reach, c.y() + w / 2), colour)


def paint_fail(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """Two filled halves slipped sideways, so that their clear lines no longer meet."""
    up = QPointF(c.x() - SLIP * d, c.y() - GAP * d / 2)
    down = QPointF(c.x() + SLIP * d, c.y() + GAP * d / 2)
    _filled(painter, _half(up, d, True), colour)
    _filled(painter, _half(down, d, False), colour)


def paint_ring(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """An open ring: not seen."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(round_pen(colour, STROKE * d))
    painter.drawEllipse(c, d / 2 - STROKE * d / 2, d / 2 - STROKE * d / 2)


def paint_examined(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """A ring with a punch dot: examined, no mark yet."""
    paint_ring(painter, c, d, colour)
    _filled(painter, _round(c, 0.135 * d), colour)


def paint_dots(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """Eight dots on a ring: not checked."""
    size = 0.07 * d
    for n in range(8):
        turn = (n + 0.5) * pi / 4
        reach = d / 2 - size
        spot = QPointF(c.x() + reach * cos(turn), c.y() + reach * sin(turn))
        _filled(painter, _round(spot, size), colour)


def paint_hatched(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """A ring hatched at 45 degrees: cannot be seen."""
    painter.save()
    inner = d / 2 - STROKE * d
    painter.setClipPath(_round(c, inner), Qt.ClipOperation.IntersectClip)
    painter.setPen(round_pen(colour, 0.06 * d))
    for n in range(-3, 4):
        off = n * 0.24 * d
        painter.drawLine(QPointF(c.x() - d + off, c.y() + d), QPointF(c.x() + d + off, c.y() - d))
    painter.restore()
    paint_ring(painter, c, d, colour)


def paint_crossed(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """Centre lines with nothing in them and no ring: not fitted to this version."""
    painter.setPen(round_pen(colour, STROKE * d))
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        near, far = 0.21 * d, 0.5 * d
        painter.drawLine(QPointF(c.x() + x * near, c.y() + y * near), QPointF(c.x() + x * far, c.y() + y * far))
