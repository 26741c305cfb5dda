"""Large keys that write a length, and a widget that stands beside them where there is room."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import QTouchEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.figurepad import LowKey
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.measured import Places, Placing, height_at, measured

BETWEEN, WIDE, GAP, LEAST = 1.2, 67.0, 4.0, 44.0  # between keys; the pad; beside it; the least beside it, in mm
ROWS = (("7", "8", "9", "/"), ("4", "5", "6", "space"), ("1", "2", "3", "back"), ("0", ".", "mm", "in"))


class TapKey(LowKey):
    """A key that hears the finger itself: of mouse presses made from quick touches, every second one is lost."""

    def __init__(self, look: Look, title: str, *, name: str, step: str) -> None:
        super().__init__(look, title, name=name, step=step)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)

    def event(self, event: QEvent) -> bool:
        """A finger put down and taken up on the key presses it; one that slid away does not."""
        kind = event.type()
        if not isinstance(event, QTouchEvent):
            return super().event(event)
        self.setDown(kind in (QEvent.Type.TouchBegin, QEvent.Type.TouchUpdate))
        ended = kind == QEvent.Type.TouchEnd and bool(event.points())
        if ended and self.rect().contains(event.points()[0].position().toPoint()):
            self.click()
        event.accept()
        return True


class PadRow(KeyRow):
    """Keys of one width on one line, whatever stands on them."""

    def _lines(self, width: int) -> list[list[tuple[QWidget, int]]]:
        gap, shown = self._between(), self._standing()
        edges = [round(n * (width + gap) / len(shown)) for n in range(len(shown) + 1)]
        return [[(key, edges[n + 1] - edges[n] - gap) for n, key in enumerate(shown)]]

    def minimumSizeHint(self) -> QSize:
        """All of them stand on the line."""
        widest = max(key.minimumSizeHint().width() for key in self.keys)
        return QSize(len(self.keys) * widest + (len(self.keys) - 1) * self._between(), 0)


class LengthPad(Column):
    """Figures, point, stroke, space and units; ``typed(text)`` and ``back`` tell what a keyboard would.

    ``onward`` tells that the reading is whole. A touch leaves the focus where one writes.
    """

    typed = Signal(str)
    back = Signal()
    onward = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, edge=0, top=0, parent=parent)
        self.keys: dict[str, Key] = {}
        said = {
            "/": ("/", tr("stroke of a fraction"), "/"), "space": (tr("space"), tr("space before a fraction"), " "),
            ".": (".", tr("decimal point"), "."), "mm": ("mm", tr("millimetres"), " mm"),
            "in": ("in", tr("inches"), " in"),
        }  # fmt: skip
        for row in ROWS:
            keys = [
                self._key(word, tr("back"), tr("take the last character out"), self.back.emit) if word == "back"
                else self._typing(word, *said.get(word, (word, tr("figure {f}", f=word), word)))
                for word in row
            ]  # fmt: skip
            self.add(PadRow(look, keys, gap=BETWEEN), BETWEEN)
        done = self._key("onward", tr("next reading"), tr("This reading is whole; go on to the next"), self.onward.emit)
        self.add(KeyRow(look, [done], fit="fill"), BETWEEN)

    def _typing(self, word: str, title: str, name: str, text: str) -> Key:
        return self._key(word, title, name, lambda: self.typed.emit(text))

    def _key(self, word: str, title: str, name: str, act: Callable[[], object]) -> Key:
        step = "key" if len(title) == 1 else "text"
        key = self.keys[word] = TapKey(self.look, title, name=name, step=step)
        key.clicked.connect(lambda _=False: act())
        return key


class Beside(Placing, QWidget):
    """One widget of a fixed width at the left, and the other beside it where there is room, else below it."""

    def __init__(self, look: Look, first: QWidget, second: QWidget) -> None:
        super().__init__()
        self.look, self.first, self.second = look, first, second
        for widget in (first, second):
            widget.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.settle_soon)

    @measured
    def places_at(self, width: int) -> Places:
        """The second beside the first, or below it where there is too little room."""
        left, gap = self.look.grown(WIDE), self.look.px(GAP)
        rest = width - left - gap
        if rest < self.look.grown(LEAST):
            above, below = height_at(self.first, width), height_at(self.second, width)
            second = QRect(0, above + gap, width, below)
            return [(self.first, QRect(0, 0, width, above)), (self.second, second)], above + gap + below
        high = max(height_at(self.first, left), height_at(self.second, rest))
        first = QRect(0, 0, left, height_at(self.first, left))
        second = QRect(left + gap, 0, rest, height_at(self.second, rest))
        return [(self.first, first), (self.second, second)], high

    def sizeHint(self) -> QSize:
        """Room for both beside one another."""
        wide = self.look.grown(WIDE + LEAST) + self.look.px(GAP)
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width that the wider of both needs at least."""
        return QSize(max(w.minimumSizeHint().width() for w in (self.first, self.second)), 0)
