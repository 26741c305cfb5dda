"""Three-point figures: low, likely, high as a PERT beta or a triangle, and sums of them from seeded draws."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING
from zlib import crc32

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

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


def triangle_mean(three: Three) -> float:
    """The mean of the triangular distribution, (low + likely + high) / 3."""
    return sum(three) / 3


def triangle_variance(three: Three) -> float:
    """Its variance, (low² + likely² + high² - low likely - low high - likely high) / 18."""
    low, likely, high = three
    return (low * low + likely * likely + high * high - low * likely - low * high - likely * high) / 18


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

    ``mean`` and ``deviation`` are those of the distribution, not of the draws; ``drivers`` name what spreads it most.
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
    terms: Sequence[Term], *, level: Three | None = None, factor: float = 1.0, seed: int = 1, draws: int = DRAWS,
    triangles: bool = False,
) -> Simulated:  # fmt: skip
    """The sum of all terms times ``factor``; ``level`` multiplies the levelled terms, one draw for all of them.

    Each figure is a PERT beta, or a triangle where ``triangles`` is True. The same terms and seed give the same answer;
    a term keeps its own draws when others come and go.
    """
    import numpy as np

    total = sums(terms, level=level, factor=factor, seed=seed, draws=draws, triangles=triangles)
    p10, p50, p80, p90 = (float(q) for q in np.quantile(total, LEVELS))
    middle, spread = _moments(terms, level, triangles)
    told = factor * middle, abs(factor) * spread**0.5
    return Simulated(p10, p50, p80, p90, *told, _drivers(terms, level, triangles), draws, seed)


def sums(
    terms: Sequence[Term], *, level: Three | None = None, factor: float = 1.0, seed: int = 1, draws: int = DRAWS,
    triangles: bool = False,
) -> Draws:  # fmt: skip
    """The very sums that ``simulate`` tells of, one for each draw."""
    import numpy as np

    drawn = _triangle if triangles else _beta
    plain, moved = np.zeros(draws), np.zeros(draws)
    for term in terms:
        target = moved if term.levelled else plain
        target += term.times * drawn(term.key, term.three, seed, draws)
    common = drawn("price level", level, seed, draws) if level else 1.0
    total: Draws = factor * (plain + moved * common)
    return total


def _beta(key: str, three: Three, seed: int, draws: int) -> Draws:
    import numpy as np

    low, _, high = three
    if high <= low:
        return np.full(draws, float(low))
    return low + (high - low) * _unit(key, *shapes(three), seed, draws)


def _triangle(key: str, three: Three, seed: int, draws: int) -> Draws:
    import numpy as np

    low, likely, high = three
    if high <= low:
        return np.full(draws, float(low))
    return low + (high - low) * _unit_triangle(key, (likely - low) / (high - low), seed, draws)


@lru_cache(maxsize=1024)
def _unit(key: str, alpha: float, beta: float, seed: int, draws: int) -> Draws:
    """Draws of a beta on 0 to 1; each key has its own stream, so that an edit draws nothing else anew."""
    import numpy as np

    drawn = np.random.default_rng([seed, crc32(key.encode())]).beta(alpha, beta, draws)
    drawn.setflags(write=False)
    return drawn


@lru_cache(maxsize=512)
def _unit_triangle(key: str, turn: float, seed: int, draws: int) -> Draws:
    """Draws of a triangle on 0 to 1 with its top at ``turn``, by the inverse of its distribution."""
    import numpy as np

    even = np.random.default_rng([seed, crc32(key.encode())]).random(draws)
    drawn: Draws = np.where(even < turn, np.sqrt(even * turn), 1 - np.sqrt((1 - even) * (1 - turn)))
    drawn.setflags(write=False)
    return drawn


def _of(triangles: bool) -> tuple[Callable[[Three], float], Callable[[Three], float]]:
    return (triangle_mean, triangle_variance) if triangles else (mean, variance)


def _moments(terms: Sequence[Term], level: Three | None, triangles: bool) -> tuple[float, float]:
    """Mean and variance of the sum before its factor; a common level is a factor of its own, independent of the rest.

    The variance of a product of two independent figures is m² v' + m'² v + v v'.
    """
    middle, spread = _of(triangles)
    plain, moved = ([t for t in terms if t.levelled is levelled] for levelled in (False, True))
    m, v = sum(t.times * middle(t.three) for t in moved), sum(t.times**2 * spread(t.three) for t in moved)
    if level:
        lm, lv = middle(level), spread(level)
        m, v = m * lm, m * m * lv + lm * lm * v + v * lv
    rest = sum(t.times**2 * spread(t.three) for t in plain)
    return m + sum(t.times * middle(t.three) for t in plain), v + rest


def _drivers(terms: Sequence[Term], level: Three | None, triangles: bool) -> tuple[Driver, ...]:
    middle, spread = _of(triangles)
    common = middle(level) ** 2 if level else 1.0
    parts: dict[str, float] = {}
    for term in terms:
        by = common if term.levelled else 1.0
        parts[term.key] = parts.get(term.key, 0.0) + by * term.times**2 * spread(term.three)
    if level:
        parts["price level"] = sum(t.times * middle(t.three) for t in terms if t.levelled) ** 2 * spread(level)
    return _shared(parts)


def _shared(parts: Mapping[str, float]) -> tuple[Driver, ...]:
    whole = sum(parts.values())
    if whole <= 0:
        return ()
    ranked = sorted(parts.items(), key=lambda item: -item[1])
    return tuple(Driver(key, part / whole) for key, part in ranked if part > 0)
