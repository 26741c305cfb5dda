"""What is said of a sheet that was dropped on the page or chosen: as sealed or not, in sentences."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.checked import Told, told_of_sheet
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import Text

WIDE, HIGH = 150, 110  # in millimetres at plain text size
LARGEST = 300_000_000  # bytes of a sheet that is read


class CheckSheet(QDialog):
    """The answer for one file; it comes beside the window."""

    def __init__(self, desk: Desk, path: Path, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Check a sheet"))
        look = desk.look
        self.setPalette(palette(look.inks))
        self.desk, self.path = desk, path
        self.first = Text(look, tr("The file is being read …"), step="head")
        self.lines = Column(look, edge=0, top=0)
        self.leave = Key(look, tr("read"))
        column = Column(look)
        for widget, gap in ((Text(look, path.name, ink="soft"), 0), (self.first, 1), (self.lines, 3),
                            (KeyRow(look, [self.leave], fit="flow"), 5)):  # fmt: skip
            column.add(widget, gap)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(Scroll(look, column))
        self.leave.clicked.connect(self.close)
        self.resize(min(look.grown(WIDE), window.width()), min(look.grown(HIGH), window.height()))
        self._begin()

    def _begin(self) -> None:
        path, library = self.path, self.desk.library

        def work() -> Told:
            with path.open("rb") as file:
                return told_of_sheet(file.read(LARGEST), library.folder, library)

        self._job = job = Job(lambda report: work())
        job.done.connect(self._show)
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _show(self, told: Told) -> None:
        self.first.say(tr(told.first))
        self.lines.clear()
        for line in told.lines:
            self.lines.add(Text(self.desk.look, tr(line)), 2)

    def _failed(self, error: object) -> None:
        why = getattr(error, "strerror", None) or str(error)
        self.first.say(tr("{path} cannot be read: {why}.", path=self.path, why=why))
