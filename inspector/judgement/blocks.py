"""The blocks of a rule as they count: where each begins and ends, and which letters stand around its serials."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.pattern import plain
from inspector.profile.words import SegmentKind

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from inspector.judgement.matching import Stretch
    from inspector.profile.numbers import NumberRange, NumberRule


@dataclass(frozen=True, slots=True)
class Block:
    """One row: its serials as stretches from first to last, both included; ``next_start`` ends a row known by its
    start only, and ``open_end`` is True for the last such row, whose end nobody gives."""

    row: NumberRange
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
    made = tuple(_block(rule, row, low, high) for row in rule.ranges) if serial else ()
    prefixes, suffixes = {block.prefix for block in made}, {block.suffix for block in made}
    return Blocks(made, frozenset(prefixes - {""}), frozenset(suffixes - {""}))


def _block(rule: NumberRule, row: NumberRange, low: int, high: int) -> Block:
    sources = row.sources or rule.sources
    prefix, suffix = plain(row.prefix, rule.separators), plain(row.suffix, rule.separators)
    if row.last is not None:
        spans = ((row.first, row.last),) if row.last >= row.first else _wrapped(row.first, row.last, low, high)
        return Block(row, prefix, suffix, sources, spans)
    following = _next_start(rule, row, sources)
    last = following - 1 if following is not None else 10**high - 1
    return Block(row, prefix, suffix, sources, ((row.first, last),), following, following is None)


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
