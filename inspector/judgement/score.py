"""How much was seen and how much of it is right, with the lowest and highest it could be."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, fsum
from typing import TYPE_CHECKING

from inspector.judgement.movers import movers
from inspector.judgement.score_reasons import reasons
from inspector.judgement.state import states
from inspector.judgement.tally import Weighed, tally

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.movers import Mover
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.texts import Say


def percent_seen(share: float) -> int:
    """Per cent examined as a whole number, rounded down so that none of it is claimed too early."""
    return min(100, max(0, floor(share + 1e-9)))


@dataclass(frozen=True, slots=True)
class PartScore:
    """One station or assembly: percent seen by weight, percent right of that (None: nothing seen), and its range."""

    id: str
    name: str
    seen: float
    value: float | None
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Score:
    """Coverage and correctness in percent; ``value`` is None when nothing was seen, and stands with its range."""

    seen_percent: float
    left_percent: float
    value: float | None
    low: float
    high: float
    policy: str
    by_station: tuple[PartScore, ...]
    by_assembly: tuple[PartScore, ...]
    movers: tuple[Mover, ...]
    reasons: tuple[Say, ...]
    inputs: tuple[Weighed, ...]


def score(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> Score:
    """The score of the record; coverage is the weight counted over all weight in the sum.

    Correctness is the weighted credit over what was counted; the range lets every doubt and everything
    unseen fall the worst and the best way.
    """
    at = states(profile, record) if known is None else known
    inputs = tuple(_weighed(profile, state) for state in at.values())
    whole = tally(inputs)
    return Score(
        whole.seen,
        100 - whole.seen,
        whole.value,
        whole.low,
        whole.high,
        record.choices.pattern_parts.value,
        _by_station(profile, inputs),
        _by_assembly(profile, inputs),
        movers(profile, record, at),
        reasons(profile, record, at),
        inputs,
    )


def _weighed(profile: Profile, state: ItemState) -> Weighed:
    weight = profile.item_by_id[state.item].weight if state.in_sum else 0.0
    return Weighed(state.item, weight, state.credit, state.low, state.high)


def _by_station(profile: Profile, inputs: tuple[Weighed, ...]) -> tuple[PartScore, ...]:
    names = {station.id: station.name for station in profile.stations}
    keyed = [(profile.station_of[w.item].id, w) for w in inputs]
    return tuple(_part(key, names[key], own) for key, own in _grouped(keyed).items())


def _by_assembly(profile: Profile, inputs: tuple[Weighed, ...]) -> tuple[PartScore, ...]:
    keyed = [(profile.item_by_id[w.item].assembly.value, w) for w in inputs]
    return tuple(_part(key, key, own) for key, own in _grouped(keyed).items())


def _grouped(keyed: Iterable[tuple[str, Weighed]]) -> dict[str, list[Weighed]]:
    groups: dict[str, list[Weighed]] = {}
    for key, weighed in keyed:
        groups.setdefault(key, []).append(weighed)
    return {key: own for key, own in groups.items() if fsum(w.weight for w in own) > 0}


def _part(key: str, name: str, own: list[Weighed]) -> PartScore:
    sums = tally(own)
    return PartScore(key, name, sums.seen, sums.value, sums.low, sums.high)
