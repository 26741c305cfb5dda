"""What is asked at the start when the library is damaged: which backup to go on from, if any."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QVBoxLayout

from inspector.storage import backups, database
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr, trn
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.inks import palette
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import SectionHead, Text
from inspector.window.machines.backups import holds, when
from inspector.window.reading import step_focus

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

    from inspector.storage.backups import Backup
    from inspector.storage.trouble import Damaged
    from inspector.window.look.look import Look

WIDE, HIGH = 150, 130  # of the dialog, in millimetres at plain text size


class Recovery(QDialog):
    """Says what is damaged, what is kept and where, and offers the backups.

    Accepted, a backup (or an empty library, where no backup is good) stands in the place of the damaged file and
    ``done_words`` says so; rejected, all is as it was.
    """

    def __init__(self, look: Look, folder: Path, trouble: Damaged, moment: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.folder, self.moment = look, folder, moment
        self.found = [backups.described(path) for path in backups.listing(folder)]
        self.best = next((backup for backup in self.found if backup.sound), None)
        self.done_words = ""
        self.lost = not (folder / database.NAME).exists()
        self.setWindowTitle(tr("Inspector"))
        self.setPalette(palette(look.inks))
        self.column = Column(look)
        self.back = Key(look, tr("Bring back this backup"), step="key")
        self.empty = Key(look, tr("Begin with an empty library"), step="key")
        self.others = Key(look, tr("choose another backup"), arrow="down")
        self.nothing = Key(look, tr("open nothing"), name=tr("Open nothing; all stays as it is"))
        self.rows = Column(look, edge=0, top=0)
        self.rows.hide()
        self.trouble = LongWords(look, semibold=True)
        self.trouble.hide()
        self._say(str(trouble.said.values.get("what", "")))
        self._lay_out()
        room = self.screen().availableSize()
        self.resize(min(look.grown(WIDE), room.width()), min(look.grown(HIGH), room.height()))

    def _say(self, what: str) -> None:
        file, add, look = self.folder / database.NAME, self.column.add, self.look
        add(
            Text(
                look, tr("The library is not where it was") if self.lost else tr("The library is damaged"), step="head"
            )
        )
        if self.lost:
            add(LongWords(look, tr("{file} is gone, but its backups are there.", file=file)), 2)
        else:
            add(LongWords(look, tr("{file} cannot be read as it was written.", file=file)), 2)
            add(LongWords(look, tr("What the check found: {what}", what=what), ink="soft", step="small"), 1)
        if self.best:
            self._say_best(self.best)
        else:
            add(Text(look, tr("No good backup was found."), semibold=True))
        add(SectionHead(look, tr("What is kept")))
        if not self.lost:
            aside = backups.aside_folder(self.folder, self.moment)
            add(LongWords(look, tr("The damaged file is never deleted. It is moved to {aside}.", aside=aside)), 2)
        add(Text(look, tr("The photographs are kept apart and are still there.")), 1)
        if self.best:
            add(Text(look, tr("What was entered after the backup is not in it.")), 1)

    def _say_best(self, backup: Backup) -> None:
        count = trn("It holds {count} machine.", "It holds {count} machines.", backup.machines)
        self.column.add(SectionHead(self.look, tr("The newest good backup")))
        self.column.add(
            Text(self.look, tr("Made {moment}. {count}", moment=when(backup), count=count), semibold=True), 2
        )
        if backup.last:
            last = tr("Changed last: {machine}, {day}.", machine=backup.last, day=backup.changed[:10])
            self.column.add(Text(self.look, last), 0)
        self.column.add(LongWords(self.look, str(backup.path), ink="soft", step="small"), 0)

    def _lay_out(self) -> None:
        first = self.back if self.best else self.empty
        first.hold("chosen")
        keys = [first, *([self.others] if len(self.found) > 1 and self.best else []), self.nothing]
        self.column.add(self.trouble, 4)
        self.column.add(KeyRow(self.look, keys, fit="flow"), 4)
        for backup in self.found:
            self.rows.add(self._row(backup), 0)
        self.column.add(self.rows, 2)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(Scroll(self.look, self.column))
        self.back.clicked.connect(self._bring_best)
        self.empty.clicked.connect(self.begin_empty)
        self.others.clicked.connect(self.toggle)
        self.nothing.clicked.connect(self.reject)
        first.setFocus()

    def _row(self, backup: Backup) -> Row:
        row = Row(self.look, when(backup), second=holds(backup), aside=tr("bring back") if backup.sound else "",
                  arrow=False, strong=True)  # fmt: skip
        row.turn_off("" if backup.sound else tr("This backup is damaged too. Choose another one."))
        row.clicked.connect(lambda _=False: self.bring_back(backup))
        return row

    def toggle(self) -> None:
        """All backups are listed, or no longer."""
        self.rows.setVisible(not self.rows.isVisibleTo(self.column))
        self.others.hold("kept" if self.rows.isVisibleTo(self.column) else "")

    def _bring_best(self) -> None:
        if self.best:
            self.bring_back(self.best)

    def bring_back(self, backup: Backup) -> None:
        """The backup stands as the library and the dialog is done; or a sentence says why it cannot be."""
        aside = self._try(lambda: backups.restore(self.folder, backup.path, self.moment))
        if aside is not None:
            words = tr("The library is that of the backup made {moment}.", moment=when(backup))
            self._done(words, aside)

    def begin_empty(self) -> None:
        """The damaged files are put aside and the dialog is done; or a sentence says why it cannot be."""
        aside = self._try(lambda: backups.set_aside(self.folder, self.moment))
        if aside is not None:
            self._done(tr("An empty library is begun."), aside)

    def _try(self, act: Callable[[], Path]) -> Path | None:
        try:
            return act()
        except StorageTrouble as trouble:
            self.trouble.say(tr(trouble.said))
            self.trouble.show()
            return None

    def _done(self, words: str, aside: Path) -> None:
        kept = "" if self.lost else tr("The damaged file lies in {folder}.", folder=aside)
        self.done_words = f"{words} {kept}".strip()
        self.accept()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes on in reading order."""
        return step_focus(self, forward)
