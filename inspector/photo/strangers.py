"""Files that are no picture the program takes, named so that the person knows what they chose."""

from __future__ import annotations

from codecs import getincrementaldecoder
from pathlib import PurePath

from inspector.photo.kinds import AVIF_BRANDS, brands
from inspector.texts import Say, say

STARTS = {
    b"%PDF": say("a PDF document"),
    b"GIF8": say("a GIF picture"),
    b"BM": say("a BMP picture"),
    b"8BPS": say("a layered picture of an image editor"),
    b"PK\x03\x04": say("a packed archive or an office document"),
    b"\x1f\x8b": say("a packed archive"),
    b"7z\xbc\xaf": say("a packed archive"),
    b"ID3": say("sound"),
    b"FUJIFILM": say("a camera's raw data"),
    b"\x1aE\xdf\xa3": say("a film"),
}
RAW_ENDINGS = {".arw", ".cr2", ".cr3", ".dng", ".nef", ".nrw", ".orf", ".pef", ".raf", ".rw2"}
RAW_BRAND = b"crx "
RAW = say("a camera's raw data")
TEXT_LOOKED_AT = 4096
CONTROL = set(range(32)) - set(b"\t\n\f\r\x1b")


def held(data: bytes) -> Say:
    """What these bytes hold that is no picture the program takes, as "it holds ..." is read."""
    for start, words in STARTS.items():
        if data.startswith(start):
            return words
    if data[:4] == b"RIFF":
        return say("a film or sound")
    if names := brands(data):
        return _boxed(names)
    return say("text") if _is_text(data[:TEXT_LOOKED_AT]) else say("data of an unknown kind")


def is_raw(name: str, data: bytes) -> bool:
    """Whether a file that begins as a TIFF is a camera's raw data by its ending or its mark."""
    return PurePath(name).suffix.lower() in RAW_ENDINGS or data[8:10] == b"CR"


def _boxed(names: list[bytes]) -> Say:
    if AVIF_BRANDS & set(names):
        return say("an AVIF picture")
    return RAW if names[0] == RAW_BRAND else say("a film")


def _is_text(data: bytes) -> bool:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return True
    if CONTROL & set(data):
        return False
    try:
        # Not told that the data end here, it lets a letter be cut in two there.
        getincrementaldecoder("utf-8")().decode(data)
    except UnicodeDecodeError:
        return False
    return True
