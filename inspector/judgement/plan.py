"""For a budget, or without one: which ways to take, what they gain, and in which order the work goes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING

from inspector.judgement.best_choice import Choice, Problem, best, cost_of
from inspector.judgement.cost import HUNDRED, worked
from inspector.judgement.cost_words import contingency_words
from inspector.judgement.exchange import exchange, rounded
from inspector.judgement.gains import BY_POLICY, HOW_RECKONED, Standing, after, effects, standing
from inspector.judgement.jobs import needed, serves, with_needs
from inspector.judgement.order_of_work import order_of_work
from inspector.judgement.plan_words import OF_ALL, OF_BUDGET, OF_WORTH, SAFETY_FIRST, not_in_it, way_words
from inspector.judgement.reckoned import FrontierPoint, Plan, PlanLine
from inspector.judgement.remedies import IN_DOUBT, remedies, rules_out
from inspector.judgement.state import states
from inspector.judgement.wording import joined
from inspector.profile.words import Need, PartKind
from inspector.texts import say

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from inspector.judgement.gains import Effect
    from inspector.judgement.reckoned import Faulted, Way
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.texts import Say

POINTS = 9


@dataclass(frozen=True, slots=True)
class Planning:
    """Everything a plan is chosen from, worked out once: the ways that can be taken, and the problem they pose."""

    profile: Profile
    record: Record
    faults: tuple[Faulted, ...]
    ways: tuple[Way, ...]
    base: Standing
    effect: Mapping[str, Effect]
    problem: Problem


def plan(
    profile: Profile,
    record: Record,
    known: Mapping[str, ItemState] | None = None,
    budget: Decimal | None = None,
    a_point: Decimal | None = None,
) -> Plan:
    """The exact best choice by likely figures: most unsafe items first, then the highest score, then the least cost.

    Without a budget all that gains is taken; with ``a_point``, what one point of the score is worth, all that pays.
    Choices the user made stand. What is in doubt, declined or has no price is not in it, and named.
    """
    return chosen(planning(profile, record, known), budget, a_point)


def planning(profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None) -> Planning:
    """What a plan, or several for different budgets, is chosen from."""
    at = states(profile, record) if known is None else known
    faults = remedies(profile, record, at, exchange(profile, record))
    effect = effects(profile, at, faults, record.choices.pattern_parts)
    ways = tuple(way for fault in faults for way in _open(fault) if _priced(way))
    base = standing(profile, at)
    problem = Problem(
        choices=tuple(_choice(profile, record, way, effect[way.key]) for way in ways),
        jobs=_job_costs(profile, record, ways), apart=_apart(ways), waits=_waits(faults, ways),
        earned=base.earned, counted=base.counted,
    )  # fmt: skip
    return Planning(profile, record, faults, ways, base, effect, problem)


def chosen(work: Planning, budget: Decimal | None = None, a_point: Decimal | None = None) -> Plan:
    """The best choice from that for this budget."""
    percent = work.record.money.contingency_percent
    whole = 1 + (percent or Decimal(0)) / HUNDRED
    taken = best(replace(work.problem, budget=_net(budget, percent),
                         a_point=float(a_point * 100 / whole) if a_point is not None else None))  # fmt: skip
    ways = tuple(work.ways[at] for at in taken)
    now, then = work.base.score or 0.0, after(work.base, ways, work.effect).score or 0.0
    unsafe = {w.item for w in work.ways if _makes_safe(w)}
    return Plan(
        budget=budget, chosen=ways, jobs=tuple(job.name for job in needed(work.profile, ways)),
        cost=_gross(cost_of(work.problem, taken), percent), score=then, gain=then - now,
        safety=len({w.item for w in ways if _makes_safe(w)}), safety_of=len(unsafe),
        order=order_of_work(work.profile, ways),
        left=tuple(way for at, way in enumerate(work.ways) if at not in taken and way.kind is not PartKind.LEAVE),
        not_in_it=not_in_it(work.profile, work.faults, work.ways, work.record, _waiting(work)),
        reasons=_reasons(work, budget, a_point), spent=tuple(_spent(work, taken)),
    )  # fmt: skip


def _spent(work: Planning, taken: Sequence[int]) -> Iterator[PlanLine]:
    """What every way taken, every strip-down behind them and the contingency likely cost."""
    ways, percent = [work.ways[at] for at in taken], work.record.money.contingency_percent
    for at, way in zip(taken, ways, strict=True):
        yield PlanLine(way.key, say("{name}", name=way.name), Decimal(work.problem.choices[at].cost) / 100,
                       way_words(way, _likely_parts(work.record, way), work.record.money.labour_rate))  # fmt: skip
    for job in needed(work.profile, ways):
        behind = joined(list(serves(work.profile, job.id, ways)), "; ")
        yield PlanLine(f"job {job.id}", say("{name}", name=job.name), Decimal(work.problem.jobs[job.id]) / 100,
                       say("paid once, for {ways}", ways=behind))  # fmt: skip
    if percent and taken:
        net = Decimal(cost_of(work.problem, taken)) / 100
        yield PlanLine("", say("Contingency"), rounded(net * percent / HUNDRED), contingency_words(work.record.money))


def frontier(work: Planning, points: int = POINTS) -> tuple[FrontierPoint, ...]:
    """The best score at budgets from nought to what everything would cost, evenly apart; costs and scores rise."""
    most = chosen(work)
    steps = max(points - 1, 1)
    budgets = [rounded(most.cost * at / steps) for at in range(points)]
    plans = [*(chosen(work, budget) for budget in budgets[:-1]), most]
    return tuple(
        FrontierPoint(budget, one.cost, one.score, one.gain, one.safety)
        for budget, one in zip(budgets, plans, strict=True)
    )


def _waiting(work: Planning) -> tuple[str, ...]:
    """Ways that no plan can take, since what they wait for is not in the plan's hands."""
    return tuple(work.ways[at].name for at, deciders in work.problem.waits if not deciders)


def _open(fault: Faulted) -> tuple[Way, ...]:
    """The ways the plan may take: those the user chose, else all not declined; none where the fault is in doubt."""
    own = tuple(way for way in fault.ways if way.choice)
    if own:
        return own
    return () if fault.reason is IN_DOUBT else tuple(way for way in fault.ways if way.choice is None)


def _priced(way: Way) -> bool:
    return way.parts is not None or way.kind is PartKind.LEAVE


def _makes_safe(way: Way) -> bool:
    return way.need is Need.SAFETY and way.kind is not PartKind.LEAVE


def _likely_parts(record: Record, way: Way) -> Decimal:
    """The likely price of its parts, by the common level where one is entered."""
    level, parts = record.money.price_level, way.parts[1] if way.parts is not None else Decimal(0)
    return parts if level is None else rounded(parts * (HUNDRED + level.likely) / HUNDRED)


def _choice(profile: Profile, record: Record, way: Way, effect: Effect) -> Choice:
    labour = worked(way.hours, record.money.labour_rate)
    cost = _hundredths(_likely_parts(record, way) + (labour[1] if labour else 0))
    jobs = with_needs(profile, way.job) if way.kind is not PartKind.LEAVE else ()
    return Choice(way.key, way.item, cost, effect.earned, effect.counted, _makes_safe(way), jobs)


def _job_costs(profile: Profile, record: Record, ways: Iterable[Way]) -> dict[str, int]:
    found = {}
    for job in needed(profile, ways):
        labour = worked(job.hours, record.money.labour_rate)
        found[job.id] = _hundredths(labour[1]) if labour else 0
    return found


def _apart(ways: Sequence[Way]) -> tuple[tuple[int, int], ...]:
    return tuple(
        (one, other)
        for one in range(len(ways))
        for other in range(one + 1, len(ways))
        if rules_out(ways[one], ways[other])
    )


def _waits(faults: Sequence[Faulted], ways: Sequence[Way]) -> tuple[tuple[int, tuple[int, ...]], ...]:
    """Each way that waits, with what would decide the matter: the other way itself, or one that rules it out."""
    every = {way.cost: way for fault in faults for way in fault.ways}
    return tuple(
        (at, tuple(d for d, one in enumerate(ways) if one.key == every[first].key or rules_out(one, every[first])))
        for at, way in enumerate(ways)
        for first in way.after
        if first in every and every[first].choice is not False
    )


def _hundredths(amount: Decimal) -> int:
    return int(rounded(amount) * 100)


def _net(budget: Decimal | None, percent: Decimal | None) -> int | None:
    """Hundredths that may be spent before the contingency so that both stay within the budget."""
    if budget is None:
        return None
    net = int(budget * 100 / (1 + (percent or Decimal(0)) / HUNDRED))
    # The contingency is rounded by itself, so the last step is tried, not reckoned.
    while _gross(net + 1, percent) <= budget:
        net += 1
    while net > 0 and _gross(net, percent) > budget:
        net -= 1
    return net


def _gross(net: int, percent: Decimal | None) -> Decimal:
    amount = Decimal(net) / 100
    return rounded(amount) + rounded(amount * (percent or Decimal(0)) / HUNDRED)


def _reasons(work: Planning, budget: Decimal | None, a_point: Decimal | None) -> tuple[Say, ...]:
    how = OF_BUDGET if budget is not None else OF_WORTH if a_point is not None else OF_ALL
    return (how, SAFETY_FIRST, *HOW_RECKONED, BY_POLICY[work.record.choices.pattern_parts])
