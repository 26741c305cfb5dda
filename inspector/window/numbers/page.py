"""The page Numbers: places and papers, the open one read figure by figure, and how it stands beside the others."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QKeySequence, QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.record.claim import Paper
from inspector.record.edits import Changed, Part
from inspector.record.verbs import put_entry
from inspector.record.words import HowRead
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.look.columns import Column, Columns
from inspector.window.look.figurepad import LETTERS, FigurePad
from inspector.window.look.scroll import top_in_area
from inspector.window.numbers.beside import Beside
from inspector.window.numbers.how import SAID
from inspector.window.numbers.paper import PaperView
from inspector.window.numbers.place import PlaceView
from inspector.window.numbers.places import Places
from inspector.window.numbers.readings import Shown, all_shown, free_id, reading_of

LIST_MM, BESIDE_MM = 64.0, 80.0
REST_MS = 120  # after the last figure, before all that follows from it is worked out
PARTS = {Part.READINGS, Part.PAPERS, Part.PHOTOGRAPHS, Part.CLAIM, Part.PEOPLE}


class NumbersPage(QWidget):
    """Every figure and every word is kept when it is written."""

    id = "numbers"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self.shown = desk, Shown()
        look = desk.look
        self.places, self.place, self.paper, self.beside = Places(desk), PlaceView(desk), PaperView(desk), Beside(desk)
        self.middle = Column(look)
        self.middle.add(self.place)
        self.middle.add(self.paper, 0)
        self.columns = Columns(look, [(self.places, LIST_MM), (self.middle, 0), (self.beside, BESIDE_MM)], beside=False)
        self.pad = FigurePad(look)
        self.setAcceptDrops(True)
        self.pad.hide()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.columns, 1)
        box.addWidget(self.pad)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._connect()
        self._add_keys()
        self.places.be_brief(self.columns.narrow)
        self.show_machine()

    def _connect(self) -> None:
        self._rest.timeout.connect(self._show_rest)
        self.columns.narrowChanged.connect(self.places.be_brief)
        self.places.chosen.connect(self.open)
        self.places.another.clicked.connect(self.another_reading)
        self.places.paper.clicked.connect(self.add_paper)
        self.place.onward.connect(partial(self.step, 1))
        self.place.pad.connect(self.show_pad)
        self.pad.typed.connect(self._type)
        self.pad.commanded.connect(self._command)
        self.pad.done.connect(partial(self.show_pad, False))
        self.desk.opened.connect(self.show_machine)
        self.desk.placed.connect(self.open_place)
        self.desk.changed.connect(self.show_change)

    def _add_keys(self) -> None:
        self._key(QKeySequence.StandardKey.Paste, tr("Paste a photograph"), self._paste)
        self._key("Ctrl+O", tr("Add photographs"), self._add_photographs)
        for keys, words in writing_keys():
            self._tell(keys, words)
        self._key("PgDown", tr("Next place or paper"), partial(self.step, 1))
        self._key("PgUp", tr("Place or paper before"), partial(self.step, -1))
        for n, how in enumerate(SAID, 1):
            self._key(f"Alt+{n}", tr("Read {how}", how=tr(how.value)), partial(self._say_how, how))
        self._key("Ctrl+Return", tr("Another reading of this place"), self.another_reading)
        self._key("Ctrl+N", tr("Add a paper"), self.add_paper)

    def _key(self, keys: str | QKeySequence.StandardKey, words: str, act: Callable[[], object]) -> None:
        action = QAction(words, self)
        action.setShortcuts(keys if isinstance(keys, QKeySequence.StandardKey) else [QKeySequence(keys)])
        action.triggered.connect(lambda _=False: self.desk.session is not None and act())
        self.addAction(action)

    def _tell(self, keys: str, words: str) -> None:
        """The key is listed among those of the page; what it does is done where one writes."""
        action = QAction(words, self)
        action.setShortcut(keys)
        action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
        self.addAction(action)

    # showing

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while another page was open is shown, and keys write in the open number."""
        super().showEvent(event)
        if self.desk.session is not None:
            self.show_change(None)
            self.begin()

    def show_machine(self) -> None:
        """The numbers of the open machine are shown, the first place open."""
        if self.desk.session is not None:
            self._open(all_shown(self.desk.profile, self.desk.record)[:1])

    def _open(self, found: tuple[Shown, ...]) -> None:
        self.shown = found[0] if found else Shown()
        self.place.setVisible(bool(self.shown.place))
        self.paper.setVisible(bool(self.shown.paper))
        if self.shown.place:
            self.place.open(self.shown)
            known = self.desk.profile.place_by_id.get(self.shown.place)
            rules = known.rules if known else ()
            self.pad.dim([x for x in LETTERS if rules and all(x in rule.never_used for rule in rules)])
        elif self.shown.paper:
            self.paper.open(self.shown)
            self.show_pad(False)
        self._show_rest()

    def show_change(self, changed: Changed | None) -> None:
        """What the change touched is shown again; what is not looked at waits until the page is opened."""
        if self.desk.session is None or not self.isVisible() or (changed is not None and not changed.parts & PARTS):
            return
        there = all_shown(self.desk.profile, self.desk.record)
        if self.shown not in there:
            after = next_shown(there, self.shown) if there else Shown()
            if not self.place.becomes(self.shown, after):
                self._open((after,))
                return
            self.shown = after
        if self.shown.place:
            self.place.show_reading()
        elif self.shown.paper:
            self.paper.show_paper()
        if changed is None:
            self._show_rest()
        else:
            self.places.show_one(self.shown)
            self._rest.start()

    def _show_rest(self) -> None:
        self._rest.stop()
        if self.desk.session is None:
            return
        self.places.show_all(self.shown)
        self.beside.show_shown(self.shown)
        self.beside.stamping.show_reading(self.shown, reading_of(self.desk.record, self.shown))

    # what is dropped anywhere on the page is for the open place

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped while a place is open."""
        if self.shown.place:
            self.place.photographs.strip.dragEnterEvent(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """What is dropped is taken in for the open place."""
        self.place.photographs.strip.dropEvent(event)

    def _paste(self) -> None:
        if self.shown.place:
            self.place.photographs.strip.paste_now()

    def _say_how(self, how: HowRead) -> None:
        if self.shown.place and self.shown.reading:
            self.place.how.say_how(how)
        else:
            self.desk.told.emit(tr("Read the number first, then say how you read it."))

    def _add_photographs(self) -> None:
        if self.shown.place:
            self.place.photographs.strip.plus.click()

    # what the hands do

    def open(self, shown: Shown) -> None:
        """This place or paper is open, and keys write there."""
        keep_typing()
        self.desk.here.end_visit()
        self._open((shown,))
        self.places.come_to(shown)
        self.come_to_top()
        self.begin()

    def open_place(self, place: str) -> None:
        """The first reading at this place is open, or the place where nothing was read yet; none if it is unknown."""
        found = [shown for shown in all_shown(self.desk.profile, self.desk.record) if shown.place == place]
        if place and found:
            self.open(found[0])

    def come_to_top(self) -> None:
        """The head of what is open is where one looks; in one column with the list above it, if there is room."""
        found = top_in_area(self.middle)
        if found is not None:
            area, top = found
            area.verticalScrollBar().setValue(top if top > area.height() * 3 // 4 else 0)

    def begin(self) -> None:
        """Keys write in the open number; at a paper they stay where they are."""
        if self.shown.place:
            self.place.begin()

    def step(self, by: int) -> None:
        """The next place or paper is open, or the one before; at the ends it stays."""
        there = all_shown(self.desk.profile, self.desk.record)
        at = there.index(self.shown) + by if self.shown in there else 0
        if 0 <= at < len(there):
            self.open(there[at])

    def another_reading(self) -> None:
        """A second reading of the open place stands beside the first, and is open."""
        if not self.shown.place or not self.shown.reading:
            self.desk.told.emit(tr("Read the place once before you read it again."))
            return
        before = {reading.id for reading in self.desk.record.readings}
        self.place.another()
        for reading in self.desk.record.readings:
            if reading.id not in before:
                self.open(Shown(place=reading.place, reading=reading.id))

    def add_paper(self) -> None:
        """A new paper stands at the end, ready to be written."""
        keep_typing()
        key = free_id((paper.id for paper in self.desk.record.papers), "paper")
        if self.desk.do(put_entry(Part.PAPERS, Paper(id=key, name=""), label="Add a paper")):
            self.open(Shown(paper=key))
            self.paper.begin()

    def show_pad(self, wanted: bool) -> None:
        """The keys to touch are there, or away."""
        self.pad.setVisible(wanted and bool(self.shown.place))
        self.begin()
        if self.pad.isVisible():
            QTimer.singleShot(0, self, self._reach)

    def _reach(self) -> None:
        """What is written is seen over the keys: photograph, figures, and what the figure could be."""
        found = top_in_area(self.place.cells)
        if found is not None:
            area, top = found
            pane = self.place.photographs.pane
            above = (
                pane.height() if pane.isVisible() and pane.height() + self.place.cells.height() < area.height() else 0
            )
            area.verticalScrollBar().setValue(top - above - self.desk.look.px(4))

    def _type(self, text: str) -> None:
        self.place.type(text)
        self.place.begin()

    def _command(self, word: str) -> None:
        self.place.command(word)
        self.place.begin()


def writing_keys() -> tuple[tuple[str, str], ...]:
    """The keys that mean something among the figures, each with what it does."""
    return (
        (",", tr("or: the next one is what else the figure could be")),
        ("?", tr("The figure is unreadable")),
        ("Space", tr("A gap stands here")),
        ("Insert", tr("A figure was left out here")),
        ("Delete", tr("Take this figure out")),
        ("Backspace", tr("Take the figure before out")),
        ("Return", tr("On to the next place")),
    )


def next_shown(there: tuple[Shown, ...], gone: Shown) -> Shown:
    """What is open after the open one went: another of the same place, else the first."""
    same = [shown for shown in there if gone.place and shown.place == gone.place]
    return (same or list(there))[-1 if same else 0]
