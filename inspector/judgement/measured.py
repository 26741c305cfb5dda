"""What was measured, each measure with what it fits, what it suggests, and why. The person decides."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.lengths import NotALength
from inspector.judgement.measures import measured_result
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.measures import MeasureResult
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding, Measured
    from inspector.record.model import Record
    from inspector.record.words import Mark

MOST_KEPT = 500  # measures as read; a record has some dozens


@dataclass(frozen=True, slots=True)
class MeasuredLine:
    """One measure as one person took it.

    ``fit`` says what it fits, ``short`` that with the mean before it ("31.75 mm, fits ..."). ``mark`` and ``proposal``
    are offered, and None for a screen, for readings that are no length and where nothing is published. ``variant`` is
    the id of the one form that the measure names, or empty.
    """

    item: str
    by: str
    measure: str
    name: str
    shown: str
    spread: str
    short: Say
    fit: Say
    sentence: Say
    mark: Mark | None
    proposal: Say | None
    variant: str
    reasons: tuple[Say, ...]


def measured_lines(profile: Profile, record: Record) -> tuple[MeasuredLine, ...]:
    """Everything measured, by item in the order of the profile, then person; measures it does not have are left out."""
    year = record.claim.model_year
    at = {item: n for n, item in enumerate(profile.item_by_id)}
    lines = (
        measured_again(profile, item, one, finding.by, year)
        for item, finding in sorted(_with_measures(profile, record), key=lambda pair: (at[pair[0].id], pair[1].by))
        for one in finding.measured
    )
    return tuple(line for line in lines if line is not None)


def _with_measures(profile: Profile, record: Record) -> list[tuple[Item, Finding]]:
    known = profile.item_by_id
    return [(known[f.item], f) for f in record.findings if f.measured and f.item in known]


def measured_again(profile: Profile, item: Item, measured: Measured, by: str, year: int | None) -> MeasuredLine | None:
    """What ``measured_line`` gives, worked out once for a profile: each edit asks the same of all other measures."""
    known: dict[tuple[str, Measured, str], MeasuredLine | None] = profile.worked_out.setdefault(
        ("measured", "", str(year)), {}
    )
    key = (item.id, measured, by)
    if key not in known:
        if len(known) >= MOST_KEPT:
            known.clear()
        known[key] = measured_line(item, measured, by, year)
    return known[key]


def measured_line(item: Item, measured: Measured, by: str, year: int | None) -> MeasuredLine | None:
    """What one measure of an item says for a claimed year; None where nothing was read or the item has no such one."""
    try:
        result = measured_result(item, measured, year)
    except NotALength as wrong:
        name = next(m.name for m in item.measures if m.id == measured.measure)
        return MeasuredLine(
            item.id, by, measured.measure, name, "", "", wrong.said, wrong.said,
            say("{name}: {why}", name=name, why=wrong.said), None, None, "", (),
        )  # fmt: skip
    return _line(item, measured, by, result) if result else None


def _line(item: Item, measured: Measured, by: str, result: MeasureResult) -> MeasuredLine:
    unit, several = say(result.measure.unit.value), len([r for r in measured.readings if r.strip()]) > 1
    return MeasuredLine(
        item.id, by, result.measure.id, result.measure.name, result.shown,
        result.spread_shown if several else "",
        say("{shown} {unit}, {fit}", shown=result.shown, unit=unit, fit=result.fit),
        result.fit, result.sentence, result.mark,
        say("Proposed by the measure: {mark}. You decide.", mark=say(result.mark.value)) if result.mark else None,
        one_variant(result), result.reasons,
    )  # fmt: skip


def one_variant(result: MeasureResult) -> str:
    """The id of the one form whose published value the readings allow; empty for several, none and a screen."""
    left = {f.nominal.variant for f in result.fits if f.candidate}
    only = left.pop() if len(left) == 1 else None
    return only if only and not result.measure.screen_only else ""
