"""The real window on a folder of its own, and hands that press, type, drop and paste in it."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path

from PIL import Image, ImageDraw
from PySide6.QtCore import QMimeData, QPoint, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget

from inspector import app
from inspector.resource import sample_profiles
from inspector.window.ask import Ask
from inspector.window.frame import Window
from inspector.window.look.look import Look
from inspector.window.look.press import Pressable

HERON = "brackwater-heron"
PX_PER_MM = 4.7
BEGUN = datetime.fromisoformat("2026-05-09T10:00:00+02:00")
LEFT = Qt.MouseButton.LeftButton


class Clock:
    """Each look at it is one second later than the one before."""

    def __init__(self) -> None:
        self.at = BEGUN

    def __call__(self) -> str:
        self.at += timedelta(seconds=1)
        return self.at.isoformat()


class Answers(Ask):
    """Answers at once what the system's dialogs would have answered."""

    def __init__(self) -> None:
        super().__init__()
        self.pictures: list[Path] = []
        self.target: Path | None = None
        self.folder: Path | None = None
        self.names: list[str] = []

    def photographs(self, answer) -> None:
        if self.pictures:
            answer(self.pictures)

    def where_to_save(self, name, answer) -> None:
        self.names.append(name)
        if self.target:
            answer(self.target)

    def profile_folder(self, answer) -> None:
        if self.folder:
            answer(self.folder)


@dataclass
class House:
    """One folder, and the windows built on it one after another."""

    qtbot: object
    folder: Path
    clock: Clock = field(default_factory=Clock)
    ask: Answers = field(default_factory=Answers)
    window: Window | None = None
    told: list[str] = field(default_factory=list)
    touches: int = 0

    @property
    def library(self) -> Path:
        return self.folder / "library"

    @property
    def settings(self) -> QSettings:
        return QSettings(str(self.folder / "settings.ini"), QSettings.Format.IniFormat)

    def build(self, *, scheme="light", scale=1.0, size=(1280, 800), roots=None) -> Window:
        """A window as the program builds it, shown in that size."""
        assert self.window is None, "the window before is still open"
        look = Look(scheme, scale, PX_PER_MM)
        look.dress(QApplication.instance())
        self.window = app.build(self.library, look, self.settings, clock=self.clock, ask=self.ask, roots=roots)
        self.window.desk.told.connect(self.told.append)
        self.show(size)
        return self.window

    def show(self, size=(1280, 800)) -> None:
        self.window.resize(*size)
        with self.qtbot.waitExposed(self.window):
            self.window.show()
        self.window.activateWindow()
        self.qtbot.waitUntil(lambda: QApplication.activeWindow() is self.window)
        machines = self.window.pages["machines"]
        self.qtbot.waitUntil(lambda: machines.whole or not machines.isVisible())  # its end comes after its first paint
        for _ in range(3):
            QApplication.processEvents()

    def close(self) -> None:
        """The window is closed as a person closes it, and its folder is free."""
        if self.window is None:
            return
        self.window.close()
        self.window.desk.library.close()
        self.window.deleteLater()
        self.window = None

    # looking

    @property
    def desk(self):
        return self.window.desk

    @property
    def walk(self):
        return self.window.pages["walk"]

    @property
    def record(self):
        return self.desk.record

    def finding(self, item=""):
        return self.record.finding(item or self.desk.item, "inspector")

    def says(self) -> str:
        """The sentence that stands over the page."""
        return self.window.told.words.words if self.window.told.isVisible() else ""

    # hands

    def press(self, widget: QWidget) -> None:
        """One touch in the middle of what can be seen there."""
        self.reach(widget)
        middle = widget.rect().center()
        top = widget.window()
        there = top.childAt(widget.mapTo(top, middle))
        assert there is widget or widget.isAncestorOf(there), f"{there} lies over {widget.accessibleName()}"
        self.touches += 1
        self.qtbot.mouseClick(widget, LEFT, pos=middle)

    def reach(self, widget: QWidget) -> None:
        """Scrolled to where it can be touched."""
        QApplication.processEvents()
        above = widget.parentWidget()
        while above is not None:
            if isinstance(above, QScrollArea) and above.widget().isAncestorOf(widget):
                above.ensureWidgetVisible(widget, 0, 40)
            above = above.parentWidget()
        QApplication.processEvents()
        assert widget.isVisible(), f"{widget.accessibleName()} cannot be seen"

    def key(self, key, modifier=Qt.KeyboardModifier.NoModifier) -> None:
        """One key, to whatever has the focus."""
        self.qtbot.keyClick(QApplication.focusWidget() or self.window, key, modifier)

    def type(self, field, text: str) -> None:
        """The field is touched, emptied and filled, letter by letter; Tab leaves it."""
        self.reach(field)
        self.qtbot.mouseClick(field.control, LEFT)
        assert field.control.hasFocus()
        self.qtbot.keyClick(field.control, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
        if text:
            self.qtbot.keyClicks(field.control, text)
        else:
            self.qtbot.keyClick(field.control, Qt.Key.Key_Delete)
        self.qtbot.keyClick(field.control, Qt.Key.Key_Tab)

    def drop(self, widget: QWidget, paths: list[Path]) -> None:
        """These files are dragged onto the widget and let go there."""
        mime = QMimeData()
        mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
        at, copy = widget.rect().center(), Qt.DropAction.CopyAction
        none = Qt.KeyboardModifier.NoModifier
        enter = QDragEnterEvent(QPoint(at), copy, mime, LEFT, none)
        QApplication.sendEvent(widget, enter)
        assert enter.isAccepted()
        QApplication.sendEvent(widget, QDropEvent(QPointF(at), copy, mime, LEFT, none))

    def page(self, name: str) -> None:
        """The page is opened from the bar."""
        self.press(page_name(self.window, name))
        assert self.window.stack.currentWidget() is self.window.pages[name]

    def settle(self) -> None:
        """What works beside the window has ended, and its news has arrived."""
        self.qtbot.waitUntil(lambda: self.desk.pool.waitForDone(0) and not busy(), timeout=20_000)
        for _ in range(12):  # what is laid out may ask what holds it to be laid out again, level by level
            QApplication.processEvents()

    def start(self, year: int | None = 1953) -> None:
        """A machine of the Heron's profile is begun; the page Claim is open."""
        machines = self.window.pages["machines"]
        self.press(machines.start)
        rows = [w for w in machines.profiles.widgets() if "Heron" in w.accessibleName()]
        self.press(rows[0])
        if year:
            self.press(self.window.pages["claim"].year_keys.key(str(year)))


def busy() -> bool:
    from inspector.window import job

    return bool(job._running)


def page_name(window: Window, page: str) -> QWidget:
    """The name of that page in the bar."""
    from inspector.window.look.bar import PageName

    return next(w for w in window.findChildren(PageName) if w.page == page and w.isVisible())


def heron() -> Path:
    return sample_profiles() / HERON


def picture(path: Path, n: int = 0, size=(640, 480)) -> Path:
    """A photograph file whose bytes differ with ``n``; invented, drawn here."""
    image = Image.new("RGB", size, (40 + 20 * n % 200, 90, 120))
    ImageDraw.Draw(image).ellipse((40 + 5 * n, 60, 300, 400), outline=(240, 240, 230), width=9)
    image.save(path, "JPEG" if path.suffix == ".jpg" else None)
    return path


def pressables(widget: QWidget) -> list[Pressable]:
    return [w for w in widget.findChildren(Pressable) if w.isVisible()]
