"""The list with what is over it: search, filter, and whether one or several are picked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.text import Hairline, Text
from inspector.window.photographs.entries import (
    ALL,
    ITEMS,
    LOOSE,
    NUMBERS,
    TROUBLE,
    Entry,
    arranged,
    chosen,
    patched_entries,
)
from inspector.window.photographs.listing import PhotoView

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.record.finding import Photograph
    from inspector.window.desk import Desk
    from inspector.window.photographs.keeping import Keeping
    from inspector.window.photographs.loader import Loader


class ListPane(QWidget):
    """The photographs that search and filter leave; ``picked`` tells that others are picked, or shown anew."""

    picked = Signal()

    def __init__(self, desk: Desk, loader: Loader, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self.keeping = desk, keeping
        self._arranged: tuple[tuple[Photograph, ...] | None, list[Entry]] = (None, [])
        look = desk.look
        self.search = LineField(look, "", hint=tr("search"))
        self.search.set_label("", tr("Search the photographs"))
        self.filter = MenuKey(look, tr("all"), held="")
        self.several = Key(look, tr("several"), name=tr("Pick several"))
        self.count = Text(look, ink="soft", step="small")
        self.view = PhotoView(look, loader)
        over = Column(look, edge=5.0, top=3.0)
        over.add(KeyRow(look, [self.search, self.filter, self.several], fit="fill"), 0)
        over.add(self.count, 2)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(over)
        box.addWidget(Hairline(look, ink="ink"))
        box.addWidget(self.view, 1)
        self.search.edit.textEdited.connect(lambda _: self.show_list())
        self.filter.picked.connect(self._filter)
        self.several.clicked.connect(self.toggle_several)
        self.view.picked.connect(self.picked)

    def begin(self) -> None:
        """Nothing is searched for or filtered."""
        self.search.set_value("")
        self.filter.set_picked("")

    def show_list(self) -> None:
        """The rows that search and filter leave are listed."""
        record, states = self.desk.record, self.keeping.states
        self.view.photos.states = states
        self._show_filter(record.photographs)
        before, standing = self._arranged
        patched = patched_entries(before, record.photographs, standing)
        entries = arranged(self.desk.profile, record.photographs) if patched is None else patched
        self._arranged = (record.photographs, entries)
        found = chosen(entries, self.search.value(), self.filter.picked_id() or ALL, states)
        self.count.say(_counted(len(found), len(entries)))
        alike = patched is not None and found is entries and self.view.photos.entries is standing
        self.view.show_entries(found, alike=alike)

    def show_kept(self) -> None:
        """What is known of the kept files stands in the rows."""
        self.view.photos.states = self.keeping.states
        if self.filter.picked_id() == TROUBLE:
            self.show_list()
        self.view.viewport().update()

    def _show_filter(self, photographs: Sequence[Photograph]) -> None:
        loose = sum(1 for p in photographs if not p.item and not p.place)
        words = {
            ALL: tr("all"), LOOSE: tr("not assigned: {count}", count=loose), NUMBERS: tr("of numbers"),
            ITEMS: tr("of items"), TROUBLE: tr("gone or changed"),
        }  # fmt: skip
        options = [Option(key, word) for key, word in words.items()]
        if options != self.filter.options:
            self.filter.set_options(options)

    def _filter(self, which: str) -> None:
        self.filter.set_picked(which)
        self.show_list()

    def toggle_several(self) -> None:
        """Each touch picks one more, or one alone."""
        on = not self.several.held
        self.several.hold("kept" if on else "")
        self.view.pick_several(on)

    def pick(self, photograph: str) -> None:
        """This photograph is picked and in sight, whatever was searched for."""
        if self.view.photos.row_of(photograph) < 0:
            self.begin()
            self.show_list()
        self.view.pick(photograph)

    def wanted(self) -> list[Photograph]:
        """The photographs that are picked, or all that are listed where none is."""
        return self.view.picked_photographs() or [entry.photograph for entry in self.entries]

    @property
    def entries(self) -> list[Entry]:
        """The rows, from the top."""
        return self.view.photos.entries


def _counted(found: int, total: int) -> str:
    if not total:
        return tr("No photograph is here yet.")
    if found == total:
        return trn("{count} photograph", "{count} photographs", total)
    return tr("{found} of {total} photographs", found=found, total=total)
