"""Marks drawn into a copy of a photograph: arrows, rings and words. The kept file never has them."""

from __future__ import annotations

from io import BytesIO
from math import atan2, cos, hypot, pi, sin
from typing import TYPE_CHECKING, Protocol

from inspector.resource import resource

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw

    Point = tuple[float, float]

INK, HALO = (20, 24, 31), (255, 255, 255)
STROKE = 0.005  # of the longer side of the picture
HEAD = 7.0  # length of the head of an arrow, in strokes
TALL = 0.035  # height of words, of the longer side
QUALITY = 88


class Marked(Protocol):
    """A mark as data: "arrow" (from, to), "ring" (middle, a point of its rim) or "words" (where they begin).

    Points are shares of the upright picture, 0 to 1 each way.
    """

    @property
    def kind(self) -> str:
        """What is drawn."""

    @property
    def points(self) -> Sequence[Point]:
        """Where it is drawn."""

    @property
    def text(self) -> str:
        """What is written."""


def burned(jpeg: bytes, marks: Iterable[Marked]) -> bytes:
    """A new JPEG with the marks drawn in dark ink on a light halo; the one given stays as it is."""
    from PIL.JpegImagePlugin import JpegImageFile

    marks = tuple(marks)
    if not marks:
        return jpeg
    with JpegImageFile(BytesIO(jpeg)) as opened:
        image = drawn(opened.convert("RGB"), marks)
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=QUALITY)
    return buffer.getvalue()


def drawn(image: Image, marks: Iterable[Marked]) -> Image:
    """A picture of the same size (RGB) with the marks drawn in dark ink on a light halo; the one given stays."""
    marks = tuple(marks)
    made = image.copy()
    _draw(made, marks)
    return made


def _draw(image: Image, marks: Sequence[Marked]) -> None:
    from PIL.ImageDraw import Draw

    pen, wide = Draw(image), max(round(STROKE * max(image.size)), 2)
    for colour, width in ((HALO, wide * 3), (INK, wide)):
        for mark in marks:
            spots = [(x * image.width, y * image.height) for x, y in mark.points]
            if mark.kind == "words":
                _words(pen, spots, mark.text, colour, image)
            elif len(spots) >= 2:
                (_arrow if mark.kind == "arrow" else _ring)(pen, spots, colour, width, wide)


def arrow_head(start: Point, end: Point, long: float) -> tuple[Point, Point]:
    """Where the two strokes of the head of an arrow to ``end`` begin, ``long`` away from it."""
    way = atan2(end[1] - start[1], end[0] - start[0])
    first, second = way + pi * 5 / 6, way - pi * 5 / 6
    return (
        (end[0] + long * cos(first), end[1] + long * sin(first)),
        (end[0] + long * cos(second), end[1] + long * sin(second)),
    )


def _arrow(pen: ImageDraw, spots: list[Point], colour: tuple[int, int, int], width: int, wide: int) -> None:
    start, end = spots[0], spots[1]
    one, other = arrow_head(start, end, HEAD * wide)
    pen.line([start, end], fill=colour, width=width)
    pen.line([one, end, other], fill=colour, width=width, joint="curve")


def _ring(pen: ImageDraw, spots: list[Point], colour: tuple[int, int, int], width: int, wide: int) -> None:
    (x, y), (rim_x, rim_y) = spots[0], spots[1]
    far = max(hypot(rim_x - x, rim_y - y), wide) + width / 2
    pen.ellipse((x - far, y - far, x + far, y + far), outline=colour, width=width)


def _words(pen: ImageDraw, spots: list[Point], text: str, colour: tuple[int, int, int], image: Image) -> None:
    from PIL.ImageFont import truetype

    if not spots or not text:
        return
    font = truetype(str(resource("fonts", "SourceSansPro-Semibold.ttf")), max(round(TALL * max(image.size)), 10))
    halo = max(font.size / 8, 1) if colour == HALO else 0
    pen.text(spots[0], text, font=font, fill=colour, stroke_width=round(halo), stroke_fill=colour, anchor="ls")
