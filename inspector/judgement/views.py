"""The views of a machine that an insurer asks for: what photographs there are of each, and what is missing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.shots import VIEWS, shots, shows_view
from inspector.profile.words import Assembly
from inspector.record.words import NumberState
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.shots import ShotLine
    from inspector.profile.model import Profile
    from inspector.record.model import Record

ENGINE_PARTS = say("Engine, parts of it")
ALWAYS = (Assembly.FRAME, Assembly.ENGINE)


@dataclass(frozen=True, slots=True)
class AskedView:
    """One view by name, with the ids of the photographs that show it in the order brought in."""

    name: Say
    photographs: tuple[str, ...]

    @property
    def missing(self) -> bool:
        """Whether no photograph shows it."""
        return not self.photographs


def asked_views(profile: Profile, record: Record) -> tuple[AskedView, ...]:
    """Both sides, front, rear, engine, then the numbers of the profile's places (common practice, no source)."""
    lines = shots(profile, record).lines
    views = (AskedView(name, _shown(key, lines)) for key, name in VIEWS)
    return (*views, *_engine_parts(profile, record), *_numbers(profile, record))


def _shown(key: str, lines: tuple[ShotLine, ...]) -> tuple[str, ...]:
    """What answers a shot of that view; a number alone, or one part, is no view."""
    found = (line.photographs for line in lines if shows_view(line.id, key))
    return tuple(dict.fromkeys(one for ids in found for one in ids))


def _engine_parts(profile: Profile, record: Record) -> tuple[AskedView, ...]:
    """Photographs of single parts of the engine, where there are any."""
    own = {item.id for item in profile.items() if item.assembly is Assembly.ENGINE and item.place is None}
    shown = tuple(p.id for p in record.photographs if p.item in own and not p.place)
    return (AskedView(ENGINE_PARTS, shown),) if shown else ()


def _numbers(profile: Profile, record: Record) -> Iterator[AskedView]:
    """The number of each place that was read or photographed, and of frame and engine in any case."""
    read = {reading.place for reading in record.readings if reading.state is NumberState.READ}
    first = {next((p.id for p in profile.places if p.assembly is one), "") for one in ALWAYS}
    at_item = {item.id: item.place for item in profile.items() if item.place}
    for place in profile.places:
        shown = tuple(p.id for p in record.photographs if place.id in (p.place, at_item.get(p.item)))
        if shown or place.id in read or place.id in first:
            yield AskedView(say("Number: {place}", place=place.name), shown)
