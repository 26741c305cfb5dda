"""The ways to put one item right: each with its figures and where they are from, to be chosen, changed or added to."""

from inspector.judgement.reckoned import Faulted, Way
from inspector.profile.words import Need, PartKind
from inspector.record.verbs_money import choose_remedy, figures, set_figures
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.wayform import WayForm
from inspector.window.money.written import when

CHOICES = {"yes": True, "no": False, "open": None}
KIND_WORDS = {
    PartKind.ORIGINAL: "original part",
    PartKind.USED: "used part",
    PartKind.PATTERN: "pattern part",
    PartKind.REPAIR: "repair",
    PartKind.LEAVE: "leave it",
}
NEED_WORDS = {Need.SAFETY: "for safety", Need.CLAIM: "for the claim", Need.TASTE: "of taste"}


class WaysPart(Column):
    """The open item, what is decided there, and each way."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look)
        self.book, self.item = book, ""
        self.name, self.reason = Text(self.look, step="head"), Text(self.look)
        self.trouble = Text(self.look, semibold=True)
        self.body = Column(self.look, edge=0, top=0)
        self.another = Key(self.look, tr("add a way of your own"))
        self.another.clicked.connect(self.add_own)
        self.cards: dict[str, WayCard] = {}
        for widget, gap in ((self.name, 0), (self.reason, 1), (self.trouble, 1), (self.body, 3), (self.another, 4)):
            self.add(widget, gap)
        self.trouble.hide()

    def let_go(self) -> None:
        """Nothing that is written for the item before stays."""
        self.item = ""
        self.cards.clear()
        self.body.clear()

    def show_item(self, item: str, fault: Faulted | None) -> None:
        """The ways at that item as the record stands."""
        from inspector.judgement.exchange import exchange
        from inspector.judgement.offered import offered

        book, known = self.book, self.book.desk.profile.item_by_id.get(item)
        self.setVisible(known is not None or fault is not None)
        self.name.say(fault.name if fault else known.name if known else "")
        self.reason.say(book.say(fault.reason) if fault else tr("Nothing was found amiss here."))
        at = exchange(book.desk.profile, book.record)
        ways = fault.ways if fault else offered(book.desk.profile, book.record, at).get(item, ())
        if item != self.item or list(self.cards) != [way.cost for way in ways]:
            self.body.clear()
            self.cards = {way.cost: WayCard(book, item, way.cost, self._say) for way in ways}
            for card in self.cards.values():
                self.body.add(card, 4)
            self.item = item
            self._say("")
        counted = {way.cost for way in fault.counted} if fault else set()
        for way in ways:
            self.cards[way.cost].show_way(way, way.cost in counted)

    def _say(self, sentence: str) -> None:
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    def add_own(self) -> None:
        """A way of one's own stands at the end, open to be written."""
        used = {r.cost for r in self.book.record.remedies if r.item == self.item}
        cost = next(c for n in range(1, len(used) + 2) if (c := f"own-{n}") not in used)
        made = figures(name=tr("My own way {n}", n=cost.removeprefix("own-")))
        self._say(self.book.do(lambda: set_figures(self.book.record, self.item, cost, made)))
        if cost in self.cards:
            self.cards[cost].open_form()


class WayCard(Column):
    """One way: what it is, its figures, and the keys to decide and to change them."""

    def __init__(self, book: Book, item: str, cost: str, say: object) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self.item, self.cost = book, item, cost
        self.way: Way | None = None
        self.head = SectionHead(self.look, "")
        self.parts, self.hours, self.more = Text(self.look), Text(self.look), Text(self.look, ink="soft", step="small")
        self.trouble = Text(self.look, semibold=True)
        self.decide = ChoiceKeys(
            self.look, [Option("yes", tr("do it")), Option("no", tr("not this")), Option("open", tr("undecided"))],
            held="kept",
        )  # fmt: skip
        self.change = Key(self.look, tr("change figures"))
        self.back = Key(self.look, tr("the profile's figures again"))
        self.keys = KeyRow(self.look, [self.change, self.back])
        self.form: WayForm | None = None
        for widget, gap in ((self.head, 0), (self.parts, 1), (self.hours, 0), (self.more, 1), (self.trouble, 1),
                            (self.decide, 2), (self.keys, 2)):  # fmt: skip
            self.add(widget, gap)
        self.decide.picked.connect(self._decide)
        self.change.clicked.connect(self.turn_form)
        self.back.clicked.connect(self._take_back)

    def show_way(self, way: Way, counted: bool) -> None:
        """The way as it stands, and whether it is in the sum."""
        self.way = way
        book, state = self.book, tr("in the sum") if counted else ""
        self.head.say(way.name, state)
        kind = f"{tr(KIND_WORDS[way.kind])}, {tr(NEED_WORDS[way.need])}"
        self.parts.say(parts_words(book, way), lead=kind[:1].upper() + kind[1:] + ".")
        self.hours.say(hours_words(book, way))
        self.more.say(source_words(book, way))
        self.trouble.say(book.say(way.trouble) if way.trouble is not None else "")
        self.trouble.setVisible(way.trouble is not None)
        self.decide.set_held(next(word for word, choice in CHOICES.items() if choice is way.choice))
        self.back.setVisible(way.changed)
        self.back.say(tr("take this way out") if way.own else tr("the profile's figures again"))
        if self.form is not None:
            self.form.show_way(way)

    def turn_form(self) -> None:
        """The fields are open, or closed again."""
        if self.form is None:
            self.open_form()
        else:
            self.close_form()

    def open_form(self) -> None:
        """The fields for the figures stand below the keys."""
        if self.form is None and self.way is not None:
            self.form = WayForm(self.book, self.item, self.cost)
            self.form.show_way(self.way)
            self.add(self.form, 2)
            self.change.say(tr("done with figures"))

    def close_form(self) -> None:
        """The fields are gone."""
        if self.form is not None:
            self.take(self.form)
            self.form.hide()
            self.form.deleteLater()
            self.form = None
            self.change.say(tr("change figures"))

    def _decide(self, word: str) -> None:
        chosen = CHOICES[word]
        self._tell(self.book.do(lambda: choose_remedy(self.book.record, self.item, self.cost, chosen)))

    def _take_back(self) -> None:
        self.close_form()
        way = self.way
        if way is not None and way.own:
            from inspector.record.edits import Part
            from inspector.record.verbs import drop_entry

            self._tell(self.book.do(lambda: drop_entry(Part.REMEDIES, way.key, label="Own way taken out")))
        else:
            self._tell(self.book.do(lambda: set_figures(self.book.record, self.item, self.cost, None)))

    def _tell(self, sentence: str) -> None:
        if sentence:
            self.trouble.say(sentence)
            self.trouble.show()


def parts_words(book: Book, way: Way) -> str:
    """What the parts cost, or that no price is known."""
    if way.parts is None:
        return tr("No price known.")
    low, likely, high = way.parts
    if low == high == 0:
        return tr("No parts.")
    return tr("Parts {span}, likely {likely}.", span=book.amounts.span(low, high), likely=book.told(likely))


def hours_words(book: Book, way: Way) -> str:
    """How many hours it takes, or that labour is not estimated."""
    if way.hours is None:
        return tr("No labour.") if way.kind is PartKind.LEAVE else tr("Labour not estimated.")
    if way.hours[2] == 0:
        return tr("No labour.")
    low, likely, high = (book.amounts.exact(one) for one in way.hours)
    return tr("Hours {low} to {high}, likely {likely}.", low=low, high=high, likely=likely)


def source_words(book: Book, way: Way) -> str:
    """Who says so and when, what has to come apart, how long it takes to come, and what it rules out."""
    jobs = {job.id: job.name for job in book.desk.profile.jobs}
    told = [tr("your own figures") if way.changed else way.source or tr("no source")]
    if way.changed and way.source:
        told.append(way.source)
    told.append(tr("prices of {date}", date=when(way.priced_on)) if way.priced_on else tr("no date"))
    if way.job:
        told.append(tr("needs: {job}", job=jobs.get(way.job, way.job)))
    if way.lead_weeks is not None:
        told.append(tr("said to take {low:g} to {high:g} weeks", low=way.lead_weeks[0], high=way.lead_weeks[1]))
    if way.note:
        told.append(way.note)
    return " · ".join(told)
