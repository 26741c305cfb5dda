"""Small upright JPEG copies for the screen and for print, with nothing in them but the picture."""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING

from inspector.photo.camera import orientation_of
from inspector.photo.decoders import Unreadable, opened
from inspector.photo.kinds import Kind
from inspector.photo.probe import Picture, probed, unreadable
from inspector.photo.refusal import Refusal

if TYPE_CHECKING:
    from pathlib import Path

    from PIL.Image import Image

THUMBNAIL_PX = 320
PRINT_PX = 1200
QUALITY = 80
SIXTEEN_BITS = 65535


def thumbnail(source: bytes | Path, px: int = THUMBNAIL_PX, name: str = "") -> bytes | Refusal:
    """An upright sRGB JPEG whose longer side is at most ``px``, or why there is none."""
    return _copied(source, px, QUALITY, name)


def print_copy(source: bytes | Path, px: int = PRINT_PX, quality: int = QUALITY, name: str = "") -> bytes | Refusal:
    """An upright sRGB JPEG for print whose longer side is at most ``px``, or why there is none."""
    return _copied(source, px, quality, name)


def copy_of(picture: Picture, data: bytes, px: int, quality: int = QUALITY) -> bytes | Refusal:
    """The copy of a picture that was probed from these bytes, or a Refusal if it is damaged."""
    try:
        with opened(picture.kind, data) as image:
            return _jpeg(_small(image, picture.kind, px), quality)
    except Unreadable as error:
        return unreadable(picture.name, error)


def upright(image: Image, orientation: int) -> Image:
    """The picture turned and mirrored as its orientation 1 to 8 tells (CIPA DC-008, JEITA CP-3451).

    Row 0 and column 0 of the stored pixels lie: 1 top left, 2 top right, 3 bottom right,
    4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
    """
    from PIL.Image import Transpose

    turns = {
        2: Transpose.FLIP_LEFT_RIGHT,
        3: Transpose.ROTATE_180,
        4: Transpose.FLIP_TOP_BOTTOM,
        5: Transpose.TRANSPOSE,
        6: Transpose.ROTATE_270,  # Pillow turns against the clock
        7: Transpose.TRANSVERSE,
        8: Transpose.ROTATE_90,
    }
    return image.transpose(turns[orientation]) if orientation in turns else image


def full(image: Image) -> Image:
    """All pixels of the opened picture, upright, in sRGB, on white paper where it is see-through."""
    image.load()
    orientation, profile = orientation_of(image), image.info.get("icc_profile")
    return upright(_srgb(_flat(_resizable(image)), profile), orientation)


def _copied(source: bytes | Path, px: int, quality: int, name: str) -> bytes | Refusal:
    found = probed(source, name)
    return found if isinstance(found, Refusal) else copy_of(*found, px, quality)


def _small(image: Image, kind: Kind, px: int) -> Image:
    from PIL.Image import Resampling

    if kind is Kind.JPEG:
        image.draft(None, (px, px))  # decodes at a half, a quarter or an eighth if that will do
    image.load()  # else a small picture kept inside a HEIC would stand for the real one
    # Only now: the decoder of some kinds has turned the pixels itself, and says so by a 1.
    orientation, profile = orientation_of(image), image.info.get("icc_profile")
    image = _resizable(image)
    image.thumbnail((px, px), Resampling.BICUBIC, reducing_gap=2.0)
    return upright(_srgb(_flat(image), profile), orientation)


def _resizable(image: Image) -> Image:
    """The picture in a mode whose neighbouring values may be mixed, 8 bits a channel."""
    if image.mode in ("P", "PA"):
        return image.convert("RGBA" if _see_through(image) else "RGB")
    if image.mode == "1":
        return image.convert("L")
    if image.mode == "F" or image.mode.startswith("I"):
        return _eight_bits(image)
    return image


def _eight_bits(image: Image) -> Image:
    """The grey picture with its range brought to 0..255: all 16 bits, or what it really uses."""
    wide = image.convert("F")
    low, high = (0.0, float(SIXTEEN_BITS))
    if image.mode in ("I", "F"):
        darkest, lightest = wide.getextrema()
        assert isinstance(darkest, float)
        assert isinstance(lightest, float)
        if darkest < low or lightest > high or lightest <= 1.0:
            low, high = darkest, lightest
    scale = 255.0 / ((high - low) or 1.0)
    return wide.point(lambda value: value * scale - low * scale).convert("L")


def _see_through(image: Image) -> bool:
    return image.mode in ("PA", "LA", "RGBA", "La", "RGBa") or "transparency" in image.info


def _flat(image: Image) -> Image:
    """The picture on white paper where it is see-through."""
    if not _see_through(image):
        return image
    from PIL.Image import new

    image = image.convert("RGBA")
    paper = new("RGB", image.size, "white")
    paper.paste(image, mask=image.getchannel("A"))
    return paper


def _srgb(image: Image, profile: bytes | None) -> Image:
    """The picture in sRGB: from its own profile if that fits it, else taken to be sRGB already."""
    from PIL import ImageCms

    if not profile:
        return image.convert("RGB")
    try:
        own = ImageCms.ImageCmsProfile(BytesIO(profile))
        srgb = ImageCms.createProfile("sRGB")
        turned = ImageCms.profileToProfile(image, own, srgb, outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        return image.convert("RGB")
    return turned or image.convert("RGB")


def _jpeg(image: Image, quality: int) -> bytes:
    image.info = {}  # a comment kept there would be written into the copy
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=quality)
    return buffer.getvalue()
