"""What is known so far: safety first and in words, then coverage, correctness, what is open."""

from PySide6.QtWidgets import QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.score import percent_seen
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.charts import CoverageBar, ScoreBar
from inspector.window.look.columns import Column
from inspector.window.look.facts import SafetyBlock
from inspector.window.look.rows import Row
from inspector.window.look.text import Hairline, Text
from inspector.window.walk.identity import IdentityRows


class Facts(Column):
    """The live panel beside the walk; every line is computed from the record as it stands."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, parent=parent)
        self.desk = desk
        self._judged: Judgement | None = None
        look = desk.look
        self.safety = SafetyBlock(look)
        self.no_safety = Text(look)
        self.seen = Text(look, step="name")
        self.left = Text(look, ink="soft")
        self.coverage = CoverageBar(look)
        self.correct = Text(look, step="name")
        self.band = Text(look, ink="soft")
        self.score = ScoreBar(look)
        self.brief_seen, self.brief_correct = Text(look), Text(look)
        self.above = Column(look, edge=5, foot=0)
        self.foot_seen, self.foot_correct = Text(look), Text(look)
        self.foot = self._foot()
        self.foot.stands_for = self.score
        self.questions = Row(look, label=tr("Open questions"))
        self.differences = Row(look, label=tr("Two people differ"))
        self.identity = IdentityRows(desk)
        self._long = [
            Text(look, tr("What we know so far"), ink="soft"),
            Text(look, tr("Seen"), ink="soft"),
            Text(look, tr("Correct, of what was seen"), ink="soft"),
            *(self.seen, self.left, self.correct, self.band, self.score, Hairline(look), self.identity),
        ]
        title, seen, correct, *_ = self._long
        places = [
            (title, 4), (self.safety, 2), (self.no_safety, 0),
            (seen, 4), (self.seen, 0), (self.left, 0), (self.brief_seen, 3), (self.coverage, 1),
            (correct, 4), (self.correct, 0), (self.band, 0), (self.brief_correct, 3),
            (self.score, 1), (self._long[8], 3),
        ]  # fmt: skip
        for widget, gap in places:
            self.add(widget, gap)
        self.add(self.identity, 0)
        for row, page in ((self.differences, "result"), (self.questions, "result")):
            self.add(row, 0)
            row.clicked.connect(lambda _=False, page=page: desk.wanted.emit(page))

        self.be_brief(False)

    def _foot(self) -> Column:
        """The sums in two lines under a hairline."""
        words, foot = Column(self.look, top=2), Column(self.look, edge=0, top=0)
        words.add(self.foot_seen)
        words.add(self.foot_correct, 0)
        foot.add(Hairline(self.look))
        foot.add(words, 0)
        return foot

    def put_safety_above(self, above: bool) -> None:
        """What is unsafe stands above the whole page, as wide as that, or in this panel."""
        here, there = (self, self.above) if above else (self.above, self)
        if self.safety in there.widgets():
            return
        for at, (widget, gap) in enumerate(((self.safety, 2), (self.no_safety, 0)), 0 if above else 1):
            here.take(widget)
            there.insert(at, widget, gap)
        self.above.setVisible(above)

    def be_brief(self, brief: bool) -> None:
        """In one column the panel says the same in few lines."""
        for widget in self._long:
            widget.setVisible(not brief)
        for widget in (self.brief_seen, self.brief_correct):
            widget.setVisible(brief)

    def show_judgement(self) -> None:
        """The panel says what the record says now."""
        judged = self.desk.judgement
        if judged is self._judged:
            return
        self._judged = judged
        head, sentences, caution = safety_words(judged)
        self.safety.say(head, sentences, caution)
        self.safety.setVisible(bool(sentences))
        unseen = unseen_safety(self.desk, short=True)
        self.no_safety.say(unseen if sentences else f"{unseen} {caution}", lead="" if sentences else head + ".")
        show_score(judged, self.seen, self.left, self.coverage, self.correct, self.band, self.score)
        for seen, correct in ((self.brief_seen, self.brief_correct), (self.foot_seen, self.foot_correct)):
            seen.say(f"{self.seen.words}, {self.left.words}", lead=tr("Seen"))
            correct.say(f"{self.correct.words}, {self.band.words}", lead=tr("Correct"))
        self.questions.say(trn("{count} question", "{count} questions", len(judged.questions)))
        self.differences.setVisible(bool(judged.differences))
        self.differences.say("; ".join(d.name for d in judged.differences))
        self.identity.show_judgement(judged)


def safety_words(judged: Judgement) -> tuple[str, list[str], str]:
    """Head, sentences and caution of the safety block."""
    found = judged.safety.findings
    if found:
        head = trn("Safety: {count} finding", "Safety: {count} findings", len(found))
    else:
        head = tr("Safety: no finding entered")
    return head, [tr(f.sentence) for f in found], tr(judged.safety.caution)


def unseen_safety(desk: Desk, *, short: bool = False) -> str:
    """The safety items that nobody examined: how many, or all by name; that there are none where there are none."""
    unseen = desk.judgement.safety.not_seen
    if not any(item.safety for item in desk.profile.items()):
        return tr("The profile names no item that bears on safety.")
    if not unseen:
        return tr("Every safety item was looked at.")
    if short:
        return trn("{count} safety item not examined.", "{count} safety items not examined.", len(unseen))
    return tr("Not examined: {items}.", items=", ".join(unseen))


def show_score(
    judged: Judgement, seen: Text, left: Text, coverage: CoverageBar, correct: Text, band: Text, bar: ScoreBar
) -> None:
    """Coverage first, then the score with its band; no score stands alone."""
    score = judged.score
    percent = percent_seen(score.seen_percent)
    seen.say(tr("{n} %", n=percent))
    left.say(tr("{n} % left to see", n=100 - percent))
    coverage.set_seen(score.seen_percent)
    if score.value is None:
        correct.say(tr("nothing yet"))
        band.say(tr("may end anywhere from 0 to 100"))
    else:
        correct.say(str(round(score.value)))
        band.say(tr("may end at {low} to {high}", low=round(score.low), high=round(score.high)))
    bar.set_score(score.value, score.low, score.high)
