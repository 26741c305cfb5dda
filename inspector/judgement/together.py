"""The years that all firm parts allow together, and the fewest parts to set aside where there are none."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined, lower_first
from inspector.judgement.year_words import count_word, listed, years_words
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from inspector.judgement.evidence import DatedPart


@dataclass(frozen=True, slots=True)
class Together:
    """Years that every firm part allows; where there are none, each way of setting the fewest parts aside.

    ``firm`` counts the firm parts: with none, ``years`` is empty as well, and nothing contradicts. ``odd`` holds
    the ids of the parts set aside, one tuple a tie, and ``left`` the years that the others then allow, in the same
    order; both are empty where all parts agree.
    """

    years: tuple[int, ...]
    odd: tuple[tuple[str, ...], ...]
    left: tuple[tuple[int, ...], ...]
    sentence: Say
    reasons: tuple[Say, ...]
    firm: int = 0

    @property
    def best(self) -> tuple[int, ...]:
        """The years allowed together, or else those that any of the ties leaves."""
        return self.years or tuple(sorted({year for left in self.left for year in left}))


def set_aside(
    ranges: Mapping[str, Collection[int]],
) -> tuple[tuple[int, ...], tuple[tuple[str, ...], ...], tuple[tuple[int, ...], ...]]:
    """Years in all of the ranges; else all smallest sets of ids without which some are left, and which are.

    A year's set is every id that does not allow it, so the smallest sets belong to the years that most ids allow:
    one count over parts and years finds every tie.
    """
    allowed: dict[int, set[str]] = {}
    for key, years in ranges.items():
        for year in years:
            allowed.setdefault(year, set()).add(key)
    most = max((len(keys) for keys in allowed.values()), default=0)
    best = [year for year in sorted(allowed) if len(allowed[year]) == most]
    if most == len(ranges):
        return tuple(best), (), ()
    ties: dict[tuple[str, ...], list[int]] = {}
    for year in best:
        ties.setdefault(tuple(key for key in ranges if key not in allowed[year]), []).append(year)
    return (), tuple(ties), tuple(tuple(left) for left in ties.values())


def together(parts: Sequence[DatedPart]) -> Together:
    """What the firm parts allow together; parts that show an era only, or nothing, change nothing."""
    firm = {part.id: part for part in parts if part.firm}
    years, odd, left = set_aside({key: part.years for key, part in firm.items()})
    ties = list(zip(odd, left, strict=True))
    return Together(years, odd, left, _sentence(firm, years, ties), _reasons(firm, years, ties), len(firm))


def allowed_words(years: Collection[int]) -> Say:
    """The years as an answer: "1953 alone" or "1953–55"."""
    return say("{year} alone" if len(years) == 1 else "{year}", year=years_words(years))


def _sentence(
    firm: Mapping[str, DatedPart], years: tuple[int, ...], ties: list[tuple[tuple[str, ...], tuple[int, ...]]]
) -> Say:
    if not firm:
        return say("Years: nothing shows one firmly yet.")
    if years:
        return say("Years: {years}.", years=allowed_words(years))
    if len(ties) == 1:
        return _one_way(firm, *ties[0])
    ways = [_way(firm, odd, left) for odd, left in ties]
    return say("Years: none that all parts allow. Set aside {ways}.", ways=joined(ways, "; or "))


def _one_way(firm: Mapping[str, DatedPart], odd: tuple[str, ...], left: tuple[int, ...]) -> Say:
    years, parts = allowed_words(left), [firm[key] for key in odd]
    if len(parts) == 1:
        return say("Years: {years}. Odd one out: {part}.", years=years, part=part_words(parts[0]))
    return say("Years: {years}. Odd ones out: {names}.", years=years, names=parts_words(parts))


def _way(firm: Mapping[str, DatedPart], odd: tuple[str, ...], left: tuple[int, ...]) -> Say:
    names = parts_words([firm[key] for key in odd])
    return say("{names}, and {years} is left", names=names, years=years_words(left))


def part_words(part: DatedPart) -> Say:
    """The part with the years it allows: "fuel tank, 1955–58"."""
    return say("{part}, {years}", part=lower_first(part.name), years=years_words(part.years))


def parts_words(parts: Sequence[DatedPart]) -> Say:
    """The parts as a list, each with the years it allows in brackets; none twice."""
    told = dict.fromkeys((lower_first(part.name), years_words(part.years)) for part in parts)
    return listed([say("{part} ({years})", part=name, years=years) for name, years in told])


def _reasons(
    firm: Mapping[str, DatedPart], years: tuple[int, ...], ties: list[tuple[tuple[str, ...], tuple[int, ...]]]
) -> tuple[Say, ...]:
    if not firm:
        return (say("No part is dated by its form, its number or its code with a source better than memory."),)
    if years and len(firm) == 1:
        return (say("The one firmly dated part allows these years."),)
    if years:
        return (say("Every one of the {count} firmly dated parts allows these years.", count=count_word(len(firm))),)
    fewest = len(ties[0][0])
    few = say("Of {count} firmly dated parts, at least {few} must be set aside.",
              count=count_word(len(firm)), few=count_word(fewest))  # fmt: skip
    if len(ties) == 1:
        return (few, say("There is only one way to set so few aside."))
    return (few, say("There are {ways} ways to set so few aside; nothing shown decides between them.",
                     ways=count_word(len(ties))))  # fmt: skip
