"""A number read figure by figure: large cells, with a line below that says how well each was seen."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QClipboard,
    QFocusEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPointingDevice,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.charts import hatch
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.press import TARGET, Pressable
from inspector.window.look.type import CENTRE, STEPS, make_font

CLEAR, PROBABLE, UNREADABLE, EMPTY = "clear", "probable", "unreadable", "empty"
WIDE, BETWEEN, GAP = 13.2, 3.0, 4.7  # of a cell, between cells, and what a gap adds, in millimetres
SMALL = 0.8  # of that, where the number is too long for one line
NUMBER, LINE, FACE = 4.6, 0.9, 1.24  # room of the number above, the line, and a figure's height in its size
ALTGR = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier  # as keyboards with it tell it
COMMANDS = {
    Qt.Key.Key_Left: "left", Qt.Key.Key_Right: "right", Qt.Key.Key_Home: "home", Qt.Key.Key_End: "end",
    Qt.Key.Key_Backspace: "back", Qt.Key.Key_Delete: "delete", Qt.Key.Key_Insert: "insert",
    Qt.Key.Key_Return: "next", Qt.Key.Key_Enter: "next",
}  # fmt: skip
_TOUCHED = (QPointingDevice.DeviceType.TouchScreen, QPointingDevice.DeviceType.Stylus)


@dataclass(frozen=True, slots=True)
class Cell:
    """One figure: what is shown large, how well it was seen, what else it could be, and a gap before it."""

    text: str = ""
    kind: str = CLEAR
    others: tuple[str, ...] = ()
    after_gap: bool = False


class FigureCell(Pressable):
    """The figure, a line below it (solid clear, broken probable, hatched unreadable), and what else it could be."""

    def __init__(self, look: Look, parent: "FigureCells") -> None:
        super().__init__(look, parent)
        self.cells, self.cell, self.number, self._current = parent, Cell(kind=EMPTY), 1, False
        self.setAttribute(Qt.WidgetAttribute.WA_InputMethodEnabled)

    def say(self, cell: Cell, number: int, current: bool) -> None:
        """The cell shows this figure, the ``number``-th; where ``current`` one writes here."""
        if (cell, number, current) == (self.cell, self.number, self._current) and self.accessibleName():
            return
        self.cell, self.number, self._current = cell, number, current
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if current else Qt.FocusPolicy.ClickFocus)
        self.setAccessibleName(tr("Figure {n}: {what}", n=number, what=self._what()))
        self.update()

    def _what(self) -> str:
        if self.cell.kind == EMPTY:
            return tr("nothing written yet")
        if self.cell.kind == UNREADABLE:
            return tr("unreadable")
        words = tr(" or ").join((self.cell.text, *self.cell.others))
        return tr("{what}, probable", what=words) if self.cell.kind == PROBABLE else words

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press makes this the place at which one writes; a finger or a pen wants the pad as well."""
        super().mousePressEvent(event)
        # A finger's press may arrive as a mouse event that the system or Qt made of it.
        made = event.source() != Qt.MouseEventSource.MouseEventNotSynthesized
        if made or event.pointingDevice().type() in _TOUCHED:
            self.cells.touched.emit()

    def nextCheckState(self) -> None:
        """The press chooses the cell."""
        self.cells.chosen.emit(self.number - 1)

    def event(self, event: QEvent) -> bool:
        """Keys that write are for the cell and not for shortcuts of the page."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and self.cells.takes(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What is typed is for the number; keys that are not go on to the page."""
        if not self.cells.key(event):
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Nothing is pressed by letting a key go."""
        event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The ring comes, and this is where one writes."""
        super().focusInEvent(event)
        if not self._current:
            self.cells.chosen.emit(self.number - 1)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the ground of the place one is at, the figure, its line, and what else it could be."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        face, line, foot = self._rooms()
        if self._current or self.isDown():
            painter.fillRect(face, self.look.colour("tray"))
        self._paint_face(painter, face)
        self._paint_line(painter, line)
        self.look.words(self._foot(), "text", True).paint(painter, foot, self.look.colour("ink"), CENTRE)
        painter.end()

    def _rooms(self) -> tuple[QRectF, QRectF, QRectF]:
        """The rooms of figure, line and words below."""
        wide, thick = float(self.width()), self.look.grown(LINE)
        high = round(self.cells.face() * FACE)
        top = high + self.look.grown(0.5)
        below = top + thick + self.look.grown(0.7)
        return QRectF(0, 0, wide, high), QRectF(0, top, wide, thick), QRectF(0, below, wide, self.height() - below)

    def _foot(self) -> str:
        if self.cell.kind == UNREADABLE:
            return "?"
        if self.cell.kind != PROBABLE:
            return ""
        others = self.cell.others
        return tr("or {what}", what=", ".join(others)) if others else "(?)"

    def _paint_face(self, painter: QPainter, room: QRectF) -> None:
        if self.cell.kind == UNREADABLE:
            inset = room.width() * 0.14
            box = room.adjusted(inset, inset, -inset, -inset)
            hatch(painter, box, self.look.colour("soft"), self.look.mm(1.6), self.look.mm(0.36))
        elif self.cell.text:
            painter.setFont(make_font(self.cells.face(), True, True))
            painter.setPen(self.look.colour("ink"))
            painter.drawText(room, Qt.AlignmentFlag.AlignCenter, self.cell.text)

    def _paint_line(self, painter: QPainter, room: QRectF) -> None:
        kind = self.cell.kind
        if kind == CLEAR:
            painter.fillRect(room, self.look.colour("ink"))
            return
        colour = {PROBABLE: "doubt", UNREADABLE: "soft", EMPTY: "line"}[kind]
        thick = room.height() if kind != EMPTY else room.height() * 0.45
        pen = QPen(self.look.colour(colour), thick)
        pen.setDashPattern({PROBABLE: [2.4, 1.2], UNREADABLE: [0.8, 0.8], EMPTY: [1.0, 2.2]}[kind])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        middle = room.center().y()
        painter.drawLine(QPointF(room.left(), middle), QPointF(room.right(), middle))


class FigureCells(Measured, QWidget):
    """The cells of one number, wrapped where they must be, with the number of each figure above it.

    ``chosen(n)`` tells of the cell that was touched, counted from 0; ``typed(text)`` of a character,
    ``commanded(word)`` of left, right, home, end, back, delete, insert and next, ``pasted(text)`` of a
    whole number, ``touched`` that a finger or pen is at work. Nothing changes until ``show_cells``.
    """

    chosen = Signal(int)
    typed = Signal(str)
    commanded = Signal(str)
    pasted = Signal(str)
    touched = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.name = look, ""
        self.keys: list[FigureCell] = []
        self._cells: tuple[Cell, ...] = ()
        self._at, self._open_end = 0, True
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self._again)
        self.show_cells((), 0)

    # what is shown

    def show_cells(self, cells: Sequence[Cell], at: int) -> None:
        """These figures are shown, and one writes ``at`` that place (behind the last an empty cell is open)."""
        focused = any(key.hasFocus() for key in self.keys)
        self._cells, self._at = tuple(cells), min(max(at, 0), len(cells))
        shown = (*self._cells, *((Cell(kind=EMPTY),) if self._at == len(cells) else ()))
        while len(self.keys) < len(shown):
            self.keys.append(FigureCell(self.look, self))
        for n, key in enumerate(self.keys):
            key.say(shown[n] if n < len(shown) else Cell(kind=EMPTY), n + 1, n == self._at)
        if focused:
            self.focus()
        for n, key in enumerate(self.keys):
            key.setVisible(n < len(shown))
        self._again()

    @property
    def at(self) -> int:
        """The place at which one writes, counted from 0."""
        return self._at

    def current(self) -> FigureCell:
        """The cell at which one writes."""
        return self.keys[self._at]

    def focus(self, reason: Qt.FocusReason = Qt.FocusReason.OtherFocusReason) -> None:
        """Keys go to the cell at which one writes."""
        key = self.current()
        key.setVisible(True)
        if not key.hasFocus():
            key.setFocus(reason)

    # keys

    def takes(self, event: QKeyEvent) -> bool:
        """Whether this key writes or moves here."""
        if event.matches(QKeySequence.StandardKey.Paste):
            return bool(_clipboard())
        plain = event.modifiers() & ~(Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier)
        altgr = bool(event.text().strip()) and event.modifiers() & ALTGR == ALTGR
        if plain and not altgr:
            return False
        return Qt.Key(event.key()) in COMMANDS or (bool(event.text()) and event.text().isprintable())

    def key(self, event: QKeyEvent) -> bool:
        """The key is told as what it does; False where it does nothing here."""
        self.look.by_keyboard = True
        if not self.takes(event):
            return False
        if event.matches(QKeySequence.StandardKey.Paste):
            self.pasted.emit(_clipboard())
        elif Qt.Key(event.key()) in COMMANDS:
            self.commanded.emit(COMMANDS[Qt.Key(event.key())])
        else:
            for text in event.text():
                self.typed.emit(text)
        return True

    # where they stand

    def _share(self, width: int) -> float:
        """The size of the cells at this width: full, or small where the number would not stand on one line."""
        return 1.0 if self._long(1.0, len(self._cells)) <= width else SMALL

    def _long(self, share: float, count: int) -> float:
        gaps = sum(cell.after_gap for cell in self._cells[:count])
        between = self._between(share)
        return max(count * (self._cell(share) + between) - between, 0) + gaps * self._gap(share)

    def _cell(self, share: float) -> int:
        return max(self.look.grown(WIDE * share), self.look.least(TARGET))

    def _between(self, share: float) -> int:
        return self.look.grown(BETWEEN * share**4)

    def _gap(self, share: float) -> int:
        return self.look.grown(GAP * share**2)

    def face(self) -> int:
        """The size of the figures now, in pixels."""
        return self.look.grown(STEPS["figure"] * self._share(self.width()))

    def _high(self, share: float) -> int:
        face = round(self.look.grown(STEPS["figure"] * share) * FACE)
        return round(face + self.look.grown(0.5 + LINE + 0.7) + self.look.leading("text"))

    def _places(self, width: int) -> tuple[list[QRect], int]:
        """Where each cell stands at this width, and the height of all."""
        share = self._share(width)
        wide, high, between = self._cell(share), self._high(share), self._between(share)
        above, line = self.look.grown(NUMBER), self.look.grown(NUMBER) + high + self.look.grown(1)
        count = len(self._cells) + (self._at == len(self._cells))
        found, left, top = [], 0, 0
        for n in range(count):
            gap = self._gap(share) if n < len(self._cells) and self._cells[n].after_gap else 0
            # What stands between two gaps is kept on one line where it can be.
            together = self._run(n) if gap else 1
            if left and left + gap + together * (wide + between) - between > width:
                left, top, gap = 0, top + line, 0
            found.append(QRect(left + gap, top + above, wide, high))
            left += gap + wide + between
        return found, top + above + high

    def _run(self, n: int) -> int:
        """How many cells stand from the ``n``-th to the next gap."""
        after = (m for m in range(n + 1, len(self._cells)) if self._cells[m].after_gap)
        return next(after, len(self._cells)) - n

    def hasHeightForWidth(self) -> bool:
        """A long number takes several lines."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all lines at this width."""
        return self._places(width)[1]

    def sizeHint(self) -> QSize:
        """The width at which the number stands on one line."""
        wide = round(self._long(1.0, len(self._cells))) or self._cell(1.0)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """At least two cells."""
        return QSize(2 * self._cell(SMALL), self._high(SMALL))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Puts every cell in its place."""
        super().resizeEvent(event)
        self._settle()

    def _settle(self) -> None:
        for key, place in zip(self.keys, self._places(self.width())[0], strict=False):
            key.setGeometry(place)
            key.update()
        self.update()

    def _again(self) -> None:
        self.updateGeometry()
        self._settle()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the number of each figure above it, that of the place one is at in semibold."""
        painter = QPainter(self)
        for n, place in enumerate(self._places(self.width())[0]):
            here = n == self._at
            words = self.look.words(str(n + 1), "small", here)
            room = QRectF(place.x(), place.y() - self.look.grown(NUMBER), place.width(), words.leading)
            words.paint(painter, room, self.look.colour("ink" if here else "soft"), CENTRE)
        painter.end()


def _clipboard() -> str:
    mime = QGuiApplication.clipboard().mimeData(QClipboard.Mode.Clipboard)
    if mime is None or mime.hasImage() or mime.hasUrls() or not mime.hasText():
        return ""
    return " ".join(mime.text().split())[:120]
