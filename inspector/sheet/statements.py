"""What was said: told as unverified, word for word, with who said it, how and when."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.sheet.blocks import Phrase, Row, StatementsBlock
from inspector.sheet.words import moment
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.judgement.judge import Judgement


def statements_block(judgement: Judgement) -> StatementsBlock:
    """Every statement that no evidence is tied to, each as unverified, in the order entered."""
    rows = tuple(Row("", Phrase("", tr(s.sentence)), moment(s.at)) for s in judgement.unlinked_statements)
    return StatementsBlock(tr("What was said"), rows, note="" if rows else tr("Nothing said is noted."))
