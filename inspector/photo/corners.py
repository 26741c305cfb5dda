"""Where a flat reference lies in a picture: four corners, or a round rim, proposed to be corrected by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from inspector.photo.edges import along_side, meeting
from inspector.photo.plane import TooWeak, homography
from inspector.photo.relief import grey
from inspector.photo.ring import Ring, ring_through

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from inspector.photo.plane import Point

    Pixels = NDArray[np.uint8]
    Array = NDArray[np.float64]
    Corners = tuple[Point, Point, Point, Point]

LONGEST = 1400  # pixels of the longer side in which outlines are looked for
LEAST_SHARE, MOST_SHARE = 0.004, 0.85  # of the picture that a reference covers
FILLED = 0.88  # of its four-cornered hull that an outline fills
ALIKE = 0.006  # of the picture's longer side: nearer corners are the same
SAME_PX = 4.0
FOCALS = tuple(0.6 * 1.25**n for n in range(9))  # of cameras, in longer sides of the picture; 0.6 to 3.6
HELD, SPREAD_PX = 0.4, 1.0  # a side has so many of its stations on one line, and so near to it
BRIDGES = (40, 18)  # parts of the picture's longer side that a dark stripe on a light card may be wide
OFF_ROUND = 0.015  # of the half axis that the outline of a coin may lie off its ellipse
FIRM = 0.06  # how quickly an outline of another shape falls behind


class Found(NamedTuple):
    """Four corners clockwise and how well they stand out."""

    corners: Array
    worth: float


def propose(picture: Pixels, ratio: float = 0.0, most: int = 4) -> tuple[Corners, ...]:
    """Up to ``most`` four-cornered outlines, the likeliest first, to a part of a pixel; none is an answer.

    Corners are those in which the straight sides meet, clockwise from the upper left of the first side; where
    ``ratio`` (width over height) is given, the first side is the width.
    """
    plain = grey(picture)
    scale = min(1.0, LONGEST / max(plain.shape))
    small = _resized(plain, scale)
    found = [_refined(plain, (quad + 0.5) / scale - 0.5) for quad in _different(_quads(small))]
    standing = [one for one in found if one is not None]
    ranked = sorted(standing, key=lambda one: -one.worth * _likely(one.corners, ratio, plain.shape))
    return tuple(ordered(one.corners, ratio) for one in _unlike(ranked, max(plain.shape), most))


def propose_ring(picture: Pixels, most: int = 4) -> tuple[Ring, ...]:
    """Up to ``most`` round rims, the likeliest first; none is an answer."""
    plain = grey(picture)
    scale = min(1.0, LONGEST / max(plain.shape))
    rings: list[tuple[float, Ring]] = []
    for contour in _outlines(_resized(plain, scale)):
        ring = _ring(contour, scale)
        if ring is not None:
            rings.append((ring.longer * ring.shorter * ring.ratio, ring))
    kept: list[Ring] = []
    for _, ring in sorted(rings, key=lambda one: -one[0]):
        if all(np.hypot(ring.x - other.x, ring.y - other.y) > other.shorter for other in kept):
            kept.append(ring)
    return tuple(kept[:most])


def _resized(plain: Pixels, scale: float) -> Pixels:
    import cv2

    size = (max(round(plain.shape[1] * scale), 1), max(round(plain.shape[0] * scale), 1))
    return np.asarray(cv2.resize(plain, size, interpolation=cv2.INTER_AREA), dtype=np.uint8)


def _masks(small: Pixels) -> Iterator[Pixels]:
    """Black and white pictures in whose outlines a reference may show."""
    import cv2

    smooth = cv2.bilateralFilter(small, 7, 40, 7)
    level, white = cv2.threshold(smooth, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    kernel = np.ones((3, 3), np.uint8)
    for high in (level, 60.0, 150.0):
        edges = cv2.Canny(smooth, high / 3, high)
        yield np.asarray(cv2.morphologyEx(cv2.dilate(edges, kernel), cv2.MORPH_CLOSE, np.ones((5, 5), np.uint8)))
    yield np.asarray(white)
    for part in BRIDGES:
        wide = max(small.shape) // part | 1
        yield np.asarray(cv2.morphologyEx(white, cv2.MORPH_CLOSE, np.ones((wide, wide), np.uint8)))
    block = max(small.shape) // 6 | 1
    yield np.asarray(cv2.adaptiveThreshold(smooth, 255, cv2.ADAPTIVE_THRESH_MEAN_C, cv2.THRESH_BINARY, block, -4))


def _outlines(small: Pixels) -> Iterator[NDArray[np.int32]]:
    import cv2

    for mask in _masks(small):
        contours, _ = cv2.findContours(mask, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)
        for contour in contours:
            share = cv2.contourArea(contour) / mask.size
            spots = np.asarray(contour, dtype=np.int32)
            if LEAST_SHARE < share < MOST_SHARE and not _touches_edge(spots, mask.shape):
                yield spots


def _touches_edge(contour: NDArray[np.int32], shape: tuple[int, ...]) -> bool:
    spots = contour[:, 0, :]
    low, high = spots.min(axis=0), spots.max(axis=0)
    return bool((low <= 1).any() or high[0] >= shape[1] - 2 or high[1] >= shape[0] - 2)


def _quads(small: Pixels) -> Iterator[Array]:
    """Outlines that are four-cornered but for their rounded corners, (4, 2) each, clockwise."""
    import cv2

    for contour in _outlines(small):
        hull = cv2.convexHull(contour)
        around = cv2.arcLength(hull, closed=True)
        for share in (0.02, 0.035, 0.05):
            shape = cv2.approxPolyDP(hull, share * around, closed=True)
            if len(shape) == 4:
                quad = np.asarray(shape[:, 0, :], dtype=np.float64)
                if cv2.contourArea(contour) > FILLED * cv2.contourArea(shape):
                    yield _clockwise(quad)
                break


def _clockwise(quad: Array) -> Array:
    middle = quad - quad.mean(axis=0)
    return quad[np.argsort(np.arctan2(middle[:, 1], middle[:, 0]))]


def _refined(plain: Pixels, quad: Array) -> Found | None:
    """The corners as the straight parts of the four sides meet, each side found anew from its own edge."""
    worth = 0.0
    for reach in (0.03, 0.008):
        sides = [along_side(plain, quad[n], quad[(n + 1) % 4], reach) for n in range(4)]
        if any(side is None for side in sides):
            return None
        lines = [side for side in sides if side is not None]
        corners = [meeting(lines[n - 1], lines[n]) for n in range(4)]
        if any(corner is None for corner in corners):
            return None
        fresh = np.array([corner for corner in corners if corner is not None])
        if np.linalg.norm(fresh - quad, axis=1).max() > 0.2 * np.ptp(quad, axis=0).max():
            return None
        quad, worth = fresh, float(np.median([line.strength for line in lines]))
    if min(line.held for line in lines) < HELD or max(line.spread for line in lines) > SPREAD_PX:
        return None
    return Found(quad, worth * np.sqrt(_area(quad)))


def _area(quad: Array) -> float:
    x, y = quad[:, 0], quad[:, 1]
    return abs(float((x * np.roll(y, -1) - y * np.roll(x, -1)).sum())) / 2


def _sides(quad: Array) -> Array:
    sides: Array = np.linalg.norm(np.roll(quad, -1, axis=0) - quad, axis=1)
    return sides


def _different(quads: Iterator[Array]) -> list[Array]:
    """The quads of which none lies within a few pixels of one before."""
    kept: list[Array] = []
    for quad in quads:
        if all(np.abs(_sorted(quad) - _sorted(one)).max() > SAME_PX for one in kept):
            kept.append(quad)
    return kept


def _likely(quad: Array, ratio: float, shape: tuple[int, ...]) -> float:
    """How well the quad can be a rectangle of this ratio, 0 to 1, by a camera with square pixels.

    A plane seen by such a camera keeps its two directions at right angles and in proportion (Zhang, IEEE PAMI 22
    (2000), section 2.3); it is taken to look at the middle of the picture, with
    the focal length of a usual range that suits best.
    """
    if not ratio:
        return 1.0
    centred = (np.array(ordered(quad, ratio)) - np.array([shape[1] / 2, shape[0] / 2])) / max(shape)
    try:
        matrix = homography(np.array([(0, 0), (ratio, 0), (ratio, 1), (0, 1)], float), centred)
    except TooWeak:
        return 0.0
    return float(np.exp(-min(_skew(matrix, focal) for focal in FOCALS) / FIRM))


def _skew(matrix: Array, focal: float) -> float:
    """How far the two directions of the plane are from upright and equal, 0 where they are both."""
    across, down = (matrix[:, n] / np.array([focal, focal, 1.0]) for n in (0, 1))
    whole = float(across @ across + down @ down)
    return float(np.hypot(2 * (across @ down), across @ across - down @ down)) / whole


def _unlike(ranked: list[Found], size: int, most: int) -> list[Found]:
    kept: list[Found] = []
    for one in ranked:
        if all(np.abs(_sorted(one.corners) - _sorted(other.corners)).max() > ALIKE * size for other in kept):
            kept.append(one)
    return kept[:most]


def _sorted(quad: Array) -> Array:
    """The coordinates in an order that does not know which corner is the first."""
    return np.sort(quad, axis=0)


def ordered(quad: Array, ratio: float) -> Corners:
    """Four corners clockwise from the upper left; with a ratio (width over height) the first side is the width."""
    quad = _clockwise(quad)
    quad = np.roll(quad, -int(np.argmin(quad.sum(axis=1))), axis=0)
    sides = _sides(quad)
    long_first = sides[0] + sides[2] >= sides[1] + sides[3]
    if ratio and long_first != (ratio >= 1):
        quad = np.roll(quad, -1, axis=0)
    first, second, third, fourth = ((float(x), float(y)) for x, y in quad)
    return first, second, third, fourth


def _ring(contour: NDArray[np.int32], scale: float) -> Ring | None:
    spots = (contour[:: max(len(contour) // 120, 1), 0, :].astype(float) + 0.5) / scale - 0.5
    try:
        ring = ring_through([(float(x), float(y)) for x, y in spots])
    except TooWeak:
        return None
    return ring if ring.ratio > 0.5 and ring.off(spots) < OFF_ROUND else None
