"""Months and model years: when a season runs, by the profile's first month."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.profile.model import Profile

YEAR_BEFORE = 6


def month_of(text: str) -> int:
    """The month "YYYY-MM" as a count of months, so that months can be subtracted."""
    year, month = text.split("-")
    return 12 * int(year) + int(month) - 1


def month_text(month: int) -> str:
    """The counted month as "YYYY-MM"."""
    return f"{month // 12:04}-{month % 12 + 1:02}"


def season(profile: Profile, model_year: int) -> tuple[int, int]:
    """First and last month of the model year's season as counted months, both included."""
    starts = profile.season_starts
    first = 12 * (model_year - (starts > YEAR_BEFORE)) + starts - 1
    return first, first + 11


def model_year_of(profile: Profile, month: int) -> int:
    """The model year in whose season the counted month lies."""
    starts = profile.season_starts
    return (month - (starts - 1)) // 12 + (starts > YEAR_BEFORE)
