"""How long costs take after an edit, and a plan of many remedies; the limits count only where INSPECTOR_BENCH=1."""

import os
import sys
from random import Random
from time import perf_counter

import pytest

from inspector.judgement.best_choice import best
from inspector.judgement.cost import costs
from inspector.judgement.money import money
from inspector.judgement.plan import plan, planning
from inspector.judgement.state import states
from inspector.judgement.three_points import DRAWS
from inspector.record.edits import apply
from inspector.record.money import Figures
from inspector.record.verbs_money import set_figures
from tests.judgement.priced import D, failing, job, paid, shop, sold, way

LIVE_MS, PLAN_MS = 50, 1000
COUNTS = os.environ.get("INSPECTOR_BENCH") == "1"


def told(capsys, text):
    with capsys.disabled():
        sys.stdout.write(f"\n{text}\n")


def fastest_ms(work, times):
    def once():
        start = perf_counter()
        work()
        return 1000 * (perf_counter() - start)

    return min(once() for _ in range(times))


@pytest.mark.bench
def test_an_edit_among_a_hundred_remedies_is_told_anew_within_fifty_milliseconds(capsys):
    jobs = [job(f"job-{n}") for n in range(20)]
    items = {f"i{n}": [way(f"w{n}", parts=(n, 2 * n, 4 * n + 1), job=f"job-{n % 20}")] for n in range(100)}
    profile = shop(items, jobs)
    rows = tuple(sold(f"c{n}", 5000 + 100 * n, score=60 + n, date="2025-03") for n in range(12))
    given = failing(*(f"i{n}" for n in range(100)), money=paid(margin="100", price_asked="4000"), comparables=rows)
    at = states(profile, given)
    first = costs(profile, given, at)
    assert len(first.rows) == 100
    assert first.simulated.draws == DRAWS == 10_000
    changes = iter(range(1000))

    def edited():
        high = 500 + next(changes)
        figures = Figures(name="Mine", parts=(D(100), D(200), D(high)), hours=(D(1), D(2), D(high)))
        return apply(given, set_figures(given, "i7", "w7", figures)).record

    records = iter([edited() for _ in range(40)])
    live = fastest_ms(lambda: costs(profile, next(records), at), 15)
    whole = fastest_ms(lambda: money(profile, next(records), at), 15)
    told(capsys, f"costs of 100 remedies after an edit {live:.1f} ms, with worth and deal {whole:.1f} ms")
    if COUNTS:
        assert live <= LIVE_MS
        assert whole <= LIVE_MS


def large(seed):
    """Two hundred remedies at a hundred and twenty items behind thirty shared strip-downs."""
    dice = Random(seed)
    jobs = [job(f"j{n}", hours=(1, dice.randint(1, 6), 7), needs=[f"j{n - 1}"] if n % 5 else []) for n in range(30)]
    items = {f"i{n}": ([], {"weight": dice.choice((1, 2, 3, 5))}) for n in range(120)}
    for n in range(200):
        price = dice.randint(10, 900)
        ways = items[f"i{n % 120}"][0]
        other = {"excludes": [ways[0]["id"]]} if ways else {}
        kind = dice.choice(("used", "pattern part", "repair"))
        need = "safety" if n % 8 == 0 else "claim"
        where = f"j{dice.randrange(30)}" if dice.random() < 0.7 else None
        hours = (1, dice.randint(1, 5), 6)
        after = [f"w{n - 1}"] if n % 17 == 16 else []
        ways.append(way(f"w{n}", (price, price, price), hours, kind=kind, need=need, job=where, after=after, **other))
    return shop(items, jobs), failing(*items, money=paid(labour_rate="45"))


@pytest.mark.bench
@pytest.mark.parametrize("share", [0.1, 0.35, 0.7])
def test_the_best_of_two_hundred_remedies_is_found_within_a_second(capsys, share):
    profile, given = large(5)
    at = states(profile, given)
    work = planning(profile, given, at)
    assert (len(work.problem.choices), len(work.problem.jobs)) == (200, 30)
    best(work.problem)
    budget = (plan(profile, given, at).cost * D(str(share))).quantize(D(1))
    start = perf_counter()
    found = plan(profile, given, at, budget)
    took = 1000 * (perf_counter() - start)
    told(capsys, f"plan of 200 remedies and 30 strip-downs for {budget}: {took:.0f} ms, {len(found.chosen)} taken")
    assert found.cost <= budget
    if COUNTS:
        assert took <= PLAN_MS
