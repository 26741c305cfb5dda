"""What a hammer price comes to with premium, tax on it, transport and fees, and the highest price for a limit."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal
from typing import TYPE_CHECKING

from inspector.judgement.exchange import rounded

if TYPE_CHECKING:
    from inspector.record.money import Money

WHOLE = Decimal(1)
NOUGHT = Decimal(0)


@dataclass(frozen=True, slots=True)
class Bought:
    """The buyer's premium and the tax on it, in percent, and what is paid besides whatever the price."""

    premium_percent: Decimal = NOUGHT
    tax_percent: Decimal = NOUGHT
    besides: Decimal = NOUGHT

    @classmethod
    def of(cls, money: Money) -> Bought:
        """What the user entered; what was not entered adds nothing and is told elsewhere."""
        besides = (money.transport or NOUGHT) + sum((fee.amount for fee in money.fees), NOUGHT)
        return cls(money.premium_percent or NOUGHT, money.tax_percent or NOUGHT, besides)

    @property
    def percent(self) -> Decimal:
        """Premium and its tax together, in percent of the price: 12.5 % and 20 % tax are 15 %."""
        return self.premium_percent * (100 + self.tax_percent) / 100

    def premium(self, price: Decimal) -> Decimal:
        """The premium on this price."""
        return rounded(price * self.premium_percent / 100)

    def tax(self, price: Decimal) -> Decimal:
        """The tax on that premium."""
        return rounded(self.premium(price) * self.tax_percent / 100)

    def all_in(self, price: Decimal) -> Decimal:
        """The price with premium, tax, transport and fees."""
        return rounded(price) + self.premium(price) + self.tax(price) + rounded(self.besides)


def highest(bought: Bought, limit: Decimal) -> Decimal | None:
    """The highest whole price that with everything stays within the limit; None where no price above nought does."""
    price = ((limit - bought.besides) / (1 + bought.percent / 100)).quantize(WHOLE, ROUND_FLOOR) + 1
    # Premium and tax are rounded by themselves, so the last step is tried, not reckoned.
    while price > 0 and bought.all_in(price) > limit:
        price -= 1
    return price if price > 0 else None
