"""What the pages share: the open machine, what it means, and one way to change it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThreadPool, Signal
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.ask import Ask
from inspector.window.job import Job
from inspector.window.private import Private

# What only an open machine needs is imported where it is used: the first page comes sooner.
if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile
    from inspector.profile.read import ProfileRead
    from inspector.record.edits import Changed, Step
    from inspector.record.finding import Finding
    from inspector.record.model import Record
    from inspector.session import Session
    from inspector.storage.library import Library
    from inspector.window.look.look import Look

OPEN_ITEM = "item"
# What is entered about money changes nothing of what was seen, nor of what that means.
MONEY_PARTS = frozenset({"money", "comparables", "adjustments", "remedies"})


class NoMachine(RuntimeError):
    """Something about a machine was asked while none was open."""


class Desk(QObject):
    """The library, the look, and the machine that is open; pages hear of every change.

    ``opened`` tells that another machine, or none, is open; ``listed`` that the list of machines is another, with the
    same one open; ``changed`` what an edit touched;
    ``moved`` that another item is open; ``wanted`` the page to show, ``placed`` the numbered place on it;
    ``told`` a sentence;
    ``ended`` that the next item was asked for at the last; ``offered`` a sentence, the word of a key beside it
    and what that key does.
    """

    opened = Signal()
    listed = Signal()
    changed = Signal(object)
    moved = Signal(str)
    ended = Signal()
    wanted = Signal(str)
    placed = Signal(str)
    told = Signal(str)
    offered = Signal(str, str, object)
    looking = Signal(str)

    def __init__(
        self, library: Library, look: Look, profile_roots: tuple[Path, ...],
        clock: Callable[[], str], ask: Ask | None = None,
    ) -> None:  # fmt: skip
        super().__init__()
        self.library, self.look, self.roots, self.clock = library, look, profile_roots, clock
        self.ask = ask or Ask()
        self.private = Private(self)
        self.session: Session | None = None
        self.folder = Path()
        self.item = ""
        self.pool = QThreadPool(self)
        self.pool.setMaxThreadCount(1)
        # Where one is, is written beside the window, and not behind photographs that are being taken in.
        self._notes = QThreadPool(self)
        self._notes.setMaxThreadCount(1)
        self._judgement: Judgement | None = None
        self._walk: tuple[str, ...] | None = None

    # the machine

    @property
    def here(self) -> Session:
        """The session of the open machine; raises NoMachine while none is open."""
        if self.session is None:
            raise NoMachine
        return self.session

    @property
    def record(self) -> Record:
        """The record as it stands; raises NoMachine while no machine is open."""
        return self.here.record

    @property
    def profile(self) -> Profile:
        """The profile as it was used for this record."""
        return self.here.profile

    def at(self) -> tuple[Record, str, str, str]:
        """What every verb on the open item begins with: record, item, person and time."""
        return self.record, self.item, self.here.by, self.clock()

    @property
    def finding(self) -> Finding | None:
        """What the person at the machine found so far at the open item."""
        return self.record.finding(self.item, self.here.by)

    @property
    def judgement(self) -> Judgement:
        """Everything computed from the record as it stands; computed once a change."""
        from inspector.judgement.judge import judge

        if self._judgement is None:
            self._judgement = judge(self.profile, self.record)
        return self._judgement

    @property
    def walk(self) -> tuple[str, ...]:
        """The items in the order of the walk; worked out once a change."""
        from inspector.judgement.route import order

        if self._walk is None:
            self._walk = order(self.profile, self.record)
        return self._walk

    def open(self, record_id: str, page: str = "walk") -> bool:
        """The machine is open at the item where it was left; False, and a sentence, when it cannot be."""
        from inspector.profile.read import read_profile
        from inspector.session import Session

        self._notes.waitForDone(5000)
        try:
            loaded = self.library.load(record_id)
            read = read_profile(loaded.profile_folder)
            if read.profile is None:
                self.told.emit(
                    tr("The profile kept with this machine cannot be read: {what}", what=str(read.problems[0]))
                )
                return False
            session = Session(self.library, record_id, read.profile, self.clock)
        except StorageTrouble as trouble:
            self.told.emit(tr(trouble.said))
            return False
        self._take(session, loaded.profile_folder)
        self.wanted.emit(page)
        return True

    def _take(self, session: Session, folder: Path) -> None:
        self.session, self.folder, self._judgement, self._walk = session, folder, None, None
        session.listen(self._heard)
        walk = self.walk
        left = self.library.recall(session.record.id, OPEN_ITEM) or ""
        self.item = left if left in walk else walk[0]
        self.opened.emit()

    def start(self, read: ProfileRead, year: int | None = None) -> bool:
        """A new machine of this profile is in the library and open at its claim."""
        from inspector.record.begin import new_record
        from inspector.record.model import ProfileRef
        from inspector.storage.codes import new_record_id

        profile = read.profile
        if profile is None:
            self.told.emit(" ".join(str(problem) for problem in read.problems[:3]))
            return False
        ref = ProfileRef(id=profile.id, version=profile.version, sha256=read.sha256, title=profile.title)
        record = new_record(new_record_id(), self.clock(), ref)
        claim = record.claim.model_copy(update={"model": profile.title, "model_year": year, "date": self.clock()[:10]})
        try:
            self.library.create(record.model_copy(update={"claim": claim}), read.folder)
        except StorageTrouble as trouble:
            self.told.emit(tr(trouble.said))
            return False
        return self.open(record.id, "claim")

    def close(self) -> None:
        """No machine is open."""
        keep_typing()
        if self.session is not None:
            self.session.end_visit()
        self._notes.waitForDone(5000)
        self.session, self._judgement, self._walk, self.item = None, None, None, ""
        self.opened.emit()

    # changing it

    def do(self, step: Step) -> bool:
        """The step is done and kept; False, with a sentence and nothing changed, when it cannot be."""
        return self._try(lambda: self.here.do(step))

    def undo(self) -> bool:
        """The last step is taken back."""
        return self.session is not None and self._try(self.here.undo)

    def redo(self) -> bool:
        """The step last taken back is done again."""
        return self.session is not None and self._try(self.here.redo)

    def _try(self, act: Callable[[], object]) -> bool:
        from inspector.record.refusing import EditRefused

        try:
            act()
        except EditRefused as refused:
            self.told.emit(tr(refused.sentence))
        except StorageTrouble as trouble:
            self.told.emit(tr(trouble.said))
        else:
            return True
        # Whoever showed the new value is to show the one that holds.
        self.changed.emit(None)
        return False

    def _heard(self, changed: Changed) -> None:
        if not changed.parts <= MONEY_PARTS:
            self._judgement = self._walk = None
        self.changed.emit(changed)

    def speak_as(self, person: str) -> None:
        """What is entered from now on is this person's finding."""
        keep_typing()
        self.here.by = person
        self.changed.emit(None)

    # moving about

    def show_place(self, place: str) -> None:
        """The page Numbers is open at this place."""
        self.wanted.emit("numbers")
        self.placed.emit(place)

    def go_to(self, item: str) -> None:
        """That item is open, and will be when the machine is opened again."""
        if item == self.item or item not in self.profile.item_by_id:
            return
        keep_typing()
        self.here.end_visit()
        self.item = item
        self.moved.emit(item)
        record = self.record.id
        note = Job(lambda report: self.library.remember(record, OPEN_ITEM, item))
        note.failed.connect(self._tell)
        note.start(self._notes)

    def _tell(self, error: object) -> None:
        self.told.emit(tr(error.said) if isinstance(error, StorageTrouble) else str(error))

    def next_item(self) -> None:
        """The next item of the walk is open; the last one stays."""
        from inspector.judgement.route import after

        following = after(self.walk, self.item)
        if following:
            self.go_to(following)
        else:
            self.ended.emit()

    def previous_item(self) -> None:
        """The item before is open; the first one stays."""
        from inspector.judgement.route import before

        self.go_to(before(self.walk, self.item) or self.item)


def keep_typing() -> None:
    """What is being typed is committed by the field that has the focus."""
    focus = QApplication.focusWidget()
    if isinstance(focus, QLineEdit | QPlainTextEdit):
        focus.clearFocus()
