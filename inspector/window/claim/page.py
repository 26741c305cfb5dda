"""The page Claim: advertisement and title kept apart, four kinds of year, people, what was asked and said."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.record.claim import Inquiry, Person, Statement
from inspector.record.days import FIRST_YEAR, LAST_YEAR
from inspector.record.edits import Changed, Part
from inspector.record.verbs import set_claim
from inspector.record.words import Role
from inspector.texts import tr
from inspector.window.claim.entries import Entries, FieldSpec
from inspector.window.desk import Desk
from inspector.window.look.columns import Column, Columns
from inspector.window.look.fields import Field, LineField, TextField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import SectionHead, Text

YEARS = ("model_year", "title_year")


class ClaimPage(QWidget):
    """Every field is kept when one leaves it; nothing found later alters it."""

    id = "claim"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        look = desk.look
        self.claim, self.rest = Column(look), Column(look)
        self.year_keys = ChoiceKeys(look, held="chosen", may_clear=True, fit="flow")
        self.fields = {
            "model": LineField(look, tr("Machine, as it is called here")),
            "advertised": TextField(look, tr("As advertised: the words, before they change"), lines=3),
            "titled": TextField(look, tr("As titled: what the paper says it is"), lines=2),
            "build_date": LineField(look, tr("Build date, as claimed")),
            "first_registration": LineField(look, tr("First registration, as claimed")),
            "title_year": LineField(look, tr("Year printed on the title")),
            "market": LineField(look, tr("Market it was built for")),
            "place": LineField(look, tr("Where it is seen")),
            "date": LineField(look, tr("Day")),
            "conditions": LineField(look, tr("Light, weather, engine cold or warm")),
        }
        self.people = Entries(desk, Part.PEOPLE, tr("People"), tr("add a person"), people_specs(), _new_person)
        asked, said = tr("Asked of others: theft, lien"), tr("What the seller says (unverified)")
        self.inquiries = Entries(desk, Part.INQUIRIES, asked, tr("add a question asked"), inquiry_specs(), _new_inquiry)
        self.statements = Entries(desk, Part.STATEMENTS, said, tr("add a statement"), statement_specs(), _new_statement)
        self.onward = Key(look, tr("on to the walk"), arrow="right", strong=True)
        self._lay_out()
        self.columns = Columns(look, [(self.claim, 0), (self.rest, 0)])
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self.columns)
        self.year_keys.changed.connect(self._pick_year)
        self.onward.clicked.connect(lambda: desk.wanted.emit("walk"))
        for name, field in self.fields.items():
            field.committed.connect(lambda text, name=name: self._write(name, text))
        desk.opened.connect(self.show_machine)
        desk.changed.connect(self.show_change)
        self.show_machine()

    def _lay_out(self) -> None:
        look = self.desk.look
        self.claim.add(SectionHead(look, tr("What is claimed")))
        self.claim.add(self.fields["model"], 3)
        self.claim.add(Text(look, tr("Claimed model year"), ink="soft"), 3)
        self.claim.add(self.year_keys, 1)
        self.claim.add(Text(look, tr(
            "Model year, build date, first registration and the year on the title are four different years. "
            "None proves another.",
        ), ink="soft"), 2)  # fmt: skip
        for name in list(self.fields)[1:]:
            self.claim.add(self.fields[name], 3)
        self.claim.add(self.onward, 6)
        for entries in (self.people, self.inquiries, self.statements):
            self.rest.add(entries, 6)

    # showing

    def show_machine(self) -> None:
        """The claim of the open machine is shown."""
        if self.desk.session is None:
            return
        for field in self.findChildren(QWidget):
            if isinstance(field, Field):
                field.let_go()
        years = [Option(str(year), str(year)) for year in self.desk.profile.years]
        self.year_keys.set_options(years)
        self.show_change(None)

    def show_change(self, changed: Changed | None) -> None:
        """What the change touched is shown again."""
        if self.desk.session is None:
            return
        parts = set(Part) if changed is None else changed.parts
        if Part.CLAIM in parts:
            self._show_claim()
        for entries in (self.people, self.inquiries, self.statements):
            if entries.part in parts:
                entries.show_entries()

    def _show_claim(self) -> None:
        claim = self.desk.record.claim
        self.year_keys.set_held(str(claim.model_year or ""))
        for name, field in self.fields.items():
            value = getattr(claim, name)
            field.set_value("" if value is None else str(value))

    # changing

    def _pick_year(self, held: list[str]) -> None:
        self.desk.do(set_claim("model_year", int(held[0]) if held else None))

    def _write(self, name: str, text: str) -> None:
        value: str | int | None = text.strip()
        if name in YEARS:
            if value and not is_year(str(value)):
                self.desk.told.emit(tr("A year is four figures, such as 1953. “{text}” was not kept.", text=text))
                self._show_claim()
                return
            value = int(value) if value else None
        if value != (getattr(self.desk.record.claim, name)):
            self.desk.do(set_claim(name, value))


def is_year(text: str) -> bool:
    """Whether that is a year in four figures, as a record takes it."""
    return len(text) == 4 and text.isdecimal() and FIRST_YEAR <= int(text) <= LAST_YEAR


def _free_id(entries: Sequence[Any], stem: str) -> str:
    taken = {entry.id for entry in entries}
    return next(f"{stem}-{n}" for n in range(1, len(taken) + 2) if f"{stem}-{n}" not in taken)


def _new_person(desk: Desk) -> Person:
    return Person(id=_free_id(desk.record.people, "person"), role=Role.WITNESS)


def _new_statement(desk: Desk) -> Statement:
    return Statement(id=_free_id(desk.record.statements, "said"), text="", at=desk.clock())


def _new_inquiry(desk: Desk) -> Inquiry:
    return Inquiry(id=_free_id(desk.record.inquiries, "asked"), about="")


def people_specs() -> tuple[FieldSpec, ...]:
    """What is asked of each person."""
    return (
        FieldSpec("name", tr("Name")),
        FieldSpec("role", tr("Part in this"), words=Role),
        FieldSpec("interest", tr("Interests and relation to the parties (“none declared” has to be said)")),
    )


def inquiry_specs() -> tuple[FieldSpec, ...]:
    """What is noted of each question put to others."""
    return (
        FieldSpec("about", tr("About: theft, lien, record")),
        FieldSpec("body", tr("Who was asked")),
        FieldSpec("sent", tr("The number as sent")),
        FieldSpec("date", tr("Date")),
        FieldSpec("reply", tr("Reply, in their words")),
    )


def statement_specs() -> tuple[FieldSpec, ...]:
    """What is noted of each thing said."""
    return (
        FieldSpec("text", tr("In the seller's words")),
        FieldSpec("by", tr("Who said it")),
        FieldSpec("medium", tr("How: told, letter, message, advertisement")),
    )
