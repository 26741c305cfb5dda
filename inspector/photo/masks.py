"""Covering parts of a picture: the pixels themselves are overwritten, and nothing of them is left."""

from __future__ import annotations

from math import ceil, floor
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable

    from PIL.Image import Image

INK = (27, 34, 48)
# A JPEG keeps colour in blocks of up to 16 pixels, and decoding smooths over one more: a neighbour of a covered
# pixel may tell of it (ITU-T T.81, 4:2:0).
MARGIN = 18


class Cover(NamedTuple):
    """What is to be covered, as shares from 0 to 1 of width and height of the picture upright."""

    left: float
    top: float
    right: float
    bottom: float


def pixels(cover: Cover, width: int, height: int, margin: int = 0) -> tuple[int, int, int, int]:
    """The pixels from left and top up to right and bottom that the cover touches, rounded outward, in the picture."""
    left, top = floor(cover.left * width) - margin, floor(cover.top * height) - margin
    right, bottom = ceil(cover.right * width) + margin, ceil(cover.bottom * height) + margin
    return max(left, 0), max(top, 0), min(right, width), min(bottom, height)


def covered(image: Image, covers: Iterable[Cover], margin: int = MARGIN) -> Image:
    """A picture of the same size in which every covered pixel, and ``margin`` more round it, is plain ink."""
    made = image.copy()
    for cover in covers:
        made.paste(INK, pixels(cover, image.width, image.height, margin))
    return made
