"""The backups of the library: when they were made, what they hold, where they lie, and one made now."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.storage import backups
from inspector.storage.backups import Backup, described, listing
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr, trn
from inspector.window.job import Job
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

    from inspector.window.desk import Desk


class Backups(Column):
    """A sentence about the backups, keys to list them, to make one and to see their folder."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.folder = desk.library.folder / backups.FOLDER
        self.list = Key(look, tr("list them"), name=tr("List the backups"), arrow="down")
        self.make = Key(look, tr("make one now"), name=tr("Make a backup now"))
        self.show_folder = Key(look, tr("open their folder"), name=tr("Open the folder of the backups"))
        self.rows = Column(look, edge=0, top=0)
        self.rows.hide()
        self.add(SectionHead(look, tr("Backups")))
        self.add(Text(look, tr(
            "A copy of all records is made when the program opens or closes and something has changed; the newest"
            " {count} are kept. Should the library not be readable one day, the program offers them when it starts.",
            count=backups.KEPT,
        ), ink="soft"), 2)  # fmt: skip
        self.add(KeyRow(look, [self.list, self.make, self.show_folder], fit="flow"), 2)
        self.add(self.rows, 2)
        self.list.clicked.connect(self.toggle)
        self.make.clicked.connect(self.make_now)
        self.show_folder.clicked.connect(self._open_folder)

    def toggle(self) -> None:
        """The backups are listed, or no longer."""
        shown = not self.rows.isVisibleTo(self)
        self.rows.setVisible(shown)
        self.list.hold("kept" if shown else "")
        if shown:
            self._read()

    def _read(self) -> None:
        """Each is checked beside the window; the list stands when that is done."""
        paths = listing(self.desk.library.folder)
        self.rows.clear()
        self.rows.add(Text(self.look, tr("Reading the backups ..."), ink="soft"))
        job = Job(lambda report: [described(path) for path in paths])
        job.done.connect(self._show)
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _show(self, found: list[Backup]) -> None:
        self.rows.clear()
        for backup in found:
            self.rows.add(Row(self.look, when(backup), second=holds(backup), opens=False), 0)
        if not found:
            self.rows.add(Text(self.look, tr("There is none yet. One is made when there is a machine."), ink="soft"))
        self.rows.add(
            LongWords(
                self.look,
                tr(
                    "They lie in {folder}, on the same disk as the records. Photographs are not in them. So now and"
                    " then close the program and copy all of {library}, photographs included, to another disk.",
                    folder=self.folder,
                    library=self.desk.library.folder,
                ),
                ink="soft",
            ),
            3,
        )

    def make_now(self) -> None:
        """A backup of the library as it stands is made, or a sentence says why not."""
        self.make.turn_off(tr("A backup is being made."))
        job = Job(lambda report: self.desk.library.backup())
        job.done.connect(self._made)
        job.failed.connect(self._failed)
        job.start(self.desk.pool)

    def _made(self, path: Path | None) -> None:
        self.make.turn_on()
        if path is None:
            self.desk.told.emit(tr("Nothing has changed since the last backup was made, so that one stands."))
        else:
            self.desk.told.emit(tr("A backup was made: {path}", path=path))
        if self.rows.isVisibleTo(self):
            self._read()

    def _failed(self, error: object) -> None:
        self.make.turn_on()
        self.desk.told.emit(tr(error.said) if isinstance(error, StorageTrouble) else str(error))

    def _open_folder(self) -> None:
        if self.folder.is_dir():
            self.desk.ask.show_folder(self.folder)
        else:
            self.desk.told.emit(tr("There is no backup yet. One is made when there is a machine."))


def when(backup: Backup) -> str:
    """Day and time by this computer's clock."""
    return backup.made.astimezone().strftime("%Y-%m-%d %H:%M")


def holds(backup: Backup) -> str:
    """What the backup holds, or that it is damaged too."""
    if not backup.sound:
        return tr("damaged, cannot be used")
    count = trn("{count} machine", "{count} machines", backup.machines)
    if not backup.last:
        return count
    return tr("{count}; changed last: {machine}, {day}", count=count, machine=backup.last, day=backup.changed[:10])
