"""The page Money: what it costs to put right, what it is worth to this buyer, and what to say; never handed over."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QGuiApplication, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from inspector.photo.intake import Source
from inspector.record.edits import Changed
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.intake import sources_of
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.tray import EDGE, TrayStrip
from inspector.window.money.book import Book
from inspector.window.money.comparables import ComparablesView, TablePart
from inspector.window.money.view import View

VIEWS = (("deal", "deal"), ("say", "what to say"), ("remedies", "put right"), ("plan", "plan"),
         ("comparables", "comparables"), ("figures", "figures"), ("wants", "wants"))  # fmt: skip
WIDEST_SCALE = 1.3  # above this size of type the views are behind one key
TABLES = (".csv", ".tsv", ".txt")


class MoneyPage(QWidget):
    """Views of one reckoning; one key leaves nothing of it to be seen."""

    id = "money"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self.private, self.book = desk, desk.private, Book(desk)
        look = desk.look
        self.hide_key = Key(look, tr("hide at once") + "   F9", name=tr("Hide Money at once"))
        options = [Option(view, tr(words)) for view, words in VIEWS]
        self.nav = ChoiceKeys(look, options, held="kept", fit="flow")
        self.menu = MenuKey(look, tr("go to"), options, held="kept")
        views = (self.nav, self.menu)
        self.strip = TrayStrip(look, tr("Never on the seller's copy."), tr("Private."), self.hide_key, views)
        self.stack, self.views = Faces(), dict[str, View]()
        self.blank = Blank(desk)
        self.faces = Faces(self)
        self._lay_out()
        self._add_keys()
        self._connect()
        self.setAcceptDrops(True)
        self.open("deal")
        self._be_hidden(self.private.hidden)

    def _lay_out(self) -> None:
        content = Face()
        box = QVBoxLayout(content)
        box.addWidget(self.strip)
        box.addWidget(self.stack, 1)
        whole = QVBoxLayout(self)
        whole.addWidget(self.faces)
        for layout in (box, whole):
            layout.setContentsMargins(0, 0, 0, 0)
            layout.setSpacing(0)
        self.content = content
        self.faces.addWidget(content)
        self.faces.addWidget(self.blank)

    def _connect(self) -> None:
        self.hide_key.clicked.connect(self.private.hide)
        self.blank.key.clicked.connect(self.private.show)
        self.private.changed.connect(self._be_hidden)
        self.nav.picked.connect(self.open)
        self.menu.picked.connect(self.open)
        self.desk.opened.connect(self._opened)
        self.desk.changed.connect(self.show_change)
        self.desk.look.changed.connect(self._fit)

    def _add_keys(self) -> None:
        for number, (view, words) in enumerate(VIEWS, 1):
            self._key(f"Alt+{number}", tr("Money: {view}", view=tr(words)), partial(self.open, view))
        self._key(QKeySequence.StandardKey.Paste, tr("Paste a table of comparables"), self.paste)

    def _key(self, keys: str | QKeySequence.StandardKey, words: str, act: Callable[[], object]) -> None:
        action = QAction(words, self)
        action.setShortcuts(keys if isinstance(keys, QKeySequence.StandardKey) else [QKeySequence(keys)])
        action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        action.triggered.connect(lambda _=False: act())
        self._actions = [*getattr(self, "_actions", []), action]

    # views

    @property
    def view(self) -> str:
        """The id of the open view."""
        return next((name for name, made in self.views.items() if made is self.stack.currentWidget()), "")

    def open(self, view: str, item: str = "") -> None:
        """That view is open, at that item where one is named."""
        keep_typing()
        if view not in self.views:
            made = self.views[view] = _made(view, self.book)
            made.wanted.connect(self.open)
            self.stack.addWidget(made)
        self.stack.setCurrentWidget(self.views[view])
        self.nav.set_held(view)
        self.menu.set_picked(view)
        if item:
            self.views[view].open_at(item)
        self.show_money()

    def show_money(self) -> None:
        """The open view shows the record as it stands, where it may be seen."""
        if self.desk.session is not None and not self.private.hidden and self.isVisible():
            self.views[self.view].show_money()

    def show_change(self, _: Changed | None) -> None:
        """What is looked at is drawn anew."""
        self.show_money()

    def _opened(self) -> None:
        for view in self.views.values():
            view.let_go()
        self.show_money()

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while another page was open is shown now."""
        super().showEvent(event)
        self._fit()
        self.show_money()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may have no room for all keys."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """One key for all views where theirs would take many lines."""
        look = self.desk.look
        many = look.text_scale > WIDEST_SCALE or self.nav.sizeHint().width() > self.width() - 2 * look.px(EDGE)
        self.nav.setVisible(not many)
        self.menu.setVisible(many)

    # hiding

    def _be_hidden(self, hidden: bool) -> None:
        self.faces.setCurrentWidget(self.blank if hidden else self.content)
        for action in self._actions:
            (self.removeAction if hidden else self.addAction)(action)
        if not hidden:
            self.show_money()

    # tables from outside

    def paste(self) -> None:
        """A table of comparables that was copied elsewhere is entered; a picture stands at the open comparable."""
        self._take(QGuiApplication.clipboard().mimeData())

    def _take(self, mime: QMimeData) -> None:
        """What was pasted or let go: a file with a table, pictures, or the text of a table."""
        files, text = _tables(mime), mime.text()
        if files:
            self._table(lambda part: part.enter_file(files[0]))
        elif self._takes_pictures() and (sources := sources_of(mime)):
            self._bring(sources)
        elif text.strip() and not mime.hasUrls():
            self._table(lambda part: part.enter(text))

    def _table(self, act: Callable[[TablePart], object]) -> None:
        self.open("comparables")
        view = self.views["comparables"]
        if isinstance(view, ComparablesView):
            act(view.table)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file with a table, or its text, may be let go here."""
        mime = event.mimeData()
        table = _tables(mime) or (mime.hasText() and not mime.hasUrls())
        if not self.private.hidden and (table or (self._takes_pictures() and sources_of(mime))):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """The table is entered; pictures stand at the open comparable."""
        event.acceptProposedAction()
        self._take(event.mimeData())

    def _takes_pictures(self) -> bool:
        """Whether a comparable is open, at which pictures can stand."""
        view = self.stack.currentWidget()
        return isinstance(view, ComparablesView) and bool(view.open_id)

    def _bring(self, sources: list[Source]) -> None:
        view = self.stack.currentWidget()
        if isinstance(view, ComparablesView):
            view.form.pictures.take_in(sources)


class Faces(QStackedWidget):
    """One of several shown; as high as there is room, since each scrolls by itself."""

    def hasHeightForWidth(self) -> bool:
        """Its height is that of the page."""
        return False


class Face(QWidget):
    """What scrolls by itself, and is as high as there is room."""

    def hasHeightForWidth(self) -> bool:
        """Its height is that of the page."""
        return False


class Blank(QWidget):
    """Paper with one word on it, which brings back what was hidden."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.key = Key(desk.look, tr("show"), name=tr("Show what was hidden"))
        box = QVBoxLayout(self)
        box.addWidget(self.key, 0, Qt.AlignmentFlag.AlignCenter)


def _tables(mime: QMimeData) -> list[Path]:
    """The files with tables among what is pasted or let go."""
    paths = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
    return [path for path in paths if path.suffix.lower() in TABLES]


def _made(view: str, book: Book) -> View:
    # A view costs a frame or two to make; most are never looked at beside a machine.
    from inspector.window.money.dealing import DealView
    from inspector.window.money.figures import FiguresView
    from inspector.window.money.planning import PlanView
    from inspector.window.money.remedies import RemediesView
    from inspector.window.money.saying import SayView
    from inspector.window.money.wanted import WantsView

    kinds: dict[str, Callable[[Book], View]] = {
        "deal": DealView, "say": SayView, "remedies": RemediesView, "plan": PlanView,
        "comparables": ComparablesView, "figures": FiguresView, "wants": WantsView,
    }  # fmt: skip
    return kinds[view](book)
