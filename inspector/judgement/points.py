"""The profile's points scheme, if chosen: exact quarter points, each loss traced to a finding."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.counting import Pattern, pattern
from inspector.judgement.observers import counted_mark
from inspector.judgement.state import states
from inspector.record.words import Mark, PatternPolicy
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from inspector.judgement.state import ItemState
    from inspector.profile.items import Heading, Item, PointsScheme
    from inspector.profile.model import Profile
    from inspector.record.model import Record

    Test = Callable[[Item, ItemState], bool]

QUARTER = Decimal("0.25")


@dataclass(frozen=True, slots=True)
class Deduction:
    """Points lost, or that may be lost, under one heading because of one item."""

    heading: str
    name: str
    item: str
    lost: Decimal
    reason: Say


@dataclass(frozen=True, slots=True)
class Points:
    """The total after what is lost, the lowest it can be, and the scheme's word for that lowest total ("" below all).

    ``may_lose`` lists what doubts and everything unseen could still cost.
    """

    total: Decimal
    full: Decimal
    deductions: tuple[Deduction, ...]
    threshold: str
    reasons: tuple[Say, ...]
    lowest: Decimal
    may_lose: tuple[Deduction, ...]


def most(heading: Heading) -> Decimal:
    """The most points that can be lost under the heading."""
    return heading.points if heading.most_lost is None else heading.most_lost


def total(headings: Sequence[Heading], losses: Mapping[str, Decimal], step: Decimal = QUARTER) -> Decimal:
    """All points of the headings less the losses by heading id, none above its heading's most.

    Raises ValueError for a heading that is not there and for a loss that is negative or not in whole steps.
    """
    most_by_id = {heading.id: most(heading) for heading in headings}
    for heading, lost in losses.items():
        if heading not in most_by_id:
            raise ValueError(f'the points scheme has no heading "{heading}"')
        if lost < 0 or lost % step:
            raise ValueError(f'the loss under "{heading}" is {lost}; it must be in steps of {step}, not below zero')
    lost_all = sum((min(lost, most_by_id[h]) for h, lost in losses.items()), Decimal(0))
    return full(headings) - lost_all


def full(headings: Sequence[Heading]) -> Decimal:
    """All points of the headings together."""
    return sum((heading.points for heading in headings), Decimal(0))


def threshold(scheme: PointsScheme, points: Decimal) -> str:
    """The word of the highest threshold reached by these points; "" below all of them."""
    reached = [t for t in scheme.thresholds if points >= t.points]
    return max(reached, key=lambda t: t.points).word if reached else ""


def points(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> Points | None:
    """The points of the record; None when the profile has no scheme or the user has not chosen it.

    A fail loses the most its heading can lose, and items under one heading share that most. A doubt,
    a difference, a pattern part under penalty and everything unseen lose nothing yet but may.
    A heading without any item was never looked at, and may lose its most.
    """
    scheme = profile.points
    if scheme is None or not record.choices.points:
        return None
    at = states(profile, record) if known is None else known
    lost = tuple(_deductions(profile, scheme, at, _is_lost))
    gone = {d.heading for d in lost}
    open_ones = (*_deductions(profile, scheme, at, _may_lose(record)), *_without_items(profile, scheme))
    may = tuple(d for d in open_ones if d.heading not in gone)
    lost_total = total(scheme.headings, _by_heading(lost), scheme.step)
    lowest = total(scheme.headings, _by_heading((*lost, *may)), scheme.step)
    word = threshold(scheme, lowest)
    why = _reasons(scheme, at, lowest, may)
    return Points(lost_total, full(scheme.headings), lost, word, why, lowest, may)


def _by_heading(deductions: Iterable[Deduction]) -> dict[str, Decimal]:
    sums: dict[str, Decimal] = {}
    for one in deductions:
        sums[one.heading] = sums.get(one.heading, Decimal(0)) + one.lost
    return sums


def _is_lost(item: Item, state: ItemState) -> bool:
    return state.mark is Mark.FAIL


def _may_lose(record: Record) -> Test:
    penalised = record.choices.pattern_parts is PatternPolicy.PENALISED

    def test(item: Item, state: ItemState) -> bool:
        if state.mark is Mark.PASS:
            taken = (pattern(item, f) for f in state.findings if counted_mark(f))
            return penalised and any(t is not Pattern.NO for t in taken)
        return state.mark is not Mark.FAIL and state.in_sum

    return test


def _deductions(profile: Profile, scheme: PointsScheme, at: Mapping[str, ItemState], test: Test) -> Iterable[Deduction]:
    """One deduction an item that meets the test; the first under a heading takes its most, the rest nothing more."""
    by_id = {heading.id: heading for heading in scheme.headings}
    taken: set[str] = set()
    for state in at.values():
        item = profile.item_by_id[state.item]
        heading = by_id.get(item.heading or "")
        if heading is None or not test(item, state):
            continue
        lost = Decimal(0) if heading.id in taken else most(heading)
        taken.add(heading.id)
        yield Deduction(heading.id, heading.name, item.id, lost, _why(item, state, lost))


def _without_items(profile: Profile, scheme: PointsScheme) -> Iterable[Deduction]:
    """The headings nothing in the profile stands under: their points were never looked for."""
    used = {item.heading for item in profile.items()}
    for heading in scheme.headings:
        if heading.id not in used:
            why = say("{heading}: no item of this profile stands under it.", heading=heading.name)
            yield Deduction(heading.id, heading.name, "", most(heading), why)


def _why(item: Item, state: ItemState, lost: Decimal) -> Say:
    sign = say("pattern part") if state.mark is Mark.PASS else say(state.sign)
    if state.differs and state.mark is None:
        sign = say("two people differ")
    if lost:
        return say("{item}: {sign}.", item=item.name, sign=sign)
    return say("{item}: {sign}; the heading has no more to lose.", item=item.name, sign=sign)


def _reasons(
    scheme: PointsScheme, at: Mapping[str, ItemState], lowest: Decimal, may: tuple[Deduction, ...]
) -> tuple[Say, ...]:
    rule = say("A fail loses all that its heading can lose; items under one heading share it.")
    if not may:
        return (rule,)
    unseen = sum(not d.item or at[d.item].mark is None for d in may)
    still = say(
        "May still lose points: {count}, of these not seen or not settled: {unseen}. The total could fall to {lowest}.",
        count=len(may),
        unseen=unseen,
        lowest=lowest,
    )
    return (rule, still, say("The word of a threshold is given only for that lowest total."))
