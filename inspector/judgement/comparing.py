"""Figure against figure: whether two numbers agree, disagree, or agree on conditions, and those in words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.sides import Spot

Names = tuple["str | Say", "str | Say"]  # of the two places, for sentences
NOUGHT: Spot = (frozenset("0"), 0)  # a zero that stands in front of a shorter number


@dataclass(frozen=True, slots=True)
class Condition:
    """What a figure has to be: side (0 or 1) and number of each figure meant, the characters, rising; unread ones.

    Two figures and no characters, or several, means that both are the same.
    """

    figures: tuple[tuple[int, int], ...]
    could_be: tuple[str, ...]
    unread: tuple[tuple[int, int], ...]


def compared(one: Sequence[Spot], other: Sequence[Spot]) -> tuple[Condition, ...] | None:
    """The conditions on which the two agree, none when they agree as they stand; None when they cannot agree."""
    if len(one) != len(other):
        return None
    found: list[Condition] = []
    for a, b in zip(one, other, strict=True):
        condition = _of(a, b)
        if condition is None:
            return None
        if condition.figures:
            found.append(condition)
    return tuple(found)


def level(one: Sequence[Spot], other: Sequence[Spot]) -> tuple[tuple[Spot, ...], tuple[Spot, ...]]:
    """Both as long as the longer, with zeros in front: 945 counts as 0945."""
    size = max(len(one), len(other))
    return _filled(one, size), _filled(other, size)


def _filled(spots: Sequence[Spot], size: int) -> tuple[Spot, ...]:
    return (*(NOUGHT for _ in range(size - len(spots))), *spots)


def _of(a: Spot, b: Spot) -> Condition | None:
    """The condition of one figure; without figures where none is needed, None where nothing would do."""
    (can_a, at_a), (can_b, at_b) = a, b
    if can_a is None or can_b is None:
        return _unread(a, b)
    shared = can_a & can_b
    if not shared:
        return None
    open_ones = tuple((side, at) for side, can, at in ((0, can_a, at_a), (1, can_b, at_b)) if len(can) > 1)
    return Condition(open_ones, tuple(sorted(shared)), ())


def _unread(a: Spot, b: Spot) -> Condition:
    (can_a, at_a), (can_b, at_b) = a, b
    unread = tuple((side, at) for side, (can, at) in enumerate((a, b)) if can is None)
    known = can_a or can_b
    both = ((0, at_a), (1, at_b))
    if known is None:
        return Condition(both, (), unread)
    return Condition(unread if len(known) == 1 else both, tuple(sorted(known)), unread)


def condition_words(conditions: Sequence[Condition], names: Names) -> Say:
    """The conditions after "if", every one named: "figure 3 is 1 and figure 5 is 8; figure 5 could not be read"."""
    named = len({side for c in conditions for side, _ in c.figures}) > 1
    asked = joined([_asked(c, names, named=named) for c in conditions], " and ")
    unread = _unread_words(conditions, names, named=named)
    return asked if unread is None else say("{conditions}; {unread}", conditions=asked, unread=unread)


def _asked(condition: Condition, names: Names, *, named: bool) -> Say:
    figures = [_figure(side, at, names, named=named) for side, at in condition.figures]
    what = either(condition.could_be) if condition.could_be else None
    if len(figures) == 1:
        return say("{figure} is {what}", figure=figures[0], what=what)
    one, other = figures
    if what is None:
        return say("{one} and {other} are the same", one=one, other=other)
    return say("{one} and {other} are both {what}", one=one, other=other, what=what)


def _figure(side: int, at: int, names: Names, *, named: bool) -> Say:
    if named:
        return say("figure {number} of the {place}", number=at, place=names[side])
    return say("figure {number}", number=at)


def _unread_words(conditions: Sequence[Condition], names: Names, *, named: bool) -> Say | None:
    unread = [figure for c in conditions for figure in c.unread]
    asked = [figure for c in conditions for figure in c.figures]
    if not unread:
        return None
    if unread == asked and len(unread) == 1:
        return say("it could not be read")
    if unread == asked:
        return say("they could not be read")
    words = [_figure(side, at, names, named=named) for side, at in unread]
    return say("{figures} could not be read", figures=joined(words, " and "))


def either(words: Sequence[str]) -> Say:
    """The words as alternatives: A, B or C."""
    *first, last = words
    if not first:
        return say("{one}", one=last)
    return say("{first} or {last}", first=joined(first), last=last)


def if_figures(conditions: Sequence[Condition]) -> tuple[tuple[int, str], ...]:
    """Each condition as number and characters; no characters where two figures have to be the same."""
    return tuple((at, "".join(c.could_be)) for c in conditions for _, at in c.figures)


def if_sides(conditions: Sequence[Condition]) -> tuple[int, ...]:
    """The side of each of ``if_figures``."""
    return tuple(side for c in conditions for side, _ in c.figures)
