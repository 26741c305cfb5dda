"""Numbers on the result: what raises a question first, then each number as read and what it says, then the papers."""

from collections.abc import Iterable

from PySide6.QtWidgets import QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.relations import Stand
from inspector.judgement.wording import lower_first
from inspector.texts import Say, tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row
from inspector.window.look.text import Text
from inspector.window.numbers.telling import SIGNS

SILENT = (Stand.CANNOT, Stand.NO_RULE)


class NumbersPart(Column):
    """Rows that open the page Numbers; what cannot be compared is told as one line, not as rows."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self._shown: tuple = ()

    def show_numbers(self) -> None:
        """What the judgement says of numbers and papers is shown."""
        judged = self.desk.judgement
        now = (
            judged.standings, judged.papers, judged.numbers, judged.dates, judged.stamping, judged.paper_years,
            judged.inquiries,
        )  # fmt: skip
        if now == self._shown:
            return
        self._shown = now
        self.clear()
        self._add_standings(judged)
        for line in judged.numbers:
            says = tr(line.decoded) if line.decoded else tr("nothing read")
            self._open(Row(self.look, says, label=tr(line.sentence), strong=False), line.place)
        if not judged.numbers:
            self._open(Row(self.look, tr("none entered")))
        if any(set(line.typed) & set("?[") for line in judged.numbers):
            how = tr("? is a figure that could not be read, [19] one that is 1 or 9.")
            self.add(Text(self.look, how, ink="soft", step="small"), 2)
        self._tell(tr("Date codes"), [date.sentence for date in judged.dates])
        self._tell(tr("Seen of the stampings"), [said for _, said in judged.stamping])
        self._tell(tr("Years claimed and on papers"), judged.paper_years)
        self._tell(tr("Asked of others"), judged.inquiries)

    def _tell(self, head: str, sentences: Iterable[Say]) -> None:
        """The sentences under their head; nothing where there are none."""
        told = list(dict.fromkeys(tr(one) for one in sentences))
        if told:
            self.add(Text(self.look, head, semibold=True), 3)
        for sentence in told:
            self.add(Text(self.look, sentence), 1)

    def _add_standings(self, judged: Judgement) -> None:
        for standing in judged.standings:
            if standing.stand not in SILENT:
                label = tr("{one} and {other}", one=standing.names[0], other=lower_first(standing.names[1]))
                row = Row(self.look, tr(standing.sentence), label=label, sign=SIGNS[standing.stand])
                self._open(row, standing.places[0])
        for paper in judged.papers:
            label = ", ".join(part for part in (paper.name, paper.quoted) if part)
            self._open(Row(self.look, tr(paper.sentence), label=label, sign=SIGNS[paper.stand]), paper.place)
        silent = sum(standing.stand in SILENT for standing in judged.standings)
        if silent and judged.numbers:
            self._open(Row(self.look, tr("pairs that cannot be compared: {n}", n=silent), strong=False))

    def _open(self, row: Row, place: str = "") -> None:
        """A touch opens the page Numbers, at the place that the row is about."""
        row.clicked.connect(lambda: self.desk.show_place(place))
        self.add(row, 0)
