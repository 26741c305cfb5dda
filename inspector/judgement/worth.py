"""What the machine is worth to this buyer, from the comparables entered, for a purpose, on a date."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.judgement.exchange import ROUNDING, exchange, rounded
from inspector.judgement.fit import fit
from inspector.judgement.grid import HOW as HOW_ADJUSTED
from inspector.judgement.grid import Scores, grid
from inspector.judgement.reckoned import Range, Worth
from inspector.judgement.weighted import HOW as HOW_MIDDLE
from inspector.judgement.weighted import quantile
from inspector.record.days import day_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.reckoned import Costs, GridRow
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import Money

NEVER_WORDS = ("market value",)
QUARTER, HALF, THREE_QUARTERS = Decimal("0.25"), Decimal("0.5"), Decimal("0.75")
EMPTY = say("No comparable is entered: enter what other machines fetched.")
NONE_COUNT = say("None of the comparables entered is counted: the reason stands at each.")
NOTHING_CHOSEN = say("Nothing is chosen to be put right that would raise the score.")
NOTHING_SEEN = say("Nothing was seen yet: correctness is not reckoned with.")
TOO_MUCH = say("a few comparables cannot say what all buyers would pay")
NO_SLOPE = say(
    "Nothing entered says what correctness is worth: enter a percentage for a point, or at comparables with a score an "
    "adjustment for correctness."
)
FROM_POINT = say("Put right differs from as it stands by the points gained, at the percentage for a point you entered.")
FROM_HAND = say(
    "Put right differs from as it stands by the points gained, in proportion to your own adjustments for correctness; "
    "comparables without a score or such an adjustment are not in it."
)


def worth(profile: Profile, record: Record, costs: Costs) -> Worth:
    """Ranges as it stands and put right as chosen, the grid behind them, and a fit where there is enough for one."""
    at, money = exchange(profile, record), record.money
    scores = Scores.of(costs.score_now, costs.score_put_right)
    rows = grid(record, at, scores)
    counted = tuple(row for row in rows if row.counted)
    now = _range([(row.as_it_stands, row.weight) for row in counted])
    then = _range([(row.put_right, row.weight) for row in counted])
    fitted, fit_words = fit(rows, scores)
    why_not = _not_printable(money, now, entered=bool(rows))
    return Worth(
        currency=at.currency, as_it_stands=now, put_right=then, put_right_words=_put_right_words(scores, then, money),
        rows=counted, left_out=tuple(row for row in rows if not row.counted), fit=fitted, fit_words=fit_words,
        headline=_headline(money, len(counted), len(rows)), printable=not why_not, why_not_printable=why_not,
        troubles=_troubles(record, rows, [at.trouble(c.currency) for c in record.comparables]),
        reasons=(*HOW_ADJUSTED, HOW_MIDDLE, ROUNDING),
    )  # fmt: skip


def _range(weighed: Sequence[tuple[Decimal | None, int]]) -> Range | None:
    known = [(amount, weight) for amount, weight in weighed if amount is not None and amount > 0]
    if not known:
        return None
    values, weights = [amount for amount, _ in known], [weight for _, weight in known]
    lower, middle, upper = (quantile(values, weights, share) for share in (QUARTER, HALF, THREE_QUARTERS))
    return Range(min(values), middle, max(values), (lower, upper), len(values))


def _put_right_words(scores: Scores, then: Range | None, money: Money) -> Say:
    if scores.now is None:
        return NOTHING_SEEN
    if scores.rise is None:
        return NOTHING_CHOSEN
    if then is None:
        return NO_SLOPE
    return FROM_POINT if money.percent_a_point is not None else FROM_HAND


def _headline(money: Money, count: int, entered: int) -> Say:
    if not count:
        return say("No worth can be said from what is entered.")
    purpose = money.purpose.strip() or say("a purpose not yet said")
    date = day_words(money.effective_date) if money.effective_date.strip() else say("a date not yet said")
    if count < entered:
        return say(
            "From {count} of the {entered} comparables entered, for {purpose}, on {date}. "
            "An opinion from these figures only.",
            count=count, entered=entered, purpose=purpose, date=date,
        )  # fmt: skip
    if count == 1:
        return say("From one comparable entered, for {purpose}, on {date}. An opinion from this figure only.",
                   purpose=purpose, date=date)  # fmt: skip
    return say(
        "From the {count} comparables entered, for {purpose}, on {date}. An opinion from these figures only.",
        count=count, purpose=purpose, date=date,
    )  # fmt: skip


def _not_printable(money: Money, now: Range | None, *, entered: bool) -> tuple[Say, ...]:
    """What has to be entered before it can be printed as a value."""
    lacking = []
    if not money.purpose.strip():
        lacking.append(say("Enter the purpose: for what is it valued?"))
    elif _claims_too_much(money.purpose):
        lacking.append(say("Name the purpose otherwise: {why}.", why=TOO_MUCH))
    if not money.kind_of_value.strip():
        lacking.append(say("Enter the kind of value, such as agreed for insurance or between two people."))
    elif _claims_too_much(money.kind_of_value):
        lacking.append(say("Name the kind of value otherwise: {why}.", why=TOO_MUCH))
    if day_of(money.effective_date) is None:
        lacking.append(say("Enter the effective date, as in 2025-05-17: on which day does it hold?"))
    if not money.in_the_name_of.strip():
        lacking.append(say("Enter in whose name it is said."))
    if now is None:
        lacking.append(NONE_COUNT if entered else EMPTY)
    return tuple(lacking)


def _claims_too_much(words: str) -> bool:
    told = " ".join(words.casefold().split())
    return any(word in told for word in NEVER_WORDS)


def _troubles(record: Record, rows: Sequence[GridRow], rates: Sequence[Say | None]) -> tuple[Say, ...]:
    if not rows:
        return (EMPTY,)
    ids = {row.id for row in rows}
    lost = [a for a in record.adjustments if a.comparable not in ids]
    found = [trouble for trouble in rates if trouble is not None]
    if lost:
        found.append(say("{count} adjustments belong to comparables that are no longer there.", count=len(lost)))
    if not any(row.counted for row in rows):
        found.append(NONE_COUNT)
    return tuple(dict.fromkeys(found))


def worth_of_a_point(record: Record, costs: Costs, valued: Worth) -> Decimal | None:
    """What one point of the score is worth by the user's entries, for a plan of all that pays; None where none says.

    By the percentage for a point, of the middle as it stands; else by what the points gained make of the middle,
    where the same comparables stand in both.
    """
    now, then = valued.as_it_stands, valued.put_right
    if now is None:
        return None
    if record.money.percent_a_point is not None:
        return rounded(now.middle * record.money.percent_a_point / 100)
    rise = Scores.of(costs.score_now, costs.score_put_right).rise
    if then is None or rise is None or then.count != now.count:
        return None
    return rounded((then.middle - now.middle) / rise)
