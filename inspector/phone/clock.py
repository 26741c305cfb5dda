"""Seconds that go on while the computer sleeps, and the beat by which its sleep is noticed."""

from __future__ import annotations

import sys
import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable


def seconds() -> float:
    """The seconds since some moment in the past, those of sleep included, whatever the date is set to."""
    if sys.platform == "linux":
        return time.clock_gettime(time.CLOCK_BOOTTIME)
    if sys.platform == "darwin":
        return time.clock_gettime(time.CLOCK_MONOTONIC)  # time.monotonic() stands still there
    return time.monotonic()


class Pulse:
    """Looks at the clock again and again; a look that comes far too late says that the computer slept."""

    def __init__(self, clock: Callable[[], float], asleep: float) -> None:
        self._clock, self._asleep = clock, asleep
        self._last = clock()

    def slept(self, beat: float) -> bool:
        """Whether more than ``asleep`` seconds beyond ``beat`` have passed since the look before."""
        now = self._clock()
        late, self._last = now - self._last - beat, now
        return late > self._asleep
