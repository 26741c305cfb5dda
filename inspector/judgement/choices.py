"""What a stretch of a number can be: the letters of a text or table, and figures that say a date by their value."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.pattern import plain
from inspector.profile.words import Gives, SegmentKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from inspector.profile.numbers import Code, NumberRule, Segment

FIRST_YEAR, LAST_YEAR = 1880, 2100
DATING = frozenset({Gives.MODEL_YEAR, Gives.BUILD_YEAR, Gives.MONTH, Gives.WEEK, Gives.DAY})


@dataclass(frozen=True, slots=True)
class Date:
    """What a stretch says of a date; None where it does not."""

    model_year: int | None = None
    build_year: int | None = None
    month: int | None = None
    week: int | None = None
    day: int | None = None

    def says(self) -> bool:
        """True when it says anything."""
        return self != _SILENT


_SILENT = Date()


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that a stretch can be: its letters in capitals without separators, and what they say."""

    text: str
    means: str = ""
    date: Date = _SILENT
    model: str = ""
    market: str = ""
    sources: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """A segment made ready for matching: its choices by length, or None for figures that count freely."""

    segment: Segment
    by_length: Mapping[int, tuple[Choice, ...]] | None
    shortest: int
    longest: int
    wide: int

    @property
    def optional(self) -> bool:
        """True when the stretch may be left out."""
        return self.segment.optional


def parts_of(rule: NumberRule) -> dict[str, Part]:
    """Every segment of the rule by its id, ready for matching."""
    return {segment.id: _part(rule, segment) for segment in rule.segments}


def _part(rule: NumberRule, segment: Segment) -> Part:
    low, high = segment.widths()
    if segment.kind is SegmentKind.DIGITS and (segment.id == rule.serial or segment.gives not in DATING):
        return Part(segment, None, low, high, low)
    by_length: dict[int, list[Choice]] = {}
    for choice in _choices(rule, segment):
        by_length.setdefault(len(choice.text), []).append(choice)
    lengths = by_length or {1: []}
    found = {length: tuple(choices) for length, choices in by_length.items()}
    return Part(segment, found, min(lengths), max(lengths), low)


def _choices(rule: NumberRule, segment: Segment) -> Iterable[Choice]:
    if segment.kind is SegmentKind.DIGITS:
        return _values(rule, segment)
    if segment.kind is SegmentKind.LITERAL:
        text = plain(segment.text, rule.separators)
        return (Choice(text),) if text else ()
    return _codes(rule, segment)


def _codes(rule: NumberRule, segment: Segment) -> Iterator[Choice]:
    """The rows of the table; a code of one letter that is never used is none."""
    never = {plain(letter, "") for letter in rule.never_used}
    for code in segment.codes:
        text = plain(code.code, rule.separators)
        if text and text not in never:
            yield _of_code(segment, code, text)


def _of_code(segment: Segment, code: Code, text: str) -> Choice:
    model = code.model or (code.code if segment.gives is Gives.MODEL else "")
    market = (code.means or code.code) if segment.gives is Gives.MARKET else ""
    date = Date(code.model_year, code.build_year, code.month)
    return Choice(text, code.means, date, model, market, code.sources, code.note)


def _values(rule: NumberRule, segment: Segment) -> Iterator[Choice]:
    """The values that the figures can say, from the dates there are and not from the figures there could be."""
    low, high = segment.widths()
    for value, date in _dates(rule, segment.gives):
        for plus in segment.plus or (0,):
            figures = str(value - plus)
            for width in range(max(low, len(figures)), high + 1):
                if value >= plus:
                    yield Choice(figures.zfill(width), str(value), date, sources=rule.sources)


def _dates(rule: NumberRule, gives: Gives) -> Iterator[tuple[int, Date]]:
    first, last = rule.years.within(FIRST_YEAR, LAST_YEAR)
    match gives:
        case Gives.MODEL_YEAR:
            yield from ((year, Date(model_year=year)) for year in range(first, last + 1))
        case Gives.BUILD_YEAR:
            # A machine of the first or last season can have been built in the year before or after.
            yield from ((year, Date(build_year=year)) for year in range(first - 1, last + 2))
        case Gives.MONTH:
            yield from ((month, Date(month=month)) for month in range(1, 13))
        case Gives.WEEK:
            yield from ((week, Date(week=week)) for week in range(1, 54))
        case Gives.DAY:
            yield from ((day, Date(day=day)) for day in range(1, 32))
