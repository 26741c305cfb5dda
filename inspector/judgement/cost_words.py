"""Sentences about what putting right costs, and what is not in the sum."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.three_points import DRAWS
from inspector.judgement.wording import joined
from inspector.profile.words import PartKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from decimal import Decimal

    from inspector.judgement.reckoned import Spread, Way
    from inspector.record.money import Money

ROUGH = say(
    "Plain sums add up all lows, all likely figures and all highs; it is rare that all fall low or high together, and "
    "the sum of likely figures usually lies below the middle of the cases."
)
NO_RATE = say("No labour rate entered: hours are told, labour is not in the sum.")
NO_CONTINGENCY = say("Contingency: none added.")
NO_LEVEL = say("No change of the price level entered.")


def spread_words() -> Say:
    """How the simulation was made."""
    return say(
        "From {draws} seeded cases: each figure a PERT beta with mean (low + 4 likely + high) / 6 and the exact "
        "variance of that beta, (mean - low)(high - mean) / 7, not the short-cut (high - low)² / 36; a price "
        "level common to all parts is drawn once for each case.",
        draws=DRAWS,
    )


def triangle_words(spread: Spread) -> Say:
    """How much of the answer hangs on the shape that is supposed for each figure."""
    half, high = spread.by_triangles
    return say(
        "The shape is a supposition: were each figure a triangle, half of the cases would lie under {half} and nine in "
        "ten under {high}.",
        half=half, high=high,
    )  # fmt: skip


def labour_of(way: Way, rate: Decimal | None) -> Say:
    """What is said about the labour of one way."""
    if way.kind is PartKind.LEAVE and way.hours is None:
        return say("no labour")
    if way.hours is None:
        return say("labour not estimated")
    low, likely, high = way.hours
    if rate is None:
        return say("{hours} hours ({least} to {most}), no rate entered", hours=likely, least=low, most=high)
    return say("{hours} hours at {rate} ({least} to {most})", hours=likely, rate=rate, least=low, most=high)


def labour_words(money: Money, not_estimated: tuple[str, ...]) -> Say:
    """What is said about the labour in the sum."""
    if not_estimated:
        lacking = say("Labour not estimated, and not in the sum: {names}.", names=joined(list(not_estimated), "; "))
        return lacking if money.labour_rate is not None else joined([lacking, NO_RATE], " ")
    if money.labour_rate is None:
        return NO_RATE
    return say("Labour at {rate} an hour, the rate entered.", rate=money.labour_rate)


def contingency_words(money: Money) -> Say:
    """The contingency as entered, or that none is added."""
    if money.contingency_percent is None:
        return NO_CONTINGENCY
    return say("Contingency: {percent} % of parts and labour, as entered.", percent=money.contingency_percent)


def level_words(money: Money) -> Say:
    """The common price level as entered, or that none is."""
    if money.price_level is None:
        return NO_LEVEL
    level = money.price_level
    return say(
        "All parts prices changed together by {least} to {most} %, likely {percent} %, as entered.",
        least=level.low, most=level.high, percent=level.likely,
    )  # fmt: skip
