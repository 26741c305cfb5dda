"""A round thing as it is seen: the ellipse through points of its rim."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

import numpy as np

from inspector.photo.plane import TooWeak
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from inspector.photo.plane import Point

FEWEST = 5  # points that an ellipse needs
ASTRAY = 0.1  # of the shorter half axis: a rim whose points lie further off is none


@dataclass(frozen=True, slots=True)
class Ring:
    """An ellipse in pixels: middle, longer and shorter half axis, and the turn of the longer in degrees, y down."""

    x: float
    y: float
    longer: float
    shorter: float
    degrees: float

    @property
    def ratio(self) -> float:
        """Shorter over longer axis, 0 to 1."""
        return self.shorter / self.longer if self.longer else 0.0

    def at(self, turn: float) -> Point:
        """The point of the rim at this angle in degrees from the longer axis."""
        along, across = self.longer * cos(radians(turn)), self.shorter * sin(radians(turn))
        c, s = cos(radians(self.degrees)), sin(radians(self.degrees))
        return (self.x + along * c - across * s, self.y + along * s + across * c)

    def off(self, spots: NDArray[np.float64]) -> float:
        """How far the points (n, 2) lie off the rim, root of the mean square, as a share of the half axis."""
        return float(np.sqrt((_off(self, spots) ** 2).mean()))

    @property
    def rim(self) -> tuple[Point, ...]:
        """Six points of it, evenly round."""
        return tuple(self.at(turn) for turn in range(0, 360, 60))

    @property
    def square(self) -> tuple[Point, Point, Point, Point]:
        """The corners of the parallelogram round it, which is a square on the coin itself."""
        c, s = cos(radians(self.degrees)), sin(radians(self.degrees))
        along, across = (self.longer * c, self.longer * s), (-self.shorter * s, self.shorter * c)

        def corner(one: int, other: int) -> Point:
            return (self.x + one * along[0] + other * across[0], self.y + one * along[1] + other * across[1])

        return corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)


def ring_through(points: Sequence[Point]) -> Ring:
    """The ellipse nearest to the points (Fitzgibbon, Pilu and Fisher, 1999); raises TooWeak where they lie on none."""
    import cv2

    spots = np.array(points, np.float32)
    if len(spots) < FEWEST or not np.isfinite(spots).all() or np.ptp(spots, axis=0).min() < 2:
        raise TooWeak(say("Point at six places round the rim of the coin."))
    (x, y), (first, second), turn = cv2.fitEllipseDirect(spots)
    half, other = (first / 2, second / 2) if first >= second else (second / 2, first / 2)
    ring = Ring(float(x), float(y), half, other, float(turn if first >= second else turn + 90))
    if not np.isfinite([half, other]).all() or other <= 0 or _off(ring, spots.astype(float)).max() > ASTRAY:
        raise TooWeak(say("These points lie on no round rim; move them onto the edge of the coin."))
    return ring


def _off(ring: Ring, spots: NDArray[np.float64]) -> NDArray[np.float64]:
    """How far each point lies off the rim, as a share of the half axis towards it."""
    c, s = cos(radians(ring.degrees)), sin(radians(ring.degrees))
    dx, dy = spots[:, 0] - ring.x, spots[:, 1] - ring.y
    along, across = (dx * c + dy * s) / ring.longer, (dy * c - dx * s) / ring.shorter
    return np.asarray(np.abs(np.hypot(along, across) - 1), dtype=np.float64)
