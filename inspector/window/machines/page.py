"""The page Machines: start with a profile, open the demo, or go on with a machine."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtWidgets import QStackedLayout, QWidget

from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.look.columns import Column, Columns
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import Text
from inspector.window.machines.listing import MachineList

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from pathlib import Path

    from PySide6.QtGui import QShowEvent

    from inspector.profile.model import Profile
    from inspector.profile.read import ProfileRead
    from inspector.window.desk import Desk
    from inspector.window.look.outline import OutlineView
    from inspector.window.machines.backups import Backups
    from inspector.window.machines.rest import Rest
    from inspector.window.visits.file import WholeFile


SEEN_MS = 250  # by then the page was painted


class MachinesPage(QWidget):
    """The list of machines with its search, and at its side how to begin."""

    id = "machines"

    def __init__(self, desk: Desk, start_demo: Callable[[], str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self._start_demo = desk, start_demo
        look = desk.look
        self.begin, self.list = Column(look, top=9), Column(look, top=9)
        self.title = Text(look, step="name")
        self.machines = MachineList(desk)
        self._rest: Rest | None = None
        self.own_steps = self.machines.taking
        self.search, self.rows = self.machines.search, self.machines.rows
        self.start = Key(look, tr("Start with a machine"), second=tr("choose its profile"), arrow="right", step="key")
        self.demo = Key(
            look, tr("Open the demo machine"), second=tr("a finished walk to look around in"), arrow="right", step="key"
        )
        self.profiles = Column(look, edge=0, top=0)
        self.profiles.hide()
        self._lay_out()
        self.columns = Columns(look, [(self.begin, 0), (self.list, 0)])
        layout = QStackedLayout(self)
        layout.addWidget(self.columns)
        self._connect()
        self.installEventFilter(self)

    def _lay_out(self) -> None:
        look = self.desk.look
        self.start.hold("chosen")
        self.begin.add(self.title)
        self.begin.add(Text(look, tr(
            "Half an hour, daylight, a lamp, a tape and this screen. At the end you know what the numbers, "
            "the paper and the parts say, which year they say it of, and what could not be seen.",
        )), 3)  # fmt: skip
        self.begin.add(self.start, 6)
        self.begin.add(self.profiles, 2)
        self.begin.add(self.demo, 2)
        self.begin.add(Text(look, tr("Everything is saved at once, on this computer only."), ink="soft"))
        self.list.add(self.machines)

    # what is below the first sight

    @property
    def rest(self) -> Rest:
        """What stands below the first sight, made now if need be."""
        from inspector.window.machines.rest import Rest

        if self._rest is None:
            self._rest = Rest(self.desk, self.begin, self.list)
            self._rest.outline.setVisible(self.machines.is_empty())
            self._rest.place_settings(self.columns.narrow)
        return self._rest

    @property
    def whole(self) -> bool:
        """Whether all of the page is there."""
        return self._rest is not None

    def complete(self) -> None:
        """All of the page is there."""
        _ = self.rest

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """After the first paint the rest is made: the list comes sooner."""
        if event.type() is QEvent.Type.Paint:
            self.removeEventFilter(self)
            QTimer.singleShot(0, self.complete)
        return super().eventFilter(watched, event)

    @property
    def file(self) -> WholeFile:
        """The keys for the whole file of the open machine."""
        return self.rest.file

    @property
    def outline(self) -> OutlineView:
        """The drawing that stands where there is no machine yet."""
        return self.rest.outline

    @property
    def beside(self) -> Column:
        """Where the settings are while there is room beside the list."""
        return self.rest.beside

    @property
    def below(self) -> Column:
        """Where the settings are in one column."""
        return self.rest.below

    @property
    def settings(self) -> Column:
        """The settings that are shown: those beside the list, or below it in one column."""
        return self.below if self.columns.narrow else self.beside

    @property
    def backups(self) -> Backups:
        """What is shown of the backups."""
        from inspector.window.machines.backups import Backups

        return next(w for w in self.settings.widgets() if isinstance(w, Backups))

    def _place_settings(self, narrow: bool) -> None:
        if self._rest is not None:
            self._rest.place_settings(narrow)

    def _connect(self) -> None:
        self.start.clicked.connect(self.toggle_profiles)
        self.demo.clicked.connect(self.open_demo)
        self.columns.narrowChanged.connect(self._place_settings)
        self.machines.listed.connect(self._show_whether_empty)
        for action in self.machines.actions_of_keys():
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            self.addAction(action)

    # showing

    def showEvent(self, event: QShowEvent) -> None:
        """The list is as it is now."""
        super().showEvent(event)
        self.show_machines()
        # Where what stands in it covers all of the page, no paint of its own tells that it was seen.
        QTimer.singleShot(SEEN_MS, self.complete)

    def show_machines(self) -> None:
        """The machines that the search finds are listed, newest first."""
        self.machines.show_machines()

    def _show_whether_empty(self) -> None:
        empty = self.machines.is_empty()
        self.title.say(tr("No machine here yet") if empty else tr("Machines"))
        self.machines.setVisible(not empty)
        if empty or self._rest is not None:
            self.outline.setVisible(empty)

    # beginning

    def toggle_profiles(self) -> None:
        """The profiles that can be used are listed below the key, or no longer."""
        if self.profiles.isVisibleTo(self.begin):
            self.profiles.hide()
            return
        self.profiles.clear()
        for read, profile in self._readable():
            self.profiles.add(self._profile_row(read, profile), 0)
        other = Row(self.desk.look, tr("another profile"), second=tr("a folder with a profile.toml"))
        other.clicked.connect(lambda: self.desk.ask.profile_folder(self._start_from))
        self.profiles.add(other, 0)
        self.profiles.show()

    def _readable(self) -> Iterable[tuple[ProfileRead, Profile]]:
        from inspector.profile.find import find_profiles
        from inspector.profile.read import read_profile

        for folder in find_profiles(self.desk.roots):
            read = read_profile(folder)
            if read.profile is not None:
                yield read, read.profile
            else:
                self.desk.told.emit(str(read.problems[0]))

    def _profile_row(self, read: ProfileRead, profile: Profile) -> Row:
        first, last = profile.model_years
        second = f"{profile.maker}, {first}–{last % 100:02d}" + (", " + tr("invented") if profile.invented else "")
        row = Row(self.desk.look, profile.title, second=second, strong=True)
        row.clicked.connect(lambda _=False: self._start(read))
        return row

    def _start_from(self, folder: Path) -> None:
        from inspector.profile.read import read_profile

        self._start(read_profile(folder))

    def _start(self, read: ProfileRead) -> None:
        self.profiles.hide()
        self.desk.start(read)

    def open_demo(self) -> None:
        """The demo machine is put together beside the window, and then open, unless another was opened meanwhile."""
        from inspector.window.job import Job

        before = self.desk.session
        self.demo.turn_off(tr("It is being put together."))
        job = Job(lambda report: self._start_demo())
        job.done.connect(lambda record: self._demo_there(record, self.desk.session is before))
        job.failed.connect(self._no_demo)
        job.start(self.desk.pool)

    def _demo_there(self, record: str, wanted: bool) -> None:
        self.demo.turn_on()
        if wanted:
            self.desk.open(record, "result")
        else:
            self.machines.show_machines()

    def _no_demo(self, error: object) -> None:
        self.demo.turn_on()
        self.desk.told.emit(tr(error.said) if isinstance(error, StorageTrouble) else str(error))
