"""The ways in which a reading divides into the segments of a rule, one after the other as they are asked for."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice
from typing import TYPE_CHECKING

from inspector.judgement.blocks import blocks_of
from inspector.judgement.choices import parts_of
from inspector.judgement.pattern import pattern_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from inspector.judgement.blocks import Blocks
    from inspector.judgement.choices import Choice, Part
    from inspector.judgement.pattern import Pattern
    from inspector.profile.numbers import NumberRule, Segment
    from inspector.record.reading import Figure

MOST_WAYS = 100


@dataclass(frozen=True, slots=True)
class Stretch:
    """A segment laid on the figures from start to before end; ``choices`` that fit, None for figures that count."""

    segment: Segment
    start: int
    end: int
    choices: tuple[Choice, ...] | None
    padded: bool = True

    def digits(self, pattern: Pattern) -> tuple[str, ...]:
        """The digits that each figure can be; where zeros are not stamped in front, the first is none."""
        sets = pattern.digits(self.start, self.end)
        return sets if self.padded else (sets[0].lstrip("0"), *sets[1:])


Division = tuple[Stretch, ...]


@dataclass(frozen=True, slots=True)
class Ready:
    """A rule made ready for matching: its orders, each as parts one after the other, and its rows."""

    rule: NumberRule
    orders: tuple[tuple[Part, ...], ...]
    blocks: Blocks


def ready(rule: NumberRule) -> Ready:
    """The rule with its tables laid out by length."""
    parts = parts_of(rule)
    orders = tuple(tuple(parts[name] for name in order if name in parts) for order in rule.sequences())
    return Ready(rule, orders, blocks_of(rule))


@dataclass(frozen=True, slots=True)
class Divided:
    """A rule laid on a reading: the ways in which it divides the figures, and whether there are more than are tried."""

    made: Ready
    pattern: Pattern
    ways: tuple[Division, ...]
    more: bool


def divided(made: Ready, figures: Sequence[Figure]) -> Divided:
    """The rule laid on the figures."""
    pattern = pattern_of(figures, made.rule.separators)
    ways = tuple(islice(divisions(made, pattern), MOST_WAYS + 1))
    return Divided(made, pattern, ways[:MOST_WAYS], len(ways) > MOST_WAYS)


def divisions(made: Ready, pattern: Pattern) -> Iterator[Division]:
    """Every way in which the rule divides the figures, none of them left over."""
    for order in made.orders:
        yield from _divided(order, pattern)


def _divided(order: Sequence[Part], pattern: Pattern) -> Iterator[Division]:
    least, most = _reach(order)
    dead: set[tuple[int, int]] = set()
    size = len(pattern)

    def onward(at: int, start: int) -> Iterator[Division]:
        if (at, start) in dead or not least[at] <= size - start <= most[at]:
            return
        if at == len(order):
            yield ()
            return
        none = True
        for stretch in stretches(order[at], pattern, start):
            for rest in onward(at + 1, stretch.end if stretch else start):
                none = False
                yield (stretch, *rest) if stretch else rest
        if none:
            dead.add((at, start))

    yield from onward(0, 0)


def _reach(order: Sequence[Part]) -> tuple[list[int], list[int]]:
    """Fewest and most figures from each part on."""
    least, most = [0], [0]
    for part in reversed(order):
        least.append(least[-1] + (0 if part.optional else part.shortest))
        most.append(most[-1] + part.longest)
    return least[::-1], most[::-1]


def stretches(part: Part, pattern: Pattern, start: int) -> Iterator[Stretch | None]:
    """The part laid on the figures from there on, in each length; None where it is left out."""
    if part.by_length is None:
        yield from _counted(part, pattern, start)
    else:
        for length, choices in part.by_length.items():
            found = tuple(choice for choice in choices if pattern.fits(choice.text, start))
            if found:
                yield Stretch(part.segment, start, start + length, found)
    if part.optional:
        yield None


def _counted(part: Part, pattern: Pattern, start: int) -> Iterator[Stretch]:
    """Figures that count: zeros stand in front only as far as the least width asks for them."""
    sets = pattern.digits(start, min(start + part.longest, len(pattern)))
    for length in range(1, len(sets) + 1):
        if not sets[length - 1]:
            return
        padded = length <= part.wide
        if length >= part.shortest and (padded or sets[0] != "0"):
            yield Stretch(part.segment, start, start + length, None, padded)
