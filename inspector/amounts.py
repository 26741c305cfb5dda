"""Amounts as people read them: figures in groups, with the decimal sign of the place, from Decimals only."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING, Any

from inspector.texts import Say, tr

if TYPE_CHECKING:
    from collections.abc import Mapping

HUNDREDTH, ONE = Decimal("0.01"), Decimal(1)
SPACE = "\u00a0"  # no line is broken at it, on the screen or on paper
MINUS = "\u2212"
# Fields of sentences that hold other figures.
NO_AMOUNTS = frozenset({"percent", "points", "hours", "years", "score", "least", "most", "then", "now"})


@dataclass(frozen=True, slots=True)
class Amounts:
    """How amounts are written: what parts thousands, and what parts the hundredths."""

    group: str = SPACE
    point: str = "."

    def told(self, amount: Decimal) -> str:
        """The amount to the hundredth; hundredths that are nought are left out."""
        exact = amount.quantize(HUNDREDTH, ROUND_HALF_UP)
        if exact == exact.to_integral_value():
            return self.whole(exact)
        plain = f"{abs(exact):,.2f}"
        return _signed(exact, plain.replace(",", "\0").replace(".", self.point).replace("\0", self.group))

    def whole(self, amount: Decimal) -> str:
        """The amount in whole units, rounded half up: for what is only about so much."""
        unit = amount.quantize(ONE, ROUND_HALF_UP)
        return _signed(unit, f"{abs(unit):,f}".replace(",", self.group))

    def exact(self, figure: Decimal) -> str:
        """The figure with all that was entered of it, for what is not an amount or is to be written on."""
        plain = f"{abs(figure.normalize()):,f}"
        return _signed(figure, plain.replace(",", "\0").replace(".", self.point).replace("\0", self.group))

    def span(self, low: Decimal, high: Decimal) -> str:
        """From low to high, or the one amount where both are the same."""
        if low == high:
            return self.told(low)
        return tr("{low} to {high}", low=self.told(low), high=self.told(high))

    def signed(self, amount: Decimal) -> str:
        """The amount with its sign, also where it adds."""
        return f"+{self.told(amount)}" if amount > 0 else self.told(amount)

    def sentence(self, words: Say) -> str:
        """The sentence in the user's language, every Decimal in it written so."""
        return tr(self._filled(words))

    def _filled(self, words: Say) -> Say:
        return Say(words.template, self._values(words.values))

    def _values(self, values: Mapping[str, Any]) -> dict[str, Any]:
        return {name: self._value(name, value) for name, value in values.items()}

    def _value(self, name: str, value: Any) -> Any:
        if isinstance(value, Say):
            return self._filled(value)
        if not isinstance(value, Decimal):
            return value
        amount = name not in NO_AMOUNTS and value == value.quantize(HUNDREDTH, ROUND_HALF_UP)
        return self.told(value) if amount else self.exact(value)


def _signed(amount: Decimal, figures: str) -> str:
    return f"{MINUS}{figures}" if amount < 0 else figures
