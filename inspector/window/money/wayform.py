"""The figures of one way, to be written over: low, likely and high are kept once all three are there."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any

from inspector.judgement.reckoned import Way
from inspector.profile.words import Need, PartKind
from inspector.record.days import day_of
from inspector.record.edits import Step
from inspector.record.money import Figures
from inspector.record.refusing import EditRefused
from inspector.record.verbs_money import figures, no_day, set_figures
from inspector.texts import say, tr
from inspector.window.look.columns import Column
from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import ChoiceField, Field, LineField
from inspector.window.look.keys import Option
from inspector.window.look.text import Text
from inspector.window.money.book import Book
from inspector.window.money.written import figure, write

THREE = ("low", "likely", "high")
WRITE_THREE = "Of the {name} write low, likely and high; all three may be the same."
WRITE_TWO = "Of the {name} write at least and at most; both may be the same."


class WayForm(Column):
    """Fields for one way; each value is kept when it is left."""

    def __init__(self, book: Book, item: str, cost: str) -> None:
        super().__init__(book.desk.look, edge=0, top=0)
        self.book, self.item, self.cost = book, item, cost
        self.way: Way | None = None
        look = self.look
        self.name = LineField(look, tr("What is done"))
        self.kind = ChoiceField(look, tr("Kind"), [Option(k.value, tr(k.value)) for k in PartKind])
        self.need = ChoiceField(look, tr("Must be done for"), [Option(n.value, tr(n.value)) for n in Need])
        self.parts = [LineField(look, tr("Parts, {which}", which=tr(w))) for w in THREE]
        self.hours = [LineField(look, tr("Hours, {which}", which=tr(w))) for w in THREE]
        self.weeks = [LineField(look, tr("Weeks to come, {which}", which=tr(w))) for w in ("at least", "at most")]
        self.currency, self.day = LineField(look, tr("Currency")), LineField(look, tr("Prices of (date)"))
        self.source, self.note = LineField(look, tr("Source of the price")), LineField(look, tr("Note"))
        jobs = [Option("", tr("nothing apart")), *(Option(j.id, j.name) for j in book.desk.profile.jobs)]
        self.job = ChoiceField(look, tr("What has to come apart"), jobs)
        self.trouble = Text(look, semibold=True)
        self.trouble.hide()
        for row in (
            self.name, FieldRow(look, [self.kind, self.need], least=40), FieldRow(look, self.parts),
            FieldRow(look, self.hours), self.trouble, FieldRow(look, [self.currency, self.day]), self.source,
            FieldRow(look, self.weeks), self.job, self.note,
        ):  # fmt: skip
            self.add(row, 2)
        for field in self._fields():
            field.committed.connect(lambda _: self.keep())

    def _fields(self) -> Sequence[Field]:
        return (self.name, self.kind, self.need, *self.parts, *self.hours, self.currency, self.day, self.source,
                *self.weeks, self.job, self.note)  # fmt: skip

    def show_way(self, way: Way) -> None:
        """The fields hold what was entered, or what the profile says."""
        self.way = way
        own = self._entered()
        self.name.set_value(way.name)
        self.kind.set_value(way.kind.value)
        self.need.set_value(way.need.value)
        listed = own.parts if own else self._listed()
        for fields, three, amount in ((self.parts, listed, True), (self.hours, way.hours, False)):
            for field, value in zip(fields, three or (None,) * 3, strict=True):
                write(field, value, self.book.amounts, thousands=amount)
        for field, week in zip(self.weeks, way.lead_weeks or (None, None), strict=True):
            write(field, None if week is None else Decimal(f"{week:g}"), self.book.amounts, thousands=False)
        self.currency.set_value(way.currency)
        self.day.set_value(way.priced_on)
        self.source.set_value(way.source)
        self.job.set_value(way.job)
        self.note.set_value(way.note)

    def _entered(self) -> Figures | None:
        found = (r.figures for r in self.book.record.remedies if (r.item, r.cost) == (self.item, self.cost))
        return next(found, None)

    def _listed(self) -> tuple[Decimal, Decimal, Decimal] | None:
        """The profile's own parts prices, in the currency that it has them in."""
        known = self.book.desk.profile.item_by_id.get(self.item)
        return next((c.parts for c in known.costs if c.id == self.cost), None) if known else None

    def keep(self) -> None:
        """What stands in the fields is kept, or a sentence says what is lacking."""
        sentence = self.book.do(self._step)
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    def _step(self) -> Step:
        day = self.day.value().strip()
        if day and day_of(day) is None:
            raise EditRefused(no_day(day))
        values: dict[str, Any] = {
            "name": self.name.value().strip(), "kind": self.kind.value(), "need": self.need.value(),
            "parts": _all_of(self.parts, WRITE_THREE, tr("parts"), thousands=True),
            "hours": _all_of(self.hours, WRITE_THREE, tr("hours"), thousands=False),
            "currency": self.currency.value(), "priced_on": day,
            "source": self.source.value().strip(), "job": self.job.value(), "note": self.note.value().strip(),
            "lead_weeks": _all_of(self.weeks, WRITE_TWO, tr("weeks"), thousands=False),
        }  # fmt: skip
        return set_figures(self.book.record, self.item, self.cost, figures(**values))


def _all_of(fields: Sequence[LineField], write_all: str, name: str, *, thousands: bool) -> tuple[str, ...] | None:
    """What stands in all of these; None where none is written. Raises EditRefused where only some are."""
    found = [figure(field.value(), thousands=thousands) for field in fields]
    known = [str(value) for value in found if value is not None]
    if not known:
        return None
    if len(known) < len(found):
        raise EditRefused(say(write_all, name=name))
    return tuple(known)
