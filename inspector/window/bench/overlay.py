"""What lies over a picture on the bench: points to pull about, things being drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

    from inspector.window.bench.canvas import Canvas

Point = tuple[float, float]


class Overlay(QObject):
    """Nothing over the picture; what is drawn over it overrides this. All points are in pixels of the picture.

    ``places`` says that a touch puts a point, ``draws`` that a pull draws; else a pull moves the picture.
    """

    changed = Signal()

    @property
    def places(self) -> bool:
        """Whether a touch beside every handle puts a point there."""
        return False

    @property
    def draws(self) -> bool:
        """Whether a pull that begins beside every handle draws."""
        return False

    def handles(self) -> list[Point]:
        """The points that can be pulled about."""
        return []

    def name(self, index: int) -> str:
        """What the handle is called to a screen reader."""
        return ""

    def place(self, point: Point) -> None:
        """A point is put there."""

    def draw(self, start: Point, end: Point, canvas: Canvas, *, done: bool) -> None:
        """A pull goes from ``start`` to ``end``; ``done`` when it is let go."""

    def move(self, index: int, point: Point, *, done: bool) -> None:
        """The handle is pulled to that point; ``done`` when it is let go."""

    def drop(self, index: int) -> None:
        """The handle is taken away, where it can be."""

    def paint(self, painter: QPainter, canvas: Canvas) -> None:
        """It is drawn in pixels of the screen."""
