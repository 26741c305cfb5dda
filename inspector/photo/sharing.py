"""Copies to hand to others: upright pixels, covered and marked where wanted, without what the camera wrote."""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING

from inspector.photo.copies import full
from inspector.photo.decoders import Unreadable, opened
from inspector.photo.kinds import Kind
from inspector.photo.marks import drawn
from inspector.photo.masks import Cover, covered
from inspector.photo.probe import Picture, probed, unreadable
from inspector.photo.refusal import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from PIL.Image import Image

    from inspector.photo.marks import Marked

SHARING_PX = 2400
QUALITY = 88
MOST_WHOLE = 40_000_000  # pixels; a larger JPEG is decoded at half its size, to stay below one gigabyte
TAKEN, EXIF_IFD = 0x9003, 0x8769  # CIPA DC-008 (JEITA CP-3451)


def sharing_copy(
    source: bytes | Path, covers: Iterable[Cover] = (), *, marks: Iterable[Marked] = (), taken: str = "",
    px: int = SHARING_PX, name: str = "",
) -> bytes | Refusal:  # fmt: skip
    """An upright sRGB JPEG of at most ``px`` a side with these parts covered; nothing else of the file is in it.

    ``marks`` are drawn over what is covered. ``taken`` ("2026:05:09 10:11:12"), where it is given, is the one thing
    that is written beside the pixels.
    """
    found = probed(source, name)
    if isinstance(found, Refusal):
        return found
    made = _covered(*found, tuple(covers), px)
    return made if isinstance(made, Refusal) else _jpeg(drawn(made, marks), taken)


def _covered(picture: Picture, data: bytes, covers: tuple[Cover, ...], px: int) -> Image | Refusal:
    try:
        with opened(picture.kind, data) as image:
            if picture.kind is Kind.JPEG and picture.width * picture.height > MOST_WHOLE:
                image.draft(None, (picture.width // 2, picture.height // 2))
            # Covered before it is made smaller: a smaller pixel is mixed from several.
            return _smaller(covered(full(image), covers), px)
    except Unreadable as error:
        return unreadable(picture.name, error)


def _smaller(image: Image, px: int) -> Image:
    from PIL.Image import Resampling

    image.thumbnail((px, px), Resampling.BICUBIC)
    return image


def _jpeg(image: Image, taken: str) -> bytes:
    image.info = {}
    buffer = BytesIO()
    if taken:
        image.save(buffer, "JPEG", quality=QUALITY, exif=_time_alone(taken))
    else:
        image.save(buffer, "JPEG", quality=QUALITY)
    return buffer.getvalue()


def _time_alone(taken: str) -> bytes:
    from PIL.Image import Exif

    exif = Exif()
    exif.get_ifd(EXIF_IFD)[TAKEN] = taken
    return exif.tobytes()
