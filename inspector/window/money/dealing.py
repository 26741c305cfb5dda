"""The deal: worth to this buyer beside what it comes to, and the price that keeps the margin."""

from decimal import Decimal

from inspector.judgement.dealt import Deal
from inspector.judgement.reckoned import Costs, GridRow, Range, Spread, Worth
from inspector.record.words import PriceKind
from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.keys import Key
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import THICK, Hairline, SectionHead, Text
from inspector.window.look.worthchart import Comparison, WorthBand, WorthChart, WorthDrawn, WorthWords
from inspector.window.money.book import Book
from inspector.window.money.view import Sentences, View, drawn, stack
from inspector.window.money.written import when


class DealView(View):
    """What one looks at with two minutes to know what to say."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        look = self.look
        self.head, self.headline = Text(look, tr("Worth to you"), step="head"), Text(look, ink="soft")
        self.chart = WorthChart(look, lambda value: book.amounts.whole(Decimal(round(value))))
        self.lacking = Sentences(book)
        self.all_in_head = SectionHead(look, tr("All in, put right"), step="head")
        self.table = SumTable(look)
        self.cases = Text(look)
        self.not_in_it = Sentences(book)
        self.keeping, self.limit = Highest(book), Highest(book)
        self.left_words = Text(look)
        self.enter = Key(look, tr("enter prices and margin"))
        self.enter.clicked.connect(lambda: self.wanted.emit("figures", ""))
        self.compare = Key(look, tr("enter comparables"))
        self.compare.clicked.connect(lambda: self.wanted.emit("comparables", ""))
        left, right = Column(look), Column(look)
        stack(left, (self.head, 0), (self.headline, 1), (self.chart, 3), (self.lacking, 3), (self.compare, 4))
        stack(
            right,
            (self.all_in_head, 0), (self.table, 0), (self.cases, 2), (self.not_in_it, 1),
            (Hairline(look, ink="ink", thick=THICK), 3), (self.keeping, 3), (self.left_words, 3), (self.limit, 4),
            (self.enter, 4),
        )  # fmt: skip
        self.columns = self.stand([(left, 0), (right, 0)])

    def show_money(self) -> None:
        """Worth and deal as the record stands."""
        book = told = self.book
        self.headline.say(book.say(told.worth.headline))
        self.chart.show_worth(worth_drawn(book, told.worth, book.settings.price_asked))
        some = bool(told.worth.rows or told.worth.left_out)
        self.chart.setVisible(some)
        self.compare.say(tr("change comparables") if some else tr("enter comparables"))
        words = (told.worth.put_right_words,) if told.worth.put_right is None and told.worth.rows else ()
        self.lacking.show_said((*told.worth.troubles, *words))
        self.all_in_head.say(tr("All in, put right"), book.currency)
        self.table.set_lines(_lines(book, told.deal))
        spread = told.deal.spread or told.costs.simulated
        self.cases.say(cases_words(book, spread) if spread else "")
        self.not_in_it.show_words(missing_words(told.costs, book.settings.transport))
        self._show_prices(told.deal)

    def _show_prices(self, deal: Deal) -> None:
        book, margin = self.book, self.book.settings.margin
        kept = deal.keeping
        if kept is None:
            self.keeping.show_lacking([book.say(reason) for reason in deal.reasons[:3]])
        else:
            self.keeping.show_price(
                tr("Highest price that keeps your margin of {margin}", margin=book.told(kept.margin)),
                book.told(kept.at_middle, tr("none")), tr("at the middle of the range"),
                tr("{price} at its low end", price=book.told(kept.at_low_end, tr("none"))),
                [book.say(words) for words in kept.words[1:]],
            )  # fmt: skip
        self.left_words.say(book.say(deal.left_words) if deal.all_in and kept else "")
        self.left_words.setVisible(bool(self.left_words.words))
        self.limit.setVisible(deal.hammer is not None)
        if deal.hammer is not None:
            self.limit.show_price(
                tr("Highest hammer price for {limit} all in", limit=book.told(deal.hammer.limit)),
                book.told(deal.hammer.price), tr("by the likely cost of putting right"),
                tr("all in {likely}, with high costs {high}", likely=book.told(deal.hammer.comes_to),
                   high=book.told(deal.hammer.with_high)), [],
            )  # fmt: skip
        self.enter.say(tr("change margin or prices") if margin is not None else tr("enter prices and margin"))


class Highest(Column):
    """A price in large figures under what it is, and beside it how it was meant."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        look = book.desk.look
        self.what, self.price = Text(look, ink="soft"), Text(look, step="name")
        self.first, self.second = Text(look), Text(look)
        self.lines = Column(look, edge=0, top=0)
        self.lines.add(self.first)
        self.lines.add(self.second, 0)
        self.row = FieldRow(look, [self.price, self.lines], least=44)
        self.more = Sentences(book, step="small", ink="soft")
        for widget, gap in ((self.what, 0), (self.row, 0), (self.more, 1)):
            self.add(widget, gap)

    def show_price(self, what: str, price: str, first: str, second: str, more: list[str]) -> None:
        """The price, what it is, and what else is to be known."""
        self.what.say(what)
        self.price.say(price)
        self.first.say(first)
        self.second.say(second)
        self.row.show()
        self.more.show_words(more)

    def show_lacking(self, why: list[str]) -> None:
        """There is no such price, and these say why."""
        self.what.say(tr("No highest price yet"))
        self.row.hide()
        self.more.show_words(why)


def cases_words(book: Book, spread: Spread) -> str:
    """What the simulated cases say, in whole units."""
    whole = book.amounts.whole
    return tr("One case in ten under {low}, nine in ten under {high}.", low=whole(spread.p10), high=whole(spread.p90))


def missing_words(costs: Costs, transport: Decimal | None) -> list[str]:
    """What is known to be missing from the sum: labour and prices by name, the rest by number."""
    told = []
    if costs.not_estimated:
        told.append(tr("labour on {names}", names="; ".join(costs.not_estimated)))
    if costs.not_priced:
        told.append(tr("parts without a price: {names}", names="; ".join(costs.not_priced)))
    if costs.to_decide:
        told.append(trn("{count} item to decide first", "{count} items to decide first", len(costs.to_decide)))
    if costs.no_way:
        told.append(trn("{count} item with no known way", "{count} items with no known way", len(costs.no_way)))
    if costs.in_doubt:
        count = len(costs.in_doubt)
        told.append(trn("{count} item in doubt without a way", "{count} items in doubt without a way", count))
    if costs.labour is None and costs.hours[2]:
        told.append(tr("all labour, since no rate is entered"))
    if transport is None:
        told.append(tr("transport, since none is entered"))
    return [tr("Not estimated, and not in this sum: {what}.", what="; ".join(told))] if told else []


def _lines(book: Book, deal: Deal) -> list[Sum]:
    lines = []
    for line in deal.lines:
        low, likely, high = line.amount
        words = book.say(line.words) if line.words is not None and low == high else ""
        lines.append(Sum(book.say(line.name), book.amounts.whole(likely), words or book.about(low, high)))
    if deal.all_in is not None:
        low, likely, high = deal.all_in
        lines.append(Sum(tr("Likely"), book.amounts.whole(likely), book.about(low, high), total=True))
    return lines


def worth_drawn(book: Book, worth: Worth, asked: Decimal | None) -> WorthDrawn:
    """The worth and its comparables as they are drawn, every value also in print."""
    bands = [_band(book, name, one) for name, one in ((tr("put right"), worth.put_right),
             (tr("as it stands"), worth.as_it_stands)) if one is not None]  # fmt: skip
    rows = tuple(_comparison(book, row) for row in (*worth.rows, *worth.left_out))
    price = tr("{price} asked for this one", price=book.told(asked))
    words = WorthWords(
        book.currency, tr("Comparables"), tr("ring as entered, sign as adjusted"), tr("sold"), tr("bid"), tr("asked"),
        price,
    )  # fmt: skip
    return WorthDrawn(words, tuple(bands), rows, None if asked is None else drawn(asked))


def _band(book: Book, name: str, one: Range) -> WorthBand:
    whole = book.amounts.whole
    second = tr("{low} to {high}, middle {middle}", low=whole(one.low), high=whole(one.high), middle=whole(one.middle))
    return WorthBand(name, second, drawn(one.low), drawn(one.middle), drawn(one.high))


def comparable_name(kind: PriceKind, title: str, place: str, source: str) -> str:
    """How a comparable is called: what its price is, and the first thing known of it."""
    known = place or title or source
    word = tr("bid, not sold") if kind is PriceKind.BID else tr(kind.value)
    return f"{word}, {known}" if known else word


def _comparison(book: Book, row: GridRow) -> Comparison:
    told, amount = [when(row.date[:7])] if row.date else [], row.as_it_stands
    if row.told is not None and amount is not None and amount != row.told:
        whole = book.amounts.whole
        told.append(tr("{entered}, adjusted {amount}", entered=whole(row.told), amount=whole(amount)))
    else:
        told.append(f"{book.told(row.as_entered)} {row.currency}" if row.told is None else book.told(row.told))
    if row.why_not is not None:
        told.append(tr("not counted"))
    entered = drawn(row.told) if row.told is not None else None
    return Comparison(
        comparable_name(row.kind, row.title, row.place, row.source), ", ".join(told), row.kind.value, entered,
        drawn(amount) if amount is not None and amount > 0 else None,
    )  # fmt: skip
