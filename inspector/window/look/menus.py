"""A list of words that opens over the page, and the key that opens it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QCloseEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget
from shiboken6 import isValid

from inspector.window.look.keys import Key, Option
from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll, bring_into_sight

FRAME = 0.5  # of the outline round the list, in millimetres
WIDEST = 110.0
_STEPS = {
    Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1,
}  # fmt: skip


class WordList(QWidget):
    """Rows of sign and word over the page; ``picked(id)`` tells which was touched, then it closes.

    It lies over the whole window of ``parent`` and takes every touch: one beside the rows, or Esc,
    closes it without a pick. Arrows move, Enter picks. It deletes itself when it closes.
    """

    picked = Signal(str)

    def __init__(self, look: Look, options: Sequence[Option], parent: QWidget) -> None:
        super().__init__(parent.window())
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.look, self._back_to = look, parent.window().focusWidget()
        self.rows: list[Row] = []
        held = QWidget()
        box = QVBoxLayout(held)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        for option in options:
            self.rows.append(self._row(option, held))
            box.addWidget(self.rows[-1])
        self._frame = _Frame(look, held, self)
        self.window().installEventFilter(self)
        look.changed.connect(self.close)

    def _row(self, option: Option, parent: QWidget) -> Row:
        row = Row(self.look, option.word, second=option.second, sign=option.sign, edge=3.0,
                  arrow=False, parent=parent)  # fmt: skip
        row.turn_off(option.reason)
        row.setProperty("option", option.id)
        row.clicked.connect(self._clicked)
        row.installEventFilter(self)
        return row

    def open_at(self, corner: QPoint, least: int = 0) -> None:
        """The rows stand with their upper left corner there (global), moved to be in the window."""
        self.setGeometry(self.window().rect())
        own = max((row.sizeHint().width() for row in self.rows), default=0) + self._frame.extra()
        own = min(own, self.look.px(WIDEST * self.look.text_scale))
        wide = min(max(own, least), self.width())
        high = sum(row.heightForWidth(wide - self._frame.extra()) for row in self.rows)
        high = min(high + self._frame.extra(), self.height())
        here = self.mapFromGlobal(corner)
        left = max(min(here.x(), self.width() - wide), 0)
        top = max(min(here.y(), self.height() - high), 0)
        self._frame.setGeometry(left, top, wide, high)
        self.show()
        self.raise_()
        if self.rows:
            self.rows[0].setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.close()  # nothing to choose from, and nothing that could be left by a key

    def _clicked(self) -> None:
        option = self.sender().property("option")
        self.close()
        self.picked.emit(option)

    def closeEvent(self, event: QCloseEvent) -> None:
        """The focus goes back to where it was."""
        super().closeEvent(event)
        self.window().removeEventFilter(self)
        if self._back_to is not None and isValid(self._back_to):
            self._back_to.setFocus(Qt.FocusReason.OtherFocusReason)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A touch beside the rows closes the list."""
        self.close()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab stays among the rows."""
        self._step(1 if forward else -1)
        return True

    def _step(self, step: int) -> None:
        if not self.rows:
            return
        at = next((n for n, row in enumerate(self.rows) if row.hasFocus()), -step)
        row = self.rows[(at + step) % len(self.rows)]
        row.setFocus(Qt.FocusReason.TabFocusReason)
        bring_into_sight(row)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Arrows and Tab go from row to row, Esc closes; the window's shortcuts wait meanwhile."""
        if watched is self.window():
            if event.type() == QEvent.Type.Resize:
                self.close()
            return False
        if event.type() == QEvent.Type.ShortcutOverride:
            event.accept()
            return True
        return isinstance(event, QKeyEvent) and self._key(event)

    def _key(self, event: QKeyEvent) -> bool:
        if event.type() != QEvent.Type.KeyPress:
            return False
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        elif event.key() in _STEPS:
            self._step(_STEPS[Qt.Key(event.key())])
        else:
            return False
        return True


class _Frame(QWidget):
    """Paper with an outline of ink, in which the rows scroll."""

    def __init__(self, look: Look, held: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self.look = look
        whole = QVBoxLayout(self)
        edge = look.px(FRAME)
        whole.setContentsMargins(edge, edge, edge, edge)
        whole.addWidget(Scroll(look, held))

    def extra(self) -> int:
        """What the outline takes of the width, in pixels."""
        return 2 * self.look.px(FRAME)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A touch on the outline does nothing."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws ground and outline."""
        painter = QPainter(self)
        wide = self.look.px(FRAME)
        painter.fillRect(self.rect(), self.look.colour("ink"))
        inner = self.rect().adjusted(wide, wide, -wide, -wide)
        painter.fillRect(inner, self.look.colour("paper"))
        painter.end()


class MenuKey(Key):
    """A key with an arrow down that opens its words; ``picked(id)`` tells which was touched.

    With ``set_picked`` it shows one of its words with its sign, held as ``held`` says; without one
    it shows its own title.
    """

    picked = Signal(str)

    def __init__(
        self, look: Look, title: str, options: Sequence[Option] = (), *, held: str = "chosen",
        parent: QWidget | None = None, tall: float = 12.0, step: str = "text", over: str = "",
        name: str = "",
    ) -> None:  # fmt: skip
        super().__init__(
            look, title, arrow="down", left=True, parent=parent, tall=tall, step=step, over=over,
            name=name,
        )  # fmt: skip
        self.options = list(options)
        self.list: WordList | None = None
        self._title, self._when_held, self._picked = title, held, ""
        self.clicked.connect(self.open)

    def set_options(self, options: Sequence[Option]) -> None:
        """The words that it opens are these."""
        self.options = list(options)
        self.forget()  # a longer word may be among them
        self.set_picked(self._picked)

    def set_picked(self, option: str) -> None:
        """The key shows the word with this id as held; where there is none, its own title."""
        found = next((o for o in self.options if o.id == option), None)
        self._picked = found.id if found else ""
        self.say(found.word if found else self._title, sign=found.sign if found else "")
        self.hold(self._when_held if found else "")

    def picked_id(self) -> str:
        """The id of the word that it shows as held; empty where there is none."""
        return self._picked

    def open(self) -> WordList:
        """The words are shown below the key; gives the list, which lives until it closes."""
        self.list = WordList(self.look, self.options, self)
        self.list.picked.connect(self.picked)
        self.list.open_at(self.mapToGlobal(QPoint(0, self.height())), self.width())
        return self.list

    @measured
    def natural(self) -> int:
        """Wide enough for the longest word that it may show."""
        own = super().natural()
        if self.over:
            return own
        longest = max((self.look.words(o.word, self.step, True).natural for o in self.options), default=0.0)
        return own + round(max(longest - self._stack(True).natural, 0.0))


def offer(look: Look, parent: QWidget, options: Sequence[Option], corner: QPoint) -> WordList:
    """A list of these words is open at ``corner`` (global); connect to its ``picked``."""
    made = WordList(look, options, parent)
    made.open_at(corner)
    return made
