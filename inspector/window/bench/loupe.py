"""The magnifier: what lies under the finger, shown beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPen, QTransform

from inspector.window.bench.pens import paint_handle

if TYPE_CHECKING:
    from inspector.window.bench.canvas import Canvas
    from inspector.window.bench.overlay import Point

SIDE, EDGE, LARGER, LEAST = 30.0, 2.0, 4.0, 2.0  # millimetres; and so many times larger, at least 2 px to a pixel


def place_of(canvas: Canvas, spot: QPointF) -> QRectF:
    """The upper corner of the widget that the finger does not cover."""
    side, edge = canvas.look.mm(SIDE), canvas.look.mm(EDGE)
    side = min(side, canvas.width() * 0.45, canvas.height() * 0.45)
    left = QRectF(edge, edge, side, side)
    right = QRectF(canvas.width() - edge - side, edge, side, side)
    return right if spot.x() < canvas.width() / 2 else left


def paint_loupe(painter: QPainter, canvas: Canvas, point: Point) -> None:
    """The picture round the point, larger, with a cross on the point itself."""
    room = place_of(canvas, canvas.to_screen(point))
    scale = max(canvas.scale * LARGER, LEAST)
    about = QTransform().translate(room.center().x(), room.center().y()).rotate(canvas.sight.turn).scale(scale, scale)
    painter.save()
    painter.setClipRect(room)
    painter.fillRect(room, canvas.look.colour("tray"))
    canvas.paint_picture(painter, about.translate(-point[0], -point[1]))
    paint_handle(painter, canvas.look, room.center(), held=True)
    painter.restore()
    painter.setPen(QPen(canvas.look.colour("paper"), canvas.look.mm(1.2)))
    painter.drawRect(room)
    painter.setPen(QPen(canvas.look.colour("ink"), canvas.look.mm(0.5)))
    painter.drawRect(room)
