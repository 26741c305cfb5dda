"""Months counted one after the other, and the season of a model year in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.building import Season

if TYPE_CHECKING:
    from inspector.profile.model import Profile


def month_of(text: str) -> int:
    """The month "YYYY-MM" as a count of months, so that months can be subtracted."""
    year, month = text.split("-")
    return 12 * int(year) + int(month) - 1


def month_text(month: int) -> str:
    """The counted month as "YYYY-MM"."""
    return f"{month // 12:04}-{month % 12 + 1:02}"


def season(profile: Profile, model_year: int) -> tuple[int, int]:
    """First and last month of the model year's season as counted months, both included."""
    year, month = Season(profile.season_starts).first_month(model_year)
    first = 12 * year + month - 1
    return first, first + 11


def model_year_of(profile: Profile, month: int) -> int:
    """The model year in whose season the counted month lies."""
    text = month_text(month)
    return Season(profile.season_starts).model_years([(text, text)])[0]
