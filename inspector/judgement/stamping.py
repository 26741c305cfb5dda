"""What was seen of the stampings, in words: what was seen, not seen, could not be seen, was not looked at.

Nothing is concluded from it. Figures that stand crooked or uneven left some works so, and a repairer had shop punches.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined, lower_first
from inspector.record.words import HowRead, NumberState, StampSight
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Reading


@dataclass(frozen=True, slots=True)
class Feature:
    """One thing to look for on a stamping: its key in a reading, its name, and what "see" says."""

    id: str
    name: Say
    look_for: Say


_LOOK_FOR = {
    "pad surface": say("the surface of the pad, level with the metal around it"),
    "machining marks": say("marks of machining or casting that run on under the figures"),
    "line-up": say("figures that stand in one line"),
    "spacing": say("figures that stand evenly apart"),
    "depth": say("figures that are equally deep"),
    "shape of figures": say("figures shaped as on other machines of this maker and season"),
    "paint in figures": say("the same paint in the figures as beside them"),
    "overstrike": say("another figure under a figure"),
}  # common practice, no source
FEATURES: tuple[Feature, ...] = tuple(Feature(key, say(key), words) for key, words in _LOOK_FOR.items())
CAUTION = say(
    "What is seen of a stamping does not tell who stamped it: works figures can be crooked, and so can shop ones."
)

_HEADS = {
    StampSight.SEE: say("seen"),
    StampSight.DO_NOT_SEE: say("not seen"),
    StampSight.CANNOT_SEE: say("could not be seen"),
    StampSight.NOT_LOOKED: say("not looked at"),
}
_NAMES = {feature.id: feature.name for feature in FEATURES}


def stamping_said(profile: Profile, record: Record) -> tuple[tuple[str, Say], ...]:
    """Place and sentence, in the profile's order: what was seen of each reading's stamping, and how it was cleaned."""
    rank = {place.id: at for at, place in enumerate(profile.places)}
    readings = sorted(record.readings, key=lambda r: rank.get(r.place, len(rank)))
    return tuple((reading.place, sentence) for reading in readings for sentence in _said(profile, record, reading))


def _said(profile: Profile, record: Record, reading: Reading) -> Iterable[Say]:
    known = profile.place_by_id.get(reading.place)
    name = lower_first(known.name) if known else reading.place
    if not (known and known.cast) and reading.how_read in (HowRead.METAL, HowRead.PHOTOGRAPH):
        looked = _looked(name, reading)
        if looked is not None and (reading.stamping or not (known and known.dates_part)):
            yield looked
    if reading.cleaned:
        yield _cleaned(name, record, reading)


def _looked(name: str, reading: Reading) -> Say | None:
    if reading.state in (NumberState.COVERED, NumberState.NOT_LOOKED):
        return None  # the reading itself says so
    sights = reading.stamping
    looked = {sight for sight in sights.values() if sight is not StampSight.NOT_LOOKED}
    if not looked:
        return say("Stamping of the {place}: not looked at.", place=name)
    if set(_complete(sights).values()) == {StampSight.CANNOT_SEE}:
        return say("Stamping of the {place}: nothing of it could be seen.", place=name)
    heads = [_listed(sight, [key for key, at in _complete(sights).items() if at is sight]) for sight in StampSight]
    parts = joined([head for head in heads if head is not None], "; ")
    if reading.how_read is HowRead.PHOTOGRAPH:
        return say("Stamping of the {place}, on a photograph: {parts}.", place=name, parts=parts)
    return say("Stamping of the {place}: {parts}.", place=name, parts=parts)


def _complete(sights: dict[str, StampSight]) -> dict[str, StampSight]:
    """Every feature in its order, those without an entry as not looked at; then what else was entered."""
    return {feature.id: sights.get(feature.id, StampSight.NOT_LOOKED) for feature in FEATURES} | sights


def _listed(sight: StampSight, keys: list[str]) -> Say | None:
    if not keys:
        return None
    return say("{head}: {names}", head=_HEADS[sight], names=joined([_NAMES.get(key, key) for key in keys]))


def _cleaned(name: str, record: Record, reading: Reading) -> Say:
    leave = reading.leave_of.strip()
    if not leave:
        return say("The {place} was cleaned; with whose leave is not recorded.", place=name)
    return say("The {place} was cleaned with leave of {person}.", place=name, person=record.name_of(leave))
