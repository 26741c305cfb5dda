"""Where the number of the open item stands: off the machine, near its sign, clear of the others."""

from collections.abc import Iterator, Sequence
from math import hypot

from PySide6.QtCore import QLineF, QPointF, QRectF, QSizeF

from inspector.window.look.drawing import Edges

STEP = 8.0  # between the places that are tried, in pixels


def place_number(
    spot: QPointF, reach: float, size: QSizeF, room: QRectF, drawn: QRectF, edges: Edges,
    others: Sequence[tuple[QPointF, float]], gap: float,
) -> QRectF:  # fmt: skip
    """The rectangle of the number: the best place in ``room`` off the machine drawn in ``drawn``.

    It is ``reach`` away from the spot if it can be; ``others`` are the other signs with their
    radius; ``gap`` is kept free round the number.
    """
    tried = [(_plain_cost(spot, rect, reach), rect) for rect in _places(size, room, drawn, edges, gap)
             if room.contains(rect)]  # fmt: skip
    signs = [(centre.x(), centre.y(), radius) for centre, radius in others]
    best, cost = QRectF(room.topLeft(), size), float("inf")
    for plain, rect in sorted(tried, key=lambda pair: pair[0]):
        # What follows is no nearer, so nothing can be better any more.
        if plain >= cost:
            break
        here = plain + _cost_of_signs(spot, rect, signs, cost - plain)
        if here < cost:
            best, cost = rect, here
    return best


def _plain_cost(spot: QPointF, rect: QRectF, reach: float) -> float:
    """The length of the leader; one that lies flat is hard to follow across the drawing."""
    across, down = abs(rect.center().x() - spot.x()), abs(rect.center().y() - spot.y())
    near = _distance(rect, spot.x(), spot.y()) < reach
    return hypot(across, down) + 0.15 * across + (100 if near else 0)


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


def _cost_of_signs(spot: QPointF, rect: QRectF, signs: Sequence[tuple[float, float, float]], limit: float) -> float:
    """What is added for each sign under the number or the leader, counted until it is too much."""
    x, y = spot.x(), spot.y()
    left, top, right, foot = rect.left(), rect.top(), rect.right(), rect.bottom()
    wide, high = (left + right) / 2 - x, (top + foot) / 2 - y
    square = wide * wide + high * high or 1.0
    cost = 0.0
    for sign_x, sign_y, radius in signs:
        across, down = max(left - sign_x, 0.0, sign_x - right), max(top - sign_y, 0.0, sign_y - foot)
        if across * across + down * down < radius * radius:
            cost += 400
        along = ((sign_x - x) * wide + (sign_y - y) * high) / square
        along = 0.0 if along < 0.0 else 1.0 if along > 1.0 else along
        across, down = sign_x - x - along * wide, sign_y - y - along * high
        if across * across + down * down < radius * radius:
            cost += 60
        if cost >= limit:
            break
    return cost


def _distance(rect: QRectF, x: float, y: float) -> float:
    across = max(rect.left() - x, 0.0, x - rect.right())
    return hypot(across, max(rect.top() - y, 0.0, y - rect.bottom()))


def leader_line(spot: QPointF, radius: float, number: QRectF, gap: float) -> QLineF:
    """From the ring round the spot to just before the number; no line where they touch."""
    x = min(max(spot.x(), number.left()), number.right())
    y = min(max(spot.y(), number.top()), number.bottom())
    line = QLineF(spot, QPointF((x + number.center().x()) / 2, y))
    whole = line.length()
    if whole <= radius + gap:
        return QLineF()
    return QLineF(line.pointAt(radius / whole), line.pointAt(1 - gap / whole))
