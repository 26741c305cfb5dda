"""What the phones send, kept as whatever else is brought in: by the same intake, at the item that the phone named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from inspector.phone.messages import Fate, Press, Sent
from inspector.photo.intake import Taken, intake
from inspector.photo.refusal import Refusal
from inspector.record import verbs
from inspector.record.words import Mark
from inspector.texts import tr
from inspector.window.bringing import Tie, put_taken
from inspector.window.job import Job

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.messages import Guest
    from inspector.texts import Say
    from inspector.window.desk import Desk


class Hop(QObject):
    """Called in the thread of one server; its signals arrive in the window's, each with this object before the rest."""

    sent = Signal(object, object, object)
    pressed = Signal(object, object, object)
    joined = Signal(object, object)
    over = Signal(object, object)

    def photograph(self, sent: Sent, answer: Callable[[Fate], None]) -> None:
        """The window takes the photograph in."""
        self.sent.emit(self, sent, answer)

    def press(self, press: Press, answer: Callable[[str], None]) -> None:
        """The window does what was pressed."""
        self.pressed.emit(self, press, answer)

    def guests(self, guests: tuple[Guest, ...]) -> None:
        """The window hears which devices have joined."""
        self.joined.emit(self, guests)

    def ended(self, why: Say) -> None:
        """The window hears that the page was closed by itself."""
        self.over.emit(self, why)


class Receiving(QObject):
    """Does at the desk what the phones ask, or tells them in a sentence why not."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.desk = desk

    # photographs

    def take(self, sent: Sent, answer: Callable[[Fate], None], still: Callable[[], bool]) -> None:
        """The photograph is taken in beside the window; where ``still`` is no longer so by then, it is not kept."""
        if not self._there(sent.record, sent.item):
            answer(Fate("refused", tr("Another machine is open at the computer now.")))
            return
        photographs = self.desk.library.photographs
        name = sent.name or tr("photograph")
        job = Job(lambda report: intake([(name, sent.data)], photographs, report))
        job.done.connect(lambda results: answer(self._kept(sent, results[0], still())))
        job.failed.connect(lambda error: answer(Fate("refused", str(error))))
        job.start(self.desk.pool)

    def _there(self, record: str, item: str) -> bool:
        desk = self.desk
        return desk.session is not None and desk.record.id == record and item in desk.profile.item_by_id

    def _kept(self, sent: Sent, result: Taken | Refusal, still: bool) -> Fate:
        if isinstance(result, Refusal):
            return Fate("refused", tr(result.why))
        if not still or not self._there(sent.record, sent.item):
            return Fate("refused", tr("The page was closed at the computer before this photograph was kept."))
        added: list[int] = []
        trouble = self._heard(lambda: added.append(put_taken(self.desk, Tie(item=sent.item), [result])))
        if trouble:
            return Fate("refused", trouble)
        return Fate("kept" if added == [1] else "there", "")

    def _heard(self, act: Callable[[], object]) -> str:
        """The act is done; gives the sentence with which the desk refused it, or nothing."""
        said: list[str] = []

        def hear(sentence: str) -> None:
            said.append(sentence)

        self.desk.told.connect(hear)
        try:
            act()
        finally:
            self.desk.told.disconnect(hear)
        return " ".join(said)

    # keys

    def press(self, press: Press) -> str:
        """What the key says is done at the item that the phone showed; else the sentence that says why not."""
        if not self._there(press.record, press.item):
            return tr("Another machine is open at the computer now.")
        if press.item != self.desk.item:
            return tr("The computer has gone on to another item. Look at it, and press again.")
        if press.verb == "next":
            self.desk.next_item()
        elif press.verb == "back":
            self.desk.previous_item()
        else:
            return self._mark(Mark(press.verb))
        return ""

    def _mark(self, mark: Mark) -> str:
        """The mark is set, or taken away where it stood, as on the window's own keys."""
        found = self.desk.finding
        wanted = None if found is not None and found.mark is mark else mark
        return self._heard(lambda: self.desk.do(verbs.mark(*self.desk.at(), wanted)))
