"""At an item that is a number: what was read there so far, and the way to read it figure by figure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.words import HowRead
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.judgement.numbers import NumberLine
    from inspector.window.desk import Desk


class AsRead(Column):
    """A row for each reading at the item's place; a touch opens the page Numbers there. Hidden at other items."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.place = ""
        self.rows: list[Row] = []
        self._row()
        self.hide()

    def _row(self) -> None:
        row = Row(self.look, label=tr("Number as read"))
        row.clicked.connect(lambda _=False: self.desk.show_place(self.place))
        self.rows.append(row)
        self.add(row, 0)

    def show_item(self) -> None:
        """The readings at the open item's place, each with how it was read and what it can be."""
        self.place = self.desk.profile.item_by_id[self.desk.item].place or ""
        self.setVisible(bool(self.place))
        if not self.place:
            return
        lines = [line for line in self.desk.judgement.numbers if line.place == self.place]
        while len(self.rows) < len(lines):
            self._row()
        for n, row in enumerate(self.rows):
            row.setVisible(n < max(1, len(lines)))
            if n < len(lines):
                _say(row, lines[n])
        if not lines:
            self.rows[0].say(tr("not read yet"), second=tr("touch here to read it figure by figure"))


def _say(row: Row, line: NumberLine) -> None:
    unsaid = line.how_read is HowRead.NOT_SAID
    how = tr("not said how it was read") if unsaid else tr("read {how}", how=tr(line.how_read.value))
    says = tr(line.decoded) if line.decoded else ""
    row.say(line.typed or tr("nothing to read"), second=". ".join(part for part in (how, says) if part))
