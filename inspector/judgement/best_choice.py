"""The best choice among ways that exclude each other, wait for each other and share strip-downs, exactly."""

from __future__ import annotations

from dataclasses import dataclass, field
from heapq import heappop, heappush
from itertools import combinations
from math import gcd
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    Vector = NDArray[np.float64]

SLACK = 1e-7
ROUNDS = 30
NODES = 200
HALF = 0.5  # of a hundredth: no choice that is better by less is looked for
FINEST = 1e-3  # of weight: what is counted changes by whole steps of it
LEAST = 1e-3  # of weight counted in the end, below which no score is told


@dataclass(frozen=True, slots=True)
class Choice:
    """One way: whole hundredths of money, what it adds to what is earned and counted, and the jobs it needs."""

    key: str
    item: str
    cost: int
    earned: float = 0.0
    counted: float = 0.0
    safe: bool = False
    jobs: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Problem:
    """What may be chosen.

    ``apart`` are pairs that exclude each other; ``waits`` are (way, deciders): the way may be chosen only together
    with one of its deciders, or where it is one. ``earned`` and ``counted`` are the sums of the score as it is.
    ``budget`` in hundredths, None without one. ``a_point``: hundredths that one point of the score is worth; None
    where correctness is not weighed against money.
    """

    choices: tuple[Choice, ...]
    jobs: dict[str, int] = field(default_factory=dict)
    apart: tuple[tuple[int, int], ...] = ()
    waits: tuple[tuple[int, tuple[int, ...]], ...] = ()
    earned: float = 0.0
    counted: float = 1.0
    budget: int | None = None
    a_point: float | None = None


def cost_of(problem: Problem, taken: Sequence[int]) -> int:
    """Hundredths that these ways cost, every job once."""
    jobs = {job for at in taken for job in problem.choices[at].jobs}
    return sum(problem.choices[at].cost for at in taken) + sum(problem.jobs[job] for job in jobs)


def best(problem: Problem) -> tuple[int, ...]:
    """The positions of the best choice: most unsafe items put right, then the highest score, then the least cost.

    With ``a_point``: after safety, the most that correctness gained is worth above what it costs.
    """
    if not problem.choices:
        return ()
    return _staged(_Program(problem))


def _staged(program: _Program) -> tuple[int, ...]:
    if program.groups:
        found = program.solve(-program.safety)
        program.hold(program.safety, round(float(program.safety @ found)) - 0.5)
    if program.problem.a_point is not None:
        return program.taken(_paying(program, program.problem.a_point))
    ratio, lift = _highest(program)
    program.hold(program.lifts(ratio), lift - SLACK * max(1.0, abs(lift)))
    return program.taken(program.solve(program.price))


def _paying(program: _Program, a_point: float) -> Vector:
    """The choice that gains most above its cost.

    What a gain is worth hangs on the weight that is counted in the end. Between two ends it is never more than at the
    one that favours it, so that a stretch of ends which cannot hold a better choice is left, and others are parted.
    """
    step, least, last = program.ends()
    waiting, found, most = [(float("-inf"), least, last)], None, float("-inf")
    for _ in range(NODES):
        if not waiting or -waiting[0][0] <= most + HALF:
            break
        _, low, high = heappop(waiting)
        for end, rises in ((low, True), (high, False)):
            one = program.within(low * step, high * step, rises, program.price - program.worth(a_point, end * step))
            if one is None:
                continue
            reached = float(program.counted @ one)
            bound, gained = (float((program.worth(a_point, at) - program.price) @ one) for at in (end * step, reached))
            found, most = (one, gained) if found is None or gained > most + SLACK else (found, most)
            if bound > most + HALF and low < high:
                middle = (low + high) // 2
                heappush(waiting, (-bound, low, middle))
                heappush(waiting, (-bound, middle + 1, high))
                break
    return program.solve(program.price) if found is None else found


def _highest(program: _Program) -> tuple[float, float]:
    """The ratio of the best score and what its choice adds at that ratio: Dinkelbach's steps, exact when they stop."""
    problem = program.problem
    ratio = problem.earned / problem.counted if problem.counted > 0 else 0.0
    lift = 0.0
    for _ in range(ROUNDS):
        found = program.solve(-program.lifts(ratio))
        lift = float(program.lifts(ratio) @ found)
        earned = problem.earned + float(program.earned @ found)
        counted = problem.counted + float(program.counted @ found)
        better = earned / counted if counted > SLACK else ratio
        if not program.counted.any() or better <= ratio + SLACK:
            break
        ratio = better
    return ratio, lift


class _Program:
    """The mixed-integer program: ways, jobs, shares of an item's effect, unsafe items put right."""

    def __init__(self, problem: Problem) -> None:
        import numpy as np

        self.problem = problem
        self.jobs = [job for job, cost in problem.jobs.items() if cost and _wanted(problem, job)]
        self.shared = _shared(problem)
        self.groups = _grouped(problem)
        self.size = len(problem.choices) + len(self.jobs) + len(self.shared) + len(self.groups)
        self.rows: list[tuple[dict[int, float], float, float]] = []
        self.earned, self.counted, self.safety, self.price = (np.zeros(self.size) for _ in range(4))
        self._objectives()
        self._rules()
        if problem.budget is not None:
            prices = {at: float(cost) for at, cost in enumerate(self.price) if cost}
            self.rows.append((prices, -np.inf, float(problem.budget)))

    def _objectives(self) -> None:
        few = 0.5 / (len(self.problem.choices) + 1)
        for at, one in enumerate(self.problem.choices):
            where = self.shared.get(at, at)
            self.earned[where], self.counted[where] = one.earned, one.counted
            self.price[at] = one.cost
        for at, job in enumerate(self.jobs, len(self.problem.choices)):
            self.price[at] = self.problem.jobs[job]
        # Of choices that cost and gain the same, the one with the fewest ways.
        self.fewest = few
        self.safety[self.size - len(self.groups) :] = 1

    def _rules(self) -> None:
        below = -float("inf")
        n = len(self.problem.choices)
        for at, one in enumerate(self.problem.choices):
            for job in one.jobs:
                if job in self.jobs:
                    self.rows.append(({at: 1, n + self.jobs.index(job): -1}, below, 0))
        for one_at, other in self.problem.apart:
            self.rows.append(({one_at: 1, other: 1}, below, 1))
        for at, deciders in self.problem.waits:
            if at not in deciders:
                self.rows.append(({at: 1, **dict.fromkeys(deciders, -1.0)}, below, 0))
        for group, members in enumerate(self.groups, self.size - len(self.groups)):
            self.rows.append(({group: 1, **dict.fromkeys(members, -1.0)}, below, 0))
        self._best_of_an_item()

    def _best_of_an_item(self) -> None:
        items: dict[str, dict[int, float]] = {}
        for at, share in self.shared.items():
            items.setdefault(self.problem.choices[at].item, {})[share] = 1.0
            self.rows.append(({share: 1, at: -1}, -float("inf"), 0))
        for shares in items.values():
            self.rows.append((shares, -float("inf"), 1))
        for at in self.shared:
            self.rows.append(({at: 1, **{s: -1.0 for s in items[self.problem.choices[at].item]}}, -float("inf"), 0))

    def lifts(self, ratio: float) -> Vector:
        """What each variable adds to earned less the ratio of counted."""
        return self.earned - ratio * self.counted

    def worth(self, a_point: float, added: float) -> Vector:
        """Hundredths that each variable's correctness is worth where so much weight more is counted in the end."""
        counted = self.problem.counted
        ratio = self.problem.earned / counted if counted > 0 else 0.0
        return 100 * a_point / max(counted + added, LEAST) * self.lifts(ratio)

    def ends(self) -> tuple[float, int, int]:
        """A step of weight, and the fewest and the most such steps by which what is counted can change."""
        weights = [round(weight / FINEST) for weight in self.counted]
        step = gcd(*weights) or 1
        below, above = (sum(w for w in weights if w * sign > 0) // step for sign in (-1, 1))
        return step * FINEST, below, above

    def within(self, least: float, most: float, rises: bool, objective: Vector) -> Vector | None:
        """As ``solve``, with that much weight more counted and the score risen or not; None where nothing is so."""
        counted, none = self.problem.counted, float("inf")
        ratio, begun = self.problem.earned / counted if counted > 0 else 0.0, len(self.rows)
        # Weights that are no whole steps, as a third, are off by half a step each at most.
        off = FINEST / 2 * max(int((self.counted != 0).sum()), 1)
        self._limit(self.counted, least - off, most + off)
        self._limit(self.lifts(ratio), -SLACK if rises else -none, none if rises else SLACK)
        added = len(self.rows) - begun
        try:
            return self.solve(objective)
        except ArithmeticError:
            return None
        finally:
            del self.rows[begun : begun + added]

    def _limit(self, weights: Vector, least: float, most: float) -> None:
        row = {at: float(w) for at, w in enumerate(weights) if w}
        if row:
            self.rows.append((row, least, most))

    def hold(self, weights: Vector, least: float) -> None:
        """From now on these weights add up to no less."""
        self._limit(weights, least, float("inf"))

    def solve(self, objective: Vector) -> Vector:
        """The variables that make the objective least. Raises ArithmeticError where the solver gives up."""
        while True:
            found = self._solved(objective)
            taken = self.taken(found)
            if self.problem.budget is None or cost_of(self.problem, taken) <= self.problem.budget:
                return found
            # The solver keeps a limit to within its own tolerance; what is over by a hundredth is ruled out by name.
            self.rows.append((dict.fromkeys(_cover(self.problem, taken), 1.0), -float("inf"), len(taken) - 1.0))

    def _solved(self, objective: Vector) -> Vector:
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import csr_array

        n = len(self.problem.choices)
        # Jobs and items put right would come out whole by themselves; said so, the solver is five times as fast.
        whole = np.ones(self.size)
        spare = np.array([self.fewest] * n + [0.0] * (self.size - n)) if objective is self.price else 0.0
        limits = []
        if self.rows:
            entries = [(r, c, v) for r, (row, _, _) in enumerate(self.rows) for c, v in row.items()]
            at_row, at_column, value = zip(*entries, strict=True)
            matrix = csr_array((value, (at_row, at_column)), shape=(len(self.rows), self.size))
            limits = [LinearConstraint(matrix, [r[1] for r in self.rows], [r[2] for r in self.rows])]
        done = milp(objective + spare, integrality=whole, bounds=Bounds(0, 1), constraints=limits,
                    options={"mip_rel_gap": 0.0})  # fmt: skip
        if done.x is None:
            raise ArithmeticError(f"no best choice was found: {done.message}")
        found: Vector = np.round(done.x)
        return found

    def taken(self, found: Vector) -> tuple[int, ...]:
        """The positions of the ways chosen."""
        return tuple(at for at in range(len(self.problem.choices)) if found[at] > 0.5)


def _cover(problem: Problem, taken: Sequence[int]) -> tuple[int, ...]:
    """Ways of which not as many as were taken can be within the budget: those taken, and as dear ones."""
    if any(problem.jobs[job] for at in taken for job in problem.choices[at].jobs):
        return tuple(taken)
    dearest = max(problem.choices[at].cost for at in taken)
    return tuple(at for at, one in enumerate(problem.choices) if at in taken or one.cost >= dearest)


def _wanted(problem: Problem, job: str) -> bool:
    return any(job in one.jobs for one in problem.choices)


def _shared(problem: Problem) -> dict[int, int]:
    """The variables of ways that share an item with another that moves the score too and may be taken with it."""
    apart = {frozenset(pair) for pair in problem.apart}
    by_item: dict[str, list[int]] = {}
    for at, one in enumerate(problem.choices):
        if one.earned or one.counted:
            by_item.setdefault(one.item, []).append(at)
    together = [
        at
        for own in by_item.values()
        if any(frozenset(pair) not in apart for pair in combinations(own, 2))
        for at in own
    ]
    first = len(problem.choices) + sum(1 for job, cost in problem.jobs.items() if cost and _wanted(problem, job))
    return {at: first + n for n, at in enumerate(together)}


def _grouped(problem: Problem) -> list[tuple[int, ...]]:
    """The ways that make an unsafe item safe, item by item."""
    groups: dict[str, list[int]] = {}
    for at, one in enumerate(problem.choices):
        if one.safe:
            groups.setdefault(one.item, []).append(at)
    return [tuple(own) for own in groups.values()]
