"""The number of a place as it stands ready to be compared: its figures, which of them count, and how it was read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from inspector.judgement.pattern import DIGITS, Pattern, pattern_of
from inspector.judgement.wording import joined, lower_first
from inspector.record.words import Clarity, HowRead, NumberState
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.decode import Decoded
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.model import Record
    from inspector.record.reading import Reading

SEPARATORS = " -./"
_BRACKET = re.compile(r"\[[^]]*\]")  # one figure, whatever it could be
NEARNESS = (HowRead.METAL, HowRead.PHOTOGRAPH, HowRead.PAPER, HowRead.TOLD, HowRead.NOT_SAID)
Spot = tuple[frozenset[str] | None, int]  # what a figure can be, None for unreadable, and its number


@dataclass(frozen=True, slots=True)
class Side:
    """One place of a comparison. ``pattern`` is None, and ``missing`` says why, where there is no number to compare.

    ``serial`` is the stretch that counts, from 0, its end left out; ``by_rule`` when a number rule tells it, else it is
    the longest run of figures. ``replaced`` says so where the number is that of a part sold as a spare, which goes with
    no other number. ``breaks`` are where a rule or a typed space parts the figures; ``notes`` what else
    must be said of the reading.
    """

    place: str
    name: str
    typed: str = ""
    pattern: Pattern | None = None
    serial: tuple[int, int] = (0, 0)
    by_rule: bool = False
    how: HowRead = HowRead.METAL
    missing: Say | None = None
    replaced: Say | None = None
    notes: tuple[Say, ...] = ()
    breaks: tuple[int, ...] = ()

    @property
    def spots(self) -> tuple[Spot, ...]:
        """Every figure of the number."""
        return spots_of(self.pattern) if self.pattern else ()

    @property
    def counting(self) -> tuple[Spot, ...]:
        """The figures of the serial."""
        return self.spots[slice(*self.serial)]

    @property
    def before(self) -> tuple[Spot, ...]:
        """What stands before the serial."""
        return self.spots[: self.serial[0]]

    @property
    def behind(self) -> tuple[Spot, ...]:
        """What stands behind the serial."""
        return self.spots[self.serial[1] :]

    @property
    def groups(self) -> tuple[str, ...]:
        """What stands beside the serial, as typed, parted where a rule or a typed space parts it."""
        cuts = sorted({0, *self.breaks, *self.serial, len(self.spots)})
        parts = (self.spots[a:b] for a, b in pairwise(cuts) if not self.serial[0] <= a < self.serial[1])
        return tuple(typed_of(part) for part in parts if part)

    @property
    def letters(self) -> str:
        """The groups with spaces between."""
        return " ".join(self.groups)

    @property
    def read_how(self) -> Say | None:
        """How it was read, in words, where not from the metal."""
        return None if self.how is HowRead.METAL else NOT_METAL[self.how]


NOT_METAL = {
    HowRead.PHOTOGRAPH: say("read from a photograph"),
    HowRead.PAPER: say("read from paper"),
    HowRead.TOLD: say("told, not read"),
    HowRead.NOT_SAID: say("read, not said how"),
}


def spots_of(pattern: Pattern) -> tuple[Spot, ...]:
    """The pattern's figures, each with its number."""
    return tuple(zip(pattern.figures, pattern.numbers, strict=True))


def typed_of(spots: Sequence[Spot]) -> str:
    """The figures as one types them: ``?`` unreadable, ``[19]`` 1 or 9."""
    return "".join(
        "?" if can is None else f"[{''.join(sorted(can))}]" if len(can) > 1 else min(can) for can, _ in spots
    )


def identity_places(profile: Profile) -> tuple[str, ...]:
    """Ids of the stamped places that bear on what the machine is, date codes left out, in the profile's order."""
    return tuple(p.id for p in profile.places if p.identity and not p.cast and not p.dates_part)


def sides_of(profile: Profile, record: Record, decoded: Mapping[str, Decoded]) -> dict[str, Side]:
    """Every place of the profile as it stands ready to be compared, by its id."""
    return {place.id: side_of(profile, record, place.id, decoded) for place in profile.places}


def side_of(profile: Profile, record: Record, place: str, decoded: Mapping[str, Decoded]) -> Side:
    """The place's number by the readings nearest to the metal; several that differ leave figures open."""
    known = profile.place_by_id.get(place)
    name = lower_first(known.name) if known else place
    readings = [r for r in record.readings if r.place == place]
    read = [r for r in readings if r.state is NumberState.READ and r.figures]
    if not read:
        return Side(place, name, missing=_why_missing(name, readings))
    how = min((r.how_read for r in read), key=NEARNESS.index)
    best = [r for r in read if r.how_read is how]
    separators = _separators(known)
    patterns = [pattern_of(r.figures, separators) for r in best]
    typed = best[0].typed()
    notes = (*_others(readings, best), *_read_twice(record, best, patterns))
    if len({len(p) for p in patterns}) > 1:
        return Side(place, name, typed, how=how, missing=_lengths_differ(name, best), notes=notes)
    pattern = patterns[0] if len(patterns) == 1 else _together(patterns)
    breaks = _breaks(best[0], separators)
    told = [decoded[r.id] for r in best if r.id in decoded]
    ruled = _by_rule(known, pattern, told)
    serial, cuts = ruled or (longest_run(pattern, breaks), ())
    if len(best) > 1:
        typed = typed_of(spots_of(pattern))
    return Side(
        place, name, typed, pattern, serial, by_rule=ruled is not None, how=how, notes=notes,
        breaks=tuple(sorted({*breaks, *cuts})), replaced=_replaced(known, name, told),
    )  # fmt: skip


def longest_run(pattern: Pattern, breaks: Sequence[int] = ()) -> tuple[int, int]:
    """Start and end of the longest run of figures that can be digits, the last of several; unreadable ones count.

    A typed space ends a run that began right behind a letter: A75 100 is 100 of an A75. ``breaks`` are its positions.
    """
    best, start = (0, 0), 0
    for at in range(len(pattern) + 1):
        can = pattern.figures[at] if at < len(pattern) else frozenset[str]()
        ends = can is not None and not can & DIGITS
        if not ends and not (at in breaks and start and start not in breaks):
            continue
        if at > start and at - start >= best[1] - best[0]:
            best = (start, at)
        start = at + 1 if ends else at
    return best


def _by_rule(
    place: Place | None, pattern: Pattern, decoded: Sequence[Decoded]
) -> tuple[tuple[int, int], tuple[int, ...]] | None:
    """The serial and the ends of the other stretches, by the first rule that the number follows; None without one."""
    counted = {rule.id: rule.serial for rule in place.rules} if place else {}
    for hit in (hit for one in decoded for hit in one.hits):
        names = [field.segment for field in hit.fields]
        ends = [0, *accumulate(len(_BRACKET.sub("1", field.text)) for field in hit.fields)]
        serial = counted.get(hit.rule)
        if serial is not None and serial in names and ends[-1] == len(pattern):
            at = names.index(serial)
            return (ends[at], ends[at + 1]), tuple(ends[1:-1])
    return None


def _replaced(place: Place | None, name: str, decoded: Sequence[Decoded]) -> Say | None:
    """Said where only rules of parts sold as spares read the number."""
    by_id = {rule.id: rule for rule in place.rules} if place else {}
    rules = [by_id[hit.rule] for one in decoded for hit in one.hits if hit.rule in by_id]
    if not rules or not all(rule.replacement for rule in rules):
        return None
    return say("the {place} is that of a replacement part (“{title}”)", place=name, title=rules[0].title)


def _separators(place: Place | None) -> str:
    rules = place.rules if place else ()
    return "".join(dict.fromkeys("".join(rule.separators for rule in rules) or SEPARATORS))


def _breaks(reading: Reading, separators: str) -> tuple[int, ...]:
    """Positions in the pattern before which a space or separator was typed."""
    found, at = [], 0
    for figure in reading.figures:
        sign = figure.could_be[0] if figure.clarity is Clarity.CLEAR else ""
        if sign and (sign.isspace() or sign in separators):
            found.append(at)
        else:
            at += 1
    return tuple(dict.fromkeys(b for b in found if 0 < b < at))


def _together(patterns: Sequence[Pattern]) -> Pattern:
    """What the readings leave open together: a figure that one read stands, two that differ are alternatives."""
    columns = zip(*(p.figures for p in patterns), strict=True)
    figures = tuple(_merged([c for c in column if c is not None]) for column in columns)
    doubtful = tuple(at for at, can in enumerate(figures) if can is not None and len(can) > 1)
    return Pattern(figures, patterns[0].numbers, doubtful)


def _merged(read: Sequence[frozenset[str]]) -> frozenset[str] | None:
    if not read:
        return None
    shared = frozenset.intersection(*read)
    return shared or frozenset.union(*read)


def _why_missing(name: str, readings: Sequence[Reading]) -> Say:
    states = {r.state for r in readings if r.state is not NumberState.READ}
    said = [_state(state, name) for state in NumberState if state in states]
    if not said:
        return say("the {place} was not read", place=name) if readings else _state(NumberState.NOT_LOOKED, name)
    return joined(said, "; ")


def _state(state: NumberState, name: str) -> Say:
    if state is NumberState.BLANK:
        return say("there is no number where the {place} would be", place=name)
    if state is NumberState.COVERED:
        return say("the {place} cannot be seen", place=name)
    if state is NumberState.GROUND:
        return say("the {place} is ground or filed away", place=name)
    return say("the {place} was not looked for", place=name)


def _lengths_differ(name: str, best: Sequence[Reading]) -> Say:
    return say("the {place} was read as {numbers}", place=name, numbers=joined([r.typed() for r in best], " / "))


def _others(readings: Sequence[Reading], best: Sequence[Reading]) -> Iterable[Say]:
    """What readings that were not used say: another state, or another number from further off."""
    for one in readings:
        if one.state is NumberState.GROUND:
            yield say("It is recorded as ground or filed away as well.")
        elif one.state is NumberState.READ and one.figures and one not in best and one.typed() != best[0].typed():
            how = NOT_METAL[one.how_read]
            yield say("Also {number}, {how}; the reading nearer to the metal was used.", number=one.typed(), how=how)


def _read_twice(record: Record, best: Sequence[Reading], patterns: Sequence[Pattern]) -> Iterable[Say]:
    if len({p.figures for p in patterns}) > 1:
        each = [
            say("{number} ({person})", number=r.typed(), person=record.name_of(r.by) or say("no name")) for r in best
        ]
        yield say("Read more than once, and differently: {readings}.", readings=joined(each))
