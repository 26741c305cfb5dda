"""Figures of one's own: prices, fees, margin, labour, rates, and for what, when and in whose name it is valued."""

from functools import partial
from typing import TYPE_CHECKING

from inspector.record.edits import Step
from inspector.record.refusing import EditRefused
from inspector.record.verbs_money import count_also, set_index, set_money, set_rate
from inspector.record.words import PriceKind
from inspector.texts import say, tr
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import Field, LineField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import Text
from inspector.window.money.book import Book
from inspector.window.money.entering import Cells, FigureField, Lines, WordField
from inspector.window.money.saving import ask_and_save
from inspector.window.money.saying import setting
from inspector.window.money.view import Sentences, View, section
from inspector.window.money.written import figure

if TYPE_CHECKING:
    from pydantic import JsonValue

DEAL = (("price_asked", "Price asked", True), ("premium_percent", "Buyer's premium, %", False),
        ("tax_percent", "Tax on the premium, %", False), ("transport", "Transport", True),
        ("limit_all_in", "Limit, all in", True), ("margin", "Margin to keep", True))  # fmt: skip
WORK = (("labour_rate", "Labour, an hour", True), ("contingency_percent", "Contingency, %", False))
SLOPES = (("percent_a_year", "Prices rise a year, %", False),
          ("percent_a_point", "One point of the score is worth, %", False))  # fmt: skip
FOR = (("purpose", "Purpose, as in: buying to keep"), ("kind_of_value", "Kind of value, as in: between two people"),
       ("effective_date", "On which day it holds"), ("in_the_name_of", "In whose name it is said"))  # fmt: skip
AMOUNTS = ("price_asked", "transport", "limit_all_in", "margin", "labour_rate", "budget", "opening", "target",
           "walk_away")  # fmt: skip
LEVEL = ("low", "likely", "high")


class FiguresView(View):
    """Nothing here has a value of the program's own."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        look = self.look
        self.fields = {name: FigureField(book, tr(label), setting(name), thousands=thousands)
                       for name, label, thousands in (*DEAL, *WORK, *SLOPES)}  # fmt: skip
        self.words = {name: WordField(book, tr(label), partial(set_money, name))
                      for name, label in FOR}  # fmt: skip
        self.currency = WordField(book, tr("Currency that is told, as in GBP"), _currency)
        self.level = [LineField(look, tr("{which}, %", which=tr(which))) for which in LEVEL]
        self.level_note = Text(look, step="small")
        self.level_note.hide()
        self.also = ChoiceKeys(look, [Option(k.value, tr("count {kind}", kind=tr(k.value)))
                                      for k in (PriceKind.BID, PriceKind.ASKED)], many=True, held="kept")  # fmt: skip
        self.fees = Lines(book, tr("Other fees of buying"), (tr("Name"), tr("Amount")), self._fees, self._keep_fee)
        self.rates = Lines(book, tr("Rates of other currencies"), (tr("Currency"), tr("One of it is"),
                           tr("On (date)")), self._rates, self._keep_rate)  # fmt: skip
        self.index = Lines(book, tr("Price index of your own"), (tr("Year"), tr("Index")), self._index,
                           self._keep_index)  # fmt: skip
        self.print, self.print_words = Key(look, tr("save the worth as PDF")), Sentences(book, ink="soft")
        self.saved = Text(look, ink="soft")
        self._lay_out()
        for field in self.level:
            field.committed.connect(lambda _: self._keep_level())
        self.currency.committed.connect(lambda _: self._say_not_converted())
        self.also.picked.connect(self._count)
        self.print.clicked.connect(lambda: ask_and_save(book, "worth", "pdf", self.as_pdf, self.saved.say))

    def _lay_out(self) -> None:
        look, fields = self.look, self.fields
        left, right = Column(look), Column(look)
        section(left, tr("The purchase"), FieldRow(look, [fields[name] for name, *_ in DEAL], least=40), self.fees)
        section(left, tr("Putting right"), FieldRow(look, [fields[name] for name, *_ in WORK], least=40),
                Text(look, tr("A change common to all parts prices"), ink="soft"), FieldRow(look, self.level),
                self.level_note)  # fmt: skip
        section(right, tr("What it is valued for"), *self.words.values(), self.print, self.print_words, self.saved)
        section(right, tr("Comparables"), FieldRow(look, [fields[name] for name, *_ in SLOPES], least=40), self.also,
                self.index)  # fmt: skip
        section(right, tr("Currencies"), self.currency, self.rates)
        self.stand([(left, 0), (right, 0)])

    def _all(self) -> list[Field]:
        lines = [field for part in (self.fees, self.rates, self.index) for line in part.fields for field in line]
        return [*self.fields.values(), *self.words.values(), self.currency, *self.level, *lines]

    def let_go(self) -> None:
        """Nothing written for the machine before stays."""
        for field in self._all():
            field.let_go()
            field.say("")

    def show_money(self) -> None:
        """Everything as it was entered."""
        settings = self.book.settings
        for name, field in self.fields.items():
            field.show_figure(getattr(settings, name))
        for name, words in self.words.items():
            words.set_value(getattr(settings, name))
        self.currency.set_value(settings.currency or self.book.code)
        level = settings.price_level
        for name, one in zip(LEVEL, self.level, strict=True):
            one.set_value(self.book.amounts.exact(getattr(level, name)) if level is not None else "")
        self.also.set_held(*(kind.value for kind in settings.also_count))
        for lines in (self.fees, self.rates, self.index):
            lines.show_rows()
        worth = self.book.worth
        self.print.turn_off(" ".join(self.book.say(why) for why in worth.why_not_printable))
        self.print_words.show_said(worth.why_not_printable)

    def as_pdf(self) -> bytes:
        """The worth on paper, while all is entered without which it is not said."""
        from inspector.handover import pictures_of_comparables
        from inspector.sheet.pdf import as_pdf
        from inspector.sheet.worth import worth_sheet

        book = self.book
        worth, at = book.worth, book.desk.clock()
        pictures = pictures_of_comparables(book.record, book.desk.library.photographs)
        return as_pdf(worth_sheet(book.desk.profile, book.record, worth, at, book.amounts, pictures))

    # keeping

    def _count(self, word: str) -> None:
        kind = PriceKind(word)
        counted = kind in self.book.settings.also_count
        self.book.do(lambda: count_also(self.book.record, kind, not counted))

    def _say_not_converted(self) -> None:
        """Amounts without a currency of their own are in the one told: where it changes, they are not converted."""
        settings = self.book.settings
        amounts = [getattr(settings, name) for name in AMOUNTS]
        if not self.currency.note.words and (settings.fees or any(amount is not None for amount in amounts)):
            self.currency.say(tr("Prices, fees, rate of labour, margin and limits stand as entered, now in {currency}; "
                                 "none was converted.", currency=self.book.currency))  # fmt: skip

    def _keep_level(self) -> None:
        sentence = self.book.do(self._level_step)
        self.level_note.say(sentence)
        self.level_note.setVisible(bool(sentence))

    def _level_step(self) -> Step:
        found = [figure(field.value(), thousands=False) for field in self.level]
        known = [value for value in found if value is not None]
        if not known:
            return set_money("price_level", None)
        if len(known) < len(found):
            raise EditRefused(say("Write low, likely and high of the price level; all three may be the same."))
        return set_money("price_level", {name: str(v) for name, v in zip(LEVEL, known, strict=True)})

    def _fees(self) -> list[Cells]:
        return [(fee.name, self.book.amounts.exact(fee.amount)) for fee in self.book.settings.fees]

    def _keep_fee(self, number: int, cells: Cells) -> Step:
        rows: list[JsonValue] = [{"name": fee.name, "amount": str(fee.amount)} for fee in self.book.settings.fees]
        new: list[JsonValue] = [{"name": cells[0], "amount": str(figure(cells[1]))}] if any(cells) else []
        return set_money("fees", [*rows[:number], *new, *rows[number + 1 :]])

    def _rates(self) -> list[Cells]:
        exact = self.book.amounts.exact
        return [(rate.currency, exact(rate.per_one), rate.date) for rate in self.book.settings.rates]

    def _keep_rate(self, number: int, cells: Cells) -> Step:
        rates = self.book.settings.rates
        if not any(cells):
            return set_rate(self.book.record, rates[number].currency, None, "")
        stood = rates[number].currency if number < len(rates) else ""
        return set_rate(self.book.record, cells[0], figure(cells[1], thousands=False), cells[2], stood)

    def _index(self) -> list[Cells]:
        return [(str(row.year), self.book.amounts.exact(row.value)) for row in self.book.settings.index]

    def _keep_index(self, number: int, cells: Cells) -> Step:
        index = self.book.settings.index
        stood = index[number].year if number < len(index) else None
        if not any(cells) and stood is not None:
            return set_index(self.book.record, stood, None)
        if not cells[0].isdecimal():
            raise EditRefused(say('A year is four figures, such as 2019, not "{text}".', text=cells[0][:40]))
        value = figure(cells[1], thousands=False)
        return set_index(self.book.record, int(cells[0]), value, stood)


def _currency(text: str) -> Step:
    return set_money("currency", text)
