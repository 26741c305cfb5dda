"""Tools for reading a stamping in a working copy: local contrast, relief from one side, grey, and inverted."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Pixels = NDArray[np.uint8]

TILES = 8  # local contrast is evened out within so many fields across and down
CLIP = 3.0  # how far the contrast of one field may be raised; more brings up noise
MIDDLE, SWING = 128.0, 110.0
STRONG = 98.0  # the percentile of slopes that is drawn at full swing


@dataclass(frozen=True, slots=True)
class Tools:
    """Which tools are on. ``relief`` is where its light comes from, in degrees against the clock from the right."""

    grey: bool = False
    contrast: bool = False
    relief: float | None = None
    invert: bool = False

    @property
    def plain(self) -> bool:
        """Whether the picture is shown as it was taken."""
        return self == Tools()


def worked(picture: Pixels, tools: Tools) -> Pixels:
    """A new picture with the tools used in turn: grey, local contrast, relief, inverted. What is given stays.

    ``picture`` is (height, width, 3); the answer is that, or (height, width) where it is grey.
    """
    if tools.plain:
        return picture
    shown = grey(picture) if tools.grey or tools.relief is not None else picture
    if tools.contrast:
        shown = local_contrast(shown)
    if tools.relief is not None:
        shown = relief(shown, tools.relief)
    return inverted(shown) if tools.invert else shown


def grey(picture: Pixels) -> Pixels:
    """The luma of the picture (ITU-R BT.601, as OpenCV weighs it), (height, width)."""
    import cv2

    return picture if picture.ndim == 2 else np.asarray(cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY), dtype=np.uint8)


def local_contrast(picture: Pixels) -> Pixels:
    """Contrast evened out field by field, with a limit: CLAHE (Zuiderveld, Graphics Gems IV, 1994) on the lightness."""
    import cv2

    even = cv2.createCLAHE(clipLimit=CLIP, tileGridSize=(TILES, TILES))
    if picture.ndim == 2:
        return np.asarray(even.apply(picture), dtype=np.uint8)
    lab = np.asarray(cv2.cvtColor(picture, cv2.COLOR_RGB2LAB), dtype=np.uint8)
    lab[..., 0] = even.apply(np.ascontiguousarray(lab[..., 0]))
    return np.asarray(cv2.cvtColor(lab, cv2.COLOR_LAB2RGB), dtype=np.uint8)


def relief(picture: Pixels, degrees: float) -> Pixels:
    """How steeply grey rises towards the light, as light on a slope: level is mid-grey, (height, width).

    The slope is that of Scharr's kernel on a picture smoothed by 1.2 pixels. The light turned by half a turn gives the
    negative.
    """
    import cv2

    smooth = cv2.GaussianBlur(grey(picture), (0, 0), 1.2)
    across = np.asarray(cv2.Scharr(smooth, cv2.CV_16S, 1, 0), dtype=np.int16)
    down = np.asarray(cv2.Scharr(smooth, cv2.CV_16S, 0, 1), dtype=np.int16)
    strongest = max(_strong(across), _strong(down), 1.0)
    turn = radians(degrees)
    share = SWING / strongest
    lit = cv2.addWeighted(across, cos(turn) * share, down, -sin(turn) * share, MIDDLE, dtype=cv2.CV_8U)
    return np.asarray(lit, dtype=np.uint8)


def _strong(slopes: NDArray[np.int16]) -> float:
    few = np.abs(slopes[:: max(slopes.shape[0] // 400, 1), :: max(slopes.shape[1] // 400, 1)].astype(np.float32))
    return float(np.percentile(few, STRONG))


def inverted(picture: Pixels) -> Pixels:
    """Dark for light and light for dark."""
    return np.asarray(255 - picture, dtype=np.uint8)
