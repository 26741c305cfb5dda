"""What one finding says about the year of a part."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.observers import DATING
from inspector.judgement.wording import fitted_variant, joined
from inspector.judgement.year_words import listed, years_words
from inspector.profile.expected import AS_BUILT, grade_of, sources_of
from inspector.profile.words import Origin
from inspector.record.words import Conclusion, Evidence, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.profile.base import Cited, Span
    from inspector.profile.items import Item, Variant
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding


class Strength(StrEnum):
    """How much a part says about the year."""

    FIRM = "firm"
    ERA = "era"
    SILENT = "silent"


@dataclass(frozen=True, slots=True)
class Said:
    """What one person's finding says. ``slight`` where it gives way to anybody who says more of the same form."""

    by: str
    strength: Strength
    years: tuple[int, ...]
    form: str
    what: str
    reason: Say
    sources: tuple[str, ...] = ()
    grade: int = 0
    slight: bool = False


HEARSAY = frozenset({Evidence.TOLD, Evidence.MEMORY, Evidence.PAPER})
ERA_ONLY = (Conclusion.RIGHT_ERA, Conclusion.YEAR_NOT_SHOWN)
NOTHING_SHOWN = (
    Conclusion.NOT_IDENTIFIED,
    Conclusion.NEEDS_BOOK,
    Conclusion.MISSING,
    Conclusion.PATTERN,
    Conclusion.OTHER_MODEL,
    Conclusion.OTHER_MAKER,
    Conclusion.DEALER,
    Conclusion.ADDED,
    Conclusion.ADAPTED,
)
LATER_OR_ELSEWHERE = {
    Origin.DEALER: say("Fitted by dealers: it did not leave the factory with the machine."),
    Origin.SERVICE: say("A service replacement: it shows nothing of when the machine was built."),
    Origin.PATTERN: say("A pattern part: it shows nothing of when the machine was built."),
    Origin.OTHER_MODEL: say("A part of another model: it shows nothing of when this machine was built."),
    Origin.OTHER_MAKER: say("A part of another maker: it shows nothing of when this machine was built."),
}


def said_by(profile: Profile, item: Item, finding: Finding) -> Said | None:
    """What the finding says about the year; None where nobody looked and no form was named."""
    variant = fitted_variant(item, finding)
    if finding.seen is not Seen.EXAMINED:
        return _unseen(finding, variant) if finding.fitted else None
    if variant is None:
        return _no_form(finding)
    silence = _silence(profile, finding, variant)
    if silence is not None:
        return _silent(finding, variant, silence)
    if _hearsay(finding):
        why = say("Known only from {how}.", how=listed([say(e.value) for e in finding.evidence]))
        return _silent(finding, variant, why, slight=True)
    return _dated(profile, finding, variant)


def speaking(told: list[Said]) -> list[Said]:
    """Those whose word counts: hearsay and a bare look give way to whoever examined the same form."""
    strong = [one for one in told if not one.slight]
    if not strong:
        return told
    forms = {one.form for one in strong}
    return [one for one in told if not one.slight or (one.form and one.form not in forms)]


def _unseen(finding: Finding, variant: Variant | None) -> Said:
    # Without a form of its own, so that it gives way to anybody who looked.
    what = variant.name if variant else finding.fitted
    why = say("Not a part of the evidence: {seen}.", seen=say(finding.seen.value))
    return Said(finding.by, Strength.SILENT, (), "", what, why, slight=True)


def _no_form(finding: Finding) -> Said:
    if finding.fitted_other:
        why = say("“{words}” is none of the profile's forms.", words=finding.fitted_other.strip())
        return Said(finding.by, Strength.SILENT, (), "", finding.fitted_other.strip(), why)
    concluded = {c.what for c in finding.conclusions}
    open_ones = [say(c.value) for c in (*ERA_ONLY, *NOTHING_SHOWN) if c in concluded]
    if open_ones:
        strength = Strength.ERA if concluded & set(ERA_ONLY) else Strength.SILENT
        return Said(finding.by, strength, (), "", "", say("Concluded: {what}.", what=joined(open_ones)))
    slight = not concluded & DATING
    return Said(finding.by, Strength.SILENT, (), "", "", say("No form of the profile was chosen."), slight=slight)


def _silent(finding: Finding, variant: Variant | None, why: Say, *, slight: bool = False) -> Said:
    form, what = (variant.id, variant.name) if variant else ("", finding.fitted)
    return Said(finding.by, Strength.SILENT, (), form, what, why, slight=slight)


def _silence(profile: Profile, finding: Finding, variant: Variant) -> Say | None:
    """Why the fitted form says nothing about the year, or None."""
    if variant.origin not in AS_BUILT:
        return LATER_OR_ELSEWHERE[variant.origin]
    if variant.years is None:
        return say("The profile gives no years for this form.")
    concluded = {c.what for c in finding.conclusions}
    open_ones = [say(c.value) for c in NOTHING_SHOWN if c in concluded]
    if open_ones:
        return say("Concluded: {what}.", what=joined(open_ones))
    if not _grade(profile, variant):
        named = any(fact.sources for fact in _facts(variant))
        unproved = say("The only source for its years is memory.")
        return unproved if named else say("The profile names no source for its years.")
    if not form_years(profile, variant):
        return say("Its years lie outside those of the profile.")
    return None


def _hearsay(finding: Finding) -> bool:
    return bool(finding.evidence) and set(finding.evidence) <= HEARSAY


def _dated(profile: Profile, finding: Finding, variant: Variant) -> Said:
    concluded = {c.what for c in finding.conclusions}
    years = form_years(profile, variant)
    reason, strength = _used(profile, variant), Strength.FIRM
    open_ones = [say(c.value) for c in ERA_ONLY if c in concluded]
    if open_ones:
        reason, strength = say("Concluded: {what}. This narrows nothing.", what=joined(open_ones)), Strength.ERA
    elif variant.disputed and not variant.other_years:
        why = say("The sources disagree on its years ({years}) and it is not known by how much: it narrows nothing.",
                  years=years_words(years))  # fmt: skip
        reason, strength = (joined([why, variant.note], " ") if variant.note else why), Strength.ERA
    elif not finding.evidence:
        reason = say("{used} No evidence recorded: taken as told apart by eye.", used=reason)
    sources = tuple(dict.fromkeys(s.id for fact in _facts(variant) for s in sources_of(profile, fact)))
    return Said(finding.by, strength, years, variant.id, variant.name, reason, sources, _grade(profile, variant))


def form_years(profile: Profile, variant: Variant) -> tuple[int, ...]:
    """The model years of use by all sources together, open ends closed at the profile's; empty without years."""
    spans = [s for s in (variant.years, *(o.years for o in variant.other_years)) if s is not None]
    if len(spans) == 1:
        return tuple(_all(profile, spans[0]))
    return tuple(sorted({year for span in spans for year in _all(profile, span)}))


def _all(profile: Profile, span: Span) -> range:
    first, last = span.within(*profile.model_years)
    return range(first, last + 1)


def _facts(variant: Variant) -> Iterable[Cited]:
    return (variant, *variant.other_years)


def _grade(profile: Profile, variant: Variant) -> int:
    return max(grade_of(profile, fact) for fact in _facts(variant))


def _used(profile: Profile, variant: Variant) -> Say:
    """By whom the form was used in which years, each source that disagrees with its own."""
    spans = [(variant, variant.years), *((o, o.years) for o in variant.other_years)]
    each = [
        say("{years} by {who}", years=years_words(_all(profile, span)), who=_who(profile, fact))
        for fact, span in spans
        if span is not None
    ]
    if len(each) == 1:
        return say("Used {years}.", years=each[0])
    return say("Used {years}: the sources disagree, both are kept.", years=joined(each, "; "))


def _who(profile: Profile, fact: Cited) -> Say:
    sources = sources_of(profile, fact)
    if not sources:
        return say("no source")
    names = joined([s.title for s in sources])
    return say("{source}, {at}", source=names, at=fact.at) if fact.at else names
