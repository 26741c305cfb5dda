"""What one finding says about the year of a part."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.form_years import facts_of
from inspector.judgement.observers import DATING
from inspector.judgement.wording import fitted_variant, joined
from inspector.judgement.year_words import years_words
from inspector.profile.expected import AS_BUILT
from inspector.profile.words import Origin
from inspector.record.words import Conclusion, Evidence, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.form_years import Facts
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
    if variant.origin not in AS_BUILT:
        return _silent(finding, variant, LATER_OR_ELSEWHERE[variant.origin])
    concluded, facts = {c.what for c in finding.conclusions}, facts_of(profile, item, variant)
    silence = _silence(facts, concluded, variant)
    if silence is not None:
        return _silent(finding, variant, silence)
    if _hearsay(finding):
        why = say("The only evidence: {how}.", how=joined([say(e.value) for e in finding.evidence]))
        return _silent(finding, variant, why, slight=True)
    return _dated(finding, variant, concluded, facts)


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
    why = say("Not examined, but {seen}.", seen=say(finding.seen.value))
    return Said(finding.by, Strength.SILENT, (), "", what, why, slight=True)


def _no_form(finding: Finding) -> Said:
    if finding.fitted_other:
        why = say("“{words}” is none of the profile's forms.", words=finding.fitted_other.strip())
        return Said(finding.by, Strength.SILENT, (), "", finding.fitted_other.strip(), why)
    concluded = {c.what for c in finding.conclusions}
    if not concluded.isdisjoint((*ERA_ONLY, *NOTHING_SHOWN)):
        strength = Strength.SILENT if concluded.isdisjoint(ERA_ONLY) else Strength.ERA
        why = say("Concluded: {what}.", what=_words(concluded, (*ERA_ONLY, *NOTHING_SHOWN)))
        return Said(finding.by, strength, (), "", "", why)
    slight = not concluded & DATING
    return Said(finding.by, Strength.SILENT, (), "", "", say("No form of the profile was chosen."), slight=slight)


def _silent(finding: Finding, variant: Variant | None, why: Say, *, slight: bool = False) -> Said:
    form, what = (variant.id, variant.name) if variant else ("", finding.fitted)
    return Said(finding.by, Strength.SILENT, (), form, what, why, slight=slight)


def _silence(facts: Facts, concluded: set[Conclusion], variant: Variant) -> Say | None:
    """Why the fitted form says nothing about the year, or None."""
    if variant.years is None:
        return say("The profile gives no years for this form.")
    if not concluded.isdisjoint(NOTHING_SHOWN):
        return say("Concluded: {what}.", what=_words(concluded, NOTHING_SHOWN))
    if not facts.grade:
        unproved = say("The only source for its years is memory.")
        return unproved if facts.sources else say("The profile names no source for its years.")
    return None if facts.years else say("Its years lie outside those of the profile.")


def _words(concluded: set[Conclusion], among: Sequence[Conclusion]) -> Say:
    return joined([say(what.value) for what in among if what in concluded])


def _hearsay(finding: Finding) -> bool:
    return bool(finding.evidence) and set(finding.evidence) <= HEARSAY


def _dated(finding: Finding, variant: Variant, concluded: set[Conclusion], facts: Facts) -> Said:
    strength, reason = Strength.ERA, _era(variant, concluded, facts)
    if reason is None:
        strength, reason = Strength.FIRM, facts.used
        if not finding.evidence:
            reason = say("{used} No evidence recorded: taken as told apart by eye.", used=reason)
    return Said(finding.by, strength, facts.years, variant.id, variant.name, reason, facts.sources, facts.grade)


def _era(variant: Variant, concluded: set[Conclusion], facts: Facts) -> Say | None:
    """Why the years of the form are for the eye only, or None where they hold."""
    if not concluded.isdisjoint(ERA_ONLY):
        return say("Concluded: {what}. This narrows nothing.", what=_words(concluded, ERA_ONLY))
    if not variant.disputed or variant.other_years:
        return None
    why = say("The sources disagree on its years ({years}) and it is not known by how much: it narrows nothing.",
              years=years_words(facts.years))  # fmt: skip
    return joined([why, variant.note], " ") if variant.note else why
