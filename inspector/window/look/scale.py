"""A scale of round figures over a range, and where a value stands on it."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor, log10

STEPS = (1, 2, 5, 10)


@dataclass(frozen=True, slots=True)
class Scale:
    """From ``low`` to ``high``, with ticks at round figures."""

    low: float
    high: float
    ticks: tuple[float, ...]

    def at(self, value: float, left: float, wide: float) -> float:
        """Where the value stands between ``left`` and ``left + wide``."""
        return left + wide * (value - self.low) / (self.high - self.low)


def scale_for(values: Iterable[float], most: int = 6, *, from_nought: bool = False) -> Scale:
    """A scale that holds all values, with at most that many ticks; around nought where there are none."""
    known = list(values) or [0.0]
    low, high = (0.0 if from_nought else min(known)), max(known)
    if high <= low:
        low, high = (low * 0.9, high * 1.1) if high > 0 else (0.0, 1.0)
    step = _step((high - low) / max(most - 1, 1))
    first, last = floor(low / step), ceil(high / step)
    ticks = tuple(step * n for n in range(first, last + 1))
    return Scale(ticks[0], ticks[-1], ticks)


def _step(least: float) -> float:
    base = 10.0 ** floor(log10(least))
    return next(base * one for one in STEPS if base * one >= least * 0.999)
