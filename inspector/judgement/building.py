"""Model years and months of building: what codes and blocks say of each, brought together by the season."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from itertools import product
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from inspector.judgement.choices import Choice, Date
    from inspector.profile.numbers import NumberRange, NumberRule

Months = tuple[str, str]
_MONTHS = 12


@dataclass(frozen=True, slots=True)
class Season:
    """When a season starts, and which months of a rule lie in the year before its model year."""

    starts: int
    before: bool = False
    double: tuple[int, ...] = ()
    double_from: int | None = None

    def calendar_years(self, month: int, model_year: int) -> tuple[int, ...]:
        """The calendar years in which that month of a model year can lie."""
        if month in self.double and (self.double_from is None or model_year >= self.double_from):
            return (model_year - 1, model_year)
        early = self.before and self.starts > _MONTHS // 2 and month >= self.starts
        return (model_year - 1,) if early else (model_year,)

    def first_month(self, model_year: int) -> tuple[int, int]:
        """The calendar year and month in which the season of a model year begins."""
        return (model_year - 1 if self.starts > _MONTHS // 2 else model_year, self.starts)

    def model_years(self, built: Iterable[Months]) -> tuple[int, ...]:
        """The model years whose seasons the months of building touch."""
        return tuple(sorted({year for pair in built for year in range(self._of(pair[0]), self._of(pair[1]) + 1)}))

    def _of(self, text: str) -> int:
        year, month = map(int, text.split("-"))
        if self.starts > _MONTHS // 2:
            return year + (month >= self.starts)
        return year - (month < self.starts)


def season_of(rule: NumberRule, starts: int) -> Season:
    """The season as this rule counts it."""
    return Season(starts, rule.month_before_season, rule.double_months, rule.double_months_from)


def years_of(row: NumberRange | None, model_years: tuple[int, int]) -> frozenset[int] | None:
    """The model years that a block gives, an open end closed by the profile's; None where it gives none."""
    if row is None or (row.model_year is None and row.years is None):
        return None
    if row.years is None:
        return frozenset({row.model_year} if row.model_year else ())
    first, last = row.years.within(*model_years)
    return frozenset(range(first, last + 1))


def agreed(years: frozenset[int] | None, told: Sequence[Sequence[Choice]]) -> frozenset[int] | None:
    """The model years on which block and codes agree: empty where they contradict, None where nobody gives any."""
    for choices in told:
        said = {choice.date.model_year for choice in choices}
        if None not in said:
            found = frozenset(year for year in said if year is not None)
            years = found if years is None else years & found
    return years


def allowed(choices: Sequence[Choice], years: frozenset[int] | None) -> tuple[Choice, ...]:
    """The choices that do not contradict those model years."""
    if years is None:
        return tuple(choices)
    return tuple(choice for choice in choices if choice.date.model_year in years or choice.date.model_year is None)


def built_of(
    season: Season, row: NumberRange | None, years: frozenset[int] | None, told: Sequence[Sequence[Choice]]
) -> tuple[Months, ...]:
    """From and to month of every stretch of building that codes, else the block, allow; those that join are one."""
    dates = [dict.fromkeys(choice.date for choice in choices) for choices in told]
    found = {pair for combined in product(*dates) for pair in _of_dates(season, years, combined)}
    if not found and row is not None:
        found = set(_of_row(season, row, years))
    return joined_months(found)


def _of_dates(season: Season, years: frozenset[int] | None, dates: Sequence[Date]) -> Iterator[Months]:
    """The months that one combination of codes gives; none where no code speaks of a date."""
    model, built, months, weeks = (_one(dates, name) for name in ("model_year", "build_year", "month", "week"))
    if None in (model, built, months, weeks) or not (built or months or weeks):
        return
    known = [year for year in (model or years or ()) if years is None or year in years]
    for month in sorted(months or ()):
        calendar = sorted(built or {y for year in known for y in season.calendar_years(month, year)})
        yield from ((f"{year:04}-{month:02}",) * 2 for year in calendar)
    if not months:
        for year in sorted(built or known):
            yield from _of_weeks(year, weeks or set())


def _one(dates: Sequence[Date], name: str) -> set[int] | None:
    """What the codes say under that name: nothing, one value, or None where they contradict."""
    said: set[int] = {value for date in dates if (value := getattr(date, name)) is not None}
    return said if len(said) <= 1 else None


def _of_weeks(year: int, weeks: set[int]) -> Iterator[Months]:
    """The months of the weeks, counted as ISO 8601 does and cut at the ends of the year; the year without weeks."""
    if not weeks:
        yield f"{year:04}-01", f"{year:04}-12"
    for week in sorted(weeks):
        try:
            monday = date.fromisocalendar(year, week, 1)
        except ValueError:
            continue
        first, last = max(monday, date(year, 1, 1)), min(monday + timedelta(days=6), date(year, 12, 31))
        yield f"{first:%Y-%m}", f"{last:%Y-%m}"


def _of_row(season: Season, row: NumberRange, years: frozenset[int] | None) -> Iterator[Months]:
    """The block's months; a missing end is that of the season, or the other end where no year is given."""
    if row.built_from is None and row.built_to is None:
        return
    first, last = row.built_from, row.built_to
    if first is None:
        first = _text(season.first_month(min(years))) if years else last
    if last is None:
        last = _text(_month_before(season.first_month(max(years) + 1))) if years else first
    if first is not None and last is not None:
        yield (first, last) if first <= last else (last, last)


def _text(month: tuple[int, int]) -> str:
    return f"{month[0]:04}-{month[1]:02}"


def _month_before(month: tuple[int, int]) -> tuple[int, int]:
    return (month[0], month[1] - 1) if month[1] > 1 else (month[0] - 1, _MONTHS)


def joined_months(pairs: Iterable[Months]) -> tuple[Months, ...]:
    """The stretches in order, those that overlap or follow each other made one."""
    found: list[Months] = []
    for first, last in sorted(pairs):
        if found and _follows(found[-1][1], first):
            found[-1] = (found[-1][0], max(found[-1][1], last))
        else:
            found.append((first, last))
    return tuple(found)


def _follows(last: str, first: str) -> bool:
    year, month = map(int, first.split("-"))
    return _text(_month_before((year, month))) <= last
