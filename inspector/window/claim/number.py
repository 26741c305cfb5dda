"""A number as read at one place: typed, with how it was read."""

from inspector.profile.numbers import Place
from inspector.record.edits import Part
from inspector.record.reading import Reading, figures_of
from inspector.record.verbs import drop_entry, put_entry
from inspector.record.words import HowRead
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.text import Text


class NumberEntry(Column):
    """The place, what was read there, and from what."""

    def __init__(self, desk: Desk, place: Place) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk, self.place = desk, place
        self.field = LineField(desk.look, f"{place.name}: {place.where}", zero=True)
        self.how = ChoiceKeys(desk.look, [Option(h.value, tr(h.value)) for h in HowRead], held="kept", fit="flow")
        self.add(self.field)
        if place.how_to_read:
            self.add(Text(desk.look, place.how_to_read, ink="soft"), 1)
        self.add(self.how, 1)
        self.field.committed.connect(self._write)
        self.how.picked.connect(self._pick)

    @property
    def reading(self) -> Reading | None:
        """The reading of this place that the record has, or None."""
        return next((r for r in self.desk.record.readings if r.place == self.place.id), None)

    def show_reading(self) -> None:
        """The field shows what the record has."""
        reading = self.reading
        self.field.set_value(reading.typed() if reading else "")
        self.how.set_held(reading.how_read.value if reading else "")

    def _write(self, typed: str) -> None:
        old = self.reading
        if typed.strip() == (old.typed() if old else ""):
            return
        if not typed.strip() and old is not None:
            self.desk.do(drop_entry(Part.READINGS, old.id, label="Number taken out"))
            return
        try:
            figures = figures_of(typed)
        except ValueError as error:
            self.desk.told.emit(tr("The number was not kept: {why}.", why=str(error)))
            return
        self._put((old or self._new()).model_copy(update={"figures": figures}))

    def _pick(self, word: str) -> None:
        if self.reading is None:
            self.how.set_held("")
            self.desk.told.emit(tr("Type the number first; how it was read goes with it."))
        elif self.reading.how_read.value != word:
            self._put(self.reading.model_copy(update={"how_read": HowRead(word)}))

    def _new(self) -> Reading:
        return Reading(id=self.place.id, place=self.place.id, by=self.desk.here.by, at=self.desk.clock())

    def _put(self, reading: Reading) -> None:
        self.desk.do(put_entry(Part.READINGS, reading, label=self.place.name, joins=f"reading {self.place.id}"))
