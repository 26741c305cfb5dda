"""The rule that a number came nearest where none reads it, and how it misses it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.building import agreed, years_of
from inspector.judgement.lettering import laid, serial_at
from inspector.judgement.misses import CODE, Miss, misses
from inspector.judgement.ranges import all_of, largest, smallest
from inspector.judgement.year_words import years_words
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from inspector.judgement.blocks import Block
    from inspector.judgement.matching import Divided, Division, Ready
    from inspector.judgement.pattern import Pattern
    from inspector.judgement.ranges import Sets
    from inspector.profile.model import Profile


@dataclass(frozen=True, slots=True)
class Nearest:
    """The rule that a number came nearest, and how it misses it.

    ``follows`` is True where it is written as the rule has it, and lies outside the rule's blocks.
    """

    rule: str
    title: str
    sentence: Say
    follows: bool = False


def nearest(profile: Profile, rules: Sequence[Divided]) -> Nearest | None:
    """The rule missed by least, the first of several; None where nothing comes near."""
    found = [
        (miss.far, miss.by, n, miss.how) for n, laid_on in enumerate(rules) for miss in _all(profile, laid_on)
    ]
    if not found:
        return None
    _, _, n, how = min(found, key=lambda one: one[:3])
    rule = rules[n].made.rule
    return Nearest(rule.id, rule.title, how, bool(rules[n].ways))


def _all(profile: Profile, one: Divided) -> Iterator[Miss]:
    for division in one.ways:
        yield from _beside(profile, one.made, division, one.pattern)
    if not one.ways:
        yield from misses(one.made, one.pattern)


def _beside(profile: Profile, made: Ready, division: Division, pattern: Pattern) -> Iterator[Miss]:
    """How a number that follows the rule misses its rows."""
    at = serial_at(division, made.rule.serial)
    if at is None:
        return
    rows = [block for block, _ in laid(made.blocks, made.blocks.rows, division, at)]
    if not rows:
        yield Miss(CODE, say("no block with these letters is known"))
        return
    sets = division[at].digits(pattern)
    low, high = smallest(sets, 0, 10 ** len(sets)), largest(sets, 0, 10 ** len(sets))
    if low is None or high is None:
        return
    front = pattern.typed(0, division[at].start)
    spans = [span for block in rows for span in block.spans]
    if any(smallest(sets, *span) is not None for span in spans):
        yield Miss(0, _contradicted(profile, made, division, rows, sets))
    else:
        yield _outside(sets, low, high, spans, front)


def _contradicted(profile: Profile, made: Ready, division: Division, rows: Sequence[Block], sets: Sets) -> Say:
    """Code and block give different model years."""
    told = [stretch.choices for stretch in division if stretch.choices]
    by_code = agreed(None, told) or frozenset[int]()
    by_block = {
        year
        for block in rows
        if any(smallest(sets, *span) is not None for span in block.spans)
        for year in years_of(block.row, profile.model_years) or ()
    }
    return say(
        "the code says {code}, the block of this serial {block}",
        code=years_words(by_code),
        block=years_words(by_block),
    )


def _outside(sets: Sets, low: int, high: int, spans: Sequence[tuple[int, int]], front: str) -> Miss:
    """How far the serials lie from the nearest block on each side."""
    below = max((last for _, last in spans if last < low), default=None)
    above = min((first for first, _ in spans if first > high), default=None)
    by = min(
        low - below if below is not None else 10 ** len(sets), above - high if above is not None else 10 ** len(sets)
    )
    return Miss(0, _beside_words(sets, low, high, below, above, front), by)


def _beside_words(sets: Sets, low: int, high: int, below: int | None, above: int | None, front: str) -> Say:
    width = len(sets)
    if below is not None and above is not None:
        last, first = _number(front, below, width), _number(front, above, width)
        return say("between two blocks, that to {last} and that from {first}", last=last, first=first)
    if all_of(sets) > 1:
        return say("none of the {count} numbers that it can be is in a block", count=all_of(sets))
    if below is not None:
        last = _number(front, below, width)
        return say("{count} above the last known number, {last}", count=low - below, last=last)
    first = _number(front, above or 0, width)
    return say("{count} below the first known number, {first}", count=(above or 0) - high, first=first)


def _number(front: str, serial: int, width: int) -> str:
    return f"{front}{str(serial).zfill(width)}"
