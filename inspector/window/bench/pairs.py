"""Which photographs stand beside one another on the bench."""

from collections.abc import Sequence

from inspector.record.finding import Photograph
from inspector.record.words import Cleaning


def partners(photograph: Photograph, others: Sequence[Photograph]) -> tuple[Photograph, ...]:
    """The photographs of the same place or item, then all others; before and after cleaning come first."""
    there = [other for other in others if other.id != photograph.id]
    return tuple(sorted(there, key=lambda other: (not is_pair(photograph, other), not same_thing(photograph, other))))


def is_pair(one: Photograph, other: Photograph) -> bool:
    """Whether they show the same thing, one before and one after it was cleaned."""
    after = Cleaning.AFTER.value
    before = {Cleaning.BEFORE.value, Cleaning.NOT.value}
    ways = (one.cleaned, other.cleaned)
    return same_thing(one, other) and after in ways and bool(before & set(ways))


def same_thing(one: Photograph, other: Photograph) -> bool:
    """Whether both belong to the same numbered place or the same item."""
    return bool(one.place and one.place == other.place) or bool(one.item and one.item == other.item)
