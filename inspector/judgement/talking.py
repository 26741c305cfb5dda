"""What was found that may be said to the seller: for safety, for the claim or of taste, each with its evidence."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.cost import added
from inspector.judgement.dealt import Talking, TalkingPoint
from inspector.judgement.proposal import expected_lines
from inspector.judgement.safety import is_alarming
from inspector.judgement.wording import finding_words, first_sentence, joined
from inspector.profile.words import Need
from inspector.record.words import Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from inspector.judgement.reckoned import CostRow, Costs, Faulted
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record

NO_EVIDENCE = say("no evidence recorded")
NO_SOURCE = say("no source for what is right")


def talking(profile: Profile, record: Record, known: Mapping[str, ItemState], costs: Costs) -> Talking:
    """One point for each faulted item that somebody found something at, by what it is for."""
    rows: dict[str, list[CostRow]] = {}
    for row in costs.rows:
        rows.setdefault(row.way.item, []).append(row)
    points = [
        _point(profile, record, fault, found, rows.get(fault.item, []))
        for fault in costs.items
        if (found := _said(fault, known.get(fault.item)))
    ]
    by_need = {need: tuple(point for point in points if point.need is need) for need in Need}
    return Talking(by_need[Need.SAFETY], by_need[Need.CLAIM], by_need[Need.TASTE])


def _said(fault: Faulted, state: ItemState | None) -> tuple[Finding, ...]:
    if state is None:
        return ()
    return tuple(
        f for f in state.findings
        if f.mark in {Mark.DOUBT, Mark.FAIL} or f.conclusions or is_alarming(f, safety_item=True)
    )  # fmt: skip


def _point(
    profile: Profile, record: Record, fault: Faulted, found: Sequence[Finding], rows: Sequence[CostRow]
) -> TalkingPoint:
    words = joined([_by_whom(profile, record, fault.item, f, len(found)) for f in found], "; ")
    sentence = say("{item}: {words}.", item=fault.name, words=words)
    known = [one for row in rows for one in (row.parts, row.labour) if one is not None]
    return TalkingPoint(
        need=_need(profile, fault, found), item=fault.item, name=fault.name, sentence=sentence,
        evidence=_evidence(record, fault.item, found), sources=_sources(profile, record, fault.item),
        cost=added(known) if known else None, cost_words=_cost_words(fault, rows),
    )  # fmt: skip


def _words(profile: Profile, item: str, finding: Finding) -> Say:
    words = finding_words(profile.item_by_id.get(item), finding)
    note = first_sentence(finding.note)
    return say("{words} ({note})", words=words, note=note) if note else words


def _by_whom(profile: Profile, record: Record, item: str, finding: Finding, people: int) -> Say:
    words = _words(profile, item, finding)
    return words if people == 1 else say("{who}: {words}", who=record.name_of(finding.by), words=words)


def _need(profile: Profile, fault: Faulted, found: Sequence[Finding]) -> Need:
    """Safety where it bears on safety; taste where every way there is one of taste; else the claim."""
    part = profile.item_by_id.get(fault.item)
    if any(is_alarming(f, safety_item=bool(part and part.safety)) for f in found):
        return Need.SAFETY
    if fault.ways and all(way.need is Need.TASTE for way in fault.ways):
        return Need.TASTE
    return Need.CLAIM


def _evidence(record: Record, item: str, found: Sequence[Finding]) -> tuple[Say, ...]:
    told = [say(e.value) for f in found for e in f.evidence]
    told += [say("book: {book}", book=f.book) for f in found if f.book.strip()]
    pictures = len(record.photographs_at(item))
    if pictures:
        told.append(say("photographs: {count}", count=pictures))
    return tuple(dict.fromkeys(told)) or (NO_EVIDENCE,)


def _sources(profile: Profile, record: Record, item: str) -> tuple[Say, ...]:
    """Who says what would be right for the claimed year, each source once with its place."""
    key = ("who says what is right", item, str(record.claim.model_year))
    if key not in profile.worked_out:
        profile.worked_out[key] = _told_by(profile, item, record.claim.model_year)
    found: tuple[Say, ...] = profile.worked_out[key]
    return found


def _told_by(profile: Profile, item: str, year: int | None) -> tuple[Say, ...]:
    if item not in profile.item_by_id:
        return (NO_SOURCE,)
    told = [
        say("{title}, {place} ({kind})", title=s.title, place=s.place, kind=say(s.kind))
        if s.place
        else say("{title} ({kind})", title=s.title, kind=say(s.kind))
        for line in expected_lines(profile, item, year)
        for s in line.sources
    ]
    return tuple(dict.fromkeys(told)) or (NO_SOURCE,)


def _cost_words(fault: Faulted, rows: Sequence[CostRow]) -> Say:
    if fault.to_decide is not None:
        return say("not priced before it is decided what to do")
    if not rows:
        return say("no price entered")
    names = joined([row.way.name for row in rows], "; ")
    if any(row.labour is None for row in rows):
        return say("{names}; parts only, strip-downs left out", names=names)
    return say("{names}; parts and labour, strip-downs left out", names=names)
