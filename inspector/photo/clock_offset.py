"""How far a camera's clock is off, from what a photographed clock shows; nothing in a file is changed."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

from inspector.texts import Say, say

SHOWN = re.compile(
    r"(?:(?P<date>\d{4}-\d{1,2}-\d{1,2})[ T]+)?(?P<hour>\d{1,2})[:.](?P<minute>\d\d)(?:[:.](?P<second>\d\d))?"
    r"\s*(?P<half>[ap]\.?m\.?)?",
    re.IGNORECASE,
)
DAY = timedelta(days=1)


def clock_shows(typed: str, near: datetime) -> datetime | None:
    """The time that was typed: "14:32", "2:32 pm", "14:32:05", a date before it if wanted; None for anything else.

    Without a date it is the one that brings it nearest to ``near``, the camera's own time.
    """
    found = SHOWN.fullmatch(typed.strip())
    if found is None:
        return None
    hour = _hour(int(found["hour"]), (found["half"] or "").replace(".", "").lower())
    day = found["date"] or near.date().isoformat()
    try:
        year, month, date = (int(part) for part in day.split("-"))
        shown = datetime(year, month, date, hour, int(found["minute"]), int(found["second"] or 0))  # noqa: DTZ001
    except ValueError:
        return None
    return shown if found["date"] else _nearest(shown, near)


def offset_seconds(camera: datetime, shows: datetime) -> int:
    """What is to be added to the camera's time, in seconds; negative where the camera's clock is ahead."""
    return round((shows - camera).total_seconds())


def offset_told(seconds: int) -> Say:
    """How far the camera's clock is off, in one sentence."""
    if seconds == 0:
        return say("The camera's clock agrees with the clock in the photograph.")
    how = _length(abs(seconds))
    if seconds > 0:
        return say("The camera's clock is {length} behind the clock in the photograph.", length=how)
    return say("The camera's clock is {length} ahead of the clock in the photograph.", length=how)


def _hour(hour: int, half: str) -> int:
    if not half:
        return hour
    if not 1 <= hour <= 12:
        return 24  # no such hour
    return hour % 12 + (12 if half.startswith("p") else 0)


def _nearest(shown: datetime, near: datetime) -> datetime:
    return min((shown - DAY, shown, shown + DAY), key=lambda one: abs(one - near))


def _length(seconds: int) -> Say:
    """The length in its two largest units."""
    parts: list[Say] = []
    for size, one, many in _UNITS:
        count, seconds = divmod(seconds, size)
        if count:
            parts.append(say(one) if count == 1 else say(many, count=count))
    if len(parts) == 1:
        return parts[0]
    return say("{first} {second}", first=parts[0], second=parts[1])


_UNITS = (
    (86_400, "1 day", "{count} days"),
    (3_600, "1 hour", "{count} hours"),
    (60, "1 minute", "{count} minutes"),
    (1, "1 second", "{count} seconds"),
)
