"""The months in which the machine is claimed to have been built."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.season import season
from inspector.texts import MONTHS, Say, say

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.model import Record

SHORT = {str(name)[:3].lower(): number for number, name in enumerate(MONTHS, start=1)}
ISO = re.compile(r"\b(1[89]\d\d|20\d\d)-(0[1-9]|1[0-2])\b")
DAY = re.compile(r"\b(\d{1,2})[/.](\d{1,2})[/.](1[89]\d\d|20\d\d)\b")
MONTH = re.compile(r"\b(0?[1-9]|1[0-2])[/.](1[89]\d\d|20\d\d)\b")
YEAR = re.compile(r"\b(?:1[89]\d\d|20\d\d)\b")
WORD = re.compile(r"\b(?!may\b(?!,? *\d{4}))(?!May (?:be|have|well|not)\b)[A-Za-z]{3,9}\b")


@dataclass(frozen=True, slots=True)
class ClaimedBuild:
    """First and last counted month of the claimed build, both included, and how it is known in words."""

    first: int
    last: int
    words: Say


def claimed_build(profile: Profile, record: Record) -> ClaimedBuild | None:
    """The claimed build date where it can be read as one month or year, else the claimed model year's season."""
    told = months_in(record.claim.build_date)
    if told is not None:
        return ClaimedBuild(*told, say("the claimed build date, {date}", date=span_of_months(*told)))
    year = record.claim.model_year
    if year is None:
        return None
    first, last = season(profile, year)
    words = say("the season of the claimed {year}, {months}", year=year, months=span_of_months(first, last))
    return ClaimedBuild(first, last, words)


def months_in(text: str) -> tuple[int, int] | None:
    """First and last counted month of the one date a text speaks of, or None where it speaks of none or several.

    Where day and month could change places, from the earlier to the later of the two.
    """
    years = {int(one) for one in YEAR.findall(text)}
    if len(years) != 1:
        return None
    year = years.pop()
    written = _written(text)
    if written:
        return 12 * year + min(written) - 1, 12 * year + max(written) - 1
    named = {number for word in WORD.findall(text) if (number := _month_named(word))}
    if len(named) == 1:
        return 2 * (12 * year + named.pop() - 1,)
    return (12 * year, 12 * year + 11) if not named else None


def _written(text: str) -> set[int]:
    """The months that the figures of one date can mean; empty where there is no such date, or several."""
    dates = [{int(m[2])} for m in ISO.finditer(text)]
    dates += [{n for n in (int(m[1]), int(m[2])) if 1 <= n <= 12} for m in DAY.finditer(text)]
    dates = dates or [{int(m[1])} for m in MONTH.finditer(text)]
    return dates[0] if dates and all(one == dates[0] for one in dates) else set()


def _month_named(word: str) -> int | None:
    number = SHORT.get(word[:3].lower())
    full = number is not None and str(MONTHS[number - 1]).lower().startswith(word.lower())
    return number if full or word.lower() == "sept" else None


def span_of_months(first: int, last: int) -> Say:
    """The counted months in words: "March 1954", "1954" for a whole year, "August 1952 to July 1953"."""
    if first == last:
        return month_words(first)
    if first % 12 == 0 and last == first + 11:
        return say("{year}", year=first // 12)
    return say("{first} to {last}", first=month_words(first), last=month_words(last))


def month_words(month: int) -> Say:
    """The counted month in words: "March 1954"."""
    return say("{month} {year}", month=MONTHS[month % 12], year=month // 12)
