"""What a reckoning of money says: ways to put right, costs, a plan and a worth. Amounts in the currency told.

A ``Three`` is low, likely, high. None is always "not known", never nought.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.profile.words import Need, PartKind
    from inspector.record.finding import Photograph
    from inspector.record.words import Adjusts, NumbersAgree, PriceKind
    from inspector.texts import Say

Three = tuple[Decimal, Decimal, Decimal]


@dataclass(frozen=True, slots=True)
class Way:
    """One way to put an item right. ``choice`` is True chosen, False declined, None not decided.

    ``parts`` are told in the currency of the reckoning (None: no price, or no rate for it), ``hours`` are hours.
    """

    key: str
    item: str
    item_name: str
    cost: str
    name: str
    kind: PartKind
    need: Need
    parts: Three | None
    hours: Three | None
    currency: str
    priced_on: str
    source: str
    job: str
    after: tuple[str, ...]
    excludes: tuple[str, ...]
    lead_weeks: tuple[float, float] | None
    note: str
    choice: bool | None
    own: bool
    changed: bool
    trouble: Say | None = None


@dataclass(frozen=True, slots=True)
class Faulted:
    """An item that is not as it should be, the ways offered there, and those that are counted, with the reason."""

    item: str
    name: str
    sign: str
    ways: tuple[Way, ...]
    counted: tuple[Way, ...]
    to_decide: Say | None
    reason: Say


@dataclass(frozen=True, slots=True)
class CostRow:
    """One way that is counted. ``labour`` is None where hours or the rate are not known."""

    way: Way
    parts: Three | None
    labour: Three | None
    labour_words: Say


@dataclass(frozen=True, slots=True)
class JobPaid:
    """A strip-down paid once, and the names of the remedies and jobs behind it."""

    id: str
    name: str
    hours: Three | None
    labour: Three | None
    serves: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class DriverTold:
    """What spreads the sum: its name and its share of the spread, 0 to 1."""

    name: Say
    share: float


@dataclass(frozen=True, slots=True)
class Spread:
    """The sum stays under these amounts in 10, 50, 80 and 90 of a hundred cases of a seeded simulation.

    ``by_triangles`` are what the second and the last would be were each figure a triangle instead of a PERT beta.
    """

    p10: Decimal
    p50: Decimal
    p80: Decimal
    p90: Decimal
    mean: Decimal
    deviation: Decimal
    drivers: tuple[DriverTold, ...]
    draws: int
    seed: int
    words: Say
    by_triangles: tuple[Decimal, Decimal]


@dataclass(frozen=True, slots=True)
class NeedSum:
    """What the ways for safety, for the claim or for taste come to, strip-downs and contingency left out."""

    need: Need
    total: Three


@dataclass(frozen=True, slots=True)
class Costs:
    """What it costs to put right what is counted. ``total`` holds parts, labour and contingency as plain sums.

    What ``not_estimated`` (labour), ``not_priced`` (parts), ``to_decide``, ``no_way``, ``in_doubt`` name is not in it.
    """

    currency: str
    items: tuple[Faulted, ...]
    rows: tuple[CostRow, ...]
    jobs: tuple[JobPaid, ...]
    parts: Three
    hours: Three
    labour: Three | None
    contingency: Three | None
    total: Three
    by_need: tuple[NeedSum, ...]
    simulated: Spread | None
    not_estimated: tuple[str, ...]
    not_priced: tuple[str, ...]
    to_decide: tuple[Faulted, ...]
    no_way: tuple[str, ...]
    labour_words: Say
    contingency_words: Say
    level_words: Say
    score_now: float | None
    score_put_right: float | None
    troubles: tuple[Say, ...]
    reasons: tuple[Say, ...]
    in_doubt: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Work:
    """One piece of work in its turn: a strip-down (``way`` None) or a remedy, and why it stands there."""

    name: str
    job: str
    way: Way | None
    reason: Say

    @property
    def key(self) -> str:
        """The key of the line that says what it costs."""
        return self.way.key if self.way is not None else f"job {self.job}"


@dataclass(frozen=True, slots=True)
class PlanLine:
    """What one way, strip-down (``key`` "job" and its id) or the contingency ("") of a plan likely costs."""

    key: str
    name: Say
    amount: Decimal
    words: Say


@dataclass(frozen=True, slots=True)
class FrontierPoint:
    """With this budget: the cost and score of the best choice, and how many safety items it puts right."""

    budget: Decimal
    cost: Decimal
    score: float
    gain: float
    safety: int


@dataclass(frozen=True, slots=True)
class Plan:
    """The best choice for a budget (None: without one), by likely figures. ``score`` and ``gain`` in points of 100.

    ``safety`` of ``safety_of`` unsafe items are put right. ``left`` are ways not taken that the plan could have.
    ``spent`` are the lines that add up to ``cost``.
    """

    budget: Decimal | None
    chosen: tuple[Way, ...]
    jobs: tuple[str, ...]
    cost: Decimal
    score: float
    gain: float
    safety: int
    safety_of: int
    order: tuple[Work, ...]
    left: tuple[Way, ...]
    not_in_it: tuple[Say, ...]
    reasons: tuple[Say, ...]
    spent: tuple[PlanLine, ...] = ()


@dataclass(frozen=True, slots=True)
class AdjustmentLine:
    """One change of a comparable's price: amount, in words, and the id of the user's entry ("" where by a setting)."""

    what: Adjusts | None
    amount: Decimal
    words: Say
    entry: str = ""


@dataclass(frozen=True, slots=True)
class GridRow:
    """One comparable from as entered to adjusted; ``why_not`` says why it is not counted, None where it is.

    ``as_entered`` is in its own ``currency``; ``told`` and what follows in the currency of the reckoning.
    """

    id: str
    title: str
    kind: PriceKind
    date: str
    place: str
    source: str
    photograph: str
    pictures: tuple[Photograph, ...]
    condition: int | None
    numbers: NumbersAgree
    score: Decimal | None
    weight: int
    as_entered: Decimal
    currency: str
    told: Decimal | None
    lines: tuple[AdjustmentLine, ...]
    to_put_right: AdjustmentLine | None
    as_it_stands: Decimal | None
    put_right: Decimal | None
    counted: bool
    why_not: Say | None
    note: Say | None = None


@dataclass(frozen=True, slots=True)
class Range:
    """Lowest, weighted middle and highest of the counted; ``half`` are the weighted quarters; ``count`` rows."""

    low: Decimal
    middle: Decimal
    high: Decimal
    half: tuple[Decimal, Decimal]
    count: int


@dataclass(frozen=True, slots=True)
class Predicted:
    """What the fit says at one score: middle and the interval that holds eight in ten single sales."""

    score: float
    low: Decimal
    middle: Decimal
    high: Decimal
    outside: Say | None


@dataclass(frozen=True, slots=True)
class Influence:
    """Cook's distance of one sale, and the middle without it; both None where the slope hangs on it alone.

    ``name`` tells it from the others: what it was, where and when.
    """

    id: str
    name: Say
    cook: float | None
    without: Decimal | None


@dataclass(frozen=True, slots=True)
class Fit:
    """A weighted log-linear fit of price on score: percent of price a point, the sales used, and what it says."""

    count: int
    percent_a_point: float
    explained: float
    as_it_stands: Predicted | None
    put_right: Predicted | None
    influence: tuple[Influence, ...]
    warnings: tuple[Say, ...]
    reasons: tuple[Say, ...]


@dataclass(frozen=True, slots=True)
class Worth:
    """An opinion from the comparables entered, for a purpose, on a date. None: nothing that would say it.

    ``printable`` only where purpose, kind, date and name stand and something counts; else ``why_not_printable``.
    """

    currency: str
    as_it_stands: Range | None
    put_right: Range | None
    put_right_words: Say
    rows: tuple[GridRow, ...]
    left_out: tuple[GridRow, ...]
    fit: Fit | None
    fit_words: Say
    headline: Say
    printable: bool
    why_not_printable: tuple[Say, ...]
    troubles: tuple[Say, ...]
    reasons: tuple[Say, ...]
