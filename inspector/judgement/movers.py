"""The items whose settling would move the score most, and what to do about each."""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum
from typing import TYPE_CHECKING

from inspector.judgement.proposal import right_forms
from inspector.judgement.wording import first_sentence
from inspector.record.words import Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.state import ItemState
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.model import Record

MOST = 8


@dataclass(frozen=True, slots=True)
class Mover:
    """How far the score could fall and rise, in points of a hundred (both 0 or more), if the item were settled."""

    item: str
    name: str
    sign: str
    down: float
    up: float
    advice: Say


def movers(profile: Profile, record: Record, at: Mapping[str, ItemState]) -> tuple[Mover, ...]:
    """The eight items that could move the score most, greatest first; none while nothing was seen."""
    weights = {i: profile.item_by_id[i].weight for i, state in at.items() if state.in_sum}
    counted = fsum(weights[i] for i in weights if at[i].credit is not None)
    if counted <= 0:
        return ()
    earned = fsum(w * credit for i, w in weights.items() if (credit := at[i].credit) is not None)
    found = [(i, *_swing(at[i], w, earned, counted)) for i, w in weights.items()]
    moving = sorted((m for m in found if m[1] + m[2] > 1e-9), key=lambda m: -(m[1] + m[2]))
    return tuple(_mover(profile, record, at[i], down, up) for i, down, up in moving[:MOST])


def _swing(state: ItemState, weight: float, earned: float, counted: float) -> tuple[float, float]:
    """How far the value falls and rises when this one item is settled worst and best."""
    value = earned / counted
    rest, whole = earned, counted + weight
    if state.credit is not None:
        rest, whole = earned - weight * state.credit, counted
    worst, best = ((rest + weight * share) / whole for share in (state.low, _best(state)))
    return max(0.0, 100 * (value - worst)), max(0.0, 100 * (best - value))


def _best(state: ItemState) -> float:
    # What is known not to be right can still be put right.
    return 1.0 if state.credit is not None and state.low == state.high else state.high


def _mover(profile: Profile, record: Record, state: ItemState, down: float, up: float) -> Mover:
    item = profile.item_by_id[state.item]
    return Mover(item.id, item.name, state.sign, down, up, advice(profile, record, item, state))


def advice(profile: Profile, record: Record, item: Item, state: ItemState) -> Say:
    """What to do next about the item: put right, settle, or look."""
    if state.mark is Mark.DOUBT or state.differs:
        return _to_settle(state)
    if state.mark is not None:
        return _to_put_right(item, record.claim.model_year)
    station = profile.station_of[item.id]
    return say("Look at {station}: {how}.", station=station.name, how=first_sentence(item.how))


def _to_settle(state: ItemState) -> Say:
    step = next((f.next_step for f in state.findings if f.next_step.strip()), "")
    return say("Next step: {step}.", step=first_sentence(step)) if step else say("No next step recorded.")


def _to_put_right(item: Item, year: int | None) -> Say:
    forms = "; ".join(right_forms(item, year))
    if not forms:
        return say("The profile does not say what would be right.")
    if year is None:
        return say("Right for some year: {forms}.", forms=forms)
    return say("Right for {year}: {forms}.", year=year, forms=forms)
