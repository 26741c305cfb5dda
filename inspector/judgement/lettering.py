"""The rows of a rule whose letters can stand around a serial, as the figures are divided."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from inspector.judgement.ranges import largest, smallest
from inspector.profile.words import SegmentKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from inspector.judgement.blocks import Block, Blocks
    from inspector.judgement.matching import Division, Stretch
    from inspector.judgement.pattern import Pattern


def serial_at(division: Division, serial: str | None) -> int | None:
    """The place of the stretch that the rows count, or None."""
    return next((n for n, one in enumerate(division) if one.segment.id == serial), None)


def in_reach(rows: Blocks, division: Division, serial: int, pattern: Pattern) -> Iterator[tuple[Block, Division]]:
    """The rows that the figures of the serial can reach, as ``laid`` gives them."""
    sets = division[serial].digits(pattern)
    low, high = smallest(sets, 0, 10 ** len(sets)), largest(sets, 0, 10 ** len(sets))
    if low is not None and high is not None:
        near = [block for block in rows.rows if any(first <= high and last >= low for first, last in block.spans)]
        yield from laid(rows, near, division, serial)


def laid(rows: Blocks, some: Sequence[Block], division: Division, serial: int) -> Iterator[tuple[Block, Division]]:
    """Those rows whose letters can stand around the serial, with the stretches narrowed to them."""
    numbered = list(enumerate(division))
    before, behind = numbered[:serial][::-1], numbered[serial + 1 :]
    known: dict[tuple[str, str], Division | None] = {}
    for block in some:
        key = (block.prefix, block.suffix)
        if key not in known:
            front = lettered(before, block.prefix, rows.prefixes, before=True)
            back = lettered(behind, block.suffix, rows.suffixes, before=False)
            known[key] = None if front is None or back is None else _narrowed(division, {**front, **back})
        narrowed = known[key]
        if narrowed is not None:
            yield block, narrowed


def _narrowed(division: Division, asked: Mapping[int, frozenset[str]]) -> Division:
    return tuple(
        replace(one, choices=tuple(c for c in one.choices or () if c.text in asked[at])) if at in asked else one
        for at, one in enumerate(division)
    )


def lettered(
    around: Sequence[tuple[int, Stretch]], text: str, others: frozenset[str], *, before: bool
) -> Mapping[int, frozenset[str]] | None:
    """What a row's letters ask of the stretches before (or behind) the serial, nearest first, by their place.

    Whole stretches spell the letters; figures between are passed over. A row without letters does not fit where
    those of another row stand. None where the row does not fit.
    """
    lettered_only = [(at, one) for at, one in around if one.segment.kind is not SegmentKind.DIGITS]
    if text:
        return _spelled(lettered_only, text, before=before)
    if not others or not lettered_only:
        return {}
    at, nearest = lettered_only[0]
    left = frozenset(choice.text for choice in nearest.choices or ()) - others
    if not left or any(_certain(lettered_only, other, before=before) for other in others):
        return None
    return {at: left}


def _spelled(around: Sequence[tuple[int, Stretch]], text: str, *, before: bool) -> dict[int, frozenset[str]] | None:
    asked: dict[int, frozenset[str]] = {}
    for at, stretch in around:
        if not text:
            break
        size = stretch.end - stretch.start
        piece, text = (text[-size:], text[:-size]) if before else (text[:size], text[size:])
        if all(choice.text != piece for choice in stretch.choices or ()):
            return None
        asked[at] = frozenset({piece})
    return asked if not text else None


def _certain(around: Sequence[tuple[int, Stretch]], text: str, *, before: bool) -> bool:
    """True when those letters stand there whatever the reading leaves open."""
    asked = _spelled(around, text, before=before)
    if not asked:
        return False
    by_place = dict(around)
    return all({choice.text for choice in by_place[at].choices or ()} == wanted for at, wanted in asked.items())
