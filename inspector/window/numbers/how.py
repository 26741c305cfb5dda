"""How a number was read: from what, cleaned with whose leave, what stood there where no number did, and a note."""

from typing import Any

from PySide6.QtWidgets import QWidget

from inspector.record.reading import Reading
from inspector.record.words import HowRead, NumberState
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField, TextField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.text import SectionHead, Text
from inspector.window.numbers.readings import Shown, change_reading

STATES = tuple(state for state in NumberState if state is not NumberState.READ)
SAID = tuple(how for how in HowRead if how is not HowRead.NOT_SAID)
FOUND, CLEANED = "found", "cleaned"


def _how_options() -> list[Option]:
    short = {
        HowRead.METAL: Option(HowRead.METAL.value, tr("from metal"), second=tr("by me")),
        HowRead.PHOTOGRAPH: Option(HowRead.PHOTOGRAPH.value, tr("photograph")),
    }
    return [short.get(how) or Option(how.value, tr(how.value)) for how in SAID]


class WhatIsThere(Column):
    """Keys for a place where no number can be read; each is an answer, not a gap."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.shown = desk, Shown()
        self.states = ChoiceKeys(desk.look, [Option(s.value, tr(s.value)) for s in STATES], held="kept", may_clear=True)
        self.add(Text(desk.look, tr("Where there is no number to read"), semibold=True), 0)
        self.add(self.states, 2)
        self.states.changed.connect(self._pick)

    def show_reading(self, shown: Shown, reading: Reading | None) -> None:
        """The keys are there while no figure is written."""
        self.shown = shown
        self.setVisible(reading is None or not reading.figures)
        self.states.set_held(reading.state.value if reading else "")

    def _pick(self, held: list[str]) -> None:
        state = NumberState(held[0]) if held else NumberState.READ
        change_reading(self.desk, self.shown, state.value.capitalize(), state=state)


class HowItWas(Column):
    """From what the number was read, whether it was wiped first, and a note."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.shown = desk, Shown()
        look = desk.look
        self.how = ChoiceKeys(look, _how_options(), held="kept")
        self.leave = LineField(look, tr("Wiped or brushed first? With whose leave"))
        self.cleaned = ChoiceKeys(look, _cleaned_options(), held="kept")
        self.note = TextField(look, tr("Note: light, paint, what made it hard to read"), lines=2)
        self.unsaid = Text(look, tr("Say it: until then the number speaks for no year, nor as read from the metal."))
        self.add(SectionHead(look, tr("How it was read")))
        for widget, gap in ((self.unsaid, 2), (self.how, 2), (self.leave, 4), (self.cleaned, 2), (self.note, 4)):
            self.add(widget, gap)
        self.how.picked.connect(lambda word: self.say_how(HowRead(word)))
        self.cleaned.picked.connect(self._clean)
        self.leave.committed.connect(self._leave)
        self.note.committed.connect(lambda text: self._write("Note", note=text))

    def let_go(self) -> None:
        """Another reading is shown next, whatever is being written."""
        self.leave.let_go()
        self.note.let_go()

    def show_reading(self, shown: Shown, reading: Reading | None) -> None:
        """The section says what the record has; there is nothing to say before something was entered."""
        self.shown = shown
        self.setVisible(reading is not None)
        if reading is None:
            return
        said = reading.how_read is not HowRead.NOT_SAID
        self.unsaid.setVisible(not said)
        self.how.set_held(reading.how_read.value if said else "")
        self.leave.set_value(reading.leave_of)
        self.note.set_value(reading.note)
        self.cleaned.set_held(CLEANED if reading.cleaned else FOUND)
        why = "" if reading.leave_of.strip() else tr("Write first with whose leave it was cleaned.")
        self.cleaned.key(CLEANED).turn_off(why)

    def say_how(self, how: HowRead) -> None:
        """The open reading was read so."""
        self._write("How it was read", how_read=how)

    def _clean(self, option: str) -> None:
        self._write("Cleaned" if option == CLEANED else "As found", cleaned=option == CLEANED)

    def _leave(self, text: str) -> None:
        reading = next((r for r in self.desk.record.readings if r.id == self.shown.reading), None)
        if reading is not None and reading.cleaned and not text.strip():
            self.leave.let_go()
            self.leave.set_value(reading.leave_of)
            why = tr("Cleaned is kept only with whose leave. Choose “read as found” first to take the name out.")
            self.desk.told.emit(why)
            return
        self._write("With whose leave", leave_of=text.strip())

    def _write(self, label: str, **changes: Any) -> None:
        change_reading(self.desk, self.shown, label, **changes)


def _cleaned_options() -> list[Option]:
    return [Option(FOUND, tr("read as found")), Option(CLEANED, tr("wiped or brushed"))]
