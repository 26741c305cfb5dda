"""The reference and the points measured, over the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF

from inspector.photo.plane import TooWeak
from inspector.photo.references import COIN, RULE
from inspector.photo.ring import ring_through
from inspector.texts import tr
from inspector.window.bench.overlay import Overlay, Point
from inspector.window.bench.pens import paint_line, paint_polygon, paint_words

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

    from inspector.window.bench.canvas import Canvas
    from inspector.window.bench.measuring import MeasurePanel


class PlaneOverlay(Overlay):
    """First the points of the reference, then those measured; all can be pulled about."""

    def __init__(self, panel: MeasurePanel) -> None:
        super().__init__(panel)
        self.panel = panel

    @property
    def places(self) -> bool:
        """A touch puts the next point, until all are there."""
        return bool(self.panel.next_point())

    def handles(self) -> list[Point]:
        """The points of the reference, then those measured."""
        return [*self.panel.corners, *self.panel.points]

    def name(self, index: int) -> str:
        """Which point the handle is."""
        corners = len(self.panel.corners)
        if index < corners:
            return tr("point {n} of the reference", n=index + 1)
        return tr("point {n} of what is measured", n=index + 1 - corners)

    def place(self, point: Point) -> None:
        """The next point stands there."""
        self.panel.put(point)

    def move(self, index: int, point: Point, *, done: bool) -> None:
        """The point stands there now."""
        self.panel.put_at(index, point, done=done)

    def drop(self, index: int) -> None:
        """The point goes, and what was measured from it."""
        self.panel.drop_point(index)

    def paint(self, painter: QPainter, canvas: Canvas) -> None:
        """The outline of the reference, and a line through what is measured with its figure."""
        panel, look = self.panel, canvas.look
        self._paint_reference(painter, canvas)
        spots = [canvas.to_screen(point) for point in panel.points]
        if len(spots) >= 2:
            order = [spots[1], spots[0], spots[2]] if panel.what == "angle" and len(spots) == 3 else spots
            paint_line(painter, look, order, ink="focus")
            middle = (spots[0] + spots[1]) / 2 + QPointF(look.mm(2), -look.mm(2))
            if panel.figure:
                paint_words(painter, look, middle, panel.figure)

    def _paint_reference(self, painter: QPainter, canvas: Canvas) -> None:
        corners, shape = self.panel.corners, self.panel.reference.shape
        if shape == COIN and len(corners) == self.panel.reference.marks:
            try:
                ring = ring_through(corners)
            except TooWeak:
                return
            paint_polygon(painter, canvas.look, [canvas.to_screen(ring.at(turn)) for turn in range(0, 360, 5)])
        elif shape == RULE and len(corners) == 2:
            paint_line(painter, canvas.look, [canvas.to_screen(p) for p in corners])
        elif shape != COIN and len(corners) >= 3:
            paint_polygon(painter, canvas.look, [canvas.to_screen(p) for p in corners])
