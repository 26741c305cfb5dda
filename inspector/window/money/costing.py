"""What it comes to: plain sums, what the cases say, what is not in it, and what spreads it."""

from inspector.judgement.cost_words import triangle_words
from inspector.judgement.reckoned import Costs, Three
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.sharebars import ShareBars
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.dealing import cases_words
from inspector.window.money.view import Sentences, section


class CostPart(Column):
    """Never a total without what is missing from it."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look)
        self.book = book
        self.head = SectionHead(self.look, tr("What it costs"))
        self.table = SumTable(self.look)
        self.cases, self.half = Text(self.look, semibold=True), Text(self.look)
        self.missing, self.set = Sentences(book), Sentences(book, ink="soft", step="small")
        self.figures = Key(self.look, tr("labour rate, contingency, prices"))
        self.jobs = SumTable(self.look)
        self.needs = SumTable(self.look)
        self.drivers = ShareBars(self.look)
        self.reasons = Sentences(book, ink="soft", step="small")
        for widget, gap in ((self.head, 0), (self.table, 0), (self.cases, 2), (self.half, 1), (self.missing, 2),
                            (self.set, 2), (self.figures, 3)):  # fmt: skip
            self.add(widget, gap)
        self.jobs_head = section(self, tr("Strip-downs, paid once"), self.jobs)
        self.needs_head = section(self, tr("By need"), self.needs)
        self.drivers_head = section(self, tr("What spreads it"), self.drivers)
        section(self, tr("How it was reckoned"), self.reasons)

    def show_costs(self) -> None:
        """The costs as the record stands."""
        book, costs = self.book, self.book.costs
        self.head.say(tr("What it costs"), book.currency)
        self.table.set_lines(self._lines(costs))
        spread, whole = costs.simulated, book.amounts.whole
        self.cases.say(cases_words(book, spread) if spread else tr("Nothing is counted yet."))
        self.half.say(tr("Half of the cases under {p50}, eight in ten under {p80}.", p50=whole(spread.p50),
                         p80=whole(spread.p80)) if spread else "")  # fmt: skip
        self.missing.show_words(self._missing(costs))
        self.set.show_said((costs.contingency_words, costs.level_words, *([] if costs.not_estimated else
                            [costs.labour_words])))  # fmt: skip
        self._show_rest(costs)

    def _show_rest(self, costs: Costs) -> None:
        self.jobs.set_lines([self._job(job.name, job.hours, job.labour, job.serves) for job in costs.jobs])
        self.needs.set_lines([Sum(tr(one.need.value), self.book.told(one.total[1]), self._span(one.total))
                              for one in costs.by_need])  # fmt: skip
        drivers = costs.simulated.drivers[:6] if costs.simulated else ()
        self.drivers.set_shares([(self.book.say(d.name), d.share, f"{round(100 * d.share)} %") for d in drivers])
        for head, body, there in ((self.jobs_head, self.jobs, costs.jobs), (self.needs_head, self.needs, costs.by_need),
                                  (self.drivers_head, self.drivers, drivers)):  # fmt: skip
            head.setVisible(bool(there))
            body.setVisible(bool(there))
        simulated = (costs.simulated.words, triangle_words(costs.simulated)) if costs.simulated else ()
        self.reasons.show_said((*simulated, *costs.reasons))

    def _lines(self, costs: Costs) -> list[Sum]:
        told = self.book.told
        lines = [Sum(tr("Parts"), told(costs.parts[1]), self._span(costs.parts))]
        if costs.labour is not None:
            second = f"{self._hours(costs)}; {self._span(costs.labour)}"
            lines.append(Sum(tr("Labour"), told(costs.labour[1]), second))
        elif costs.hours[2]:
            lines.append(Sum(tr("Labour"), tr("no rate"), self._hours(costs)))
        if costs.contingency is not None:
            lines.append(Sum(tr("Contingency"), told(costs.contingency[1]), self._span(costs.contingency)))
        lines.append(Sum(tr("Likely"), told(costs.total[1]), self._span(costs.total), total=True))
        return lines

    def _hours(self, costs: Costs) -> str:
        low, likely, high = (self.book.amounts.exact(one) for one in costs.hours)
        return tr("{likely} hours, {low} to {high}", likely=likely, low=low, high=high)

    def _missing(self, costs: Costs) -> list[str]:
        told = [self.book.say(trouble) for trouble in costs.troubles]
        if costs.not_estimated:
            told.append(self.book.say(costs.labour_words))
        if costs.not_priced:
            told.append(tr("Without a price, and not in this sum: {names}.", names="; ".join(costs.not_priced)))
        if costs.to_decide:
            names = "; ".join(fault.name for fault in costs.to_decide)
            told.append(tr("To be decided first, and not in this sum: {names}.", names=names))
        if costs.no_way:
            told.append(tr("No way to put right is known: {names}.", names="; ".join(costs.no_way)))
        if costs.in_doubt:
            names = "; ".join(costs.in_doubt)
            told.append(tr("In doubt, and no way to put it right is offered: {names}.", names=names))
        return told

    def _span(self, three: Three) -> str:
        return self.book.amounts.span(three[0], three[2])

    def _job(self, name: str, hours: Three | None, labour: Three | None, serves: tuple[str, ...]) -> Sum:
        if hours is None:
            figure = tr("not estimated")
        else:
            figure = (
                self.book.told(labour[1]) if labour else tr("{hours} hours", hours=self.book.amounts.exact(hours[1]))
            )
        return Sum(name, figure, tr("for {names}", names="; ".join(serves)))
