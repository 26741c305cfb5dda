"""The deal: all in at the price asked, the highest bid for a limit, and the price that keeps the user's margin."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, TypedDict

from inspector.judgement.cost import added
from inspector.judgement.deal_words import (
    AS_IT_STANDS,
    LINES,
    NO_MARGIN,
    NO_PRICE,
    NO_WORTH,
    fee_words,
    keeping_words,
    left_words,
    limit_words,
    not_in_it,
    stands_words,
    used_up,
)
from inspector.judgement.dealt import Deal, DealLine, Hammer, Keeping
from inspector.judgement.exchange import ROUNDING, rounded
from inspector.judgement.premium import Bought, highest
from inspector.judgement.spread import Summed, share_above
from inspector.judgement.worth import NOTHING_CHOSEN

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from inspector.judgement.reckoned import Costs, Range, Spread, Three, Worth
    from inspector.record.model import Record
    from inspector.record.money import Money
    from inspector.texts import Say


class Standing(TypedDict):
    """The part of a deal that leaves the machine as it is."""

    bought: Decimal | None
    stands_at_middle: Decimal | None
    stands_at_low_end: Decimal | None
    stands_words: Say | None


def deal(record: Record, costs: Costs, worth: Worth) -> Deal:
    """Everything the purchase comes to by the entries; opening, target and walk-away are passed on, never proposed."""
    money = record.money
    bought = Bought.of(money)
    lines = _lines(money, bought, costs)
    all_in = added(line.amount for line in lines) if money.price_asked is not None else None
    then = aim(worth)
    return Deal(
        currency=costs.currency, lines=lines, all_in=all_in, spread=_spread(costs, all_in),
        not_in_it=not_in_it(costs, money),
        left_at_middle=then.middle - all_in[1] if then and all_in else None,
        left_at_low_end=then.low - all_in[1] if then and all_in else None,
        left_words=left_words(money.price_asked, then, all_in, money.margin),
        hammer=_hammer(money, bought, costs), keeping=_keeping(record, bought, costs, worth),
        opening=money.opening, target=money.target, walk_away=money.walk_away,
        offered=money.offered_for_parts, reasons=_reasons(money, costs, worth),
        **_as_it_stands(money, bought, worth),
    )  # fmt: skip


def _as_it_stands(money: Money, bought: Bought, worth: Worth) -> Standing:
    """What is paid before anything is put right, against the worth as it stands."""
    if money.price_asked is None:
        return Standing(bought=None, stands_at_middle=None, stands_at_low_end=None, stands_words=None)
    paid, now = bought.all_in(money.price_asked), worth.as_it_stands
    return Standing(
        bought=paid, stands_at_middle=now.middle - paid if now else None,
        stands_at_low_end=now.low - paid if now else None, stands_words=stands_words(money.price_asked, now, paid),
    )  # fmt: skip


def aim(worth: Worth) -> Range | None:
    """The worth that a price is set against: put right; as it stands where putting right raises no score."""
    if worth.put_right is None and worth.put_right_words is NOTHING_CHOSEN:
        return worth.as_it_stands
    return worth.put_right


def _lines(money: Money, bought: Bought, costs: Costs) -> tuple[DealLine, ...]:
    """The lines of the all-in sum that are known, in the order they are paid."""
    lines: list[DealLine] = []
    if money.price_asked is not None:
        lines.append(DealLine(LINES["price"], _flat(money.price_asked)))
        premium, tax = bought.premium(money.price_asked), bought.tax(money.price_asked)
        if premium:
            lines.append(DealLine(LINES["premium"], _flat(premium), fee_words(money.premium_percent)))
        if tax:
            lines.append(DealLine(LINES["tax"], _flat(tax), fee_words(money.tax_percent)))
    if money.transport is not None:
        lines.append(DealLine(LINES["transport"], _flat(money.transport), LINES["entered"]))
    lines += [DealLine(fee_words(fee.name), _flat(fee.amount), LINES["entered"]) for fee in money.fees]
    lines.append(DealLine(LINES["parts"], costs.parts, costs.level_words))
    if costs.labour is not None:
        lines.append(DealLine(LINES["labour"], costs.labour, costs.labour_words))
    if costs.contingency is not None:
        lines.append(DealLine(LINES["contingency"], costs.contingency, costs.contingency_words))
    return tuple(lines)


def _flat(amount: Decimal) -> Three:
    amount = rounded(amount)
    return amount, amount, amount


def _spread(costs: Costs, all_in: Three | None) -> Spread | None:
    """The simulated cost moved up by what is certain."""
    told = costs.simulated
    if told is None or all_in is None:
        return None
    by = all_in[1] - costs.total[1]
    p10, p50, p80, p90 = (one + by for one in (told.p10, told.p50, told.p80, told.p90))
    half, most = told.by_triangles
    return replace(told, p10=p10, p50=p50, p80=p80, p90=p90, mean=told.mean + by, by_triangles=(half + by, most + by))


def _hammer(money: Money, bought: Bought, costs: Costs) -> Hammer | None:
    if money.limit_all_in is None:
        return None
    price = highest(bought, money.limit_all_in - costs.total[1])
    if price is None:
        return None
    comes_to, dear = (bought.all_in(price) + costs.total[at] for at in (1, 2))
    return Hammer(money.limit_all_in, price, comes_to, dear, limit_words(money, price, comes_to))


def _keeping(record: Record, bought: Bought, costs: Costs, worth: Worth) -> Keeping | None:
    money, then = record.money, aim(worth)
    if money.margin is None or then is None:
        return None
    middle, low = (highest(bought, end - money.margin - costs.total[1]) for end in (then.middle, then.low))
    summed = Summed.of(costs.rows, costs.jobs, money)
    exceeded = share_above(summed, costs.total[1]) if summed.terms else None
    return Keeping(money.margin, middle, low, exceeded, keeping_words(middle, low, exceeded))


def _reasons(money: Money, costs: Costs, worth: Worth) -> tuple[Say, ...]:
    told: list[Say] = []
    if money.price_asked is None:
        told.append(NO_PRICE)
    if money.margin is None:
        told.append(NO_MARGIN)
    if worth.put_right is None:
        told += [worth.put_right_words, NO_WORTH if aim(worth) is None else AS_IT_STANDS]
    if money.limit_all_in is not None and _hammer(money, Bought.of(money), costs) is None:
        told.append(used_up(money.limit_all_in))
    return (*told, *_said(costs.reasons), ROUNDING)


def _said(reasons: Sequence[Say]) -> tuple[Say, ...]:
    return tuple(reason for reason in reasons if reason is not ROUNDING)
