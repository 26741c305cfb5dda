"""The bench: a photograph large, keys for one kind of work beside it, and the word that the original is untouched."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.bench.beside import BesidePanel
from inspector.window.bench.canvas import Canvas
from inspector.window.bench.copies import WorkingCopy
from inspector.window.bench.figures import FiguresPanel
from inspector.window.bench.light import LightPanel
from inspector.window.bench.marking import MarkPanel
from inspector.window.bench.measuring import MeasurePanel
from inspector.window.bench.subject import Subject
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import HAIR, Hairline, Text

if TYPE_CHECKING:
    from pathlib import Path

    from inspector.record.finding import Photograph
    from inspector.window.bench.panel import Panel
    from inspector.window.desk import Desk

SIDE_MM, MOST_SHARE, LOW_SHARE, TALL = 84.0, 0.5, 0.48, 1.0
WAYS = ("light", "beside", "mark", "measure", "figures")


class Bench(QWidget):
    """One photograph to look at closely; ``left`` tells that the page before is wanted again."""

    id = "bench"
    left = Signal()

    def __init__(self, desk: Desk, photo_id: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self.look = desk, desk.look
        self.before: QWidget | None = None  # the page that comes again when it is left
        self.subject = Subject(desk, photo_id, self)
        self.canvas = Canvas(desk, self.subject.copy)
        self.second_copy = WorkingCopy(desk, self)
        self.second = Canvas(desk, self.second_copy)
        self.second.hide()
        self._alike = False  # whether what stands beside is seen and worked as the first is
        self._fill()
        self._connect()
        self._add_keys()
        self.open_way("light")
        self._load()

    # what stands on it

    def _fill(self) -> None:
        look = self.look
        self.head = Text(look)
        self.original = Text(look, tr("The original is being checked."), ink="soft", step="small")
        self.close_key = Key(look, tr("close"), name=tr("Close the bench"))
        names = {"light": tr("tools"), "beside": tr("beside"), "mark": tr("mark"), "measure": tr("measure"),
                 "figures": tr("figures")}  # fmt: skip
        self.ways = ChoiceKeys(look, [Option(way, names[way]) for way in WAYS], held="kept", fit="fill")
        measuring = MeasurePanel(self.subject, self.canvas)
        self.measuring = measuring
        self.panels: dict[str, Panel] = {
            "light": LightPanel(self.subject, self.canvas),
            "beside": BesidePanel(self.subject, self.canvas),
            "mark": MarkPanel(self.subject, self.canvas),
            "measure": measuring,
            "figures": FiguresPanel(self.subject, self.canvas, measuring),
        }
        self.side = Column(look, edge=5, top=4)
        self.side.add(self.ways)
        for panel in self.panels.values():
            self.side.add(panel, 4)
            panel.hide()
        self.side_scroll = Scroll(look, self.side)
        self._arrange()

    def _arrange(self) -> None:
        look = self.look
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(self.head)
        words.addWidget(self.original)
        top = QHBoxLayout()
        top.setContentsMargins(look.px(5), look.px(1.5), look.px(5), look.px(1.5))
        top.setSpacing(look.px(4))
        top.addLayout(words, 1)
        top.addWidget(self.close_key, 0, Qt.AlignmentFlag.AlignVCenter)
        pictures = self._pictures = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        pictures.setSpacing(look.px(1))
        pictures.addWidget(self.canvas, 1)
        pictures.addWidget(self.second, 1)
        self._body = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._body.setSpacing(0)
        self._body.addLayout(pictures, 1)
        self._body.addWidget(self.side_scroll)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addLayout(top)
        box.addWidget(Hairline(look, thick=HAIR))
        box.addLayout(self._body, 1)

    def _connect(self) -> None:
        self.close_key.clicked.connect(self.left)
        self.ways.picked.connect(self.open_way)
        self.subject.copy.checked.connect(self._checked)
        self.subject.changed.connect(self._changed)
        self.canvas.moved.connect(self._linked)
        self.second.moved.connect(self._linked_back)
        beside = self.panels["beside"]
        assert isinstance(beside, BesidePanel)
        beside.wanted.connect(self.put_beside)
        beside.file_wanted.connect(self.put_file_beside)
        self.measuring.straight.connect(self._show_straight)
        self.subject.copy.ready.connect(self._dressed_alike)
        self.subject.copy.ready.connect(self._first_seen)
        self.second_copy.ready.connect(self._shape)
        self.look.changed.connect(self._shape)

    def _add_keys(self) -> None:
        action = QAction(tr("Close the bench"), self)
        action.setShortcut(QKeySequence(Qt.Key.Key_Escape))
        action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        action.triggered.connect(self._escape)
        self.addAction(action)
        for n, way in enumerate(WAYS, 1):
            key = QAction(self.ways.key(way).title, self)
            key.setShortcut(QKeySequence(f"Alt+{n}"))
            key.triggered.connect(lambda _=False, way=way: self.open_way(way))
            self.addAction(key)
        for keys, words in _picture_keys():
            told = QAction(words, self)
            told.setShortcut(keys)
            told.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            self.addAction(told)

    def _escape(self, _: bool = False) -> None:
        """What is held is let go first; then the bench closes."""
        canvas = self.canvas
        if canvas.selected >= 0 or canvas.begun is not None:
            canvas.selected, canvas.begun = -1, None
            canvas.update()
        else:
            self.left.emit()

    # showing

    def _load(self) -> None:
        photograph = self.subject.photograph
        if photograph is None:
            return
        name = photograph.caption or photograph.name
        self.head.say(tr("A working copy. Nothing done here touches the original."), name)
        self.canvas.setAccessibleName(tr("Photograph {name}, working copy", name=name))
        self.second.setAccessibleName(tr("The photograph beside it, working copy"))
        self.subject.copy.load(photograph)

    def _first_seen(self) -> None:
        """What is kept of the photograph can be drawn now that its size is known."""
        self.panels[self.way].show_kept()
        self.canvas.update()

    def _checked(self, well: bool, words: str) -> None:
        self.original.say(words)

    def _changed(self) -> None:
        if self.subject.photograph is None:
            self.left.emit()
        else:
            self.subject.copy.check()

    @property
    def way(self) -> str:
        """The kind of work that is open."""
        return (self.ways.held() or ["light"])[0]

    def open_way(self, way: str) -> None:
        """This kind of work is open."""
        self.ways.set_held(way)
        for name, panel in self.panels.items():
            panel.setVisible(name == way)
        if way != "measure" and self.measuring.above_view.held:  # the key that takes it away again is not there
            self.measuring.above_view.hold("")
            self.second.hide()
        self.panels[way].open()
        self.side_scroll.verticalScrollBar().setValue(0)

    # two side by side

    def put_beside(self, photograph: Photograph | None) -> None:
        """This photograph stands beside the first, or none does."""
        self.second.setVisible(photograph is not None)
        self.measuring.above_view.hold("")
        self._alike = photograph is not None
        if photograph is not None:
            self.second_copy.tools = self.subject.copy.tools
            self.second_copy.load(photograph)
            self._linked()

    def put_file_beside(self, path: Path) -> None:
        """The picture in that file stands beside the first; the record does not get it."""
        self.second.show()
        self.measuring.above_view.hold("")
        self._alike = True
        self.second_copy.tools = self.subject.copy.tools
        self.second_copy.load_file(path)
        self._linked()

    def _show_straight(self, levels: object) -> None:
        """The plane seen from above stands beside the photograph, or goes again."""
        if self.way != "measure":  # it was left meanwhile
            return
        there = self.second.isVisible() and not self._alike
        self._alike = False
        self.measuring.above_view.hold("" if there else "kept")
        if there:
            self.second.hide()
            return
        self.second.follow(type(self.second.sight)())
        self.second_copy.show_pixels(levels)  # type: ignore[arg-type]
        self.second.show()

    def _dressed_alike(self) -> None:
        """Both are worked with the same tools."""
        copy = self.second_copy
        if self.second.isVisible() and self._alike and copy.tools != self.subject.copy.tools:
            copy.use(self.subject.copy.tools)

    def _are_linked(self) -> bool:
        beside = self.panels["beside"]
        assert isinstance(beside, BesidePanel)
        return not self.second.isHidden() and self._alike and beside.are_linked()

    def _linked(self) -> None:
        if self._are_linked():
            self.second.follow(self.canvas.sight)

    def _linked_back(self) -> None:
        if self._are_linked():
            self.canvas.follow(self.second.sight)

    # its shape

    def showEvent(self, event: QShowEvent) -> None:
        """Keys work on the picture at once."""
        super().showEvent(event)
        self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Upright, the keys stand below the picture."""
        super().resizeEvent(event)
        self._shape()

    def _shape(self) -> None:
        tall = self.height() > self.width() * TALL
        ways = QBoxLayout.Direction
        self._body.setDirection(ways.TopToBottom if tall else ways.LeftToRight)
        if tall:
            self.side_scroll.setMinimumWidth(0)
            self.side_scroll.setMaximumWidth(16_777_215)
            self.side_scroll.setFixedHeight(round(self.height() * LOW_SHARE))
        else:
            self.side_scroll.setMinimumHeight(0)
            self.side_scroll.setMaximumHeight(16_777_215)
            self.side_scroll.setFixedWidth(min(self.look.grown(SIDE_MM), round(self.width() * MOST_SHARE)))
        self._pictures.setDirection(ways.TopToBottom if self._better_stacked() else ways.LeftToRight)

    def _better_stacked(self) -> bool:
        """Whether two pictures are larger one under the other than beside one another."""
        room = self._pictures.geometry().size()
        wide, high = self.subject.copy.size
        if not wide or not high or room.isEmpty():
            return False
        beside = min(room.width() / 2 / wide, room.height() / high)
        return min(room.width() / wide, room.height() / 2 / high) > beside

    def close_down(self) -> None:
        """What is being made beside the window is waited for."""
        self.subject.copy.close()
        self.second_copy.close()


def _picture_keys() -> tuple[tuple[str, str], ...]:
    """The keys that work on the picture, each with what it does."""
    return (
        ("+", tr("Larger")), ("-", tr("Smaller")), ("0", tr("The whole photograph")), ("1", tr("One pixel to one")),
        ("Left", tr("Move the picture, or the handle that is chosen")),
        (".", tr("The next handle")), (",", tr("The handle before")),
        ("Return", tr("Put a point at the cross, or begin and end a mark there")),
        ("Delete", tr("Take the chosen handle out")),
    )  # fmt: skip
