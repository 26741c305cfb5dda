"""Changes inside a season: whether a fitted form and the number of the place it changed by go together."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING

from inspector.judgement.decode import decode_reading
from inspector.judgement.form_years import form_years
from inspector.judgement.number_evidence import SEEN_BY_EYE
from inspector.judgement.ranges import how_many
from inspector.judgement.wording import joined, lower_first
from inspector.judgement.year_words import any_of, listed, years_words
from inspector.record.reading import Figure, figures_of, numbered
from inspector.record.words import Clarity, NumberState, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.decode import Decoded, Hit
    from inspector.judgement.ranges import Sets
    from inspector.profile.items import Item, SerialSpan, Variant
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Reading

DIGITS = "0123456789"
MOST_TRIED = 2
SPACE = "\N{NO-BREAK SPACE}"


class Fit(Enum):
    """How the serials that a reading allows lie to those of a form."""

    IN = "in"
    OUT = "out"
    PARTLY = "partly"


def running(profile: Profile, record: Record, decoded: Mapping[str, Decoded]) -> tuple[Say, ...]:
    """One sentence for every fitted form and place whose serials it is bound to, in the order of the walk."""
    named = {(f.item, f.fitted) for f in record.findings if f.fitted and f.seen is Seen.EXAMINED}
    bound = [(item, form) for item, form in _bound_forms(profile) if (item.id, form.id) in named]
    told = (sentence for item, form in bound for sentence in _of_form(profile, record, decoded, item, form))
    return tuple({str(sentence): sentence for sentence in told}.values())


def _bound_forms(profile: Profile) -> tuple[tuple[Item, Variant], ...]:
    """The forms that go with serials of a place."""
    key = ("bound to serials", "", "")
    if key not in profile.worked_out:
        forms = ((item, form) for item in profile.items() for form in item.variants if form.serials)
        profile.worked_out[key] = tuple(forms)
    found: tuple[tuple[Item, Variant], ...] = profile.worked_out[key]
    return found


def _of_form(
    profile: Profile, record: Record, decoded: Mapping[str, Decoded], item: Item, variant: Variant
) -> Iterable[Say]:
    spans: dict[str, list[SerialSpan]] = {}
    for span in variant.serials:
        spans.setdefault(span.place, []).append(span)
    for place, own in spans.items():
        bound = _Bound(profile, place, tuple(own), frozenset(form_years(profile, item, variant)), variant.note)
        fitted = say("{item}, {form}: fitted {spans}.", item=item.name, form=variant.name,
                     spans=listed([_span(bound.name, span) for span in own]))  # fmt: skip
        readings = [r for r in record.readings if r.place == place and _usable(r)]
        unread = say("The {place} was not read on the machine, so it is not compared.", place=bound.name)
        for sentence in [bound.stands(r, decoded.get(r.id)) for r in readings] or [unread]:
            yield joined([fitted, sentence], " ")


def _usable(reading: Reading) -> bool:
    return reading.state is NumberState.READ and bool(reading.figures) and reading.how_read in SEEN_BY_EYE


def _hits(one: Decoded | None) -> list[Hit]:
    return [] if one is None else [hit for hit in one.hits if hit.first_serial is not None]


@dataclass(frozen=True, slots=True)
class _Bound:
    """A form bound to serials of one place, and the model years in which it was in use."""

    profile: Profile
    place: str
    spans: tuple[SerialSpan, ...]
    years: frozenset[int]
    note: str = ""

    @property
    def name(self) -> str:
        known = self.profile.place_by_id.get(self.place)
        return lower_first(known.name if known else self.place)

    def stands(self, reading: Reading, one: Decoded | None) -> Say:
        """How the number as read stands to the serials."""
        hits, typed = _hits(one), reading.typed()
        if not hits:
            return say("No serial can be read out of {number}, so it is not compared.", number=typed)
        near = self._near(hits)
        if not near:
            when = years_words({year for hit in hits for year in hit.years})
            return say("{number} is of {years}, when this form was not in use: its serial is not compared.",
                       number=typed, years=when)  # fmt: skip
        fit = self._fit(near) if len(near) == len(hits) else Fit.PARTLY
        if fit is Fit.IN:
            return say("{number} as read is one of these.", number=typed)
        if fit is Fit.OUT:
            # The note tells where the bounds are soft, or which later batch had the form again.
            out = say("{number} as read is not one of these.", number=typed)
            return say("{sentence} {note}", sentence=out, note=self.note) if self.note else out
        return self._depends(reading)

    def _near(self, hits: Iterable[Hit]) -> list[Hit]:
        """The hits of years in which the form was in use: serials of another season say nothing of it."""
        return [hit for hit in hits if not hit.years or not self.years.isdisjoint(hit.years)]

    def _fit(self, hits: Iterable[Hit]) -> Fit:
        fits = {fit_of(hit, self._digits(hit), self.spans) for hit in hits}
        return fits.pop() if len(fits) == 1 else Fit.PARTLY

    def _digits(self, hit: Hit) -> Sets | None:
        """What each figure of the hit's serial can be, or None where its rule has no serial."""
        known = self.profile.place_by_id.get(self.place)
        serial = next((rule.serial for rule in known.rules if rule.id == hit.rule), None) if known else None
        text = next((field.text for field in hit.fields if field.segment == serial), "")
        return tuple("".join(sorted(f.could_be)) or DIGITS for f in figures_of(text)) or None

    def _depends(self, reading: Reading) -> Say:
        typed = reading.typed()
        open_ones = [n for n, figure in numbered(reading.figures) if figure.clarity is not Clarity.CLEAR]
        for number in open_ones if len(open_ones) <= MOST_TRIED else ():
            if agreeing := self._deciding(reading, number):
                return say("{number} is one of these if figure {figure} is {agreeing}, else not.",
                           number=typed, figure=number, agreeing=any_of(agreeing))  # fmt: skip
        if len(open_ones) == 1:
            return say("Whether {number} is one of these depends on figure {figure} of the {place}.",
                       number=typed, figure=open_ones[0], place=self.name)  # fmt: skip
        if open_ones:
            return say("Whether {number} is one of these depends on figures {figures} of the {place}.",
                       number=typed, figures=listed(list(map(str, open_ones))), place=self.name)  # fmt: skip
        return say("{number} can be read in several ways, of which some are among these.", number=typed)

    def _deciding(self, reading: Reading, number: int) -> list[str]:
        """What the figure must be, where it decides by itself whether the serial is one of these; else nothing."""
        agreeing: list[str] = []
        figures = [figure for _, figure in numbered(reading.figures)]
        for sign in figures[number - 1].could_be or DIGITS:
            tried = (*figures[: number - 1], Figure(could_be=(sign,)), *figures[number:])
            near = self._near(_hits(decode_reading(self.profile, reading.model_copy(update={"figures": tried}))))
            fit = self._fit(near) if near else Fit.OUT
            if fit is Fit.PARTLY:
                return []
            agreeing += [sign] if fit is Fit.IN else []
        return agreeing


def fit_of(hit: Hit, digits: Sets | None, spans: Iterable[SerialSpan]) -> Fit:
    """Whether every serial that the hit leaves is in one of the spans, none is, or some are.

    ``digits`` holds what each figure of the serial can be; without it the hit's first and last serial are taken.
    """
    first, last = hit.first_serial or 0, hit.last_serial if hit.last_serial is not None else hit.first_serial or 0
    bounds = _merged((max(first, s.first or 0), last if s.last is None else min(last, s.last)) for s in spans)
    if digits is None:
        inside, every = sum(high - low + 1 for low, high in bounds), last - first + 1
    else:
        inside, every = sum(how_many(digits, low, high) for low, high in bounds), how_many(digits, first, last)
    return Fit.OUT if not inside else Fit.IN if inside == every else Fit.PARTLY


def _merged(bounds: Iterable[tuple[int, int]]) -> list[tuple[int, int]]:
    """The stretches without those that are empty, each number in one of them only."""
    found: list[tuple[int, int]] = []
    for low, high in sorted(bounds):
        start = max(low, found[-1][1] + 1) if found else low
        if start <= high:
            found.append((start, high))
    return found


def _span(place: str, span: SerialSpan) -> Say:
    first, last = (f"{n:,}".replace(",", SPACE) if n is not None else "" for n in (span.first, span.last))
    if span.first is None and span.last is None:
        return say("whatever the {place}", place=place)
    if span.last is None:
        return say("from {place} {first}", place=place, first=first)
    if span.first is None:
        return say("up to {place} {last}", place=place, last=last)
    return say("from {place} {first} to {last}", place=place, first=first, last=last)
