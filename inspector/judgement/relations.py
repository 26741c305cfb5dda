"""How the numbers of two places stand to each other, in graded words, each with how both were read."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.profile.words import RelationKind
    from inspector.texts import Say


class Stand(StrEnum):
    """How two numbers stand to each other; each value is the word that is shown."""

    AGREE = "agree as read"
    AGREE_IF = "agree if"
    DISAGREE = "disagree as read"
    CLOSE = "close as usual"
    UNUSUAL = "unusual gap"
    DIFFER = "differ, as built"
    NO_RULE = "no rule for this year"
    CANNOT = "cannot compare"
    SLIP = "one slip"


@dataclass(frozen=True, slots=True)
class Standing:
    """How two places stand: the word, a sentence ("agree if figure 5 is 8"), and the rule with both readings.

    ``raises`` marks a question to ask. ``gap`` is the second serial less the first, ``expected_gap`` what is usual
    there; both None where no single gap is known. ``if_figures`` are the conditions as number and characters, and
    ``if_places`` the place each belongs to. ``traps`` are ids of traps that speak of both places.
    """

    places: tuple[str, str]
    names: tuple[str, str]
    stand: Stand
    sentence: Say
    detail: Say
    raises: bool
    gap: int | None
    expected_gap: int | None
    if_figures: tuple[tuple[int, str], ...]
    if_places: tuple[str, ...]
    kind: RelationKind | None
    sources: tuple[str, ...]
    grade: int
    traps: tuple[str, ...]
