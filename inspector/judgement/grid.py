"""The grid of comparables: each price from as entered, by visible changes, to this machine."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.exchange import rounded
from inspector.judgement.grid_time import time_lacking, time_line
from inspector.judgement.reckoned import AdjustmentLine, GridRow
from inspector.judgement.wording import joined
from inspector.record.words import Adjusts, PriceKind
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.exchange import Exchange
    from inspector.record.model import Record
    from inspector.record.money import Adjustment, Comparable, Money

NOT_COUNTED = {
    PriceKind.ASKED: say("An asking price, not a sale: counted only if you choose so."),
    PriceKind.BID: say("A bid that did not buy: counted only if you choose so."),
}
NO_FEES = say("Buyer's fees are not in it, and none were entered: none were added.")
HOW = (
    say("Each price is first told in one currency, then with the buyer's fees, then of the effective date."),
    say("Percentages of the other adjustments are of that price, and are added up, not compounded."),
)


@dataclass(frozen=True, slots=True)
class Scores:
    """The score of this machine as it stands, and put right as chosen; None where nothing was seen."""

    now: Decimal | None
    then: Decimal | None

    @classmethod
    def of(cls, now: float | None, then: float | None) -> Scores:
        """The two scores in hundredths of a point."""
        return cls(_points(now), _points(then))

    @property
    def rise(self) -> Decimal | None:
        """Points between the two; None where either is not known or nothing is put right."""
        if self.now is None or self.then is None or self.then <= self.now:
            return None
        return self.then - self.now


def grid(record: Record, at: Exchange, scores: Scores) -> tuple[GridRow, ...]:
    """One row for each comparable in the order entered, counted or not, with every change visible."""
    by_row: dict[str, list[Adjustment]] = {}
    for one in record.adjustments:
        by_row.setdefault(one.comparable, []).append(one)
    return tuple(_row(record.money, c, by_row.get(c.id, []), at, scores) for c in record.comparables)


def without_correctness(row: GridRow) -> Decimal | None:
    """The price with all changes but those for correctness: what a fit on the score works on."""
    if row.told is None:
        return None
    return row.told + sum((line.amount for line in row.lines if line.what is not Adjusts.CORRECTNESS), Decimal(0))


def _row(money: Money, one: Comparable, entries: Sequence[Adjustment], at: Exchange, scores: Scores) -> GridRow:
    told = at.told(one.price, one.currency)
    lines: tuple[AdjustmentLine, ...] = ()
    rise: AdjustmentLine | None = None
    now = then = None
    if told is not None:
        base, first = _of_the_day(money, one, entries, told)
        others = _others(one, entries, base, money, scores)
        lines = (*first, *others)
        now = base + sum((line.amount for line in others), Decimal(0))
        rise = _put_right(one, others, base, money, scores)
        then = now + rise.amount if rise is not None else None
    why_not = _why_not(one, money, at, now)
    return GridRow(
        id=one.id, title=one.title, kind=one.kind, date=one.date, place=one.place, source=one.source,
        photograph=one.photograph, pictures=one.pictures, condition=one.condition, numbers=one.numbers,
        score=one.score, weight=one.how_like, as_entered=one.price,
        currency=one.currency or at.currency, told=told, lines=lines, to_put_right=rise, as_it_stands=now,
        put_right=then, counted=why_not is None, why_not=why_not, note=_note(money, one, lines, at),
    )  # fmt: skip


def _of_the_day(
    money: Money, one: Comparable, entries: Sequence[Adjustment], told: Decimal
) -> tuple[Decimal, tuple[AdjustmentLine, ...]]:
    """The price with fees and of the effective date, and the changes that made it so."""
    lines: list[AdjustmentLine] = []
    if not one.fees_in and one.premium_percent:
        amount = rounded(told * one.premium_percent / 100)
        lines.append(AdjustmentLine(None, amount, say("buyer's fees of {percent} %", percent=one.premium_percent)))
    with_fees = told + sum((line.amount for line in lines), Decimal(0))
    by_hand = [e for e in entries if e.what is Adjusts.TIME]
    own = None if by_hand else time_line(money, one.date, with_fees)
    lines += [own] if own is not None else [_entered(e, with_fees) for e in by_hand]
    return told + sum((line.amount for line in lines), Decimal(0)), tuple(lines)


def _others(
    one: Comparable, entries: Sequence[Adjustment], base: Decimal, money: Money, scores: Scores
) -> tuple[AdjustmentLine, ...]:
    lines = [_entered(e, base) for e in entries if e.what is not Adjusts.TIME]
    by_hand = any(e.what is Adjusts.CORRECTNESS for e in entries)
    if by_hand or money.percent_a_point is None or one.score is None or scores.now is None:
        return tuple(lines)
    points = scores.now - one.score
    amount = rounded(base * money.percent_a_point * points / 100)
    words = say(
        "correctness: {points} points at {percent} % a point, as entered",
        points=points, percent=money.percent_a_point,
    )  # fmt: skip
    return (*lines, AdjustmentLine(Adjusts.CORRECTNESS, amount, words))


def _entered(entry: Adjustment, base: Decimal) -> AdjustmentLine:
    amount = entry.amount if entry.amount is not None else base * (entry.percent or Decimal(0)) / 100
    reason = entry.reason.strip() or say("no reason entered")
    if entry.percent is not None:
        words = say("{what}: {percent} %, {reason}", what=say(entry.what.value), percent=entry.percent, reason=reason)
    else:
        words = say("{what}: {reason}", what=say(entry.what.value), reason=reason)
    return AdjustmentLine(entry.what, rounded(amount), words, entry.id)


def _put_right(
    one: Comparable, others: Sequence[AdjustmentLine], base: Decimal, money: Money, scores: Scores
) -> AdjustmentLine | None:
    """What the points gained add; None where nothing entered says what correctness is worth."""
    rise = scores.rise
    if rise is None:
        return None
    if money.percent_a_point is not None:
        amount = rounded(base * money.percent_a_point * rise / 100)
        words = say("put right: {points} points more at {percent} % a point, as entered",
                    points=rise, percent=money.percent_a_point)  # fmt: skip
        return AdjustmentLine(Adjusts.CORRECTNESS, amount, words)
    by_hand = sum((line.amount for line in others if line.what is Adjusts.CORRECTNESS), Decimal(0))
    if one.score is None or scores.now is None or one.score == scores.now:
        return None
    a_point = by_hand / (scores.now - one.score)
    if a_point <= 0:
        return None
    words = say("put right: {points} points more, in proportion to your adjustment for correctness", points=rise)
    return AdjustmentLine(Adjusts.CORRECTNESS, rounded(a_point * rise), words)


def _why_not(one: Comparable, money: Money, at: Exchange, now: Decimal | None) -> Say | None:
    if one.excluded_because.strip():
        return say("Left out: {why}", why=one.excluded_because.strip())
    if one.kind is not PriceKind.SOLD and one.kind not in money.also_count:
        return NOT_COUNTED[one.kind]
    if now is None:
        return at.trouble(one.currency)
    if one.price <= 0:
        return say("Without a price: enter what was paid.")
    return say("Its adjustments leave nothing of the price: look them over.") if now <= 0 else None


def _note(money: Money, one: Comparable, lines: Sequence[AdjustmentLine], at: Exchange) -> Say | None:
    """What is to be known of how the price was told; None where nothing is."""
    told = [at.words(one.currency)]
    if not any(line.what is Adjusts.TIME for line in lines):
        told.append(time_lacking(money, one.date))
    if one.kind is not PriceKind.ASKED and not one.fees_in and one.premium_percent is None:
        told.append(NO_FEES)
    notes = [words for words in told if words is not None]
    return joined(notes, " ") if notes else None


def _points(score: float | None) -> Decimal | None:
    return None if score is None else rounded(Decimal(repr(score)))
