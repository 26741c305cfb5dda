"""The versions that were sealed, each to be opened as it was handed out, and to be checked."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.record.money import Version
from inspector.record.versions import stands_as_sealed
from inspector.sheet.words import moment
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead


class SealedVersions(Column):
    """One row a version, the newest first; ``picked(version)`` tells which is to be shown. Not there while none is.

    ``asked(version)`` tells that the one shown is to be checked.
    """

    picked = Signal(object)
    asked = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.head = SectionHead(desk.look, tr("Sealed versions"))
        self.rows = Column(desk.look, edge=0, top=0)
        self.check = Key(desk.look)
        self.shown: Version | None = None
        for widget, gap in ((self.head, 0), (self.rows, 0), (self.check, 2)):
            self.add(widget, gap)
        self.check.clicked.connect(lambda: self.asked.emit(self.shown))
        self.mark(None)

    def mark(self, shown: Version | None) -> None:
        """This version is the one that is looked at now, or none is."""
        self.shown = shown
        self.check.setVisible(shown is not None)
        if shown is not None:
            self.check.say(tr("check version {number}", number=shown.number), second=tr("is it kept here as sealed?"))

    def show_versions(self) -> None:
        """The versions of the open machine."""
        versions: tuple[Version, ...] = self.desk.record.versions if self.desk.session is not None else ()
        standing = stands_as_sealed(self.desk.record) if versions else None
        self.rows.clear()
        for version in sorted(versions, key=lambda v: v.number, reverse=True):
            words = tr("Version {number}", number=version.number)
            now = tr("as it stands now") if version == standing else ""
            row = Row(self.desk.look, words, second=tr("sealed {when}", when=moment(version.at)), aside=now)
            row.clicked.connect(partial(self._pick, version))
            self.rows.add(row, 0)
        self.setVisible(bool(versions))

    def _pick(self, version: Version, _: bool = False) -> None:
        self.picked.emit(version)
