"""The wants list: what to look for at the stalls, on the page, on paper and as a table."""

from inspector.judgement.dealt import PartOffered, Want
from inspector.judgement.wants import wants
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.offering import offer_words
from inspector.window.money.saving import ask_and_save
from inspector.window.money.view import Sentences, View

NARROW_MM = 66.0


class WantsView(View):
    """Each part with what it is, how it is told, what not to buy and a fair price."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        look = self.look
        self.pdf, self.csv = Key(look, tr("save as PDF")), Key(look, tr("save as CSV"))
        self.state = Text(look, ink="soft")
        self.none = Text(look, tr("No part is to be bought as things stand."), ink="soft")
        self.body = Column(look, edge=0, top=0)
        self.shown: tuple[Want, ...] = ()
        self._offers: tuple[PartOffered, ...] = ()
        left, right = Column(look), Column(look)
        for widget, gap in ((SectionHead(look, tr("Wants list"), step="head"), 0), (self.none, 2), (self.body, 2)):
            left.add(widget, gap)
        right.add(SectionHead(look, tr("To take along")))
        for key in (self.pdf, self.csv, self.state):
            right.add(key, 3)
        right.add(Text(look, tr("The list names fair prices: it is for you, not for the seller."), ink="soft"), 4)
        self.stand([(left, 0), (right, NARROW_MM)])
        self.pdf.clicked.connect(lambda: ask_and_save(book, "wants", "pdf", self.as_pdf, self.state.say))
        self.csv.clicked.connect(lambda: ask_and_save(book, "wants", "csv", self.as_csv, self.state.say))

    def wanted_parts(self) -> tuple[Want, ...]:
        """What is looked for as the record stands."""
        return wants(self.book.desk.profile, self.book.record, self.book.costs)

    def let_go(self) -> None:
        """Nothing of the machine before stays."""
        self.state.say("")

    def show_money(self) -> None:
        """The list as the record stands."""
        found, offers = self.wanted_parts(), self.book.offers
        self.none.setVisible(not found)
        why = "" if found else tr("The list is empty.")
        self.pdf.turn_off(why)
        self.csv.turn_off(why)
        if (found, offers) == (self.shown, self._offers):
            return
        self.shown, self._offers = found, offers
        self.body.clear()
        for want in found:
            self.body.add(WantCard(self.book, want, [one for one in offers if one.part == want.key]), 5)

    # handing out

    def as_pdf(self) -> bytes:
        """The list as PDF."""
        from inspector.sheet.pdf import as_pdf
        from inspector.sheet.wants import wants_sheet

        book = self.book
        return as_pdf(wants_sheet(book.desk.profile, book.record, self.wanted_parts(), book.code,
                                  book.desk.clock(), book.amounts))  # fmt: skip

    def as_csv(self) -> bytes:
        """The list as CSV."""
        from inspector.sheet.wants import wants_csv

        return wants_csv(self.wanted_parts(), self.book.code).encode("utf-8-sig")


class WantCard(Column):
    """One part to look for."""

    def __init__(self, book: Book, want: Want, offers: list[PartOffered]) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        price = book.amounts.span(want.fair[0], want.fair[2]) if want.fair else tr("no price")
        self.add(SectionHead(self.look, want.looking_for, aside=price))
        state = "" if want.decided else tr("Not decided yet.")
        self.add(Text(self.look, state, lead=want.name + ".", ink="soft"), 1)
        for lead, words in (
            (tr("Right:"), "; ".join(want.spec)), (tr("How to tell:"), "; ".join(want.how_to_tell)),
            (tr("Fair price:"), price_words(book, want)), *((tr("Offered:"), offer_words(book, one)) for one in offers),
        ):  # fmt: skip
            if words:
                self.add(Text(self.look, words, lead=lead), 1)
        if want.not_to_buy:
            self.add(Text(self.look, lead=tr("Not to buy:")), 1)
            left_out = Sentences(book)
            left_out.show_said(want.not_to_buy)
            self.add(left_out, 0)


def price_words(book: Book, want: Want) -> str:
    """The price with where it is from."""
    if want.fair is None:
        return book.say(want.price_words)
    likely = tr("about {likely}", likely=book.told(want.fair[1]))
    return f"{likely} ({book.amounts.span(want.fair[0], want.fair[2])}), {book.say(want.price_words)}"
