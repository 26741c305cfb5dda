"""How the signs made of strokes are drawn: grades, how two numbers stand, and what a key does."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from inspector.window.look.marks import round_pen

GRADE_WIDE = 18 / 15  # of a grade, widths to heights
RELATION_WIDE = 26 / 24


def paint_grade(painter: QPainter, box: QRectF, filled: int, colour: QColor, line: QColor) -> None:
    """Three strokes fill ``box``, of which the first ``filled`` are solid and the rest hollow."""
    unit = box.width() / 18
    for n in range(3):
        stroke = QRectF(box.x() + n * 7 * unit, box.y(), 4 * unit, box.height())
        if n < filled:
            painter.fillRect(stroke, colour)
        else:
            _hollow(painter, stroke, line, max(1.0, 0.28 * unit * 4))


def _hollow(painter: QPainter, rect: QRectF, colour: QColor, width: float) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(round_pen(colour, width))
    painter.drawRect(rect.adjusted(width / 2, width / 2, -width / 2, -width / 2))


def paint_relation(painter: QPainter, box: QRectF, name: str, colour: QColor) -> None:
    """Two ruled lines stand in ``box``; the second says how the two numbers stand."""
    unit = box.height() / 24
    x, y = box.x(), box.y() + 4 * unit
    painter.fillRect(_sharp(x, y, 26 * unit, 5 * unit), colour)
    second = y + 11 * unit
    if name == "disagree as read":
        _hollow(painter, _sharp(x, second, 26 * unit, 5 * unit), colour, 1.5 * unit)
        return
    for left, top, wide, high in _SECOND[name]:
        rect = _sharp(x + left * unit, second + top * unit, wide * unit, high * unit)
        painter.fillRect(rect, colour)


def _sharp(left: float, top: float, wide: float, high: float) -> QRectF:
    """The rectangle with its edges on whole pixels."""
    x, y = round(left), round(top)
    return QRectF(x, y, max(round(left + wide) - x, 1), max(round(top + high) - y, 1))


# left, top, width and height of what the second line is made of, in 24ths of the height
_SECOND = {
    "agree as read": ((0, 0, 26, 5),),
    "agree if": ((0, 0, 15, 5), (21, 0, 5, 5)),
    "close as usual": ((0, 0, 20, 5),),
    "unusual gap": ((0, 0, 5, 5), (21, 0, 5, 5)),
    "differ, as built": ((9, 0, 17, 5),),
    "one slip": ((0, 0, 11, 5), (10, 4, 8, 5), (17, 0, 9, 5)),
    "cannot compare": ((0, 1, 3, 3), (7.67, 1, 3, 3), (15.33, 1, 3, 3), (23, 1, 3, 3)),
}
RELATIONS = (*_SECOND, "disagree as read")


def _pen(colour: QColor, width: float) -> QPen:
    pen = round_pen(colour, width)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _drawn(painter: QPainter, box: QRectF, colour: QColor, name: str) -> None:
    """The polylines of a name on a field of 24 by 24, stroked 2.6 wide."""
    scale = box.height() / 24
    path = QPainterPath()
    for points in _LINES[name]:
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
    painter.save()
    painter.translate(box.center() - QPointF(12 * scale, 12 * scale))
    painter.scale(scale, scale)
    painter.strokePath(path, _pen(colour, 2.6))
    painter.restore()


_LINES = {
    "right": (((9, 5.5), (15.5, 12), (9, 18.5)),),
    "left": (((15, 5.5), (8.5, 12), (15, 18.5)),),
    "down": (((5.5, 9), (12, 15.5), (18.5, 9)),),
    "up": (((5.5, 15), (12, 8.5), (18.5, 15)),),
    "plus": (((12, 1), (12, 23)), ((1, 12), (23, 12))),
    "dash": (((5, 12), (19, 12)),),
}
ACTIONS = (*_LINES, "undo", "redo", "stop", "photograph")


def paint_action(painter: QPainter, box: QRectF, name: str, colour: QColor) -> None:
    """What a key does stands in the middle of ``box``, as high as the box allows."""
    if name in _LINES:
        _drawn(painter, box, colour, name)
    elif name in ("undo", "redo"):
        _turn(painter, box, colour, 1 if name == "undo" else -1)
    elif name == "stop":
        side = box.height() * 0.6
        square = QRectF(0, 0, side, side)
        square.moveCenter(box.center())
        painter.fillRect(square, colour)
    else:
        _photograph(painter, box, colour)


def _turn(painter: QPainter, box: QRectF, colour: QColor, way: int) -> None:
    """An arrow that goes out and comes back; ``way`` 1 points left, -1 right."""
    scale = box.height() / 24
    path = QPainterPath(QPointF(-4, -10))
    path.lineTo(-11, -3.5)
    path.lineTo(-4, 3)
    path.moveTo(-11, -3.5)
    path.lineTo(4.5, -3.5)
    path.arcTo(QRectF(-2, -3.5, 13, 13), 90, -180)
    path.lineTo(-4, 9.5)
    painter.save()
    painter.translate(box.center())
    painter.scale(scale * way, scale)
    painter.strokePath(path, _pen(colour, 2.6))
    painter.restore()


def _photograph(painter: QPainter, box: QRectF, colour: QColor) -> None:
    scale = box.height() / 24
    path = QPainterPath(QPointF(-11, -5.5))
    for x, y in ((-5.5, -5.5), (-3.5, -9), (3.5, -9), (5.5, -5.5), (11, -5.5), (11, 8.5), (-11, 8.5)):
        path.lineTo(x, y)
    path.closeSubpath()
    path.addEllipse(QPointF(0, 1.2), 4.2, 4.2)
    painter.save()
    painter.translate(box.center())
    painter.scale(scale, scale)
    painter.strokePath(path, _pen(colour, 2.2))
    painter.restore()
