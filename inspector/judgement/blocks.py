"""The blocks of a rule as they count: where each begins and ends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.pattern import plain

if TYPE_CHECKING:
    from inspector.profile.numbers import NumberRange, NumberRule


@dataclass(frozen=True, slots=True)
class Block:
    """One row, and its place in the rule: its serials as stretches from first to last, both included.

    ``next_start`` ends a row known by its start only; ``open_end`` is True for the last such row, whose end nobody
    gives.
    """

    row: NumberRange
    at: int
    prefix: str
    suffix: str
    sources: tuple[str, ...]
    spans: tuple[tuple[int, int], ...]
    next_start: int | None = None
    open_end: bool = False


@dataclass(frozen=True, slots=True)
class Blocks:
    """All rows of a rule, and the letters in front of and behind serials that any of them names."""

    rows: tuple[Block, ...]
    prefixes: frozenset[str]
    suffixes: frozenset[str]


def blocks_of(rule: NumberRule) -> Blocks:
    """The rule's rows with their ends worked out; a row that names no source has the rule's."""
    serial = next((segment for segment in rule.segments if segment.id == rule.serial), None)
    low, high = serial.widths() if serial else (0, 0)
    made = tuple(_block(rule, at, low, high) for at in range(len(rule.ranges))) if serial else ()
    prefixes, suffixes = {block.prefix for block in made}, {block.suffix for block in made}
    return Blocks(made, frozenset(prefixes - {""}), frozenset(suffixes - {""}))


def _block(rule: NumberRule, at: int, low: int, high: int) -> Block:
    row = rule.ranges[at]
    sources = row.sources or rule.sources
    prefix, suffix = plain(row.prefix, rule.separators), plain(row.suffix, rule.separators)
    if row.last is not None:
        spans = ((row.first, row.last),) if row.last >= row.first else _wrapped(row.first, row.last, low, high)
        return Block(row, at, prefix, suffix, sources, spans)
    following = _next_start(rule, row, sources)
    last = following - 1 if following is not None else 10**high - 1
    return Block(row, at, prefix, suffix, sources, ((row.first, last),), following, following is None)


def _wrapped(first: int, last: int, low: int, high: int) -> tuple[tuple[int, int], ...]:
    """Up to the highest serial, and on from zero; the highest has the figures of the first where widths differ."""
    figures = high if low == high else len(str(first))
    return ((first, 10**figures - 1), (0, last))


def _next_start(rule: NumberRule, row: NumberRange, sources: tuple[str, ...]) -> int | None:
    """The next start of the same letters by one of the same sources."""
    starts = [
        other.first
        for other in rule.ranges
        if other.first > row.first
        and (other.prefix, other.suffix) == (row.prefix, row.suffix)
        and (set(other.sources or rule.sources) & set(sources) or not sources)
    ]
    return min(starts, default=None)
