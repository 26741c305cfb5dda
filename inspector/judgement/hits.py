"""One row of one rule against one way of dividing the figures: what it says, and on which condition."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from inspector.judgement.building import agreed, allowed, built_of, season_of, years_of
from inspector.judgement.lettering import in_reach, serial_at
from inspector.judgement.remaining import size_of
from inspector.judgement.ways import bounds_of, piece_of, ways_of, within

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from inspector.judgement.blocks import Block
    from inspector.judgement.building import Months
    from inspector.judgement.choices import Choice
    from inspector.judgement.matching import Divided, Division
    from inspector.judgement.pattern import Pattern
    from inspector.judgement.remaining import Cover
    from inspector.judgement.ways import Conditions, Way
    from inspector.profile.model import Profile
    from inspector.profile.numbers import NumberRule, Place
    from inspector.profile.words import Gives

_MOST_MEANINGS = 3


@dataclass(frozen=True, slots=True)
class NumberField:
    """One stretch of the number: its segment, what that gives, the figures as read and what they mean.

    ``start`` and ``end`` are its positions among the figures that count, from 0, the end left out; ``counts`` is
    True for the serial.
    """

    segment: str
    gives: Gives
    text: str
    means: str
    start: int = 0
    end: int = 0
    counts: bool = False


@dataclass(frozen=True, slots=True)
class Hit:
    """What one row of one rule says of the number; ``if_figures`` names doubtful figures (number, figure) it needs.

    ``first_serial`` and ``last_serial`` bound the serials that remain, ``serials`` says how many numbers remain;
    ``built`` holds pairs of months, YYYY-MM. ``row`` is the block's place in the rule, from 0, None for a rule without
    blocks; ``next_start`` ends a block known by its start only, ``open_end`` tells that nobody gives its end, and
    ``worked_out`` that the model years follow from the months of building.
    """

    rule: str
    title: str
    fields: tuple[NumberField, ...]
    first_serial: int | None
    last_serial: int | None
    serials: int
    models: tuple[str, ...]
    markets: tuple[str, ...]
    years: tuple[int, ...]
    built: tuple[Months, ...]
    sources: tuple[str, ...]
    grade: int
    inferred: bool
    says: str
    note: str
    if_figures: Conditions
    next_start: int | None = None
    open_end: bool = False
    worked_out: bool = False
    row: int | None = None


@dataclass(frozen=True, slots=True)
class Found:
    """A hit with the numbers it holds, its row, None where the rule has none, and the figures that counted."""

    hit: Hit
    cover: Cover
    block: Block | None
    numbers: tuple[int, ...]


def hits_of(profile: Profile, place: Place, laid: Divided) -> Iterator[Found]:
    """Every row of the rule that the figures allow; a rule without rows is one row by itself."""
    made, pattern = laid.made, laid.pattern
    for division in laid.ways:
        at = serial_at(division, made.rule.serial)
        if not made.blocks.rows:
            yield from _Row(profile, place, made.rule, None, division, pattern, at).hits()
        elif at is not None:
            for block, narrowed in in_reach(made.blocks, division, at, pattern):
                yield from _Row(profile, place, made.rule, block, narrowed, pattern, at).hits()


@dataclass(frozen=True, slots=True)
class _Row:
    """One row of a rule laid on one division of the figures."""

    profile: Profile
    place: Place
    rule: NumberRule
    block: Block | None
    division: Division
    pattern: Pattern
    serial: int | None

    def hits(self) -> Iterator[Found]:
        """One hit for each way in which doubtful figures lead to another answer."""
        spans = self.block.spans if self.block else None
        ways = [
            ways_of(one, self.pattern, spans if at == self.serial else None) for at, one in enumerate(self.division)
        ]
        if all(ways):
            for combined in product(*within(ways)):
                yield from self._hit(combined)

    def _hit(self, ways: Sequence[Way]) -> Iterator[Found]:
        row = self.block.row if self.block else None
        told = [way.choices for way in ways if way.choices]
        years = agreed(years_of(row, self.profile.model_years), told)
        kept = [allowed(choices, years) for choices in told]
        if all(kept) and years != frozenset():
            cover = tuple(piece_of(one, way, years) for one, way in zip(self.division, ways, strict=True))
            yield Found(self._said(ways, years, kept, cover), cover, self.block, self.pattern.numbers)

    def _said(
        self, ways: Sequence[Way], years: frozenset[int] | None, kept: Sequence[Sequence[Choice]], cover: Cover
    ) -> Hit:
        row = self.block.row if self.block else None
        season = season_of(self.rule, self.profile.season_starts)
        built = built_of(season, row, years, kept)
        worked_out = years is None and bool(built) and not self.place.dates_part
        needs = tuple(sorted(need for way in ways for need in way.needs))
        first, last = bounds_of(cover[self.serial]) if self.serial is not None else (None, None)
        sources, grade = cited(self.profile, self.rule, self.block, kept)
        return Hit(
            rule=self.rule.id,
            title=self.rule.title,
            fields=tuple(self._fields(ways, years, dict(needs))),
            first_serial=first,
            last_serial=last,
            serials=size_of(cover),
            models=_named([row.model] if row else [], (choice.model for choices in kept for choice in choices)),
            markets=_named([row.market] if row else [], (choice.market for choices in kept for choice in choices)),
            years=season.model_years(built) if worked_out else tuple(sorted(years or ())),
            built=built,
            sources=sources,
            grade=grade,
            inferred=row.inferred if row else False,
            says=row.says if row else "",
            note=row.note if row else _notes(kept),
            if_figures=needs,
            next_start=self.block.next_start if self.block else None,
            open_end=self.block.open_end if self.block else False,
            worked_out=worked_out,
            row=self.block.at if self.block else None,
        )

    def _fields(
        self, ways: Sequence[Way], years: frozenset[int] | None, given: Mapping[int, str]
    ) -> Iterator[NumberField]:
        for at, (stretch, way) in enumerate(zip(self.division, ways, strict=True)):
            means = dict.fromkeys(choice.means for choice in allowed(way.choices, years) if choice.means)
            yield NumberField(
                segment=stretch.segment.id,
                gives=stretch.segment.gives,
                text=self.pattern.typed(stretch.start, stretch.end, given),
                means=" / ".join(means) if len(means) <= _MOST_MEANINGS else "",
                start=stretch.start,
                end=stretch.end,
                counts=at == self.serial,
            )


def cited(
    profile: Profile, rule: NumberRule, block: Block | None, told: Sequence[Sequence[Choice]]
) -> tuple[tuple[str, ...], int]:
    """Who says so and the grade of the weakest link: the row and the codes that date, else any code, else the rule."""
    links = [block.sources] if block else []
    links += [_of_all(choices) or rule.sources for choices in told if any(c.date.says() for c in choices)]
    if not links:
        links = [found for choices in told if (found := _of_all(choices))] or [rule.sources]
    common = tuple(one for one in links[0] if all(one in link for link in links))
    sources = common if common and not block else tuple(dict.fromkeys(one for link in links for one in link))
    return sources, min(_grade(profile, link) for link in links)


def _of_all(choices: Sequence[Choice]) -> tuple[str, ...]:
    """The sources of all of the choices, or of any where none has them all."""
    common = tuple(one for one in choices[0].sources if all(one in choice.sources for choice in choices))
    return common or tuple(dict.fromkeys(one for choice in choices for one in choice.sources))


def _grade(profile: Profile, sources: Sequence[str]) -> int:
    known = profile.source_by_id
    return max((known[one].grade for one in sources if one in known), default=0)


def _named(first: Sequence[str], others: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for name in (*first, *others) if name))


def _notes(told: Sequence[Sequence[Choice]]) -> str:
    return " ".join(dict.fromkeys(choices[0].note for choices in told if len(choices) == 1 and choices[0].note))
