"""The order of the walk, what is left of it, and the short list for the first minutes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.state import states
from inspector.profile.expected import applies
from inspector.record.words import Seen

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.state import ItemState
    from inspector.profile.items import Item, Station
    from inspector.profile.model import Profile
    from inspector.record.model import Record


@dataclass(frozen=True, slots=True)
class StationLeft:
    """A station with its items in walking order, how many they are and how many are still to be dealt with."""

    id: str
    name: str
    short: str
    total: int
    left: int
    items: tuple[str, ...]


def order(profile: Profile, record: Record) -> tuple[str, ...]:
    """The items in walking order: the record's own where it has one, else the profile's with numbers first.

    Items of other years are left out unless something was found at them; ids the profile does not know
    are passed over, and items the record's order does not name come at its end.
    """
    found = {f.item for f in record.findings}
    year = record.claim.model_year
    stations = sorted(profile.stations, key=lambda s: not _is_for_numbers(s))
    known = [i.id for s in stations for i in s.items if applies(i, year) or i.id in found]
    there = set(known)
    chosen = dict.fromkeys(i for i in record.choices.order if i in there)
    return (*chosen, *(i for i in known if i not in chosen))


def _is_for_numbers(station: Station) -> bool:
    return 2 * sum(i.place is not None for i in station.items) > len(station.items)


def after(order: tuple[str, ...], item: str) -> str | None:
    """The item after this one; None at the end; the first one when the item is not on the walk."""
    return _beside(order, item, 1)


def before(order: tuple[str, ...], item: str) -> str | None:
    """The item before this one; None at the start; the first one when the item is not on the walk."""
    return _beside(order, item, -1)


def _beside(order: tuple[str, ...], item: str, step: int) -> str | None:
    if item not in order:
        return order[0] if order else None
    at = order.index(item) + step
    return order[at] if 0 <= at < len(order) else None


def left_by_station(
    profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None
) -> tuple[StationLeft, ...]:
    """Each station of the walk in walking order. An item is left while nobody marked it or said why not."""
    at = states(profile, record) if known is None else known
    held: dict[str, list[str]] = {}
    for item in order(profile, record):
        held.setdefault(profile.station_of[item].id, []).append(item)
    by_id = {station.id: station for station in profile.stations}
    return tuple(_left(by_id[station], items, at) for station, items in held.items())


def _left(station: Station, items: list[str], at: Mapping[str, ItemState]) -> StationLeft:
    left = sum(is_left(at[i]) for i in items)
    return StationLeft(station.id, station.name, station.short or station.name, len(items), left, tuple(items))


def is_left(state: ItemState) -> bool:
    """True while an item is neither marked nor said to be unseen or not fitted."""
    return state.mark is None and not state.differs and state.seen in {Seen.EXAMINED, Seen.NOT_CHECKED}


def first_ten(profile: Profile, record: Record, minutes: float = 10) -> tuple[str, ...]:
    """The items to look at if there are only these minutes, in walking order.

    What bears most on identity, safety and money together comes first; of equals, identity, then weight.
    """
    walk = order(profile, record)
    year = record.claim.model_year
    items = [item for i in walk if applies(item := profile.item_by_id[i], year)]
    chosen: set[str] = set()
    for item in sorted(items, key=_urgency):
        if item.minutes <= minutes + 1e-9:
            chosen.add(item.id)
            minutes -= item.minutes
    return tuple(i for i in walk if i in chosen)


def _urgency(item: Item) -> tuple[int, bool, float]:
    """Identity and safety bear as much as the most that money can (3); their sum ranks."""
    bears = 3 * item.identity + 3 * (item.safety is not None) + item.money
    return (-bears, not item.identity, -item.weight)
