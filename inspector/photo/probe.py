"""What a chosen file really is, from its content alone and before any of it is decoded."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.photo.camera import Camera, camera_of
from inspector.photo.decoders import TooMuch, Unreadable, opened
from inspector.photo.kinds import MOST_PROGRESSIVE, Kind, kind_of
from inspector.photo.read import no_memory, read, too_large
from inspector.photo.refusal import Refusal
from inspector.photo.strangers import RAW, held, is_raw
from inspector.photo.whole import ends_early, tiff_ends_early, webp_size
from inspector.texts import Say, say

if TYPE_CHECKING:
    from PIL.Image import Image

UNNAMED = "photograph"
TIFF_WIDTH, TIFF_HEIGHT = 256, 257


@dataclass(frozen=True, slots=True)
class Picture:
    """A file that is a picture: its kind, bytes, pixels as stored, what the camera wrote, notes.

    ``camera.orientation`` tells how the stored pixels are turned to stand upright.
    """

    name: str
    kind: Kind
    size: int
    width: int
    height: int
    camera: Camera
    notes: tuple[Say, ...] = ()

    @property
    def upright(self) -> tuple[int, int]:
        """Width and height in pixels as a person sees the picture, upright."""
        turned = self.camera.orientation >= 5
        return (self.height, self.width) if turned else (self.width, self.height)


def probe(source: bytes | Path, name: str = "") -> Picture | Refusal:
    """The picture that a file or its bytes hold, by content; a Refusal names the file and why not.

    Only headers are read: no pixel is decoded, whatever size the file says it has.
    """
    found = probed(source, name)
    return found if isinstance(found, Refusal) else found[0]


def probed(source: bytes | Path, name: str = "") -> tuple[Picture, bytes] | Refusal:
    """As `probe`, with the bytes that were looked at: a file is read once."""
    if isinstance(source, Path):
        data = read(source)
        if isinstance(data, Refusal):
            return data
        name = name or source.name
        source = data
    picture = _picture(source, name or UNNAMED)
    return picture if isinstance(picture, Refusal) else (picture, source)


def _picture(source: bytes, name: str) -> Picture | Refusal:
    kind = kind_of(source)
    if refusal := _refused_unopened(name, kind, source):
        return refusal
    assert kind is not None
    try:
        with opened(kind, source) as image:
            return _looked_at(name, kind, image, source)
    except Unreadable as error:
        return unreadable(name, error)


def unreadable(name: str, error: Unreadable) -> Refusal:
    """The refusal of a picture whose decoder gave up in this way."""
    if isinstance(error, TooMuch):
        return no_memory(name)
    return Refusal(
        name,
        say(
            "{name} is damaged and cannot be shown. Copy it again from the camera or card, and choose that.",
            name=name,
        ),
    )


def _refused_unopened(name: str, kind: Kind | None, data: bytes) -> Refusal | None:
    if not data:
        said = say("{name} is empty. Copy it again from the camera or card, and choose that.", name=name)
        return Refusal(name, said)
    if refusal := too_large(name, len(data)):
        return refusal
    if kind is None:
        return _stranger(name, held(data))
    if kind is Kind.TIFF and is_raw(name, data):
        return _stranger(name, RAW)
    if ends_early(kind, data):
        return _cut_short(name)
    # The decoder of this kind sets memory aside for all its pixels as soon as it is opened.
    size = webp_size(data) if kind is Kind.WEBP else None
    return _too_many(name, kind, size, kind.most_pixels) if size else None


def _looked_at(name: str, kind: Kind, image: Image, data: bytes) -> Picture | Refusal:
    most = MOST_PROGRESSIVE if image.info.get("progressive") else kind.most_pixels
    if refusal := _too_many(name, kind, image.size, most):
        return refusal
    if min(image.size) < 1:
        raise Unreadable
    if kind is Kind.TIFF and tiff_ends_early(getattr(image, "tag_v2", {}), len(data)):
        return _cut_short(name)
    camera, (width, height) = camera_of(image), _stored(image)
    notes = _notes(name, kind, camera, several=getattr(image, "is_animated", False))
    return Picture(name, kind, len(data), width, height, camera, notes)


def _stored(image: Image) -> tuple[int, int]:
    """Width and height as stored; a TIFF's tags tell them where its decoder tells them turned."""
    width, height = image.size
    tags = getattr(image, "tag_v2", {})
    return tags.get(TIFF_WIDTH, width), tags.get(TIFF_HEIGHT, height)


def _notes(name: str, kind: Kind, camera: Camera, *, several: bool) -> tuple[Say, ...]:
    notes = []
    if not kind.suits(name):
        notes.append(say("{name} is a {kind} picture, whatever its ending says.", name=name, kind=kind.value))
    if several:
        notes.append(say("{name} holds several pictures; only the first one is shown.", name=name))
    if not camera.readable:
        notes.append(say("What the camera wrote into {name} cannot be read.", name=name))
    return tuple(notes)


def _stranger(name: str, holds: Say) -> Refusal:
    return Refusal(
        name,
        say(
            "{name} is not a photograph the program can read (it holds {holds})."
            " Choose a JPEG, PNG, WebP, HEIC or TIFF file.",
            name=name,
            holds=holds,
        ),
    )


def _cut_short(name: str) -> Refusal:
    return Refusal(
        name,
        say(
            "{name} is cut short: the file ends before the picture does. Copy it again from the"
            " camera or card, and choose that.",
            name=name,
        ),
    )


def _too_many(name: str, kind: Kind, size: tuple[int, int], most: int) -> Refusal | None:
    width, height = size
    if width * height <= most:
        return None
    return Refusal(
        name,
        say(
            "{name} says it is {width} x {height} pixels; a {kind} file of up to {most} million"
            " pixels can be opened. Save a smaller copy as a JPEG, and choose that.",
            name=name,
            width=width,
            height=height,
            kind=kind.value,
            most=most // 1_000_000,
        ),
    )
