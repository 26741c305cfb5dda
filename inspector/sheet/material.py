"""What magnet, tap and underside told of a part, as it stands on a sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.material import material_beware
from inspector.sheet.pieces import Phrase, Row
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.record.finding import Finding


def material_words(finding: Finding) -> str:
    """Everything that was noted, in one line; empty where nothing was."""
    return listed((tr(one.value) for one in finding.material.told), "; ")


def material_rows(finding: Finding) -> tuple[Row, ...]:
    """The line, and below it what must not be taken from it."""
    words = material_words(finding)
    beware = " ".join(tr(one) for one in material_beware(finding.material))
    return (Row(tr("Material"), Phrase("", sentence(words)), beware),) if words else ()
