"""How far two serials lie apart, and how far they usually do."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise, product
from math import prod
from typing import TYPE_CHECKING

from inspector.judgement.comparing import Condition
from inspector.judgement.pattern import DIGITS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.sides import Spot
    from inspector.profile.numbers import Relation

MOST = 2_000  # pairs of numbers that are looked at one by one


@dataclass(frozen=True, slots=True)
class Gap:
    """Two serials apart by ``gap`` (second less first) where ``expected`` is usual."""

    gap: int
    expected: int

    @property
    def off(self) -> int:
        """How far the gap is from what is expected there."""
        return abs(self.gap - self.expected)


@dataclass(frozen=True, slots=True)
class Spread:
    """The pairs that a doubtful reading leaves: how many in all, how many as usual, and what that takes.

    ``conditions`` is None where no list of single figures says it.
    """

    count: int
    usual: int
    gaps: tuple[Gap, ...]
    conditions: tuple[Condition, ...] | None


@dataclass(frozen=True, slots=True)
class Reach:
    """The least and most gap of serials too open to pair one by one, and how far from the expected gap they reach."""

    least: int
    most: int
    below: int
    above: int

    def within(self, usual: int) -> bool | None:
        """True where every pair is as usual, False where none can be, None where it is open."""
        if -usual <= self.below and self.above <= usual:
            return True
        return False if self.above < -usual or self.below > usual else None


def expected_gap(relation: Relation, serial: int) -> int:
    """The difference expected at this serial of the first place: in proportion between points, else the nearest's."""
    points = relation.gap_points
    if not points:
        return 0
    if serial <= points[0][0]:
        return points[0][1]
    for (low, at_low), (high, at_high) in pairwise(points):
        if serial <= high:
            return round(at_low + (at_high - at_low) * (serial - low) / (high - low))
    return points[-1][1]


def gap_of(relation: Relation, first: int, second: int) -> Gap:
    """The gap of two serials beside the one expected there."""
    return Gap(second - first, expected_gap(relation, first))


def spread(relation: Relation, one: Sequence[Spot], other: Sequence[Spot]) -> Spread | None:
    """All pairs of numbers that the two serials can be; None where a figure is no digit or too many are open."""
    choices = [_digits(spot) for spot in (*one, *other)]
    count = prod(len(c) for c in choices)
    if not one or not other or not count or count > MOST:
        return None
    split, fits, gaps = len(one), [], []
    for figures in product(*choices):
        gap = gap_of(relation, _number(figures[:split]), _number(figures[split:]))
        gaps.append(gap)
        if relation.usual_gap is not None and gap.off <= relation.usual_gap:
            fits.append(figures)
    return Spread(count, len(fits), tuple(gaps), _conditions(one, other, choices, fits))


def reach(relation: Relation, one: Sequence[Spot], other: Sequence[Spot]) -> Reach | None:
    """How far apart the two serials can lie; None where a figure is no digit."""
    first, second = [_digits(spot) for spot in one], [_digits(spot) for spot in other]
    if not first or not second or not all((*first, *second)):
        return None
    low, high = _number([c[0] for c in first]), _number([c[-1] for c in first])
    least, most = _number([c[0] for c in second]) - high, _number([c[-1] for c in second]) - low
    between = [gap for serial, gap in relation.gap_points if low <= serial <= high]
    expected = (expected_gap(relation, low), expected_gap(relation, high), *between)
    return Reach(least, most, least - max(expected), most - min(expected))


def _digits(spot: Spot) -> tuple[str, ...]:
    can = spot[0]
    return tuple(sorted(DIGITS if can is None else can & DIGITS))


def _number(figures: Sequence[str]) -> int:
    return int("".join(figures))


def _conditions(
    one: Sequence[Spot], other: Sequence[Spot], choices: Sequence[tuple[str, ...]], fits: Sequence[tuple[str, ...]]
) -> tuple[Condition, ...] | None:
    """What single figures must be for the pairs that fit, where these are all combinations of such figures."""
    left = [tuple(sorted(set(column))) for column in zip(*fits, strict=True)]
    if not left or prod(len(c) for c in left) != len(fits):
        return None
    spots = [(side, can, at) for side, half in enumerate((one, other)) for can, at in half]
    return tuple(
        Condition(((side, at),), some, ((side, at),) if can is None else ())
        for (side, can, at), all_, some in zip(spots, choices, left, strict=True)
        if len(some) < len(all_)
    )
