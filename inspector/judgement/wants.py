"""The parts to look for: what each is, how it is told, what is not to be bought, and what it may cost."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.judgement.dealt import Want
from inspector.profile.expected import expected, fits_year
from inspector.profile.words import Origin, PartKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.reckoned import Costs, Faulted, Way
    from inspector.profile.items import Item, Variant
    from inspector.profile.model import Profile
    from inspector.record.model import Record

BOUGHT = frozenset({PartKind.ORIGINAL, PartKind.USED, PartKind.PATTERN})


def wants(profile: Profile, record: Record, costs: Costs) -> tuple[Want, ...]:
    """One line for each part that is to be bought, and for each that might be while it is not decided."""
    return tuple(
        _want(profile, record, fault, way)
        for fault in costs.items
        for way in (fault.counted or (fault.ways if fault.to_decide else ()))
        if way.kind in BOUGHT and way.choice is not False
    )


def _want(profile: Profile, record: Record, fault: Faulted, way: Way) -> Want:
    item, year = profile.item_by_id.get(fault.item), record.claim.model_year
    right = expected(item, year) if item else ()
    return Want(
        key=way.key, item=fault.item, name=fault.name, looking_for=way.name,
        spec=tuple(_spec(form) for form in right),
        how_to_tell=tuple(form.tell for form in right if form.tell),
        not_to_buy=_not_to_buy(item, year, way) if item else (),
        fair=way.parts, price_words=_price_words(way), decided=way in fault.counted,
    )  # fmt: skip


def _spec(form: Variant) -> str:
    return f"{form.name} ({form.detail})" if form.detail else form.name


def _not_to_buy(item: Item, year: int | None, way: Way) -> tuple[Say, ...]:
    """Forms of other years and makes, and pattern parts unless one is wanted, each with how to tell it."""
    told = []
    for form in item.variants:
        other = form.origin in {Origin.OTHER_MODEL, Origin.OTHER_MAKER}
        copy = form.origin is Origin.PATTERN and way.kind is not PartKind.PATTERN
        late = year is not None and form.years is not None and not fits_year(form, year)
        if other or copy or late:
            words = say("{name} ({origin}): {tell}", name=form.name, origin=say(form.origin.value), tell=form.tell)
            told.append(words if form.tell else say("{name} ({origin})", name=form.name, origin=say(form.origin.value)))
    return tuple(told)


def _price_words(way: Way) -> Say:
    if way.trouble is not None and way.parts is None:
        return way.trouble
    if way.parts is None:
        return say("no price known")
    where = way.source or say("no source")
    date = day_words(way.priced_on) if way.priced_on.strip() else say("no date")
    return say("prices of {date}, {source}", date=date, source=where)
