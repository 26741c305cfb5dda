"""What was examined and what was not: counts, coverage, the outline, the score, and every item left, by name."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from inspector.judgement.score import percent_seen
from inspector.profile.words import View
from inspector.sheet.blocks import (
    Cited,
    Count,
    Group,
    NotExaminedBlock,
    PartRow,
    SafetyBlock,
    ScoreBlock,
    SeenBlock,
    SourcesBlock,
    Spot,
)
from inspector.sheet.finding import in_short, word_of
from inspector.sheet.words import GRADE_WORDS, listed
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.judge import Judgement
    from inspector.judgement.score import PartScore
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.model import Record

SIGNS = ("pass", "doubt", "fail", "examined", "not checked", "not seen", "cannot be seen", "not fitted to this version")
ALWAYS = frozenset(SIGNS) - {"examined"}
LEFT = ("cannot be seen", "not seen", "not checked", "examined", "not fitted to this version")
NO_RIDE = "No ride before a qualified person has passed brakes, steering, tyres, wheels and fuel."


def safety_block(judgement: Judgement) -> SafetyBlock:
    """The findings on safety as sentences, what was not examined, and the caution, whatever else was found."""
    safety = judgement.safety
    count = len(safety.findings)
    title = trn("Safety: {count} finding", "Safety: {count} findings", count) if count else tr("Safety: no finding")
    signs = {f.sign for f in safety.findings}
    sign = next((s for s in ("fail", "doubt") if s in signs), "") if signs else ""
    left = listed(safety.not_seen)
    not_seen = tr("Not examined, and bearing on safety: {names}.", names=left) if left else ""
    caution = listed(dict.fromkeys((tr(NO_RIDE), tr(safety.caution))), " ")
    return SafetyBlock(title, sign, tuple(tr(f.sentence) for f in safety.findings), not_seen, caution)


def seen_block(
    profile: Profile, judgement: Judgement, outline: str | None, numbers: Mapping[str, int]
) -> SeenBlock:  # fmt: skip
    """How many items carry which sign, how much of the weight was examined, and where they lie."""
    counts = tuple(
        Count(sign, judgement.counts.get(sign, 0), tr(word_of(sign)))
        for sign in SIGNS
        if sign in ALWAYS or judgement.counts.get(sign, 0)
    )
    percent = percent_seen(judgement.score.seen_percent)
    total = trn("{count} item, of which", "{count} items, of which", sum(c.number for c in counts))
    spots = _spots(profile, judgement, numbers) if outline else ()
    return SeenBlock(tr("What was seen"), total, counts, percent, coverage(percent), outline, spots)


def coverage(percent: int) -> str:
    """What the per cent examined means."""
    return tr("of what bears weight; {left} % left", left=100 - percent)


def _spots(profile: Profile, judgement: Judgement, numbers: Mapping[str, int]) -> tuple[Spot, ...]:
    return tuple(
        Spot(item.spot.x, item.spot.y, state.sign, item.name, numbers.get(item.id))
        for item in profile.items()
        if item.spot and item.spot.view is View.LEFT and (state := judgement.states.get(item.id))
    )


def not_examined_block(profile: Profile, record: Record, judgement: Judgement, told: set[str]) -> NotExaminedBlock:
    """Every item that carries no mark, by name, under the cause."""
    groups = []
    for sign in LEFT:
        items = [i for i in profile.items() if i.id in judgement.states and judgement.states[i.id].sign == sign]
        names = tuple(i.name + _because(record, i, i.id in told) for i in items)
        word = tr(word_of(sign))
        groups.append(Group(sign, word[:1].upper() + word[1:], names))
    closing = tr("Nothing here is counted as right.")
    return NotExaminedBlock(tr("Not examined"), tuple(g for g in groups if g.names), closing)


def _because(record: Record, item: Item, told: bool) -> str:
    """What was noted at an item that was not examined, in brackets."""
    if told:
        return tr(" (see the findings)")
    inside = listed((in_short(item, finding) for finding in record.findings_at(item.id)), "; ")
    return f" ({inside})" if inside else ""


def score_block(judgement: Judgement) -> ScoreBlock:
    """Coverage first; then how much of what was examined is right, with the lowest and highest it could be."""
    score = judgement.score
    percent = percent_seen(score.seen_percent)
    whole = _row(tr("Whole machine"), score.value, score.low, score.high, score.seen_percent)
    tables = (
        (tr("By station: seen; right, lowest to highest"), tuple(map(_part, score.by_station))),
        (tr("By assembly: seen; right, lowest to highest"), tuple(map(_part, score.by_assembly))),
    )
    return ScoreBlock(
        tr("How much is right"),
        f"{percent} % " + coverage(percent),
        whole,
        tr("Pattern parts are counted as {policy}.", policy=tr(score.policy)),
        tuple(tr(reason) for reason in score.reasons),
        tables,
    )


def _part(part: PartScore) -> PartRow:
    row = _row(part.name, part.value, part.low, part.high, part.seen)
    if row.value is None:
        return row
    seen = percent_seen(part.seen)
    said = tr("{seen} %; {value}, {low} to {high}", seen=seen, value=row.value, low=row.low, high=row.high)
    return replace(row, says=said)


def _row(name: str, value: float | None, low: float, high: float, seen: float) -> PartRow:
    lowest, highest = round(low), round(high)
    if value is None:
        return PartRow(tr(name), None, lowest, highest, tr("nothing seen yet"))
    says = tr(
        "{seen} % seen; {value}, could be {low} to {high}",
        seen=percent_seen(seen), value=round(value), low=lowest, high=highest,
    )  # fmt: skip
    return PartRow(tr(name), round(value), lowest, highest, says)


def sources_block() -> SourcesBlock:
    """What the strokes of a source mean."""
    return SourcesBlock(tr("Sources"), tuple(Cited(grade, tr(words)) for grade, words in GRADE_WORDS))
