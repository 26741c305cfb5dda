"""Prices of other days brought to the effective date, by the user's index or yearly percentage."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.exchange import rounded
from inspector.judgement.reckoned import AdjustmentLine
from inspector.record.days import day_of
from inspector.record.words import Adjusts
from inspector.texts import Say, say

if TYPE_CHECKING:
    from datetime import date

    from inspector.record.money import Money

MOST = Decimal(1_000_000)
DAYS_OF_A_YEAR = Decimal("365.25")


def time_line(money: Money, written: str, price: Decimal) -> AdjustmentLine | None:
    """What the user's index, else yearly percentage, adds to a price of that day; None where neither can say.

    The index is taken where it has both years; the percentage compounds over the days between.
    """
    then, now = day_of(written), day_of(money.effective_date)
    if then is None or now is None:
        return None
    index = {row.year: row.value for row in money.index}
    first, last = then.day.year, now.day.year
    if first in index and last in index:
        return _line(price, index[last] / index[first], _by_index(first, last, index[first], index[last]))
    if money.percent_a_year is None:
        return None
    years = Decimal((now.day - then.day).days) / DAYS_OF_A_YEAR
    told = years.quantize(Decimal("0.01"))
    words = say("time: {years} years at {percent} % a year, as entered", years=told, percent=money.percent_a_year)
    return _line(price, (1 + money.percent_a_year / 100) ** years if money.percent_a_year > -100 else None, words)


def time_lacking(money: Money, written: str) -> Say | None:
    """Why a price could not be brought to the effective date, where the user entered how; else None."""
    if money.percent_a_year is None and not money.index:
        return None
    if day_of(money.effective_date) is None:
        return say("Not adjusted for time: no effective date.")
    if day_of(written) is None:
        return say("Not adjusted for time: no date of this price that can be read.")
    if money.percent_a_year is not None or {day.year for day in _days(money, written)} <= {r.year for r in money.index}:
        return say("Not adjusted for time: the rate or index entered makes a price beyond all reason.")
    return say("Not adjusted for time: the index has not both years, and no yearly percentage is entered.")


def _days(money: Money, written: str) -> tuple[date, ...]:
    return tuple(found.day for text in (written, money.effective_date) if (found := day_of(text)))


def _line(price: Decimal, factor: Decimal | None, words: Say) -> AdjustmentLine | None:
    """The change by that factor; None where it is beyond all prices, which only a slip of the keys can make it."""
    if factor is None or not 1 / MOST <= factor <= MOST:
        return None
    return AdjustmentLine(Adjusts.TIME, rounded(price * factor) - rounded(price), words)


def _by_index(first: int, last: int, then: Decimal, now: Decimal) -> Say:
    return say(
        "time: from {first} to {last} by the index entered, {then} to {now}",
        first=first, last=last, then=then, now=now,
    )  # fmt: skip
