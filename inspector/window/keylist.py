"""The keys of the keyboard, listed from the very actions that they trigger."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import SectionHead


class KeyList(QDialog):
    """What each key does, here and in the whole window."""

    def __init__(self, look: Look, lists: Iterable[tuple[str, Iterable[QAction]]], parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Keys of the keyboard"))
        column = Column(look)
        for title, actions in lists:
            column.add(SectionHead(look, title), 6)
            for action in actions:
                keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
                if keys:
                    column.add(Row(look, action.text(), aside=keys, opens=False), 0)
        close = Key(look, tr("close"))
        close.clicked.connect(self.close)
        box = QVBoxLayout(self)
        box.addWidget(Scroll(look, column))
        box.addWidget(close)
        self.resize(look.grown(110), look.grown(140))
