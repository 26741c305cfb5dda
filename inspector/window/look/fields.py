"""Fields to write in or choose from: a label above, an outline round, one word of each change."""

from abc import abstractmethod
from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QLineEdit, QPlainTextEdit, QSizePolicy, QVBoxLayout, QWidget

from inspector.window.look.inks import palette
from inspector.window.look.keys import INSIDE, Option, paint_ground
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.menus import MenuKey
from inspector.window.look.press import TARGET
from inspector.window.look.ring import hide_ring, show_ring
from inspector.window.look.scroll import tame
from inspector.window.look.text import Text

PAUSE = 800  # after the last letter, in milliseconds
LABEL_GAP = 1.4  # between a label and its field, in millimetres: room for the ring


class Field(Measured, QWidget):
    """A label over one control that it names, and below it, where wanted, one sentence.

    ``committed(value)`` tells once of each new value: when the focus leaves, at Enter, or after a
    pause of 800 ms. ``set_value`` from outside tells nothing.
    """

    committed = Signal(str)

    def __init__(self, look: Look, label: str, control: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.control = look, control
        self.label = Text(look, label, step="small", ink="soft")
        self.note = Text(look, step="small")
        self._committed = ""
        self._given: str | None = None
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE)
        self._pause.timeout.connect(self.commit)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(look.px(LABEL_GAP))
        for widget in (self.label, self.framed(), self.note):
            box.addWidget(widget)
        self.label.setBuddy(control)
        self.label.setVisible(bool(label))
        self.set_label(label)
        self.say("")
        self.setFocusProxy(control)

    def framed(self) -> QWidget:
        """What stands under the label: the control with whatever is drawn round it."""
        return self.control

    def set_label(self, label: str, name: str = "") -> None:
        """The label stands above; the control is called ``name``, or as the label says."""
        self.label.say(label)
        self.label.setVisible(bool(label))
        self.control.setAccessibleName(name or label)

    def say(self, sentence: str, *, lead: str = "") -> None:
        """One sentence stands below the control, with what is wrong or how to write it."""
        if (sentence, lead) == (self.note.words, self.note.lead) and self.note.isHidden() == (not (sentence or lead)):
            return
        self.note.say(sentence, lead)
        self.note.setVisible(bool(sentence or lead))
        self.control.setAccessibleDescription(f"{lead} {sentence}".strip())

    @abstractmethod
    def value(self) -> str:
        """What stands in the field."""

    @abstractmethod
    def show_value(self, value: str) -> None:
        """The control shows this value and tells nobody."""

    def set_value(self, value: str) -> None:
        """The field holds this value, which counts as committed.

        Words that are being written, or could not be kept, stay while the value given is that of before. So does the
        blank after the last word: it is kept without, and the next word will follow.
        """
        same, self._given, self._committed = value == self._given, value, value
        written = self.value()
        if value in (written, written.strip()):
            self._pause.stop()
            self._committed = written
        elif not same:
            self._pause.stop()
            self.show_value(value)

    def let_go(self) -> None:
        """The next value that is given is shown, whatever is being written."""
        self._given = None

    def waits(self) -> bool:
        """Whether what stands in it is not the value that was last given or told."""
        return self.value() != self._committed

    def commit(self) -> None:
        """A value that was not told before is told now."""
        self._pause.stop()
        value = self.value()
        if value != self._committed:
            self._committed = value
            self.committed.emit(value)

    def typed(self) -> None:
        """The pause begins anew."""
        if self.value() != self._committed:
            self._pause.start()


class _Box(Measured, QWidget):
    """The outline round a control, drawn as a key is, with the ring while it has the focus."""

    def __init__(self, look: Look, control: QWidget, lines: int, zero: bool = False) -> None:
        super().__init__()
        self.look, self._control, self._lines, self._zero = look, control, lines, zero
        control.setParent(self)
        control.installEventFilter(self)
        policy = QSizePolicy.Policy
        self.setSizePolicy(policy.Expanding, policy.Fixed if lines == 1 else policy.Minimum)
        look.changed.connect(self.restyle)
        self.restyle()

    def restyle(self) -> None:
        """Type, colours and size are those of the look that holds now."""
        self._control.setFont(self.look.font(zero=self._zero))
        inks = palette(self.look.inks)
        self._control.setPalette(inks)
        self.setFixedHeight(self._high()) if self._lines == 1 else self.setMinimumHeight(self._high())
        self.updateGeometry()
        self._settle()
        self.update()

    def _high(self) -> int:
        text = self._lines * self.look.leading() + 2 * self.look.grown(2)
        return max(self.look.least(TARGET), round(text))

    def sizeHint(self) -> QSize:
        """Room for some twenty letters, and for its lines."""
        return QSize(self.look.grown(40), self._high())

    def minimumSizeHint(self) -> QSize:
        """At least a finger wide."""
        return QSize(self.look.least(TARGET), self._high())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The control stands inside the outline."""
        super().resizeEvent(event)
        self._settle()

    def _settle(self) -> None:
        side = self.look.px(INSIDE - 0.4)
        above = self.look.px(0.8) if self._lines == 1 else self.look.px(1.6)
        room = QRect(side, above, self.width() - 2 * side, self.height() - 2 * above)
        self._control.setGeometry(room)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The ring comes and goes with the focus."""
        if isinstance(event, QFocusEvent) and event.gotFocus():
            show_ring(self, self.look, event)
            self.update()
        elif event.type() == QEvent.Type.FocusOut:
            hide_ring(self)
            self.update()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws ground and outline, thicker while it is written in."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect = self.rect().toRectF()
        paint_ground(painter, rect, self.look, "written" if self._control.hasFocus() else "rest")
        painter.end()


class LineField(Field):
    """One line to write in; ``zero`` slashes the nought, for numbers off metal or paper."""

    def __init__(
        self, look: Look, label: str, value: str = "", *, hint: str = "", zero: bool = False,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        self.edit = QLineEdit()
        self.edit.setFrame(False)
        self.edit.setPlaceholderText(hint)
        self._zero = zero
        super().__init__(look, label, self.edit, parent)
        self.edit.textEdited.connect(self.typed)
        self.edit.editingFinished.connect(self.commit)
        self.set_value(value)

    def framed(self) -> QWidget:
        """The line in its outline."""
        return _Box(self.look, self.edit, 1, self._zero)

    def value(self) -> str:
        """What is written, as it stands."""
        return self.edit.text()

    def show_value(self, value: str) -> None:
        """The line reads this."""
        self.edit.setText(value)


class TextField(Field):
    """Several lines to write in; Tab goes on, Ctrl+Enter tells at once."""

    def __init__(
        self, look: Look, label: str, value: str = "", *, hint: str = "", lines: int = 3,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        self.edit = QPlainTextEdit()
        self.edit.setTabChangesFocus(True)
        self.edit.setPlaceholderText(hint)
        self.edit.document().setDocumentMargin(2)
        tame(self.edit, look)
        self.edit.setFrameShape(QFrame.Shape.NoFrame)
        self._lines = lines
        super().__init__(look, label, self.edit, parent)
        self.edit.textChanged.connect(self.typed)
        self.edit.installEventFilter(self)
        self.set_value(value)

    def framed(self) -> QWidget:
        """The lines in their outline."""
        return _Box(self.look, self.edit, self._lines)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """What is written is told when the focus leaves, and at Ctrl+Enter."""
        if event.type() == QEvent.Type.FocusOut:
            self.commit()
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
            if enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                self.commit()
                return True
        return False

    def value(self) -> str:
        """What is written, as it stands."""
        return self.edit.toPlainText()

    def show_value(self, value: str) -> None:
        """The lines read this."""
        self.edit.setPlainText(value)
        self._pause.stop()


class ChoiceField(Field):
    """A key that opens its words under a label; ``value`` is the id of the word it shows."""

    def __init__(
        self, look: Look, label: str, options: Sequence[Option], value: str = "", *,
        none: str = "", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        self.key = MenuKey(look, none, options, held="")
        super().__init__(look, label, self.key, parent)
        self.key.picked.connect(self._picked)
        self.set_value(value)

    def set_label(self, label: str, name: str = "") -> None:
        """The label stands above, and is said before the word that the key shows."""
        super().set_label(label, name)
        self.key.prefix = name or label
        self.key.describe()

    def set_options(self, options: Sequence[Option]) -> None:
        """The words to choose from are these."""
        self.key.set_options(options)

    def value(self) -> str:
        """The id of the word shown; empty where none was chosen."""
        return self.key.picked_id()

    def show_value(self, value: str) -> None:
        """The key shows the word with this id."""
        self.key.set_picked(value)

    def _picked(self, option: str) -> None:
        self.key.set_picked(option)
        self.commit()
