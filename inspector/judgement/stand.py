"""The words for how two numbers stand to each other."""

from __future__ import annotations

from enum import StrEnum


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
