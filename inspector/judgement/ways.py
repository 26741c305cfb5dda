"""The ways in which one stretch of a reading can stand, parted by what its doubtful figures are."""

from __future__ import annotations

from dataclasses import dataclass
from math import prod
from typing import TYPE_CHECKING

from inspector.judgement.building import allowed
from inspector.judgement.ranges import cubes, largest, smallest
from inspector.judgement.remaining import Count, Letters, joined_spans

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from inspector.judgement.choices import Choice
    from inspector.judgement.matching import Stretch
    from inspector.judgement.pattern import Pattern
    from inspector.judgement.ranges import Cube, Sets
    from inspector.judgement.remaining import Spans

Conditions = tuple[tuple[int, str], ...]
MOST_CONDITIONS = 256


@dataclass(frozen=True, slots=True)
class Way:
    """One way in which a stretch can stand: what it needs, and its choices or the digits and spans that remain."""

    needs: Conditions
    choices: tuple[Choice, ...] = ()
    sets: Sets = ()
    spans: Spans = ()


def ways_of(stretch: Stretch, pattern: Pattern, spans: Sequence[tuple[int, int]] | None) -> tuple[Way, ...]:
    """The ways of one stretch that differ in what its doubtful figures are."""
    if stretch.choices is None:
        return tuple(_counted(stretch, pattern, spans or ((0, 10 ** (stretch.end - stretch.start) - 1),)))
    by_needs: dict[Conditions, list[Choice]] = {}
    for choice in stretch.choices:
        by_needs.setdefault(pattern.conditions(choice.text, stretch.start), []).append(choice)
    return tuple(Way(needs, tuple(choices)) for needs, choices in by_needs.items())


def _counted(stretch: Stretch, pattern: Pattern, spans: Sequence[tuple[int, int]]) -> Iterator[Way]:
    sets = stretch.digits(pattern)
    branching = [at - stretch.start for at in pattern.doubtful if stretch.start <= at < stretch.end]
    if not branching:
        reached = tuple(span for span in spans if smallest(sets, *span) is not None)
        if reached:
            yield Way((), (), sets, reached)
        return
    limited = [at for at in branching if len(sets[at]) < len(pattern.figures[at + stretch.start] or ())]
    found: dict[Cube, list[tuple[int, int]]] = {}
    for low, high in spans:
        for cube in cubes(sets, branching, limited, low, high):
            found.setdefault(cube, []).append((low, high))
    for cube, kept in found.items():
        needs = tuple((pattern.numbers[stretch.start + at], digit) for at, digit in cube)
        yield Way(needs, (), tuple(dict(cube).get(at, digits) for at, digits in enumerate(sets)), tuple(kept))


def piece_of(stretch: Stretch, way: Way, years: frozenset[int] | None) -> Letters | Count:
    """The numbers of the stretch that stand in that way and do not contradict those model years."""
    if stretch.choices is None:
        return Count(stretch.start, stretch.end, way.sets, way.spans)
    texts = frozenset(choice.text for choice in allowed(way.choices, years))
    return Letters(stretch.start, stretch.end, texts)


def bounds_of(piece: Letters | Count) -> tuple[int | None, int | None]:
    """The smallest and the largest serial that remain."""
    if isinstance(piece, Letters):
        return None, None
    firsts = [one for low, high in piece.spans if (one := smallest(piece.sets, low, high)) is not None]
    lasts = [one for low, high in piece.spans if (one := largest(piece.sets, low, high)) is not None]
    return min(firsts, default=None), max(lasts, default=None)


def within(ways: Sequence[tuple[Way, ...]]) -> list[tuple[Way, ...]]:
    """The ways, the stretch with most of them taken together as long as they would make too many hits."""
    kept = list(ways)
    while prod(len(some) for some in kept) > MOST_CONDITIONS:
        at = max(range(len(kept)), key=lambda n: len(kept[n]))
        kept[at] = (_together(kept[at]),)
    return kept


def _together(ways: Sequence[Way]) -> Way:
    choices = tuple(choice for way in ways for choice in way.choices)
    sets = tuple("".join(sorted(set("".join(digits)))) for digits in zip(*(way.sets for way in ways), strict=True))
    return Way((), choices, sets, joined_spans(span for way in ways for span in way.spans))
