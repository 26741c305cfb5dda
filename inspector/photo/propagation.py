"""How the uncertainty of what goes into a figure becomes that of the figure: by slopes, and by draws."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import NDArray

    Array = NDArray[np.float64]
    Function = Callable[[Array], Array]

DRAWS = 4000
MIDDLE_95 = (0.025, 0.975)


@dataclass(frozen=True, slots=True)
class Propagated:
    """A figure and its standard uncertainty by draws, the ends of its 95 % interval, and the same by slopes.

    ``parts`` are the variances that each input adds by its slope; ``linear`` is the root of their sum.
    """

    value: float
    uncertainty: float
    low: float
    high: float
    linear: float
    parts: Array


def propagated(function: Function, x: Array, u: Array, *, seed: int = 1, draws: int = DRAWS) -> Propagated:
    """What ``function`` makes of inputs ``x`` (n,) with independent standard uncertainties ``u`` (n,), all normal.

    ``function`` takes rows (m, n) and gives (m,). Slopes: JCGM 100:2008, 5.1.2. Draws: JCGM 101:2008, 7, whose
    interval holds where the function is not straight.
    """
    drawn = function(x + u * np.random.default_rng(seed).standard_normal((draws, len(x))))
    parts = (_slopes(function, x, u) * u) ** 2
    low, high = (float(q) for q in np.quantile(drawn, MIDDLE_95))
    value = float(function(x[None])[0])
    return Propagated(value, float(drawn.std()), low, high, float(np.sqrt(parts.sum())), parts)


def _slopes(function: Function, x: Array, u: Array) -> Array:
    """How much the value changes with each input, by central differences of a tenth of its uncertainty."""
    step = np.where(u > 0, u / 10, 1e-6)
    shifts = np.diag(step)
    slopes: Array = (function(x + shifts) - function(x - shifts)) / (2 * step)
    return slopes
