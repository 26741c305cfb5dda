"""What it costs to put right what is counted: plain sums of low, likely and high beside a simulation."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.cost_words import (
    ROUGH,
    contingency_words,
    labour_of,
    labour_words,
    level_words,
    spread_words,
)
from inspector.judgement.exchange import ROUNDING, exchange, rounded
from inspector.judgement.gains import BY_POLICY, HOW_RECKONED, after, effects, standing
from inspector.judgement.jobs import needed, serves
from inspector.judgement.offered import unknown_entries
from inspector.judgement.reckoned import CostRow, Costs, JobPaid, NeedSum, Spread
from inspector.judgement.remedies import DOUBT_WITHOUT_WAY, NO_WAY, remedies
from inspector.judgement.spread import Summed, told
from inspector.judgement.state import states
from inspector.profile.words import Need, PartKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.judgement.exchange import Exchange
    from inspector.judgement.reckoned import Faulted, Three, Way
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.money import Money
    from inspector.texts import Say

NOUGHT: Three = (Decimal(0), Decimal(0), Decimal(0))
HUNDRED = Decimal(100)


def costs(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> Costs:
    """The cost of what is counted; labour not estimated, parts not priced and what is undecided are named, not added.

    A strip-down is paid once whatever it serves. The labour rate, a contingency and a common price level are only
    ever the user's.
    """
    at, rates, money = states(profile, record) if known is None else known, exchange(profile, record), record.money
    faults = remedies(profile, record, at, rates)
    ways = tuple(way for fault in faults for way in fault.counted)
    rows = tuple(_row(way, money.labour_rate) for way in ways)
    jobs = tuple(_job(profile, job.id, ways, money.labour_rate) for job in needed(profile, ways))
    parts = levelled(added(row.parts for row in rows), money)
    labour = added([*(r.labour for r in rows), *(j.labour for j in jobs)]) if money.labour_rate is not None else None
    net = added([parts, labour])
    extra = share_of(net, money.contingency_percent)
    base, effect = standing(profile, at), effects(profile, at, faults, record.choices.pattern_parts)
    return Costs(
        currency=rates.currency, items=faults, rows=rows, jobs=jobs, parts=parts,
        hours=added([*(r.way.hours for r in rows), *(j.hours for j in jobs)]), labour=labour, contingency=extra,
        total=added([net, extra]), by_need=_by_need(rows), simulated=_simulated(rows, jobs, money),
        not_estimated=_not_estimated(rows, jobs),
        not_priced=tuple(w.name for w in ways if w.parts is None and w.kind is not PartKind.LEAVE),
        to_decide=tuple(f for f in faults if f.to_decide),
        no_way=tuple(f.name for f in faults if f.reason is NO_WAY),
        labour_words=labour_words(money, _not_estimated(rows, jobs)), contingency_words=contingency_words(money),
        level_words=level_words(money), score_now=base.score, score_put_right=after(base, ways, effect).score,
        troubles=_troubles(profile, record, faults), reasons=_reasons(record, rates, faults),
        in_doubt=tuple(f.name for f in faults if f.reason is DOUBT_WITHOUT_WAY),
    )  # fmt: skip


def added(threes: Iterable[Three | None]) -> Three:
    """Low, likely and high each added up; what is not known adds nothing."""
    known = [three for three in threes if three is not None]
    low, likely, high = (sum((three[at] for three in known), Decimal(0)) for at in range(3))
    return low, likely, high


def levelled(parts: Three, money: Money) -> Three:
    """Parts prices raised or lowered by the common level the user entered."""
    if money.price_level is None:
        return parts
    level = (money.price_level.low, money.price_level.likely, money.price_level.high)
    low, likely, high = (rounded(p * (HUNDRED + by) / HUNDRED) for p, by in zip(parts, level, strict=True))
    return low, likely, high


def share_of(net: Three, percent: Decimal | None) -> Three | None:
    """That percentage of each; None where none was entered."""
    if percent is None:
        return None
    low, likely, high = (rounded(one * percent / HUNDRED) for one in net)
    return low, likely, high


def worked(hours: Three | None, rate: Decimal | None) -> Three | None:
    """Hours at a rate; None where either is not known."""
    if hours is None or rate is None:
        return None
    low, likely, high = (rounded(one * rate) for one in hours)
    return low, likely, high


def _row(way: Way, rate: Decimal | None) -> CostRow:
    if way.kind is PartKind.LEAVE and way.hours is None:
        return CostRow(way, way.parts, None, labour_of(way, rate))
    return CostRow(way, way.parts, worked(way.hours, rate), labour_of(way, rate))


def _job(profile: Profile, job_id: str, ways: tuple[Way, ...], rate: Decimal | None) -> JobPaid:
    job = next(one for one in profile.jobs if one.id == job_id)
    return JobPaid(job.id, job.name, job.hours, worked(job.hours, rate), serves(profile, job.id, ways))


def _not_estimated(rows: Sequence[CostRow], jobs: Sequence[JobPaid]) -> tuple[str, ...]:
    own = [r.way.name for r in rows if r.way.hours is None and r.way.kind is not PartKind.LEAVE]
    return (*own, *(job.name for job in jobs if job.hours is None))


def _by_need(rows: Sequence[CostRow]) -> tuple[NeedSum, ...]:
    return tuple(
        NeedSum(need, added(part for r in rows if r.way.need is need for part in (r.parts, r.labour)))
        for need in Need
        if any(r.way.need is need for r in rows)
    )


def _simulated(rows: Sequence[CostRow], jobs: Sequence[JobPaid], money: Money) -> Spread | None:
    summed = Summed.of(rows, jobs, money)
    return told(summed, spread_words()) if summed.terms else None


def _troubles(profile: Profile, record: Record, faults: Sequence[Faulted]) -> tuple[Say, ...]:
    found = [way.trouble for fault in faults for way in fault.ways if way.trouble is not None]
    return tuple(dict.fromkeys([*unknown_entries(profile, record), *found]))


def _reasons(record: Record, rates: Exchange, faults: Sequence[Faulted]) -> tuple[Say, ...]:
    used = dict.fromkeys(way.currency for fault in faults for way in fault.ways)
    rated = [words for currency in used if (words := rates.words(currency))]
    return (ROUGH, *rated, *HOW_RECKONED, BY_POLICY[record.choices.pattern_parts], ROUNDING)
