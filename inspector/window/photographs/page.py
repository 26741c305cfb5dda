"""The page Photographs: beside the list what is to be done, on the other side what is picked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, QThreadPool, QTimer, Signal
from PySide6.QtGui import QAction, QHideEvent, QImage, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from inspector.judgement.offers import offers
from inspector.judgement.shots import shots
from inspector.record.edits import Changed, Part
from inspector.record.photographs import assign_each, take_out
from inspector.texts import tr
from inspector.window.desk import keep_typing
from inspector.window.dropping import TakesPhotographs
from inspector.window.intake import Bringing, Tie, png_of
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import Hairline
from inspector.window.openlog import opened_items
from inspector.window.photographs.camera import default_feed
from inspector.window.photographs.keeping import Keeping
from inspector.window.photographs.loader import Loader
from inspector.window.photographs.one import OneView
from inspector.window.photographs.pane import ListPane
from inspector.window.photographs.sharing import Sharing
from inspector.window.photographs.tasks import BringIn, MissingShots, Offers, SharingCopies
from inspector.window.photographs.watching import Watching

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtGui import QResizeEvent, QShowEvent

    from inspector.judgement.offers import Offer
    from inspector.judgement.shots import ShotList
    from inspector.photo.intake import Source
    from inspector.record.model import Record
    from inspector.window.desk import Desk
    from inspector.window.photographs.camera import Feed
    from inspector.window.photographs.tasks import Wish

TASKS_MM, ONE_MM, LEAST_LIST_MM, WIDEST_SCALE = 74.0, 82.0, 88.0, 1.3
TASKS, LIST, ONE = "tasks", "list", "one"
MANY = 500
NARROWEST_MM = 60.0
REST_MS = 150  # after a change, before what follows from it is worked out
PARTS = {Part.PHOTOGRAPHS, Part.FINDINGS, Part.READINGS, Part.CHOICES, Part.CLAIM}


class PhotographsPage(TakesPhotographs, QWidget):
    """All photographs of the machine; ``look_at`` asks for one to be looked at closely."""

    id = "photographs"
    look_at = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        look = desk.look
        self.feed: Callable[[], Feed | None] = default_feed
        self.bringing = Bringing(desk, self)
        self.watching = Watching(desk, self.bringing, self)
        self.loader = Loader(desk.library.thumbs, self)
        self.keeping = Keeping(desk.library.photographs, self)
        self.offers: dict[str, Offer] = {}
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self.bring_in, self.which = BringIn(desk, self.watching), Offers(desk)
        self.missing, self.copies = MissingShots(desk), SharingCopies(desk)
        self.sharing = Sharing(desk, self.copies)
        self.tasks = Column(look)
        for part in (self.bring_in, self.which, self.missing, self.copies):
            self.tasks.add(part, 8)
        self.pane = ListPane(desk, self.loader, self.keeping)
        self.view = self.pane.view
        self.one = OneView(desk)
        self.parts = ChoiceKeys(look, held="kept")
        self._part, self._wide = LIST, False
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._lay_out()
        self._connect()
        self._add_keys()
        self.setAcceptDrops(True)
        self.watching.show_machine()
        self.show_machine()

    # laying out

    def minimumSizeHint(self) -> QSize:
        """Three columns ask for no more than one: turned upright, the page shows one at a time."""
        return QSize(round(self.desk.look.mm(NARROWEST_MM)), super().minimumSizeHint().height())

    def _lay_out(self) -> None:
        look = self.desk.look
        self._scrolls = {TASKS: Scroll(look, self.tasks), ONE: Scroll(look, self.one)}
        self._lines = [Hairline(look), Hairline(look)]
        body = QHBoxLayout()
        body.setSpacing(0)
        for n, widget in enumerate((self._scrolls[TASKS], self.pane, self._scrolls[ONE])):
            if n:
                line = self._lines[n - 1]
                line.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
                line.setFixedWidth(look.px(0.22))
                body.addWidget(line)
            body.addWidget(widget, 1 if n == 1 else 0)
        self._strip = Column(look, edge=3.0, top=2.0)
        self._strip.add(self.parts)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._strip)
        whole.addLayout(body, 1)
        self._body = body

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may leave room for one of the three alone."""
        super().resizeEvent(event)
        self.arrange()

    def arrange(self) -> None:
        """All three stand beside one another, or, where there is no room for that, the one that was asked for."""
        look = self.desk.look
        room = self.width() / look.mm(1)
        self._wide = look.text_scale <= WIDEST_SCALE and room >= TASKS_MM + ONE_MM + LEAST_LIST_MM
        self._strip.setVisible(not self._wide)
        for line in self._lines:
            line.setVisible(self._wide)
        for name, wide in ((TASKS, TASKS_MM), (ONE, ONE_MM)):
            area = self._scrolls[name]
            area.setVisible(self._wide or self._part == name)
            area.setMinimumWidth(look.px(wide) if self._wide else 0)
            area.setMaximumWidth(look.px(wide) if self._wide else 16_777_215)
        self.pane.setVisible(self._wide or self._part == LIST)
        self.parts.set_held(self._part)

    def show_part(self, part: str) -> None:
        """Where there is room for one of the three alone, it is this."""
        self._part = part
        self.arrange()

    def _connect(self) -> None:
        desk = self.desk
        self.bring_in.choose.clicked.connect(lambda: desk.ask.photographs(self.take_in))
        self.bring_in.paste.clicked.connect(self.paste_now)
        self.bring_in.camera.clicked.connect(self.open_camera)
        self.bring_in.watch.clicked.connect(self.toggle_watch)
        self.bring_in.stop.clicked.connect(self.bringing.stop)
        self.bringing.began.connect(self.bring_in.begin)
        self.bringing.progress.connect(self.bring_in.going)
        self.bringing.ended.connect(self.bring_in.ended)
        self.which.taken.connect(self.take_offers)
        self.which.shown.connect(self.open_one)
        self.copies.wanted.connect(self._share)
        self.pane.picked.connect(self.show_picked)
        self.view.opened.connect(lambda: self.show_part(ONE))
        self.view.clicked.connect(lambda _: self._touched())
        self.one.look_at.connect(self.look_at)
        self.one.cover.connect(self.open_cover)
        self.one.take_offer.connect(lambda one: self.take_offers([self.offers[one]]) if one in self.offers else None)
        self.parts.picked.connect(self.show_part)
        self.keeping.found.connect(self._kept_known)
        self._rest.timeout.connect(self.show_rest)
        desk.opened.connect(self.show_machine)
        desk.changed.connect(self.show_change)
        desk.look.changed.connect(self.arrange)

    def _add_keys(self) -> None:
        self._key("Ctrl+O", tr("Choose photographs"), self.bring_in.choose.click)
        self._key(QKeySequence.StandardKey.Paste, tr("Paste a photograph"), self.paste_now)
        self._key(QKeySequence.StandardKey.Find, tr("Search the photographs"), self._find)
        self._key("Ctrl+Return", tr("Take the item offered"), self.one.take_key.click)
        self._key(QKeySequence.StandardKey.Delete, tr("Take out of the record"), self._take_out)

    def _key(self, keys: str | QKeySequence.StandardKey, words: str, act: Callable[[], object]) -> None:
        action = QAction(words, self)
        action.setShortcuts(keys if isinstance(keys, QKeySequence.StandardKey) else [QKeySequence(keys)])
        action.triggered.connect(lambda _=False: self.desk.session is not None and act())
        self.addAction(action)

    def _find(self) -> None:
        self.show_part(LIST)
        self.pane.search.edit.setFocus()

    # showing

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while another page was open is shown, and the kept files are looked at."""
        super().showEvent(event)
        if self.desk.session is not None:
            self.show_list()
            self._rest.start()
            self.look_at_files()

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is read for a page that nobody sees."""
        super().hideEvent(event)
        self.keeping.stop()

    def look_at_files(self) -> None:
        """Whether each kept photograph is still as it was is found out beside the window."""
        self.keeping.look(p.sha256 for p in self.desk.record.photographs)

    def show_machine(self) -> None:
        """The photographs of the open machine are listed."""
        if self.desk.session is None:
            self.keeping.stop()
            return
        self.pane.begin()
        if self.isVisible():
            self.show_list()
            self._rest.start()
            self.look_at_files()

    def show_change(self, changed: Changed | None) -> None:
        """What the change touched is shown again; what is not looked at waits until the page is opened."""
        if self.desk.session is None or not self.isVisible():
            return
        if changed is None or changed.parts & PARTS:
            self.show_list()
            self._rest.start()

    def show_list(self) -> None:
        """The rows that search and filter leave are listed."""
        self.pane.show_list()

    def show_picked(self) -> None:
        """What is picked is shown at the side."""
        picked = tuple(self.view.picked_photographs())
        offer = self.offers.get(picked[0].id) if len(picked) == 1 else None
        self.one.show_picked(picked, self.keeping.states, offer)
        self._name_parts(len(picked))
        self._show_copies()

    def _name_parts(self, picked: int) -> None:
        words = tr("picked: {count}", count=picked)
        options = [Option(TASKS, tr("to do")), Option(LIST, tr("list")), Option(ONE, words)]
        if [k.title for k in self.parts.keys if isinstance(k, Key)] != [o.word for o in options]:
            self.parts.set_options(options)
        self.parts.set_held(self._part)

    def _show_copies(self) -> None:
        picked = self.pane.wanted()
        bare = sum(1 for p in picked if p.place and not p.masks)
        drawn = sum(1 for p in picked if p.marks)
        self.copies.show_count(len(picked), bool(self.view.selectionModel().hasSelection()), bare, drawn)

    def show_rest(self) -> None:
        """What follows from the photographs: offers, and what is missing; many are gone through beside the window."""
        self._rest.stop()
        if self.desk.session is None:
            return
        profile, record = self.desk.profile, self.desk.record
        opened = opened_items(self.desk.library, record.id)
        if len(record.photographs) < MANY:
            self._show_found(record, offers(profile, record, opened), shots(profile, record))
            return
        job = Job(lambda report: (record, offers(profile, record, opened), shots(profile, record)))
        job.done.connect(lambda found: self._show_found(*found))
        job.start(self._pool)

    def _show_found(self, record: Record, found: Sequence[Offer], listed: ShotList) -> None:
        if self.desk.session is None or self.desk.record is not record:
            return
        loose = sum(1 for p in record.photographs if not p.item and not p.place)
        self.offers = {offer.photograph: offer for offer in found}
        self.which.show_offers(found, loose)
        self.missing.show_shots(listed)
        self.show_picked()

    def _kept_known(self) -> None:
        self.pane.show_kept()
        self.show_picked()

    # bringing in

    def take_in(self, sources: Sequence[Source]) -> None:
        """The photographs come in beside the window, not assigned to anything."""
        self.bringing.take_in(sources, Tie(), everywhere=True)

    def toggle_watch(self) -> None:
        """A folder is watched from now on, or none."""
        if self.watching.folder is not None:
            self.watching.turn_off()
        else:
            self.desk.ask.a_folder(tr("Folder to watch"), self.watching.turn_on)

    def open_camera(self) -> None:
        """The camera's picture is shown; where there is no camera, the key goes."""
        from inspector.window.photographs.camera import CameraSheet

        feed = self.feed()
        if feed is None:
            self.bring_in.camera.hide()
            self.desk.told.emit(tr("No camera of this computer can be used. Choose photographs as files."))
            return
        sheet = CameraSheet(self.desk.look, feed, self.window())
        sheet.taken.connect(self._from_camera)
        sheet.open()

    def _from_camera(self, image: QImage) -> None:
        stamp = self.desk.clock()[:19].replace(":", "-")
        self.take_in([(tr("camera {time}.png", time=stamp), png_of(image))])

    # what is done with those that are there

    def _touched(self) -> None:
        if not self._wide and self.view.selectionMode() != self.view.SelectionMode.MultiSelection:
            self.show_part(ONE)

    def open_one(self, photograph: str) -> None:
        """This photograph is picked and shown."""
        keep_typing()
        self.pane.pick(photograph)
        self.show_part(ONE)

    def open_cover(self, photograph: str) -> None:
        """Boxes can be drawn over this photograph."""
        from inspector.window.photographs.covering import CoverSheet

        one = next((p for p in self.desk.record.photographs if p.id == photograph), None)
        if one is not None:
            CoverSheet(self.desk, one, self.window()).open()

    def take_offers(self, taken: Sequence[Offer]) -> None:
        """Each of these photographs belongs to the item offered, as one thing to undo."""
        by_id = {p.id: p for p in self.desk.record.photographs}
        pairs = [(by_id[offer.photograph], offer.item) for offer in taken if offer.photograph in by_id]
        if pairs:
            self.desk.do(assign_each(pairs))

    def _take_out(self) -> None:
        picked = self.view.picked_photographs()
        if picked and self.view.hasFocus():
            self.desk.do(take_out(picked))

    def _share(self, wish: Wish) -> None:
        wanted = self.pane.wanted()
        self.desk.ask.a_folder(tr("Folder for the copies"), lambda to: self.sharing.write(wanted, to, wish))
