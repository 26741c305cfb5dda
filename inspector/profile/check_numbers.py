"""Number rules that can match nothing, and relations that contradict each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

from inspector.profile.base import Span
from inspector.profile.explain import offer
from inspector.profile.model import Profile
from inspector.profile.numbers import NumberRange, NumberRule, Place, Relation, Segment
from inspector.profile.problem import Flaw, Where
from inspector.profile.words import Gives, RelationKind, SegmentKind
from inspector.texts import say

_VALUES = {
    Gives.MODEL_YEAR: (1880, 2100),
    Gives.BUILD_YEAR: (1880, 2100),
    Gives.MONTH: (1, 12),
    Gives.WEEK: (1, 53),
    Gives.DAY: (1, 31),
}
_HALF_A_YEAR = 6


def number_rules(profile: Profile, _folder: Path) -> Iterator[Flaw]:
    """Every rule of every place, with what keeps it from matching a number."""
    for p, place in enumerate(profile.places):
        for r, rule in enumerate(place.rules):
            where: Where = ("place", p, "rule", r)
            yield from _orders(rule, where)
            yield from _serial(rule, where)
            yield from _season(profile, rule, where)
            for s, segment in enumerate(rule.segments):
                yield from _letters(rule, segment, (*where, "segment", s))
                yield from _values(rule, segment, (*where, "segment", s))
            texts = _texts(rule) if rule.ranges else set()
            for n, one in enumerate(rule.ranges):
                yield from _range(rule, one, texts, (*where, "range", n))
        yield from _dated(place, ("place", p))


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
        elif order.count(rule.serial) > 1:
            yield Flaw(
                (*where, "orders", n),
                say('the serial "{id}" stands more than once in this order.', id=rule.serial),
                say("leave one of them: a number is counted once."),
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


def _values(rule: NumberRule, segment: Segment, where: Where) -> Iterator[Flaw]:
    """Figures that say a date by their value."""
    digits = segment.kind is SegmentKind.DIGITS
    if segment.plus and not (digits and segment.gives in _VALUES):
        yield Flaw(
            (*where, "plus"),
            say('segment "{id}" has plus, but its figures say no year, month, week or day.', id=segment.id),
            say('make it kind = "digits" with the date in gives, or take plus out.'),
        )
    if not digits or segment.gives not in _VALUES:
        return
    if segment.id == rule.serial:
        yield Flaw(
            (*where, "gives"),
            say('the serial "{id}" is counted, so what it gives is not read.', id=segment.id),
            say("put the figures that say a date into a segment of their own."),
        )
    elif not _can_say(segment):
        yield Flaw(
            where,
            say(
                'no {gives} can be written in the figures of segment "{id}".', gives=segment.gives.value, id=segment.id
            ),
            say("correct its width, or say in plus what is added to the figures."),
        )


def _can_say(segment: Segment) -> bool:
    first, last = _VALUES[segment.gives]
    most = 10 ** segment.widths()[1] - 1
    return any(first - plus <= most and last - plus >= 0 for plus in segment.plus or (0,))


def _season(profile: Profile, rule: NumberRule, where: Where) -> Iterator[Flaw]:
    """Words about the season that change nothing, as the rule or the profile stands."""
    month = any(s.gives is Gives.MONTH or any(code.month for code in s.codes) for s in rule.segments)
    if (rule.double_months or rule.month_before_season) and not month:
        name = "double_months" if rule.double_months else "month_before_season"
        yield Flaw(
            (*where, name),
            say('{name} says nothing: no segment of rule "{rule}" gives a month.', name=name, rule=rule.id),
            say("add the segment that gives the month, or take it out."),
            stops=False,
        )
    elif rule.month_before_season and profile.season_starts <= _HALF_A_YEAR:
        yield Flaw(
            (*where, "month_before_season"),
            say("month_before_season says nothing: the season starts in month {month}.", month=profile.season_starts),
            say("set season_starts to the month of the year before in which the season begins."),
            stops=False,
        )
    if rule.double_months_from is not None and not rule.double_months:
        yield Flaw(
            (*where, "double_months_from"),
            say("double_months_from says nothing without double_months."),
            say("name the months in double_months, or take it out."),
            stops=False,
        )


def _dated(place: Place, where: Where) -> Iterator[Flaw]:
    """A place whose number dates the part: some rule has to read a date from it."""
    if place.dates_part and not any(_dates(rule) for rule in place.rules):
        yield Flaw(
            (*where, "dates_part"),
            say('place "{id}" dates the part, but no rule of it gives a year, month or week.', id=place.id),
            say("add a rule with the segments that give the date, or take dates_part out."),
            stops=False,
        )
    if place.usual_lag_months is not None and not place.dates_part:
        yield Flaw(
            (*where, "usual_lag_months"),
            say('place "{id}" has usual_lag_months, but what stands there dates no part.', id=place.id),
            say("set dates_part = true, or take usual_lag_months out."),
            stops=False,
        )


def _dates(rule: NumberRule) -> bool:
    codes = [code for segment in rule.segments for code in segment.codes]
    return (
        any(segment.kind is SegmentKind.DIGITS and segment.gives in _VALUES for segment in rule.segments)
        or any(code.month or code.build_year or code.model_year for code in codes)
        or any(one.built_from or one.built_to or one.model_year or one.years for one in rule.ranges)
    )


def _range(rule: NumberRule, one: NumberRange, texts: set[str], where: Where) -> Iterator[Flaw]:
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
    if one.prefix and not _spelled(_plain(rule, one.prefix), texts):
        yield Flaw(
            (*where, "prefix"),
            say('no segment of the rule can give the prefix "{prefix}".', prefix=one.prefix),
            say("correct the prefix, or add the segment that holds it."),
        )
    if one.suffix and not _spelled(_plain(rule, one.suffix), texts):
        yield Flaw(
            (*where, "suffix"),
            say('no segment of the rule can give the suffix "{suffix}".', suffix=one.suffix),
            say("correct the suffix, or add the segment that holds it."),
        )


def _texts(rule: NumberRule) -> set[str]:
    literal = {_plain(rule, s.text) for s in rule.segments if s.kind is SegmentKind.LITERAL}
    return literal | {_plain(rule, code.code) for segment in rule.segments for code in segment.codes}


def _plain(rule: NumberRule, text: str) -> str:
    """The letters as they are compared: capitals, without separators."""
    return "".join(sign for sign in text.upper() if sign not in rule.separators)


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
        yield from _gap(profile, one, ("relation", n, "gap_points"))
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


def _gap(profile: Profile, one: Relation, where: Where) -> Iterator[Flaw]:
    """Expected differences that no number can be held against."""
    if not one.gap_points:
        return
    first = profile.place_by_id.get(one.places[0])
    if one.kind is not RelationKind.CLOSE:
        yield Flaw(
            where,
            say('gap_points are read only where the numbers are "close", not "{kind}".', kind=one.kind.value),
            say("take them out, or correct the kind."),
            stops=False,
        )
    elif first is not None and not any(rule.serial for rule in first.rules):
        yield Flaw(
            where,
            say('gap_points go by the serial of "{id}", and no rule of that place names a serial.', id=first.id),
            say('add serial = "..." to its rule, or name the two places the other way round.'),
            stops=False,
        )


def _overlap(a: Span, b: Span) -> bool:
    low_a, high_a = a.within(0, 9999)
    low_b, high_b = b.within(0, 9999)
    return low_a <= high_b and low_b <= high_a
