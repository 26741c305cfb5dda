"""The sentence that stands over the page when there is something to say."""

from collections.abc import Callable

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.longwords import LongWords
from inspector.window.look.keys import Key
from inspector.window.look.text import Hairline

TOLD_MS, OFFERED_MS = 12_000, 30_000
EDGE, ABOVE, BETWEEN = 5.0, 1.5, 4.0  # round the sentence and before its keys, in millimetres


class Told(QWidget):
    """One sentence over the page, until it is read or time has passed; beside it, at times, what can be done."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        look = desk.look
        self.words = LongWords(look, semibold=True)
        self.act = Key(look)
        self.read = Key(look, tr("read"), name=tr("The sentence is read"))
        self.read.clicked.connect(self.hide)
        self.act.clicked.connect(self._act)
        self._does: Callable[[], object] | None = None
        self.look = look
        self._line = QHBoxLayout()
        self._line.addWidget(self.words, 1)
        for key in (self.act, self.read):
            self._line.addWidget(key, 0, Qt.AlignmentFlag.AlignVCenter)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addLayout(self._line)
        box.addWidget(Hairline(look))
        look.changed.connect(self.restyle)
        self.restyle()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.hide)
        self.hide()

    def say(self, sentence: str, key: str = "", does: Callable[[], object] | None = None) -> None:
        """The sentence is shown, with a key of this word that does this, or with none."""
        self.words.say(sentence)
        self.setAccessibleName(sentence)
        self._does = does
        self.act.say(key)
        self.act.setVisible(bool(key))
        self.show()
        self._timer.start(OFFERED_MS if key else TOLD_MS)

    def restyle(self) -> None:
        """The room round the sentence is that of the look that holds now."""
        edge, above = self.look.px(EDGE), self.look.px(ABOVE)
        self._line.setContentsMargins(edge, above, edge, above)
        self._line.setSpacing(self.look.px(BETWEEN))

    def _act(self) -> None:
        does = self._does
        self.hide()
        if does is not None:
            does()
