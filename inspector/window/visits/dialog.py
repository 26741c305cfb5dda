"""What the views of this folder share: a column that scrolls in a window of its own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QVBoxLayout

from inspector.window.look.columns import Column
from inspector.window.look.inks import palette
from inspector.window.look.scroll import Scroll
from inspector.window.reading import step_focus

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.window.look.look import Look

SHARE = 0.92  # of the window over which it opens


class View(QDialog):
    """A view over the window, closed by its key or by Escape."""

    def __init__(self, look: Look, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(title)
        self.look = look
        self.setPalette(palette(look.inks))
        self.column = Column(look)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(Scroll(look, self.column))
        if parent is not None:
            self.resize(parent.window().size() * SHARE)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)
