"""How the round signs are drawn: three marks, and five ways of having seen or not seen."""

from functools import cache
from math import cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QTransform

CLEAR = 0.13  # width of the clear line, in diameters
STROKE = 0.085  # width of an outline, in diameters
SLIP = 0.26  # how far each half of a fail slips sideways, in diameters
GAP = 0.04  # what is left open between the halves of a fail, in diameters


def stroke_of(d: float) -> float:
    """The width of an outline of diameter ``d``, in pixels: in small signs never too fine to see."""
    return max(STROKE * d, 1.45)


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


# Cutting paths is slow, so each shape is cut once, for a diameter of 100 round the origin.
UNIT = 100.0


@cache
def _half(upper: bool) -> QPainterPath:
    """Half a round with its clear line left open."""
    r, clear = UNIT / 2, CLEAR * UNIT / 2
    side = _box(-r, -r, r, 0) if upper else _box(-r, 0, r, r)
    middle = _box(-clear, -UNIT, clear, UNIT)
    return _round(QPointF(0, 0), r).intersected(side).subtracted(middle)


@cache
def _pass() -> QPainterPath:
    clear = CLEAR * UNIT / 2
    return _round(QPointF(0, 0), UNIT / 2).subtracted(_box(-clear, -UNIT, clear, UNIT))


def _put(painter: QPainter, path: QPainterPath, c: QPointF, d: float, colour: QColor) -> None:
    """A shape cut for the unit stands round ``c`` with diameter ``d``."""
    place = QTransform.fromTranslate(c.x(), c.y()).scale(d / UNIT, d / UNIT)
    painter.fillPath(place.map(path), QBrush(colour))


def paint_pass(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """The whole round filled, one upright line left clear right through."""
    _put(painter, _pass(), c, d, colour)


def paint_doubt(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """The upper half filled with its clear line, the lower an outline, the joint drawn over."""
    w = STROKE * d
    _put(painter, _half(True), c, d, colour)
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
    _put(painter, _half(True), up, d, colour)
    _put(painter, _half(False), down, d, colour)


def paint_ring(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """An open ring: not seen."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    wide = stroke_of(d)
    painter.setPen(round_pen(colour, wide))
    painter.drawEllipse(c, (d - wide) / 2, (d - wide) / 2)


def paint_examined(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """A ring with a punch dot: examined, no mark yet."""
    paint_ring(painter, c, d, colour)
    _filled(painter, _round(c, 0.135 * d), colour)


def paint_dots(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """Eight dots on a ring: not checked."""
    size = max(0.07 * d, 1.15)
    for n in range(8):
        turn = (n + 0.5) * pi / 4
        reach = d / 2 - size
        spot = QPointF(c.x() + reach * cos(turn), c.y() + reach * sin(turn))
        _filled(painter, _round(spot, size), colour)


def paint_hatched(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """A ring hatched at 45 degrees: cannot be seen."""
    painter.save()
    inner = d / 2 - stroke_of(d) / 2
    painter.setClipPath(_round(c, inner), Qt.ClipOperation.IntersectClip)
    painter.setPen(round_pen(colour, max(0.065 * d, 1.25)))
    for n in range(-3, 4):
        off = n * 0.25 * d
        painter.drawLine(QPointF(c.x() - d + off, c.y() + d), QPointF(c.x() + d + off, c.y() - d))
    painter.restore()
    paint_ring(painter, c, d, colour)


def paint_crossed(painter: QPainter, c: QPointF, d: float, colour: QColor) -> None:
    """Centre lines with nothing in them and no ring: not fitted to this version."""
    painter.setPen(round_pen(colour, stroke_of(d)))
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        near, far = 0.21 * d, 0.5 * d
        painter.drawLine(QPointF(c.x() + x * near, c.y() + y * near), QPointF(c.x() + x * far, c.y() + y * far))
