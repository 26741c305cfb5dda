"""The years assembly by assembly, and assemblies that have no year in common."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from inspector.judgement.together import parts_words, set_aside
from inspector.judgement.wording import lower_first
from inspector.judgement.year_words import assemblies_words, assembly_word, listed, many, years_words
from inspector.profile.words import Assembly
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from inspector.judgement.evidence import DatedPart
    from inspector.judgement.together import Together
    from inspector.profile.model import Profile


@dataclass(frozen=True, slots=True)
class AssemblyYears:
    """The years that one assembly's firm parts allow together.

    ``odd`` where one of its parts is among those set aside for the whole machine. ``parts`` are the ids of its
    firm parts; with none, nothing is shown and ``years`` is empty. Where its own parts contradict each other,
    ``years`` is empty too, ``left`` holds what is left when the fewest are set aside and ``odd_parts`` names those.
    ``conditional`` are years that hang on a figure not read clearly, which ``conditions`` name.
    """

    assembly: Assembly
    years: tuple[int, ...]
    odd: bool
    parts: tuple[str, ...]
    conditions: tuple[Say, ...]
    sentence: Say
    left: tuple[int, ...] = ()
    odd_parts: tuple[str, ...] = ()
    conditional: tuple[int, ...] = ()


Group = tuple[Assembly, ...]


def by_assembly(profile: Profile, parts: Sequence[DatedPart], whole: Together) -> tuple[AssemblyYears, ...]:
    """The years of every assembly that the profile has items or dated numbers of, in the order of assemblies."""
    have = {item.assembly for item in profile.items()} | {part.assembly for part in parts}
    firm: dict[Assembly, list[DatedPart]] = {a: [] for a in Assembly if a in have}
    for part in parts:
        if part.firm:
            firm[part.assembly].append(part)
    return tuple(_assembly(profile, assembly, own, whole) for assembly, own in firm.items())


def _assembly(profile: Profile, assembly: Assembly, own: list[DatedPart], whole: Together) -> AssemblyYears:
    if not own:
        nothing = say("{assembly}: nothing shows a year firmly.", assembly=assembly_word(assembly, first=True))
        return AssemblyYears(assembly, (), False, (), (), nothing)
    years, odd, left = set_aside({part.id: part.years for part in own})
    aside = {key for tie in whole.odd for key in tie}
    doubtful = [part for part in own if part.alternatives]
    return AssemblyYears(
        assembly=assembly,
        years=years,
        odd=any(part.id in aside for part in own),
        parts=tuple(part.id for part in own),
        conditions=tuple(part.condition for part in own if part.condition is not None),
        sentence=_sentence(profile, assembly, own, years),
        left=years or tuple(sorted({year for tie in left for year in tie})),
        odd_parts=tuple(dict.fromkeys(key for tie in odd for key in tie)),
        conditional=tuple(year for year in years if any(_hangs(part, year) for part in doubtful)),
    )


def _hangs(part: DatedPart, year: int) -> bool:
    """True where not every reading of the part's doubtful figures allows the year."""
    return any(year not in years for years, _ in part.alternatives)


def _sentence(profile: Profile, assembly: Assembly, own: list[DatedPart], years: tuple[int, ...]) -> Say:
    name = assembly_word(assembly, first=True)
    if not years:
        return say("{assembly}: no year that all its parts allow: {each}.", assembly=name, each=parts_words(own))
    narrowing = [part for part in own if part.years != profile.years]
    if not narrowing:
        return say("{assembly}: {years}, every year of the profile.", assembly=name, years=years_words(years))
    # A number and the item that holds it often carry one name.
    names = listed(list(dict.fromkeys(lower_first(part.name) for part in narrowing)))
    return say("{assembly}: {years}, from {names}.", assembly=name, years=years_words(years), names=names)


def groups_of(own: Sequence[AssemblyYears]) -> tuple[Group, ...]:
    """The fewest groups of assemblies that each share a year, the largest first; one where all share one.

    Exact: with at most eleven assemblies every choice of distinct years' columns can be looked at.
    """
    allow = {a.assembly: frozenset(a.left) for a in own if a.left}
    columns = _columns(allow)
    for size in range(1, len(columns) + 1):
        ways = [way for way in combinations(columns, size) if len(frozenset().union(*way)) == len(allow)]
        if ways:
            return _parted(max(ways, key=_largest_first), tuple(allow))
    return ()


def _columns(allow: Mapping[Assembly, frozenset[int]]) -> list[frozenset[Assembly]]:
    """What each year gathers, without those that another year gathers too, most first and then earliest."""
    years = sorted({year for those in allow.values() for year in those})
    gathered = list(dict.fromkeys(frozenset(a for a, those in allow.items() if y in those) for y in years))
    widest = [one for one in gathered if not any(one < other for other in gathered)]
    return sorted(widest, key=len, reverse=True)


def _largest_first(way: Sequence[frozenset[Assembly]]) -> tuple[int, ...]:
    return tuple(len(column) for column in way)


def _parted(way: Sequence[frozenset[Assembly]], order: Group) -> tuple[Group, ...]:
    """Each assembly in the first column that gathers it."""
    placed: set[Assembly] = set()
    found = []
    for column in way:
        found.append(tuple(a for a in order if a in column and a not in placed))
        placed |= column
    return tuple(found)


def groups_sentence(own: Sequence[AssemblyYears], groups: Sequence[Group]) -> Say | None:
    """Which assemblies go together where no year is common to all; None where one is, or nothing is shown."""
    if len(groups) < 2:
        return None
    allow = {a.assembly: frozenset(a.left) for a in own}
    shared = [frozenset.intersection(*(allow[a] for a in group)) for group in groups]
    told = [_group(group, shared[n], n == 0, len(groups)) for n, group in enumerate(groups)]
    sentence = told[0]
    for more in told[1:]:
        sentence = say("{some}; {more}", some=sentence, more=more)
    either = [a for a in groups[0] if all(allow[a] & years for years in shared)]
    rest = [a for a in groups[0] if a not in either]
    if either and rest:
        either_way = "{some}; {names} would go with either" if len(groups) == 2 else "{some}; {names} would go with any"
        sentence = say(either_way, some=sentence, names=assemblies_words(either))
    if min(len(rest), *(len(group) for group in groups[1:])) < 2:
        return say("{groups}.", groups=sentence)
    return say("{groups}. They may come from two machines made into one.", groups=sentence)


def _group(group: Group, years: frozenset[int], first: bool, count: int) -> Say:
    names, words = assemblies_words(group, first=first), years_words(years)
    if first:
        verb = "{names} allow {years}" if many(group) else "{names} allows {years}"
    else:
        verb = "{names} allow {years} only" if many(group) else "{names} allows {years} only"
    return say(verb, names=names, years=words)
