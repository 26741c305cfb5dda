"""Whether a picture file goes on to its own end, found without decoding any of it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from inspector.photo.kinds import Kind

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

# A marker with a length after it, or the end; 00 and D0-D7 after FF belong to the picture's data.
JPEG_MARKER = re.compile(rb"\xff([^\x00\x01\xd0-\xd8\xff])")
JPEG_END = b"\xd9"
TIFF_PLACES = ((273, 279), (324, 325))  # offsets and byte counts, of strips and of tiles


def ends_early(kind: Kind, data: bytes) -> bool:
    """Whether a JPEG, PNG, WebP or HEIC file stops before its own end; False for a TIFF."""
    walk = _WALKS.get(kind)
    return walk is not None and not walk(data)


def tiff_ends_early(tags: Any, size: int) -> bool:
    """Whether a TIFF of ``size`` bytes keeps part of its first picture past its own end."""
    for offsets, counts in TIFF_PLACES:
        spans = zip(_listed(tags.get(offsets)), _listed(tags.get(counts)), strict=False)
        if any(offset + count > size for offset, count in spans):
            return True
    return False


def png_chunk(data: bytes, name: bytes) -> bytes | None:
    """The content of the first chunk of that name in a PNG, or None."""
    return next((data[at:end] for found, at, end in _png_chunks(data) if found == name), None)


def webp_size(data: bytes) -> tuple[int, int] | None:
    """Width and height that the first chunk of a WebP gives (RFC 9649), or None."""
    chunk = data[12:16]
    if chunk == b"VP8X" and len(data) >= 30:
        return _little(data[24:27]) + 1, _little(data[27:30]) + 1
    if chunk == b"VP8L" and len(data) >= 25:
        bits = _little(data[21:25])
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    if chunk == b"VP8 " and len(data) >= 30:
        return _little(data[26:28]) & 0x3FFF, _little(data[28:30]) & 0x3FFF
    return None


def _jpeg(data: bytes) -> bool:
    at = 2
    while found := JPEG_MARKER.search(data, at):
        if found[1] == JPEG_END:
            return True
        at = found.end()
        at += max(2, int.from_bytes(data[at : at + 2], "big"))
    return False


def _png_chunks(data: bytes) -> Iterator[tuple[bytes, int, int]]:
    """Name, begin and end of the content of each chunk that is there to its last byte."""
    at = 8
    while at + 12 <= len(data):
        begin, end = at + 8, at + 8 + int.from_bytes(data[at : at + 4], "big")
        if end + 4 > len(data):
            return
        yield data[at + 4 : begin], begin, end
        at = end + 4


def _png(data: bytes) -> bool:
    return any(name == b"IEND" for name, _, _ in _png_chunks(data))


def _webp(data: bytes) -> bool:
    return 8 + _little(data[4:8]) <= len(data)


def _heic(data: bytes) -> bool:
    at, names = 0, set()
    while at + 8 <= len(data):
        size, name = int.from_bytes(data[at : at + 4], "big"), data[at + 4 : at + 8]
        if size == 1:  # a box of more than 32 bits tells its length after its name
            size = int.from_bytes(data[at + 8 : at + 16], "big")
        names.add(name)
        at = len(data) if size == 0 else at + max(8, size)
    return at <= len(data) and {b"meta", b"mdat"} <= names


def _little(data: bytes) -> int:
    return int.from_bytes(data, "little")


def _listed(value: Any) -> tuple[Any, ...]:
    if value is None:
        return ()
    return value if isinstance(value, tuple) else (value,)


_WALKS: dict[Kind, Callable[[bytes], bool]] = {
    Kind.JPEG: _jpeg,
    Kind.PNG: _png,
    Kind.WEBP: _webp,
    Kind.HEIC: _heic,
}
