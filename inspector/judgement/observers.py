"""The findings of all observers, item by item, and whether they differ."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from inspector.record.words import Conclusion, Seen

if TYPE_CHECKING:
    from inspector.record.finding import Finding
    from inspector.record.model import Record
    from inspector.record.words import Mark

DATING = frozenset(
    {
        Conclusion.RIGHT_YEAR,
        Conclusion.RIGHT_ERA,
        Conclusion.YEAR_NOT_SHOWN,
        Conclusion.WRONG_YEAR,
        Conclusion.OTHER_MODEL,
        Conclusion.OTHER_MAKER,
        Conclusion.OPTION,
    }
)


ByItem = Mapping[str, "tuple[Finding, ...]"]


def by_item(record: Record) -> ByItem:
    """The findings at each item, by the id of who says so: the order of entry makes no difference."""
    found: dict[str, list[Finding]] = {}
    for finding in record.findings:
        found.setdefault(finding.item, []).append(finding)
    return {item: tuple(those if len(those) < 2 else sorted(those, key=_who)) for item, those in found.items()}


def _who(finding: Finding) -> tuple[str, str]:
    return finding.by, finding.at


def counted_mark(finding: Finding) -> Mark | None:
    """The finding's mark; None where the thing was not examined, since a mark needs a look."""
    return finding.mark if finding.seen is Seen.EXAMINED else None


def differ(findings: tuple[Finding, ...]) -> bool:
    """True when two people contradict each other in mark, in what is fitted, or in how they date it."""
    if len(findings) < 2:
        return False
    marks = {mark for f in findings if (mark := counted_mark(f))}
    return len(marks) > 1 or _other_form(findings) or _fitted_or_not(findings) or _dated_apart(findings)


def _other_form(findings: tuple[Finding, ...]) -> bool:
    """True when two forms are named, or one and something that is none of the profile's forms; words may differ."""
    fitted = {f.fitted for f in findings if f.fitted}
    return len(fitted) > 1 or (bool(fitted) and any(f.fitted_other.strip() and not f.fitted for f in findings))


def _fitted_or_not(findings: tuple[Finding, ...]) -> bool:
    looked = {f.seen for f in findings} - {Seen.NOT_CHECKED}
    return Seen.NOT_FITTED in looked and len(looked) > 1


def _dated_apart(findings: tuple[Finding, ...]) -> bool:
    said = [s for f in findings if (s := {c.what for c in f.conclusions} & DATING)]
    return any(one.isdisjoint(other) for i, one in enumerate(said) for other in said[i + 1 :])
