"""What each number and date code read says about the year."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.building import Season
from inspector.judgement.dates import earliest_build, year_hits
from inspector.judgement.evidence import DatedPart, Kind
from inspector.judgement.said import Strength
from inspector.judgement.season import model_year_of
from inspector.judgement.wording import joined
from inspector.judgement.year_words import listed, years_words
from inspector.profile.base import Span
from inspector.record.words import Clarity, HowRead, NumberState
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.decode import Decoded, Hit
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.model import Record
    from inspector.record.reading import Figure, Reading

SEEN_BY_EYE = frozenset({HowRead.METAL, HowRead.PHOTOGRAPH})
Alternatives = tuple[tuple[tuple[int, ...], Say], ...]


def number_parts(profile: Profile, record: Record, decoded: Mapping[str, Decoded]) -> tuple[DatedPart, ...]:
    """One part for every place of the profile that was read or looked for, in the profile's order."""
    found: dict[str, list[Reading]] = {}
    for reading in record.readings:
        found.setdefault(reading.place, []).append(reading)
    return tuple(_part(profile, place, found[place.id], decoded) for place in profile.places if place.id in found)


def _part(profile: Profile, place: Place, readings: list[Reading], decoded: Mapping[str, Decoded]) -> DatedPart:
    kind = Kind.DATE_CODE if place.dates_part else Kind.NUMBER
    typed = " / ".join(dict.fromkeys(r.typed() for r in readings if r.typed()))
    usable = [r for r in readings if r.state is NumberState.READ and r.figures and r.how_read in SEEN_BY_EYE]
    if not usable:
        return _silent(place, kind, typed, _why_unusable(readings))
    if place.dates_part:
        return _by_code(profile, place, typed, usable, decoded)
    told = [(r, h) for r in usable if (h := year_hits(profile, decoded.get(r.id)))]
    hits = [hit for _, those in told for hit in those]
    if not told:
        return _silent(place, kind, typed, say("No rule of the profile gives a year for it."))
    if not any(hit.grade for hit in hits):
        return _silent(place, kind, typed, say("The only source for its years is memory."))
    kind = Kind.BUILD_DATE if all(hit.worked_out or not hit.years for hit in hits) else kind
    return _by_number(profile, place, kind, typed, told, _undated(profile, place, [decoded.get(r.id) for r, _ in told]))


def _why_unusable(readings: list[Reading]) -> Say:
    without = [r.state for r in readings if r.state is not NumberState.READ]
    if without and len(without) == len(readings):
        return say("Not read: {state}.", state=say(without[0].value))
    told = dict.fromkeys(r.how_read for r in readings if r.figures and r.how_read not in SEEN_BY_EYE)
    if not told:
        return say("Nothing read.")
    if HowRead.NOT_SAID in told:
        return say("Nobody said yet how it was read. Say it on the page Numbers.")
    return say("How read: {how}. It was not seen on the machine.", how=joined([say(how.value) for how in told]))


def _silent(place: Place, kind: Kind, typed: str, why: Say) -> DatedPart:
    return DatedPart(
        f"number:{place.id}", place.name, place.assembly, kind, (), Strength.SILENT, typed, None, (), (), 0, why,
        place=place.id,
    )  # fmt: skip


def _undated(profile: Profile, place: Place, found: Iterable[Decoded | None]) -> frozenset[int]:
    """The years of rules of a known period that read the number and date nothing: it may be of any of them."""
    hits = [hit for one in found if one is not None for hit in one.hits]
    bare = {hit.rule for hit in hits} - {hit.rule for hit in hits if hit.years or hit.built}
    spans = [rule.years for rule in place.rules if rule.id in bare and rule.years != Span()]
    return frozenset(year for year in profile.years if any(span.holds(year) for span in spans))


def _undated_words(years: Iterable[int]) -> Say:
    return say("It can be of {years} as well, of which numbers give no year.", years=years_words(sorted(years)))


def _by_number(
    profile: Profile,
    place: Place,
    kind: Kind,
    typed: str,
    told: Sequence[tuple[Reading, Sequence[Hit]]],
    undated: frozenset[int],
) -> DatedPart:
    each = [{year for hit in hits for year in years_of(profile, hit)} for _, hits in told]
    agree = all(could_be_one(a.figures, b.figures) for a, _ in told for b, _ in told)
    shared = set.intersection(*each) if agree else set()
    dated = tuple(sorted(shared or set().union(*each)))
    ways = _alternatives(profile, [hit for _, hits in told for hit in hits], dated)
    reason = _reason(profile, told, dated, differ=not shared and len(told) > 1)
    hits = [hit for _, those in told for hit in those]
    return DatedPart(
        id=f"number:{place.id}",
        name=place.name,
        assembly=place.assembly,
        kind=kind,
        years=tuple(sorted({*dated, *undated})),
        strength=Strength.FIRM,
        what=typed,
        condition=_condition(ways),
        alternatives=tuple((tuple(sorted({*own, *undated})), words) for own, words in ways),
        sources=tuple(dict.fromkeys(source for hit in hits for source in hit.sources)),
        grade=max(hit.grade for hit in hits),
        reason=joined([reason, _undated_words(undated)], " ") if undated else reason,
        place=place.id,
    )


def years_of(profile: Profile, hit: Hit) -> tuple[int, ...]:
    """The model years that one hit gives, or those in whose seasons its months of build lie."""
    return hit.years or Season(profile.season_starts).model_years(hit.built)


def could_be_one(one: Sequence[Figure], other: Sequence[Figure]) -> bool:
    """True where two readings could be of the same number: as many figures, and each pair has one in common."""
    a, b = (_marks(figures) for figures in (one, other))
    return len(a) == len(b) and all(x is None or y is None or x & y for x, y in zip(a, b, strict=True))


def _marks(figures: Sequence[Figure]) -> list[frozenset[str] | None]:
    return [
        None if f.clarity is Clarity.UNREADABLE else frozenset(sign.upper() for sign in f.could_be)
        for f in figures
        if f.clarity is not Clarity.CLEAR or f.could_be[0].isalnum()
    ]


def _alternatives(profile: Profile, hits: Iterable[Hit], years: tuple[int, ...]) -> Alternatives:
    """The years on each condition, where doubtful figures lead to different years; else nothing."""
    ways: dict[tuple[tuple[int, str], ...], set[int]] = {}
    for hit in hits:
        ways.setdefault(hit.if_figures, set()).update(set(years_of(profile, hit)) & set(years))
    ways = {figures: own for figures, own in ways.items() if own}
    if not any(ways) or len({frozenset(own) for own in ways.values()}) < 2:
        return ()
    return tuple((tuple(sorted(own)), if_words(figures)) for figures, own in ways.items())


def if_words(figures: Sequence[tuple[int, str]]) -> Say:
    """The condition in words: "if figure 5 is 8"; "in any case" where there is none."""
    if not figures:
        return say("in any case")
    each = [say("figure {number} is {figure}", number=number, figure=figure) for number, figure in figures]
    return say("if {conditions}", conditions=listed(each))


def _condition(ways: Alternatives) -> Say | None:
    if not ways:
        return None
    return joined(
        [say("{years} {condition}", years=years_words(years), condition=words) for years, words in ways], "; "
    )


def _reason(
    profile: Profile, told: Sequence[tuple[Reading, Sequence[Hit]]], years: tuple[int, ...], *, differ: bool
) -> Say:
    how = listed(list(dict.fromkeys(say(reading.how_read.value) for reading, _ in told)))
    hits = [hit for _, those in told for hit in those]
    names = _titles(profile, hits)
    if differ:
        return say("Read {how}; the readings differ. Both are kept, and their years united: {years}.",
                   how=how, years=years_words(years))  # fmt: skip
    if not names:
        return say("Read {how}: {years} by the profile's rule.", how=how, years=years_words(years))
    if any(hit.inferred for hit in hits):
        return say("Read {how}: {years} by {sources}, worked out from other figures.",
                   how=how, years=years_words(years), sources=listed(names))  # fmt: skip
    return say("Read {how}: {years} by {sources}.", how=how, years=years_words(years), sources=listed(names))


def _titles(profile: Profile, hits: Iterable[Hit]) -> list[Say | str]:
    ids = dict.fromkeys(source for hit in hits for source in hit.sources)
    return [profile.source_by_id[i].title for i in ids if i in profile.source_by_id]


def _by_code(
    profile: Profile, place: Place, typed: str, usable: list[Reading], decoded: Mapping[str, Decoded]
) -> DatedPart:
    """A part made in a month fits any machine whose season was not over by then; how much later is never firm."""
    hits = [hit for r in usable if (one := decoded.get(r.id)) is not None for hit in one.hits if hit.built]
    first = earliest_build(hits)
    if first is None:
        return _silent(place, Kind.DATE_CODE, typed, say("A code of this style is not in the profile: it is not read."))
    made = model_year_of(profile, first)
    years = tuple(year for year in profile.years if year >= made)
    if not years:
        why = say("Made after every model year of the profile: a later part, which shows nothing of the machine.")
        return _silent(place, Kind.DATE_CODE, typed, why)
    if not any(hit.grade for hit in hits):
        return _silent(place, Kind.DATE_CODE, typed, say("The only source for this code is memory."))
    return DatedPart(
        id=f"number:{place.id}",
        name=place.name,
        assembly=place.assembly,
        kind=Kind.DATE_CODE,
        years=years,
        strength=Strength.FIRM,
        what=typed,
        condition=None,
        alternatives=(),
        sources=tuple(dict.fromkeys(source for hit in hits for source in hit.sources)),
        grade=max(hit.grade for hit in hits),
        reason=say("Made in the season of {year} at the earliest: it fits no machine of before.", year=made),
        place=place.id,
    )
