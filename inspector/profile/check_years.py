"""Years that no form covers, forms that nothing tells apart, and facts that nobody vouches for."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from inspector.profile.base import Cited, Part
from inspector.profile.expected import AS_BUILT, applies, as_built, grade_of
from inspector.profile.items import Item, Nominal, OtherYears, Variant, YearNote
from inspector.profile.model import Profile
from inspector.profile.numbers import Code, NumberRange, Relation
from inspector.profile.problem import Flaw
from inspector.profile.walk import items, parts
from inspector.texts import say


def outside(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """A form as built, none of whose years are years of the profile."""
    first, last = profile.model_years
    for where, item in items(profile):
        for n, form in enumerate(item.variants):
            if form.years is None or form.origin not in AS_BUILT:
                continue
            low, high = form.years.within(first, last)
            if low > last or high < first:
                yield Flaw(
                    (*where, "variant", n, "years"),
                    say(
                        'variant "{id}" lies outside the model years {first} to {last}.',
                        id=form.id,
                        first=first,
                        last=last,
                    ),
                    say('correct its years, or give it origin = "other model".'),
                    stops=False,
                )


def uncovered_years(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """Years in which an item with dated forms has none; optional items may have none."""
    for where, item in items(profile):
        forms = [form for form in item.variants if as_built(form)]
        if item.optional or not forms:
            continue
        bare = [year for year in profile.years if applies(item, year) and not _covered(forms, year)]
        if bare:
            yield Flaw(
                where,
                say(
                    'item "{id}" has no form as built for {years}.',
                    id=item.id,
                    years=", ".join(map(str, bare)),
                ),
                say("add a variant for them, or optional = true if not every machine had one."),
                stops=False,
            )


def _covered(forms: list[Variant], year: int) -> bool:
    return any(form.years is not None and form.years.holds(year) for form in forms)


def alike(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """A form that nothing tells apart from an earlier one of the item, of one origin and in use together."""
    for where, item in items(profile):
        earlier: dict[tuple[object, ...], list[Variant]] = {}
        for n, form in enumerate(item.variants):
            groups = [earlier.setdefault(key, []) for key in _looks(form)]
            other = next((one for group in groups for one in group if _together(one, form, profile)), None)
            if other is not None:
                yield Flaw(
                    (*where, "variant", n),
                    say('variants "{a}" and "{b}" cannot be told apart.', a=other.id, b=form.id),
                    say('say in "tell" how each is known from the other.'),
                    stops=False,
                )
            for group in groups:
                group.append(form)


def _looks(form: Variant) -> tuple[tuple[object, ...], ...]:
    """What a form must share with another so that nothing tells the two apart."""
    # One name is said twice, or neither says how it is told: either leaves nothing to go by.
    same = (form.origin, frozenset(form.markets), form.years is None)
    return ("name", form.name.casefold(), *same), ("tell", form.tell.casefold(), *same)


def _together(a: Variant, b: Variant, profile: Profile) -> bool:
    """True when two forms that both have years, or both have none, were in use together."""
    if a.years is None or b.years is None:
        return True
    low, high = profile.model_years
    (a1, a2), (b1, b2) = a.years.within(low, high), b.years.within(low, high)
    return a1 <= b2 and b1 <= a2


def uncited(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """A dated fact with no source, or only memory: it is used, and shown as what it is."""
    vouched = _vouched(profile)
    for where, part in parts(profile):
        if not _dated(part) or not isinstance(part, Cited) or grade_of(profile, part) or id(part) in vouched:
            continue
        yield Flaw(
            where,
            say("this fact is shown as having no source."),
            say("add sources = [...] with the ids of who says so."),
            stops=False,
        )


def _dated(part: Part) -> bool:
    match part:
        case Variant():
            return as_built(part)
        case NumberRange():
            return any(said is not None for said in (part.model_year, part.years, part.built_from, part.built_to))
        case Code():
            return any(said is not None for said in (part.model_year, part.build_year, part.month))
        case Nominal() | YearNote() | Relation() | OtherYears():
            return True
        case Item():
            return part.years.first is not None or part.years.last is not None
    return False


def _vouched(profile: Profile) -> frozenset[int]:
    """The ranges and codes that name nobody themselves and whose rule names somebody, by identity."""
    rules = [rule for place in profile.places for rule in place.rules if grade_of(profile, rule)]
    codes = (code for rule in rules for segment in rule.segments for code in segment.codes)
    ranges = (one for rule in rules for one in rule.ranges)
    return frozenset(id(one) for one in (*codes, *ranges) if not one.sources)
