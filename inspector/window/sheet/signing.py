"""Signing and sealing: who signs and the seal that freezes the version, beside them the seller's replies."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.record.claim import Person
from inspector.record.edits import Step
from inspector.record.model import Record
from inspector.record.money import Version
from inspector.record.refusing import EditRefused
from inspector.record.signing import (
    Strokes,
    blocked,
    of_version,
    outdated,
    refuse,
    sign,
    sign_by_name,
    standing,
    who_signs,
    withdraw,
)
from inspector.record.versions import keep_version, next_version, stands_as_sealed
from inspector.sealing import Paper
from inspector.sheet.words import moment
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.look.columns import Column, Columns
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.reading import step_focus
from inspector.window.sheet.signing_one import SignOne
from inspector.window.sheet.signing_replies import Replies
from inspector.window.sheet.signing_seal import Sealer

SIDE_MM = 110.0  # of the column in which one signs and seals


class Signing(QDialog):
    """Everything that is signed and sealed of the open machine; ``sealed`` tells that there is a new version."""

    sealed = Signal()

    def __init__(self, desk: Desk, paper: Paper, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Sign and seal"))
        self.desk, self._window, look = desk, window, desk.look
        self.setPalette(palette(look.inks))
        self.head = Text(look, step="head")
        self.why = Text(look, semibold=True)
        self.to_claim = Key(look, tr("to the interests"), name=tr("To the interests, under People on the page Claim"))
        self.people = Column(look, edge=0, top=0)
        self.replies = Replies(desk)
        self.sealer = Sealer(desk, paper)
        self.leave = Key(look, tr("back to the sheet"))
        self.one: SignOne | None = None
        self._lay_out()
        self._connect()
        self.show_record()
        self.resize(window.size())

    def _lay_out(self) -> None:
        look = self.desk.look
        said, signed = Column(look), Column(look)
        said.add(SectionHead(look, tr("The seller’s reply")))
        said.add(self.replies, 1)
        for widget, gap in (
            (self.head, 0), (self.why, 2), (self.to_claim, 2), (SectionHead(look, tr("Who signs")), 4),
            (self.people, 0), (SectionHead(look, tr("Seal")), 5), (self.sealer, 2),
            (KeyRow(look, [self.leave], fit="flow"), 5),
        ):  # fmt: skip
            signed.add(widget, gap)
        self.columns = Columns(look, [(signed, SIDE_MM), (said, 0)])
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self.columns)

    def _connect(self) -> None:
        self.to_claim.clicked.connect(self._to_claim)
        self.leave.clicked.connect(self.close)
        self.sealer.made.connect(self._keep)
        self.desk.changed.connect(self.show_record)
        self.desk.opened.connect(self.close)
        self.desk.look.changed.connect(self._dress)

    def _dress(self) -> None:
        self.setPalette(palette(self.desk.look.inks))

    # showing

    def show_record(self, _: object = None) -> None:
        """What is signed, by whom, and what hinders it."""
        if self.desk.session is None:
            return
        record = self.desk.record
        done, why = stands_as_sealed(record), blocked(record)
        if done is None:
            self.head.say(tr("Sign and seal version {number}", number=next_version(record)))
        else:
            self.head.say(tr("Version {number} is sealed, and nothing on it was changed since", number=done.number))
        self.why.say(tr(why) if why else "")
        self.why.setVisible(why is not None)
        self.to_claim.setVisible(why is not None)
        self.replies.show_findings()
        self._show_people(tr(why) if why else "")
        self.sealer.show_record(tr(why) if why else "")

    def _show_people(self, why: str) -> None:
        record = self.desk.record
        done, signed, old = stands_as_sealed(record), standing(record), outdated(record)
        if done is not None:
            signed = of_version(record, done.number)
        self.people.clear()
        for person in who_signs(record):
            name = person.name or tr("not named")
            who, state = f"{name}, {tr(person.role.value)}", _state(person, signed, old)
            row = Row(self.desk.look, who, second=state, strong=True)
            row.turn_off(why)
            row.clicked.connect(partial(self._open, person))
            self.people.add(row, 0)

    # signing

    def _open(self, person: Person, _: bool = False) -> None:
        """The pad of this person is open."""
        keep_typing()
        had = any(s.person == person.id and s.version == next_version(self.desk.record) for s in self._all())
        self.one = one = SignOne(self.desk.look, person, had, self)
        one.signed.connect(lambda strokes, said: self._sign(person, strokes, said))
        one.named.connect(lambda name, said: self._sign_by_name(person, name, said))
        one.declined.connect(lambda said: self._refuse(person, said))
        one.taken_back.connect(lambda: self._withdraw(person))
        one.open()

    def _all(self) -> tuple:
        return self.desk.record.signatures

    def _sign(self, person: Person, strokes: Strokes, said: str) -> None:
        self._put(person, lambda: sign(self.desk.record, person.id, strokes, said, self.desk.clock()))

    def _sign_by_name(self, person: Person, name: str, said: str) -> None:
        self._put(person, lambda: sign_by_name(self.desk.record, person.id, name, said, self.desk.clock()))

    def _put(self, person: Person, signing: Callable[[], Step]) -> None:
        try:
            step = signing()
        except EditRefused as refused:
            self.sealer.say(tr(refused.sentence))
            return
        self._do(person, step)

    def _refuse(self, person: Person, said: str) -> None:
        self._do(person, refuse(self.desk.record, person.id, said, self.desk.clock()))

    def _withdraw(self, person: Person) -> None:
        step = withdraw(self.desk.record, person.id)
        if step is not None:
            self._do(person, step)

    def _do(self, person: Person, step: Step) -> None:
        """It is kept, and the keyboard is where it was: at the row of this person."""
        self.desk.do(step)
        row = [one.id for one in who_signs(self.desk.record)].index(person.id)
        self.people.widgets()[row].setFocus()

    def _keep(self, version: Version, record: Record) -> None:
        """The version is the machine's, unless something was changed while it was being sealed."""
        if self.desk.session is None or self.desk.record != record:
            self.sealer.say(tr("Something was changed while it was being sealed. Seal it again."))
        elif self.desk.do(keep_version(version)):
            self.sealed.emit()
            self.close()

    def _to_claim(self) -> None:
        """The page Claim is open at the interests of the inspector."""
        self.close()
        self._window.activateWindow()
        self.desk.wanted.emit("claim")
        page = getattr(self._window, "pages", {}).get("claim")
        silent = [p.id for p in who_signs(self.desk.record) if not p.interest.strip()]
        form = page.people.forms.get(silent[0]) if page is not None and silent else None
        if form is not None:
            form.fields["interest"].setFocus()

    def reject(self) -> None:
        """It is not left while the version is being sealed: what comes of that is told here."""
        if not self.sealer.busy:
            super().reject()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)


def _state(person: Person, signed: dict, old: tuple[str, ...]) -> str:
    one = signed.get(person.id)
    if one is None:
        return tr("signed before something was changed: sign again") if person.id in old else tr("not yet signed")
    if one.refused:
        return tr("asked, did not sign, {when}", when=moment(one.at))
    if one.typed:
        return tr("name typed, not drawn, {when}", when=moment(one.at))
    return tr("signed, {when}", when=moment(one.at))
