"""What to say: what was found, with how it shows and who says what is right, and the prices that were set."""

from collections.abc import Callable
from decimal import Decimal
from functools import partial

from inspector.judgement.dealt import TalkingPoint
from inspector.record.edits import Step
from inspector.record.verbs_money import set_money
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.fields import TextField
from inspector.window.look.rows import Row
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.entering import FigureField
from inspector.window.money.offering import OffersPart
from inspector.window.money.view import View, section

PRICES_MM = 84.0
STANDS = ("opening", "target", "walk_away")


def setting(field: str) -> Callable[[Decimal | None], Step]:
    """What keeps a figure as that setting."""
    return lambda value: set_money(field, value)


class SayView(View):
    """Points split by safety, claim and taste; opening, target and walk-away as entered, none proposed."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        look = self.look
        self.groups = {name: (SectionHead(look, words), Column(look, edge=0, top=0)) for name, words in (
            ("safety", tr("For safety")), ("claim", tr("For the claim")), ("taste", tr("Of taste")),
        )}  # fmt: skip
        self._rows: dict[str, dict[str, Row]] = {name: {} for name in self.groups}
        self.none = Text(look, tr("Nothing was found that could be said."), ink="soft")
        points = Column(look)
        points.add(self.none)
        for head, body in self.groups.values():
            points.add(head, 6)
            points.add(body, 0)
        self.stands = {
            "opening": FigureField(book, tr("Opening, as you set it"), setting("opening")),
            "target": FigureField(book, tr("Target, as you set it"), setting("target")),
            "walk_away": FigureField(book, tr("Walk away above"), setting("walk_away")),
        }
        self.offers = OffersPart(book)
        self.offered = TextField(look, tr("Other notes on parts offered"))
        self.offered.committed.connect(lambda t: self.offered.say(book.do(lambda: set_money("offered_for_parts", t))))
        self.known = SumTable(look)
        prices = Column(look)
        section(prices, tr("Your own prices"), *self.stands.values())
        prices.add(Text(look, tr("Yours to set; the program proposes none."), step="small", ink="soft"), 2)
        section(prices, tr("To hold them against"), self.known)
        section(prices, tr("Parts offered, against what is expected"), self.offers, self.offered)
        self.columns = self.stand([(points, 0), (prices, PRICES_MM)])

    def show_money(self) -> None:
        """Points and prices as the record stands."""
        said, settings = self.book.talking, self.book.settings
        for name, points in (("safety", said.safety), ("claim", said.claim), ("taste", said.taste)):
            self._show_points(name, points)
        self.none.setVisible(not (said.safety or said.claim or said.taste))
        for name, field in self.stands.items():
            field.show_figure(getattr(settings, name))
        self.offers.show_offers()
        self.offered.set_value(settings.offered_for_parts)
        self.known.set_lines(self._known())

    def let_go(self) -> None:
        """Nothing written for the machine before stays."""
        self.offers.let_go()
        for field in (*self.stands.values(), self.offered):
            field.let_go()
            field.say("")

    def _known(self) -> list[Sum]:
        book, deal = self.book, self.book.deal
        lines = []
        if book.settings.price_asked is not None:
            lines.append(Sum(tr("Price asked"), book.told(book.settings.price_asked)))
        if deal.keeping is not None:
            none = tr("none")
            low = tr("{price} at the low end", price=book.told(deal.keeping.at_low_end, none))
            lines.append(Sum(tr("Highest that keeps your margin"), book.told(deal.keeping.at_middle, none), low))
        if deal.hammer is not None:
            lines.append(Sum(tr("Highest hammer price for your limit"), book.told(deal.hammer.price)))
        return lines or [Sum(tr("Nothing entered yet: see figures."), "")]

    def _show_points(self, name: str, points: tuple[TalkingPoint, ...]) -> None:
        head, body = self.groups[name]
        head.setVisible(bool(points))
        body.setVisible(bool(points))
        rows = self._rows[name]
        if list(rows) != [point.item for point in points]:
            body.clear()
            rows.clear()
            for point in points:
                rows[point.item] = Row(self.look, strong=True)
                rows[point.item].clicked.connect(partial(self._open, point.item))
                body.add(rows[point.item], 0)
        for point in points:
            rows[point.item].say(*self._words(point)[:1], second=self._words(point)[1])

    def _words(self, point: TalkingPoint) -> tuple[str, str]:
        book = self.book
        told = [tr("shown by {what}", what=", ".join(book.say(e) for e in point.evidence))]
        told += [book.say(source) for source in point.sources]
        if point.cost is not None:
            low, likely, high = point.cost
            told.append(tr("about {likely}, {span}", likely=book.told(likely), span=book.amounts.span(low, high)))
        told.append(book.say(point.cost_words))
        return book.say(point.sentence), " · ".join(told)

    def _open(self, item: str, _: bool = False) -> None:
        self.wanted.emit("remedies", item)
