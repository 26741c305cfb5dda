"""One slip of a pen: a number that a paper quotes, beside the one on the metal, apart by a single thing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.comparing import Condition, compared, either
from inspector.judgement.lookalikes import alike
from inspector.judgement.sides import typed_of
from inspector.judgement.wording import joined
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.judgement.sides import Side, Spot

DROPPED, ALIKE, SWAPPED = "dropped prefix", "look-alike", "swapped neighbours"
MISSING, EXTRA = "missing figure", "figure too many"
MOST_OPEN = 2  # open figures beyond which a slip would be guessed at


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip by its name, in words, and what has to be so for it to be the only one (metal is side 0, paper 1)."""

    name: str
    words: Say
    conditions: tuple[Condition, ...] = ()


def slip_between(metal: Side, paper: Sequence[Spot]) -> Slip | None:
    """The one slip that leads from the metal's number to the paper's, that with the fewest conditions; or None."""
    found = [
        *_dropped(metal, paper), *_look_alike(metal.spots, paper), *_swapped(metal.spots, paper),
        *_missing(metal.spots, paper), *_too_many(metal.spots, paper),
    ]  # fmt: skip
    return min(found, key=lambda slip: len(slip.conditions), default=None)


def _dropped(metal: Side, paper: Sequence[Spot]) -> Iterable[Slip]:
    """What stands in front of the serial, or of a typed space, is not on the paper."""
    for start in sorted({metal.serial[0], *metal.breaks} - {0}):
        conditions = compared(metal.spots[start:], paper)
        if conditions is not None:
            prefix = typed_of(metal.spots[:start])
            yield Slip(DROPPED, say("the paper leaves out {prefix} in front", prefix=prefix), conditions)


def _look_alike(metal: Sequence[Spot], paper: Sequence[Spot]) -> Iterable[Slip]:
    """One figure is another that looks like it."""
    apart = _apart(metal, paper)
    if len(apart) != 1:
        return
    at = apart[0]
    (ours, number), (theirs, _) = metal[at], paper[at]
    pairs = [(a, b) for a in sorted(ours or ()) for b in sorted(theirs or ()) if alike(a, b)]
    rest = compared((*metal[:at], *metal[at + 1 :]), (*paper[:at], *paper[at + 1 :]))
    if not pairs or rest is None:
        return
    a, b = pairs[0]
    words = say("figure {number} was read as {a} and the paper has {b}, which look alike", number=number, a=a, b=b)
    yield Slip(ALIKE, words, (*_must_be(ours, number, tuple(dict.fromkeys(a for a, _ in pairs))), *rest))


def _must_be(can: frozenset[str] | None, number: int, chars: tuple[str, ...]) -> tuple[Condition, ...]:
    open_one = can is not None and len(can) > len(chars)
    return (Condition(((0, number),), chars, ()),) if open_one else ()


def _swapped(metal: Sequence[Spot], paper: Sequence[Spot]) -> Iterable[Slip]:
    """Two neighbours have changed places."""
    apart = _apart(metal, paper)
    if len(metal) != len(paper) or len(apart) > 2 or not apart:
        return
    for at in {apart[0], max(apart[0] - 1, 0)}:
        if not set(apart) <= {at, at + 1} or at + 1 >= len(metal):
            continue
        turned = (*metal[:at], metal[at + 1], metal[at], *metal[at + 2 :])
        conditions = compared(turned, paper)
        if conditions is not None:
            words = say("figures {first} and {second} stand the other way round on the paper",
                        first=metal[at][1], second=metal[at + 1][1])  # fmt: skip
            yield Slip(SWAPPED, words, conditions)


def _missing(metal: Sequence[Spot], paper: Sequence[Spot]) -> Iterable[Slip]:
    """One figure of the metal is not on the paper."""
    if len(paper) != len(metal) - 1:
        return
    found = [(at, c) for at in range(len(metal)) if (c := compared(_without(metal, at), paper)) is not None]
    if found:
        at, conditions = min(found, key=lambda one: len(one[1]))
        run = [str(metal[n][1]) for n, c in found if len(c) == len(conditions)]
        words = say("the paper leaves out figure {number} ({figure})", number=either(run), figure=typed_of([metal[at]]))
        yield Slip(MISSING, words, conditions)


def _too_many(metal: Sequence[Spot], paper: Sequence[Spot]) -> Iterable[Slip]:
    """The paper has one figure more than the metal."""
    if len(paper) != len(metal) + 1:
        return
    found = [(at, c) for at in range(len(paper)) if (c := compared(metal, _without(paper, at))) is not None]
    if found:
        at, conditions = min(found, key=lambda one: len(one[1]))
        run = [str(paper[n][1]) for n, c in found if len(c) == len(conditions)]
        words = say(
            "the paper has one figure more: its figure {number} ({figure})",
            number=either(run),
            figure=typed_of([paper[at]]),
        )
        yield Slip(EXTRA, words, conditions)


def _without(spots: Sequence[Spot], at: int) -> tuple[Spot, ...]:
    return (*spots[:at], *spots[at + 1 :])


def _apart(metal: Sequence[Spot], paper: Sequence[Spot]) -> list[int]:
    """Positions at which the two cannot agree; nothing where they are not of one length."""
    if len(metal) != len(paper):
        return []
    return [at for at, (a, b) in enumerate(zip(metal, paper, strict=True)) if compared((a,), (b,)) is None]


def differing(metal: Sequence[Spot], paper: Sequence[Spot]) -> Say | None:
    """The figures in which the two differ, where they are of one length and differ in three at most."""
    apart = _apart(metal, paper)
    if not apart or len(apart) > 3:
        return None
    return joined([_differs(metal[at], paper[at]) for at in apart])


def _differs(metal: Spot, paper: Spot) -> Say:
    ours, theirs = either(sorted(metal[0] or "?")), either(sorted(paper[0] or "?"))
    return say("figure {number} was read as {a} and the paper has {b}", number=metal[1], a=ours, b=theirs)
