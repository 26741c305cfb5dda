"""A picture turned so that the plane of its reference is seen from straight above."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from inspector.photo.plane import View, homography, project, to_plane

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Pixels = NDArray[np.uint8]

LONGEST = 2000  # pixels of the longer side of what is made
ROUND = 1.0  # so many sizes of the reference are shown on each side of it


def straightened(picture: Pixels, view: View) -> tuple[Pixels, float]:
    """The plane seen from straight above, as far as the picture shows it, and its pixels to the mm.

    Raises TooWeak where the reference cannot carry it. What does not lie in the plane is drawn out of shape.
    """
    import cv2

    wide, high = view.reference.width, view.reference.height
    reach = ROUND * max(wide, high)
    low, size = _window(picture, view, reach)
    scale = min(LONGEST / max(size), _fineness(view))
    move = np.array([[scale, 0, -low[0] * scale], [0, scale, -low[1] * scale], [0, 0, 1.0]])
    out = (max(round(size[0] * scale), 1), max(round(size[1] * scale), 1))
    made = cv2.warpPerspective(picture, move @ to_plane(view), out, flags=cv2.INTER_AREA, borderValue=(128, 128, 128))
    return np.asarray(made, dtype=np.uint8), scale


def _window(picture: Pixels, view: View, reach: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """The upper left corner in mm and the size in mm of what is shown: around the reference, and inside the picture."""
    wide, high = view.reference.width, view.reference.height
    corners = np.array([(-reach, -reach), (wide + reach, -reach), (wide + reach, high + reach), (-reach, high + reach)])
    back = homography(np.array([(0, 0), (wide, 0), (wide, high), (0, high)], float), np.array(view.corners, float))
    edge = np.array([picture.shape[1], picture.shape[0]], float)
    seen = np.clip(project(back, corners), 0, edge)
    there = np.clip(project(to_plane(view), seen), corners.min(axis=0), corners.max(axis=0))
    low, top = there.min(axis=0), there.max(axis=0)
    low, top = np.minimum(low, (0, 0)), np.maximum(top, (wide, high))
    return (float(low[0]), float(low[1])), (float(top[0] - low[0]), float(top[1] - low[1]))


def _fineness(view: View) -> float:
    """Pixels to the mm along the sides of the reference as they were photographed, doubled."""
    corners = np.array(view.corners, float)
    sides = np.linalg.norm(np.roll(corners, -1, axis=0) - corners, axis=1)
    return 2 * float(max(sides[0] / view.reference.width, sides[1] / view.reference.height))
