"""Keys of figures and letters for a finger, where there is no keyboard or the hands are cold."""

from collections.abc import Callable, Iterable
from math import ceil

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QWidget

from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.text import Hairline

FIGURES, LETTERS = "1234567890", "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
BETWEEN, SIDE = 1.2, 2.7  # between keys, and beside a word on its key, in millimetres
NEVER = "never in this number by its rule; it can be entered all the same"


class LowKey(Key):
    """A key as high as a finger, however large the type: the figures are to be seen above the keys."""

    def heightForWidth(self, width: int) -> int:
        """As high as a finger."""
        return ceil(self.look.mm(self.tall))

    def natural(self) -> int:
        """As wide as its word, at least as a finger."""
        words = self._stack(False).natural + 2 * self.look.mm(SIDE) if self.title else super().natural()
        return max(ceil(words), ceil(self.look.mm(self.tall)))

    def sizeHint(self) -> QSize:
        """As wide as its word, as high as a finger."""
        return QSize(self.natural(), ceil(self.look.mm(self.tall)))

    def minimumSizeHint(self) -> QSize:
        """The same: its word stands on one line."""
        return self.sizeHint()


class PadKey(LowKey):
    """One character; ``dimmed`` where the rule never uses it, which forbids nothing."""

    def __init__(self, look: Look, text: str, name: str) -> None:
        super().__init__(look, text, step="key")
        self.text_, self.plain_name, self.dimmed = text, name, False
        self.say(name=name)

    def dim(self, dimmed: bool) -> None:
        """The key has a dotted outline, or a plain one."""
        if dimmed == self.dimmed:
            return
        self.dimmed = dimmed
        self.say(name=tr("{key}, {why}", key=self.plain_name, why=tr(NEVER)) if dimmed else self.plain_name)

    @property
    def state(self) -> str:
        """As any key, but dotted where it is dimmed and nobody presses it."""
        state = super().state
        return "off" if self.dimmed and state == "rest" else state


class FigurePad(Column):
    """Figures and letters, and below them what else can be done at the place where one writes.

    ``typed(text)`` and ``commanded(word)`` tell what a keyboard would; ``done`` that the pad may go.
    """

    typed = Signal(str)
    commanded = Signal(str)
    done = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, edge=6.0, top=1.5, parent=parent)
        self.keys: dict[str, Key] = {}
        figures = [self._typing(text, text, tr("figure {f}", f=text)) for text in FIGURES]
        letters = [self._typing(text, text, tr("letter {f}", f=text)) for text in LETTERS]
        acts = [
            self._act("or", tr("or"), lambda: self.typed.emit(","), tr("or: the next one is what else it could be")),
            self._act("?", "?", lambda: self.typed.emit("?"), tr("this figure is unreadable")),
            self._act("gap", tr("gap"), lambda: self.typed.emit(" "), tr("a gap stands here")),
            self._command("left", "left", tr("one figure back")),
            self._command("right", "right", tr("one figure on")),
            self._act("insert", tr("insert"), lambda: self.commanded.emit("insert"), tr("a figure was left out here")),
            self._act("delete", tr("take out"), lambda: self.commanded.emit("delete"), tr("take this figure out")),
            self._act("back", tr("back"), lambda: self.commanded.emit("back"), tr("take the figure before out")),
            self._act("done", tr("done"), self.done.emit, tr("put the keys away")),
        ]
        self.add(Hairline(look, ink="ink"), 0)
        for keys in ([*figures, *letters], acts):
            self.add(KeyRow(look, keys, fit="flow", gap=BETWEEN), BETWEEN)

    def dim(self, never: Iterable[str]) -> None:
        """These letters are dimmed, and no others."""
        dimmed = set(never)
        for key in self.keys.values():
            if isinstance(key, PadKey):
                key.dim(key.text_ in dimmed)

    def _typing(self, word: str, text: str, name: str) -> Key:
        key = PadKey(self.look, text, name)
        key.clicked.connect(lambda: self.typed.emit(text))
        self.keys[word] = key
        return key

    def _act(self, word: str, title: str, act: Callable[[], object], name: str) -> Key:
        key = LowKey(self.look, title, name=name)
        key.clicked.connect(lambda _=False: act())
        self.keys[word] = key
        return key

    def _command(self, word: str, sign: str, name: str) -> Key:
        key = LowKey(self.look, sign=sign, name=name)
        key.clicked.connect(lambda: self.commanded.emit(word))
        self.keys[word] = key
        return key
