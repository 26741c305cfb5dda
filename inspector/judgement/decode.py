"""What a number says by the profile's rules: every possibility that the figures as read allow, with its sources."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.hits import Hit, NumberField, hits_of
from inspector.judgement.matching import ready
from inspector.judgement.pattern import pattern_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.judgement.pattern import Pattern
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.reading import Figure, Reading

__all__ = ["Decoded", "Hit", "Nearest", "NumberField", "Outcome", "decode", "decode_reading"]


class Outcome(StrEnum):
    """Whether a rule reads the number."""

    DECODED = "read by rule"
    OUTSIDE = "outside every known block"
    NO_RULE = "no rule"
    NOTHING = "nothing read"


@dataclass(frozen=True, slots=True)
class Nearest:
    """The rule that a number came nearest, and how it misses it."""

    rule: str
    title: str
    sentence: Say


@dataclass(frozen=True, slots=True)
class Decoded:
    """A number of one place as read: every possibility, all model years, and how many numbers remain."""

    place: str
    typed: str
    hits: tuple[Hit, ...]
    years: tuple[int, ...]
    serials: int
    outcome: Outcome
    disagreement: Say | None
    nearest: Nearest | None
    reasons: tuple[Say, ...]
    sources: tuple[str, ...]


def decode_reading(profile: Profile, reading: Reading, year: int | None = None) -> Decoded:
    """The number of a reading by the rules of its place; a place that the profile does not know has no rule."""
    place = profile.place_by_id.get(reading.place)
    if place is None:
        return _without(reading.place, reading.typed(), Outcome.NO_RULE if reading.figures else Outcome.NOTHING)
    return decode(profile, place, reading.figures, year)


def decode(profile: Profile, place: Place, figures: Sequence[Figure], year: int | None = None) -> Decoded:
    """Every possibility of the figures by the rules of the place; with a year, only what that model year allows."""
    typed = "".join(figure.typed() for figure in figures)
    patterns: dict[str, Pattern] = {rule.separators: pattern_of(figures, rule.separators) for rule in place.rules}
    if not figures or (patterns and not any(len(pattern) for pattern in patterns.values())):
        return _without(place.id, typed, Outcome.NOTHING)
    if not place.rules:
        return _without(place.id, typed, Outcome.NO_RULE)
    found: dict[Hit, None] = {}
    for rule in place.rules:
        found.update(dict.fromkeys(hits_of(profile, place, ready(rule), patterns[rule.separators])))
    hits = tuple(found)
    return Decoded(
        place=place.id,
        typed=typed,
        hits=hits,
        years=tuple(sorted({one for hit in hits for one in hit.years})),
        serials=sum(hit.serials for hit in hits),
        outcome=Outcome.DECODED if hits else Outcome.OUTSIDE,
        disagreement=None,
        nearest=None,
        reasons=(),
        sources=_all(hit.sources for hit in hits),
    )


def _without(place: str, typed: str, outcome: Outcome) -> Decoded:
    reason = say("no rule of this place is known") if outcome is Outcome.NO_RULE else say("nothing was read there")
    return Decoded(place, typed, (), (), 0, outcome, None, None, (reason,), ())


def _all(several: Iterable[Iterable[str]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one for some in several for one in some))
