"""What the phones send, kept as whatever else is brought in: by the same intake, at the item that the phone named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from inspector.phone.messages import Fate, Press, Sent
from inspector.record import verbs
from inspector.record.words import Mark
from inspector.texts import tr
from inspector.window.intake import Bringing, Tie

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.phone.messages import Guest, Outcome
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
        self._bringing = Bringing(desk, self)
        self._said = ""
        desk.told.connect(self._hear)

    def _hear(self, sentence: str) -> None:
        self._said = sentence

    # photographs

    def take(self, sent: Sent, answer: Callable[[Fate], None]) -> None:
        """The photograph is taken in beside the window, for the item that the phone showed."""
        if not self._there(sent.record, sent.item):
            answer(Fate("refused", tr("Another machine is open at the computer now.")))
            return

        def each(outcome: Outcome, sentence: str) -> None:
            answer(Fate(outcome, sentence or (self._said if outcome == "refused" else "")))

        source = (sent.name or tr("photograph"), sent.data)
        self._bringing.take_in([source], Tie(item=sent.item), quiet=True, each=each)

    def _there(self, record: str, item: str) -> bool:
        desk = self.desk
        return desk.session is not None and desk.record.id == record and item in desk.profile.item_by_id

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
        return "" if self.desk.do(verbs.mark(*self.desk.at(), wanted)) else self._said
