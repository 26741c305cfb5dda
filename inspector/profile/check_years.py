"""Years that no form covers, forms that nothing tells apart, and facts that nobody vouches for."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

from inspector.profile.base import Cited, Part
from inspector.profile.expected import AS_BUILT, applies, as_built, grade_of
from inspector.profile.items import Item, Nominal, Variant, YearNote
from inspector.profile.model import Profile
from inspector.profile.numbers import NumberRange, NumberRule, Relation
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
    """Two forms of one item and origin, in use together, that nothing tells apart."""
    for where, item in items(profile):
        for (_, a), (n, b) in combinations(enumerate(item.variants), 2):
            if _alike(a, b, profile):
                yield Flaw(
                    (*where, "variant", n),
                    say('variants "{a}" and "{b}" cannot be told apart.', a=a.id, b=b.id),
                    say('say in "tell" how each is known from the other.'),
                    stops=False,
                )


def _alike(a: Variant, b: Variant, profile: Profile) -> bool:
    # One name is said twice, or neither says how it is told: either leaves nothing to go by.
    same = a.name.casefold() == b.name.casefold() or a.tell.casefold() == b.tell.casefold()
    if a.origin is not b.origin or not same or set(a.markets) ^ set(b.markets):
        return False
    if a.years is None or b.years is None:
        return a.years is b.years
    low, high = profile.model_years
    (a1, a2), (b1, b2) = a.years.within(low, high), b.years.within(low, high)
    return a1 <= b2 and b1 <= a2


def uncited(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """A dated fact with no source, or only memory: it is used, and shown as what it is."""
    for where, part in parts(profile):
        if not _dated(part) or not isinstance(part, Cited) or grade_of(profile, part):
            continue
        if isinstance(part, NumberRange) and _rule_of(profile, part):
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
            return part.model_year is not None or part.built_from is not None
        case Nominal() | YearNote() | Relation():
            return True
        case Item():
            return part.years.first is not None or part.years.last is not None
    return False


def _rule_of(profile: Profile, one: NumberRange) -> NumberRule | None:
    """The rule that vouches for its ranges when they name nobody themselves."""
    for place in profile.places:
        for rule in place.rules:
            if any(one is held for held in rule.ranges) and grade_of(profile, rule):
                return rule
    return None
