"""The keys of the keyboard, listed from the very actions that they trigger."""

from collections.abc import Iterable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractSlider, QDialog, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import SectionHead

WIDE, HIGH = 110.0, 140.0  # where there is room, in millimetres at plain text size
_MOVES = {
    Qt.Key.Key_Down: QAbstractSlider.SliderAction.SliderSingleStepAdd,
    Qt.Key.Key_Up: QAbstractSlider.SliderAction.SliderSingleStepSub,
    Qt.Key.Key_PageDown: QAbstractSlider.SliderAction.SliderPageStepAdd,
    Qt.Key.Key_PageUp: QAbstractSlider.SliderAction.SliderPageStepSub,
    Qt.Key.Key_Home: QAbstractSlider.SliderAction.SliderToMinimum,
    Qt.Key.Key_End: QAbstractSlider.SliderAction.SliderToMaximum,
}


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
        self.area = Scroll(look, column)
        close = Key(look, tr("close"))
        close.clicked.connect(self.close)
        close.installEventFilter(self)
        box = QVBoxLayout(self)
        box.addWidget(self.area)
        box.addWidget(close)
        room = parent.window().size()
        self.resize(min(look.grown(WIDE), room.width()), min(look.grown(HIGH), room.height()))
        close.setFocus()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Arrows and page keys scroll the list, which has nothing in it to go to."""
        move = _MOVES.get(Qt.Key(event.key())) if isinstance(event, QKeyEvent) else None
        if move is None or event.type() != QEvent.Type.KeyPress:
            return super().eventFilter(watched, event)
        self.area.verticalScrollBar().triggerAction(move)
        return True
