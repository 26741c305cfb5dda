"""Whether what is private may be seen in this window: one key hides it at once and shows it again."""

from PySide6.QtCore import QObject, Signal


class Private(QObject):
    """Hidden or not, for as long as the window is open; ``changed`` tells of every turn."""

    changed = Signal(bool)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.hidden = False

    def hide(self) -> None:
        """Nothing private can be seen."""
        self._be(True)

    def show(self) -> None:
        """What is private can be seen on its own page."""
        self._be(False)

    def turn(self) -> None:
        """Hidden if it was shown, shown if it was hidden."""
        self._be(not self.hidden)

    def _be(self, hidden: bool) -> None:
        if hidden != self.hidden:
            self.hidden = hidden
            self.changed.emit(hidden)
