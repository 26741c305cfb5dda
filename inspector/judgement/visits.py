"""Two visits to one machine, item by item: what is closed, still open, new or changed, and what was not seen again."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.questions import unsure
from inspector.judgement.state import ItemState, states
from inspector.judgement.wording import concluded_words, first_sentence, fitted_variant, joined
from inspector.record.words import Mark, Seen
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding, Photograph
    from inspector.record.model import Record

NOTHING_THEN = say("not looked at then")
NOTHING_NOW = say("not looked at on this visit")


class Became(StrEnum):
    """What became of an item between two visits; what was open and is not seen again is never closed."""

    STILL_OPEN = "still open"
    NOT_SEEN_AGAIN = "open, not seen again"
    NEW = "new"
    CHANGED = "changed"
    CLOSED = "closed"
    UNSEEN_NOW = "right then, not seen again"
    FIRST_SEEN = "seen for the first time"
    AS_BEFORE = "as before"


@dataclass(frozen=True, slots=True)
class Side:
    """One item on one visit: its sign, what was said of it, and its photographs."""

    sign: str
    said: Say
    open: bool
    photographs: tuple[Photograph, ...] = ()


@dataclass(frozen=True, slots=True)
class VisitLine:
    """One item on both visits, and what became of it."""

    item: str
    name: str
    became: Became
    was: Side
    now: Side


@dataclass(frozen=True, slots=True)
class NumberChange:
    """The number of one place on both visits, as typed; empty where it was not read."""

    place: str
    name: str
    was: str
    now: str
    sentence: Say


@dataclass(frozen=True, slots=True)
class Visits:
    """The comparison: a line an item that was looked at on either visit, the numbers, and how many became what."""

    was_id: str
    now_id: str
    was_day: str
    now_day: str
    lines: tuple[VisitLine, ...]
    numbers: tuple[NumberChange, ...]
    counts: dict[str, int]
    notes: tuple[Say, ...] = ()


def compare(profile: Profile, was: Record, now: Record) -> Visits:
    """Both records by the same profile; nothing of the first counts as seen in the second."""
    then, here = states(profile, was), states(profile, now)
    lines = [
        _line(profile.item_by_id[item], was, now, then[item], here[item])
        for item in here
        if then[item].findings or here[item].findings
    ]
    order = list(Became)
    lines.sort(key=lambda line: order.index(line.became))
    count = Counter(line.became.value for line in lines)
    counts = {became.value: count[became.value] for became in Became}
    numbers = tuple(_numbers(profile, was, now))
    notes = tuple(_notes(profile, was, now))
    return Visits(was.id, now.id, day(was), day(now), tuple(lines), numbers, counts, notes)


def day(record: Record) -> str:
    """The day of the visit."""
    return record.claim.date or record.created[:10]


def was_words(profile: Profile, record: Record, item: Item) -> Say | None:
    """What the visit before found at the item, with its day and people; None where it looked at nothing there."""
    from inspector.record.second import visit_before

    before = visit_before(record)
    findings = before.findings_at(item.id) if before else ()
    if before is None or not findings:
        return None
    return say("Was, on {day}: {words}.", day=day(before), words=_words(before, item, findings))


def _line(item: Item, was: Record, now: Record, then: ItemState, here: ItemState) -> VisitLine:
    before, after = _side(was, item, then, NOTHING_THEN), _side(now, item, here, NOTHING_NOW)
    return VisitLine(item.id, item.name, _became(then, here, before, after), before, after)


def _side(record: Record, item: Item, state: ItemState, nothing: Say) -> Side:
    said = _words(record, item, state.findings) if state.findings else nothing
    sign = state.sign if state.findings else Seen.NOT_CHECKED.value
    return Side(sign, said, _is_open(state), record.photographs_at(item.id))


def _is_open(state: ItemState) -> bool:
    """Whether something is to be settled: a doubt, a fail, unsafe, two who differ, or a conclusion not sure."""
    return state.differs or any(
        f.seen is Seen.EXAMINED and (f.mark in (Mark.DOUBT, Mark.FAIL) or f.unsafe or unsure(f)) for f in state.findings
    )


def _looked(state: ItemState) -> bool:
    """Whether somebody examined it and said so with a mark, a form or a conclusion."""
    return any(
        f.seen is Seen.NOT_FITTED
        or (f.seen is Seen.EXAMINED and (f.mark or f.fitted or f.fitted_other or f.conclusions))
        for f in state.findings
    )


def _became(then: ItemState, here: ItemState, was: Side, now: Side) -> Became:
    if not _looked(here):
        if was.open:
            return Became.NOT_SEEN_AGAIN
        return Became.UNSEEN_NOW if _looked(then) else Became.AS_BEFORE
    if now.open:
        return Became.STILL_OPEN if was.open else Became.NEW
    if was.open:
        # Without a mark it was looked at and not settled.
        return Became.CLOSED if _settled(here) else Became.STILL_OPEN
    if not _looked(then):
        return Became.FIRST_SEEN
    return Became.CHANGED if _differs(then, here) else Became.AS_BEFORE


def _settled(state: ItemState) -> bool:
    return any(f.mark is Mark.PASS or f.seen is Seen.NOT_FITTED for f in state.findings)


def _differs(then: ItemState, here: ItemState) -> bool:
    """Whether the two visits contradict each other: another mark, form, conclusion or condition, where both say one."""
    return any(was and now and was != now for was, now in zip(_told(then), _told(here), strict=True))


def _told(state: ItemState) -> tuple[frozenset[str], ...]:
    findings = state.findings
    return (
        frozenset(f.mark.value if f.mark else f.seen.value for f in findings),
        frozenset(f.fitted or f.fitted_other for f in findings if f.fitted or f.fitted_other),
        frozenset(c.what.value for f in findings for c in f.conclusions),
        frozenset(condition.value for f in findings for condition in f.conditions),
    )


def _words(record: Record, item: Item, findings: tuple[Finding, ...]) -> Say:
    several = len(findings) > 1
    told = [_finding_words(record, item, finding, named=several) for finding in findings]
    words = told[0]
    for more in told[1:]:
        words = say("{first}; {then}", first=words, then=more)
    return words


def _finding_words(record: Record, item: Item, finding: Finding, *, named: bool) -> Say:
    parts: list[Say | str] = [say(finding.mark.value if finding.mark else finding.seen.value)]
    variant = fitted_variant(item, finding)
    if variant is not None:
        parts.append(say("fitted: {form}", form=variant.name))
    elif finding.fitted_other:
        parts.append(say("fitted: {form}", form=finding.fitted_other))
    parts += [concluded_words(c) for c in finding.conclusions]
    parts += [say(told.value) for told in finding.material.told]
    parts += [say(condition.value) for condition in finding.conditions]
    if finding.unsafe:
        parts.append(say("unsafe"))
    if note := first_sentence(finding.note):
        parts.append(note)
    words = joined(parts)
    return say("{person}: {words}", person=record.name_of(finding.by), words=words) if named else words


def _numbers(profile: Profile, was: Record, now: Record) -> Iterator[NumberChange]:
    for place in profile.places:
        before, after = (_typed(record, place.id) for record in (was, now))
        if before or after:
            yield NumberChange(place.id, place.name, before, after, _number_words(before, after))


def _typed(record: Record, place: str) -> str:
    return "; ".join(r.typed() or r.state.value for r in record.readings if r.place == place)


def _number_words(was: str, now: str) -> Say:
    if not now:
        return say("not read again on this visit")
    if not was:
        return say("read for the first time")
    return (
        say("read the same on both visits") if was == now else say("not read the same: the stamping is to be compared")
    )


def _notes(profile: Profile, was: Record, now: Record) -> Iterator[Say]:
    if was.profile.id != now.profile.id:
        yield say("The two records were made with different profiles; only items that both know are compared.")
    elif was.profile.version != now.profile.version:
        yield say("The first visit used version {was} of the profile, the second version {now}.",
                  was=was.profile.version or "?", now=now.profile.version or "?")  # fmt: skip
    if was.claim.model_year != now.claim.model_year:
        yield say("The claimed model year was {was} and is {now}.", was=was.claim.model_year or "–",
                  now=now.claim.model_year or "–")  # fmt: skip
    known = set(profile.item_by_id)
    lost = sorted({f.item for record in (was, now) for f in record.findings} - known)
    if lost:
        yield say("Findings at items that this profile does not have: {items}.", items=", ".join(lost))
