"""What the readings of one measure say: mean, spread, what it fits, what is offered, and why."""

from inspector.judgement.measured import MeasuredLine, measured_line
from inspector.judgement.proposal import source_lines
from inspector.profile.items import Item, Measure, Nominal
from inspector.record import verbs
from inspector.record.finding import Finding, Measured
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.facts import FactRow
from inspector.window.look.keys import Key
from inspector.window.look.text import Text


class Outcome(Column):
    """Sentences and two keys; nothing is marked or fitted unless the person does it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        look = desk.look
        self._line: MeasuredLine | None = None
        self._measure: Measure | None = None
        self.wrong = Text(look, semibold=True)  # beside the keys, so that these stay under the finger
        self.sentence = Text(look, semibold=True)
        self.spread = Text(look)
        self.proposal = Text(look, ink="soft")
        self.fitted = Key(look)
        self.why = Key(look, tr("why it says so"), arrow="down", left=True)
        self.reasons = Column(look, edge=0, top=0)
        for widget in (self.wrong, self.sentence, self.spread, self.proposal, self.fitted, self.why, self.reasons):
            self.add(widget, 2)
        self.reasons.hide()
        self.fitted.clicked.connect(self._fit)
        self.why.clicked.connect(self._toggle)

    @property
    def _item(self) -> Item:
        return self.desk.profile.item_by_id[self.desk.item]

    def refuse(self, sentence: str) -> None:
        """What is wrong with a reading is said in one sentence; nothing where it is empty."""
        self.wrong.say(sentence)
        self.wrong.setVisible(bool(sentence))

    def put_away(self) -> None:
        """The reasons are not shown until they are asked for."""
        self.reasons.hide()

    def show_readings(self, measure: Measure, taken: Measured, found: Finding | None) -> None:
        """What these readings say is shown; without readings, what is to be done."""
        self._measure = measure
        line = measured_line(self._item, taken, self.desk.here.by, self.desk.record.claim.model_year)
        self._line = line
        self.sentence.say(tr(line.short) if line else tr("No reading yet. Up to three, one after the other."))
        spread = tr("Mean {mean} {unit}, spread {spread} {unit}.", mean=line.shown, spread=line.spread,
                    unit=tr(measure.unit.value)) if line and line.spread else ""  # fmt: skip
        proposal = tr(line.proposal) if line and line.proposal else ""
        for text, words in ((self.spread, spread), (self.proposal, proposal)):
            text.say(words)
            text.setVisible(bool(words))
        self._offer(line, found)
        self.why.setVisible(line is not None)
        if line is None:
            self.reasons.hide()
        if not self.reasons.isHidden():
            self._fill()

    def _offer(self, line: MeasuredLine | None, found: Finding | None) -> None:
        form = next((v for v in self._item.variants if line and v.id == line.variant), None)
        offered = form is not None and (found is None or found.fitted != form.id)
        self.fitted.setVisible(offered)
        if form is not None and offered:
            self.fitted.say(tr("Fitted: {form}", form=form.name), second=tr("as measured; you decide"))

    def _fit(self) -> None:
        if self._line is not None and self._line.variant:
            self.desk.do(verbs.fit_by_measure(*self.desk.at(), self._line.variant))

    # why

    def _toggle(self) -> None:
        if self.reasons.isHidden():
            self._fill()
        self.reasons.setVisible(self.reasons.isHidden())

    def _fill(self) -> None:
        self.reasons.clear()
        for reason in self._line.reasons if self._line else ():
            self.reasons.add(Text(self.look, tr(reason)), 1)
        for nominal in self._measure.nominals if self._measure else ():
            self.reasons.add(self._published(nominal), 1)

    def _published(self, nominal: Nominal) -> FactRow:
        """A published value with its limits, and who publishes it."""
        assert self._measure is not None
        best = next(iter(source_lines(self.desk.profile, nominal)), None)
        low, high = nominal.value - nominal.minus, nominal.value + nominal.plus
        form = next((v.name for v in self._item.variants if v.id == nominal.variant), self._measure.name)
        words = tr("{low} to {high} {unit}", low=f"{low:g}", high=f"{high:g}", unit=tr(self._measure.unit.value))
        return FactRow(
            self.look, form, second="; ".join(part for part in (words, _years(nominal), nominal.note) if part),
            grade=best.grade if best else 0, kind=tr(best.kind) if best else tr("no source"),
            place=(best.place or best.title) if best else "", opens=False,
        )  # fmt: skip


def _years(nominal: Nominal) -> str:
    first, last = nominal.years.first, nominal.years.last
    if first and last:
        return str(first) if first == last else tr("{first} to {last}", first=first, last=last)
    return tr("from {year}", year=first) if first else tr("to {year}", year=last) if last else ""
