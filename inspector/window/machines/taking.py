"""Taking machines out of the list and bringing them back, each step of which can be taken back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from inspector.storage.trouble import StorageTrouble
from inspector.texts import say, tr
from inspector.window.desk import keep_typing

if TYPE_CHECKING:
    from inspector.record.summary import Summary
    from inspector.texts import Say
    from inspector.window.desk import Desk


@dataclass(frozen=True, slots=True)
class Taken:
    """One step: which machine, whether it went out or came back, and whether it was open."""

    id: str
    title: str
    out: bool
    was_open: bool = False

    @property
    def label(self) -> Say:
        """What was done, for the undo key."""
        if self.out:
            return say("Take {machine} out", machine=self.title)
        return say("Bring {machine} back", machine=self.title)


class Taking(QObject):
    """The steps of this sitting; ``changed`` tells that the list is another, or that another step can be undone."""

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.desk = desk
        self._done: list[Taken] = []
        self._undone: list[Taken] = []

    @property
    def undo_label(self) -> Say | None:
        """What undo would take back, or None."""
        return self._done[-1].label if self._done else None

    @property
    def redo_label(self) -> Say | None:
        """What redo would do again, or None."""
        return self._undone[-1].label if self._undone else None

    def take_out(self, machine: Summary) -> None:
        """The machine is out of the list, and a sentence says until when it can come back."""
        here = self.desk.session is not None and self.desk.record.id == machine.id
        self._do(Taken(machine.id, _name(machine), out=True, was_open=here))

    def bring_back(self, machine: Summary) -> None:
        """The machine is in the list again."""
        self._do(Taken(machine.id, _name(machine), out=False))

    def _do(self, step: Taken) -> None:
        if self._apply(step, out=step.out):
            self._done.append(step)
            self._undone.clear()
            self.changed.emit()

    def undo(self) -> None:
        """The last step is taken back."""
        if self._done and self._apply(self._done[-1], out=not self._done[-1].out):
            self._undone.append(self._done.pop())
            self.changed.emit()

    def redo(self) -> None:
        """The step last taken back is done again."""
        if self._undone and self._apply(self._undone[-1], out=self._undone[-1].out):
            self._done.append(self._undone.pop())
            self.changed.emit()

    def _apply(self, step: Taken, *, out: bool) -> bool:
        """Whether the library could do it; if not, a sentence says why and all is as it was."""
        try:
            if out:
                self._put_out(step)
            else:
                self._put_in(step)
        except StorageTrouble as trouble:
            self.desk.told.emit(tr(trouble.said))
            return False
        return True

    def _put_out(self, step: Taken) -> None:
        keep_typing()
        until = self.desk.library.remove(step.id)
        if self.desk.session is not None and self.desk.record.id == step.id:
            self.desk.close()
        sentence = tr(
            "{machine} is out of the list. Nothing of it is deleted: it is kept with its photographs until {date} and"
            " can be brought back until then.",
            machine=step.title,
            date=until.isoformat(),
        )
        self.desk.offered.emit(sentence, tr("bring it back"), lambda: self._back(step))

    def _put_in(self, step: Taken) -> None:
        self.desk.library.restore(step.id)
        if step.out and step.was_open and self.desk.session is None:
            self.desk.open(step.id, "machines")
        self.desk.told.emit(tr("{machine} is in the list again.", machine=step.title))

    def _back(self, step: Taken) -> None:
        """What the key beside the sentence does: as undo where nothing happened since, else a step of its own."""
        if self._done and self._done[-1] == step:
            self.undo()
        else:
            self._do(Taken(step.id, step.title, out=False))


def _name(machine: Summary) -> str:
    if machine.model_year is None:
        return machine.title
    return tr("{machine} (claimed {year})", machine=machine.title, year=machine.model_year)
