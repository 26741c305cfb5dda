"""Which thread it can be, from the diameter over the crests and the pitch."""

from fractions import Fraction

from inspector.judgement.lengths import MM_PER_INCH, NotALength, Typed, in_unit, typed_length
from inspector.judgement.thread_tables import TABLES
from inspector.judgement.threads import ThreadAnswer, from_tpi, identify
from inspector.profile.items import Item
from inspector.profile.words import Unit
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Option
from inspector.window.walk.into_note import Said

CALLIPER, LEAF = Fraction(5, 100), Fraction(5, 100)  # mm, how well each is read; common practice, no source
SIXTY_FOURTH = MM_PER_INCH / 64  # what a diameter told as a fraction is read to


class ThreadTool(Column):
    """Two figures in, every thread of the tables that they allow out; near twins stay together."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        look = desk.look
        self.diameter = LineField(look, tr("Diameter over the crests, mm or in"), zero=True)
        self.pitch = LineField(look, "", zero=True)
        units = [Option(Unit.TPI.value, tr("threads per inch")), Option(Unit.MM.value, tr("pitch in mm"))]
        self.how = ChoiceKeys(look, units, held="kept")
        self.said = Said(desk)
        for widget in (self.how, KeyRow(look, [self.diameter, self.pitch], fit="fill"), self.said):
            self.add(widget, 2)
        self.how.picked.connect(self._pick)
        for field in (self.diameter, self.pitch):
            field.committed.connect(lambda _: self._answer())
        self._pick(Unit.TPI.value)

    def show_item(self, item: Item) -> None:
        """Another item has another thread."""
        for field in (self.diameter, self.pitch):
            field.let_go()
            field.set_value("")
        self._answer()

    def _pick(self, unit: str) -> None:
        self.how.set_held(unit)
        counted = unit == Unit.TPI.value
        self.pitch.set_label(tr("Threads on one inch") if counted else tr("Pitch by the gauge, mm"))
        self._answer()

    def _answer(self) -> None:
        diameter, pitch = self._typed(self.diameter, Unit.MM), self._typed(self.pitch, Unit(self.how.held()[0]))
        if diameter is None or pitch is None:
            self.said.say("")
            return
        answer = self._identified(diameter, pitch)
        if answer is not None:
            note = " ".join((tr("Thread:"), tr(answer.sentence), tr(answer.reasons[0])))
            self.said.say(
                tr(answer.sentence), map(tr, answer.reasons), [tr(TABLES)], note if answer.threads else "",
            )  # fmt: skip

    def _typed(self, field: LineField, unit: Unit) -> Typed | None:
        field.say("")
        if not field.value().strip():
            return None
        try:
            return typed_length(field.value(), unit)
        except NotALength as wrong:
            field.say(tr(wrong.said))
            return None

    def _identified(self, diameter: Typed, pitch: Typed) -> ThreadAnswer | None:
        step = SIXTY_FOURTH if diameter.fraction else in_unit(diameter.step, diameter.unit, Unit.MM)
        try:
            if pitch.unit is Unit.TPI:
                each, error = from_tpi(pitch.value)
            else:
                each, error = in_unit(pitch.value, pitch.unit, Unit.MM), LEAF
        except ValueError:
            self.pitch.say(tr("Count more than half a thread."))
            self.said.say("")
            return None
        wide = in_unit(diameter.value, diameter.unit, Unit.MM)
        return identify(wide, each, diameter_error=max(CALLIPER, step / 2), pitch_error=error)
