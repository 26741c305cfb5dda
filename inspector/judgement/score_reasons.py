"""Why the score is what it is, in sentences."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.counting import Pattern, pattern
from inspector.judgement.observers import counted_mark
from inspector.record.words import PatternPolicy, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

RULE = say(
    "Of what was seen a pass counts whole, a doubt half and a fail nothing; the range lets every doubt and "
    "everything unseen fall the worst and the best way."
)
POLICY = {
    PatternPolicy.PENALISED: say("Pattern parts count half at most; that is your choice."),
    PatternPolicy.NEUTRAL: say("Pattern parts are left out of the sum; that is your choice."),
    PatternPolicy.ACCEPTED: say("Pattern parts count as marked; that is your choice."),
}
NO_EVIDENCE = say("no evidence recorded")


def evidence_note(finding: Finding) -> Say | None:
    """ "no evidence recorded" for a finding that concludes without evidence, else None."""
    return NO_EVIDENCE if finding.conclusions and not finding.evidence else None


def reasons(profile: Profile, record: Record, at: Mapping[str, ItemState]) -> tuple[Say, ...]:
    """Coverage and rule first, then each item that is counted otherwise than its mark says, then what is unproved."""
    first: list[Say] = []
    if not any(s.credit is not None for s in at.values()):
        first.append(say("Nothing seen yet."))
    if record.claim.model_year is None:
        first.append(say("No model year is claimed: items of all years are in the sum."))
    items = (r for s in at.values() for r in _of_item(profile, s))
    return (*first, RULE, POLICY[record.choices.pattern_parts], *items)


def _of_item(profile: Profile, state: ItemState) -> Iterable[Say]:
    item = profile.item_by_id[state.item]
    if _special(profile, state):
        yield say("{item}: {reason}", item=item.name, reason=state.reason)
    if any(evidence_note(f) for f in state.findings):
        yield say("{item}: a conclusion stands with no evidence recorded.", item=item.name)


def _special(profile: Profile, state: ItemState) -> bool:
    if not state.findings:
        return False
    item = profile.item_by_id[state.item]
    parts = any(pattern(item, f) is not Pattern.NO for f in state.findings if counted_mark(f))
    return state.seen is Seen.NOT_FITTED or parts or (state.differs and state.credit is None)
