"""What one marked finding counts: its credit, its worst and best, and the user's choice about pattern parts."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.wording import fitted_variant
from inspector.profile.words import Origin
from inspector.record.words import Conclusion, Mark, PatternPolicy, Sureness
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.profile.items import Item
    from inspector.record.finding import Finding

PATTERN_CAP = 0.5


class Pattern(StrEnum):
    """Whether a part is taken as a pattern part."""

    YES = "yes"
    POSSIBLE = "possible"
    NO = "no"


@dataclass(frozen=True, slots=True)
class Count:
    """Credit, lowest and highest share of the item's weight (0 to 1), and whether it is in the sum at all."""

    credit: float
    low: float
    high: float
    in_sum: bool
    reason: Say


PLAIN = {
    Mark.PASS: Count(1, 1, 1, True, say("Marked pass: counts as right.")),
    Mark.DOUBT: Count(0.5, 0, 1, True, say("Marked doubt: counts half, and may turn out right or wrong.")),
    Mark.FAIL: Count(0, 0, 0, True, say("Marked fail: counts nothing.")),
}


def pattern(item: Item, finding: Finding) -> Pattern:
    """Whether the finding says pattern part: by the fitted form, or by a conclusion that is sure or likely."""
    variant = fitted_variant(item, finding)
    if variant is not None and variant.origin is Origin.PATTERN:
        return Pattern.YES
    said = [c.sureness for c in finding.conclusions if c.what is Conclusion.PATTERN]
    if not said:
        return Pattern.NO
    return Pattern.POSSIBLE if all(s is Sureness.POSSIBLE for s in said) else Pattern.YES


def count(item: Item, finding: Finding, mark: Mark, policy: PatternPolicy) -> Count:
    """What the marked finding counts under the choice about pattern parts."""
    plain = PLAIN[mark]
    taken = pattern(item, finding)
    if taken is Pattern.NO:
        return plain
    if policy is PatternPolicy.ACCEPTED:
        return _with(plain, say("Pattern part: counts as marked, since pattern parts are accepted."))
    if taken is Pattern.POSSIBLE:
        low = min(plain.low, PATTERN_CAP) if policy is PatternPolicy.PENALISED else plain.low
        why = say("Possibly a pattern part: counts as marked, and the lowest reckons with it.")
        return Count(plain.credit, low, plain.high, True, why)
    if policy is PatternPolicy.NEUTRAL:
        why = say("Pattern part: left out of the sum, since pattern parts are neutral.")
        return Count(plain.credit, plain.low, plain.high, False, why)
    why = say("Pattern part: counts half at most, since pattern parts are penalised.")
    credit, low, high = (min(share, PATTERN_CAP) for share in (plain.credit, plain.low, plain.high))
    return Count(credit, low, high, True, why)


def _with(plain: Count, reason: Say) -> Count:
    return Count(plain.credit, plain.low, plain.high, plain.in_sum, reason)
