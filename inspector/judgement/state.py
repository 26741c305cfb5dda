"""The state of each item, from what all observers found there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.counting import count
from inspector.judgement.observers import by_item, counted_mark, differ
from inspector.profile.expected import applies
from inspector.record.words import Conclusion, Mark, PatternPolicy, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.counting import Count
    from inspector.judgement.observers import ByItem
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

SIGNS = (*(m.value for m in Mark), *(s.value for s in Seen))
OPEN = (0.0, 1.0)

UNMARKED = {
    Seen.EXAMINED: say("Examined but not marked: not counted, and may turn out right or wrong."),
    Seen.NOT_CHECKED: say("Not checked: not counted, and may be right or wrong."),
    Seen.NOT_SEEN: say("Not seen: not counted, and may be right or wrong."),
    Seen.CANNOT_BE_SEEN: say("Cannot be seen: not counted, and may be right or wrong."),
    Seen.NOT_FITTED: say("Not fitted to this version: left out of the sum."),
}
MISSING = say("Missing but not marked: not counted, and wrong at worst.")
STANDARD = say(
    "Said not to be fitted to this version, but the profile has it as standard: left out of the sum, to be asked."
)
DIFFER = say("Two people differ: not counted, and the range covers both.")
SEEN_MOST = (Seen.EXAMINED, Seen.CANNOT_BE_SEEN, Seen.NOT_SEEN, Seen.NOT_FITTED, Seen.NOT_CHECKED)


@dataclass(frozen=True, slots=True)
class ItemState:
    """One item as it stands. ``credit``, ``low`` and ``high`` are shares of its weight from 0 to 1.

    ``credit`` is None when it is not counted as seen; ``in_sum`` is False when its weight counts nowhere.
    """

    item: str
    sign: str
    mark: Mark | None
    seen: Seen
    credit: float | None
    low: float
    high: float
    differs: bool
    findings: tuple[Finding, ...]
    reason: Say
    in_sum: bool = True
    standard_absent: bool = False


def states(profile: Profile, record: Record, findings: ByItem | None = None) -> dict[str, ItemState]:
    """The state of every item by id, in the profile's order; items of other years are not fitted to this version."""
    found = by_item(record) if findings is None else findings
    year, policy = record.claim.model_year, record.choices.pattern_parts
    return {
        item.id: state_of(item, found.get(item.id, ()), policy)
        if applies(item, year)
        else _other_year(item, found.get(item.id, ()), year)
        for item in profile.items()
    }


def state_of(item: Item, findings: tuple[Finding, ...], policy: PatternPolicy) -> ItemState:
    """The state of an item of the claimed year from all that was found at it."""
    absent = [f for f in findings if f.seen is Seen.NOT_FITTED]
    if absent and differ(findings):
        return _open(item, findings, DIFFER, differs=True)
    if absent:
        return _absent(item, findings)
    marked = [(f, mark) for f in findings if (mark := counted_mark(f))]
    if not marked:
        return _unmarked(item, findings)
    return _marked(item, findings, marked, policy)


def _marked(
    item: Item, findings: tuple[Finding, ...], marked: list[tuple[Finding, Mark]], policy: PatternPolicy
) -> ItemState:
    counts = [count(item, finding, mark, policy) for finding, mark in marked]
    first = counts[0]
    same_mark = len({mark for _, mark in marked}) == 1
    if not same_mark or any(_shape(c) != _shape(first) for c in counts):
        low, high = min(c.low for c in counts), max(c.high for c in counts)
        return _open(item, findings, DIFFER, differs=True, band=(low, high))
    mark = marked[0][1]
    credit = first.credit if first.in_sum else None
    return ItemState(
        item.id, mark.value, mark, Seen.EXAMINED, credit, first.low, first.high, differ(findings), findings,
        first.reason, first.in_sum,
    )  # fmt: skip


def _shape(one: Count) -> tuple[float, float, float, bool]:
    return (one.credit, one.low, one.high, one.in_sum)


def _open(
    item: Item, findings: tuple[Finding, ...], reason: Say, *, differs: bool, band: tuple[float, float] = OPEN
) -> ItemState:
    seen = _seen_most(findings)
    return ItemState(item.id, seen.value, None, seen, None, *band, differs, findings, reason)


def _unmarked(item: Item, findings: tuple[Finding, ...]) -> ItemState:
    missing = any(c.what is Conclusion.MISSING for f in findings for c in f.conclusions)
    reason = MISSING if missing else UNMARKED[_seen_most(findings)]
    return _open(item, findings, reason, differs=differ(findings))


def _absent(item: Item, findings: tuple[Finding, ...]) -> ItemState:
    reason = UNMARKED[Seen.NOT_FITTED] if item.optional else STANDARD
    return _out(item, findings, reason, standard=not item.optional)


def _other_year(item: Item, findings: tuple[Finding, ...], year: int | None) -> ItemState:
    return _out(item, findings, say("Machines of {year} did not have it: left out of the sum.", year=year))


def _out(item: Item, findings: tuple[Finding, ...], reason: Say, *, standard: bool = False) -> ItemState:
    gone = Seen.NOT_FITTED
    return ItemState(
        item.id, gone.value, None, gone, None, 0.0, 0.0, differ(findings), findings, reason, False, standard
    )


def _seen_most(findings: tuple[Finding, ...]) -> Seen:
    said = {f.seen for f in findings}
    return next((s for s in SEEN_MOST if s in said), Seen.NOT_CHECKED)
