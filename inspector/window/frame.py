"""The window: the bar of pages, the page that is open, and one sentence when there is something to say."""

from collections.abc import Callable, Iterator, Mapping
from functools import partial

from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtGui import QAction, QCloseEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QMainWindow, QStackedWidget, QStyle, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.job import stop_all
from inspector.window.keylist import KeyList
from inspector.window.look.bar import PageFrame
from inspector.window.machines.settings import SCALES, SCHEMES
from inspector.window.reading import step_focus
from inspector.window.steps import KeepsSteps, OwnSteps
from inspector.window.told import Told

PRIVATE, HIDE = "money", "F9"  # the page that can be hidden, and the key that hides it


class Pages(Mapping[str, QWidget]):
    """The pages by their id, each made when it is first asked for."""

    def __init__(self, makers: dict[str, Callable[[], QWidget]], made: Callable[[QWidget], None]) -> None:
        self._makers, self._announce = makers, made
        self.made: dict[str, QWidget] = {}

    def __getitem__(self, page: str) -> QWidget:
        if page not in self.made:
            self.made[page] = self._makers[page]()
            self._announce(self.made[page])
        return self.made[page]

    def __contains__(self, page: object) -> bool:
        return page in self._makers

    def __iter__(self) -> Iterator[str]:
        return iter(self._makers)

    def __len__(self) -> int:
        return len(self._makers)


class Window(QMainWindow):
    """Holds the pages; every page hears of changes from the desk, not from here."""

    def __init__(self, desk: Desk, pages: list[tuple[str, str, Callable[[], QWidget]]], settings: QSettings) -> None:
        super().__init__()
        self.desk, self.settings = desk, settings
        self.pages = Pages({key: make for key, _, make in pages}, self._take)
        self._words = [(key, word) for key, word, _ in pages]
        self.frame = PageFrame(desk.look)
        self.stack = QStackedWidget()
        self.told = Told(desk)
        body = QWidget()
        box = QVBoxLayout(body)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.told)
        box.addWidget(self.stack, 1)
        self.frame.set_body(body)
        self.setCentralWidget(self.frame)
        self._add_actions()
        self._connect()
        self.show_machine()
        self.show_page("machines")
        self._restore()

    def _connect(self) -> None:
        self.frame.pageChosen.connect(self.show_page)
        self.frame.undo.clicked.connect(self.undo)
        self.stack.currentChanged.connect(self._not_yet_seen)
        self.desk.wanted.connect(self.show_page)
        self.desk.opened.connect(self.show_machine)
        self.desk.changed.connect(lambda _: self.show_machine())
        self.desk.told.connect(self.told.say)
        self.desk.offered.connect(self.told.say)
        self.desk.looking.connect(self.look_at)
        self.desk.look.changed.connect(self._dress)
        self.desk.private.changed.connect(self._be_private)
        self._dress()

    def _dress(self) -> None:
        from inspector.window.look.inks import palette

        self.setPalette(palette(self.desk.look.inks))
        self.settings.setValue("scheme", self.desk.look.scheme)
        self.settings.setValue("text_scale", self.desk.look.text_scale)

    # pages

    def _take(self, page: QWidget) -> None:
        self.stack.addWidget(page)
        if isinstance(page, KeepsSteps):
            page.own_steps.changed.connect(self.show_machine)
        asks = getattr(page, "look_at", None)
        if asks is not None:
            asks.connect(self.desk.looking)

    def show_page(self, page: str) -> None:
        """The page with this id is open; without a machine only the list of machines is."""
        if page not in self.pages or (self.desk.session is None and page != "machines"):
            return
        keep_typing()
        self.stack.setCurrentWidget(self.pages[page])
        self.frame.set_current(page)
        self.show_machine()

    def _not_yet_seen(self, at: int) -> None:
        """A touch that came while the page was made was meant for the one before: it touches nothing."""
        page, through = self.stack.widget(at), Qt.WidgetAttribute.WA_TransparentForMouseEvents
        if page is not None:
            page.setAttribute(through)
            # It comes when nothing else waits: what was touched so far is gone by, and the page is laid out.
            QTimer.singleShot(0, page, lambda: page.setAttribute(through, on=False))

    def look_at(self, photograph: str) -> None:
        """The photograph with this id is on the bench, over the page that is open."""
        from inspector.window.bench.over import put_on_bench

        keep_typing()
        put_on_bench(self.desk, self.stack, photograph)

    @property
    def _own(self) -> OwnSteps | None:
        """The steps that the open page keeps for itself, beside those of the machine."""
        page = self.stack.currentWidget()
        return page.own_steps if isinstance(page, KeepsSteps) else None

    def undo(self) -> None:
        """The last step of the open page is taken back; where it has none, that of the machine."""
        own = self._own
        if own is not None and own.undo_label:
            own.undo()
        else:
            self.desk.undo()

    def redo(self) -> None:
        """The step last taken back is done again, that of the open page before that of the machine."""
        own = self._own
        if own is not None and own.redo_label:
            own.redo()
        else:
            self.desk.redo()

    def show_machine(self) -> None:
        """The bar tells of the open machine, of what was kept when, and of what can be undone."""
        session = self.desk.session
        why = tr("Start or open a machine first.")
        words = [(key, self._word(key, word)) for key, word in self._words]
        self.frame.set_pages([(key, word, session is not None or key == "machines", why) for key, word in words])
        if session is None:
            self.setWindowTitle(tr("Inspector"))
            self.frame.set_machine(tr("Inspector"))
            self.frame.set_kept("")
            self._show_undo()
            return
        claim = session.record.claim
        year = tr("claimed {year}", year=claim.model_year) if claim.model_year else tr("no year claimed yet")
        self.setWindowTitle(f"{claim.model} – {tr('Inspector')}")
        self.frame.set_machine(claim.model, year)
        self.frame.set_kept(tr("kept {time}", time=session.kept_at[11:16]) if session.kept_at else "")
        self._show_undo()

    def _word(self, page: str, word: str) -> str:
        """The name of the page, which for a private one says nothing while it is hidden."""
        return tr("Hidden") if page == PRIVATE and self.desk.private.hidden else word

    def _be_private(self, hidden: bool) -> None:
        """No word of what is private is left in the window, or all of them are back."""
        from inspector.window.look.menus import WordList

        if hidden:
            self.told.hide()
            for words in self.findChildren(WordList):
                words.close()
        for page, action in self._page_actions.items():
            action.setText(self._word(page, dict(self._words)[page]))
        self.show_machine()

    def _show_undo(self) -> None:
        own, session = self._own, self.desk.session
        undo = (own and own.undo_label) or (session and session.undo_label)
        redo = (own and own.redo_label) or (session and session.redo_label)
        quiet = self.desk.private.hidden  # what was done may have been about money
        self.frame.undo.turn_off("" if undo else tr("There is nothing to undo."))
        self.frame.undo.say(name=tr("undo: {what}", what=tr(undo)) if undo and not quiet else tr("undo"))
        self.undo_action.setText(tr("Undo {what}", what=tr(undo)) if undo and not quiet else tr("Undo"))
        self.redo_action.setText(tr("Redo {what}", what=tr(redo)) if redo and not quiet else tr("Redo"))

    # keys of the whole window

    def _add_actions(self) -> None:
        self.undo_action = self._action(tr("Undo"), QKeySequence.StandardKey.Undo, self.undo)
        self.redo_action = self._action(tr("Redo"), QKeySequence.StandardKey.Redo, self.redo)
        self._page_actions = {
            key: self._action(word, f"Ctrl+{n}", partial(self.show_page, key))
            for n, (key, word) in enumerate(self._words, 1)
        }
        self._action(tr("Hide what is private, or show it"), HIDE, self.desk.private.turn)
        self._action(tr("Scheme: light, dark, sunlight"), "F8", self.next_scheme)
        self._action(tr("Larger type"), QKeySequence.StandardKey.ZoomIn, lambda: self._scale(1))
        self._action(tr("Smaller type"), QKeySequence.StandardKey.ZoomOut, lambda: self._scale(-1))
        self._action(tr("Keys of the keyboard"), "F1", self.list_keys)
        self._action(tr("Full screen"), "F11", self._full_screen)

    def _action(self, words: str, keys: str | QKeySequence.StandardKey, act: Callable[[], object]) -> QAction:
        action = QAction(words, self)
        # A standard key may stand for several: both Ctrl+Y and Ctrl+Shift+Z do again.
        action.setShortcuts(keys if isinstance(keys, QKeySequence.StandardKey) else [QKeySequence(keys)])
        action.triggered.connect(lambda _=False: act())
        self.addAction(action)
        return action

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The key that hides works also where an open list of words keeps the others to itself."""
        if event.key() == Qt.Key.Key_F9 and not event.isAutoRepeat():
            self.desk.private.turn()
        else:
            super().keyPressEvent(event)

    def list_keys(self) -> KeyList:
        """The keys of the open page and of the window are listed."""
        page = self.stack.currentWidget()
        here = page.actions() if page is not None else []
        lists = [(tr("On this page"), here)] if here else []
        dialog = KeyList(self.desk.look, [*lists, (tr("Everywhere"), self.actions())], self)
        dialog.open()
        return dialog

    def next_scheme(self) -> None:
        """The next of system, light, dark and sunlight holds."""
        look = self.desk.look
        look.set_scheme(SCHEMES[(SCHEMES.index(look.scheme) + 1) % len(SCHEMES)])
        self.told.say(tr("Scheme: {name}", name=tr(look.scheme)))

    def _scale(self, step: int) -> None:
        look = self.desk.look
        at = min(range(len(SCALES)), key=lambda n: abs(SCALES[n] - 100 * look.text_scale)) + step
        look.set_text_scale(SCALES[min(max(at, 0), len(SCALES) - 1)] / 100)

    def _full_screen(self) -> None:
        self.showNormal() if self.isFullScreen() else self.showFullScreen()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order. What goes out of sight hands on only a keyboard that is at work."""
        focus = QApplication.focusWidget()
        if focus is not None and not focus.isVisible() and not self.desk.look.by_keyboard:
            focus.clearFocus()
            return True
        return step_focus(self, forward)

    # where it stood

    def _restore(self) -> None:
        geometry = self.settings.value("geometry")
        if geometry is None or not self.restoreGeometry(geometry):
            self.resize(1280, 800)

    def appear(self) -> None:
        """The window is shown, filling a screen that has no room for it and its title."""
        room, title = self.screen().availableSize(), self.style().pixelMetric(QStyle.PixelMetric.PM_TitleBarHeight)
        if self.width() > room.width() or self.height() + title > room.height():
            self.showMaximized()
        else:
            self.show()

    def closeEvent(self, event: QCloseEvent) -> None:
        """What is typed is kept, and so is where the window stood; nothing is asked."""
        self.desk.close()
        self.settings.setValue("geometry", self.saveGeometry())
        stop_all()
        self.desk.pool.waitForDone(5000)
        super().closeEvent(event)
