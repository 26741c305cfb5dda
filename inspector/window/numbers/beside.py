"""How the numbers stand to one another and to the papers; what raises a question stands first."""

from collections.abc import Iterable

from PySide6.QtWidgets import QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.papers import PaperStanding
from inspector.judgement.relations import Standing
from inspector.judgement.wording import lower_first
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.numbers.elsewhere import Elsewhere
from inspector.window.numbers.opening import Opening
from inspector.window.numbers.readings import Shown
from inspector.window.numbers.stamping import Stamping
from inspector.window.numbers.telling import SIGNS, sources


class Beside(Column):
    """The right column: the open place or paper beside the others, the rest, and what was seen of the stamping."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=5.0, parent=parent)
        self.desk = desk
        look = desk.look
        self.elsewhere = Elsewhere(desk)
        self.head = Text(look, tr("Beside the others"), ink="soft")
        self.near = Column(look, edge=0, top=0)
        self.stamping = Stamping(desk)
        self.far_head = SectionHead(look, tr("Between the others"))
        self.far = Column(look, edge=0, top=0)
        self.seventeen_head = SectionHead(look, tr("17-character number"))
        self.seventeen = Column(look, edge=0, top=0)
        for widget, gap in (
            (self.elsewhere, 0), (self.head, 4), (self.near, 1), (self.seventeen_head, 6), (self.seventeen, 1),
            (self.stamping, 6), (self.far_head, 6), (self.far, 0),
        ):  # fmt: skip
            self.add(widget, gap)
        self._judged: Judgement | None = None
        self._shown: Shown | None = None

    def show_shown(self, shown: Shown) -> None:
        """What concerns the open place or paper is shown, then the rest."""
        self.elsewhere.ask()
        judged = self.desk.judgement
        if judged is self._judged and shown == self._shown:
            return
        self._judged, self._shown = judged, shown
        standings = judged.standings
        papers = judged.papers
        near = [s for s in standings if shown.place in s.places] if shown.place else []
        quoted = [p for p in papers if p.paper == shown.paper or (shown.place and p.place == shown.place)]
        self._list(self.near, [*map(self._standing, near), *map(self._paper, quoted)])
        if not near and not quoted:
            self.near.add(Text(self.look, tr("Nothing to compare yet."), ink="soft"), 1)
        rest = [*map(self._standing, (s for s in standings if s not in near)),
                *map(self._paper, (p for p in papers if p not in quoted))]  # fmt: skip
        self._list(self.far, rest)
        self.far_head.setVisible(bool(rest))
        self._show_seventeen(shown, judged)

    def _list(self, column: Column, rows: Iterable[QWidget]) -> None:
        column.clear()
        for row in rows:
            column.add(row, 0)

    def _standing(self, standing: Standing) -> Opening:
        found = sources(self.desk.profile, standing.sources)
        names = tr("{one} and {other}", one=standing.names[0], other=lower_first(standing.names[1]))
        who = tr(found[0].kind.value) if found else ""
        row = Row(
            self.look, tr(standing.sentence), label=names, sign=SIGNS[standing.stand], strong=True,
            second=who, second_sign=f"grade {standing.grade}" if found else "",
        )  # fmt: skip
        by_id = {trap.id: trap for trap in self.desk.profile.traps}
        traps = [by_id[key].text for key in standing.traps if key in by_id]
        return Opening(self.look, row, [tr(standing.detail), *traps], found)

    def _paper(self, paper: PaperStanding) -> Opening:
        names = tr("{one} and {other}", one=paper.place_name, other=paper.name) if paper.place_name else paper.name
        row = Row(
            self.look, tr(paper.sentence), label=names, sign=SIGNS[paper.stand], strong=True,
            second=tr("{number}, {state}", number=paper.quoted, state=tr(paper.state.value)) if paper.quoted else "",
        )  # fmt: skip
        return Opening(self.look, row, [tr(reason) for reason in paper.reasons], ())

    def _show_seventeen(self, shown: Shown, judged: Judgement) -> None:
        self.seventeen.clear()
        found = [line for line in judged.seventeen if shown.reading and line.reading == shown.reading]
        for line in found:
            result = line.result
            for sentence in (*result.reasons, *result.blind):
                self.seventeen.add(Text(self.look, tr(sentence)), 1)
            if result.sources:
                words = "; ".join(tr(source) for source in result.sources)
                self.seventeen.add(Text(self.look, words, step="small", ink="soft"), 1)
        self.seventeen.setVisible(bool(found))
        self.seventeen_head.setVisible(bool(found))
