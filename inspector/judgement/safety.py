"""Safety findings in words, first and whatever the score; and the safety items nobody examined."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.observers import by_item
from inspector.judgement.state import states
from inspector.judgement.wording import concluded_words, condition_words, first_sentence, joined, lower_first, name_of
from inspector.record.words import Conclusion, Condition, Mark, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.observers import ByItem
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

ALARMING = frozenset(
    {
        Conclusion.MODIFIED,
        Conclusion.ADAPTED,
        Conclusion.WRONG_SIDE,
        Conclusion.MISSING,
        Conclusion.OTHER_MODEL,
        Conclusion.OTHER_MAKER,
        Conclusion.ADDED,
    }
)
OF_YEAR = frozenset(
    {Conclusion.WRONG_YEAR, Conclusion.RIGHT_YEAR, Conclusion.RIGHT_ERA, Conclusion.YEAR_NOT_SHOWN, Conclusion.OPTION}
)
BAD = frozenset({Condition.WORN, Condition.DAMAGED, Condition.REPAIRED, Condition.NOT_WORKING})
UNSEEN = frozenset({Seen.NOT_CHECKED, Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN})
CAUTION = say("No ride before a qualified person has passed brakes, steering, tyres, wheels and fuel.")


@dataclass(frozen=True, slots=True)
class SafetyFinding:
    """One item with something found that bears on safety, in words, with the sign it carries."""

    item: str
    name: str
    sentence: Say
    sign: str
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Safety:
    """What was found, the names of the safety items nobody examined, and the caution that always stands."""

    findings: tuple[SafetyFinding, ...]
    not_seen: tuple[str, ...]
    caution: Say


def safety(
    profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None, findings: ByItem | None = None
) -> Safety:
    """Everything that bears on safety: flagged unsafe first, then fails, doubts and the rest, in the walk's order."""
    at = states(profile, record) if known is None else known
    found = by_item(record) if findings is None else findings
    walk = (*at, *(item for item in found if item not in at))
    alarming = [one for item in walk if (one := _of_item(profile, item, found.get(item, ()), at.get(item)))]
    not_seen = tuple(
        profile.item_by_id[s.item].name
        for s in at.values()
        if profile.item_by_id[s.item].safety and s.seen in UNSEEN
    )  # fmt: skip
    return Safety(tuple(sorted(alarming, key=_rank)), not_seen, CAUTION)


def is_alarming(finding: Finding, *, safety_item: bool) -> bool:
    """True when the finding must be shown: flagged unsafe, or anything not as it should be on a safety item.

    A mark taken for the year alone is none where the part was looked at and noted as sound.
    """
    if finding.unsafe:
        return True
    concluded = any(c.what in ALARMING for c in finding.conclusions)
    # Wear that the person passed is the condition of the part; anything else that is bad is told whatever the mark.
    passed = {Condition.WORN} if finding.mark is Mark.PASS else set()
    bad = concluded or any(c in BAD and c not in passed for c in finding.conditions)
    return safety_item and (bad or (finding.mark in {Mark.DOUBT, Mark.FAIL} and not _of_year_alone(finding)))


def _of_year_alone(finding: Finding) -> bool:
    """True when nothing but the year was concluded, and the part was noted as sound."""
    concluded = {c.what for c in finding.conclusions}
    return bool(concluded) and concluded <= OF_YEAR and set(finding.conditions) == {Condition.SOUND}


def _of_item(
    profile: Profile, item: str, findings: tuple[Finding, ...], state: ItemState | None
) -> SafetyFinding | None:
    known = profile.item_by_id.get(item)
    shown = tuple(f for f in findings if is_alarming(f, safety_item=bool(known and known.safety)))
    if not shown:
        return None
    name = name_of(profile, item)
    words = joined([_words(f) for f in shown], "; ")
    sign = state.sign if state else (shown[0].mark or shown[0].seen).value
    return SafetyFinding(item, name, say("{item}: {words}.", item=name, words=words), sign, shown)


def _words(finding: Finding) -> Say:
    """The note's first sentence with the hard words behind it, so that "works" cannot hide "modified"."""
    hard = [concluded_words(c) for c in finding.conclusions if c.what in ALARMING]
    hard += condition_words(finding)
    note = first_sentence(finding.note)
    if not note:
        return joined(hard or [_bare(finding)])
    note = lower_first(note)
    return say("{note} ({words})", note=note, words=joined(hard)) if hard else joined([note])


def _bare(finding: Finding) -> Say:
    if finding.unsafe:
        return say("flagged unsafe")
    return say("marked {mark}", mark=say(finding.mark.value if finding.mark else finding.seen.value))


def _rank(one: SafetyFinding) -> int:
    marks = {f.mark for f in one.findings}
    if any(f.unsafe for f in one.findings):
        return 0
    if Mark.FAIL in marks:
        return 1
    return 2 if Mark.DOUBT in marks else 3
