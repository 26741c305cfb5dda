"""Three-point figures: low, likely, high as a PERT-beta distribution, and sums of them from seeded draws."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING
from zlib import crc32

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    import numpy as np
    from numpy.typing import NDArray

    Draws = NDArray[np.float64]

DRAWS = 10_000
LEVELS = (0.10, 0.50, 0.80, 0.90)
Three = tuple[float, float, float]


def mean(three: Three) -> float:
    """The mean of the PERT-beta, (low + 4 likely + high) / 6."""
    low, likely, high = three
    return (low + 4 * likely + high) / 6


def variance(three: Three) -> float:
    """The exact variance of that beta, (mean - low)(high - mean) / 7; not the short-cut (high - low)^2 / 36."""
    low, _, high = three
    middle = mean(three)
    return (middle - low) * (high - middle) / 7


def shapes(three: Three) -> tuple[float, float]:
    """The two shapes of the beta on low to high; both 1 or more. Raises ValueError where high is not above low."""
    low, likely, high = three
    if high <= low:
        raise ValueError("a figure without spread has no shapes")
    return 1 + 4 * (likely - low) / (high - low), 1 + 4 * (high - likely) / (high - low)


@dataclass(frozen=True, slots=True)
class Term:
    """One uncertain figure of a sum: a key of its own, its three points, and what one unit of it costs."""

    key: str
    three: Three
    times: float = 1.0
    levelled: bool = False


@dataclass(frozen=True, slots=True)
class Driver:
    """A figure's part of the spread of the sum, 0 to 1."""

    key: str
    share: float


@dataclass(frozen=True, slots=True)
class Simulated:
    """A sum from ``draws`` seeded draws: the amounts under which it stays in 10, 50, 80 and 90 cases of a hundred.

    ``mean`` and ``deviation`` are exact where no common level is set; ``drivers`` name what spreads it most.
    """

    p10: float
    p50: float
    p80: float
    p90: float
    mean: float
    deviation: float
    drivers: tuple[Driver, ...]
    draws: int
    seed: int


def simulate(
    terms: Sequence[Term], *, level: Three | None = None, factor: float = 1.0, seed: int = 1, draws: int = DRAWS
) -> Simulated:
    """The sum of all terms times ``factor``; ``level`` multiplies the levelled terms, one draw for all of them.

    The same terms and seed give the same answer; a term keeps its own draws when others come and go.
    """
    import numpy as np

    total = sums(terms, level=level, factor=factor, seed=seed, draws=draws)
    p10, p50, p80, p90 = (float(q) for q in np.quantile(total, LEVELS))
    return Simulated(p10, p50, p80, p90, float(total.mean()), float(total.std()), _drivers(terms, level), draws, seed)


def sums(
    terms: Sequence[Term], *, level: Three | None = None, factor: float = 1.0, seed: int = 1, draws: int = DRAWS
) -> Draws:
    """The very sums that ``simulate`` tells of, one for each draw."""
    import numpy as np

    plain, moved = np.zeros(draws), np.zeros(draws)
    for term in terms:
        target = moved if term.levelled else plain
        target += term.times * _drawn(term.key, term.three, seed, draws)
    common = _drawn("price level", level, seed, draws) if level else 1.0
    total: Draws = factor * (plain + moved * common)
    return total


def _drawn(key: str, three: Three, seed: int, draws: int) -> Draws:
    import numpy as np

    low, _, high = three
    if high <= low:
        return np.full(draws, float(low))
    return low + (high - low) * _unit(key, *shapes(three), seed, draws)


@lru_cache(maxsize=1024)
def _unit(key: str, alpha: float, beta: float, seed: int, draws: int) -> Draws:
    """Draws of a beta on 0 to 1; each key has its own stream, so that an edit draws nothing else anew."""
    import numpy as np

    drawn = np.random.default_rng([seed, crc32(key.encode())]).beta(alpha, beta, draws)
    drawn.setflags(write=False)
    return drawn


def _drivers(terms: Sequence[Term], level: Three | None) -> tuple[Driver, ...]:
    parts: dict[str, float] = {}
    for term in terms:
        parts[term.key] = parts.get(term.key, 0.0) + term.times**2 * variance(term.three)
    if level:
        parts["price level"] = sum(t.times * mean(t.three) for t in terms if t.levelled) ** 2 * variance(level)
    return _shared(parts)


def _shared(parts: Mapping[str, float]) -> tuple[Driver, ...]:
    whole = sum(parts.values())
    if whole <= 0:
        return ()
    ranked = sorted(parts.items(), key=lambda item: -item[1])
    return tuple(Driver(key, part / whole) for key, part in ranked if part > 0)
