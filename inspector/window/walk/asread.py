"""At an item that is a number: what was read there so far, and the way to read it figure by figure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.numbers import how_words
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row
from inspector.window.numbers.readings import readings_at, state_words

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.judgement.numbers import NumberLine
    from inspector.record.reading import Reading
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
        read = list(zip(readings_at(self.desk.record, self.place), lines, strict=True))
        while len(self.rows) < len(read):
            self._row()
        for n, row in enumerate(self.rows):
            row.setVisible(n < max(1, len(read)))
            if n < len(read):
                _say(row, *read[n])
        if not read:
            self.rows[0].say(state_words(None), second=tr("touch here to read it figure by figure"))


def _say(row: Row, reading: Reading, line: NumberLine) -> None:
    """The number with how it was read and what it can be; without figures, why there are none."""
    if not line.typed:
        row.say(state_words(reading), second=tr("touch here to read it figure by figure"))
        return
    parts = (tr(how_words(line.how_read)), tr(line.decoded) if line.decoded else "")
    row.say(line.typed, second=". ".join(part for part in parts if part))
