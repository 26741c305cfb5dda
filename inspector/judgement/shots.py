"""Photographs to bring home: what is still missing, and why it is wanted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.state import states
from inspector.profile.expected import applies
from inspector.record.words import Cleaning, Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.finding import Photograph
    from inspector.record.model import Record

CAUTION = say("The list is not complete, and it is no evidence: it says what was photographed, not what is right.")
# Common practice, no source: every inspection brings these home.
VIEWS = (
    ("left", say("Left side, square on")),
    ("right", say("Right side, square on")),
    ("front", say("Front, square on")),
    ("rear", say("Rear, square on")),
    ("engine", say("Engine, square on from both sides")),
)


@dataclass(frozen=True, slots=True)
class ShotLine:
    """One photograph to take: its id, name, how to take it, what it belongs to, why it is wanted, and those taken.

    ``missing`` says that none was taken yet.
    """

    id: str
    name: Say
    how: str
    item: str
    place: str
    reason: Say
    photographs: tuple[str, ...]

    @property
    def missing(self) -> bool:
        """Whether no photograph answers it."""
        return not self.photographs


@dataclass(frozen=True, slots=True)
class ShotList:
    """Every shot of the list in order, and what the list must not be taken for."""

    lines: tuple[ShotLine, ...]
    caution: Say

    @property
    def missing(self) -> tuple[ShotLine, ...]:
        """What is still to be photographed."""
        return tuple(line for line in self.lines if line.missing)


@dataclass(frozen=True, slots=True)
class _Taken:
    """Ids of photographs by the shot named, and of those without one by item and by place; all by place."""

    shots: dict[str, list[str]]
    items: dict[str, list[str]]
    places: dict[str, list[str]]
    at_place: dict[str, list[Photograph]]
    at_item: dict[str, list[str]]


def shots(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> ShotList:
    """General views, the profile's shots that the claimed year has, every number, and each doubtful or failed item."""
    at = states(profile, record) if known is None else known
    taken = _taken(record)
    lines = [*_views(profile, taken), *_listed(profile, record, taken), *_numbers(profile, record, taken)]
    lines += _unsure(profile, at, taken, {line.item for line in lines if line.item and not line.place})
    return ShotList(tuple(lines), CAUTION)


def named_shots(profile: Profile, record: Record) -> tuple[ShotLine, ...]:
    """The general views and the profile's shots: those that a photograph can be said to be."""
    nothing = _Taken({}, {}, {}, {}, {})
    return (*_views(profile, nothing), *_listed(profile, record, nothing))


def shows_view(shot: str, key: str) -> bool:
    """Whether the shot of this id is the view of that key: "front" or "front-view", but not "front-brake"."""
    return shot in (key, f"view-{key}", f"{key}-view", f"{key}-side")


def _taken(record: Record) -> _Taken:
    found = _Taken({}, {}, {}, {}, {})
    for one in record.photographs:
        if one.shot:
            found.shots.setdefault(one.shot, []).append(one.id)
        if one.item:
            found.at_item.setdefault(one.item, []).append(one.id)
            if not one.shot:
                found.items.setdefault(one.item, []).append(one.id)
        if one.place:
            found.at_place.setdefault(one.place, []).append(one)
            if not one.shot:
                found.places.setdefault(one.place, []).append(one.id)
    return found


def _views(profile: Profile, taken: _Taken) -> Iterable[ShotLine]:
    """The four sides and the engine, as far as the profile does not list them itself."""
    for key, name in VIEWS:
        if not any(shows_view(shot.id, key) for shot in profile.shots):
            id_ = f"view-{key}"
            found = tuple(taken.shots.get(id_, ()))
            yield ShotLine(id_, name, "", "", "", say("Every machine from all sides, and its engine."), found)


def _listed(profile: Profile, record: Record, taken: _Taken) -> Iterable[ShotLine]:
    """The profile's shots; where several show the same, the first has the photographs that name none."""
    year, had_items, had_places = record.claim.model_year, set[str](), set[str]()
    for shot in profile.shots:
        item = profile.item_by_id.get(shot.item or "")
        if item is not None and not applies(item, year):
            continue
        found = list(taken.shots.get(shot.id, ()))
        if shot.place and shot.place not in had_places:
            found += taken.places.get(shot.place, [])
        if shot.item and shot.item not in had_items:
            found += taken.items.get(shot.item, [])
        had_items.add(shot.item or "")
        had_places.add(shot.place or "")
        reason = say("On the list of the profile.")
        ids = tuple(dict.fromkeys(found))
        yield ShotLine(shot.id, say(shot.name), shot.how, shot.item or "", shot.place or "", reason, ids)


def _numbers(profile: Profile, record: Record, taken: _Taken) -> Iterable[ShotLine]:
    """Each numbered place that no shot of the profile names, and the other half of a pair round cleaning."""
    listed = {shot.place for shot in profile.shots}
    for place in profile.places:
        here = taken.at_place.get(place.id, [])
        name = say("{place}, the whole number", place=place.name)
        if place.id not in listed:
            reason = say("Every number is photographed where it stands.")
            ids = tuple(p.id for p in here)
            yield ShotLine(f"number-{place.id}", name, place.how_to_read, "", place.id, reason, ids)
        yield from _pair(place.id, place.name, here, record)


def _pair(place: str, name: str, here: list[Photograph], record: Record) -> Iterable[ShotLine]:
    wiped = any(r.cleaned for r in record.readings if r.place == place)
    halves = {half: tuple(p.id for p in here if p.cleaned == half) for half in (Cleaning.BEFORE, Cleaning.AFTER)}
    if not wiped and not any(halves.values()):
        return
    reason = say("The place was cleaned: the pair before and after is kept together.")
    for half, found in halves.items():
        words = say("{place}, {half}", place=name, half=say(half.value))
        yield ShotLine(f"{half.value.split()[0]}-{place}", words, "", "", place, reason, found)


def _unsure(
    profile: Profile, at: Mapping[str, ItemState], taken: _Taken, listed: set[str]
) -> Iterable[ShotLine]:  # fmt: skip
    for item in profile.items():
        state = at.get(item.id)
        if item.id in listed or state is None or state.sign not in (Mark.DOUBT.value, Mark.FAIL.value):
            continue
        reason = say("Marked {mark}.", mark=say(state.sign))
        found = tuple(taken.at_item.get(item.id, ()))
        yield ShotLine(f"item-{item.id}", say(item.name), "", item.id, "", reason, found)
