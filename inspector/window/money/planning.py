"""The plan: for a budget the best choice of what to put right, what more money would gain, and in which order."""

from decimal import Decimal
from typing import NamedTuple

from PySide6.QtGui import QHideEvent

from inspector.judgement.plan import Planning, chosen, frontier, planning
from inspector.judgement.reckoned import FrontierPoint, Plan
from inspector.judgement.worth import worth_of_a_point
from inspector.record.edits import Step
from inspector.record.refusing import EditRefused
from inspector.record.verbs_money import choose_remedy, set_money
from inspector.texts import say, tr, trn
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.frontier import FrontierChart, Reached
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.rows import Row
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.entering import FigureField
from inspector.window.money.view import Sentences, View, drawn, section, stack

BUDGET, PAYS = "budget", "pays"


class Worked(NamedTuple):
    """A plan and what other budgets would reach."""

    plan: Plan
    points: tuple[FrontierPoint, ...]


class PlanView(View):
    """Worked out beside the window; what is shown says so while it is an older one."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        look = self.look
        self.budget = FigureField(book, tr("Budget, empty for none"), lambda v: set_money("budget", v))
        self.how = ChoiceKeys(look, [
            Option(BUDGET, tr("for the budget")), Option(PAYS, tr("all that pays")),
        ], held="kept")  # fmt: skip
        self.how.set_held(BUDGET)
        self.state, self.words = Text(look, ink="soft"), Text(look, semibold=True)
        self.chosen = SumTable(look)
        self.take = Key(look, tr("choose all of this"))
        self.trouble = Text(look, semibold=True)
        self.not_in_it = Sentences(book)
        self.reasons = Sentences(book, ink="soft", step="small")
        self.chart = FrontierChart(look, lambda value: book.amounts.whole(Decimal(round(value))))
        self.told, self.order = SumTable(look), Column(look, edge=0, top=0)
        self.plan: Plan | None = None
        self._job: Job | None = None
        self._for: object = None
        left, right = Column(look), Column(look)
        stack(left, (SectionHead(look, tr("The best choice")), 0), (self.how, 3), (self.budget, 2), (self.state, 2),
              (self.words, 2), (self.chosen, 1), (self.take, 3), (self.trouble, 1), (self.not_in_it, 4),
              (self.reasons, 4))  # fmt: skip
        self.chart_head = SectionHead(look, tr("What more money gains"))
        stack(right, (self.chart_head, 0), (self.chart, 3), (self.told, 2))
        self.order_head = section(right, tr("Order of work"), self.order)
        self.trouble.hide()
        self.take.clicked.connect(self.choose_all)
        self.how.picked.connect(lambda _: self._anew())
        self.stand([(left, 0), (right, 0)])

    def let_go(self) -> None:
        """Nothing of the machine before stays."""
        self.budget.let_go()
        self._for = self._job = self.plan = None

    def hideEvent(self, event: QHideEvent) -> None:
        """A plan that nobody looks at is not waited for."""
        super().hideEvent(event)
        if self._job is not None:
            self._job = self._for = None

    def show_money(self) -> None:
        """The plan for the record as it stands is shown, or being worked out."""
        self.budget.setVisible(not self._pays)
        why = "" if self._a_point() is not None else tr(
            "Enter comparables, and under figures what one point of the score is worth: then it can be said what pays."
        )  # fmt: skip
        self.how.key(PAYS).turn_off(why)
        self.budget.show_figure(self.book.settings.budget)
        record = self.book.record
        if self._for is record:
            return
        self._for = record
        self.state.say(tr("The plan is being worked out …"))
        profile, states = self.book.desk.profile, self.book.states
        a_point = self._a_point() if self._pays else None
        budget = None if self._pays else record.money.budget

        def work() -> Worked:
            problem: Planning = planning(profile, record, states)
            return Worked(chosen(problem, budget, a_point), frontier(problem))

        self._job = job = Job(lambda report: work())
        job.done.connect(lambda worked, job=job: self._done(job, worked))
        job.failed.connect(lambda error, job=job: self._failed(job, error))
        job.start(self.book.desk.pool)

    @property
    def _pays(self) -> bool:
        return self.how.held() == [PAYS] and self._a_point() is not None

    def _a_point(self) -> Decimal | None:
        """What one point of the score is worth by what was entered; None where nothing says it."""
        return worth_of_a_point(self.book.record, self.book.costs, self.book.worth)

    def _anew(self) -> None:
        self._for = None
        self.show_money()

    def _failed(self, job: Job, error: object) -> None:
        if job is self._job:
            self._job = self._for = None
            self.state.say(tr("The plan could not be worked out: {what}", what=str(error)))

    def _done(self, job: Job, worked: Worked) -> None:
        if job is not self._job:
            return
        self._job, self.plan = None, worked.plan
        self._show_plan(worked.plan)
        self._show_frontier(worked)

    def _show_plan(self, plan: Plan) -> None:
        book = self.book
        self.state.say(trn("{count} way", "{count} ways", len(plan.chosen)) if plan.chosen else "")
        safe = tr("{n} of {all} unsafe items put right", n=plan.safety, all=plan.safety_of)
        self.words.say(tr(
            "{cost}: correctness {score} of 100, {gain} more than now; {safe}.", cost=book.told(plan.cost),
            score=f"{plan.score:.0f}", gain=f"{plan.gain:.0f}", safe=safe,
        ) if plan.chosen else tr("Nothing can be chosen for this."))  # fmt: skip
        lines = [Sum(book.say(line.name), book.told(line.amount), book.say(line.words)) for line in plan.spent]
        self.chosen.set_lines([*lines, *([Sum(tr("Likely"), book.told(plan.cost), total=True)] if lines else [])])
        self.take.turn_off("" if plan.chosen else tr("The plan holds nothing to choose."))
        self.not_in_it.show_said(plan.not_in_it)
        self.reasons.show_said(plan.reasons)
        self.order_head.setVisible(bool(plan.order))
        self.order.clear()
        for number, work in enumerate(plan.order, 1):
            self.order.add(Row(self.look, work.name, lead=str(number), second=book.say(work.reason), opens=False), 0)

    def _show_frontier(self, worked: Worked) -> None:
        book, points = self.book, _distinct(worked.points)
        told = [Sum(book.told(p.cost), f"{p.score:.0f}", trn("{count} unsafe item put right",
                    "{count} unsafe items put right", p.safety)) for p in points]  # fmt: skip
        budget = worked.plan.budget
        self.chart.show_frontier(
            [Reached(drawn(p.cost), p.score) for p in points], None if budget is None else drawn(budget),
            unit=book.currency, what=tr("correctness of 100"),
            told=". ".join([*(tr("{cost} reaches {score}", cost=one.name, score=one.figure) for one in told),
                            *([] if budget is None else [tr("Budget {budget}", budget=book.told(budget))])]),
        )  # fmt: skip
        self.told.set_lines(told)

    def choose_all(self) -> None:
        """Every way of the plan is chosen, as one step."""
        plan = self.plan
        if plan is None:
            return
        sentence = self.book.do(lambda: self._steps(plan))
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    def _steps(self, plan: Plan) -> Step:
        steps = [choose_remedy(self.book.record, w.item, w.cost, True) for w in plan.chosen if w.choice is not True]
        if not steps:
            raise EditRefused(say("All of it is chosen already."))
        return Step(label="Choose the plan", puts=tuple(put for step in steps for put in step.puts))


def _distinct(points: tuple[FrontierPoint, ...]) -> list[FrontierPoint]:
    """The points without those that reach the same for the same."""
    found: dict[tuple[Decimal, float], FrontierPoint] = {}
    for point in points:
        found.setdefault((point.cost, point.score), point)
    return list(found.values())
