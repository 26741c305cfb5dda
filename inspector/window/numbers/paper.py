"""The open paper: what it is, what it quotes and of which place, who is named, and how it stands to the metal."""

from typing import Any

from PySide6.QtWidgets import QWidget

from inspector.record.claim import Paper, Quoted
from inspector.record.edits import Part
from inspector.record.verbs import drop_entry
from inspector.record.words import PaperState
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import ChoiceField, LineField, TextField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import ItemHead, SectionHead, Text
from inspector.window.numbers.readings import Shown, change_paper, paper_of
from inspector.window.numbers.telling import papers_of

NO_PLACE = "none"
STATES = (PaperState.ORIGINAL, PaperState.COPY, PaperState.TOLD)


class PaperView(Column):
    """One paper; every field is kept when one leaves it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.shown = desk, Shown()
        look = desk.look
        self.head = ItemHead(look)
        self.name = LineField(look, tr("What it is: title, registration book, bill, letter"))
        self.state = ChoiceKeys(look, [Option(s.value, tr(s.value)) for s in STATES], held="kept")
        self.quoted = Column(look, edge=0, top=0)
        self.numbers: list[QuotedForm] = []
        self.more = Key(look, tr("add a number it quotes"))
        self.lines = {
            "named": LineField(look, tr("Who is named on it")),
            "dated": LineField(look, tr("Date on it")),
        }
        self.note = TextField(look, tr("Note"), lines=3)
        self.out = Key(look, tr("take this paper out"))
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        look = self.desk.look
        self.add(self.head)
        self.add(self.name, 4)
        self.add(Text(look, tr("Seen as"), ink="soft"), 4)
        self.add(self.state, 1)
        self.add(SectionHead(look, tr("Numbers it quotes")), 6)
        self.add(Text(look, tr(
            "As written there, slips and all: ? for a letter that cannot be read, [19] for “1 or 9”. "
            "A paper that quotes no number is not tied to this machine.",
        ), ink="soft"), 2)  # fmt: skip
        self.add(self.quoted, 2)
        self.add(KeyRow(look, [self.more], fit="flow"), 2)
        for field in (*self.lines.values(), self.note):
            self.add(field, 4)
        self.add(KeyRow(look, [self.out], fit="flow"), 6)

    def _connect(self) -> None:
        self.name.committed.connect(lambda text: self._write("Paper", name=text.strip()))
        self.state.picked.connect(lambda word: self._write(f"Seen as {word}", state=PaperState(word)))
        self.note.committed.connect(lambda text: self._write("Note", note=text))
        for key, field in self.lines.items():
            field.committed.connect(lambda text, key=key: self._write("Paper: " + key, **{key: text.strip()}))
        self.more.clicked.connect(self._add_number)
        self.out.clicked.connect(self._take_out)

    @property
    def paper(self) -> Paper | None:
        """The open paper as the record has it, or None."""
        return paper_of(self.desk.record, self.shown)

    def open(self, shown: Shown) -> None:
        """This paper is shown."""
        self.shown = shown
        for field in (self.name, self.note, *self.lines.values()):
            field.let_go()
        self.quoted.clear()
        self.numbers = []
        self.show_paper()

    def show_paper(self) -> None:
        """Everything is as the record has it, with how each number stands below it."""
        paper = self.paper
        if paper is None:
            return
        self.head.say(paper.name or tr("paper without a name"), where=tr(paper.state.value))
        self.name.set_value(paper.name)
        self.state.set_held(paper.state.value)
        for key, field in self.lines.items():
            field.set_value(getattr(paper, key))
        self.note.set_value(paper.note)
        self._show_numbers(paper)

    def _show_numbers(self, paper: Paper) -> None:
        if len(self.numbers) != len(paper.quoted):
            self.quoted.clear()
            self.numbers = [QuotedForm(self.desk, self, n) for n in range(len(paper.quoted))]
            for form in self.numbers:
                self.quoted.add(form, 3)
        standings = papers_of(self.desk.judgement, paper.id)
        for n, (form, quoted) in enumerate(zip(self.numbers, paper.quoted, strict=True)):
            said = tr(standings[n].sentence) if n < len(standings) else ""
            form.show_quoted(quoted, said)

    def begin(self) -> None:
        """One writes what the paper is."""
        self.name.setFocus()

    def _write(self, label: str, **changes: Any) -> None:
        paper = self.paper
        if paper is not None:
            change_paper(self.desk, paper, label, **changes)

    def _add_number(self) -> None:
        paper = self.paper
        if paper is None:
            return
        places = [place.id for place in self.desk.profile.places]
        named = {quoted.place for quoted in paper.quoted}
        first = next((place for place in places if place not in named), "")
        self._write("Number on a paper", quoted=(*paper.quoted, Quoted(number="", place=first)))
        if self.numbers:
            self.numbers[-1].number.setFocus()

    def write_number(self, n: int, **changes: Any) -> None:
        """The ``n``-th number that the paper quotes has these fields changed."""
        paper = self.paper
        if paper is None or n >= len(paper.quoted):
            return
        new = paper.quoted[n].model_copy(update=changes)
        self._write("Number on a paper", quoted=(*paper.quoted[:n], new, *paper.quoted[n + 1 :]))

    def drop_number(self, n: int) -> None:
        """The ``n``-th number is no longer quoted."""
        paper = self.paper
        if paper is not None:
            self._write("Number taken out", quoted=(*paper.quoted[:n], *paper.quoted[n + 1 :]))

    def _take_out(self) -> None:
        if self.shown.paper:
            self.desk.do(drop_entry(Part.PAPERS, self.shown.paper, label="Paper taken out"))


class QuotedForm(Column):
    """One number as the paper writes it, the place it refers to, and how it stands to that place."""

    def __init__(self, desk: Desk, view: PaperView, n: int) -> None:
        super().__init__(desk.look, edge=0, top=0)
        look = desk.look
        self.number = LineField(look, tr("Number as written"), zero=True)
        places = [Option(place.id, place.name) for place in desk.profile.places]
        self.refers = ChoiceField(look, tr("It refers to"), [*places, Option(NO_PLACE, tr("it does not say"))])
        self.stands = Text(look, semibold=True)
        self.out = Key(look, tr("take this number out"))
        self.add(self.number, 0)
        self.add(self.refers, 2)
        self.add(self.stands, 2)
        self.add(KeyRow(look, [self.out], fit="flow"), 2)
        self.number.committed.connect(lambda text: view.write_number(n, number=text.strip()))
        self.refers.committed.connect(lambda key: view.write_number(n, place="" if key == NO_PLACE else key))
        self.out.clicked.connect(lambda: view.drop_number(n))

    def show_quoted(self, quoted: Quoted, stands: str) -> None:
        """The fields hold this number; ``stands`` says how it compares."""
        self.number.set_value(quoted.number)
        self.refers.set_value(quoted.place or NO_PLACE)
        self.stands.say(stands)
        self.stands.setVisible(bool(stands))
