"""Number rules that can match nothing, and relations that contradict each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

from inspector.profile.base import Span
from inspector.profile.explain import offer
from inspector.profile.model import Profile
from inspector.profile.numbers import NumberRange, NumberRule, Segment
from inspector.profile.problem import Flaw, Where
from inspector.profile.words import SegmentKind
from inspector.texts import say


def number_rules(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """Every rule of every place, with what keeps it from matching a number."""
    for p, place in enumerate(profile.places):
        for r, rule in enumerate(place.rules):
            where: Where = ("place", p, "rule", r)
            yield from _orders(rule, where)
            yield from _serial(rule, where)
            for s, segment in enumerate(rule.segments):
                yield from _letters(rule, segment, (*where, "segment", s))
            for n, one in enumerate(rule.ranges):
                yield from _range(rule, one, (*where, "range", n))


def _orders(rule: NumberRule, where: Where) -> Iterator[Flaw]:
    known = [segment.id for segment in rule.segments]
    for n, order in enumerate(rule.orders):
        if not order:
            yield Flaw(
                (*where, "orders", n),
                say('an order of rule "{rule}" is empty and matches nothing.', rule=rule.id),
                say("list segment ids in it, or take it out."),
            )
        for name in order:
            if name not in known:
                what = say('no segment of this rule has the id "{id}".', id=name)
                yield Flaw((*where, "orders", n), what, offer(name, known))


def _serial(rule: NumberRule, where: Where) -> Iterator[Flaw]:
    digits = [s.id for s in rule.segments if s.kind is SegmentKind.DIGITS]
    if rule.serial is None:
        if rule.ranges:
            yield Flaw(
                where,
                say('rule "{rule}" has ranges but no serial to count.', rule=rule.id),
                say('add serial = "..." with the id of a digits segment.'),
            )
        return
    if rule.serial not in digits:
        what = say('the serial "{id}" is not a digits segment of this rule.', id=rule.serial)
        yield Flaw((*where, "serial"), what, offer(rule.serial, digits))
        return
    for n, order in enumerate(rule.orders):
        if rule.serial not in order:
            yield Flaw(
                (*where, "orders", n),
                say('the serial "{id}" is missing from this order.', id=rule.serial),
                say("add it to the order."),
            )


def _letters(rule: NumberRule, segment: Segment, where: Where) -> Iterator[Flaw]:
    never = set(rule.never_used)
    if segment.kind is SegmentKind.TABLE:
        if all(set(code.code) <= never for code in segment.codes):
            yield Flaw(
                (*where, "codes"),
                say('every code of segment "{id}" is made of letters never used.', id=segment.id),
                say("correct the codes or never_used."),
            )
    elif segment.kind is SegmentKind.LITERAL:
        bad = sorted(set(segment.text) & (never | set(rule.separators)))
        if bad:
            yield Flaw(
                (*where, "text"),
                say(
                    'the text of segment "{id}" holds "{bad}", which the rule never reads.',
                    id=segment.id,
                    bad="".join(bad),
                ),
                say("take it out of the text, or out of never_used and separators."),
            )


def _range(rule: NumberRule, one: NumberRange, where: Where) -> Iterator[Flaw]:
    serial = next((s for s in rule.segments if s.id == rule.serial), None)
    if serial is not None:
        most = serial.widths()[1]
        longest = max(one.first, one.last or 0)
        if longest >= 10**most:
            yield Flaw(
                where,
                say("{number} has more figures than the serial's {most}.", number=longest, most=most),
                say("correct the range or the width of the serial."),
            )
    if one.prefix and not _spelled(one.prefix, _texts(rule)):
        yield Flaw(
            (*where, "prefix"),
            say('no segment of the rule can give the prefix "{prefix}".', prefix=one.prefix),
            say("correct the prefix, or add the segment that holds it."),
        )


def _texts(rule: NumberRule) -> set[str]:
    literal = {s.text for s in rule.segments if s.kind is SegmentKind.LITERAL}
    return literal | {code.code for segment in rule.segments for code in segment.codes}


def _spelled(prefix: str, texts: set[str]) -> bool:
    """True when the prefix is some of the texts one after the other."""
    reached = {0}
    for at in range(len(prefix)):
        if at in reached:
            reached |= {at + len(text) for text in texts if text and prefix.startswith(text, at)}
    return len(prefix) in reached


def relations(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """A place related to itself, and two relations that cannot both hold by one source."""
    for n, one in enumerate(profile.relations):
        if one.places[0] == one.places[1]:
            yield Flaw(
                ("relation", n, "places"),
                say('the place "{id}" is related to itself.', id=one.places[0]),
                say("name two different places."),
            )
    for (_, a), (n, b) in combinations(enumerate(profile.relations), 2):
        pair = set(a.places) == set(b.places) and a.kind is not b.kind
        own = not a.sources or not b.sources or set(a.sources) & set(b.sources)
        if pair and own and _overlap(a.years, b.years):
            yield Flaw(
                ("relation", n),
                say(
                    '"{a}" and "{b}" are both said of the same places and years.',
                    a=a.kind.value,
                    b=b.kind.value,
                ),
                say("part the years, or name a different source for each."),
                stops=False,
            )


def _overlap(a: Span, b: Span) -> bool:
    low_a, high_a = a.within(0, 9999)
    low_b, high_b = b.within(0, 9999)
    return low_a <= high_b and low_b <= high_a
