"""The best choice for a budget, without one, and the order of work."""

from dataclasses import replace
from itertools import pairwise
from random import Random

import pytest

from inspector.judgement.best_choice import Choice, Problem, best, cost_of
from inspector.judgement.plan import frontier, plan, planning
from inspector.record.money import Remedy
from inspector.record.words import PatternPolicy
from tests.judgement.every_choice import allowed, best_of_all, paying, score, small, standing
from tests.judgement.make import found, record
from tests.judgement.priced import D, failing, job, paid, shop, way


@pytest.mark.parametrize("start", range(0, 500, 50))
def test_the_choice_is_as_good_as_the_best_of_all_choices(start):
    for seed in range(start, start + 50):
        problem = small(seed)
        taken = best(problem)
        assert allowed(problem, taken), seed
        assert standing(problem, taken) == best_of_all(problem), seed


@pytest.mark.parametrize("start", range(500, 600, 50))
def test_all_that_pays_is_as_good_as_the_best_of_all_choices(start):
    for seed in range(start, start + 50):
        drawn = small(seed)
        steady = tuple(replace(one, counted=0.0) for one in drawn.choices)
        problem = replace(drawn, choices=steady, budget=None, a_point=100.0)
        taken = best(problem)
        assert allowed(problem, taken), seed
        assert paying(problem, taken) == best_of_all(problem, paying), seed


@pytest.mark.parametrize("start", range(600, 800, 50))
def test_all_that_pays_is_as_good_also_where_ways_change_what_is_counted(start):
    for seed in range(start, start + 50):
        problem = replace(small(seed), budget=None, a_point=100.0)
        taken = best(problem)
        assert allowed(problem, taken), seed
        assert paying(problem, taken) == best_of_all(problem, paying), seed


def greedy(problem):
    """The way of most gain for its cost first, as long as it fits."""
    taken = []
    for at in sorted(range(len(problem.choices)), key=lambda a: -problem.choices[a].earned / problem.choices[a].cost):
        if cost_of(problem, [*taken, at]) <= problem.budget:
            taken.append(at)
    return tuple(taken)


def test_taking_the_best_for_its_price_first_is_not_enough():
    problem = Problem(
        (Choice("small", "a", 100, 2.0), Choice("left", "b", 500, 5.0), Choice("right", "c", 500, 5.0)),
        counted=20.0, budget=1000,
    )  # fmt: skip
    assert score(problem, greedy(problem)) == 7 / 20
    assert [problem.choices[at].key for at in best(problem)] == ["left", "right"]


def test_a_shared_strip_down_makes_two_dear_ways_the_better_choice():
    problem = Problem(
        (
            Choice("a", "a", 100, 2.0, jobs=("out",)), Choice("b", "b", 100, 2.0, jobs=("out",)),
            Choice("c", "c", 250, 3.0),
        ),
        {"out": 300}, counted=20.0, budget=500,
    )  # fmt: skip
    assert best(problem) == (0, 1)
    assert cost_of(problem, (0, 1)) == 500


def test_a_limit_is_kept_to_the_last_hundredth():
    choices = tuple(Choice(f"w{n}", f"i{n}", 9_999_999 + n, 1.0) for n in range(6))
    exact = Problem(choices, counted=20.0, budget=sum(9_999_999 + n for n in range(3)))
    assert len(best(exact)) == 3
    assert len(best(replace(exact, budget=exact.budget - 1))) == 2


def test_safety_comes_before_any_correctness():
    ways = (Choice("safe", "a", 900, 0.0, safe=True), Choice("right", "b", 900, 9.0))
    problem = Problem(ways, counted=20.0, budget=900)
    assert best(problem) == (0,)


MACHINE = {
    "brake": ([way("shoes", parts=(50, 60, 80), hours=(1, 2, 3), need="safety", job="wheel-out")], {"safety": "brake"}),
    "rim": [way("rim-new", parts=(100, 200, 300), hours=None, job="wheel-out")],
    "tank": [way("tank-find", parts=(300, 400, 900), excludes=["tank-copy"]),
             way("tank-copy", kind="pattern part", parts=(100, 150, 200))],
    "badge": [way("transfer", parts=(5, 10, 15), after=["repaint"])],
    "paint": [way("repaint", parts=(500, 700, 900)), way("clean", kind="leave", parts=(0, 0, 0), hours=(1, 1, 1),
                                                         excludes=["repaint"])],
    "seat": [],
}  # fmt: skip
JOBS = [job("wheel-out", (1, 2, 3))]


def machine(**more):
    return shop(MACHINE, JOBS), failing(*MACHINE, money=paid(), **more)


def costs_of(told):
    return {w.cost for w in told.chosen}


def test_without_a_budget_everything_that_gains_is_taken():
    told = plan(*machine())
    assert costs_of(told) == {"shoes", "rim-new", "tank-find", "transfer", "repaint"}
    assert told.cost == D(80 + 20 + 200 + 420 + 30 + 720)
    assert (told.safety, told.safety_of) == (1, 1)
    assert told.score == pytest.approx(100 * 5 / 6)


def test_a_plan_never_costs_more_than_its_budget_and_takes_safety_first():
    for budget in (0, 99, 100, 101, 300, 500, 1000, 1500):
        told = plan(*machine(), budget=D(budget))
        assert told.cost <= budget
        assert ("shoes" in costs_of(told)) == (budget >= 100)


def test_what_waits_for_a_decision_is_taken_only_with_one():
    told = plan(*machine(), budget=D(100 + 40 + 10))
    # Cleaning the paint rules the repaint out, and so decides what the transfers wait for.
    assert costs_of(told) == {"shoes", "clean", "transfer"}
    declined = (Remedy(item="paint", cost="repaint", chosen=False), Remedy(item="paint", cost="clean", chosen=False))
    assert costs_of(plan(*machine(remedies=declined), budget=D(130))) == {"shoes", "transfer"}


def test_what_the_user_chose_or_declined_stands():
    declined = (Remedy(item="tank", cost="tank-find", chosen=False), Remedy(item="rim", cost="rim-new", chosen=False))
    assert costs_of(plan(*machine(remedies=declined))) == {"shoes", "tank-copy", "transfer", "repaint"}
    chosen = (Remedy(item="tank", cost="tank-copy"),)
    assert "tank-find" not in costs_of(plan(*machine(remedies=chosen)))


def test_all_that_pays_leaves_out_what_costs_more_than_it_gains():
    # Each item is a sixth of the score, 16.7 points; at 20 a point that is worth 333.
    told = plan(*machine(), a_point=D(20))
    # The copy gains half of that and costs 170; the transfers cost 30 and need the paint decided, by cleaning for 10.
    assert costs_of(told) == {"shoes", "rim-new", "clean", "transfer"}


def test_the_contingency_is_within_the_budget():
    profile, given = machine()
    with_it = given.model_copy(update={"money": paid(contingency_percent="10")})
    assert costs_of(plan(profile, with_it, budget=D("109.99"))) == {"clean", "transfer"}
    told = plan(profile, with_it, budget=D(110))
    assert (costs_of(told), told.cost) == ({"shoes"}, D("110.00"))


def test_what_a_plan_cannot_reckon_with_is_named():
    profile = shop({"a": [way("a1")], "b": [way("b1", parts=None)], "c": [], "d": [way("d1", hours=None)]})
    told = plan(profile, record(found("a", "doubt"), *(found(i, "fail") for i in "bcd"), money=paid()))
    assert costs_of(told) == {"d1"}
    assert [str(s) for s in told.not_in_it] == [
        "In doubt, and not in the plan until settled or chosen: A.",
        "Without a price, and not in the plan: B1.",
        "No way to put right is known: C.",
        "Labour not estimated, so dearer than reckoned here: D1.",
    ]


def test_a_neutral_pattern_part_gains_by_leaving_the_sum():
    profile = shop({"a": [way("copy", kind="pattern part")], "b": []})
    told = plan(profile, record(found("a", "fail"), found("b", "pass"), policy=PatternPolicy.NEUTRAL, money=paid()))
    assert costs_of(told) == {"copy"}
    assert (told.score, told.gain) == (100, 50)


def test_the_frontier_rises_with_the_budget_up_to_all():
    work = planning(*machine())
    points = frontier(work, 7)
    assert len(points) == 7
    assert [p.budget for p in points] == sorted(p.budget for p in points)
    assert all(p.cost <= p.budget for p in points)
    assert all(a.safety <= b.safety for a, b in pairwise(points))
    safe = [p for p in points if p.safety == points[-1].safety]
    assert [p.score for p in safe] == sorted(p.score for p in safe)
    assert points[-1].score == plan(*machine()).score


def names(told):
    return [work.name for work in told.order]


def test_the_order_of_work_has_each_strip_down_once_before_what_it_serves():
    order = names(plan(*machine()))
    assert order[:3] == ["Wheel out", "Shoes", "Rim new"]
    assert order.index("Repaint") < order.index("Transfer")
    assert len(order) == len(set(order))


def test_strip_downs_come_in_the_order_they_need_each_other():
    jobs = [job("engine-out", needs=["tank-off"]), job("tank-off")]
    told = plan(shop({"a": [way("a1", job="engine-out")]}, jobs), failing("a", money=paid()))
    assert names(told) == ["Tank off", "Engine out", "A1"]
    assert [w.way is None for w in told.order] == [True, True, False]


@pytest.mark.parametrize("seed", range(20))
def test_no_work_comes_before_what_it_waits_for(seed):
    dice = Random(seed)
    jobs = [job(f"j{n}", needs=[f"j{k}" for k in range(n) if dice.random() < 0.4]) for n in range(4)]
    items = {
        f"i{n}": [way(f"w{n}", job=f"j{dice.randrange(4)}", after=[f"w{k}" for k in range(n) if dice.random() < 0.2],
                      need=dice.choice(["safety", "claim", "taste"]))]
        for n in range(8)
    }  # fmt: skip
    profile = shop(items, jobs)
    done = set()
    for work in plan(profile, failing(*items, money=paid())).order:
        if work.way is None:
            assert set(next(j.needs for j in profile.jobs if j.id == work.job)) <= done
            done.add(work.job)
        else:
            assert {work.job, *work.way.after} <= done
            done.add(work.way.cost)
    assert {f"w{n}" for n in range(8)} <= done


def test_nothing_to_put_right_is_an_empty_plan():
    told = plan(shop(MACHINE, JOBS), record(found("tank", "pass"), money=paid()), budget=D(1000))
    assert (told.chosen, told.cost, told.order) == ((), D(0), ())


def test_a_way_that_waits_for_what_is_in_doubt_is_named_and_not_taken():
    profile = shop({"paint": [way("repaint"), way("touch-up")], "badge": [way("transfer", after=["repaint"])]})
    told = plan(profile, record(found("paint", "doubt"), found("badge", "fail"), money=paid()))
    assert told.chosen == ()
    assert "Waiting for a decision that is yours, and not in the plan: Transfer." in [str(s) for s in told.not_in_it]


def test_the_lines_of_a_plan_add_up_to_what_it_costs():
    profile, given = machine()
    level = {"low": "0", "likely": "10", "high": "20"}
    with_all = given.model_copy(update={"money": paid(contingency_percent="7.5", price_level=level)})
    for budget in (None, D(300), D("731.13"), D(0)):
        told = plan(profile, with_all, budget=budget)
        assert sum(line.amount for line in told.spent) == told.cost
        assert {work.key for work in told.order} <= {line.key for line in told.spent}


@pytest.mark.parametrize("hundredths", range(1, 400, 7))
def test_no_hundredth_of_a_budget_is_lost_to_the_contingency(hundredths):
    profile = shop({"a": [way("a1", parts=(D(hundredths) / 100,) * 3, hours=None)]})
    given = failing("a", money=paid(contingency_percent="3"))
    whole = plan(profile, given).cost
    assert costs_of(plan(profile, given, budget=whole)) == {"a1"}
    assert costs_of(plan(profile, given, budget=whole - D("0.01"))) == set()
