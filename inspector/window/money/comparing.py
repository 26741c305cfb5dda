"""One comparable in its fields, and every change from the price as entered to the adjusted one."""

from collections.abc import Callable
from decimal import Decimal

from PySide6.QtCore import Signal

from inspector.judgement.reckoned import AdjustmentLine, GridRow
from inspector.record.days import day_of
from inspector.record.edits import Step
from inspector.record.money import Adjustment, Comparable
from inspector.record.refusing import EditRefused
from inspector.record.verbs_money import adjust, change_comparable, drop_comparable, exclude, no_day
from inspector.record.words import Adjusts, NumbersAgree, PriceKind
from inspector.texts import say, tr
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import Field, LineField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.dealing import comparable_name
from inspector.window.money.entering import FigureField, PickField, WordField
from inspector.window.money.picturing import PictureStrip
from inspector.window.money.written import figure

WORDS = (("title", "What it was"), ("date", "Day, month or year"), ("place", "Where"), ("source", "Source"),
         ("photograph", "Where a picture is: a file or page"), ("note", "Note"))  # fmt: skip
STEPS = ("1", "2", "3", "4", "5")


class CompareForm(Column):
    """Fields of the open comparable; ``gone`` tells that it was taken away."""

    gone = Signal()

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self.key = book, ""
        look = self.look
        self.head = SectionHead(look, "", step="head")
        self.kind = PickField(book, tr("Sold, bid or asked"), [Option(k.value, tr(k.value)) for k in PriceKind],
                              lambda word: self._change(kind=word))  # fmt: skip
        self.price = FigureField(book, tr("Price"), self._price)
        self.currency = WordField(book, tr("Currency"), lambda text: self._change(currency=text))
        self.fees = ChoiceKeys(look, [Option("in", tr("fees in")), Option("out", tr("fees on top"))], held="kept")
        self.premium = FigureField(book, tr("Fees on top, %"), lambda v: self._change(premium_percent=_text(v)),
                                   thousands=False)  # fmt: skip
        self.words = {name: WordField(book, tr(label), self._word(name)) for name, label in WORDS}
        scale = [Option("", tr("not known")), *(Option(s, s) for s in STEPS)]
        self.condition = PickField(book, tr("Condition, 1 parts only to 5 as delivered"), scale,
                                   lambda word: self._change(condition=int(word) if word else None))  # fmt: skip
        self.like = PickField(book, tr("How like, 1 hardly to 5 the same"), scale[1:],
                              lambda word: self._change(how_like=int(word)))  # fmt: skip
        self.numbers = PickField(book, tr("Numbers said to agree"),
                                 [Option(n.value, tr(n.value)) for n in NumbersAgree],
                                 lambda word: self._change(numbers=word))  # fmt: skip
        self.score = FigureField(book, tr("Score, 0 to 100"), lambda v: self._change(score=_text(v)), thousands=False)
        self.excluded = WordField(book, tr("Left out because (it stays in the list)"), self._exclude)
        self.pictures = PictureStrip(book)
        self.adjusting = AdjustPart(book)
        self.steps = SumTable(look)
        self.drop = Key(look, tr("take this one away"))
        self._lay_out()
        self.fees.picked.connect(lambda word: self._tell(book.do(lambda: self._change(fees_in=word == "in"))))
        self.drop.clicked.connect(self._drop)

    def _lay_out(self) -> None:
        look, words = self.look, self.words
        self.trouble = Text(look, semibold=True)
        self.trouble.hide()
        for widget, gap in (
            (self.head, 0), (FieldRow(look, [self.kind, self.price, self.currency]), 2), (self.trouble, 1),
            (self.fees, 2), (FieldRow(look, [self.premium, words["date"]], least=40), 2), (words["title"], 2),
            (FieldRow(look, [words["place"], words["source"]], least=40), 2),
            (FieldRow(look, [self.condition, self.like], least=50), 2),
            (FieldRow(look, [self.numbers, self.score], least=40), 2), (words["photograph"], 2), (self.pictures, 2),
            (words["note"], 2),
            (self.excluded, 2), (SectionHead(look, tr("From as entered to adjusted")), 5), (self.steps, 0),
            (self.adjusting, 3), (KeyRow(look, [self.drop]), 4),
        ):  # fmt: skip
            self.add(widget, gap)

    def _fields(self) -> list[Field]:
        return [self.kind, self.price, self.currency, self.premium, *self.words.values(), self.condition, self.like,
                self.numbers, self.score, self.excluded, *self.adjusting.fields()]  # fmt: skip

    def let_go(self) -> None:
        """What is written for the one before does not stay."""
        for field in self._fields():
            field.let_go()
            field.say("")
        self._tell("")

    # changing

    def _change(self, **changes: object) -> Step:
        return change_comparable(self.book.record, self.key, **changes)

    def _price(self, value: Decimal | None) -> Step:
        if value is None or value == 0:
            raise EditRefused(say("Write the price that was asked, bid or paid. Nothing was changed."))
        return self._change(price=str(value))

    def _word(self, name: str) -> Callable[[str], Step]:
        def keep(text: str) -> Step:
            day = day_of(text) if name == "date" and text else None
            if name == "date" and text and day is None:
                raise EditRefused(no_day(text))
            if day is not None and day.written > self.book.desk.clock()[: len(day.written)]:
                raise EditRefused(say('"{text}" lies in the future. Write the day of the price.', text=text))
            return self._change(**{name: day.written if day is not None else text})

        return keep

    def _exclude(self, text: str) -> Step:
        return exclude(self.book.record, self.key, text)

    def _drop(self) -> None:
        key = self.key
        self._tell(self.book.do(lambda: drop_comparable(self.book.record, key)))
        self.gone.emit()

    def _tell(self, sentence: str) -> None:
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    # showing

    def show_one(self, row: GridRow | None) -> None:
        """The fields hold this comparable; nothing is shown where there is none."""
        self.setVisible(row is not None)
        if row is None:
            return
        if row.id != self.key:
            self.let_go()
        self.key = row.id
        one = next(c for c in self.book.record.comparables if c.id == row.id)
        self.head.say(comparable_name(row.kind, row.title, row.place, row.source))
        self._show_fields(one)
        self.steps.set_lines(self._steps(row))
        self.pictures.show_pictures(row.id)
        self.adjusting.show_adjustments(row.id)

    def _show_fields(self, one: Comparable) -> None:
        self.kind.set_value(one.kind.value)
        self.price.show_figure(one.price or None)
        self.currency.set_value(one.currency)
        self.fees.set_held("in" if one.fees_in else "out")
        self.premium.show_figure(one.premium_percent)
        self.premium.setVisible(not one.fees_in)
        for name, field in self.words.items():
            field.set_value(str(getattr(one, name)))
        self.condition.set_value(str(one.condition or ""))
        self.like.set_value(str(one.how_like))
        self.numbers.set_value(one.numbers.value)
        self.score.show_figure(one.score)
        self.excluded.set_value(one.excluded_because)

    def _steps(self, row: GridRow) -> list[Sum]:
        book = self.book
        lines = [Sum(tr("As entered"), f"{book.told(row.as_entered)} {row.currency}")]
        if row.told is not None and row.told != row.as_entered:
            lines.append(Sum(tr("Told in {currency}", currency=book.currency), book.told(row.told)))
        lines += [self._line(line) for line in row.lines]
        lines.append(Sum(tr("As it stands"), book.told(row.as_it_stands, tr("no rate")), total=True))
        if row.to_put_right is not None:
            lines.append(self._line(row.to_put_right))
            lines.append(Sum(tr("Put right"), book.told(row.put_right), total=True))
        return lines

    def _line(self, line: AdjustmentLine) -> Sum:
        words = self.book.say(line.words)
        return Sum(words[:1].upper() + words[1:], self.book.amounts.signed(line.amount))


class AdjustPart(Column):
    """For each thing that sets the other machine apart: an amount or a percentage, and why."""

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self.key = book, ""
        self.add(Text(self.look, tr(
            "Your adjustments: an amount, or a percentage with its sign (5 %), and why. "
            "Minus where the other machine was the better one.",
        ), ink="soft", step="small"))  # fmt: skip
        self.lines: dict[Adjusts, tuple[LineField, LineField]] = {}
        for what in Adjusts:
            amount, why = LineField(self.look, tr("For {what}", what=tr(what.value))), LineField(self.look, tr("Why"))
            self.lines[what] = (amount, why)
            for field in (amount, why):
                field.committed.connect(lambda _, what=what: self._keep(what))
            self.add(FieldRow(self.look, [amount, why], least=40), 2)

    def fields(self) -> list[Field]:
        """All fields."""
        return [field for line in self.lines.values() for field in line]

    def show_adjustments(self, key: str) -> None:
        """The fields hold the adjustments of that comparable."""
        self.key = key
        own = {a.what: a for a in self.book.record.adjustments if a.comparable == key}
        for what, (amount, why) in self.lines.items():
            amount.set_value(self._figure(own.get(what)))
            if amount.value() or not why.value():
                why.set_value(own[what].reason if what in own else "")

    def _figure(self, one: Adjustment | None) -> str:
        exact = self.book.amounts.exact
        if one is None:
            return ""
        return exact(one.amount) if one.amount is not None else f"{exact(one.percent or Decimal(0))} %"

    def _keep(self, what: Adjusts) -> None:
        amount, why = self.lines[what]
        text, reason = amount.value().strip(), why.value().strip()
        sentence = self.book.do(lambda: self._step(what, text, reason))
        if not sentence and reason and not text:
            sentence = tr("Write an amount or a percentage too: a reason alone is not kept.")
        amount.say(sentence)

    def _step(self, what: Adjusts, text: str, reason: str) -> Step:
        share = text.endswith("%")
        value = figure(text.removesuffix("%"), thousands=not share)
        if share and value is not None:
            return adjust(self.key, what, percent=value, reason=reason)
        return adjust(self.key, what, amount=value, reason=reason)


def _text(value: Decimal | None) -> str | None:
    return None if value is None else str(value)
