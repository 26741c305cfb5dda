"""What each faulted or missing item can be put right with, what is counted, and what is to be decided first."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from inspector.judgement.observers import by_item
from inspector.judgement.offered import offered
from inspector.judgement.reckoned import Faulted
from inspector.judgement.safety import is_alarming
from inspector.judgement.wording import joined, name_of
from inspector.record.words import Conclusion, Mark
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.exchange import Exchange
    from inspector.judgement.reckoned import Way
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

IN_DOUBT = say("In doubt: settle it first, or choose what is to be done.")
CHOSEN = say("Chosen by you.")
ONLY_WAY = say("The only way offered.")
DOUBT_WITHOUT_WAY = say("In doubt, and no way to put it right is offered.")
LEFT = say("Nothing is to be done here, as you decided.")
NO_WAY = say("Neither the profile nor you offer a way to put it right.")
RULED_OUT = say("Ruled out by what was chosen elsewhere.")


def remedies(profile: Profile, record: Record, known: Mapping[str, ItemState], at: Exchange) -> tuple[Faulted, ...]:
    """Every item that is not as it should be, or at which the user chose a way, in the order of the walk.

    One way with no choice to make is counted; where there is a choice, or the fault is in doubt, nothing is until the
    user decides; a way that waits for another decision is counted after that.
    """
    ways, found = offered(profile, record, at), by_item(record)
    picked = {w.item for those in ways.values() for w in those if w.choice}
    chosen = [w for those in ways.values() for w in those if w.choice]
    faults = []
    for item in dict.fromkeys((*known, *ways)):
        firm = _firm(profile, item, found.get(item, ()), known.get(item))
        if firm is not None or item in picked:
            sign = known[item].sign if item in known else ""
            faults.append(_decided(item, name_of(profile, item), sign, ways.get(item, ()), chosen, firm is not False))
    return _settled(tuple(faults))


def rules_out(one: Way, other: Way) -> bool:
    """True where choosing the one rules the other out, whichever of them says so."""
    return one.key != other.key and (other.cost in one.excludes or one.cost in other.excludes)


def _firm(
    profile: Profile, item: str, findings: tuple[Finding, ...], state: ItemState | None
) -> bool | None:
    """Whether it is firm that the item is not as it should be; None where nothing says so."""
    if state is None:
        return None
    missing = any(c.what is Conclusion.MISSING for f in findings for c in f.conclusions)
    if not state.differs and (state.mark is Mark.FAIL or missing or any(f.unsafe for f in findings)):
        return True
    bad = missing or any(f.mark in {Mark.DOUBT, Mark.FAIL} for f in findings)
    if bad or state.standard_absent:
        return False
    part = profile.item_by_id.get(item)
    alarming = any(is_alarming(f, safety_item=bool(part and part.safety)) for f in findings)
    return True if alarming else None


def _decided(
    item: str, name: str, sign: str, ways: tuple[Way, ...], chosen: Iterable[Way], firm: bool
) -> Faulted:
    own = tuple(w for w in ways if w.choice)
    free = tuple(w for w in ways if w.choice is None and not any(rules_out(c, w) for c in chosen))
    if own:
        return Faulted(item, name, sign, ways, own, None, CHOSEN)
    if not ways:
        return Faulted(item, name, sign, ways, (), None, NO_WAY if firm else DOUBT_WITHOUT_WAY)
    if not free:
        ruled = any(w.choice is None for w in ways)
        return Faulted(item, name, sign, ways, (), None, RULED_OUT if ruled else LEFT)
    if not firm:
        return Faulted(item, name, sign, ways, (), IN_DOUBT, IN_DOUBT)
    if len(free) > 1:
        which = joined([w.name for w in free], "; ")
        ask = say("To be decided first: {which}.", which=which)
        return Faulted(item, name, sign, ways, (), ask, ask)
    return Faulted(item, name, sign, ways, free, None, ONLY_WAY)


def _settled(faults: tuple[Faulted, ...]) -> tuple[Faulted, ...]:
    """The same, with ways taken back that contradict each other or wait for a decision elsewhere."""
    counted = [w for fault in faults for w in fault.counted]
    every = {w.cost: w for fault in faults for w in fault.ways}
    named = {cost for w in counted for cost in w.excludes}
    excluding = [w for w in counted if w.excludes or w.cost in named]
    return tuple(_waiting(fault, counted, excluding, every) for fault in faults)


def _waiting(fault: Faulted, counted: list[Way], excluding: list[Way], every: Mapping[str, Way]) -> Faulted:
    for way in fault.counted:
        against = [other.name for other in excluding if rules_out(way, other)]
        if against:
            ask = say("{one} and {other} rule each other out: decide for one.", one=way.name, other=against[0])
            return replace(fault, counted=(), to_decide=ask, reason=ask)
        first = [every[a].name for a in way.after if a in every and not decided(every[a], counted)]
        if first:
            ask = say("{one} waits for a decision about: {first}.", one=way.name, first=joined(first, "; "))
            return replace(fault, counted=(), to_decide=ask, reason=ask)
    return fault


def decided(way: Way, counted: Iterable[Way]) -> bool:
    """True where the way is taken, declined, or ruled out by one that is taken."""
    return way.choice is False or any(c.key == way.key or rules_out(c, way) for c in counted)
