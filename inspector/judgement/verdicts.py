"""What one relation makes of two numbers: the word, the sentence, and the conditions it hangs on."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from inspector.judgement.comparing import compared, condition_words, level
from inspector.judgement.gaps import Gap, reach, spread
from inspector.judgement.lookalikes import alike
from inspector.judgement.sides import typed_of
from inspector.judgement.stand import Stand
from inspector.judgement.wording import joined
from inspector.profile.words import RelationKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.comparing import Condition
    from inspector.judgement.gaps import Spread
    from inspector.judgement.sides import Side, Spot
    from inspector.profile.numbers import Relation

NO_LIMIT = say("The usual gap is no limit: a machine can have left the works further apart.")


@dataclass(frozen=True, slots=True)
class Verdict:
    """How two numbers stand by one relation; ``more`` are sentences that explain it."""

    stand: Stand
    sentence: Say
    raises: bool = False
    gap: int | None = None
    expected_gap: int | None = None
    conditions: tuple[Condition, ...] = ()
    more: tuple[Say, ...] = ()


def verdict(relation: Relation, one: Side, other: Side) -> Verdict:
    """How the numbers of the relation's two places stand, in its order."""
    if relation.kind is RelationKind.UNKNOWN:
        return Verdict(Stand.NO_RULE, say("no rule: how the two stood as built is not known"))
    missing = [why for side in (one, other) if (why := side.missing or side.replaced) is not None]
    if missing:
        return Verdict(Stand.CANNOT, say("cannot compare: {why}", why=joined(missing, "; ")))
    if relation.kind is not RelationKind.SAME:
        bare = [side.name for side in (one, other) if not any(can for can, _ in side.counting)]
        if bare:
            return Verdict(Stand.CANNOT, say("cannot compare: no figure of the serial was read on the {places}",
                                             places=joined(bare)))  # fmt: skip
    match relation.kind:
        case RelationKind.SAME:
            return _same(one, other)
        case RelationKind.SAME_SERIAL:
            return _same_serial(one, other)
        case RelationKind.CLOSE:
            return _close(relation, one, other)
        case _:
            return _apart(relation, one, other)


def _same(one: Side, other: Side) -> Verdict:
    names = (one.name, other.name)
    whole = compared(one.spots, other.spots)
    if whole is None:
        letters, serial = _letters(one, other), compared(one.counting, other.counting)
        whole = None if letters is None or serial is None else (*letters, *serial)
    if whole is not None:
        return _agree(whole, names)
    serial = compared(*level(one.counting, other.counting)) if one.counting and other.counting else None
    if serial is not None:
        return _letters_differ(one, other, serial)
    return _disagree(one, other, one.typed, other.typed)


def _same_serial(one: Side, other: Side) -> Verdict:
    serial = compared(*level(one.counting, other.counting))
    if serial is None:
        return _disagree(one, other, typed_of(one.counting), typed_of(other.counting))
    found = _agree(serial, (one.name, other.name))
    if one.letters and one.letters == other.letters and not set("?[") & set(one.letters):
        both = say("Both carry {letters}; as built the letters differed.", letters=one.letters)
        return replace(found, raises=True, more=(*found.more, both))
    same = say("Same serial; {letters}.", letters=_whose_letters(one, other))
    return replace(found, more=(*found.more, same))


def _agree(conditions: Sequence[Condition], names: tuple[str, str]) -> Verdict:
    if not conditions:
        return Verdict(Stand.AGREE, say("agree as read"))
    told = say("agree if {conditions}", conditions=condition_words(conditions, names))
    return Verdict(Stand.AGREE_IF, told, conditions=tuple(conditions), more=_which(conditions, names))


def _which(conditions: Sequence[Condition], names: tuple[str, str]) -> tuple[Say, ...]:
    """Whose figures are meant, where the sentence does not say it."""
    sides = {side for c in conditions for side, _ in c.figures}
    return (say("The figures are counted on the {place}.", place=names[sides.pop()]),) if len(sides) == 1 else ()


def _letters(one: Side, other: Side) -> tuple[Condition, ...] | None:
    """Whether what stands beside the serials agrees, also where one has in front what the other has behind."""
    straight = compared(one.before, other.before), compared(one.behind, other.behind)
    if straight[0] is not None and straight[1] is not None:
        return (*straight[0], *straight[1])
    around = (*other.before, *other.behind)
    moved = compared((*one.behind, *one.before), around)
    return compared((*one.before, *one.behind), (*other.behind, *other.before)) if moved is None else moved


def _letters_differ(one: Side, other: Side, serial: Sequence[Condition]) -> Verdict:
    names = (one.name, other.name)
    agree = say("the serials agree if {conditions}", conditions=condition_words(serial, names))
    if one.letters == other.letters:
        what = say("{one} and {other} differ by zeros in front", one=one.typed, other=other.typed)
    else:
        what = _whose_letters(one, other)
    told = say("disagree as read: {serials}; {what}", serials=agree if serial else say("the serials agree"), what=what)
    return Verdict(Stand.DISAGREE, told, True, conditions=tuple(serial), more=_which(serial, names))


def _whose_letters(one: Side, other: Side) -> Say:
    """What stands beside either serial and not beside the other's."""
    ours = [group for group in one.groups if group not in other.groups]
    theirs = [group for group in other.groups if group not in one.groups]
    return say("the {second} has {theirs}, the {first} {ours}", first=one.name, second=other.name,
               ours=_group_words(ours, one), theirs=_group_words(theirs, other))  # fmt: skip


def _group_words(groups: Sequence[str], side: Side) -> Say | str:
    return " ".join(groups) or side.letters or say("no letters")


def _disagree(one: Side, other: Side, shown: str, theirs: str) -> Verdict:
    told = say("disagree as read: {one} and {other}", one=shown, other=theirs)
    return Verdict(Stand.DISAGREE, told, True, more=_one_figure(one.counting, other.counting))


def _one_figure(one: Sequence[Spot], other: Sequence[Spot]) -> tuple[Say, ...]:
    """Said where a single figure of the serials differs, and whether the two look alike."""
    ours, theirs = level(one, other)
    apart = [(a, b) for a, b in zip(ours, theirs, strict=True) if compared((a,), (b,)) is None]
    if len(apart) != 1:
        return ()
    a, b = typed_of([apart[0][0]]), typed_of([apart[0][1]])
    if len(a) == 1 and len(b) == 1 and alike(a, b):
        return (
            say("They differ in one figure, {one} and {other}, which look alike: read both again.", one=a, other=b),
        )
    return (say("They differ in one figure, {one} and {other}.", one=a, other=b),)


def _apart(relation: Relation, one: Side, other: Side) -> Verdict:
    """Where the two had nothing to do with each other as built, or were never equal."""
    never = relation.kind is RelationKind.NEVER_EQUAL
    names = (one.name, other.name)
    serial = compared(*level(one.counting, other.counting))
    if serial is None:
        return Verdict(Stand.DIFFER, say("differ, as built"))
    if serial:
        told = say("agree if {conditions}; else they differ, as built", conditions=condition_words(serial, names))
        return Verdict(Stand.AGREE_IF, told, conditions=serial, more=_which(serial, names))
    if never:
        chance = say("Equal figures can be chance: it is a question to ask, and no answer.")
        return Verdict(Stand.AGREE, say("agree as read; as built they were as a rule not equal"), True, more=(chance,))
    return Verdict(Stand.AGREE, say("agree as read; as built the two had nothing to do with each other"))


def _close(relation: Relation, one: Side, other: Side) -> Verdict:
    found = spread(relation, one.counting, other.counting)
    if found is None:
        return _far(relation, one, other)
    single = {(g.gap, g.expected) for g in found.gaps}
    if len(single) == 1:
        return _gap(relation, found.gaps[0])
    if relation.usual_gap is None:
        return Verdict(Stand.DIFFER, say("differ, as built: no usual gap is known"))
    least, most = min(g.gap for g in found.gaps), max(g.gap for g in found.gaps)
    if found.usual == found.count:
        return _all_close(least, most)
    if not found.usual:
        return _none_close(relation, found.gaps[0], least, most)
    return _close_if(found, (one.name, other.name), _reach_words(least, most))


def _far(relation: Relation, one: Side, other: Side) -> Verdict:
    """As for few open figures, but by the least and most gap alone."""
    found = reach(relation, one.counting, other.counting)
    if found is None:
        return Verdict(Stand.CANNOT, say("cannot compare: a figure of the serials was read as a letter"))
    if relation.usual_gap is None:
        return Verdict(Stand.DIFFER, say("differ, as built: no usual gap is known"))
    within = found.within(relation.usual_gap)
    if within is None:
        told = say("close as usual for some of the pairs that they can be")
        return Verdict(Stand.AGREE_IF, told, more=(_reach_words(found.least, found.most),))
    if within:
        return _all_close(found.least, found.most)
    return _none_close(relation, Gap(found.least, found.least - found.below), found.least, found.most)


def _all_close(least: int, most: int) -> Verdict:
    told = say("close as usual, whatever the open figures are")
    return Verdict(Stand.CLOSE, told, more=(_reach_words(least, most),))


def _none_close(relation: Relation, gap: Gap, least: int, most: int) -> Verdict:
    told = say("unusual gap, whatever the open figures are: {least} to {most}, where {usual} is usual",
               least=signed(least), most=signed(most), usual=_usual(relation, gap))  # fmt: skip
    return Verdict(Stand.UNUSUAL, told, True, more=(NO_LIMIT,))


def _reach_words(least: int, most: int) -> Say:
    return say("With what is open the gap is {least} to {most}.", least=signed(least), most=signed(most))


def _close_if(found: Spread, names: tuple[str, str], reached: Say) -> Verdict:
    if not found.conditions:
        told = say(
            "close as usual for {usual} of the {count} pairs that they can be", usual=found.usual, count=found.count
        )
        return Verdict(Stand.AGREE_IF, told, more=(reached,))
    told = say("close as usual if {conditions}", conditions=condition_words(found.conditions, names))
    more = (*_which(found.conditions, names), reached)
    return Verdict(Stand.AGREE_IF, told, conditions=found.conditions, more=more)


def _gap(relation: Relation, gap: Gap) -> Verdict:
    usual = relation.usual_gap
    if usual is None:
        told = say("differ, as built: {gap} apart, and no usual gap is known", gap=_apart_words(relation, gap))
        return Verdict(Stand.DIFFER, told, gap=gap.gap, expected_gap=gap.expected)
    if gap.off <= usual:
        if not gap.gap:
            chance = say("They were counted apart: equal serials can be chance.")
            return Verdict(Stand.CLOSE, say("close as usual: equal"), gap=0, expected_gap=gap.expected, more=(chance,))
        told = say("close as usual: {gap} apart", gap=_apart_words(relation, gap))
        return Verdict(Stand.CLOSE, told, gap=gap.gap, expected_gap=gap.expected)
    told = say("unusual gap: {gap} apart, where {usual} is usual", gap=_apart_words(relation, gap),
               usual=_usual(relation, gap))  # fmt: skip
    return Verdict(Stand.UNUSUAL, told, True, gap.gap, gap.expected, more=(NO_LIMIT,))


def _apart_words(relation: Relation, gap: Gap) -> str:
    return signed(gap.gap) if relation.gap_points else str(abs(gap.gap))


def _usual(relation: Relation, gap: Gap) -> Say:
    if relation.gap_points:
        return say("{expected}, give or take {usual},", expected=signed(gap.expected), usual=relation.usual_gap)
    return say("up to {usual}", usual=relation.usual_gap)


def signed(number: int) -> str:
    """The number with its sign, nought without."""
    return f"{number:+d}".replace("-", "\N{MINUS SIGN}") if number else "0"
