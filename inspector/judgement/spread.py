"""The simulated sum of a cost, told in money, and how often it exceeds an amount."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.exchange import rounded
from inspector.judgement.reckoned import DriverTold, Spread
from inspector.judgement.three_points import DRAWS, Term, simulate, sums
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement import three_points
    from inspector.judgement.reckoned import CostRow, JobPaid, Three
    from inspector.record.money import Money

SEED = 1
MOST_DRIVERS = 5
LEVEL = say("The price level common to all parts")


@dataclass(frozen=True, slots=True)
class Summed:
    """The uncertain figures of a cost, their names, the common level and the factor over all."""

    terms: tuple[Term, ...]
    names: dict[str, Say]
    level: three_points.Three | None
    factor: float

    @classmethod
    def of(cls, rows: Sequence[CostRow], jobs: Sequence[JobPaid], money: Money) -> Summed:
        """The figures of these rows and strip-downs: parts, and hours at the user's rate where there is one."""
        terms, names = [], {}
        rate = float(money.labour_rate) if money.labour_rate is not None else None
        for row in rows:
            key = row.way.key
            if row.parts is not None:
                terms.append(Term(key + " parts", _floats(row.parts), levelled=True))
                names[key + " parts"] = say("{item}, {name}: parts", item=row.way.item_name, name=row.way.name)
            if row.way.hours is not None and rate is not None:
                terms.append(Term(key + " hours", _floats(row.way.hours), rate))
                names[key + " hours"] = say("{item}, {name}: labour", item=row.way.item_name, name=row.way.name)
        for job in jobs:
            if job.hours is not None and rate is not None:
                terms.append(Term("job " + job.id, _floats(job.hours), rate))
                names["job " + job.id] = say("{name}: labour", name=job.name)
        percent = money.contingency_percent or Decimal(0)
        return cls(tuple(terms), names, _level(money), float(1 + percent / 100))


def told(summed: Summed, words: Say, *, seed: int = SEED, draws: int = DRAWS) -> Spread:
    """The simulated sum in money, with the five figures that spread it most."""
    found, other = (
        simulate(summed.terms, level=summed.level, factor=summed.factor, seed=seed, draws=draws, triangles=triangles)
        for triangles in (False, True)
    )
    p10, p50, p80, p90, mean, deviation = (
        money_of(x) for x in (found.p10, found.p50, found.p80, found.p90, found.mean, found.deviation)
    )
    drivers = tuple(DriverTold(summed.names.get(d.key, LEVEL), d.share) for d in found.drivers[:MOST_DRIVERS])
    triangles = money_of(other.p50), money_of(other.p90)
    return Spread(p10, p50, p80, p90, mean, deviation, drivers, draws, seed, words, triangles)


def share_above(summed: Summed, amount: Decimal, *, seed: int = SEED, draws: int = DRAWS) -> float | None:
    """The share of simulated cases, 0 to 1, in which the sum is above the amount; None where nothing is uncertain."""
    if all(term.three[0] >= term.three[2] for term in summed.terms):
        return None
    drawn = sums(summed.terms, level=summed.level, factor=summed.factor, seed=seed, draws=draws)
    return float((drawn > float(amount)).mean())


def money_of(amount: float) -> Decimal:
    """An amount worked out in floating figures, told to the hundredth."""
    return rounded(Decimal(repr(amount)))


def _level(money: Money) -> three_points.Three | None:
    if money.price_level is None:
        return None
    level = money.price_level
    return 1 + float(level.low) / 100, 1 + float(level.likely) / 100, 1 + float(level.high) / 100


def _floats(three: Three) -> three_points.Three:
    return float(three[0]), float(three[1]), float(three[2])
