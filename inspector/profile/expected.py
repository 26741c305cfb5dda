"""What should be fitted: the expected forms of an item for a claimed year, each with its sources."""

from __future__ import annotations

from inspector.profile.base import Cited, Span
from inspector.profile.items import Item, Variant
from inspector.profile.model import Profile, Source
from inspector.profile.words import Origin

AS_BUILT = frozenset({Origin.FACTORY, Origin.OPTION})


def applies(item: Item, year: int | None) -> bool:
    """True when machines of this model year had the item; True when no year is claimed."""
    return year is None or item.years.holds(year)


def fits_year(variant: Variant, year: int) -> bool:
    """True when the form was in use, in whatever way, in that model year, by any of its sources."""
    return variant.years is None or any(span.holds(year) for span in _spans(variant.years, variant))


def settled(variant: Variant, year: int | None) -> bool:
    """True when the sources that disagree on the form's years all say the same of that model year."""
    if year is None or variant.years is None or not variant.other_years:
        return False
    return len({span.holds(year) for span in _spans(variant.years, variant)}) == 1


def _spans(years: Span, variant: Variant) -> tuple[Span, ...]:
    return (years, *(other.years for other in variant.other_years))


def as_built(variant: Variant) -> bool:
    """True for forms that left the factory: standard or option."""
    return variant.origin in AS_BUILT and variant.years is not None


def expected(item: Item, year: int | None) -> tuple[Variant, ...]:
    """The forms that a machine of that model year may have left the factory with, standard ones first.

    Without a year: every form that left the factory.
    """
    forms = [v for v in item.variants if as_built(v) and (year is None or fits_year(v, year))]
    return tuple(sorted(forms, key=lambda v: v.origin is not Origin.FACTORY))


def sources_of(profile: Profile, fact: Cited) -> tuple[Source, ...]:
    """The sources of a fact, best grade first; empty when it names none."""
    found = [profile.source_by_id[s] for s in fact.sources if s in profile.source_by_id]
    return tuple(sorted(found, key=lambda s: -s.grade))


def grade_of(profile: Profile, fact: Cited) -> int:
    """The grade of the best source of a fact; 0 when it has none or only memory."""
    return max((s.grade for s in sources_of(profile, fact)), default=0)
