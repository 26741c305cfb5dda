"""The drawer in which an item is measured: from where to where, up to three readings, and what they say."""

from functools import partial

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from inspector.judgement.lengths import NotALength, instrument_of, instruments_for, own_instrument, typed_length
from inspector.judgement.measures import SCREEN
from inspector.profile.items import Item, Measure
from inspector.profile.words import Unit
from inspector.record import verbs
from inspector.record.finding import Finding, Measured
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Option
from inspector.window.look.look import Look
from inspector.window.look.menus import MenuKey
from inspector.window.look.text import Text
from inspector.window.walk.fromto import FromTo
from inspector.window.walk.lengthpad import Beside, LengthPad
from inspector.window.walk.outcome import Outcome

READINGS = 3
READING = 30.0  # the width of one, in millimetres
OWN = "own"
LENGTHS = (Unit.MM, Unit.INCH)
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
Place = tuple[str, str, str, str]  # record, item, person and measure


class ReadingField(LineField):
    """One reading, told when it is left or at Enter: half a number is not yet one."""

    def __init__(self, look: Look, label: str) -> None:
        super().__init__(look, label, zero=True)
        self.edit.setInputMethodHints(Qt.InputMethodHint.ImhPreferNumbers)
        self.edit.installEventFilter(self)

    def typed(self) -> None:
        """Nothing is told while it is being written."""

    def sizeHint(self) -> QSize:
        """Three stand beside one another."""
        return QSize(self.look.grown(READING), super().sizeHint().height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter is for this field, not for the page."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and event.key() in _ENTER:
            event.accept()
            return True
        return False


class Measuring(Column):
    """The measures of the open item, one shown at a time. It is made when it is first opened."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        self.measure: Measure | None = None
        self._made = False
        self._at = 0
        self._instruments: dict[Unit, str] = {}  # the last one used, for lengths and for each other unit
        self._units: dict[Unit, Unit] = {}
        self._wrong: dict[tuple[Place, int], str] = {}
        self._shown: Place | None = None

    def _make(self) -> None:
        look = self.look
        self._made = True
        self.which = ChoiceKeys(look, held="kept", fit="fill")
        self.name = Text(look, semibold=True)
        self.drawing = FromTo(look)
        self.screening = Text(look, tr(SCREEN))
        self.units = ChoiceKeys(look, [Option(u.value, u.value) for u in LENGTHS], held="kept")
        self.instrument = MenuKey(look, tr("which instrument?"), held="kept")
        self.instrument.prefix = tr("Instrument")
        self.own = LineField(look, "")
        self.fields = [ReadingField(look, "") for _ in range(READINGS)]
        self.pad = LengthPad(look)
        self.outcome = Outcome(self.desk)
        for widget, gap in (
            (self.which, 2), (self.name, 2), (self.drawing, 2), (self.screening, 2),
            (KeyRow(look, [self.units, self.instrument], fit="fill"), 2), (self.own, 2),
            (KeyRow(look, self.fields, fit="fill"), 2), (Beside(look, self.pad, self.outcome), 2),
        ):  # fmt: skip
            self.add(widget, gap)
        self._connect()

    def _connect(self) -> None:
        self.which.picked.connect(self._pick_measure)
        self.units.picked.connect(self._pick_unit)
        self.instrument.picked.connect(self._pick_instrument)
        self.own.committed.connect(self._own_said)
        self.pad.typed.connect(self._type)
        self.pad.back.connect(self._back)
        self.pad.onward.connect(self.go_on)
        for n, field in enumerate(self.fields):
            field.committed.connect(partial(self._read, n))
            field.edit.returnPressed.connect(self.go_on)
            field.edit.textEdited.connect(lambda _, n=n: self._mend(n))
            field.edit.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The keys write where the focus was last."""
        if event.type() == QEvent.Type.FocusIn:
            self._at = next((n for n, field in enumerate(self.fields) if field.edit is watched), self._at)
        return False

    # showing

    def show_item(self, item: Item) -> None:
        """The measures of this item are shown, the first of them open."""
        if not self._made:
            self._make()
        self.which.set_options([Option(m.id, m.name) for m in item.measures])
        self.which.setVisible(len(item.measures) > 1)
        self._show(item.measures[0])

    def _pick_measure(self, measure: str) -> None:
        item = self.desk.profile.item_by_id[self.desk.item]
        self._show(next(m for m in item.measures if m.id == measure))
        self.begin()

    def _show(self, measure: Measure) -> None:
        self.measure, self._shown = measure, None
        self.which.set_held(measure.id)
        self.name.say(measure.name)
        self.name.setVisible(self.which.isHidden())
        self.drawing.say(measure.start, measure.end)
        self.drawing.setVisible(bool(measure.start or measure.end))
        self.screening.setVisible(measure.screen_only)
        self.units.setVisible(measure.unit in LENGTHS)
        self.outcome.put_away()
        self.show_finding(self.desk.finding)

    def show_finding(self, found: Finding | None) -> None:
        """The readings are those of the finding; what was wrongly written stands where it was written."""
        if self.measure is None or not self._made or self.isHidden():
            return
        taken = self._taken(found)
        place = self._place()
        self._show_how(taken, self.measure)
        for n, field in enumerate(self.fields):
            if place != self._shown:
                field.let_go()
            field.set_value(taken.readings[n] if n < len(taken.readings) else "")
            if place != self._shown and (place, n) in self._wrong:
                field.show_value(self._wrong[place, n])
        self._shown = place
        self._say_wrong()
        self.outcome.show_readings(self.measure, taken, found)

    def _place(self) -> Place:
        return self.desk.record.id, self.desk.item, self.desk.here.by, self.measure.id if self.measure else ""

    def _taken(self, found: Finding | None) -> Measured:
        """What is kept of this measure; where nothing is, what the next reading would be kept with."""
        assert self.measure is not None
        kept = next((m for m in (found.measured if found else ()) if m.measure == self.measure.id), None)
        unit = self._units.get(self.measure.unit, self.measure.unit)
        instrument = self._instruments.get(_kind(unit), "")
        new = Measured(measure=self.measure.id, unit=unit.value, instrument=instrument)
        return kept or new

    def _show_how(self, taken: Measured, measure: Measure) -> None:
        unit = next((u for u in Unit if u.value == taken.unit), measure.unit)
        self.units.set_held(unit.value)
        options = [Option(i.id, tr(i.name)) for i in instruments_for(unit)]
        known = {option.id for option in options}
        if taken.instrument and taken.instrument not in known:
            own = instrument_of(taken.instrument, unit)
            options.append(Option(taken.instrument, tr(own.name) if own else taken.instrument))
        self.instrument.set_options([*options, Option(OWN, tr("one of your own, ± what you know"))])
        self.instrument.set_picked(taken.instrument)
        self.own.hide()
        word = tr(unit.value)
        for n, field in enumerate(self.fields, 1):
            field.set_label(tr("Reading {n}, {unit}", n=n, unit=word))

    def begin(self) -> None:
        """One writes in the first reading that is empty."""
        self._at = next((n for n, field in enumerate(self.fields) if not field.value()), 0)
        self.fields[self._at].edit.setFocus(Qt.FocusReason.OtherFocusReason)

    # writing

    def _type(self, text: str) -> None:
        edit = self.fields[self._at].edit
        edit.setFocus(Qt.FocusReason.OtherFocusReason)
        edit.insert(text)
        self._mend(self._at)

    def _back(self) -> None:
        edit = self.fields[self._at].edit
        edit.setFocus(Qt.FocusReason.OtherFocusReason)
        edit.backspace()
        self._mend(self._at)

    def go_on(self) -> None:
        """The reading is kept and the next one begun; after the last the keyboard is the page's again."""
        field = self.fields[self._at]
        written = field.value().strip()
        field.commit()
        if (self._place(), self._at) in self._wrong:
            return
        if written and self._at + 1 < READINGS:
            self.fields[self._at + 1].edit.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            field.edit.clearFocus()

    def _mend(self, n: int) -> None:
        if self._wrong.pop((self._place(), n), None) is not None:
            self._say_wrong()

    def _read(self, n: int, text: str) -> None:
        """The reading is kept, or stays where it was written with one sentence."""
        self._wrong.pop((self._place(), n), None)
        if self._refusal(text) or not self._keep():
            self._wrong[self._place(), n] = text
        self._say_wrong()

    def _refusal(self, text: str) -> str:
        assert self.measure is not None
        try:
            return "" if not text.strip() else self._checked(text)
        except NotALength as wrong:
            return tr(wrong.said)

    def _checked(self, text: str) -> str:
        assert self.measure is not None
        typed = typed_length(text, self._unit())
        if typed.unit is not self.measure.unit and typed.unit not in LENGTHS:
            return tr("This measure is told in {unit}.", unit=tr(self.measure.unit.value))
        if typed.unit in LENGTHS and self.measure.unit not in LENGTHS:
            return tr("This measure is told in {unit}, not in a length.", unit=tr(self.measure.unit.value))
        return ""

    def _unit(self) -> Unit:
        assert self.measure is not None
        taken = self._taken(self.desk.finding).unit
        return next((u for u in Unit if u.value == taken), self.measure.unit)

    def _say_wrong(self) -> None:
        place = self._place()
        said = []
        for n, field in enumerate(self.fields):
            text = self._wrong.get((place, n), "")
            sentence = (self._refusal(text) or tr("Not kept yet. Leave the field to try again.")) if text else ""
            field.control.setAccessibleDescription(sentence)
            said += [sentence] if sentence else []
        self.outcome.refuse(" ".join(dict.fromkeys(said)))

    def _readings(self) -> tuple[str, ...]:
        """What stands in the fields and is a length, each in its place."""
        texts = [field.value().strip() for field in self.fields]
        right = ["" if self._refusal(text) else text for text in texts]
        while right and not right[-1]:
            right.pop()
        return tuple(right)

    def _keep(self, **changes: str) -> bool:
        taken = self._taken(self.desk.finding)
        new = taken.model_copy(update={"readings": self._readings(), **changes})
        if new == taken or not (new.readings or taken.readings):
            return True
        return self.desk.do(verbs.set_measured(*self.desk.at(), new))

    # how it is measured

    def _pick_unit(self, unit: str) -> None:
        assert self.measure is not None
        self._units[self.measure.unit] = Unit(unit)
        self._change(unit=unit)

    def _pick_instrument(self, name: str) -> None:
        if name == OWN:
            self.own.set_label(tr("It may be wrong by at most, ± {unit}", unit=tr(self._unit().value)))
            self.own.say("")
            self.own.show()
            self.own.edit.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self._use(name)

    def _own_said(self, text: str) -> None:
        if not text.strip():
            return
        try:
            name = own_instrument(text, self._unit())
        except NotALength as wrong:
            self.own.say(tr(wrong.said))
            return
        self.own.set_value("")
        self._use(name)

    def _use(self, name: str) -> None:
        self._instruments[_kind(self._unit())] = name
        self._change(instrument=name)

    def _change(self, **how: str) -> None:
        """What is kept is kept with this unit or instrument; without a reading the next one will be."""
        focus = QApplication.focusWidget()
        self._keep(**how)
        self.show_finding(self.desk.finding)
        if focus is None:
            self.begin()


def _kind(unit: Unit) -> Unit:
    """Lengths are measured with the same things, whatever they are told in."""
    return Unit.MM if unit in LENGTHS else unit
