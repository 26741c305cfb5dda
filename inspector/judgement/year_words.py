"""Years, counts and assemblies in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.wording import joined
from inspector.profile.words import Assembly
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence

COUNTS = (
    say("none"), say("one"), say("two"), say("three"), say("four"), say("five"), say("six"),
    say("seven"), say("eight"), say("nine"), say("ten"), say("eleven"), say("twelve"),
)  # fmt: skip
FIRST_COUNTS = (
    say("None"), say("One"), say("Two"), say("Three"), say("Four"), say("Five"), say("Six"),
    say("Seven"), say("Eight"), say("Nine"), say("Ten"), say("Eleven"), say("Twelve"),
)  # fmt: skip
MOST_YEARS = 16  # in a chart; of a longer profile only what its bars and the claim reach
MANY = frozenset({Assembly.WHEELS, Assembly.ELECTRICS, Assembly.CONTROLS, Assembly.FASTENERS})


def years_words(years: Collection[int]) -> str:
    """The years as runs, first to last: "1953", "1955–58", "1952, 1954–56"; empty for none."""
    if not years:
        return ""
    first, last = min(years), max(years)
    if last - first + 1 == len(years):
        return _run(first, last)
    return ", ".join(_run(first, last) for first, last in runs(years))


def runs(years: Collection[int]) -> list[tuple[int, int]]:
    """The years as unbroken runs from first to last, both included."""
    found: list[tuple[int, int]] = []
    for year in sorted(years):
        if found and year == found[-1][1] + 1:
            found[-1] = (found[-1][0], year)
        else:
            found.append((year, year))
    return found


def chart_years(years: Sequence[int], claimed: int | None, spoken: Iterable[int]) -> tuple[int, int]:
    """First and last year of a chart: all of ``years``, or where those are many what is ``spoken`` of and claimed."""
    reached = (*spoken, *((claimed,) if claimed else ()))
    inside = [year for year in reached if years[0] <= year <= years[-1]]
    if len(years) <= MOST_YEARS or not inside:
        return years[0], years[-1]
    return max(min(inside) - 1, years[0]), min(max(inside) + 1, years[-1])


def signed(decibans: float) -> str:
    """Decibans with their sign and one place."""
    return f"{decibans:+.1f}".replace("-", "\N{MINUS SIGN}")


def _run(first: int, last: int) -> str:
    if first == last:
        return str(first)
    return f"{first}–{last % 100:02}" if first // 100 == last // 100 else f"{first}–{last}"


def count_word(count: int, *, first: bool = False) -> Say | str:
    """The count as a word up to twelve, as figures beyond; ``first`` where it begins a sentence."""
    words = FIRST_COUNTS if first else COUNTS
    return words[count] if count < len(words) else str(count)


def listed(names: Sequence[Say | str]) -> Say:
    """The names as one list: "a", "a and b", "a, b and c"."""
    if len(names) < 2:
        return joined(list(names))
    return say("{some} and {last}", some=joined(list(names[:-1])), last=names[-1])


def any_of(names: Sequence[Say | str]) -> Say:
    """The names as a choice: "a", "a or b", "a, b or c"."""
    if len(names) < 2:
        return joined(list(names))
    return say("{some} or {last}", some=joined(list(names[:-1])), last=names[-1])


def assemblies_words(assemblies: Sequence[Assembly], *, first: bool = False) -> Say:
    """The assemblies as a list, the first with a capital where it begins a sentence."""
    names = [assembly_word(a, first=first and n == 0) for n, a in enumerate(assemblies)]
    return listed(names)


def assembly_word(assembly: Assembly, *, first: bool = False) -> Say:
    """The assembly's name as it stands in a sentence."""
    # In a list the "and" of "wheels and brakes" would read as one more member.
    word = "wheels" if assembly is Assembly.WHEELS else assembly.value
    return say(word.capitalize() if first else word)


def many(assemblies: Sequence[Assembly]) -> bool:
    """True where the verb after these names stands in the plural."""
    return len(assemblies) > 1 or any(a in MANY for a in assemblies)
