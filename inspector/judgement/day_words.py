"""Days as people write them."""

from __future__ import annotations

from inspector.record.days import day_of
from inspector.texts import MONTHS, Say, say


def day_words(written: str) -> Say:
    """A day, month or year in words, no finer than it was written, as 17 May 2025; what is none as it stands."""
    found = day_of(written)
    if found is None:
        return say("{text}", text=written.strip())
    day = found.day
    if found.exact == "year":
        return say("{year}", year=str(day.year))
    month = MONTHS[day.month - 1]
    if found.exact == "month":
        return say("{month} {year}", month=month, year=str(day.year))
    return say("{day} {month} {year}", day=str(day.day), month=month, year=str(day.year))
