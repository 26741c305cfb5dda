"""Papers as they stand on a sheet: what each quotes, and how that stands to the number on the metal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.relation_words import without_readings
from inspector.judgement.wording import lower_first
from inspector.sheet.blocks import PapersBlock, StandRow
from inspector.sheet.standing import sign_of
from inspector.sheet.words import listed, moment, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.judgement.judge import Judgement
    from inspector.judgement.papers import PaperStanding
    from inspector.record.claim import Paper
    from inspector.record.model import Record


def papers_block(record: Record, judgement: Judgement) -> PapersBlock:
    """Each paper and what lay on the table, then each number it quotes and how that stands."""
    rows = tuple(row for paper in record.papers for row in _paper(paper, judgement))
    return PapersBlock(tr("Papers"), rows, "" if rows else tr("No paper is noted."))


def _paper(paper: Paper, judgement: Judgement) -> Iterator[StandRow]:
    parts = (
        tr(paper.state.value),
        tr("names {who}", who=paper.named) if paper.named else "",
        tr("dated {date}", date=moment(paper.dated)) if paper.dated else "",
        paper.note,
    )
    yield StandRow("", paper.name, sentence(listed(parts, "; ")))
    yield from (_quoted(one) for one in judgement.papers if one.paper == paper.id)


def _quoted(one: PaperStanding) -> StandRow:
    details = listed((tr(reason) for reason in without_readings(one.reasons)), " ")
    return StandRow(sign_of(one.stand), _about(one), tr(one.sentence), details if one.quoted else "")


def _about(one: PaperStanding) -> str:
    if not one.quoted:
        return tr("Quotes no number")
    if not one.place_name:
        return tr("Quotes {number}", number=one.quoted)
    return tr("Quotes {number}, beside the {place}", number=one.quoted, place=lower_first(one.place_name))
