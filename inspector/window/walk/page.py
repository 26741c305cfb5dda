"""The page Walk: where one is, the open item, what is known so far, and the keys of the keyboard."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget

from inspector.record.edits import Changed, Part
from inspector.record.words import Mark
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.look.columns import Columns
from inspector.window.look.outline import OutlineView
from inspector.window.look.press import Pressable
from inspector.window.look.scroll import bring_into_sight, top_in_area
from inspector.window.walk.facts import Facts
from inspector.window.walk.item import UNSEEN, ItemView
from inspector.window.walk.left import Where

LEFT_MM, FACTS_MM = 77.0, 66.0
BESIDE = 2  # so many safety findings have room beside the drawing
ANEW = {Part.CLAIM, Part.CHOICES}


class WalkPage(QWidget):
    """One item after another, each kept at once."""

    id = "walk"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._fresh = False
        self.where, self.item, self.facts = Where(desk), ItemView(desk), Facts(desk)
        self.columns = Columns(
            desk.look, [(self.where, LEFT_MM), (self.item, 0), (self.facts, FACTS_MM)],
            over=self.facts.above, feet={self.facts: self.facts.foot},
        )  # fmt: skip
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.columns, 1)
        box.addWidget(self.item.foot)
        self.item.put_above(self.where.strip)
        self.columns.narrowChanged.connect(self.be_brief)
        self.be_brief(self.columns.narrow)
        self.setAcceptDrops(True)
        self._add_keys()
        desk.opened.connect(self.show_machine)
        desk.moved.connect(self.show_item)
        desk.changed.connect(self.show_change)
        self.show_machine()

    # what is dropped anywhere on the page is for the open item

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped."""
        self.item.photographs.dragEnterEvent(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """What is dropped is taken in for the open item."""
        self.item.photographs.dropEvent(event)

    # showing

    def be_brief(self, brief: bool) -> None:
        """In one column everything above the item takes few lines."""
        self.where.be_brief(brief)
        self.facts.be_brief(brief)
        self._place_safety()
        self.where.strip.setVisible(brief)

    def _place_safety(self) -> None:
        """In one column much that is unsafe takes the whole width; the name of the item then stands at its marks."""
        much = self.desk.session is not None and len(self.desk.judgement.safety.findings) > BESIDE
        above = self.columns.narrow and (much or self.columns.form() == "one")
        self.facts.put_safety_above(above)
        self.item.foot.name.setVisible(above)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may leave no room beside the drawing."""
        super().resizeEvent(event)
        self._place_safety()

    def showEvent(self, event: QShowEvent) -> None:
        """A machine just opened is seen from the top."""
        super().showEvent(event)
        if self._fresh and self.desk.session is not None:
            self._fresh = False
            QTimer.singleShot(0, self, self._see_all)  # what is shown is laid out only then

    def _see_all(self) -> None:
        """The page is seen from its top: what is unsafe comes first."""
        found = top_in_area(self.item)
        if found is not None:
            found[0].verticalScrollBar().setValue(0)

    def show_machine(self) -> None:
        """The open machine is shown, at the item where it was left."""
        if self.desk.session is not None:
            self.where.show_machine()
            self.show_item()
            self._fresh = not self.isVisible()
            self._see_all()

    def show_item(self, _: str = "") -> None:
        """The open item is shown, from its top."""
        self.item.show_item()
        self._show_rest()
        top_in_area(self.where)  # laid out now: whatever is painted is painted once
        self.item.come_to_top()

    def show_change(self, changed: Changed | None) -> None:
        """What the change touched is shown again, and nothing else."""
        if self.desk.session is None:
            return
        if changed is not None and changed.parts & ANEW:
            self.item.show_item()
        elif changed is None or self.desk.item in changed.items or Part.PHOTOGRAPHS in changed.parts:
            self.item.show_finding()
        if changed is not None and Part.READINGS in changed.parts:
            self.item.as_read.show_item()
        self._show_rest()

    def _show_rest(self) -> None:
        self.where.show_judgement()
        self.facts.show_judgement()
        self._place_safety()

    # keys

    def _add_keys(self) -> None:
        item = self.item
        for n, mark in enumerate(Mark, 1):
            self._key(str(n), tr("Mark {mark}", mark=tr(mark.value)), partial(item.pick_mark, mark.value))
        for n, state in enumerate(UNSEEN, 4):
            self._key(str(n), tr(state.value), partial(item.pick_unseen, state.value))
        for n, letter in enumerate("ABCDEFG"):
            self._key(letter, tr("Fitted: form {n}", n=n + 1), partial(self._pick_form, n))
        self._key("W", tr("Why"), lambda: self._open("why"))
        self._key("H", tr("How it shows"), lambda: self._open("how"))
        self._key("N", tr("Note and condition"), lambda: self._open("note"))
        self._key("T", tr("How to tell them apart"), self._tell_apart)
        self._key("M", tr("Measure"), self._measure)
        self._key("I", tr("What can it be"), lambda: self._open("can"))
        self._key("P", tr("Add photographs"), item.photographs.plus.click)
        self._key("Shift+P", tr("Photograph with the phone"), item.photographs.phone.click)
        self._key("Esc", tr("Shut what is open below the forms"), self._shut)
        self._key(["Return", "Enter"], tr("Next item"), self._next_or_keep)
        self._key(["Shift+Return", "Shift+Enter"], tr("Item before"), self.desk.previous_item)
        self._key("PgDown", tr("Next item"), self.desk.next_item)
        self._key("PgUp", tr("Item before"), self.desk.previous_item)
        self._key(QKeySequence.StandardKey.Paste, tr("Paste a photograph"), item.photographs.paste_now)

    def _key(self, keys: str | list[str] | QKeySequence.StandardKey, words: str, act: Callable[[], object]) -> None:
        action = QAction(words, self)
        each = [keys] if isinstance(keys, str) else keys
        action.setShortcuts([QKeySequence(key) for key in each] if isinstance(each, list) else each)
        action.triggered.connect(lambda _=False: self.desk.session is not None and act())
        self.addAction(action)

    def _next_or_keep(self) -> None:
        """Enter while typing keeps what was typed, on what has the ring it presses; otherwise it goes on."""
        focus = QApplication.focusWidget()
        if isinstance(focus, QLineEdit):
            keep_typing()
        elif isinstance(focus, Pressable) and self.desk.look.by_keyboard:
            focus.click()
        elif isinstance(focus, OutlineView) and self.desk.look.by_keyboard and focus.at:
            focus.spotChosen.emit(focus.at)
        else:
            self.desk.next_item()

    def _pick_form(self, n: int) -> None:
        keys = self.item.fitted.keys
        if n < len(keys):
            self.item.pick_fitted(str(keys[n].property("option")))

    def _tell_apart(self) -> None:
        if self.item.item.variants:
            self.item.drawers.toggle("tell")
        else:
            self.desk.told.emit(tr("The profile lists no forms of it here."))

    def _shut(self) -> None:
        """The open drawer is shut, what was typed in it is kept, and its key has the focus."""
        drawers = self.item.drawers
        name = next((name for name, body in drawers.bodies.items() if body.isVisibleTo(drawers)), "")
        if name:
            drawers.keys[name].setFocus(Qt.FocusReason.ShortcutFocusReason)
            drawers.open("")

    def _measure(self) -> None:
        if self.item.item.measures:
            self.item.drawers.open("measure")
        else:
            self.desk.told.emit(tr("The profile names no measure here."))

    def _open(self, name: str) -> None:
        """The drawer is open and its first key has the focus; a note is there to be written, so its field has it."""
        drawers = self.item.drawers
        drawers.open(name)
        body = drawers.bodies[name]
        first = next((w for w in body.findChildren(QWidget) if w.focusPolicy() and w.isVisibleTo(body)), None)
        begin = drawers.fields["note"] if name == "note" else first
        if begin is not None:
            begin.setFocus(Qt.FocusReason.ShortcutFocusReason)
            QTimer.singleShot(0, begin, lambda: bring_into_sight(begin))  # the drawer has come into view by then
