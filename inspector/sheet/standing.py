"""How the numbers of the machine stand beside each other, and what numbers of 17 characters say of themselves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.relation_words import without_readings
from inspector.judgement.stand import Stand
from inspector.judgement.wording import lower_first
from inspector.sheet.blocks import BesideBlock, SeventeenBlock, StandRow
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.judgement.judge import Judgement
    from inspector.judgement.relations import Standing
    from inspector.judgement.seventeens import SeventeenLine
    from inspector.record.model import Record


def beside_blocks(record: Record, judgement: Judgement) -> tuple[BesideBlock, ...]:
    """Every standing, those that raise a question first; nothing where the profile relates no places."""
    if not judgement.standings:
        return ()
    read = {reading.place for reading in record.readings if reading.figures}
    if not read:
        note = tr("No number was read, so nothing is compared.")
        return (BesideBlock(tr("Beside each other"), (), note),)
    rows = tuple(_row(standing, read) for standing in judgement.standings)
    asks = any(standing.raises for standing in judgement.standings)
    note = tr("What raises a question stands first; a question is not an answer.") if asks else ""
    return (BesideBlock(tr("Beside each other"), rows, note),)


def _row(standing: Standing, read: set[str]) -> StandRow:
    """The rule is told where both were read: else there is nothing that it could be held against."""
    names = tr("{one} and {other}", one=standing.names[0], other=lower_first(standing.names[1]))
    if not set(standing.places) <= read:
        return StandRow(sign_of(standing.stand), names, tr(standing.sentence))
    details = listed((tr(one) for one in without_readings(standing.details)), " ")
    grade = standing.grade if standing.kind is not None else None
    return StandRow(sign_of(standing.stand), names, tr(standing.sentence), details, grade)


def sign_of(stand: Stand) -> str:
    """The word whose two ruled lines are drawn: what has no rule is drawn as what cannot be compared."""
    return Stand.CANNOT.value if stand is Stand.NO_RULE else stand.value


def seventeen_blocks(judgement: Judgement) -> tuple[SeventeenBlock, ...]:
    """What each number of 17 characters says of itself, and what its check cannot show; nothing without one."""
    if not judgement.seventeen:
        return ()
    rows = tuple(_seventeen(line) for line in judgement.seventeen)
    found = dict.fromkeys(tr(source) for line in judgement.seventeen for source in line.result.sources)
    note = sentence(tr("By {sources}", sources=listed(found, "; ")))
    return (SeventeenBlock(tr("17-character numbers"), rows, note),)


def _seventeen(line: SeventeenLine) -> StandRow:
    result = line.result
    reasons = listed((tr(reason) for reason in result.reasons), " ")
    blind = listed((tr(one) for one in result.blind), " ")
    unseen = tr("What the check digit cannot show: {blind}", blind=blind) if blind else ""
    return StandRow("", tr("{place} {number}", place=line.name, number=line.typed), reasons, unseen)
