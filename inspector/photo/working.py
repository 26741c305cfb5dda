"""All pixels of a kept photograph for working on, read from its original, which stays as it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.photo.copies import full
from inspector.photo.decoders import Unreadable, opened
from inspector.photo.probe import probed, unreadable
from inspector.photo.refusal import Refusal

if TYPE_CHECKING:
    from pathlib import Path

    import numpy as np
    from numpy.typing import NDArray

    Pixels = NDArray[np.uint8]

SMALLEST_LEVEL = 700  # pixels of the longer side of the last copy made smaller


def pixels(source: bytes | Path, name: str = "") -> Pixels | Refusal:
    """The upright picture in sRGB, (height, width, 3), at full resolution; a Refusal where it cannot be shown."""
    import numpy as np

    found = probed(source, name)
    if isinstance(found, Refusal):
        return found
    picture, data = found
    try:
        with opened(picture.kind, data) as image:
            return np.asarray(full(image).convert("RGB"), dtype=np.uint8)
    except Unreadable as error:
        return unreadable(picture.name, error)


def smaller(picture: Pixels) -> tuple[Pixels, ...]:
    """The picture, and copies of it each half as large in both directions, down to a screenful."""
    import cv2
    import numpy as np

    levels = [picture]
    while max(levels[-1].shape[:2]) > 2 * SMALLEST_LEVEL and min(levels[-1].shape[:2]) >= 4:
        high, wide = levels[-1].shape[:2]
        half = cv2.resize(levels[-1], ((wide + 1) // 2, (high + 1) // 2), interpolation=cv2.INTER_AREA)
        levels.append(np.asarray(half, dtype=np.uint8))
    return tuple(levels)
