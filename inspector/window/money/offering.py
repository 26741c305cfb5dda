"""Parts that were offered: which, for how much, by whom, and how that stands to the price expected."""

from functools import partial

from inspector.judgement.dealt import PartOffered
from inspector.judgement.wants import BOUGHT
from inspector.record.edits import Step
from inspector.record.money import PartOffer
from inspector.record.verbs_money import change_offer, drop_offer, new_offer
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import Field
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import Text
from inspector.window.money.book import Book
from inspector.window.money.entering import FigureField, PickField, WordField


class OffersPart(Column):
    """One entry an offer, and a key to note another."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book = book
        self.cards: dict[str, OfferCard] = {}
        self.body = Column(self.look, edge=0, top=0)
        self.trouble = Text(self.look, semibold=True)
        self.trouble.hide()
        self.another = Key(self.look, tr("note an offer"), name=tr("Note that a part is offered"))
        for widget, gap in ((self.body, 0), (self.trouble, 1), (self.another, 2)):
            self.add(widget, gap)
        self.another.clicked.connect(lambda: self._tell(book.do(lambda: new_offer(book.record))))

    def show_offers(self) -> None:
        """The offers as they were noted."""
        told = self.book.offers
        if list(self.cards) != [one.id for one in told]:
            self.body.clear()
            self.cards = {one.id: OfferCard(self.book, one.id) for one in told}
            for key, card in self.cards.items():
                card.drop.clicked.connect(partial(self._drop, key))
                self.body.add(card, 4)
        kept = {offer.id: offer for offer in self.book.settings.offers}
        for one in told:
            self.cards[one.id].show_offer(kept[one.id], one)

    def let_go(self) -> None:
        """Nothing written for the machine before stays."""
        self._tell("")
        self.cards.clear()
        self.body.clear()

    def _drop(self, key: str, _: bool = False) -> None:
        self._tell(self.book.do(lambda: drop_offer(self.book.record, key)))

    def _tell(self, sentence: str) -> None:
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))


class OfferCard(Column):
    """One part offered, in fields, and below them how it stands."""

    def __init__(self, book: Book, key: str) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self.key, self._options = book, key, list[Option]()
        look = book.desk.look
        self.part = PickField(book, tr("Part offered"), (), lambda part: self._change(part=part))
        self.name = WordField(book, tr("What it is"), lambda text: self._change(name=text))
        self.price = FigureField(book, tr("Offered for"), lambda v: self._change(price=None if v is None else str(v)))
        self.currency = WordField(book, tr("Currency"), lambda text: self._change(currency=text))
        self.expected = FigureField(
            book, tr("You expect"), lambda v: self._change(expected=None if v is None else str(v))
        )
        self.by = WordField(book, tr("By whom"), lambda text: self._change(by=text))
        self.day = WordField(book, tr("Day, month or year"), lambda text: self._change(date=text))
        self.words, self.whose = Text(look, semibold=True), Text(look, step="small", ink="soft")
        self.drop = Key(look, tr("take this offer away"))
        for widget, gap in (
            (self.part, 0), (self.name, 2), (FieldRow(look, [self.price, self.currency]), 2), (self.expected, 2),
            (FieldRow(look, [self.by, self.day]), 2), (self.words, 2), (self.whose, 1), (self.drop, 2),
        ):  # fmt: skip
            self.add(widget, gap)

    def _change(self, **changes: object) -> Step:
        return change_offer(self.book.record, self.key, **changes)

    def fields(self) -> list[Field]:
        """Everything that is written or chosen in it."""
        return [self.part, self.name, self.price, self.currency, self.expected, self.by, self.day]

    def show_offer(self, kept: PartOffer, told: PartOffered) -> None:
        """The fields hold the offer, the words say how it stands."""
        book = self.book
        self._show_parts()
        self.part.set_value(told.part)
        self.name.setVisible(not told.part)
        for field, words in ((self.name, kept.name), (self.currency, told.currency), (self.by, kept.by),
                             (self.day, kept.date)):  # fmt: skip
            field.set_value(words)
        self.price.show_figure(kept.price)
        self.expected.show_figure(kept.expected)
        self.words.say(book.say(told.words))
        expected = tr("Expected: {span}", span=book.amounts.span(told.expected[0], told.expected[2])) if (
            told.expected) else ""  # fmt: skip
        whose = book.say(told.whose) if told.whose is not None else ""
        self.whose.say(", ".join(part for part in (expected, whose) if part))
        self.whose.setVisible(bool(self.whose.words))

    def _show_parts(self) -> None:
        """Every part that may be bought, of what is to be put right, and any other one."""
        ways = [way for fault in self.book.costs.items for way in fault.ways if way.kind in BOUGHT]
        options = [Option("", tr("another part")),
                   *(Option(w.key, f"{w.name} ({w.item_name})") for w in ways)]  # fmt: skip
        if options != self._options:
            self._options = options
            self.part.set_options(options)


def offer_words(book: Book, one: PartOffered) -> str:
    """An offer in one line: for how much, by whom, and how it stands to what is expected."""
    price = f"{book.told(one.as_entered)} {one.currency}".strip()
    by = book.say(one.by) if one.by is not None else ""
    said = ", ".join(part for part in (price, by) if part)
    return f"{said}. {book.say(one.words)}" if said else book.say(one.words)
