"""Weighted least squares: coefficients, prediction intervals by Student's t, and how much each row pulls."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

ALONE = 1e-9
EXACT = 1e-20  # a variance so small is what rounding leaves of none


@dataclass(frozen=True)
class LeastSquares:
    """A fit of y on the columns of x with weights; ``left`` are its degrees of freedom, ``variance`` of weight 1."""

    x: Array
    y: Array
    weights: Array
    coefficients: Array
    inverse: Array
    variance: float
    left: int
    explained: float

    def predict(self, at: Sequence[float], level: float, weight: float = 1.0) -> tuple[float, float, float]:
        """Lower end, middle and upper end of the interval that holds one new row of that weight, level from 0 to 1."""
        import numpy as np
        from scipy.special import stdtrit

        row = np.asarray(at, float)
        middle = float(row @ self.coefficients)
        spread = self.variance * (float(row @ self.inverse @ row) + 1 / weight)
        reach = float(stdtrit(self.left, 0.5 + level / 2)) * spread**0.5
        return middle - reach, middle, middle + reach

    def leverage(self) -> Array:
        """How much each row draws the fit to itself, 0 to 1."""
        import numpy as np

        drawn: Array = np.einsum("ij,jk,ik->i", self.x, self.inverse, self.x) * self.weights
        return drawn

    def cook(self) -> tuple[float | None, ...]:
        """Cook's distance of each row; None where the fit hangs on the row alone."""
        residual = self.y - self.x @ self.coefficients
        rows = zip(self.weights, residual, self.leverage(), strict=True)
        return tuple(None if 1 - h < ALONE else self._cook(float(w * e * e), float(h)) for w, e, h in rows)

    def _cook(self, squared: float, leverage: float) -> float:
        if self.variance <= EXACT:
            return 0.0
        return squared * leverage / (len(self.coefficients) * self.variance * (1 - leverage) ** 2)

    def without(self, row: int) -> Array | None:
        """The coefficients without this row; None where the fit hangs on it alone."""
        h = float(self.leverage()[row])
        if 1 - h < ALONE:
            return None
        residual = float(self.y[row] - self.x[row] @ self.coefficients)
        fitted: Array = self.coefficients - self.inverse @ self.x[row] * self.weights[row] * residual / (1 - h)
        return fitted


def least_squares(x: Sequence[Sequence[float]], y: Sequence[float], weights: Sequence[float]) -> LeastSquares | None:
    """The fit; None where the rows cannot tell the columns apart or leave no degree of freedom."""
    import numpy as np

    rows, target, heavy = np.asarray(x, float), np.asarray(y, float), np.asarray(weights, float)
    root = np.sqrt(heavy)[:, None]
    left = len(target) - rows.shape[1]
    if left < 1 or np.linalg.matrix_rank(rows * root) < rows.shape[1]:
        return None
    # By the triangular form, which keeps the figures that forming the normal equations would lose.
    q, r = np.linalg.qr(rows * root)
    back = np.linalg.inv(r)
    coefficients = back @ (q.T @ (target * root[:, 0]))
    residual = target - rows @ coefficients
    lost = float(heavy @ residual**2)
    around = float(heavy @ (target - np.average(target, weights=heavy)) ** 2)
    explained = 1 - lost / around if around > 0 else 0.0
    return LeastSquares(rows, target, heavy, coefficients, back @ back.T, lost / left, left, explained)
