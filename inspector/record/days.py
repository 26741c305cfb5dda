"""A day, month or year as people write it."""

from __future__ import annotations

import re
from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from inspector.texts import MONTHS

FIRST_YEAR, LAST_YEAR = 1880, 2100

YEAR_FIRST = re.compile(r"^(\d{4})(?:[-./](\d{1,2})(?:[-./](\d{1,2}))?)?$")
YEAR_LAST = re.compile(r"^(?:(\d{1,2})[-./ ])?(\d{1,2})[-./ ](\d{4})$")
WITH_NAME = re.compile(r"^(?:(\d{1,2})\.? )?([a-z]{3,9})\.?,? (\d{4})$")
NAME_FIRST = re.compile(r"^([a-z]{3,9})\.? (\d{1,2}),? (\d{4})$")


@dataclass(frozen=True, slots=True)
class Day:
    """A day; where only the month or year was written, the middle of it, and ``exact`` says "month" or "year"."""

    day: date
    exact: str

    @property
    def written(self) -> str:
        """The day as ISO 8601, no finer than it was written."""
        return self.day.isoformat()[: {"day": 10, "month": 7, "year": 4}[self.exact]]


def day_of(text: str) -> Day | None:
    """The day, month or year written; None where it is none, or can be read as two different days."""
    parts = _parts(" ".join(text.casefold().split()))
    if parts is None:
        return None
    year, month, day = parts
    if not FIRST_YEAR <= year <= LAST_YEAR:
        return None
    if month is None:
        return Day(date(year, 7, 1), "year")
    if not 1 <= month <= 12:
        return None
    if day is None:
        return Day(date(year, month, 15), "month")
    return Day(date(year, month, day), "day") if 1 <= day <= monthrange(year, month)[1] else None


def two_ways(text: str) -> bool:
    """True where day and month could be either way round, as in 05/06/2025."""
    found = YEAR_LAST.match(text.strip())
    if found is None or found[1] is None or "." in text:
        return False
    first, second = int(found[1]), int(found[2])
    return first != second and 1 <= first <= 12 and 1 <= second <= 12


def _parts(text: str) -> tuple[int, int | None, int | None] | None:
    if found := YEAR_FIRST.match(text):
        return int(found[1]), _number(found[2]), _number(found[3])
    if two_ways(text):
        return None
    if found := YEAR_LAST.match(text):
        day, month = _number(found[1]), int(found[2])
        # The month stands first only where the second figure cannot be a month.
        return int(found[3]), *((day, month) if day and month > 12 else (month, day))
    if found := WITH_NAME.match(text):
        return _named(found[3], found[2], found[1])
    found = NAME_FIRST.match(text)
    return _named(found[3], found[1], found[2]) if found else None


def _named(year: str, name: str, day: str | None) -> tuple[int, int | None, int | None] | None:
    month = next((n for n, full in enumerate(MONTHS, 1) if str(full).lower().startswith(name)), None)
    return (int(year), month, _number(day)) if month else None


def _number(text: str | None) -> int | None:
    return int(text) if text else None
