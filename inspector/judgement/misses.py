"""By how little a reading misses a rule: one stretch that does not fit, all others fitting."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.matching import stretches
from inspector.profile.words import Gives, SegmentKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from inspector.judgement.choices import Part
    from inspector.judgement.matching import Ready
    from inspector.judgement.pattern import Pattern

ZERO, NEVER, CODE, LETTER, LENGTH, TEXT, WHOLE = range(1, 8)  # how far off, the nearest first


@dataclass(frozen=True, slots=True)
class Miss:
    """How far off, and the sentence part that says how; ``by`` is how many numbers off, within a rule's letters."""

    far: int
    how: Say
    by: int = 0


def misses(made: Ready, pattern: Pattern) -> Iterator[Miss]:
    """Every way in which one stretch alone keeps the figures from following the rule."""
    for order in made.orders:
        ahead, behind = _reached(order, pattern), _left(order, pattern)
        for at, part in enumerate(order):
            for start in ahead[at]:
                for end in behind[at + 1]:
                    if end >= start:
                        yield from _of_part(made, part, pattern, start, end)


def _reached(order: Sequence[Part], pattern: Pattern) -> list[set[int]]:
    """Positions to which the first parts can come, for none of them, one, two and so on."""
    found = [{0}]
    for part in order:
        found.append({s.end if s else start for start in found[-1] for s in stretches(part, pattern, start)})
    return found


def _left(order: Sequence[Part], pattern: Pattern) -> list[set[int]]:
    """Positions from which the last parts come to the end exactly, for all of them, all but one and so on."""
    found = [{len(pattern)}]
    for part in reversed(order):
        ends = found[-1]
        starts = range(len(pattern) + 1)
        found.append({at for at in starts if any((s.end if s else at) in ends for s in stretches(part, pattern, at))})
    return found[::-1]


def _of_part(made: Ready, part: Part, pattern: Pattern, start: int, end: int) -> Iterator[Miss]:
    if part.by_length is None:
        yield from _of_digits(part, pattern, start, end)
    else:
        yield from _of_texts(made, part, pattern, start, end)


def _of_digits(part: Part, pattern: Pattern, start: int, end: int) -> Iterator[Miss]:
    size, sets = end - start, pattern.digits(start, end)
    letters = [at for at, digits in enumerate(sets) if not digits]
    if part.shortest <= size <= part.longest and len(letters) == 1:
        at = start + letters[0]
        yield Miss(LETTER, say("figure {number}, {figure}, is no digit",
                               number=pattern.numbers[at], figure=pattern.typed(at, at + 1)))  # fmt: skip
    if size == part.longest + 1 and len(letters) == 1:
        at = start + letters[0]
        yield Miss(LENGTH, say("figure {number}, {figure}, is one too many",
                               number=pattern.numbers[at], figure=pattern.typed(at, at + 1)))  # fmt: skip
    if letters or not size:
        return
    if size > part.shortest and sets[0] == "0":
        yield Miss(ZERO, say("a zero too many in front"))
    if size > part.longest:
        yield Miss(LENGTH + size - part.longest - 1, _too_many(size - part.longest))
    if size < part.shortest:
        yield Miss(LENGTH + part.shortest - size - 1, _too_few(part.shortest - size))


def _too_many(count: int) -> Say:
    return say("one figure too many") if count == 1 else say("{count} figures too many", count=count)


def _too_few(count: int) -> Say:
    return say("one figure too few") if count == 1 else say("{count} figures too few", count=count)


def _of_texts(made: Ready, part: Part, pattern: Pattern, start: int, end: int) -> Iterator[Miss]:
    size = end - start
    if part.segment.kind is SegmentKind.LITERAL:
        yield from _of_literal(part, pattern, start, end)
    elif size in (part.by_length or {}):
        yield _of_code(made, part, pattern, start, end)


def _of_literal(part: Part, pattern: Pattern, start: int, end: int) -> Iterator[Miss]:
    for length, (choice, *_) in (part.by_length or {}).items():
        if end == start:
            yield Miss(WHOLE, say("{text} is missing", text=choice.text))
        elif end - start == length:
            off = [n for n in range(length) if not pattern.fits(choice.text[n], start + n)]
            if len(off) == 1:
                yield Miss(TEXT, say("figure {number} is {right} by the rule", number=pattern.numbers[start + off[0]],
                                     right=choice.text[off[0]]))  # fmt: skip
            elif off:
                yield Miss(WHOLE + len(off), _instead(choice.text, pattern.typed(start, end)))


def _instead(right: str, typed: str) -> Say:
    return say("{right} by the rule, where {typed} was read", right=right, typed=typed)


def _of_code(made: Ready, part: Part, pattern: Pattern, start: int, end: int) -> Miss:
    typed, gives = pattern.typed(start, end), part.segment.gives
    kind = say("code") if gives is Gives.OTHER else say(gives.value)
    if end - start == 1 and typed in made.rule.never_used.upper():
        return Miss(NEVER, say("{letter} is never used for the {kind}", letter=typed, kind=kind))
    what = say("{code} is not known as the {kind}", code=typed, kind=kind)
    return Miss(CODE if end - start == 1 else WHOLE, what)
