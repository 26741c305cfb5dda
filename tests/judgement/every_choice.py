"""The best choice found by trying every one, and small random problems to try it on."""

from itertools import product
from random import Random

from inspector.judgement.best_choice import Choice, Problem, cost_of


def allowed(problem, taken):
    held = set(taken)
    if any(a in held and b in held for a, b in problem.apart):
        return False
    if any(at in held and at not in deciders and not held & set(deciders) for at, deciders in problem.waits):
        return False
    return problem.budget is None or cost_of(problem, taken) <= problem.budget


def score(problem, taken):
    """The best score over every way to say which taken way of an item counts."""
    movers = {}
    for at in taken:
        one = problem.choices[at]
        if one.earned or one.counted:
            movers.setdefault(one.item, []).append(one)
    return max(
        (problem.earned + sum(o.earned for o in picked)) / (problem.counted + sum(o.counted for o in picked))
        for picked in product(*movers.values())
    )


def standing(problem, taken):
    """Safe items, score and cost saved: what is to be as great as can be, one after the other."""
    safe = len({problem.choices[at].item for at in taken if problem.choices[at].safe})
    return safe, round(score(problem, taken), 9), -cost_of(problem, taken)


def paying(problem, taken):
    """Safe items, and what the points gained are worth above what they cost, in hundredths."""
    gained = 100 * (score(problem, taken) - problem.earned / problem.counted)
    return standing(problem, taken)[0], round(problem.a_point * gained - cost_of(problem, taken), 6)


def best_of_all(problem, worth=standing):
    n = len(problem.choices)
    every = (tuple(at for at in range(n) if bits >> at & 1) for bits in range(2**n))
    return max(worth(problem, taken) for taken in every if allowed(problem, taken))


def small(seed):
    """A random problem of up to eight ways, with shared jobs, exclusions, waits and weights that leave the sum."""
    dice = Random(seed)
    n, jobs = dice.randint(1, 8), {f"j{k}": 100 * dice.randint(0, 9) for k in range(dice.randint(0, 3))}
    choices = tuple(_way(dice, at, jobs) for at in range(n))
    pairs = [(a, b) for a in range(n) for b in range(a + 1, n)]
    apart = tuple(p for p in pairs if dice.random() < 0.15)
    waits = tuple(
        (at, tuple(sorted(dice.sample(range(n), min(n, dice.randint(0, 2)))))) for at in range(n) if dice.random() < 0.2
    )
    whole = sum(one.cost for one in choices) + sum(jobs.values())
    budget = None if dice.random() < 0.15 else dice.randint(0, whole)
    return Problem(choices, jobs, apart, waits, earned=float(dice.randint(1, 10)), counted=20.0, budget=budget)


def _way(dice, at, jobs):
    weight = float(dice.randint(0, 4))
    counted = dice.choice((0.0, 0.0, weight, -weight / 4))
    earned = weight / dice.choice((1, 2)) if counted >= 0 else 0.0
    return Choice(
        f"w{at}", f"i{dice.randint(0, 4)}", 50 * dice.randint(0, 30), earned, counted, dice.random() < 0.25,
        tuple(job for job in jobs if dice.random() < 0.4),
    )  # fmt: skip
