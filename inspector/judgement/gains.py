"""What each way of putting right does to the score, under the user's choice about pattern parts."""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum
from typing import TYPE_CHECKING

from inspector.judgement.counting import PATTERN_CAP
from inspector.profile.words import Need, PartKind
from inspector.record.words import Conclusion, PatternPolicy
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.reckoned import Faulted, Way
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile

WRONG_PART = frozenset(
    {
        Conclusion.WRONG_YEAR,
        Conclusion.OTHER_MODEL,
        Conclusion.OTHER_MAKER,
        Conclusion.WRONG_SIDE,
        Conclusion.PATTERN,
        Conclusion.ADAPTED,
        Conclusion.MISSING,
    }
)
REPLACES = frozenset({PartKind.ORIGINAL, PartKind.USED, PartKind.PATTERN})
HOW_RECKONED = (
    say("An original or used part, and a repair, make an item count as right; leaving it changes nothing."),
    say("A repair does not make a wrong part right where another part is offered."),
    say("Where an item has ways for the claim, only those raise its correctness."),
)
BY_POLICY = {
    PatternPolicy.PENALISED: say("A pattern part counts half, as you chose."),
    PatternPolicy.NEUTRAL: say("A pattern part leaves the item out of the sum, as you chose."),
    PatternPolicy.ACCEPTED: say("A pattern part counts as right, as you chose."),
}


@dataclass(frozen=True, slots=True)
class Standing:
    """Weight times credit, and weight, of all that is counted; the score is a hundred times their quotient."""

    earned: float
    counted: float

    @property
    def score(self) -> float | None:
        """The score in percent; None where nothing is counted."""
        return min(100.0, 100 * self.earned / self.counted) if self.counted > 0 else None


@dataclass(frozen=True, slots=True)
class Effect:
    """What taking the way adds to what is earned and to what is counted; ``moves`` False where it adds nothing."""

    earned: float = 0.0
    counted: float = 0.0

    @property
    def moves(self) -> bool:
        """True where the way changes the score's sums."""
        return bool(self.earned or self.counted)


def standing(profile: Profile, known: Mapping[str, ItemState]) -> Standing:
    """The sums behind the score as it is."""
    now = [_now(profile, state) for state in known.values()]
    return Standing(fsum(earned for earned, _ in now), fsum(counted for _, counted in now))


def effects(
    profile: Profile, known: Mapping[str, ItemState], faults: Iterable[Faulted], policy: PatternPolicy
) -> dict[str, Effect]:
    """The effect of every way by its key; one item takes the effect of the best of its ways only."""
    return {
        way.key: _effect(profile, known[fault.item], fault, way, policy) if fault.item in known else Effect()
        for fault in faults
        for way in fault.ways
    }


def after(base: Standing, ways: Iterable[Way], effect: Mapping[str, Effect]) -> Standing:
    """The sums once these ways are taken, each item with the best of its ways."""
    ratio = base.earned / base.counted if base.counted > 0 else 0.0
    best: dict[str, Effect] = {}
    for way in ways:
        one = effect[way.key]
        held = best.get(way.item)
        if one.moves and (held is None or _lifts(one, ratio) > _lifts(held, ratio)):
            best[way.item] = one
    earned = fsum([base.earned, *(one.earned for one in best.values())])
    return Standing(earned, fsum([base.counted, *(one.counted for one in best.values())]))


def _lifts(one: Effect, ratio: float) -> float:
    return one.earned - ratio * one.counted


def _now(profile: Profile, state: ItemState) -> tuple[float, float]:
    if not state.in_sum or state.credit is None:
        return 0.0, 0.0
    weight = profile.item_by_id[state.item].weight
    return weight * state.credit, weight


def _effect(profile: Profile, state: ItemState, fault: Faulted, way: Way, policy: PatternPolicy) -> Effect:
    if not _serves(state, fault, way):
        return Effect()
    weight = profile.item_by_id[state.item].weight
    earned, counted = _now(profile, state)
    if way.kind is PartKind.PATTERN and policy is PatternPolicy.NEUTRAL:
        return Effect(-earned, -counted)
    share = PATTERN_CAP if way.kind is PartKind.PATTERN and policy is PatternPolicy.PENALISED else 1.0
    return Effect(max(earned, weight * share) - earned, weight - counted)


def _serves(state: ItemState, fault: Faulted, way: Way) -> bool:
    """True where the way is one that makes this item right."""
    if way.kind is PartKind.LEAVE:
        return False
    if way.need is not Need.CLAIM and any(
        w.need is Need.CLAIM and w.kind is not PartKind.LEAVE for w in fault.ways
    ):
        return False
    wrong = any(c.what in WRONG_PART for f in state.findings for c in f.conclusions)
    return not (way.kind is PartKind.REPAIR and wrong and any(w.kind in REPLACES for w in fault.ways))
