"""Where the number of the open item stands: off the machine, near its sign, clear of the others."""

from collections.abc import Iterator, Sequence
from math import hypot

from PySide6.QtCore import QLineF, QPointF, QRectF, QSizeF

from inspector.window.look.drawing import Edges

STEP = 6.0  # between the places that are tried, in pixels


def place_number(
    spot: QPointF, reach: float, size: QSizeF, room: QRectF, drawn: QRectF, edges: Edges,
    others: Sequence[tuple[QPointF, float]], gap: float,
) -> QRectF:  # fmt: skip
    """The rectangle of the number: the best place in ``room`` off the machine drawn in ``drawn``.

    It is ``reach`` away from the spot if it can be; ``others`` are the other signs with their
    radius; ``gap`` is kept free round the number.
    """
    best, cost = QRectF(room.topLeft(), size), float("inf")
    for rect in _places(size, room, drawn, edges, gap):
        # The length alone may be too much already; only then are the signs looked at.
        short = hypot(rect.center().x() - spot.x(), rect.center().y() - spot.y())
        if short >= cost or not room.contains(rect):
            continue
        here = _cost(spot, rect, others) + (100 if _distance(rect, spot) < reach else 0)
        if here < cost:
            best, cost = rect, here
    return best


def _places(size: QSizeF, room: QRectF, drawn: QRectF, edges: Edges, gap: float) -> Iterator[QRectF]:
    wide, high = size.width(), size.height()
    x = room.x()
    while x + wide <= room.right():
        share = ((x - gap - drawn.x()) / drawn.width(), (x + wide + gap - drawn.x()) / drawn.width())
        top = drawn.y() + edges.above(*share) * drawn.height() - high - gap / 2
        foot = drawn.y() + edges.below(*share) * drawn.height() + gap / 2
        yield QRectF(x, top, wide, high)
        yield QRectF(x, foot, wide, high)
        x += STEP
    y = room.y()
    while y + high <= room.bottom():
        share = ((y - drawn.y()) / drawn.height(), (y + high - drawn.y()) / drawn.height())
        left = drawn.x() + edges.before(*share) * drawn.width() - wide - gap
        right = drawn.x() + edges.after(*share) * drawn.width() + gap
        yield QRectF(left, y, wide, high)
        yield QRectF(right, y, wide, high)
        y += STEP


def _cost(spot: QPointF, rect: QRectF, others: Sequence[tuple[QPointF, float]]) -> float:
    """The length of the leader, made long by every sign under the number or under the leader."""
    line = QLineF(spot, rect.center())
    cost = line.length()
    for centre, radius in others:
        if _distance(rect, centre) < radius:
            cost += 400
        if _from_line(line, centre) < radius:
            cost += 60
    # A leader that lies flat is hard to follow across the drawing.
    return cost + 0.15 * abs(line.dx())


def _distance(rect: QRectF, point: QPointF) -> float:
    x = max(rect.left() - point.x(), 0, point.x() - rect.right())
    y = max(rect.top() - point.y(), 0, point.y() - rect.bottom())
    return hypot(x, y)


def _from_line(line: QLineF, point: QPointF) -> float:
    length = line.length()
    if not length:
        return hypot(point.x() - line.x1(), point.y() - line.y1())
    along = ((point.x() - line.x1()) * line.dx() + (point.y() - line.y1()) * line.dy()) / length**2
    near = line.pointAt(min(max(along, 0.0), 1.0))
    return hypot(point.x() - near.x(), point.y() - near.y())


def leader_line(spot: QPointF, radius: float, number: QRectF, gap: float) -> QLineF:
    """From the ring round the spot to just before the number; no line where they touch."""
    x = min(max(spot.x(), number.left()), number.right())
    y = min(max(spot.y(), number.top()), number.bottom())
    line = QLineF(spot, QPointF((x + number.center().x()) / 2, y))
    whole = line.length()
    if whole <= radius + gap:
        return QLineF()
    return QLineF(line.pointAt(radius / whole), line.pointAt(1 - gap / whole))
