"""A straight edge in a picture, to a part of a pixel."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Pixels = NDArray[np.uint8]
    Array = NDArray[np.float64]

STATIONS = 64  # across a side
STRAIGHT = (0.14, 0.86)  # of a side between its corners, which may be rounded
STEP = 0.5  # of a pixel, along the normal
FEWEST = 16
PARALLEL = 1e-6


class Line(NamedTuple):
    """A point of a line, its direction of length 1, how strongly grey changes across it, and how sure it is.

    ``held`` is the share of stations that lie on it, ``spread`` how far those lie off it in the middle, in pixels.
    """

    point: Array
    way: Array
    strength: float
    held: float = 1.0
    spread: float = 0.0


def along_side(plain: Pixels, start: Array, end: Array, reach: float) -> Line | None:
    """The edge nearest to the side from ``start`` to ``end``, looked for ``reach`` of its length to both sides.

    Grey is read along the normal at stations between the corners; the steepest place of each, by a parabola through
    three values, gives one point; the line is the least sum of squares of distances with strays left out. None where
    there is no edge.
    """
    long = float(np.linalg.norm(end - start))
    if long < 8:
        return None
    way = (end - start) / long
    normal = np.array([-way[1], way[0]])
    half = max(reach * long, 3.0)
    offsets = np.arange(-half, half + STEP / 2, STEP)
    shares = np.linspace(*STRAIGHT, STATIONS)
    at = start + shares[:, None] * (end - start)
    spots = at[:, None, :] + offsets[None, :, None] * normal
    slopes = np.abs(np.gradient(_smoothed(_read(plain, spots)), axis=1))
    where, strength = _steepest(slopes, offsets)
    keep = strength > 0.35 * np.median(strength)
    return _line(at[keep] + where[keep, None] * normal, float(np.median(strength)))


def meeting(one: Line, other: Line) -> Array | None:
    """Where two lines meet; None where they run side by side."""
    cross = one.way[0] * other.way[1] - one.way[1] * other.way[0]
    if abs(cross) < PARALLEL:
        return None
    gap = other.point - one.point
    return np.asarray(one.point + one.way * (gap[0] * other.way[1] - gap[1] * other.way[0]) / cross)


def _read(plain: Pixels, spots: Array) -> Array:
    import cv2

    x, y = spots[..., 0].astype(np.float32), spots[..., 1].astype(np.float32)
    return np.asarray(cv2.remap(plain, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE), dtype=np.float64)


def _smoothed(values: Array) -> Array:
    import cv2

    # Neighbouring stations see the same straight edge: a little along the side takes noise off, a little across too.
    return np.asarray(cv2.GaussianBlur(values, (0, 0), sigmaX=2.0, sigmaY=1.5), dtype=np.float64)


def _steepest(slopes: Array, offsets: Array) -> tuple[Array, Array]:
    """The offset of the steepest place of each row, and how steep it is there."""
    at = np.clip(slopes.argmax(axis=1), 1, slopes.shape[1] - 2)
    rows = np.arange(len(slopes))
    before, here, after = slopes[rows, at - 1], slopes[rows, at], slopes[rows, at + 1]
    bend = before - 2 * here + after
    shift = np.where(np.abs(bend) > 1e-12, 0.5 * (before - after) / np.where(bend == 0, 1, bend), 0.0)
    return offsets[at] + np.clip(shift, -1, 1) * STEP, here


def _line(spots: Array, strength: float) -> Line | None:
    for _ in range(6):
        if len(spots) < FEWEST:
            return None
        middle = spots.mean(axis=0)
        _, _, ways = np.linalg.svd(spots - middle, full_matrices=False)
        off = np.abs((spots - middle) @ ways[1])
        limit = max(3 * float(np.median(off)), 0.3)
        if (off <= limit).all():
            break
        spots = spots[off <= limit]
    return Line(middle, np.asarray(ways[0]), strength, len(spots) / STATIONS, float(np.median(off)))
