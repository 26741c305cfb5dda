"""What a page promises that keeps steps of its own beside those of the machine."""

from typing import Protocol, runtime_checkable

from PySide6.QtCore import SignalInstance

from inspector.texts import Say


class OwnSteps(Protocol):
    """Steps that a page keeps for itself; ``changed`` tells that others can be undone."""

    changed: SignalInstance

    @property
    def undo_label(self) -> Say | None:
        """What undo would take back, or None."""

    @property
    def redo_label(self) -> Say | None:
        """What redo would do again, or None."""

    def undo(self) -> None:
        """The last step is taken back."""

    def redo(self) -> None:
        """The step last taken back is done again."""


@runtime_checkable
class KeepsSteps(Protocol):
    """A page with steps of its own, which undo and redo while it is open."""

    own_steps: OwnSteps
