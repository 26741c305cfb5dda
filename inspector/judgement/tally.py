"""The sums of a score: weights times credit, exactly rounded, so that the order of entry cannot show."""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True, slots=True)
class Weighed:
    """One item's part in the sums: weight (0 when left out), and shares from 0 to 1."""

    item: str
    weight: float
    credit: float | None
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Tally:
    """Percent seen by weight, percent right of what was seen or None, and the lowest and highest it could be."""

    seen: float
    value: float | None
    low: float
    high: float


def tally(inputs: Sequence[Weighed]) -> Tally:
    """The sums over these items; with no weight at all nothing is known: 0 seen, range 0 to 100."""
    weight = fsum(w.weight for w in inputs)
    if weight <= 0:
        return Tally(0, None, 0, 100)
    counted = fsum(w.weight for w in inputs if w.credit is not None)
    low = 100 * fsum(w.weight * w.low for w in inputs) / weight
    high = min(100.0, 100 * fsum(w.weight * w.high for w in inputs) / weight)
    if counted <= 0:
        return Tally(0, None, low, high)
    value = min(100.0, 100 * fsum(w.weight * w.credit for w in inputs if w.credit is not None) / counted)
    return Tally(100 * counted / weight, value, min(low, value), max(high, value))
