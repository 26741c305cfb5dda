"""The seal: which key, whether it opens, and the work of sealing beside the window."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from inspector.issuing import place_of
from inspector.record.model import Record
from inspector.record.versions import next_version, stands_as_sealed
from inspector.sealing import Paper, seal_version
from inspector.sheet.keys import (
    KeyTrouble,
    WrongPassphrase,
    close_to_others,
    fingerprint_of,
    grouped,
    key_state,
    make_key,
    open_key,
)
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import Text
from inspector.window.sheet.signing_key import KeyPanel


class Sealer(Column):
    """``made(version, record)`` tells that a sealed sheet of this record is kept."""

    made = Signal(object, object)

    def __init__(self, desk: Desk, paper: Paper, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.paper, look = desk, paper, desk.look
        self.key_words = Text(look)
        self.passphrase = LineField(look, tr("Passphrase of the seal key"))
        self.passphrase.edit.setEchoMode(QLineEdit.EchoMode.Password)
        self.seal = Key(look, tr("seal"), step="key", strong=True)
        self.renew = Key(look, tr("make a new key"), name=tr("Make a new seal key, with another fingerprint"))
        self.own = Key(look, tr("key and passphrase"), name=tr("Set, change or take away the passphrase of the key"))
        self.panel: KeyPanel | None = None
        self.state = Text(look, semibold=True)
        self._job: Job | None = None
        self._record: Record | None = None  # as it was when sealing began
        for widget, gap in (
            (Text(look, tr(
                "Sealing freezes this version: the sheet is drawn to its last page, the record is put inside without"
                " money, and the file is sealed with a key of this computer. From then on anybody can check whether"
                " anything in it was changed. The time is this computer’s clock, not witnessed; the seal does not show"
                " who signed. Whoever has not signed stands on it as not yet signed. A later change makes the next"
                " version, which lists what differs.",
            )), 0),
            (self.key_words, 2), (self.passphrase, 2), (KeyRow(look, [self.seal, self.renew, self.own], fit="flow"), 3),
            (self.state, 2),
        ):  # fmt: skip
            self.add(widget, gap)
        self.seal.clicked.connect(self.begin)
        self.renew.clicked.connect(self._make_new)
        self.own.clicked.connect(self.open_key_panel)
        self.say(tr(
            "Others who use this computer could read the key until now; that is closed. If one of them may have copied"
            " it, make a new key.",
        ) if close_to_others(self._folder) else "")  # fmt: skip

    @property
    def busy(self) -> bool:
        """Whether a version is being sealed now."""
        return self._job is not None

    @property
    def _folder(self) -> Path:
        return self.desk.library.folder

    def say(self, sentence: str) -> None:
        """One sentence stands below the keys, or none."""
        self.state.say(sentence)
        self.state.setVisible(bool(sentence))

    def show_record(self, why: str) -> None:
        """Which version would be sealed, and with which key; ``why`` it cannot be yet."""
        record, library = self.desk.record, self.desk.library
        if stands_as_sealed(record) is not None:
            why = tr("This version is sealed already. Whatever is changed from now on makes the next one.")
        elif library.read_only:
            why = tr(library.notice) if library.notice else tr("The library can be read only.")
        self.seal.say(tr("seal version {number}", number=next_version(record)))
        self.seal.turn_off(why)
        self._show_key()

    def _show_key(self) -> None:
        state = key_state(self._folder)
        self.renew.setVisible(state in ("lost", "damaged"))
        self.passphrase.setVisible(state == "locked" and not self.seal.off)
        self.own.setVisible(not self.renew.isVisibleTo(self) and not self.desk.library.read_only)
        if state == "none":
            self.key_words.say(tr("A seal key is made on this computer now, and kept with your records. A passphrase is"
                                  " set under “key and passphrase”, now or later."))  # fmt: skip
        elif state in ("ready", "locked"):
            figures = grouped(fingerprint_of(self._folder))
            self.key_words.say(figures, tr("Fingerprint of the key:") + " ")
        else:
            self.key_words.say(_trouble(self._folder))

    def open_key_panel(self) -> None:
        """Fingerprint and passphrase of the key stand over the window."""
        self.panel = KeyPanel(self.desk, self.window())
        self.panel.changed.connect(self._key_changed)
        self.panel.open()

    def _key_changed(self) -> None:
        self.passphrase.show_value("")
        self.say("")
        self._show_key()

    def _make_new(self) -> None:
        try:
            make_key(self._folder, self.desk.clock())
        except KeyTrouble as trouble:
            self.say(tr(trouble.sentence))
        self._show_key()

    # sealing

    def begin(self) -> None:
        """The version is being sealed beside the window."""
        keep_typing()
        if self._job is not None:
            return
        self.say(tr("It is being sealed …"))
        self._record = self.desk.record
        work = self._work(self._record)
        self._job = job = Job(lambda report: work())
        job.done.connect(self._done)
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _work(self, record: Record) -> Callable[[], object]:
        folder, passphrase, at = self._folder, self.passphrase.value(), self.desk.clock()
        profile, place, paper = self.desk.profile, place_of(self.desk.library), self.paper

        def work() -> object:
            fresh = key_state(folder) == "none"
            key = make_key(folder, at) if fresh else open_key(folder, passphrase)
            return seal_version(profile, record, place, key, at, paper)

        return work

    def _done(self, version: object) -> None:
        self._job = None
        self.say("")
        self.passphrase.show_value("")
        self.made.emit(version, self._record)

    def _failed(self, error: object) -> None:
        self._job = None
        if isinstance(error, KeyTrouble):
            self.say(tr(error.sentence))
        elif isinstance(error, StorageTrouble):
            self.say(tr(error.said))
        else:
            self.say(tr("It could not be sealed: {what}", what=str(error)))
        self._show_key()
        if isinstance(error, WrongPassphrase):
            self.passphrase.setFocus()


def _trouble(folder: Path) -> str:
    try:
        open_key(folder)
    except KeyTrouble as trouble:
        return tr(trouble.sentence)
    return ""
