"""Which part of a picture is seen, how large, and how turned."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF, QSizeF
from PySide6.QtGui import QTransform

LARGEST = 16.0  # pixels of the screen to one of the picture


@dataclass(frozen=True, slots=True)
class Sight:
    """``zoom`` 1 shows the whole picture; ``middle`` is what stands in the middle, in shares; ``turn`` in degrees."""

    zoom: float = 1.0
    middle: tuple[float, float] = (0.5, 0.5)
    turn: float = 0.0

    def fitting(self, picture: QSizeF, room: QSizeF) -> float:
        """Pixels of the screen to one of the picture at which the whole turned picture just fits."""
        turned = QTransform().rotate(self.turn).mapRect(QRectF(0, 0, picture.width(), picture.height()))
        return min(room.width() / max(turned.width(), 1.0), room.height() / max(turned.height(), 1.0))

    def scale(self, picture: QSizeF, room: QSizeF) -> float:
        """Pixels of the screen to one of the picture."""
        return self.fitting(picture, room) * self.zoom

    def transform(self, picture: QSizeF, room: QSizeF) -> QTransform:
        """From pixels of the picture to the room that it is seen in."""
        scale = self.scale(picture, room)
        made = QTransform().translate(room.width() / 2, room.height() / 2).rotate(self.turn).scale(scale, scale)
        return made.translate(-self.middle[0] * picture.width(), -self.middle[1] * picture.height())

    def moved(self, by: QPointF, picture: QSizeF, room: QSizeF) -> Sight:
        """The picture pulled by so many pixels of the screen; its middle never leaves it."""
        back, good = self.transform(picture, room).inverted()
        if not good:
            return self
        there = back.map(QPointF(room.width() / 2, room.height() / 2) - by)
        x, y = there.x() / max(picture.width(), 1.0), there.y() / max(picture.height(), 1.0)
        return replace(self, middle=(min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0)))

    def zoomed(self, times: float, at: QPointF, picture: QSizeF, room: QSizeF) -> Sight:
        """So many times larger, what lies under ``at`` staying there."""
        fit = self.fitting(picture, room)
        zoom = min(max(self.zoom * times, 1.0), max(LARGEST / max(fit, 1e-9), 1.0))
        before = self.transform(picture, room).inverted()[0].map(at)
        larger = replace(self, zoom=zoom)
        after = larger.transform(picture, room).map(before)
        return larger.moved(at - after, picture, room) if zoom > 1 else replace(larger, middle=(0.5, 0.5))

    def turned(self, by: float) -> Sight:
        """Turned by so many degrees with the clock."""
        return replace(self, turn=(self.turn + by + 180) % 360 - 180)
