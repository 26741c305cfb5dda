"""The seal key of this computer: its fingerprint, its passphrase set, changed or taken away, and a new one made."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QLineEdit, QVBoxLayout, QWidget

from inspector.sheet.keys import (
    KeyTrouble,
    WrongPassphrase,
    change_passphrase,
    fingerprint_of,
    grouped,
    key_path,
    key_state,
    make_key,
)
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import SectionHead, Text
from inspector.window.reading import step_focus

WIDE, HIGH = 150, 165  # in millimetres at plain text size


class KeyPanel(QDialog):
    """Over the window; ``changed`` tells that the key is another or opens otherwise."""

    changed = Signal()

    def __init__(self, desk: Desk, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Seal key of this computer"))
        self.desk, look = desk, desk.look
        self.setPalette(palette(look.inks))
        self.fingerprint = Text(look, semibold=True)
        self.how = Text(look)
        self.old = _hidden(look, tr("Passphrase of now"))
        self.new = _hidden(look, tr("New passphrase"))
        self.again = _hidden(look, tr("New passphrase once more"))
        self.keep = Key(look, tr("keep this passphrase"), strong=True)
        self.remove = Key(look, tr("no passphrase any more"), name=tr("Take the passphrase off the key"))
        self.state = Text(look, semibold=True)
        self.fresh = Key(look, tr("make a new key"), name=tr("Make a new seal key, with another fingerprint"))
        self.leave = Key(look, tr("close"))
        self._job: Job | None = None
        self._lay_out()
        self.keep.clicked.connect(self._keep)
        self.remove.clicked.connect(self._remove)
        self.fresh.clicked.connect(self._make)
        self.leave.clicked.connect(self.close)
        look.changed.connect(self._dress)
        self.show_key()
        self.resize(min(look.grown(WIDE), window.width()), min(look.grown(HIGH), window.height()))

    @property
    def _folder(self) -> Path:
        return self.desk.library.folder

    def _lay_out(self) -> None:
        look = self.desk.look
        column = Column(look)
        for widget, gap in (
            (Text(look, tr("Seal key of this computer"), step="head"), 0), (self.fingerprint, 2),
            (LongWords(look, tr("It is kept in {path}.", path=key_path(self._folder)), ink="soft"), 1),
            (SectionHead(look, tr("Passphrase")), 4), (self.how, 1), (self.old, 3), (self.new, 3), (self.again, 2),
            (self.state, 3), (KeyRow(look, [self.keep, self.remove, self.leave], fit="flow"), 3),
            (SectionHead(look, tr("A new key")), 5),
            (Text(look, tr(
                "A new key has another fingerprint, and opens with the new passphrase above, or with none. The key of"
                " now is set aside, never deleted, and sheets sealed with it can still be checked.",
            )), 1), (KeyRow(look, [self.fresh], fit="flow"), 3),
        ):  # fmt: skip
            column.add(widget, gap)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(Scroll(look, column))

    def _dress(self) -> None:
        self.setPalette(palette(self.desk.look.inks))

    # showing

    def say(self, sentence: str) -> None:
        """One sentence stands above the keys, or none."""
        self.state.say(sentence)
        self.state.setVisible(bool(sentence))

    def show_key(self, sentence: str = "") -> None:
        """What the key is now, and what became of the last press."""
        state, figures = key_state(self._folder), fingerprint_of(self._folder)
        locked, there = state == "locked", state in ("locked", "ready")
        nothing = tr("There is no key yet.") if state == "none" else tr("The key is not there, or cannot be read.")
        self.fingerprint.say(grouped(figures) if figures else nothing)
        self.fresh.say(tr("make the key") if state == "none" else tr("make a new key"))
        self.how.say(_how(locked, there))
        self.old.setVisible(locked)
        self.remove.setVisible(locked)
        self.keep.setVisible(there)
        for field in (self.old, self.new, self.again):
            field.show_value("")
        self.say(sentence)

    # doing

    def _keep(self) -> None:
        if not self.new.value():
            self.say(tr("No new passphrase is written yet. Write it twice, then press the key again."))
        elif self._agree():
            old, new = self.old.value(), self.new.value()
            done = tr("The key opens with the new passphrase alone from now on. Nobody can find it out again: keep it.")
            self._do(lambda: change_passphrase(self._folder, old, new), done)

    def _remove(self) -> None:
        old = self.old.value()
        done = tr("The key opens without a passphrase now.")
        self._do(lambda: change_passphrase(self._folder, old, ""), done)

    def _make(self) -> None:
        if self._agree():
            at, new = self.desk.clock(), self.new.value()
            self._do(
                lambda: make_key(self._folder, at, new), tr("The key is new. Tell its fingerprint to who compares.")
            )

    def _agree(self) -> bool:
        if self.new.value() == self.again.value():
            return True
        self.say(tr("The new passphrase is not the same both times. Write it twice again."))
        self.again.setFocus()
        return False

    def _do(self, work: Callable[[], object], done: str) -> None:
        """The work is done beside the window, since a passphrase is slow to try on purpose."""
        if self._job is not None:
            return
        self.say(tr("One moment …"))
        self._job = job = Job(lambda report: work())
        job.done.connect(lambda _: self._ended(done))
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _ended(self, done: str) -> None:
        self._job = None
        self.show_key(done)
        self.changed.emit()

    def _failed(self, error: object) -> None:
        self._job = None
        what = tr("It could not be done: {what}", what=str(error))
        self.say(tr(error.sentence) if isinstance(error, KeyTrouble) else what)
        if isinstance(error, WrongPassphrase):
            self.old.setFocus()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)


def _hidden(look: Look, label: str) -> LineField:
    field = LineField(look, label)
    field.edit.setEchoMode(QLineEdit.EchoMode.Password)
    return field


def _how(locked: bool, there: bool) -> str:
    if locked:
        return tr("The key has a passphrase, which is asked for at each seal.")
    if there:
        return tr("The key has no passphrase: whoever uses this account of the computer can seal with it.")
    return tr("The key is made at the first seal, without a passphrase, or here, with one if you want.")
