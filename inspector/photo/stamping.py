"""A row of stamped figures by the boxes drawn round them: height, spacing, slope and base line, described only."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees, sqrt
from typing import TYPE_CHECKING

import numpy as np

from inspector.photo.plane import TooWeak, View, project, to_plane
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from inspector.photo.plane import Point

    Array = NDArray[np.float64]
    Quad = tuple[Point, Point, Point, Point]

FEWEST = 3
CAUTION = say(
    "Described, not judged: these figures say how the boxes stand, and nothing about who stamped them or when. Figures "
    "struck one by one by hand are never quite even.",
)


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure beside the rest of its row: its height, how far it stands above their line, the gap before it."""

    number: int
    height: float
    above: float
    gap: float | None
    apart: bool
    said: Say


@dataclass(frozen=True, slots=True)
class StampedRow:
    """A row of figures, lengths in ``unit`` ("mm", or "heights" of a figure where no reference lies there)."""

    figures: tuple[Figure, ...]
    unit: str
    height: float
    spacing: float
    slope: float
    drawing: float
    sentences: tuple[Say, ...]


def stamped_row(boxes: Sequence[Quad], view: View | None = None, pointing: float = 1.5) -> StampedRow:
    """The row that the boxes tell, each box four corners in pixels from the figure's own upper left, clockwise.

    With a ``view`` lengths are mm in the plane of its reference. The line is Theil and Sen's: the median of all slopes
    between two feet, so that one figure out of line does not move it. Raises TooWeak for fewer than three boxes.
    """
    if len(boxes) < FEWEST:
        raise TooWeak(say("Draw a box round at least three figures of the row."))
    spots, unit, fine = _placed(np.array(boxes, float), view, pointing)
    spots = _along(spots)
    feet, heads = (spots[:, 2] + spots[:, 3]) / 2, (spots[:, 0] + spots[:, 1]) / 2
    middles, highs = spots.mean(axis=1), np.linalg.norm(heads - feet, axis=1)
    slope = _line(feet)
    above = np.array([_above(feet, n) for n in range(len(feet))])
    gaps = np.linalg.norm(np.diff(middles, axis=0), axis=1)
    figures = _figures(highs, above, gaps, unit, fine)
    height, spacing = float(np.median(highs)), float(np.median(gaps))
    words = _sentences(highs, gaps, degrees(slope), unit, fine, view)
    told = (*words, *(f.said for f in figures if f.apart), _rest(figures))
    return StampedRow(figures, unit, height, spacing, degrees(slope), fine, told)


def _rest(figures: tuple[Figure, ...]) -> Say:
    """What is said of the figures of which nothing else is."""
    apart = sum(figure.apart for figure in figures)
    if apart == len(figures):
        return say("No figure stands as the others do.")
    if apart:
        return say("Of the other figures nothing shows that could not come from the drawing of the boxes.")
    return say("Of no figure anything shows that could not come from the drawing of the boxes.")


def _placed(quads: Array, view: View | None, pointing: float) -> tuple[Array, str, float]:
    """The boxes in the unit of the answer, that unit, and what two points drawn by hand may be off in it."""
    high = float(np.median(np.linalg.norm(quads[:, 0] - quads[:, 3], axis=1)))
    if high <= 0:
        raise TooWeak(say("A box has no height; draw it again."))
    if view is None:
        return quads / high, "heights", pointing * sqrt(2) / high
    spots = project(to_plane(view), quads.reshape(-1, 2)).reshape(quads.shape)
    tall = float(np.median(np.linalg.norm(spots[:, 0] - spots[:, 3], axis=1)))
    return spots, "mm", pointing * sqrt(2) * tall / high


def _along(spots: Array) -> Array:
    """The boxes in the order in which the row is read: from the first corner side of a figure to its second."""
    way = (spots[:, 1] + spots[:, 2] - spots[:, 0] - spots[:, 3]).mean(axis=0)
    return spots[np.argsort(spots.mean(axis=1) @ way, kind="stable")]


def _line(feet: Array) -> float:
    """The direction of the row in radians, y down."""
    first, second = np.triu_indices(len(feet), 1)
    ways = feet[second] - feet[first]
    base = atan2(*(feet[-1] - feet[0])[::-1])
    turned = np.arctan2(ways[:, 1], ways[:, 0]) - base
    turned = (turned + np.pi) % (2 * np.pi) - np.pi
    return base + float(np.median(turned))


def _above(feet: Array, number: int) -> float:
    """How far one foot stands above the line of the others."""
    others = np.delete(feet, number, axis=0)
    slope = _line(others)
    normal = np.array([np.sin(slope), -np.cos(slope)])
    return float(feet[number] @ normal - np.median(others @ normal))


def _figures(highs: Array, above: Array, gaps: Array, unit: str, fine: float) -> tuple[Figure, ...]:
    made = []
    for n in range(len(highs)):
        gap = float(gaps[n - 1]) if n else None
        other_highs, other_gaps = np.delete(highs, n), np.delete(gaps, n - 1) if n else gaps
        taller = float(highs[n] - np.median(other_highs))
        wider = gap - float(np.median(other_gaps)) if gap is not None and len(other_gaps) else 0.0
        told = [
            part for part in (_stands(above[n], unit, fine), _is(taller, unit, fine), _gap(wider, unit, fine)) if part
        ]
        made.append(Figure(n + 1, float(highs[n]), float(above[n]), gap, bool(told), _joined(n + 1, told)))
    return tuple(made)


def _stands(above: float, unit: str, fine: float) -> Say | None:
    if abs(above) <= 2 * fine:
        return None
    by = _length(abs(above), unit)
    if above > 0:
        return say("stands {by} above the line of the others", by=by)
    return say("stands {by} below the line of the others", by=by)


def _is(taller: float, unit: str, fine: float) -> Say | None:
    if abs(taller) <= 2 * fine:
        return None
    by = _length(abs(taller), unit)
    return (
        say("is {by} higher than the middle one", by=by)
        if taller > 0
        else say("is {by} lower than the middle one", by=by)
    )


def _gap(wider: float, unit: str, fine: float) -> Say | None:
    if abs(wider) <= 2 * fine:
        return None
    by = _length(abs(wider), unit)
    if wider > 0:
        return say("stands {by} further from the one before than the others do", by=by)
    return say("stands {by} nearer to the one before than the others do", by=by)


def _joined(number: int, told: list[Say]) -> Say:
    if not told:
        return say("Figure {n}: nothing that could not come from the drawing of the boxes.", n=number)
    slots = {f"w{at}": part for at, part in enumerate(told)}
    return Say("Figure {n} " + ", ".join(f"{{{slot}}}" for slot in slots) + ".", {"n": number, **slots})


def _length(value: float, unit: str) -> Say:
    return say("{mm} mm", mm=f"{value:.2f}") if unit == "mm" else say("{n} of its height", n=f"{value:.2f}")


def _runs(slope: float, against: Say) -> Say:
    """How the row runs against a side, ``slope`` in degrees, y down."""
    slope = (slope + 180) % 360 - 180
    turn = f"{abs(slope):.1f}"
    if turn == "0.0":
        return say("The row runs along {what}.", what=against)
    if slope > 0:
        return say("The row falls by {turn}° to the right against {what}.", turn=turn, what=against)
    return say("The row rises by {turn}° to the right against {what}.", turn=turn, what=against)


def _sentences(highs: Array, gaps: Array, slope: float, unit: str, fine: float, view: View | None) -> tuple[Say, ...]:
    lowest, middle, highest = (f"{x:.2f}" for x in (highs.min(), np.median(highs), highs.max()))
    narrow, usual, wide = (f"{x:.2f}" for x in (gaps.min(), np.median(gaps), gaps.max()))
    name = say("mm") if unit == "mm" else say("heights")
    against = say("the first side of the reference") if view else say("the edge of the picture")
    return (
        say("{n} figures, {low} to {high} {unit} high, the middle one {middle}.",
            n=len(highs), low=lowest, high=highest, middle=middle, unit=name),
        say("From middle to middle {narrow} to {wide} {unit}, the middle one {usual}.",
            narrow=narrow, wide=wide, usual=usual, unit=name),
        _runs(slope, against),
        say("What is told of one figure is more than {fine}, twice what a box drawn by hand may be off.",
            fine=_length(2 * fine, unit)),
    )  # fmt: skip
