"""What a number says by the profile's rules: every possibility that the figures as read allow, with its sources."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.agreeing import differing, disagreement, left_out, overlapping
from inspector.judgement.hits import Hit, NumberField, hits_of
from inspector.judgement.matching import MOST_WAYS, divided, ready
from inspector.judgement.nearest import Nearest, nearest
from inspector.judgement.remaining import numbers_in
from inspector.judgement.year_words import years_words
from inspector.record.reading import numbered
from inspector.record.words import Clarity
from inspector.texts import MONTHS, Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from inspector.judgement.agreeing import Pair
    from inspector.judgement.hits import Found
    from inspector.judgement.matching import Divided, Ready
    from inspector.judgement.remaining import Cover
    from inspector.profile.model import Profile
    from inspector.profile.numbers import NumberRule, Place
    from inspector.record.reading import Figure, Reading

__all__ = ["Decoded", "Hit", "Nearest", "NumberField", "Outcome", "decode", "decode_reading"]


AsSeen = tuple[tuple[Clarity, tuple[str, ...]], ...]  # as typed, a clear "?" would be the same as an unreadable figure
MOST_KEPT = 200  # readings of one place; a record has a few, an entry typed figure by figure some more


class Outcome(StrEnum):
    """Whether a rule reads the number."""

    DECODED = "read by rule"
    OUTSIDE = "outside every known block"
    NO_RULE = "no rule"
    NOTHING = "nothing read"


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
    return decode_again(profile, place, reading.figures, year)


def decode_again(profile: Profile, place: Place, figures: Sequence[Figure], year: int | None = None) -> Decoded:
    """What ``decode`` gives, worked out once for a profile: each edit asks the same of all other readings."""
    if profile.place_by_id.get(place.id) is not place:
        return decode(profile, place, figures, year)
    known: dict[AsSeen, Decoded] = profile.worked_out.setdefault(("decoded", place.id, str(year)), {})
    seen = tuple((figure.clarity, figure.could_be) for figure in figures)
    if seen not in known:
        if len(known) >= MOST_KEPT:
            known.clear()
        known[seen] = decode(profile, place, figures, year)
    return known[seen]


def decode(profile: Profile, place: Place, figures: Sequence[Figure], year: int | None = None) -> Decoded:
    """Every possibility of the figures by the rules of the place; with a year, only what that model year allows."""
    typed = "".join(figure.typed() for figure in figures)
    rules = [divided(_ready(profile, place, rule), figures) for rule in place.rules]
    if not figures or (rules and not any(len(one.pattern) for one in rules)):
        return _without(place.id, typed, Outcome.NOTHING)
    if not rules:
        return _without(place.id, typed, Outcome.NO_RULE)
    every = {one.hit: one for laid in rules for one in hits_of(profile, place, laid)}
    found = [one for one in every.values() if year is None or _of_year(place, one.hit, year)]
    hits, pairs = tuple(one.hit for one in found), differing(found)
    numbers, exact = _numbers(found)
    reasons = (
        *_taken_as(figures),
        *_left(len(every) - len(found)),
        *(reason for hit in hits for reason in _of_hit(profile, hit)),
        *_of_lists(profile, rules, found, pairs),
        *_too_many(rules, numbers, exact),
    )
    return Decoded(
        place=place.id,
        typed=typed,
        hits=hits,
        years=tuple(sorted({one for hit in hits for one in hit.years})),
        serials=numbers,
        outcome=Outcome.DECODED if hits else Outcome.OUTSIDE,
        disagreement=disagreement(profile, pairs),
        nearest=None if found else _other_years(every.values(), year) or nearest(profile, rules),
        reasons=tuple(dict.fromkeys(reasons)),
        sources=tuple(dict.fromkeys(one for hit in hits for one in hit.sources)),
    )


def _ready(profile: Profile, place: Place, rule: NumberRule) -> Ready:
    """The rule made ready for matching, once for the profile that holds it."""
    key = ("number rule", place.id, rule.id)
    made: Ready | None = profile.worked_out.get(key)
    if made is None or made.rule is not rule:
        made = profile.worked_out[key] = ready(rule)
    return made


def _numbers(found: Sequence[Found]) -> tuple[int, bool]:
    """How many numbers remain, each counted once, and whether that is exact.

    Rules that take other signs for separators are counted apart.
    """
    by_figures: dict[tuple[int, ...], list[Cover]] = {}
    for one in found:
        by_figures.setdefault(one.numbers, []).append(one.cover)
    counts = [numbers_in(covers) for covers in by_figures.values()]
    return sum(count for count, _ in counts), all(exact for _, exact in counts)


def _of_year(place: Place, hit: Hit, year: int) -> bool:
    """True when the hit allows that model year; one that gives none is held to the years of its rule."""
    if hit.years:
        return year in hit.years
    return any(rule.id == hit.rule and rule.years.holds(year) for rule in place.rules)


def _other_years(every: Iterable[Found], year: int | None) -> Nearest | None:
    """The first possibility that the asked year leaves out, told by its own years."""
    for one in every:
        hit = one.hit
        years = years_words(hit.years) if hit.years else say("other years")
        told = say("read by this rule it is of {years}, not of {year}", years=years, year=year)
        return Nearest(hit.rule, hit.title, told, follows=True)
    return None


def _left(count: int) -> Iterator[Say]:
    if count:
        yield say("Left out, as of other years: {count}.", count=count)


def _too_many(rules: Sequence[Divided], numbers: int, exact: bool) -> Iterator[Say]:
    if any(laid.more for laid in rules):
        yield say("The figures can be divided in more ways than the {count} that were tried.", count=MOST_WAYS)
    if not exact:
        yield say("At most {count} numbers remain; some of them may be counted twice.", count=numbers)


def _of_lists(
    profile: Profile, rules: Sequence[Divided], found: Sequence[Found], pairs: Sequence[Pair]
) -> Iterator[Say]:
    if overlapping(pairs):
        yield say("Blocks of one list overlap here: both are kept.")
    for laid in rules:
        here = [one for one in found if one.hit.rule == laid.made.rule.id]
        yield from left_out(profile, here, laid.made.blocks.rows)


def _taken_as(figures: Sequence[Figure]) -> Iterator[Say]:
    for number, figure in numbered(tuple(figures)):
        if figure.clarity is Clarity.PROBABLE and len(figure.could_be) == 1:
            yield say("Figure {number} is taken as {figure}; it is not clear.",
                      number=number, figure=figure.could_be[0])  # fmt: skip


def _of_hit(profile: Profile, hit: Hit) -> Iterator[Say]:
    if hit.next_start is not None:
        yield say("Only the start of this block is known; it is taken to run to the next start, {next}.",
                  next=hit.next_start)  # fmt: skip
    if hit.open_end:
        yield say("Only the start of this block is known, and no later one: where it ends is not known.")
    if hit.inferred:
        yield say("This block was worked out from other published figures.")
    if hit.worked_out:
        yield say("The model years follow from the months of building; the season starts in {month}.",
                  month=MONTHS[profile.season_starts - 1])  # fmt: skip


def _without(place: str, typed: str, outcome: Outcome) -> Decoded:
    reason = say("no rule of this place is known") if outcome is Outcome.NO_RULE else say("nothing was read there")
    return Decoded(place, typed, (), (), 0, outcome, None, None, (reason,), ())
