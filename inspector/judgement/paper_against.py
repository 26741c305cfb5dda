"""A number that a paper quotes against the number of one place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.comparing import compared, condition_words
from inspector.judgement.sides import typed_of
from inspector.judgement.slips import MOST_OPEN, differing, slip_between
from inspector.judgement.stand import Stand
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.comparing import Condition
    from inspector.judgement.sides import Side, Spot

RANKED = (Stand.AGREE, Stand.AGREE_IF, Stand.SLIP, Stand.DISAGREE, Stand.CANNOT)


@dataclass(frozen=True, slots=True)
class Against:
    """How a quoted number stands to one place; ``far`` counts open figures, or changes where it disagrees."""

    side: Side
    stand: Stand
    sentence: Say
    slip: str = ""
    reasons: tuple[Say, ...] = ()
    far: int = 0

    @property
    def rank(self) -> tuple[int, int]:
        """Lower is nearer."""
        return RANKED.index(self.stand), self.far


def against(side: Side, spots: Sequence[Spot]) -> Against:
    """How the quoted figures stand to the number of the place."""
    if side.missing is not None:
        return Against(side, Stand.CANNOT, say("cannot compare: {why}", why=side.missing))
    if not any(can for can, _ in spots):
        return Against(side, Stand.CANNOT, say("cannot compare: no figure on the paper can be read"))
    for conditions, reasons in _orders(side, spots):
        if conditions is not None:
            return _agree(side, conditions, reasons)
    slip = slip_between(side, spots)
    if slip is None:
        return _apart(side, spots)
    if len(slip.conditions) > MOST_OPEN:
        return Against(side, Stand.CANNOT, say("cannot compare: too little of the {place} was read", place=side.name))
    told = say("one slip: {slip}", slip=slip.words)
    if slip.conditions:
        asked = condition_words(slip.conditions, _names(side))
        told = say("one slip if {conditions}: {slip}", conditions=asked, slip=slip.words)
    innocent = say("Such a slip is easily made; whoever keeps the papers can say.")
    reasons = (*_whose(side, slip.conditions), innocent)
    return Against(side, Stand.SLIP, told, slip.name, reasons, far=len(slip.conditions))


def _orders(side: Side, spots: Sequence[Spot]) -> list[tuple[tuple[Condition, ...] | None, tuple[Say, ...]]]:
    """The number as it stands, and with its parts in another order than on the metal."""
    turned = say("Its parts stand in another order than on the metal.")
    cuts = (*side.breaks, *side.serial)
    return [
        (compared(side.spots, spots), ()),
        *((compared((*side.spots[cut:], *side.spots[:cut]), spots), (turned,)) for cut in cuts),
    ]


def _agree(side: Side, conditions: tuple[Condition, ...], reasons: tuple[Say, ...]) -> Against:
    if not conditions:
        return Against(side, Stand.AGREE, say("agree as read"), reasons=reasons)
    told = say("agree if {conditions}", conditions=condition_words(conditions, _names(side)))
    more = (*_whose(side, conditions), *reasons)
    return Against(side, Stand.AGREE_IF, told, reasons=more, far=len(conditions))


def _names(side: Side) -> tuple[str | Say, str | Say]:
    return side.name, say("number on the paper")


def _whose(side: Side, conditions: Sequence[Condition]) -> tuple[Say, ...]:
    sides = {one for c in conditions for one, _ in c.figures}
    if len(sides) != 1:
        return ()
    return (say("The figures are counted on the {place}.", place=_names(side)[sides.pop()]),)


def _apart(side: Side, spots: Sequence[Spot]) -> Against:
    figures = differing(side.spots, spots)
    told = (
        figures or _behind(side, spots) or say("the {place} was read as {number}", place=side.name, number=side.typed)
    )
    size = len(side.counting)
    same = size and compared(side.counting, spots[-size:]) == () and not figures
    reasons = (say("The serials agree: {serial}.", serial=typed_of(side.counting)),) if same else ()
    sentence = say("disagree as read: {what}", what=told)
    return Against(side, Stand.DISAGREE, sentence, reasons=reasons, far=_changes(side.spots, spots))


def _behind(side: Side, spots: Sequence[Spot]) -> Say | None:
    """Said where the paper leaves out what stands behind."""
    for end in (*side.breaks, side.serial[1]):
        if end < len(side.spots) and compared(side.spots[:end], spots) == ():
            return say("the paper leaves out {suffix} behind", suffix=typed_of(side.spots[end:]))
    return None


def _changes(one: Sequence[Spot], other: Sequence[Spot]) -> int:
    """The fewest figures to change, add or leave out that make the two agree."""
    row = list(range(len(other) + 1))
    for at, spot in enumerate(one, start=1):
        before, row = row, [at]
        for n, theirs in enumerate(other, start=1):
            change = before[n - 1] + (compared((spot,), (theirs,)) is None)
            row.append(min(change, before[n] + 1, row[n - 1] + 1))
    return row[-1]
