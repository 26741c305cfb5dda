"""The plane of a photographed reference: from four corners to millimetres, and how well that is known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from inspector.photo.propagation import propagated
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from numpy.typing import NDArray

    Array = NDArray[np.float64]
    Point = tuple[float, float]

LEAST_SIDE_PX = 40.0  # a shorter side of the reference is pointed at too coarsely
MOST_REACH = 6.0  # diagonals of the reference; further out small errors of the corners grow past use
MOST_DOUBT = 0.1  # relative standard uncertainty past which a figure would only mislead
MOST_TILT = 4.0  # ratio of opposite sides as seen; steeper than about 60 degrees


class TooWeak(ValueError):
    """The picture cannot carry a measurement; ``said`` tells why and what to do."""

    def __init__(self, said: Say) -> None:
        super().__init__(str(said))
        self.said = said


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A flat reference: its sides in mm and the standard uncertainty of each."""

    width: float
    height: float
    u_width: float
    u_height: float


@dataclass(frozen=True, slots=True)
class View:
    """A reference as pointed at: its corners in pixels, clockwise from the upper left, and the pointing in pixels.

    ``pointing`` is the standard uncertainty of one coordinate of one point.
    """

    reference: Rectangle
    corners: tuple[Point, Point, Point, Point]
    pointing: float = 1.0


@dataclass(frozen=True, slots=True)
class Told:
    """A value with its standard uncertainty, and the ends of its 95 % interval, in mm or degrees.

    ``linear`` is the uncertainty by linear propagation; ``value`` and the ends come from the draws, so that a strong
    perspective, which is not linear, is told as it is. ``shares`` are the parts of the variance, summing to 1.
    """

    value: float
    uncertainty: float
    low: float
    high: float
    linear: float
    shares: dict[str, float]


def homography(source: Array, target: Array) -> Array:
    """The 3 x 3 matrices that take four points to four others; arrays (..., 4, 2) give (..., 3, 3) with h33 = 1.

    The eight linear equations of the plane-to-plane projection (Hartley and Zisserman, Multiple View Geometry, 4.1).
    Raises TooWeak where three of the points lie in one line.
    """
    x, y = source[..., 0], source[..., 1]
    u, v = target[..., 0], target[..., 1]
    one, nil = np.ones_like(x), np.zeros_like(x)
    first = np.stack([x, y, one, nil, nil, nil, -u * x, -u * y], axis=-1)
    second = np.stack([nil, nil, nil, x, y, one, -v * x, -v * y], axis=-1)
    matrix = np.concatenate([first, second], axis=-2)
    right = np.concatenate([u, v], axis=-1)[..., None]
    try:
        eight = np.linalg.solve(matrix, right)[..., 0]
    except np.linalg.LinAlgError:
        raise TooWeak(say("Three corners lie in one line; point at the four corners of the reference again.")) from None
    full = np.concatenate([eight, np.ones((*eight.shape[:-1], 1))], axis=-1)
    return full.reshape(*eight.shape[:-1], 3, 3)


def project(matrix: Array, points: Array) -> Array:
    """Points (..., n, 2) taken through matrices (..., 3, 3)."""
    homogeneous = np.concatenate([points, np.ones((*points.shape[:-1], 1))], axis=-1)
    taken = homogeneous @ np.swapaxes(matrix, -1, -2)
    flat: Array = taken[..., :2] / taken[..., 2:]
    return flat


def to_plane(view: View) -> Array:
    """The matrix from pixels to mm in the plane of the reference, the upper left corner at 0, 0.

    Raises TooWeak with one sentence where the corners cannot carry it.
    """
    check(view)
    return homography(np.array(view.corners, float), _corners_mm(view.reference.width, view.reference.height))


def _corners_mm(width: float, height: float) -> Array:
    return np.array([(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)])


def check(view: View) -> None:
    """Nothing happens where the four corners can carry a measurement; else TooWeak is raised."""
    corners = np.array(view.corners, float)
    sides = np.linalg.norm(np.roll(corners, -1, axis=0) - corners, axis=1)
    if not np.isfinite(corners).all() or not _turns_one_way(corners):
        raise TooWeak(say("The four corners cross or dent; point at them clockwise from the upper left."))
    if sides.min() < LEAST_SIDE_PX:
        raise TooWeak(say("The reference is too small in the picture; go nearer, or lay a larger one beside it."))
    if max(sides[0] / sides[2], sides[2] / sides[0], sides[1] / sides[3], sides[3] / sides[1]) > MOST_TILT:
        raise TooWeak(say("The camera looked along the plane; photograph it again from straight above."))


def _turns_one_way(corners: Array) -> bool:
    edges = np.roll(corners, -1, axis=0) - corners
    following = np.roll(edges, -1, axis=0)
    turns = edges[:, 0] * following[:, 1] - edges[:, 1] * following[:, 0]
    return bool((turns > 0).all() or (turns < 0).all())


def distance(view: View, first: Point, second: Point, *, off_plane: float = 0.0, seed: int = 1) -> Told:
    """The distance in mm of two points in the plane of the reference.

    ``off_plane`` is the share of the value by which it may be wrong because a point lies above or below the plane
    (height over camera distance), as a standard uncertainty. Raises TooWeak.
    """
    told = _measured(view, np.array([first, second], float), _apart, seed)
    return _widened(told, off_plane) if off_plane else told


def angle(view: View, corner: Point, first: Point, second: Point, *, seed: int = 1) -> Told:
    """The angle in degrees at ``corner`` between the directions to two points in the plane. Raises TooWeak."""
    return _measured(view, np.array([corner, first, second], float), _between, seed)


def _apart(points: Array) -> Array:
    return np.asarray(np.linalg.norm(points[..., 0, :] - points[..., 1, :], axis=-1))


def _between(points: Array) -> Array:
    first, second = points[..., 1, :] - points[..., 0, :], points[..., 2, :] - points[..., 0, :]
    cross = first[..., 0] * second[..., 1] - first[..., 1] * second[..., 0]
    return np.asarray(np.degrees(np.abs(np.arctan2(cross, (first * second).sum(axis=-1)))))


def _measured(view: View, points: Array, what: Callable[[Array], Array], seed: int) -> Told:
    matrix = to_plane(view)
    _within_reach(view, points, matrix)
    x, u, groups = _inputs(view, points)
    found = propagated(lambda rows: _values(rows, what), x, u, seed=seed)
    shares = _shares(found.parts, groups)
    told = Told(found.value, found.uncertainty, found.low, found.high, found.linear, shares)
    if told.value > 0 and told.uncertainty > MOST_DOUBT * told.value:
        raise TooWeak(say("The corners cannot carry this figure: it may be wrong by more than a fifth. Go nearer."))
    return told


def _inputs(view: View, points: Array) -> tuple[Array, Array, list[str]]:
    """All inputs in one row, their standard uncertainties, and the group each belongs to."""
    size = [view.reference.width, view.reference.height]
    corners = np.array(view.corners, float).ravel()
    x = np.concatenate([size, corners, points.ravel()])
    u = np.concatenate(
        [[view.reference.u_width, view.reference.u_height], np.full(8 + points.size, float(view.pointing))]
    )
    groups = ["reference"] * 2 + ["corners"] * 8 + ["points"] * points.size
    return x, u, groups


def _values(rows: Array, what: Callable[[Array], Array]) -> Array:
    """The measured value for each row of inputs (n, inputs)."""
    corners, points = rows[:, 2:10].reshape(-1, 4, 2), rows[:, 10:].reshape(len(rows), -1, 2)
    width, height, nil = rows[:, 0], rows[:, 1], np.zeros(len(rows))
    target = np.stack([np.stack(p, -1) for p in ((nil, nil), (width, nil), (width, height), (nil, height))], axis=1)
    return np.asarray(what(project(homography(corners, target), points)))


def _shares(parts: Array, groups: Sequence[str]) -> dict[str, float]:
    total = float(parts.sum()) or 1.0
    names = dict.fromkeys(groups)
    return {n: float(sum(p for p, g in zip(parts, groups, strict=True) if g == n)) / total for n in names}


def _within_reach(view: View, points: Array, matrix: Array) -> None:
    plane = project(matrix, points)
    size = np.array([view.reference.width, view.reference.height])
    reach = np.linalg.norm(plane - size / 2, axis=1).max() / np.linalg.norm(size)
    homogeneous = np.concatenate([points, np.ones((len(points), 1))], axis=1) @ matrix[2]
    if (homogeneous <= 0).any() or not np.isfinite(plane).all() or reach > MOST_REACH:
        raise TooWeak(say("That point lies too far from the reference; lay the reference beside what you measure."))


def _widened(told: Told, share: float) -> Told:
    """The value with one more part of its uncertainty, a share of itself."""
    more = share * told.value
    uncertainty = float(np.hypot(told.uncertainty, more))
    grown = uncertainty / told.uncertainty if told.uncertainty else 1.0
    variance = told.linear**2 + more**2 or 1.0
    shares = {n: s * told.linear**2 / variance for n, s in told.shares.items()}
    return Told(
        told.value, uncertainty, told.value - (told.value - told.low) * grown,
        told.value + (told.high - told.value) * grown, float(np.sqrt(variance)),
        {**shares, "out of the plane": more**2 / variance},
    )  # fmt: skip
