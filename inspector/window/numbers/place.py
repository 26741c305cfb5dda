"""The open place: where it is, how to read it, the number figure by figure, what it can be, how it was read."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.record.edits import Part
from inspector.record.reading import Figure, Reading
from inspector.record.verbs import drop_entry, put_entry
from inspector.record.words import Clarity, NumberState
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.figures import FigureCells
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import ItemHead, Text
from inspector.window.numbers import entry as writing
from inspector.window.numbers.can_be import CanBe
from inspector.window.numbers.entry import Entry
from inspector.window.numbers.figure import FigurePanel
from inspector.window.numbers.how import HowItWas, WhatIsThere
from inspector.window.numbers.photographs import PlacePhotographs
from inspector.window.numbers.readings import (
    Shown,
    begun,
    cells_of,
    change_reading,
    free_id,
    places_of,
    reading_of,
    readings_at,
    which_words,
)

CAUTION = "Never abrade, etch or file the pad. Ask before you wipe it."
_GO = {"left": lambda e: e.at - 1, "right": lambda e: e.at + 1, "home": lambda e: 0, "end": lambda e: e.count}
_ACT = {"back": writing.back, "delete": writing.delete, "insert": writing.insert}


class PlaceView(Column):
    """One place; every figure is kept when it is written.

    ``onward`` asks for the next place, ``pad`` for keys to touch.
    """

    onward = Signal()
    pad = Signal(bool)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.shown, self.entry = Shown(), Entry()
        self.head = ItemHead(look)
        self.which = Text(look, ink="soft")
        self.how_to = Text(look)
        self.caution = Text(look, semibold=True)
        self.photographs = PlacePhotographs(desk)
        self.cells = FigureCells(look)
        self.panel = FigurePanel(look)
        self.there = WhatIsThere(desk)
        self.touch = Key(look, tr("keys to touch"), name=tr("Show figures and letters to touch"))
        self.touch_row = KeyRow(look, [self.touch], fit="flow")
        self.out = Key(look, tr("take this reading out"))
        self.can_be = CanBe(desk)
        self.how = HowItWas(desk)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.add(self.head)
        self.add(self.which, 1)
        self.add(self.how_to, 2)
        self.add(self.caution, 2)
        self.add(self.photographs.pane, 2)
        self.add(self.cells, 2)
        self.add(self.panel, 3)
        self.add(self.touch_row, 2)
        self.add(self.there, 3)
        self.add(self.can_be, 6)
        self.add(self.how, 6)
        self.add(self.photographs, 4)
        self.add(KeyRow(self.look, [self.out], fit="flow"), 6)

    def _connect(self) -> None:
        cells, panel = self.cells, self.panel
        cells.chosen.connect(self.choose)
        cells.typed.connect(self.type)
        cells.commanded.connect(self.command)
        cells.pasted.connect(self.paste)
        cells.touched.connect(lambda: self.pad.emit(True))
        panel.clarity.connect(self._clarity)
        panel.could_be.connect(self._could_be)
        panel.more.connect(self._more)
        self.touch.clicked.connect(lambda: self.pad.emit(True))
        self.out.clicked.connect(self._take_out)

    @property
    def reading(self) -> Reading | None:
        """The open reading as the record has it, or None."""
        return reading_of(self.desk.record, self.shown)

    # what is shown

    def open(self, shown: Shown) -> None:
        """This place and reading are shown, at the first figure that is in doubt."""
        figures = _figures(reading_of(self.desk.record, shown))
        self.shown, self.entry = shown, Entry(figures, _first_doubt(figures))
        self.how.let_go()
        self.show_reading()

    def becomes(self, before: Shown, after: Shown) -> bool:
        """Whether the open place is still open, only that its reading was begun just now, or taken back."""
        same = bool(after.place) and before.place == after.place and not (before.reading and after.reading)
        if same:
            self.shown = after
        return same

    def show_reading(self) -> None:
        """The record's figures and everything that follows from them are shown."""
        reading = self.reading
        figures = _figures(reading)
        if figures != self.entry.figures:
            self.entry = writing.go(Entry(figures), self.entry.at)
        self._show_head(reading)
        self.out.setVisible(reading is not None)
        self.there.show_reading(self.shown, reading)
        self.can_be.show_reading(reading)
        self.how.show_reading(self.shown, reading)
        self.photographs.show_place(self.shown.place)
        self._show_cells()

    def _show_head(self, reading: Reading | None) -> None:
        desk, place = self.desk, self.desk.profile.place_by_id.get(self.shown.place)
        among = places_of(desk.profile, desk.record)
        at = tr("place {n} of {all}", n=among.index(self.shown.place) + 1, all=len(among))
        self.head.say(place.name if place else self.shown.place, where=place.where if place else "", aside=at)
        how = place.how_to_read if place else ""
        self.how_to.say(how, lead=tr("How to read it.") if how else "")
        self.how_to.setVisible(bool(how))
        self.caution.say((place.caution if place else "") or tr(CAUTION))
        beside = readings_at(desk.record, self.shown.place)
        self.which.setVisible(reading is not None and len(beside) > 1)
        if reading is not None:
            self.which.say(which_words(desk, reading, beside))

    def _show_cells(self) -> None:
        self.cells.show_cells(cells_of(self.entry.figures), self.entry.at)
        self.panel.show_figure(self.entry.at + 1, self.entry.figure, self.entry.joins)
        state = self.reading.state if self.reading else NumberState.READ
        self.cells.setVisible(bool(self.entry.figures) or state is NumberState.READ)
        self.panel.setVisible(self.cells.isVisibleTo(self))
        self.touch_row.setVisible(self.cells.isVisibleTo(self) and self.entry.figure is None)

    # what the hands do

    def begin(self) -> None:
        """Keys write here."""
        if self.cells.isVisibleTo(self):
            self.cells.focus()

    def choose(self, at: int) -> None:
        """One writes at this figure."""
        self.desk.here.end_visit()
        self._take(writing.go(self.entry, at))
        self.cells.focus()

    def type(self, text: str) -> None:
        """One character was typed or touched."""
        self._take(writing.typed(self.entry, text))

    def command(self, word: str) -> None:
        """One moved, or took something out or put it in."""
        if word == "next":
            self.onward.emit()
        elif word in _GO:
            self.desk.here.end_visit()
            self._take(writing.go(self.entry, _GO[word](self.entry)))
        else:
            self._take(_ACT[word](self.entry))

    def paste(self, text: str) -> None:
        """The whole number is this, or a sentence says why not."""
        try:
            entry = writing.pasted(text)
        except ValueError as error:
            self.desk.told.emit(tr("The number was not kept: {why}.", why=str(error)))
            return
        self.desk.here.end_visit()
        self._take(entry)

    def _clarity(self, clarity: Clarity) -> None:
        figure = self.entry.figure
        new = writing.clearer(figure, clarity) if figure else None
        if new is None:
            self.panel.show_figure(self.entry.at + 1, figure, False)
            self.desk.told.emit(tr("Type or touch first what figure {n} could be.", n=self.entry.at + 1))
        else:
            self._take(writing.changed(self.entry, new))

    def _could_be(self, text: str) -> None:
        figure = self.entry.figure
        if figure is None:
            return
        if text not in figure.could_be:
            figure = writing.with_other(figure, text)
        elif len(figure.could_be) > 1:
            figure = writing.without(figure, text)
        self._take(writing.changed(self.entry, figure))

    def _more(self) -> None:
        self._take(writing.joining(writing.go(self.entry, self.entry.at)))
        self.pad.emit(True)
        self.cells.focus()

    def _take(self, entry: Entry) -> None:
        """The entry is what stands, once the record has its figures."""
        before, self.entry = self.entry, entry
        if entry.figures != before.figures and not self._keep(entry.figures):
            self.entry = before
        self._show_cells()

    def _keep(self, figures: tuple[Figure, ...]) -> bool:
        old, name = self.reading, self.head.accessibleName()
        if old is not None and not figures and _bare(old) and len(readings_at(self.desk.record, old.place)) == 1:
            return self.desk.do(drop_entry(Part.READINGS, old.id, label="Number taken out"))
        key = old.id if old else free_id((r.id for r in self.desk.record.readings), self.shown.place)
        changes = {"figures": figures, "state": NumberState.READ}
        return bool(change_reading(self.desk, self.shown, name, joins=f"figures {key}", **changes))

    def another(self) -> None:
        """A second reading of the place stands beside the first, with nothing in it yet."""
        self.desk.here.end_visit()
        reading = begun(self.desk, self.shown.place)
        self.desk.do(put_entry(Part.READINGS, reading, label=tr("Another reading")))

    def _take_out(self) -> None:
        reading = self.reading
        if reading is not None:
            self.desk.do(drop_entry(Part.READINGS, reading.id, label="Reading taken out"))


def _figures(reading: Reading | None) -> tuple[Figure, ...]:
    return reading.figures if reading else ()


def _first_doubt(figures: tuple[Figure, ...]) -> int:
    read = [figures[n] for n in writing.places(figures)]
    return next((n for n, figure in enumerate(read) if figure.clarity is not Clarity.CLEAR), 0)


def _bare(reading: Reading) -> bool:
    """Whether nothing but figures was entered."""
    return not (reading.stamping or reading.note or reading.cleaned or reading.leave_of)
