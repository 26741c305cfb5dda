"""Things of known size to lay beside what is measured, and what a length beside them is worth."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from math import acos, cos, degrees, hypot, radians, sin, sqrt
from typing import TYPE_CHECKING

import numpy as np

from inspector.photo import plane
from inspector.photo.plane import Rectangle, Told, TooWeak, View
from inspector.photo.ring import Ring, ring_through
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from inspector.photo.plane import Point

CAMERA_MM = 300.0  # taken for the camera's distance where nothing was said
RULE_TILT = 10.0  # degrees by which a camera held square over a rule may be off; an assumption
ROUND_FROM = 0.97  # shorter over longer axis; below it (about 14 degrees) a coin alone cannot tell the tilt
CARD, COIN, RULE, OWN = "card", "coin", "rule", "own"


@dataclass(frozen=True, slots=True)
class Reference:
    """A thing of known size: shape, size and thickness in mm, how far its size may be off, where the size is from."""

    id: str
    name: Say
    shape: str
    width: float = 0.0
    height: float = 0.0
    within: float = 0.0
    thick: float = 0.0
    source: Say = field(default_factory=lambda: say(""))

    @property
    def u(self) -> float:
        """The standard uncertainty of each side in mm: a limit is taken as rectangular (JCGM 100:2008, 4.3.7)."""
        return self.within / sqrt(3)

    @property
    def marks(self) -> int:
        """How many points it is pointed at by: four corners, six of a rim, two strokes."""
        return {COIN: 6, RULE: 2}.get(self.shape, 4)


def _coin(name: str, label: Say, size: float, thick: float, source: Say) -> Reference:
    return Reference(name, label, COIN, size, size, 0.1, thick, source)


_US = say("usmint.com, coin specifications")
_EURO = say("Council Regulation (EC) No 975/98")
_UK = say("dealers' lists, read second-hand")
_CARD = say("size of ISO/IEC 7810 ID-1, read in copies")

# No tolerance was read in a source: each ``within`` is the program's assumption, printed with every result.
REFERENCES: Mapping[str, Reference] = {
    one.id: one
    for one in (
        Reference("id-1", say("bank card, 85.60 × 53.98 mm"), CARD, 85.60, 53.98, 0.15, 0.76, _CARD),
        _coin("euro-2", say("2 euro, 25.75 mm"), 25.75, 2.20, _EURO),
        _coin("euro-1", say("1 euro, 23.25 mm"), 23.25, 2.33, _EURO),
        _coin("euro-050", say("50 euro cent, 24.25 mm"), 24.25, 2.4, _EURO),
        _coin("us-025", say("US quarter, 24.26 mm"), 24.26, 1.75, _US),
        _coin("us-001", say("US cent, 19.05 mm"), 19.05, 1.52, _US),
        _coin("uk-2", say("UK 2 pound, 28.4 mm"), 28.4, 2.5, _UK),
        _coin("uk-1-round", say("UK pound, round, to 2017, 22.5 mm"), 22.5, 3.15, _UK),
        Reference("rule", say("steel rule, two of its strokes"), RULE, 0, 0, 0.1, 1.0, say("read off the rule")),
        Reference("own", say("something of your own, flat and square"), OWN, 0, 0, 0.2, 0.0, say("typed")),
    )
}


@dataclass(frozen=True, slots=True)
class Setting:
    """How a length is measured: reference, its points in pixels, pointing in pixels, mm above its plane, camera in mm.

    ``above`` None says that nobody knows how far out of the plane the thing measured lies.
    """

    reference: Reference
    points: tuple[Point, ...]
    pointing: float = 1.5
    above: float | None = None
    camera: float | None = None

    @property
    def distance(self) -> float:
        """The camera's distance in mm, as said or as taken."""
        return self.camera or CAMERA_MM


@dataclass(frozen=True, slots=True)
class Answer:
    """What was measured, in mm or degrees, what it rests on, and what to beware of."""

    told: Told
    unit: str
    rests_on: tuple[Say, ...]
    beware: tuple[Say, ...]


def sized(reference: Reference, width: float, height: float = 0.0, within: float | None = None) -> Reference:
    """The reference with the size typed for it, in mm; TooWeak where that is no size."""
    if not (width > 0 and height >= 0 and np.isfinite([width, height]).all()):
        raise TooWeak(say("Type the size of the reference in mm first, as 150 or 6 in."))
    return replace(reference, width=width, height=height, within=reference.within if within is None else within)


def view_of(setting: Setting) -> View:
    """The plane of the reference as it was pointed at; raises TooWeak with one sentence where it carries nothing."""
    reference, points = setting.reference, setting.points
    if len(points) < reference.marks:
        raise TooWeak(say("Point at the reference first."))
    if reference.width <= 0 or (reference.shape == OWN and reference.height <= 0):
        raise TooWeak(say("Type the size of the reference in mm first, as 150 or 6 in."))
    if reference.shape == COIN:
        return _round_view(setting, ring_through(points))
    if reference.shape == RULE:
        return _rule_view(setting)
    size = Rectangle(reference.width, reference.height, reference.u, reference.u)
    view = View(size, (points[0], points[1], points[2], points[3]), setting.pointing)
    plane.check(view)
    return view


def _round_view(setting: Setting, ring: Ring) -> View:
    """The square round the coin, seen from straight above: its sides are the axes of the ellipse."""
    if ring.ratio < ROUND_FROM:
        raise TooWeak(say(
            "The coin is seen from the side (its picture is {share} % as high as wide). A coin carries a length only "
            "from straight above; photograph it again, or lay a card.", share=round(100 * ring.ratio),
        ))  # fmt: skip
    coin = setting.reference
    view = View(Rectangle(coin.width, coin.width, coin.u, coin.u), ring.square, setting.pointing)
    plane.check(view)
    return view


def _rule_view(setting: Setting) -> View:
    """A square on the rule between the two strokes: no tilt shows in it."""
    (ax, ay), (bx, by) = setting.points[:2]
    across = (-(by - ay), bx - ax)
    corners = ((ax, ay), (bx, by), (bx + across[0], by + across[1]), (ax + across[0], ay + across[1]))
    rule = setting.reference
    view = View(Rectangle(rule.width, rule.width, rule.u, rule.u), corners, setting.pointing)
    plane.check(view)
    return view


def length(setting: Setting, first: Point, second: Point) -> Answer:
    """The distance of two points in mm, with its 95 % interval. Raises TooWeak."""
    view = view_of(setting)
    share = hypot(_height_share(setting), _tilt_share(setting, view, (first, second)))
    told = plane.distance(view, first, second, off_plane=share)
    if told.value > 0 and told.uncertainty > plane.MOST_DOUBT * told.value:
        raise TooWeak(say("This figure may be wrong by more than a fifth. Bring it and the reference into one plane."))
    return Answer(told, "mm", _rests_on(setting), _beware(setting))


def turning(setting: Setting, corner: Point, first: Point, second: Point) -> Answer:
    """The angle at a corner in degrees, with its 95 % interval. Raises TooWeak; a rule carries none."""
    if setting.reference.shape == RULE:
        raise TooWeak(say("A rule gives a length along itself. For an angle lay a card beside it."))
    view = view_of(setting)
    told = plane.angle(view, corner, first, second)
    share = _tilt_share(setting, view, (corner, first, second))
    return Answer(_wider(told, degrees(share)), "°", _rests_on(setting), _beware(setting))


def _wider(told: Told, more: float) -> Told:
    """The value with one more part of its uncertainty, in its own unit."""
    whole = hypot(told.uncertainty, more)
    grown = whole / told.uncertainty if told.uncertainty else 1.0
    low, high = told.value - (told.value - told.low) * grown, told.value + (told.high - told.value) * grown
    return replace(told, uncertainty=whole, low=low, high=high, linear=hypot(told.linear, more))


def _height_share(setting: Setting) -> float:
    """How much of a length may be wrong by height above or below the plane, as a standard uncertainty.

    By similar triangles a thing h nearer is drawn larger by h over the camera's distance. Its limits are taken as
    rectangular. The reference's own thickness stands in it: it lies on what is measured, its upper side shows.
    """
    return hypot(setting.above or 0.0, setting.reference.thick) / setting.distance / sqrt(3)


def _tilt_share(setting: Setting, view: View, points: Sequence[Point]) -> float:
    """How much of a length may be wrong by a tilt that the reference does not show, as a standard uncertainty."""
    shape = setting.reference.shape
    if shape not in (COIN, RULE):
        return 0.0
    tilt = _most_tilt(setting) if shape == COIN else radians(RULE_TILT)
    spots = plane.project(plane.to_plane(view), np.array(points, float))
    reach = float(np.linalg.norm(spots - view.reference.width / 2, axis=1).max())
    near = reach * sin(tilt) / setting.distance
    short = 1 - cos(tilt) if shape == RULE else 0.0  # that of a coin is seen in its ellipse
    return hypot(near, short) / sqrt(3)


def _most_tilt(setting: Setting) -> float:
    """The steepest tilt that the ellipse allows, in radians."""
    ring = ring_through(setting.points)
    return acos(max(min(ring.ratio - 2 * setting.pointing / ring.longer / sqrt(3), 1.0), 0.0))


def _rests_on(setting: Setting) -> tuple[Say, ...]:
    reference = setting.reference
    said = [
        say("Reference: {name}; {source}.", name=reference.name, source=reference.source),
        say("Assumed: its size is within ± {within} mm; no tolerance was read in a source.", within=reference.within),
        say("Each point is taken to be within {px} pixels (one standard deviation).", px=setting.pointing),
    ]
    if reference.shape == RULE:
        said.append(say("Assumed: the camera was square over the rule within {n} degrees.", n=round(RULE_TILT)))
    if setting.camera is None and (setting.above or reference.thick or reference.shape in (COIN, RULE)):
        said.append(say("Assumed: the camera was {mm} mm away.", mm=round(CAMERA_MM)))
    return tuple(said)


def _beware(setting: Setting) -> tuple[Say, ...]:
    if setting.above is None:
        return (say(
            "Nobody said whether it lies in the plane of the reference: the figure holds only if it does. What lies "
            "nearer to the camera looks larger.",
        ),)  # fmt: skip
    if setting.above > 0:
        return (say(
            "Up to {mm} mm out of the plane, at {camera} mm from the camera, may be {share} % of the figure; that is "
            "counted in.", mm=f"{setting.above:g}", camera=round(setting.distance),
            share=f"{100 * setting.above / setting.distance:.1f}",
        ),)  # fmt: skip
    return ()


def in_words(answer: Answer) -> Say:
    """The value with its 95 % interval, no finer than it is known; millimetres also as a fraction of an inch."""
    told, places = answer.told, figures(answer.told.uncertainty)
    value, low, high = (f"{x:.{places}f}" for x in (told.value, told.low, told.high))
    if answer.unit != "mm":
        return say("{value}°; 95 %: {low} to {high}°", value=value, low=low, high=high)
    return say(
        "{value} mm; 95 %: {low} to {high} mm (about {inch} in)",
        value=value, low=low, high=high, inch=inches(told.value, told.uncertainty).replace(" ", "\u00a0"),
    )  # fmt: skip


def figures(uncertainty: float) -> int:
    """How many figures behind the point a value with this standard uncertainty may show."""
    return 2 if uncertainty < 0.05 else 1 if uncertainty < 0.5 else 0


def inches(mm: float, uncertainty: float) -> str:
    """The length as inches and the finest binary fraction that is not finer than its uncertainty; 25.4 mm exactly."""
    parts = next((n for n in (64, 32, 16, 8, 4) if 25.4 / n >= uncertainty), 2)
    count = round(mm / 25.4 * parts)
    whole, rest = divmod(count, parts)
    while rest and rest % 2 == 0:
        rest, parts = rest // 2, parts // 2
    fraction = f"{rest}/{parts}" if rest else ""
    return f"{whole} {fraction}".strip() if whole or not fraction else fraction
