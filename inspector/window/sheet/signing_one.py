"""One person signs: what is said by signing stands above, the pad takes the rest of the window."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.record.claim import Person
from inspector.record.signing import REFUSED, statement_of
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.text import Text
from inspector.window.reading import step_focus
from inspector.window.sheet.signing_pad import Pad

EDGE = 6.0


class SignOne(QDialog):
    """How it ended: ``signed(strokes, statement)``, ``named(name, statement)`` for a name typed in the place of a drawn
    one, ``declined(statement)`` or ``taken_back``; closing it tells nothing.
    """

    signed = Signal(object, str)
    named = Signal(str, str)
    declined = Signal(str)
    taken_back = Signal()

    def __init__(self, look: Look, person: Person, had: bool, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.look = look
        self.statement = tr(statement_of(person.role))
        who = ", ".join(part for part in (person.name, tr(person.role.value)) if part)
        self.setWindowTitle(tr("Sign: {who}", who=who))
        self.setPalette(palette(look.inks))
        self.pad = Pad(look, who)
        self.typed = LineField(look, tr("Or type the name instead of drawing it"))
        self.typed.set_label(self.typed.label.words, name=tr("Name of {who}, typed instead of drawn", who=who))
        self.again = Key(look, tr("clear"), name=tr("Clear what is drawn"))
        self.sign = Key(look, tr("this is my signature"), strong=True)
        self.decline = Key(look, tr("asked, did not sign"), name=tr("Note that this person was asked and did not sign"))
        self.back = Key(look, tr("take it back"), name=tr("Take the signature or the refusal back"), parent=self)
        self.back.hide()  # until it stands among the others
        self.leave = Key(look, tr("not now"))
        self._lay_out(who, had)
        self._connect()
        self.resize(window.size())

    def _lay_out(self, who: str, had: bool) -> None:
        look = self.look
        above, below = Column(look, foot=2), Column(look, top=2, foot=4)
        above.add(Text(look, who, step="head"))
        above.add(Text(look, self.statement), 2)
        above.add(Text(look, tr("Neither a drawn signature nor a typed name shows whose it is."), ink="soft"), 1)
        keys = [self.sign, self.again, self.decline, *([self.back] if had else []), self.leave]
        below.add(self.typed)
        below.add(KeyRow(look, keys, fit="flow"), 3)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(above)
        middle = QVBoxLayout()
        middle.setContentsMargins(look.px(EDGE), 0, look.px(EDGE), 0)
        middle.addWidget(self.pad)
        box.addLayout(middle, 1)
        box.addWidget(below)

    def _connect(self) -> None:
        self.again.clicked.connect(self.pad.clear)
        self.pad.drawn.connect(self._show_pad)
        self.typed.edit.textChanged.connect(self._show_pad)
        self.typed.edit.returnPressed.connect(self.sign.setFocus)
        self.sign.clicked.connect(self._sign)
        self.decline.clicked.connect(self._decline)
        self.back.clicked.connect(self._take_back)
        self.leave.clicked.connect(self.close)
        self.look.changed.connect(self._dress)
        self._show_pad()

    def _dress(self) -> None:
        self.setPalette(palette(self.look.inks))

    def _show_pad(self, _: str = "") -> None:
        drawn, typed = bool(self.pad.strokes()), bool(self.typed.value().strip())
        nothing = tr("Nothing is drawn and no name is typed yet. Do one of them first.")
        self.sign.turn_off("" if drawn or typed else nothing)
        self.again.turn_off("" if drawn else tr("Nothing is drawn yet."))
        self.sign.say(tr("this typed name is mine") if typed and not drawn else tr("this is my signature"))
        if drawn and typed:
            self.typed.say(tr("What is drawn counts. Clear it to sign with the typed name."))
        else:
            self.typed.say(tr("The sheet says of it: name typed, not drawn.") if typed else "")

    def _sign(self) -> None:
        if self.pad.strokes():
            self.signed.emit(self.pad.strokes(), self.statement)
        else:
            self.named.emit(self.typed.value(), self.statement)
        self.close()

    def _decline(self) -> None:
        self.declined.emit(tr(REFUSED))
        self.close()

    def _take_back(self) -> None:
        self.taken_back.emit()
        self.close()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)
