"""Sentences about a plan: how it was chosen, and what it leaves out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.jobs import needed
from inspector.judgement.remedies import DOUBT_WITHOUT_WAY, IN_DOUBT, NO_WAY
from inspector.judgement.wording import joined
from inspector.profile.words import PartKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from inspector.judgement.reckoned import Faulted, Way
    from inspector.profile.model import Profile
    from inspector.record.model import Record

OF_BUDGET = say("The best choice within the budget, by likely figures: no other choice gains more for it.")
OF_ALL = say("No budget entered: everything that gains safety or correctness, in the cheapest way.")
OF_WORTH = say("Everything whose gain in correctness is worth more than it costs, by what you say a point is worth.")
SAFETY_FIRST = say("Safety comes before all: as many unsafe items as can be are put right before any correctness.")


def not_in_it(
    profile: Profile, faults: Sequence[Faulted], ways: Sequence[Way], record: Record, waiting: Sequence[str] = ()
) -> tuple[Say, ...]:
    """What the plan could not reckon with, one sentence for each reason."""
    doubtful = [f.name for f in faults if f.reason in {IN_DOUBT, DOUBT_WITHOUT_WAY}]
    without = [f.name for f in faults if f.reason is NO_WAY]
    unpriced = [w.name for f in faults for w in f.ways
                if w.parts is None and w.choice is not False and w.kind is not PartKind.LEAVE]  # fmt: skip
    no_hours = [w.name for w in ways if w.hours is None and w.kind is not PartKind.LEAVE]
    no_hours += [job.name for job in needed(profile, ways) if job.hours is None]
    told: list[Say] = []
    if doubtful:
        told.append(say("In doubt, and not in the plan until settled or chosen: {names}.", names=_names(doubtful)))
    if unpriced:
        told.append(say("Without a price, and not in the plan: {names}.", names=_names(unpriced)))
    if waiting:
        told.append(say("Waiting for a decision that is yours, and not in the plan: {names}.", names=_names(waiting)))
    if without:
        told.append(say("No way to put right is known: {names}.", names=_names(without)))
    if no_hours:
        told.append(say("Labour not estimated, so dearer than reckoned here: {names}.", names=_names(no_hours)))
    if record.money.labour_rate is None:
        told.append(say("No labour rate entered: the plan weighs parts only."))
    return tuple(told)


def way_words(way: Way, parts: Decimal, rate: Decimal | None) -> Say:
    """The item, and what of these parts and of labour is in the line of one way."""
    item = way.item_name
    if way.hours is None and way.kind is not PartKind.LEAVE:
        return say("{item}: parts {parts}, labour not estimated", item=item, parts=parts)
    if rate is None or way.hours is None or not way.hours[1]:
        return say("{item}: parts {parts}", item=item, parts=parts)
    return say("{item}: parts {parts}, {hours} hours at {rate}", item=item, parts=parts, hours=way.hours[1], rate=rate)


def _names(names: Sequence[str]) -> Say:
    return joined(list(names), "; ")
