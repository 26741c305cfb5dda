"""A row that opens what stands behind it, right below it: sentences, and every source with its grade."""

from collections.abc import Iterable, Sequence

from inspector.profile.model import Source
from inspector.texts import tr
from inspector.window.look.columns import Column
from inspector.window.look.facts import FactRow
from inspector.window.look.look import Look
from inspector.window.look.rows import BaseRow
from inspector.window.look.text import Text


class Opening(Column):
    """The row, and below it, once it was touched, its sentences and sources."""

    def __init__(self, look: Look, row: BaseRow, sentences: Iterable[str], sources: Sequence[Source]) -> None:
        super().__init__(look, edge=0, top=0)
        self.row = row
        self._sentences, self._sources = [s for s in sentences if s], list(sources)
        self.body = Column(look, edge=0, top=2)
        self.body.hide()
        self.add(row, 0)
        self.add(self.body, 0)
        row.clicked.connect(self.toggle)

    def toggle(self) -> None:
        """What stands behind the row is shown, or put away."""
        if not self.body.widgets():
            self._fill()
        self.body.setVisible(self.body.isHidden())

    def _fill(self) -> None:
        for sentence in self._sentences:
            self.body.add(Text(self.look, sentence), 1)
        for source in self._sources:
            place = ", ".join(part for part in (source.title, source.by, source.date) if part)
            self.body.add(FactRow(
                self.look, place, second=source.note, grade=source.grade, kind=tr(source.kind.value), opens=False,
            ), 0)  # fmt: skip
        if not self._sources:
            self.body.add(Text(self.look, tr("no source"), ink="soft"), 1)
