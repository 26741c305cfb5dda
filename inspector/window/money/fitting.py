"""What a line through the sales says: its middle and interval at this score, and which sale pulls how much."""

from inspector.judgement.reckoned import Predicted, Worth
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import SectionHead
from inspector.window.money.book import Book
from inspector.window.money.view import Sentences


class FitPart(Column):
    """Only where there is enough for one; else why there is none."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book = book
        self.head = SectionHead(self.look, tr("Price by score"))
        self.words, self.warnings = Sentences(book), Sentences(book)
        self.table, self.pull = SumTable(self.look), SumTable(self.look)
        self.pull_head = SectionHead(self.look, tr("What each sale pulls"))
        self.reasons = Sentences(book, step="small", ink="soft")
        for widget, gap in ((self.head, 0), (self.words, 2), (self.warnings, 1), (self.table, 1),
                            (self.pull_head, 4), (self.pull, 0), (self.reasons, 2)):  # fmt: skip
            self.add(widget, gap)

    def show_fit(self, worth: Worth) -> None:
        """The fit as the record stands."""
        fit, book = worth.fit, self.book
        self.setVisible(bool(worth.rows or worth.left_out))
        self.words.show_said([worth.fit_words])
        self.warnings.show_said(fit.warnings if fit else ())
        at = ((tr("as it stands"), fit.as_it_stands), (tr("put right"), fit.put_right)) if fit else ()
        self.table.set_lines([self._predicted(name, one) for name, one in at if one is not None])
        pulls = fit.influence if fit else ()
        self.pull_head.setVisible(bool(pulls))
        self.pull.set_lines([
            Sum(book.say(one.name), book.told(one.without, tr("none")), tr(
                "middle without it; distance {cook}", cook=f"{one.cook:.2f}") if one.cook is not None
                else tr("the line hangs on this sale alone"))
            for one in pulls
        ])  # fmt: skip
        self.reasons.show_said(fit.reasons if fit else ())

    def _predicted(self, name: str, one: Predicted) -> Sum:
        book = self.book
        span = book.amounts.span(one.low, one.high)
        second = tr("eight in ten single sales {span}", span=span)
        if one.outside is not None:
            second = f"{second}. {book.say(one.outside)}"
        return Sum(tr("{name}, score {score}", name=name, score=f"{one.score:.0f}"), book.told(one.middle), second)
