"""The kinds of picture that are taken, told by what a file holds and never by its ending."""

from __future__ import annotations

from enum import StrEnum
from pathlib import PurePath

HEIC_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}
AVIF_BRANDS = {b"avif", b"avis"}
TIFF_STARTS = (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")


class Kind(StrEnum):
    """A kind of picture file, by the name that its standard has."""

    JPEG = "JPEG"
    PNG = "PNG"
    WEBP = "WebP"
    HEIC = "HEIC"
    TIFF = "TIFF"

    @property
    def media(self) -> str:
        """The media type, as in ``image/jpeg``."""
        return f"image/{self.value.lower()}"

    @property
    def most_pixels(self) -> int:
        """The most pixels that are opened; decoding so many was measured below one gigabyte."""
        return _MOST_PIXELS[self]

    def suits(self, name: str) -> bool:
        """Whether the ending of this file name, if it has one, is one of this kind."""
        ending = PurePath(name).suffix.lower()
        return not ending or ending in _ENDINGS[self]


# A JPEG is reduced while it is decoded, the others only after; a WebP needs 15 bytes a pixel.
_MOST_PIXELS = {
    Kind.JPEG: 200_000_000,
    Kind.PNG: 80_000_000,
    Kind.WEBP: 60_000_000,
    Kind.HEIC: 120_000_000,
    Kind.TIFF: 80_000_000,
}
# A progressive JPEG keeps six bytes a pixel until its last scan is there.
MOST_PROGRESSIVE = 160_000_000
_ENDINGS = {
    Kind.JPEG: {".jpg", ".jpeg", ".jpe", ".jfif"},
    Kind.PNG: {".png"},
    Kind.WEBP: {".webp"},
    Kind.HEIC: {".heic", ".heif", ".hif"},
    Kind.TIFF: {".tif", ".tiff"},
}


def kind_of(data: bytes) -> Kind | None:
    """The kind of picture that begins with these bytes, or None for anything else."""
    if data.startswith(b"\xff\xd8\xff"):
        return Kind.JPEG
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return Kind.PNG
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return Kind.WEBP
    if data.startswith(TIFF_STARTS):
        return Kind.TIFF
    return Kind.HEIC if _is_heic(brands(data)) else None


def brands(data: bytes) -> list[bytes]:
    """The brands that an ISO base media file gives itself, its main one first; else none."""
    if data[4:8] != b"ftyp":
        return []
    end = min(int.from_bytes(data[:4], "big"), 256)
    return [data[8:12], *(data[at : at + 4] for at in range(16, end, 4))]


def _is_heic(names: list[bytes]) -> bool:
    """Whether these are the brands of a HEVC picture; mif1 alone may hold other codecs too."""
    return bool(names) and names[0] in HEIC_BRANDS and not AVIF_BRANDS & set(names)
