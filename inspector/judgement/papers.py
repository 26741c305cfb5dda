"""The numbers that papers quote beside those on the metal; a slip of the pen is named as that slip."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.judgement.relations import Stand
    from inspector.record.words import PaperState
    from inspector.texts import Say


@dataclass(frozen=True, slots=True)
class PaperStanding:
    """One number that a paper quotes, the place it was compared with, and how they stand.

    ``place`` is "" where there was nothing to compare with; ``slip`` is "", "dropped prefix", "look-alike",
    "swapped neighbours", "missing figure" or "figure too many".
    """

    paper: str
    name: str
    quoted: str
    place: str
    place_name: str
    stand: Stand
    slip: str
    sentence: Say
    reasons: tuple[Say, ...]
    state: PaperState
