"""The few shapes that an outline drawing is made of, read from SVG text and drawn as lines.

Path commands, arcs and units: W3C SVG 1.1 (second edition), chapters 8 and 9 and appendix F.6.
"""

from __future__ import annotations

import re
from math import atan2, ceil, cos, pi, radians, sin, sqrt, tan
from typing import TYPE_CHECKING, NamedTuple
from xml.etree import ElementTree

if TYPE_CHECKING:
    from collections.abc import Iterator

TOKEN = re.compile(r"[A-Za-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
INHERITED = ("fill", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin")
KINDS = ("circle", "ellipse", "path", "rect", "line", "polyline", "polygon")

Point = tuple[float, float]


class Stroke(NamedTuple):
    """One command of a path in drawing units: "M", "L", "C" with their points, or "Z"."""

    command: str
    points: tuple[Point, ...] = ()


class Shape(NamedTuple):
    """One shape: its strokes and how it is inked."""

    strokes: tuple[Stroke, ...]
    ink: dict[str, str]


class Outline(NamedTuple):
    """A drawing: its viewBox as left, top, width, height, and its shapes in painting order."""

    box: tuple[float, float, float, float]
    shapes: tuple[Shape, ...]


def read_outline(svg: str) -> Outline | None:
    """The drawing of this SVG text; None where it is no drawing of known shapes. Nothing outside the text is read."""
    if "<!DOCTYPE" in svg or "<!ENTITY" in svg:
        return None
    try:
        root = ElementTree.fromstring(svg)
        left, top, width, height = (float(n) for n in TOKEN.findall(root.get("viewBox", "")))
        shapes = tuple(_shapes(root, {}))
    except (ElementTree.ParseError, ValueError, IndexError):
        return None
    return Outline((left, top, width, height), shapes) if width > 0 and height > 0 and shapes else None


def _shapes(element: ElementTree.Element, above: dict[str, str]) -> Iterator[Shape]:
    ink = {**above, **{name: value for name in INHERITED if (value := element.get(name)) is not None}}
    name = element.tag.rpartition("}")[2]
    if name in KINDS:
        strokes = tuple(_strokes(name, element))
        if strokes:
            yield Shape(strokes, ink)
    for child in element:
        yield from _shapes(child, ink)


def _number(element: ElementTree.Element, name: str, default: float = 0) -> float:
    return float(element.get(name, default))


def _strokes(name: str, element: ElementTree.Element) -> Iterator[Stroke]:
    if name == "path":
        return _path(element.get("d", ""))
    if name in ("circle", "ellipse"):
        return _round(element)
    if name == "rect":
        x, y, w, h = (_number(element, n) for n in ("x", "y", "width", "height"))
        return _lines([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], closed=True)
    if name == "line":
        x1, y1, x2, y2 = (_number(element, n) for n in ("x1", "y1", "x2", "y2"))
        return _lines([(x1, y1), (x2, y2)])
    numbers = [float(n) for n in TOKEN.findall(element.get("points", ""))]
    return _lines(list(zip(numbers[::2], numbers[1::2], strict=False)), closed=name == "polygon")


def _lines(points: list[Point], *, closed: bool = False) -> Iterator[Stroke]:
    for n, point in enumerate(points):
        yield Stroke("L" if n else "M", (point,))
    if closed and points:
        yield Stroke("Z")


def _round(element: ElementTree.Element) -> Iterator[Stroke]:
    x, y, r = _number(element, "cx"), _number(element, "cy"), _number(element, "r")
    rx, ry = _number(element, "rx", r), _number(element, "ry", r)
    yield Stroke("M", ((x + rx, y),))
    yield from _arc((x + rx, y), rx, ry, 0, (False, True), (x - rx, y))
    yield from _arc((x - rx, y), rx, ry, 0, (False, True), (x + rx, y))
    yield Stroke("Z")


def _commands(d: str) -> Iterator[tuple[str, list[float]]]:
    """The commands of a path with their numbers; a repeated command stands once for each set."""
    tokens, at, command = TOKEN.findall(d), 0, ""
    while at < len(tokens):
        if tokens[at].isalpha():
            command, at = tokens[at], at + 1
        takes = TAKES.get(command.upper(), -1)
        if takes < 0 or at + takes > len(tokens):
            raise ValueError(f"a path cannot hold {command!r} here")
        yield command, [float(n) for n in tokens[at : at + takes]]
        at += takes
        if command in "Mm":
            command = "L" if command == "M" else "l"
        if not takes and at < len(tokens) and not tokens[at].isalpha():
            raise ValueError("a path goes on after it is closed")


def _path(d: str) -> Iterator[Stroke]:
    here: Point = (0.0, 0.0)
    start, handle, before = here, here, ""
    for command, numbers in _commands(d):
        kind = command.upper()
        base = here if command.islower() else (0.0, 0.0)
        if kind == "Z":
            yield Stroke("Z")
            here = start
        elif kind == "A":
            end = (base[0] + numbers[5], base[1] + numbers[6])
            yield from _arc(here, numbers[0], numbers[1], numbers[2], (bool(numbers[3]), bool(numbers[4])), end)
            here = end
        else:
            smooth = handle if before in ("CS" if kind == "S" else "QT") else here
            stroke, handle = _segment(kind, _points(kind, numbers, base, here), here, smooth)
            yield stroke
            here = stroke.points[-1]
            start = here if kind == "M" else start
        before = kind


def _points(kind: str, numbers: list[float], base: Point, here: Point) -> list[Point]:
    if kind == "H":
        return [(base[0] + numbers[0], here[1])]
    if kind == "V":
        return [(here[0], base[1] + numbers[0])]
    return [(base[0] + x, base[1] + y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]


def _segment(kind: str, points: list[Point], here: Point, handle: Point) -> tuple[Stroke, Point]:
    """A segment as a line or a cubic curve, and the handle that a smooth one after it mirrors."""
    mirrored = (2 * here[0] - handle[0], 2 * here[1] - handle[1])
    if kind == "S" or kind == "T":
        points = [mirrored, *points]
    if kind in "QT":
        middle, end = points
        return Stroke("C", (_third(here, middle), _third(end, middle), end)), middle
    if kind in "CS":
        return Stroke("C", tuple(points)), points[1]
    return Stroke("M" if kind == "M" else "L", tuple(points)), points[-1]


def _third(end: Point, middle: Point) -> Point:
    return end[0] + (middle[0] - end[0]) * 2 / 3, end[1] + (middle[1] - end[1]) * 2 / 3


def _arc(
    start: Point, rx: float, ry: float, tilt: float, flags: tuple[bool, bool], end: Point
) -> Iterator[Stroke]:  # fmt: skip
    """An elliptic arc as cubic curves of at most a quarter turn (SVG 1.1, F.6.5 and F.6.6)."""
    rx, ry = abs(rx), abs(ry)
    if not rx or not ry or start == end:
        yield Stroke("L", (end,))
        return
    phi = radians(tilt)
    dx, dy = (start[0] - end[0]) / 2, (start[1] - end[1]) / 2
    x, y = cos(phi) * dx + sin(phi) * dy, cos(phi) * dy - sin(phi) * dx
    grow = sqrt(max(1.0, (x / rx) ** 2 + (y / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    under = max(0.0, (rx * ry) ** 2 - (rx * y) ** 2 - (ry * x) ** 2) / ((rx * y) ** 2 + (ry * x) ** 2)
    root = sqrt(under) * (-1 if flags[0] == flags[1] else 1)
    cx, cy = root * rx * y / ry, -root * ry * x / rx
    first, last = atan2((y - cy) / ry, (x - cx) / rx), atan2((-y - cy) / ry, (-x - cx) / rx)
    sweep = (last - first) % (2 * pi) if flags[1] else -((first - last) % (2 * pi))
    halfway = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    middle = cos(phi) * cx - sin(phi) * cy + halfway[0], sin(phi) * cx + cos(phi) * cy + halfway[1]
    yield from _curves(middle, (rx, ry), phi, first, sweep)


def _curves(middle: Point, radii: Point, phi: float, first: float, sweep: float) -> Iterator[Stroke]:
    count = max(1, ceil(abs(sweep) / (pi / 2) - 1e-9))
    step = sweep / count
    reach = 4 / 3 * tan(step / 4)

    def on(x: float, y: float) -> Point:
        x, y = x * radii[0], y * radii[1]
        return middle[0] + cos(phi) * x - sin(phi) * y, middle[1] + sin(phi) * x + cos(phi) * y

    for n in range(count):
        a, b = first + n * step, first + (n + 1) * step
        yield Stroke(
            "C",
            (
                on(cos(a) - reach * sin(a), sin(a) + reach * cos(a)),
                on(cos(b) + reach * sin(b), sin(b) - reach * cos(b)),
                on(cos(b), sin(b)),
            ),
        )
