"""The foot of the walk: back, the three marks, the unseen states, next; always in the same place."""

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.menus import MenuKey
from inspector.window.look.text import Text

NARROW_MM = 210.0
EDGE_MM, GAP_MM, AIR_MM = 6.0, 2.0, 2.0


class MarkStrip(QWidget):
    """One line where there is room: thumbs reach back and next at its ends; else two lines."""

    def __init__(self, look: Look, back: Key, marks: ChoiceKeys, unseen: MenuKey, after: Key) -> None:
        super().__init__()
        self.look = look
        self._parts = (back, marks, unseen, after)
        self.name = Text(look, semibold=True)  # of the item that is marked, where its head may be out of sight
        self.name.hide()
        self._grid = QGridLayout(self)
        self._two_lines: bool | None = None
        look.changed.connect(self.arrange)
        self.arrange()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may ask for one line or two."""
        super().resizeEvent(event)
        self.arrange()

    def arrange(self) -> None:
        """The keys stand on as many lines as the width and the size of type ask for."""
        look = self.look
        edge, air = look.px(EDGE_MM), look.px(AIR_MM)
        self._grid.setContentsMargins(edge, air, edge, air)
        self._grid.setSpacing(look.px(GAP_MM))
        two = self.width() < max(look.mm(NARROW_MM), self._one_line())
        if two == self._two_lines:
            return
        self._two_lines = two
        for part in (*self._parts, self.name):
            self._grid.removeWidget(part)
        self._grid.addWidget(self.name, 0, 0, 1, 4)
        places = ((2, 0, 1, 2), (1, 0, 1, 3), (1, 3, 1, 1), (2, 2, 1, 2)) if two else (
            (1, 0, 1, 1), (1, 1, 1, 1), (1, 2, 1, 1), (1, 3, 1, 1))  # fmt: skip
        for widget, place in zip(self._parts, places, strict=True):
            self._grid.addWidget(widget, *place)
        for column, stretch in enumerate((1, 1, 1, 1) if two else (4, 17, 6, 5)):
            self._grid.setColumnStretch(column, stretch)

    def _one_line(self) -> int:
        """The width in which all keys stand beside one another with their words whole, in pixels."""
        back, marks, unseen, after = self._parts
        plain = sum(part.sizeHint().width() for part in (back, marks, after))
        return plain + unseen.minimumSizeHint().width() + 3 * self.look.px(GAP_MM) + 2 * self.look.px(EDGE_MM)

    def paintEvent(self, event: QPaintEvent) -> None:
        """A hairline parts the foot from what scrolls above it."""
        painter = QPainter(self)
        painter.fillRect(0, 0, self.width(), max(1, self.look.px(0.2)), self.look.colour("rule"))
        painter.end()
