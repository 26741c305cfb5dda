"""Weighted quantiles, by one definition that is said."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Sequence

HOW = say(
    "The weighted middle is the lowest amount at or below which lie at least half of the weights; the weights are how "
    "like each one is, 1 to 5, as entered. The range runs from the lowest to the highest."
)


def quantile(values: Sequence[Decimal], weights: Sequence[int], share: Decimal) -> Decimal:
    """The lowest value at or below which lies at least that share (0 to 1) of the weights: the inverted distribution.

    Raises ValueError where there is no value with a weight.
    """
    pairs = sorted((value, weight) for value, weight in zip(values, weights, strict=True) if weight > 0)
    if not pairs:
        raise ValueError("a quantile needs a value with a weight")
    wanted = share * sum(weight for _, weight in pairs)
    reached = Decimal(0)
    for value, weight in pairs:
        reached += weight
        if reached >= wanted:
            return value
    return pairs[-1][0]
