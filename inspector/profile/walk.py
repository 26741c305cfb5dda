"""Every part of a profile with its path, as the file names it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from inspector.profile.base import Part
from inspector.profile.items import Cost, Item
from inspector.profile.model import Profile
from inspector.profile.problem import Where


def parts(part: Part, where: Where = ()) -> Iterator[tuple[Where, Part]]:
    """The part itself and everything below it, in the order of the schema."""
    yield where, part
    for name, field in type(part).model_fields.items():
        yield from _held(getattr(part, name), (*where, field.alias or name))


def _held(value: Any, where: Where) -> Iterator[tuple[Where, Part]]:
    if isinstance(value, Part):
        yield from parts(value, where)
    elif isinstance(value, tuple):
        for index, one in enumerate(value):
            if isinstance(one, Part):
                yield from parts(one, (*where, index))


def items(profile: Profile) -> Iterator[tuple[Where, Item]]:
    """Every item with its path."""
    for s, station in enumerate(profile.stations):
        for i, item in enumerate(station.items):
            yield ("station", s, "item", i), item


def costs(profile: Profile) -> Iterator[tuple[Where, Cost]]:
    """Every remedy with its path."""
    for where, item in items(profile):
        for c, cost in enumerate(item.costs):
            yield (*where, "cost", c), cost
