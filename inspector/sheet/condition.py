"""The state of the parts as it stands on a sheet, apart from whether they are right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.sheet.blocks import ConditionBlock, Phrase, Row
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.judgement.judge import Judgement


def condition_block(judgement: Judgement) -> ConditionBlock:
    """What was found worn, damaged, repaired or not working, item by item, and how many were found sound."""
    rows = tuple(Row("", Phrase("", tr(said))) for said in judgement.condition)
    return ConditionBlock(tr("Condition"), rows, note=tr("Kept apart from how much is right."), running=True)
