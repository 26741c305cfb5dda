"""A tyre's date code and size, read as the rules of the marking have it; age is shown, never a verdict."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from inspector.texts import Say, say

# 64 FR 36807 (8 July 1999): week and year in four figures; three figures, with one for the year, were allowed to
# mid-2000. The decade of three figures is not stamped. A published reading of 031 as 1981 or 1991 leaves 1971 out.
THREE_FIGURE_YEARS = range(1972, 2001)
FOUR_FIGURE_YEARS = range(2000, 2100)
LAST_THREE_FIGURE = date(2000, 7, 1)
ADVICE = say(
    "A trade association advised in June 2001 to fit no tyre older than 6 years and to replace all at 10 years "
    "from making (quoted on two pages). Some makers say 6 to 10 years; the US agency sets no limit (2008). "
    "Advice, no rule of law: "
    "a qualified person looks at cracks, shape and plies."
)
YOUNG, OLD = 5, 10  # years, the steps of a tyre maker's advice: expert check from 5, replacement at 10


class NotATyreCode(ValueError):
    """What was typed is no date code; ``said`` tells what to look for."""

    def __init__(self, said: Say) -> None:
        super().__init__(str(said))
        self.said = said


@dataclass(frozen=True, slots=True)
class TyreDate:
    """When a tyre was made: the week, every year the code allows, the first day of each such week, and in words."""

    week: int
    years: tuple[int, ...]
    days: tuple[date, ...]
    sentence: Say


@dataclass(frozen=True, slots=True)
class TyreAge:
    """Least and greatest age in whole years on a day, the sentence, and the advice with who gives it."""

    least: int
    greatest: int
    sentence: Say
    advice: Say


def tyre_date(code: str) -> TyreDate:
    """The week and years of the last group of figures of a DOT number.

    Four figures are week and year from 2000 on; three are week and last figure of the year, every decade kept. Raises
    NotATyreCode for anything else, week 00 and weeks above 53.
    """
    figures = code.strip().split()[-1] if code.strip() else ""
    if len(figures) not in (3, 4) or not (figures.isascii() and figures.isdigit()):
        raise NotATyreCode(say("A tyre's date is the last group on one side-wall: four figures, or three before 2000."))
    week = int(figures[:2])
    if not 1 <= week <= 53:
        raise NotATyreCode(say("Week {week} does not exist; read the first two figures again.", week=figures[:2]))
    years = _years(figures[2:])
    days = tuple(first_day(year, week) for year in years)
    if len(figures) == 3:
        kept = [(y, d) for y, d in zip(years, days, strict=True) if d < LAST_THREE_FIGURE]
        years, days = tuple(y for y, _ in kept), tuple(d for _, d in kept)
    return TyreDate(week, years, days, _said(week, years))


def _years(stamped: str) -> tuple[int, ...]:
    if len(stamped) == 2:
        return (FOUR_FIGURE_YEARS.start + int(stamped),)
    return tuple(year for year in THREE_FIGURE_YEARS if year % 10 == int(stamped))


def first_day(year: int, week: int) -> date:
    """The first day of a tyre week: week 1 begins with the first full calendar week, Sunday to Saturday."""
    new_year = date(year, 1, 1)
    return new_year + timedelta(days=(6 - new_year.weekday()) % 7 + 7 * (week - 1))


def _said(week: int, years: tuple[int, ...]) -> Say:
    if len(years) == 1:
        return say("Made in week {week} of {year}.", week=week, year=years[0])
    *first, last = years
    words = ", ".join(map(str, first))
    return say(
        "Made in week {week} of {first} or {last}: the decade is not stamped.", week=week, first=words, last=last
    )


def tyre_age(made: TyreDate, on: date) -> TyreAge:
    """How old the tyre is on that day, by every year its code allows; raises NotATyreCode for a code of a later day."""
    past = [day for day in made.days if day <= on]
    if not past:
        raise NotATyreCode(
            say("{made} That is later than the day of the inspection; read it again.", made=made.sentence)
        )
    least, greatest = _whole_years(max(past), on), _whole_years(min(past), on)
    if least == greatest:
        sentence = say("{made} {years} years old.", made=made.sentence, years=least)
    else:
        sentence = say("{made} {least} or up to {most} years old.", made=made.sentence, least=least, most=greatest)
    return TyreAge(least, greatest, sentence, _advice(least))


def _whole_years(day: date, on: date) -> int:
    return on.year - day.year - ((on.month, on.day) < (day.month, day.day))


def _advice(least: int) -> Say:
    if least < YOUNG:
        return ADVICE
    if least < OLD:
        return say("A tyre maker advises a yearly look by an expert from 5 years. {advice}", advice=ADVICE)
    return say("A tyre maker advises to replace at 10 years. {advice}", advice=ADVICE)


@dataclass(frozen=True, slots=True)
class SizeRow:
    """An alphanumeric size, the metric one, and the inch ones; about the same size, never leave to interchange."""

    end: str
    alphanumeric: str
    metric: str
    inch: str


SIZE_SOURCE = "wcpmx.com/Motorcycle-Tire-Sizes"
SIZES = tuple(
    SizeRow(*row)
    for row in (
        ("front", "MH90", "80/90", "2.50-2.75"), ("front", "MJ90", "90/90", "2.75-3.00"),
        ("front", "MM90", "100/90", "3.25-3.50"), ("front", "MN90", "110/90", "3.75-4.00"),
        ("front", "MR90", "120/90", "4.25-4.50"), ("front", "MT90", "130/90", "5.00-5.10"),
        ("rear", "MN90", "110/90", "3.75-4.25"), ("rear", "MP85", "120/80", "4.50-4.75"),
        ("rear", "MT90", "130/90", "5.00-5.10"), ("rear", "MU90", "140/90", "5.50-6.00"),
        ("rear", "MV85", "150/80", "6.00-6.25"),
    )
)  # fmt: skip


def about_the_same(size: str, end: str) -> SizeRow | None:
    """The row of about that size at that end (``front`` or ``rear``), or None where the table has none.

    ``size`` is ``MT90``, ``130/90`` or an inch width such as ``3.50``; a rim behind it is left aside.
    """
    wanted = size.strip().upper().split("-")[0].split(" ")[0]
    for row in SIZES:
        if row.end == end and (wanted in (row.alphanumeric, row.metric) or _within(wanted, row.inch)):
            return row
    return None


def _within(width: str, span: str) -> bool:
    low, high = (float(end) for end in span.split("-"))
    try:
        return low <= float(width) <= high
    except ValueError:
        return False


def outer_diameter(width_mm: float, ratio: float, rim_inches: float) -> float:
    """The diameter of a tyre in mm by its marking: rim at 25.4 mm an inch and twice the height, width times ratio."""
    return rim_inches * 25.4 + 2 * width_mm * ratio / 100
