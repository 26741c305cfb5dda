"""Amounts told in one currency, by the user's own dated rates only."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.record.days import day_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.reckoned import Three
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import Rate

HUNDREDTH = Decimal("0.01")
ROUNDING = say("Every amount is rounded to the hundredth, half up, and sums are made of the rounded amounts.")


def rounded(amount: Decimal) -> Decimal:
    """The amount to the hundredth, half up."""
    return amount.quantize(HUNDREDTH, ROUND_HALF_UP)


@dataclass(frozen=True, slots=True)
class Exchange:
    """The currency amounts are told in ("" where none is set), and the user's rates by currency."""

    currency: str
    rates: dict[str, Rate]

    def told(self, amount: Decimal, currency: str) -> Decimal | None:
        """The amount in the currency told; one without a currency is in it already. None without a dated rate."""
        if currency in {"", self.currency}:
            return rounded(amount)
        rate = self.rates.get(currency)
        return rounded(amount * rate.per_one) if rate is not None and day_of(rate.date) else None

    def three(self, amounts: Three | None, currency: str) -> Three | None:
        """Low, likely and high in the currency told; None where they are not known or have no rate."""
        if amounts is None:
            return None
        low, likely, high = (self.told(amount, currency) for amount in amounts)
        return None if low is None or likely is None or high is None else (low, likely, high)

    def trouble(self, currency: str) -> Say | None:
        """What to enter so that amounts in this currency can be told; None where they can."""
        if currency in {"", self.currency}:
            return None
        if not self.currency:
            return say("Amounts in {currency} stand alone: choose the currency to reckon in.", currency=currency)
        rate = self.rates.get(currency)
        if rate is None:
            return say(
                "No rate for {currency}: enter what one {currency} is in {told}, and the day of that rate.",
                currency=currency, told=self.currency,
            )  # fmt: skip
        if day_of(rate.date) is None:
            return say("The rate for {currency} has no day that can be read: enter one.", currency=currency)
        return None

    def words(self, currency: str) -> Say | None:
        """The rate used for this currency, with its day; None where none is used."""
        rate = self.rates.get(currency)
        if currency in {"", self.currency} or rate is None or self.trouble(currency):
            return None
        return say(
            "1 {currency} reckoned as {rate} {told}, the rate entered for {date}.",
            currency=currency, rate=rate.per_one, told=self.currency, date=day_words(rate.date),
        )  # fmt: skip


def exchange(profile: Profile, record: Record) -> Exchange:
    """The currency the user chose, else the profile's, with the user's rates."""
    money = record.money
    return Exchange(money.currency or profile.currency, {rate.currency: rate for rate in money.rates})
