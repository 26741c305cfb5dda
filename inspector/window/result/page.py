"""The page Result: safety first, then coverage and correctness, what would move it, what is open."""

from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.questions import OpenQuestion
from inspector.judgement.route import left_by_station
from inspector.judgement.score import PartScore, percent_seen
from inspector.record.edits import Changed
from inspector.record.verbs import choose_pattern_policy
from inspector.record.words import PatternPolicy
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.charts import CoverageBar, Move, MoveBars, ScoreBar
from inspector.window.look.columns import Column, Columns
from inspector.window.look.facts import SafetyBlock
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.rows import Row
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import THICK, Hairline, SectionHead, Text
from inspector.window.result.numbers import NumbersPart
from inspector.window.result.points import PointsPart
from inspector.window.result.years import YearsPart
from inspector.window.walk.facts import safety_words, show_score, unseen_safety

BETWEEN = 6.0  # from what was seen to what is correct, in millimetres
POLICY_WORDS = {
    PatternPolicy.PENALISED: "A passed pattern part counts half",
    PatternPolicy.NEUTRAL: "Pattern parts are left out of the sum",
    PatternPolicy.ACCEPTED: "A pattern part counts as it is marked",
}


class ResultPage(QWidget):
    """Four results kept apart: safety, correctness for the claim, identity as read, condition."""

    id = "result"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        look = desk.look
        self.safety = SafetyBlock(look, step="head")
        self.top = Column(look)
        self.top.add(self.safety)
        self.unseen_safety = Text(look)
        self.top.add(self.unseen_safety, 2)
        self.seen, self.left = Text(look, step="name"), Text(look, ink="soft")
        self.correct, self.band = Text(look, step="name"), Text(look, ink="soft")
        self.coverage, self.score = CoverageBar(look), ScoreBar(look)
        self.policy = ChoiceKeys(look, [Option(p.value, tr(p.value)) for p in PatternPolicy], held="kept")
        self.policy_words = Text(look, ink="soft")
        self.movers = MoveBars(look)
        self.stations, self.assemblies = Column(look, edge=0, top=0), Column(look, edge=0, top=0)
        self.points = PointsPart(desk)
        self.question_head = SectionHead(look, tr("Open questions"))
        self.questions, self.differences = Column(look, edge=0, top=0), Column(look, edge=0, top=0)
        self.years, self.numbers = YearsPart(desk), NumbersPart(desk)
        self.condition = Column(look, edge=0, top=0)
        self.reasons = Column(look, edge=0, top=0)
        self.score_side, self.open_side = Column(look), Column(look)
        self._lay_out()
        self.columns = Columns(look, [(self.score_side, 0), (self.open_side, 0)])
        self.over = Scroll(look, self.top)
        self._stand()
        self._connect()

    def _stand(self) -> None:
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.over)
        box.addWidget(Hairline(self.desk.look, ink="ink", thick=THICK))
        box.addWidget(self.columns, 1)

    def _lay_out(self) -> None:
        look, side = self.desk.look, self.score_side
        seen, correct = Column(look, edge=0, top=0), Column(look, edge=0, top=0)
        for column, *widgets in (
            (seen, Text(look, tr("Seen"), ink="soft"), self.seen, self.left, self.coverage),
            (
                correct,
                Text(look, tr("Correct of what was seen, of 100"), ink="soft"),
                self.correct,
                self.band,
                self.score,
            ),
        ):
            for widget in widgets:
                column.add(widget, 0)
        self._both = QHBoxLayout()
        self._both.addWidget(seen, 1)
        self._both.addWidget(correct, 1)
        both = QWidget()
        both.setLayout(self._both)
        side.add(both)
        side.add(Text(look, tr("How pattern parts count is your choice; none is the right one."), ink="soft"))
        side.add(self.policy, 1)
        side.add(self.policy_words, 1)
        side.add(self.movers, 6)
        self.how_moved = Text(look, tr(
            "To the left how far the score falls if the item turns out the worst way, to the right how far it rises if"
            " it turns out the best way or is put right.",
        ), ink="soft", step="small")  # fmt: skip
        side.add(self.how_moved, 2)
        self._section(side, tr("By station"), self.stations)
        brackets = tr("In brackets the lowest and the highest that it may end at.")
        self.brackets = Text(look, brackets, ink="soft", step="small")
        side.add(self.brackets, 2)
        self._section(side, tr("By assembly"), self.assemblies)
        self._section(side, tr("Why this score"), self.reasons)
        self.open_side.add(self.years)
        self._section(self.open_side, tr("Numbers as read"), self.numbers)
        self._section(self.open_side, tr("Where two people differ"), self.differences)
        self.open_side.add(self.question_head, 6)
        self.open_side.add(self.questions, 2)
        self._section(self.open_side, tr("Condition"), self.condition)
        self._section(self.open_side, tr("Points"), self.points)
        self._space()

    def _space(self) -> None:
        self._both.setContentsMargins(0, 0, 0, 0)
        self._both.setSpacing(self.desk.look.px(BETWEEN))

    def _section(self, side: Column, title: str, body: QWidget) -> None:
        side.add(SectionHead(self.desk.look, title), 6)
        side.add(body, 2)

    def _connect(self) -> None:
        self.policy.picked.connect(lambda word: self.desk.do(choose_pattern_policy(PatternPolicy(word))))
        self.points.wanted.connect(self._open)
        self.columns.narrowChanged.connect(self._be_narrow)
        self.desk.look.changed.connect(self._space)
        self.desk.opened.connect(self.show_result)
        self.desk.changed.connect(self.show_change)
        self._be_narrow(self.columns.narrow)
        self.show_result()

    def _be_narrow(self, narrow: bool) -> None:
        """Safety stands as far from the edge as what is below it."""
        self.top.set_narrow(narrow)
        self._fit()

    # showing

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while another page was open is shown now."""
        super().showEvent(event)
        self.show_result()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Safety has the height it needs, up to half the page; past that it scrolls."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self.over.setFixedHeight(min(self.top.heightForWidth(self.width()), self.height() // 2))

    def show_change(self, _: Changed | None) -> None:
        """What is not looked at is drawn when the page is opened."""
        if self.isVisible():
            self.show_result()

    def show_result(self) -> None:
        """Everything computed from the record as it stands."""
        if self.desk.session is None:
            return
        judged = self.desk.judgement
        head, sentences, caution = safety_words(judged)
        self.safety.say(head, sentences, caution)
        self.safety.setVisible(bool(sentences))
        unseen = unseen_safety(self.desk)
        self.unseen_safety.say(unseen if sentences else f"{unseen} {caution}", lead="" if sentences else head + ".")
        show_score(judged, self.seen, self.left, self.coverage, self.correct, self.band, self.score)
        policy = self.desk.record.choices.pattern_parts
        self.policy.set_held(policy.value)
        self.policy_words.say(tr(POLICY_WORDS[policy]) + ". " + tr("Identity, condition and safety are kept apart."))
        value = judged.score.value
        now = tr("now {score}", score=round(value)) if value is not None else tr("nothing counted yet")
        moves = [Move(m.name, tr(m.advice), m.sign, m.down, m.up) for m in judged.score.movers[:6]]
        self.movers.set_moves(tr("What would move it most"), now, moves)
        self.how_moved.setVisible(bool(moves))
        self.brackets.setVisible(value is not None)
        stations = left_by_station(self.desk.profile, self.desk.record)
        first = {s.id: next((i for i in s.items if judged.states[i].mark is None), s.items[0]) for s in stations}
        self._list_parts(self.stations, judged.score.by_station, first)
        self._list_parts(self.assemblies, judged.score.by_assembly, {})
        self._list(self.reasons, [tr(r) for r in judged.score.reasons], tr("nothing marked yet"))
        self._show_questions(judged)
        self._list(self.differences, [tr(d.sentence) for d in judged.differences], tr("none"))
        self.years.show_years()
        self.numbers.show_numbers()
        self._list(self.condition, [tr(c) for c in judged.condition], tr("nothing noted"))
        self.points.show_points(judged)
        self._fit()

    def _list(self, column: Column, sentences: list[str], none: str) -> None:
        column.clear()
        for sentence in sentences or [none]:
            column.add(Text(self.desk.look, sentence), 1)

    def _list_parts(self, column: Column, parts: tuple[PartScore, ...], first: dict[str, str]) -> None:
        """One row a part; a touch opens the item that ``first`` names for it."""
        column.clear()
        for part in parts:
            seen = tr("seen {n} %", n=percent_seen(part.seen))
            if part.value is None:
                words = tr("{seen}, nothing counted yet", seen=seen)
            else:
                words = tr("{seen}, correct {value} ({low} to {high})", seen=seen, value=round(part.value),
                           low=round(part.low), high=round(part.high))  # fmt: skip
            item, name = first.get(part.id, ""), tr(part.name)
            row = Row(self.desk.look, name[:1].upper() + name[1:], opens=bool(item), aside=words, aside_soft=True)
            row.clicked.connect(lambda _=False, item=item: self._open(item))
            column.add(row, 0)

    def _show_questions(self, judged: Judgement) -> None:
        count = trn("{count} question", "{count} questions", len(judged.questions))
        self.question_head.say(tr("Open questions"), count)
        self.questions.clear()
        for n, question in enumerate(judged.questions, 1):
            step = question.next_step or tr("no next step recorded")
            opens = bool(question.item or question.place)
            row = Row(self.desk.look, tr(question.text), lead=str(n), second=step, opens=opens)
            row.clicked.connect(lambda _=False, asked=question: self._open_question(asked))
            self.questions.add(row, 0)
        if not judged.questions:
            self.questions.add(Text(self.desk.look, tr("none so far")), 1)

    def _open(self, item: str) -> None:
        if item:
            self.desk.go_to(item)
            self.desk.wanted.emit("walk")

    def _open_question(self, question: OpenQuestion) -> None:
        if not question.item and question.place:
            self.desk.show_place(question.place)
        self._open(question.item)
