"""A JPEG as it may be put into a sheet: whole, of a printable size, and with nothing in it but the picture."""

from __future__ import annotations

import re
from typing import NamedTuple

from inspector.texts import Say, say

START, SCAN, END = 0xD8, 0xDA, 0xD9
FRAMES = frozenset({0xC0, 0xC1, 0xC2})
BARE = frozenset({0x01, *range(0xD0, 0xD8)})
COMMENT, ADOBE = 0xFE, 0xEE
NEXT = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]")
MOST_PIXELS = 60_000_000


class Bare(NamedTuple):
    """A JPEG without metadata, and its size in pixels."""

    data: bytes
    width: int
    height: int


def bare(data: bytes) -> Bare | Say:
    """The picture with its metadata left out (ITU-T T.81 markers), not compressed again; or why it cannot be shown."""
    found = _segments(data)
    if found is None:
        return say("it cannot be read")
    kept, width, height = found
    if width * height > MOST_PIXELS:
        return say("it is too large to print ({width} by {height})", width=width, height=height)
    return Bare(kept, width, height)


def _segments(data: bytes) -> tuple[bytes, int, int] | None:
    """The kept bytes and the size, or None where the markers do not follow one another as they must."""
    if data[:2] != b"\xff\xd8":
        return None
    kept, at, size = [data[:2]], 2, (0, 0)
    while at + 2 <= len(data) and data[at] == 0xFF and data[at + 1] != END:
        marker = data[at + 1]
        if marker == 0xFF or marker in BARE:
            at += 1 if marker == 0xFF else 2
            continue
        end = at + 2 + int.from_bytes(data[at + 2 : at + 4], "big")
        if end > len(data) or end < at + 4:
            return None
        if marker in FRAMES:
            size = _size(data[at:end])
        if marker == SCAN:
            end = _behind_scan(data, end)
        if not _is_metadata(marker):
            kept.append(data[at:end])
        at = end
    whole = data[at : at + 2] == b"\xff\xd9" and all(size)
    return (b"".join((*kept, data[at : at + 2])), *size) if whole else None


def _behind_scan(data: bytes, at: int) -> int:
    """Where the figures of a scan end: at the next marker that is no restart and no stuffed byte."""
    found = NEXT.search(data, at)
    return found.start() if found else len(data)


def _size(segment: bytes) -> tuple[int, int]:
    """Width and height from a frame header, 0 by 0 where its layout is not one that paper can show."""
    if len(segment) < 10 or segment[4] != 8 or segment[9] not in (1, 3):
        return 0, 0
    return int.from_bytes(segment[7:9], "big"), int.from_bytes(segment[5:7], "big")


def _is_metadata(marker: int) -> bool:
    return marker == COMMENT or (0xE0 <= marker <= 0xEF and marker != ADOBE)
