"""In which model years a form was in use, by all its sources, and by whom that is said."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined
from inspector.judgement.year_words import years_words
from inspector.profile.expected import sources_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.profile.base import Cited, Span
    from inspector.profile.items import Item, Variant
    from inspector.profile.model import Profile, Source


@dataclass(frozen=True, slots=True)
class Facts:
    """What the profile knows of a form: model years by all sources, ids of those sources, grade of the best.

    ``used`` says by whom it was used in which years.
    """

    years: tuple[int, ...]
    sources: tuple[str, ...]
    grade: int
    used: Say


def facts_of(profile: Profile, item: Item, variant: Variant) -> Facts:
    """The form's years, sources and grade, sources that disagree included."""
    key = ("facts", item.id, variant.id)
    if key not in profile.worked_out:
        profile.worked_out[key] = _facts(profile, item, variant)
    found: Facts = profile.worked_out[key]
    return found


def _facts(profile: Profile, item: Item, variant: Variant) -> Facts:
    first = sources = sources_of(profile, variant)
    if variant.other_years:
        sources += tuple(source for other in variant.other_years for source in sources_of(profile, other))
    ids = tuple(dict.fromkeys([source.id for source in sources]))
    grade = max([source.grade for source in sources], default=0)
    years = form_years(profile, item, variant)
    return Facts(years, ids, grade, _used(profile, item, variant, years, first))


def form_years(profile: Profile, item: Item, variant: Variant) -> tuple[int, ...]:
    """The model years of use by all sources together, open ends closed by the item's years and the profile's."""
    held = form_span(profile, item, variant)
    return tuple(held) if isinstance(held, range) else tuple(sorted(held))


def form_span(profile: Profile, item: Item, variant: Variant) -> range | frozenset[int]:
    """The same years, so held that to ask for one of them is quick."""
    own = range(0) if variant.years is None else _all(profile, item, variant.years)
    if not variant.other_years:
        return own
    return frozenset(own).union(*(_all(profile, item, other.years) for other in variant.other_years))


def _all(profile: Profile, item: Item, span: Span) -> range:
    # What is open in the form's years ends with the item itself, and that with the profile.
    first, last = profile.model_years
    if span.first is None or span.last is None:
        first, last = item.years.within(first, last)
    return range(first if span.first is None else span.first, (last if span.last is None else span.last) + 1)


def _used(profile: Profile, item: Item, variant: Variant, years: tuple[int, ...], first: tuple[Source, ...]) -> Say:
    """By whom the form was used in which years, each source that disagrees with its own."""
    if not variant.other_years:
        if variant.at:
            return say("Used {years} by {source}, {at}.", years=years_words(years), source=_who(first), at=variant.at)
        return say("Used {years} by {source}.", years=years_words(years), source=_who(first))
    told: list[tuple[Cited, Span | None, tuple[Source, ...]]] = [(variant, variant.years, first)]
    told += [(other, other.years, sources_of(profile, other)) for other in variant.other_years]
    each = [_by(fact, _all(profile, item, span), sources) for fact, span, sources in told if span is not None]
    return say("Used {years}: the sources disagree, both are kept.", years=joined(each, "; "))


def _by(fact: Cited, years: range, sources: tuple[Source, ...]) -> Say:
    if fact.at:
        return say("{years} by {source}, {at}", years=years_words(years), source=_who(sources), at=fact.at)
    return say("{years} by {source}", years=years_words(years), source=_who(sources))


def _who(sources: tuple[Source, ...]) -> Say | str:
    if not sources:
        return say("no source")
    return sources[0].title if len(sources) == 1 else joined([s.title for s in sources])
