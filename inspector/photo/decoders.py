"""Opening picture data with the decoder of its kind, and with no other."""

from __future__ import annotations

from contextlib import contextmanager
from io import BytesIO
from typing import TYPE_CHECKING

from inspector.photo.kinds import Kind
from inspector.photo.whole import png_chunk

if TYPE_CHECKING:
    from collections.abc import Iterator

    from PIL.Image import Image


class Unreadable(Exception):
    """The decoder gave up on the data."""


class TooMuch(Unreadable):
    """Decoding needs more memory than the computer has to give."""


@contextmanager
def opened(kind: Kind, data: bytes) -> Iterator[Image]:
    """Gives the picture with its header read and its pixels not yet; Unreadable if that fails.

    Whatever a decoder raises inside the block comes out as Unreadable.
    """
    image = None
    try:
        image = _open(kind, data)
        yield image
    except MemoryError as error:
        raise TooMuch from error
    except Exception as error:  # on damaged data decoders raise nearly anything
        raise Unreadable(str(error)) from error
    finally:
        if image is not None:
            image.close()


def _open(kind: Kind, data: bytes) -> Image:
    # The plug-in's own class: Image.open would try every format it knows, and set its limit
    # on pixels for the whole program at once.
    if kind is Kind.JPEG:
        from PIL.JpegImagePlugin import JpegImageFile

        return JpegImageFile(BytesIO(data))
    if kind is Kind.PNG:
        return _open_png(data)
    if kind is Kind.WEBP:
        from PIL.WebPImagePlugin import WebPImageFile

        return WebPImageFile(BytesIO(data))
    if kind is Kind.TIFF:
        from PIL.TiffImagePlugin import TiffImageFile

        return TiffImageFile(BytesIO(data))
    return _open_heic(data)


def _open_png(data: bytes) -> Image:
    from PIL.PngImagePlugin import PngImageFile

    image = PngImageFile(BytesIO(data))
    # The chunk may stand after the pixels, where only decoding them all would find it.
    if exif := png_chunk(data, b"eXIf"):
        image.info["exif"] = b"Exif\0\0" + exif
    return image


def _open_heic(data: bytes) -> Image:
    from pillow_heif import HeifImageFile

    image: Image = HeifImageFile(BytesIO(data))
    return image
