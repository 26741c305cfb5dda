"""Where the number of the open item stands: off the machine, near its sign, clear of the others."""

from collections.abc import Iterator, Sequence
from math import hypot

from PySide6.QtCore import QLineF, QPointF, QRectF, QSizeF

from inspector.window.look.drawing import Edges

STEP = 8.0  # between the places that are tried, in pixels


Sign = tuple[float, float, float]  # x, y and radius, in pixels
Place = tuple[float, float, float, float]  # left, top, right and foot, in pixels


def number_places(size: QSizeF, room: QRectF, drawn: QRectF, edges: Edges, gap: float) -> list[Place]:
    """Every place in ``room`` for a number of this size that is off the machine drawn in ``drawn``.

    ``gap`` is kept free round the number.
    """
    wide, high = size.width(), size.height()
    within = QRectF(room.x(), room.y(), room.width() - wide, room.height() - high)
    return [
        (x, y, x + wide, y + high)
        for x, y in _corners(size, room, drawn, edges, gap)
        if within.left() <= x <= within.right() and within.top() <= y <= within.bottom()
    ]


def place_number(spot: QPointF, reach: float, places: Sequence[Place], signs: Sequence[Sign]) -> QRectF | None:
    """The rectangle of the number: the best of the places, ``reach`` away from the spot if it can be.

    ``signs`` are the other signs: x, y and radius. None where there is no place.
    """
    x, y = spot.x(), spot.y()
    best, cost = None, float("inf")
    for plain, place in sorted((_plain_cost(x, y, place, reach), place) for place in places):
        # What follows is no nearer, so nothing can be better any more.
        if plain >= cost:
            break
        here = plain + _cost_of_signs(x, y, place, signs, cost - plain)
        if here < cost:
            best, cost = place, here
    return QRectF(QPointF(*best[:2]), QPointF(*best[2:])) if best else None


def _plain_cost(x: float, y: float, place: Place, reach: float) -> float:
    """The length of the leader; one that lies flat is hard to follow across the drawing."""
    left, top, right, foot = place
    across, down = abs((left + right) / 2 - x), abs((top + foot) / 2 - y)
    near = hypot(max(left - x, 0.0, x - right), max(top - y, 0.0, y - foot)) < reach
    return hypot(across, down) + 0.15 * across + (100 if near else 0)


def _corners(size: QSizeF, room: QRectF, drawn: QRectF, edges: Edges, gap: float) -> Iterator[tuple[float, float]]:
    wide, high = size.width(), size.height()
    x = room.x()
    while x + wide <= room.right():
        share = ((x - gap - drawn.x()) / drawn.width(), (x + wide + gap - drawn.x()) / drawn.width())
        yield x, drawn.y() + edges.above(*share) * drawn.height() - high - gap / 2
        yield x, drawn.y() + edges.below(*share) * drawn.height() + gap / 2
        x += STEP
    y = room.y()
    while y + high <= room.bottom():
        share = ((y - drawn.y()) / drawn.height(), (y + high - drawn.y()) / drawn.height())
        yield drawn.x() + edges.before(*share) * drawn.width() - wide - gap, y
        yield drawn.x() + edges.after(*share) * drawn.width() + gap, y
        y += STEP


def _cost_of_signs(x: float, y: float, place: Place, signs: Sequence[Sign], limit: float) -> float:
    """What is added for each sign under the number or the leader, counted until it is too much."""
    left, top, right, foot = place
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


def leader_line(spot: QPointF, radius: float, number: QRectF, gap: float) -> QLineF:
    """From the ring round the spot to just before the number; no line where they touch."""
    x = min(max(spot.x(), number.left()), number.right())
    y = min(max(spot.y(), number.top()), number.bottom())
    line = QLineF(spot, QPointF((x + number.center().x()) / 2, y))
    whole = line.length()
    if whole <= radius + gap:
        return QLineF()
    return QLineF(line.pointAt(radius / whole), line.pointAt(1 - gap / whole))
