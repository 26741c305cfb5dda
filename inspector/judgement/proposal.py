"""What a fitted form suggests, and what should be fitted, each with its sources. The person decides."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined, span_words
from inspector.judgement.year_words import any_of
from inspector.profile.expected import expected, fits_year, settled, sources_of
from inspector.profile.words import Origin
from inspector.record.words import Conclusion, Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.profile.base import Cited
    from inspector.profile.items import Item, SerialSpan, Variant
    from inspector.profile.model import Profile


@dataclass(frozen=True, slots=True)
class SourceLine:
    """One source of a fact: grade 0 to 3, kind, place in it as printed, title."""

    grade: int
    kind: str
    place: str
    title: str


@dataclass(frozen=True, slots=True)
class Proposal:
    """A mark and conclusion offered for the person to take or leave, with the reason and its sources."""

    mark: Mark
    conclusion: Conclusion | None
    sentence: Say
    reason: Say
    sources: tuple[SourceLine, ...] = ()


@dataclass(frozen=True, slots=True)
class ExpectedLine:
    """One form that may be right for the year; ``detail`` is None when there is no more to say."""

    variant: str
    name: str
    detail: Say | None
    sources: tuple[SourceLine, ...]
    disputed: bool
    note: str


Verdict = tuple[Mark, Conclusion | None, Say]

BY_ORIGIN: dict[Origin, Verdict] = {
    Origin.PATTERN: (Mark.DOUBT, Conclusion.PATTERN, say("A part made later to the old pattern.")),
    Origin.OTHER_MODEL: (Mark.FAIL, Conclusion.OTHER_MODEL, say("A part of another model.")),
    Origin.OTHER_MAKER: (Mark.FAIL, Conclusion.OTHER_MAKER, say("A part of another maker.")),
    Origin.DEALER: (
        Mark.DOUBT,
        Conclusion.DEALER,
        say("Fitted by dealers in the period: part of its history, but not as the maker sent it out."),
    ),
}


def propose(profile: Profile, item: Item | str, variant_id: str, year: int | None) -> Proposal | None:
    """What the form suggests for a machine of that model year; None when the profile has no such form."""
    known = _item(profile, item)
    variant = next((v for v in known.variants if v.id == variant_id), None) if known else None
    if variant is None:
        return None
    mark, conclusion, reason = _verdict(profile, variant, year)
    sources = source_lines(profile, variant)
    if variant.years is not None and not any(line.grade for line in sources):
        unproved = say("Its only source is memory.") if sources else say("The profile names no source for it.")
        reason = joined((reason, unproved), " ")
    return Proposal(mark, conclusion, _offer(mark, conclusion), reason, sources)


def _offer(mark: Mark, conclusion: Conclusion | None) -> Say:
    if conclusion is None:
        return say("Proposed: {mark}. You decide.", mark=say(mark.value))
    return say("Proposed: {mark}, {conclusion}. You decide.", mark=say(mark.value), conclusion=say(conclusion.value))


def _verdict(profile: Profile, variant: Variant, year: int | None) -> Verdict:
    if variant.origin in BY_ORIGIN:
        return BY_ORIGIN[variant.origin]
    if (variant.disputed or variant.other_years) and not settled(variant, year):
        why = say("The sources disagree on its years: {years}.", years=_years(variant))
        return Mark.DOUBT, Conclusion.YEAR_NOT_SHOWN, joined((why, variant.note), " ") if variant.note else why
    if variant.origin is Origin.SERVICE:
        return _service(variant, year)
    if variant.years is None:
        # Such forms are often alterations: what is wrong with one, only the person can say.
        return Mark.DOUBT, None, say("The profile gives no years for it, so it is not known to have left the factory.")
    if year is None:
        return Mark.DOUBT, Conclusion.YEAR_NOT_SHOWN, say("No model year is claimed.")
    return _dated(profile, variant, year)


def _dated(profile: Profile, variant: Variant, year: int) -> Verdict:
    if not fits_year(variant, year):
        why = say("Used {years}, not in {year}.", years=_years(variant), year=year)
        return Mark.FAIL, Conclusion.WRONG_YEAR, why
    right = Conclusion.OPTION if variant.origin is Origin.OPTION else Conclusion.RIGHT_YEAR
    why = say("Used {years}; {year} is one of these.", years=_years(variant), year=year)
    if variant.serials:
        changed = say("It changed within the years: {serials}; compare the number.", serials=_serials(profile, variant))
        why = joined((why, changed), " ")
    if variant.markets:
        sent = say("It was for {markets}: compare where the machine was sold.", markets=any_of(variant.markets))
        why = joined((why, sent), " ")
    return Mark.PASS, right, why


def _service(variant: Variant, year: int | None) -> Verdict:
    # A replacement from the maker's spares often differs in finish or pattern from what was first fitted.
    if year is not None and not fits_year(variant, year):
        why = say("A service replacement for {years}, not for {year}.", years=_years(variant), year=year)
        return Mark.DOUBT, Conclusion.WRONG_YEAR, why
    why = say("A service replacement: the maker's own, but finish and pattern may differ from what was first fitted.")
    return Mark.DOUBT, Conclusion.RIGHT_ERA, why


def expected_lines(profile: Profile, item: Item | str, year: int | None) -> tuple[ExpectedLine, ...]:
    """The forms a machine of that model year may have left the factory with, standard ones first, with sources."""
    known = _item(profile, item)
    return tuple(_line(profile, v) for v in expected(known, year)) if known else ()


def _line(profile: Profile, variant: Variant) -> ExpectedLine:
    return ExpectedLine(
        variant.id,
        variant.name,
        _detail(profile, variant),
        source_lines(profile, variant),
        variant.disputed or bool(variant.other_years),
        variant.note,
    )


def _detail(profile: Profile, variant: Variant) -> Say | None:
    parts: list[Say | str] = [variant.detail] if variant.detail else []
    if variant.origin is Origin.OPTION:
        parts.append(say("factory option either way"))
    if variant.serials:
        parts.append(_serials(profile, variant))
    if variant.markets:
        parts.append(say("for {markets}", markets=", ".join(variant.markets)))
    if variant.share is not None:
        parts.append(say("on about {percent} % of them", percent=round(100 * variant.share)))
    return joined(parts, "; ") if parts else None


def _serials(profile: Profile, variant: Variant) -> Say:
    return joined([_serial(profile, span) for span in variant.serials])


def _serial(profile: Profile, span: SerialSpan) -> Say:
    place = profile.place_by_id.get(span.place)
    where = _place_word(place.name if place else span.place)
    first, last = (_spaced(n) if n is not None else "" for n in (span.first, span.last))
    if span.last is None:
        return say("from {place} {first}", place=where, first=first)
    if span.first is None:
        return say("up to {place} {last}", place=where, last=last)
    return say("{place} {first} to {last}", place=where, first=first, last=last)


def _place_word(name: str) -> str:
    word = name[:1].lower() + name[1:]
    return word.removesuffix(" number")


def _spaced(number: int) -> str:
    return f"{number:,}".replace(",", "\N{NO-BREAK SPACE}")


def _years(variant: Variant) -> Say:
    """The years of use, each once, those of sources that disagree after the form's own."""
    if variant.years is None:
        return say("in years not given")
    spans = dict.fromkeys((span.first, span.last) for span in (variant.years, *(o.years for o in variant.other_years)))
    return joined([span_words(*span) for span in spans], " or ")


def source_lines(profile: Profile, fact: Cited) -> tuple[SourceLine, ...]:
    """The sources of a fact, best grade first, each with where in it the fact stands; empty when it names none."""
    return tuple(SourceLine(s.grade, s.kind.value, fact.at, s.title) for s in sources_of(profile, fact))


def _item(profile: Profile, item: Item | str) -> Item | None:
    return profile.item_by_id.get(item) if isinstance(item, str) else item


def right_forms(item: Item, year: int | None) -> tuple[str, ...]:
    """The names of the forms that would be right for the year."""
    return tuple(v.name for v in expected(item, year))
