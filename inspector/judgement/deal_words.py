"""Sentences about the deal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.wording import joined
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from inspector.judgement.reckoned import Costs, Range, Three
    from inspector.record.money import Money

LINES = {
    "price": say("Price asked"),
    "premium": say("Buyer's premium"),
    "tax": say("Tax on the premium"),
    "transport": say("Transport"),
    "parts": say("Parts"),
    "labour": say("Labour"),
    "contingency": say("Contingency"),
    "entered": say("entered"),
}
NO_PRICE = say("No price asked is entered: there is no all-in sum yet.")
NO_MARGIN = say("No margin is entered: what a price would have to leave you is yours to say.")
NO_WORTH = say("No worth put right can be said: prices are not set against it.")

AS_IT_STANDS = say("Prices are set against the worth as it stands.")


def fee_words(what: str | Decimal | None) -> Say:
    """A named fee, or a percentage as entered."""
    if isinstance(what, str):
        return say("{name}", name=what)
    return say("{percent} %, as entered", percent=what)


def not_in_it(costs: Costs, money: Money) -> tuple[Say, ...]:
    """Everything that is known to be missing from the all-in sum."""
    told: list[Say] = []
    if costs.not_estimated:
        told.append(say("Labour not estimated, and not in this sum: {names}.", names=_names(costs.not_estimated)))
    if costs.not_priced:
        told.append(say("Without a price, and not in this sum: {names}.", names=_names(costs.not_priced)))
    if costs.to_decide:
        names = _names([fault.name for fault in costs.to_decide])
        told.append(say("To be decided first, and not in this sum: {names}.", names=names))
    if costs.no_way:
        told.append(say("No way to put right is known: {names}.", names=_names(costs.no_way)))
    if costs.in_doubt:
        told.append(say("In doubt, and no way to put it right is offered: {names}.", names=_names(costs.in_doubt)))
    if money.labour_rate is None and costs.hours[2] > 0:
        told.append(say("No labour rate entered: {hours} hours of work are not in this sum.", hours=costs.hours[1]))
    if money.transport is None:
        told.append(say("No transport entered."))
    return tuple(told)


def left_words(price: Decimal | None, then: Range | None, all_in: Three | None, margin: Decimal | None) -> Say:
    """What the price asked would leave at the middle and low end of the worth put right."""
    if price is None or then is None or all_in is None:
        return NO_PRICE if price is None else NO_WORTH
    middle, low = then.middle - all_in[1], then.low - all_in[1]
    at_middle = say("keep {amount}", amount=middle) if middle >= 0 else say("lose {amount}", amount=-middle)
    at_low = say("keep {amount}", amount=low) if low >= 0 else say("lose {amount}", amount=-low)
    told = say(
        "At {price} you would {middle} at the middle of the range and {low} at its low end",
        price=price, middle=at_middle, low=at_low,
    )  # fmt: skip
    if margin is None:
        return say("{told}.", told=told)
    return say("{told}; the margin you set is {margin}.", told=told, margin=margin)


def stands_words(price: Decimal | None, now: Range | None, bought: Decimal | None) -> Say | None:
    """The price asked with all that is paid besides, against the worth as it stands; None where either is not known."""
    if price is None or now is None or bought is None:
        return None
    told = []
    for end in (now.middle, now.low):
        by = end - bought
        told.append(say("{amount} below", amount=by) if by >= 0 else say("{amount} above", amount=-by))
    return say(
        "Bought at {price} it comes to {bought}, nothing put right: {middle} the middle of its worth as it stands, "
        "{low} its low end.",
        price=price, bought=bought, middle=told[0], low=told[1],
    )  # fmt: skip


def limit_words(money: Money, price: Decimal, comes_to: Decimal) -> Say:
    """How the highest hammer price was worked out."""
    return say(
        "Highest hammer price, in whole units and rounded down, that with premium, tax on it, transport, fees and the "
        "likely cost of putting right stays within {limit}: {price} comes to {comes_to}.",
        limit=money.limit_all_in, price=price, comes_to=comes_to,
    )  # fmt: skip


def used_up(limit: Decimal) -> Say:
    """That nothing is left for a price."""
    return say("The limit of {limit} is used up by transport, fees and putting right before any price.", limit=limit)


def keeping_words(middle: Decimal | None, low: Decimal | None, exceeded: float | None) -> tuple[Say, ...]:
    """How the price that keeps the margin was worked out, and how sure it is."""
    told = [say("From the worth put right: less your margin, the likely cost of putting right, transport, fees and "
                "premium; in whole units, rounded down.")]  # fmt: skip
    if middle is None:
        told.append(say("At the middle of the range no price keeps your margin."))
    if low is None:
        told.append(say("At the low end of the range no price keeps your margin."))
    if exceeded is not None:
        told.append(say("In {share} of a hundred simulated cases putting right costs more than reckoned here, and the "
                        "margin is not kept.", share=round(100 * exceeded)))  # fmt: skip
    return tuple(told)


def _names(names: Sequence[str]) -> Say:
    return joined(list(names), "; ")
