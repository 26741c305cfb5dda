"""How many numbers are left when several rows allow some of the same ones: each is counted once, none is listed."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from math import prod
from typing import TYPE_CHECKING

from inspector.judgement.ranges import how_many

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.judgement.ranges import Sets

Spans = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Letters:
    """A stretch that is one of these texts."""

    start: int
    end: int
    texts: frozenset[str]


@dataclass(frozen=True, slots=True)
class Count:
    """A stretch of digits, each one of its set, whose value lies in one of the spans."""

    start: int
    end: int
    sets: Sets
    spans: Spans


Cover = tuple[Letters | Count, ...]  # the numbers of one hit: stretches one after the other, from the first figure


def joined_spans(spans: Iterable[tuple[int, int]]) -> Spans:
    """The spans in order, those that overlap or follow each other made one."""
    found: list[tuple[int, int]] = []
    for low, high in sorted(span for span in spans if span[0] <= span[1]):
        if found and low <= found[-1][1] + 1:
            found[-1] = (found[-1][0], max(found[-1][1], high))
        else:
            found.append((low, high))
    return tuple(found)


def size_of(cover: Cover) -> int:
    """How many numbers the cover holds; its spans must not overlap."""
    return prod(len(one.texts) if isinstance(one, Letters) else _counted(one) for one in cover)


def _counted(one: Count) -> int:
    return sum(how_many(one.sets, low, high) for low, high in one.spans)


def numbers_in(covers: Iterable[Cover]) -> tuple[int, bool]:
    """How many different numbers the covers hold together, and whether that is exact; else it is how many at most."""
    merged = _merged(covers)
    if len(merged) == 1:
        return size_of(merged[0]), True
    walked = _walked(merged)
    return (sum(map(size_of, merged)), False) if walked is None else (walked, True)


def _merged(covers: Iterable[Cover]) -> tuple[Cover, ...]:
    """The covers, those that differ in the spans of one stretch only made one."""
    kept = tuple(dict.fromkeys(tuple(_tidy(one) for one in cover) for cover in covers))
    for at in range(max(map(len, kept), default=0)):
        kept = _merged_at(kept, at)
    return kept


def _tidy(one: Letters | Count) -> Letters | Count:
    return one if isinstance(one, Letters) else Count(one.start, one.end, one.sets, joined_spans(one.spans))


def _merged_at(covers: Sequence[Cover], at: int) -> tuple[Cover, ...]:
    """The covers with those made one that are alike but for the spans of the stretch at that place."""
    alike: dict[tuple[object, ...], list[Cover]] = {}
    for cover in covers:
        alike.setdefault(_key(cover, at), []).append(cover)
    return tuple(_one_of(some, at) for some in alike.values())


def _one_of(covers: Sequence[Cover], at: int) -> Cover:
    counts = [one for cover in covers if isinstance(one := _at(cover, at), Count)]
    if len(covers) == 1 or not counts:
        return covers[0]
    one, spans = counts[0], joined_spans(span for count in counts for span in count.spans)
    return (*covers[0][:at], Count(one.start, one.end, one.sets, spans), *covers[0][at + 1 :])


def _at(cover: Cover, at: int) -> Letters | Count | None:
    return cover[at] if at < len(cover) else None


def _key(cover: Cover, at: int) -> tuple[object, ...]:
    one = _at(cover, at)
    mine = (one.start, one.end, one.sets) if isinstance(one, Count) else one
    return (cover[:at], mine, cover[at + 1 :])


# Where covers divide the figures differently, the same number may lie in several. They are walked figure by figure, all
# at once: a state is how far each cover can have come, and two states that are equal have equally many numbers behind.

_Place = tuple[int, int, object]  # cover, stretch, and how far within the stretch
_INSIDE = "inside"
MOST_STATES = 1000


def _walked(covers: Sequence[Cover]) -> int | None:
    """How many numbers any of the covers holds; None where there are more states than can be walked in good time."""
    size = max((cover[-1].end for cover in covers if cover), default=0)
    start = frozenset((n, 0, how) for n, cover in enumerate(covers) for how in _entered(cover, 0))
    ways: dict[frozenset[_Place], int] = {start: 1} if start else {}
    for at in range(size):
        then: dict[frozenset[_Place], int] = {}
        for places, count in ways.items():
            for onward in _onward(covers, at, places):
                if onward:
                    then[onward] = then.get(onward, 0) + count
        if len(then) > MOST_STATES:
            return None
        ways = then
    return sum(ways.values())


def _entered(cover: Cover, stretch: int) -> list[object]:
    """How a stretch begins: all its texts, or each span with both bounds before it."""
    one = cover[stretch]
    if isinstance(one, Letters):
        return [one.texts]
    width = one.end - one.start
    spans = [(max(low, 0), min(high, 10**width - 1)) for low, high in one.spans]
    return [(str(low).zfill(width), str(high).zfill(width)) for low, high in spans if low <= high]


def _onward(covers: Sequence[Cover], at: int, places: frozenset[_Place]) -> Iterable[frozenset[_Place]]:
    """The state after each figure that any cover allows there."""
    found: dict[str, set[_Place]] = {}
    for n, stretch, how in places:
        for sign, then in _steps(covers[n][stretch], at, how):
            found.setdefault(sign, set()).update(_arrived(covers[n], n, stretch, at + 1, then))
    return [frozenset(places) for places in found.values()]


def _steps(one: Letters | Count, at: int, how: object) -> Iterable[tuple[str, object]]:
    if isinstance(one, Letters) and isinstance(how, frozenset):
        texts = sorted(how, key=lambda text: text[at - one.start])
        for sign, alike in groupby(texts, key=lambda text: text[at - one.start]):
            yield sign, frozenset(alike)
    elif isinstance(one, Count):
        for digit in one.sets[at - one.start]:
            if (then := _bounded(how, digit)) is not None:
                yield digit, then


def _bounded(how: object, digit: str) -> object | None:
    """What is left of the bounds after the digit; None where it leaves the span."""
    if not isinstance(how, tuple):
        return how
    low, high = how
    if (low and digit < low[0]) or (high and digit > high[0]):
        return None
    left = (low[1:] if low and digit == low[0] else "", high[1:] if high and digit == high[0] else "")
    return left if any(left) else _INSIDE


def _arrived(cover: Cover, n: int, stretch: int, at: int, how: object) -> Iterable[_Place]:
    if at < cover[stretch].end:
        return [(n, stretch, how)]
    if stretch + 1 == len(cover):
        return [(n, stretch, _INSIDE)]
    return [(n, stretch + 1, begun) for begun in _entered(cover, stretch + 1)]
