"""What is said of a sheet or bag that was dropped on the page or chosen: as sealed or not, in sentences."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.answer import Answer
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import Text
from inspector.window.reading import step_focus

WIDE, HIGH = 150, 135  # in millimetres at plain text size
MOST = 60  # sentences that are shown one by one


class CheckSheet(QDialog):
    """The answer to ``look_into``, which is asked beside the window; ``name`` tells what it is about."""

    def __init__(self, desk: Desk, name: str, look_into: Callable[[], Answer], window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Check a sheet or bag"))
        look = desk.look
        self.setPalette(palette(look.inks))
        self.desk = desk
        self.first = Text(look, tr("The file is being read …"), step="head")
        self.lines = Column(look, edge=0, top=0)
        self.leave = Key(look, tr("close"))
        column = Column(look)
        for widget, gap in ((LongWords(look, name, ink="soft"), 0), (self.first, 1), (self.lines, 3),
                            (KeyRow(look, [self.leave], fit="flow"), 5)):  # fmt: skip
            column.add(widget, gap)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(Scroll(look, column))
        self.leave.clicked.connect(self.close)
        look.changed.connect(self._dress)
        self.resize(min(look.grown(WIDE), window.width()), min(look.grown(HIGH), window.height()))
        self._begin(look_into)

    def _dress(self) -> None:
        self.setPalette(palette(self.desk.look.inks))

    def _begin(self, look_into: Callable[[], Answer]) -> None:
        self._job = job = Job(lambda report: look_into())
        job.done.connect(self._show)
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _show(self, answer: Answer) -> None:
        first, *others = answer.lines()
        self.first.say(tr(first))
        self.lines.clear()
        told = [tr(line) for line in others[:MOST]]
        if len(others) > MOST:
            told.append(
                tr("And {count} more. The command “inspector check” tells all of them.", count=len(others) - MOST)
            )
        for line in told:
            self.lines.add(LongWords(self.desk.look, line), 2)

    def _failed(self, error: object) -> None:
        self.first.say(tr("It could not be checked: {what}", what=str(error)))

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)
