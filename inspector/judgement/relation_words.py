"""The rule by which two places were compared, and how both were read, in sentences."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.sides import typed_of
from inspector.judgement.wording import joined, span_words
from inspector.profile.expected import sources_of
from inspector.profile.words import RelationKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.judgement.sides import Side
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Relation


AS_READ = "{place}: {typed}, {how}."


def without_readings(sentences: Iterable[Say]) -> tuple[Say, ...]:
    """The sentences without those that only repeat a number and how it was read."""
    return tuple(sentence for sentence in sentences if sentence.template != AS_READ)


def how_words(sentence: Say, pair: tuple[Side, Side]) -> Say:
    """The sentence with how each number was read that was not read from the metal."""
    far = [say("{place} {how}", place=s.name, how=s.read_how) for s in pair if s.pattern is not None and s.read_how]
    return say("{sentence} ({how})", sentence=sentence, how=joined(far)) if far else sentence


def rule_words(profile: Profile, relation: Relation, holding: Sequence[Relation]) -> tuple[Say, ...]:
    """What the profile says of the two places, by whom, and where another source has it otherwise."""
    said: list[Say] = [_rule(profile, relation)]
    if relation.note:
        said.append(say("{note}", note=relation.note))
    for other in holding:
        if other is not relation:
            said.append(say("Another source: {rule}", rule=_rule(profile, other)))
            said += [say("{note}", note=other.note)] if other.note else []
    return tuple(said)


def _rule(profile: Profile, relation: Relation) -> Say:
    words, source = _kind(relation), _source(profile, relation)
    if relation.years.first is None and relation.years.last is None:
        return say("{words} ({source}).", words=words, source=source)
    years = span_words(relation.years.first, relation.years.last)
    return say("{words}, {years} ({source}).", words=words, years=years, source=source)


def _kind(relation: Relation) -> Say:
    match relation.kind:
        case RelationKind.SAME:
            return say("As built both carried the same number")
        case RelationKind.SAME_SERIAL:
            return say("As built both carried the same serial with other letters")
        case RelationKind.CLOSE:
            return _close(relation)
        case RelationKind.NEVER_EQUAL:
            return say("As built the two were as a rule not equal")
        case RelationKind.NONE:
            return say("As built the two had nothing to do with each other")
        case _:
            return say("How the two stood as built is not known")


def _close(relation: Relation) -> Say:
    if relation.usual_gap is None:
        return say("As built the serials lay close, how close is not known")
    if relation.gap_points:
        return say("As built the gap changed along the run, usually within {usual} of what is expected there",
                   usual=relation.usual_gap)  # fmt: skip
    return say("As built the serials usually lay up to {usual} apart, and could lie further", usual=relation.usual_gap)


def _source(profile: Profile, relation: Relation) -> Say:
    titles = [source.title for source in sources_of(profile, relation)]
    if not titles:
        return say("no source")
    named = joined(titles)
    return say("{source}, {at}", source=named, at=relation.at) if relation.at else named


def read_words(sides: Sequence[Side], *, guessed: bool = False) -> tuple[Say, ...]:
    """Each number with how it was read and what else was noted; ``guessed`` tells what passed for its serial too."""
    return tuple(sentence for side in sides for sentence in _read(side, guessed=guessed))


def _read(side: Side, *, guessed: bool) -> Iterable[Say]:
    if side.pattern is not None:
        how = say("read {how}", how=say(side.how.value)) if side.read_how is None else side.read_how
        yield say(AS_READ, place=side.name[:1].upper() + side.name[1:], typed=side.typed, how=how)
        if guessed and not side.by_rule and side.letters and side.counting:
            yield say(
                "No rule tells its serial: {serial}, the longest run of figures, was taken.",
                serial=typed_of(side.counting),
            )
    yield from side.notes


def covers_all_years(profile: Profile, group: Sequence[Relation]) -> bool:
    """True when the relations together hold in every model year of the profile."""
    return all(any(relation.years.holds(year) for relation in group) for year in profile.years)


def open_year_words(profile: Profile, group: Sequence[Relation], sentences: Sequence[Say]) -> Say:
    """What each period says, for a machine without a claimed model year."""
    each = [
        say("{years}: {sentence}", years=span_words(relation.years.first, relation.years.last), sentence=sentence)
        for relation, sentence in zip(group, sentences, strict=True)
    ]
    if not covers_all_years(profile, group):
        each.append(say("other years: no rule"))
    return say("cannot compare without a claimed model year; {periods}", periods=joined(each, "; "))
