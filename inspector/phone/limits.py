"""How much a phone may ask of this computer."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Limits:
    """Sizes in bytes, times in seconds, the rest counts; all of one opening of the page."""

    file_bytes: int = 60_000_000
    press_bytes: int = 2_000
    all_bytes: int = 4_000_000_000
    files: int = 400
    at_once: int = 2  # photographs in memory at one time
    waiting: int = 16  # photographs that wait until there is room
    devices: int = 4
    listeners: int = 3  # of one device: a page that was loaded again may leave one behind for a while
    connections: int = 48
    join: float = 900.0  # how long a code lets devices join
    stay: float = 4 * 3600.0  # how long a device that joined may stay
    alone: float = 1800.0  # how long the page stays open without any device
    silence: float = 30.0  # between two pieces of a body, and of a connection without a request
    whole: float = 300.0  # for one body, however it trickles
    answer: float = 120.0  # for the window to say what became of something
    beat: float = 5.0  # between two looks at all this
    asleep: float = 30.0  # more than this late, and the computer has slept
    burst: int = 120  # requests at once from one address ...
    rate: float = 20.0  # ... and so many more each second
    wrong: int = 10  # wrong codes at once from one address ...
    wrong_rate: float = 0.2  # ... and so many more each second
