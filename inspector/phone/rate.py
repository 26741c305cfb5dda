"""How often one address may ask: some at once, and then so many a second."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

MOST_ADDRESSES = 1_000


class Rate:
    """Lets ``burst`` requests of an address pass at once, and ``rate`` more each second."""

    def __init__(self, burst: int, rate: float, clock: Callable[[], float]) -> None:
        self._burst, self._rate, self._clock = float(burst), rate, clock
        self._left: dict[str, tuple[float, float]] = {}

    def left(self, address: str) -> float:
        """How many requests of this address may pass now."""
        had, at = self._left.get(address, (self._burst, self._clock()))
        return min(self._burst, had + (self._clock() - at) * self._rate)

    def passes(self, address: str) -> bool:
        """Whether one more request may pass; it is counted if it may."""
        left = self.left(address)
        if left < 1:
            return False
        self._keep(address, left - 1)
        return True

    def _keep(self, address: str, left: float) -> None:
        if address not in self._left and len(self._left) >= MOST_ADDRESSES:
            del self._left[next(iter(self._left))]
        self._left[address] = (left, self._clock())
