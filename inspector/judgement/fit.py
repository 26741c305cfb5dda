"""From eight usable comparables: price by score, fitted with weights, its interval, and what each sale does to it."""

from __future__ import annotations

from decimal import Decimal
from math import exp, log
from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.judgement.exchange import rounded
from inspector.judgement.grid import without_correctness
from inspector.judgement.least_squares import least_squares
from inspector.judgement.reckoned import Fit, Influence, Predicted
from inspector.judgement.wording import joined
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.grid import Scores
    from inspector.judgement.least_squares import LeastSquares
    from inspector.judgement.reckoned import GridRow

ENOUGH = 8
LEVEL = 0.8
TOO_MUCH = 25.0  # the logarithm of more than any price that can be entered
HOW = (
    say("Fitted: the logarithm of the price, adjusted for all but correctness, on the score; weighted least squares."),
    say("The interval holds eight in ten single sales of middling likeness, by the quantiles of Student's t."),
    say("Scores of other machines are as entered; who gave them, and how strictly, is not known here."),
)


def usable(rows: Sequence[GridRow]) -> tuple[GridRow, ...]:
    """The rows that a fit can use: counted, with a score, and with something left of the price."""
    return tuple(
        row for row in rows
        if row.counted and row.score is not None and (price := without_correctness(row)) is not None and price > 0
    )  # fmt: skip


def fit(rows: Sequence[GridRow], scores: Scores) -> tuple[Fit | None, Say]:
    """The fit, and in words what it is or why there is none."""
    used = usable(rows)
    if len(used) < ENOUGH:
        return None, say(
            "No fit: it needs {needed} counted comparables with a score, and there are {count}.",
            needed=ENOUGH, count=len(used),
        )  # fmt: skip
    found = _fitted(used)
    if found is None:
        return None, say("No fit: all scores are the same, so that they tell nothing of what correctness is worth.")
    now, then = _predicted(found, used, scores.now), _predicted(found, used, scores.then)
    slope = 100 * (exp(min(float(found.coefficients[1]), TOO_MUCH)) - 1)
    influence = _influence(found, used, scores)
    warnings = _warnings(slope, influence, [p for p in (now, then if scores.rise else None) if p is not None])
    told = Fit(len(used), slope, found.explained, now, then, influence, warnings, HOW)
    return told, say("Fitted to {count} comparables.", count=len(used))


def _fitted(used: Sequence[GridRow]) -> LeastSquares | None:
    prices = [float(without_correctness(row) or 1) for row in used]
    mean = sum(row.weight for row in used) / len(used)
    return least_squares(
        [(1.0, float(row.score or 0)) for row in used],
        [log(price) for price in prices],
        [row.weight / mean for row in used],
    )


def _predicted(found: LeastSquares, used: Sequence[GridRow], score: Decimal | None) -> Predicted | None:
    if score is None:
        return None
    low, middle, high = found.predict((1.0, float(score)), LEVEL)
    if high > TOO_MUCH:
        return None
    return Predicted(float(score), _money(low), _money(middle), _money(high), _outside(used, score))


def _outside(used: Sequence[GridRow], score: Decimal) -> Say | None:
    known = [row.score for row in used if row.score is not None]
    least, most = min(known), max(known)
    if least <= score <= most:
        return None
    return say(
        "Beyond the entries: this machine's score of {score} lies outside the {least} to {most} of the comparables, "
        "and what holds there is a guess.",
        score=score, least=least, most=most,
    )  # fmt: skip


def _influence(found: LeastSquares, used: Sequence[GridRow], scores: Scores) -> tuple[Influence, ...]:
    """How much each sale pulls, the strongest first; those on which the fit hangs alone before all."""
    at = float(scores.now) if scores.now is not None else float(sum(r.score or 0 for r in used)) / len(used)
    told = []
    for number, (row, cook) in enumerate(zip(used, found.cook(), strict=True)):
        beta = found.without(number)
        middle = float(beta[0] + beta[1] * at) if beta is not None else None
        without = _money(middle) if middle is not None and middle < TOO_MUCH else None
        told.append(Influence(row.id, _called(row), cook, without))
    return tuple(sorted(told, key=lambda one: (one.without is not None, -(one.cook or 0.0))))


def _called(row: GridRow) -> Say:
    """The sale by what it was, where and when."""
    told: list[Say | str] = [word for word in (row.title.strip(), row.place.strip()) if word]
    told += [day_words(row.date)] if row.date.strip() else []
    return joined(told or [say(row.kind.value)])


def _warnings(slope: float, influence: Sequence[Influence], told: Sequence[Predicted]) -> tuple[Say, ...]:
    found = [one.outside for one in told if one.outside is not None]
    if slope < 0:
        found.append(say("By these entries less correct machines fetch more: look the scores and prices over."))
    first = influence[0]
    if first.without is None:
        found.append(say("The fit hangs on one sale alone: {name}.", name=first.name))
    elif first.cook:
        found.append(say("{name} pulls most: without it the middle would be {without}.",
                         name=first.name, without=first.without))  # fmt: skip
    return tuple(dict.fromkeys(found))


def _money(logarithm: float) -> Decimal:
    return rounded(Decimal(repr(exp(logarithm))))
