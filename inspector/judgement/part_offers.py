"""Parts that were offered, each price against the one expected for that part."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.judgement.dealt import PartOffered
from inspector.judgement.exchange import exchange
from inspector.judgement.offered import offered
from inspector.texts import Say, say

if TYPE_CHECKING:
    from decimal import Decimal

    from inspector.judgement.exchange import Exchange
    from inspector.judgement.reckoned import Three, Way
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import PartOffer

OWN = say("what you expect to pay")
NO_NAME = say("a part not yet named")
NOTHING_EXPECTED = say("Nothing is known to hold it against: enter what you expect to pay.")


def part_offers(profile: Profile, record: Record) -> tuple[PartOffered, ...]:
    """Every offer noted, in the order entered, told in the currency of the reckoning with the price expected."""
    at = exchange(profile, record)
    ways = {way.key: way for those in offered(profile, record, at).values() for way in those}
    return tuple(_told(offer, ways.get(offer.part), at) for offer in record.money.offers)


def _told(offer: PartOffer, way: Way | None, at: Exchange) -> PartOffered:
    price = at.told(offer.price, offer.currency) if offer.price is not None else None
    own = at.told(offer.expected, offer.currency) if offer.expected is not None else None
    three: Three | None = (own, own, own) if own is not None else way.parts if way is not None else None
    return PartOffered(
        id=offer.id, part=offer.part if way is not None else "", name=_name(offer, way),
        as_entered=offer.price, currency=offer.currency or at.currency, price=price, expected=three,
        whose=OWN if own is not None else _whose(way), by=_by(offer),
        words=at.trouble(offer.currency) or _words(price, three),
    )  # fmt: skip


def _name(offer: PartOffer, way: Way | None) -> Say:
    if way is not None:
        return say("{name} ({item})", name=way.name, item=way.item_name)
    return say("{name}", name=offer.name.strip()) if offer.name.strip() else NO_NAME


def _whose(way: Way | None) -> Say | None:
    """Who says what the part may cost, and when; None where nobody does."""
    if way is None or way.parts is None:
        return None
    where = way.source or (say("your own figures") if way.changed else say("no source"))
    date = day_words(way.priced_on) if way.priced_on.strip() else say("no date")
    return say("prices of {date}, {source}", date=date, source=where)


def _by(offer: PartOffer) -> Say | None:
    who, day = offer.by.strip(), day_words(offer.date)
    if who and offer.date.strip():
        return say("{who}, {day}", who=who, day=day)
    return say("{who}", who=who) if who else day if offer.date.strip() else None


def _words(price: Decimal | None, three: Three | None) -> Say:
    """How the price offered stands to the one expected; nothing is advised."""
    if price is None:
        return say("Without a price: enter what is asked for it.")
    if three is None:
        return NOTHING_EXPECTED
    low, likely, high = three
    stands = _against(price, likely)
    if low == high:
        return say("{stands}.", stands=stands)
    if price < low:
        return say("{stands} and below the lowest expected, {low}.", stands=stands, low=low)
    if price > high:
        return say("{stands} and above the highest expected, {high}.", stands=stands, high=high)
    return say("{stands}, within {low} to {high}.", stands=stands, low=low, high=high)


def _against(price: Decimal, likely: Decimal) -> Say:
    if price == likely:
        return say("As much as the likely {likely}", likely=likely)
    if price < likely:
        return say("{by} below the likely {likely}", by=likely - price, likely=likely)
    return say("{by} above the likely {likely}", by=price - likely, likely=likely)
