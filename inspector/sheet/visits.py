"""Two visits side by side as a sheet: what became of each item, with what was and what is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.visits import Became
from inspector.record.words import Role
from inspector.sheet import people
from inspector.sheet.blocks import Block, Head, ListBlock, Sheet
from inspector.sheet.pieces import Phrase, Row
from inspector.sheet.words import FOOT, moment
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.visits import Side, VisitLine, Visits
    from inspector.record.model import Record


def visits_sheet(was: Record, now: Record, visits: Visits, made_at: str) -> Sheet:
    """The comparison of two visits as a sheet: what is open first, then what is new, changed, closed, as before."""
    return Sheet(
        title=tr("Two visits compared"),
        kind="visits",
        record_id=now.id,
        version=max((v.number for v in now.versions), default=0) + 1,
        made_at=made_at,
        machine=people.machine_name(now),
        author=people.names_as(now, Role.INSPECTOR),
        foot=tr(FOOT),
        stamp=(tr("Records {was} and {now}", was=was.id, now=now.id), moment(made_at)),
        blocks=tuple(_blocks(now, visits)),
    )


def _blocks(now: Record, visits: Visits) -> Iterator[Block]:
    days = tr("visits of {was} and {now}", was=moment(visits.was_day), now=moment(visits.now_day))
    counted = [f"{count} {tr(word)}" for word, count in visits.counts.items() if count]
    yield Head(people.machine_name(now), Phrase(days), ("; ".join(counted), *(tr(note) for note in visits.notes)))
    for became in Became:
        lines = [line for line in visits.lines if line.became is became]
        if lines:
            yield ListBlock(tr(became.value).capitalize(), tuple(_row(line) for line in lines))
    if visits.numbers:
        rows = [
            Row(n.name, Phrase(tr(n.sentence)), tr("was {was}; is {now}", was=n.was or "–", now=n.now or "–"))
            for n in visits.numbers
        ]
        yield ListBlock(tr("Numbers as read"), tuple(rows))


def _row(line: VisitLine) -> Row:
    now = Phrase(tr("Now: {words}.", words=tr(line.now.said)), pictures(line.now))
    return Row(line.name, now, tr("Was: {words}.", words=tr(line.was.said)) + pictures(line.was, " "))


def pictures(side: Side, before: str = "") -> str:
    """How many photographs there are of it on that visit; nothing where there is none."""
    count = len(side.photographs)
    return before + trn("({count} photograph)", "({count} photographs)", count) if count else ""
