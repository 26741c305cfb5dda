"""Colour differences by CIEDE2000. A phone is no colour instrument: what comes out is an indication."""

from __future__ import annotations

from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt
from typing import NamedTuple

_25_7 = 25.0**7


class Lab(NamedTuple):
    """A colour as CIE 1976 L*, a*, b* (D65)."""

    lightness: float
    a: float
    b: float


# Linear sRGB to XYZ with D65 white, IEC 61966-2-1
_TO_XYZ = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
_WHITE = tuple(sum(row) for row in _TO_XYZ)


def lab_of(red: float, green: float, blue: float) -> Lab:
    """The colour of sRGB values from 0 to 255; white is 100, 0, 0 (IEC 61966-2-1, then CIE 15)."""
    linear = [_linear(value / 255) for value in (red, green, blue)]
    x, y, z = (
        _root(sum(k * v for k, v in zip(row, linear, strict=True)) / white)
        for row, white in zip(_TO_XYZ, _WHITE, strict=True)
    )
    return Lab(116 * y - 16, 500 * (x - y), 200 * (y - z))


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _root(share: float) -> float:
    return float(share ** (1 / 3)) if share > (6 / 29) ** 3 else share / (3 * (6 / 29) ** 2) + 4 / 29


def difference(first: Lab, second: Lab) -> float:
    """The CIEDE2000 difference of two colours with all weights 1; about 1 is just seen side by side.

    Source: Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21-30, DOI 10.1002/col.20070.
    """
    c1, h1, c2, h2 = _chroma_and_hue(first, second)
    dl, dc = second.lightness - first.lightness, c2 - c1
    dh = 2 * sqrt(c1 * c2) * sin(radians(_turn(h1, h2) / 2)) if c1 * c2 else 0.0
    mean_l, mean_c = (first.lightness + second.lightness) / 2, (c1 + c2) / 2
    mean_h = _mean_hue(h1, h2) if c1 * c2 else h1 + h2
    t = _t(mean_h)
    sl = 1 + 0.015 * (mean_l - 50) ** 2 / sqrt(20 + (mean_l - 50) ** 2)
    sc, sh = 1 + 0.045 * mean_c, 1 + 0.015 * mean_c * t
    turn = -2 * _share(mean_c) * sin(radians(60 * exp(-(((mean_h - 275) / 25) ** 2))))
    light, chroma, hue = dl / sl, dc / sc, dh / sh
    return sqrt(max(light**2 + chroma**2 + hue**2 + turn * chroma * hue, 0.0))


def _share(chroma: float) -> float:
    return sqrt(chroma**7 / (chroma**7 + _25_7))


def _chroma_and_hue(first: Lab, second: Lab) -> tuple[float, float, float, float]:
    """Chroma and hue of both after a* is stretched near grey; the hue of grey is 0."""
    mean = (hypot(first.a, first.b) + hypot(second.a, second.b)) / 2
    stretch = 1 + 0.5 * (1 - _share(mean))
    out: list[float] = []
    for colour in (first, second):
        a = stretch * colour.a
        out += [hypot(a, colour.b), degrees(atan2(colour.b, a)) % 360 if a or colour.b else 0.0]
    return out[0], out[1], out[2], out[3]


def _turn(first: float, second: float) -> float:
    """From one hue to the other by the short way, -180 to 180."""
    turn = second - first
    if turn > 180:
        return turn - 360
    return turn + 360 if turn < -180 else turn


def _mean_hue(first: float, second: float) -> float:
    if abs(first - second) <= 180:
        return (first + second) / 2
    return (first + second + 360) / 2 if first + second < 360 else (first + second - 360) / 2


def _t(hue: float) -> float:
    return (
        1
        - 0.17 * cos(radians(hue - 30))
        + 0.24 * cos(radians(2 * hue))
        + 0.32 * cos(radians(3 * hue + 6))
        - 0.20 * cos(radians(4 * hue - 63))
    )
