"""What the camera wrote into a picture file: read, and never written."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from PIL.Image import Exif, Image

# Tags of CIPA DC-008 (JEITA CP-3451), Exif.
MAKE, MODEL, ORIENTATION = 0x010F, 0x0110, 0x0112
EXIF_IFD, GPS_IFD = 0x8769, 0x8825
TAKEN, TAKEN_OFFSET = 0x9003, 0x9011
DIGITIZED, DIGITIZED_OFFSET = 0x9004, 0x9012
PLACES = {0x02, 0x04, 0x14, 0x16}  # latitude and longitude, of the camera and of what it faced
XMP_PLACE = b"GPSLatitude"

TIME = re.compile(r"(\d{4}):(\d\d):(\d\d)[ T](\d\d):(\d\d):(\d\d)")
OFFSET = re.compile(r"[+-]\d\d:\d\d")
WORDS_LENGTH = 80


@dataclass(frozen=True, slots=True)
class Camera:
    """The orientation 1 to 8, the camera clock's time and offset, the camera's name, any place.

    ``taken_at`` is the camera's own local time, without a zone; ``offset`` is "+01:00" or "".
    """

    orientation: int = 1
    taken_at: datetime | None = None
    offset: str = ""
    words: str = ""
    has_place: bool = False
    readable: bool = True


def camera_of(image: Image) -> Camera:
    """What the camera wrote into this opened picture; ``readable`` is False if it is damaged."""
    placed = _placed_by_xmp(image)
    try:
        exif = _exif(image)
        orientation = _orientation(exif)
    except Exception:  # on damaged tags Pillow raises nearly anything
        return Camera(has_place=placed, readable=False)
    try:
        taken_at, offset = _taken(exif.get_ifd(EXIF_IFD))
        placed = placed or bool(PLACES & set(exif.get_ifd(GPS_IFD)))
        return Camera(orientation, taken_at, offset, _words(exif), placed)
    except Exception:  # the outer tags may be whole where the inner are not
        return Camera(orientation, has_place=placed, readable=False)


def orientation_of(image: Image) -> int:
    """The orientation 1 to 8 of this opened picture; 1 where there is none or it is reserved."""
    try:
        return _orientation(_exif(image))
    except Exception:  # on damaged tags Pillow raises nearly anything
        return 1


def _orientation(exif: Exif) -> int:
    value = exif.get(ORIENTATION)
    return value if isinstance(value, int) and 1 <= value <= 8 else 1


def _exif(image: Image) -> Exif:
    from PIL.Image import Exif
    from PIL.Image import Image as Plain

    # Opening some kinds has tried the tags before, and hidden that they are damaged.
    Exif().load(image.info.get("exif") or b"")
    # A PNG's own way to its tags would decode all of its pixels first.
    return Plain.getexif(image)


def _taken(inner: dict[int, Any]) -> tuple[datetime | None, str]:
    for time, offset in ((TAKEN, TAKEN_OFFSET), (DIGITIZED, DIGITIZED_OFFSET)):
        if taken := _time(inner.get(time)):
            found = OFFSET.fullmatch(_text(inner.get(offset)))
            return taken, found[0] if found else ""
    return None, ""


def _time(value: Any) -> datetime | None:
    found = TIME.match(_text(value))
    if not found:
        return None
    try:
        return datetime.fromisoformat("{}-{}-{}T{}:{}:{}".format(*found.groups()))
    except ValueError:  # a camera whose clock was never set writes zeros
        return None


def _words(exif: Exif) -> str:
    make, model = _text(exif.get(MAKE)), _text(exif.get(MODEL))
    both = model if model.casefold().startswith(make.casefold()) else f"{make} {model}"
    return both.strip()[:WORDS_LENGTH]


def _text(value: Any) -> str:
    """The tag's text in one line; nothing for a tag that holds something else."""
    if isinstance(value, bytes):
        value = value.decode("utf-8", "replace")
    if not isinstance(value, str):
        return ""
    return " ".join("".join(c if c.isprintable() else " " for c in value).split())


def _placed_by_xmp(image: Image) -> bool:
    packets = (image.info.get("xmp"), image.info.get("XML:com.adobe.xmp"))
    return any(XMP_PLACE in (p if isinstance(p, bytes) else str(p).encode()) for p in packets if p)
