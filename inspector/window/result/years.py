"""Of which model year the machine is by its parts: sentence and chart, the odd ones, the weight of evidence."""

from collections.abc import Iterable

from PySide6.QtWidgets import QWidget

from inspector.judgement.assemblies import AssemblyYears
from inspector.judgement.weighing import Weight
from inspector.judgement.year_words import chart_years, runs, signed
from inspector.judgement.years import Years
from inspector.texts import Say, say, tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.table import Table
from inspector.window.look.text import SectionHead, Text
from inspector.window.look.years import ALLOWED, CONDITION, ODD, Span, YearRow, YearsChart
from inspector.window.numbers.telling import capital

MOST_WEIGHED = 10


class YearsPart(Column):
    """The sentence first, the chart that says the same, and behind keys the reasons and the weight."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.sentence = Text(look, step="head")
        self.rest = Text(look)
        self.chart = YearsChart(look)
        self.lines = Column(look, edge=0, top=0)
        self.why_key, self.weight_key = Key(look, tr("why these years")), Key(look, tr("weight of evidence"))
        self.why = Column(look, edge=0, top=0)
        self.weight = WeightPart(desk)
        self.add(self.sentence)
        self.add(self.rest, 1)
        self.add(self.chart, 3)
        self.add(self.lines, 2)
        self.add(KeyRow(look, [self.why_key, self.weight_key], fit="flow"), 2)
        self.add(self.why, 2)
        self.add(self.weight, 3)
        for key, body in ((self.why_key, self.why), (self.weight_key, self.weight)):
            body.hide()
            key.clicked.connect(lambda _=False, key=key, body=body: _toggle(key, body))
        self._shown: Years | None = None

    def show_years(self) -> None:
        """What the judgement says of the years is shown."""
        years = self.desk.judgement.years
        if years == self._shown:
            return
        self._shown = years
        first, _, rest = tr(years.sentence).partition(". ")
        self.sentence.say(first.rstrip("."))
        self.rest.say(rest)
        self.rest.setVisible(bool(rest))
        self._show_chart(years)
        shown = [
            years.claim_sentence,
            years.groups_sentence if len(years.groups) > 1 else None,
            years.youngest_sentence,
        ]
        hanging = [
            say("{assembly}: {condition}.", assembly=capital(own.assembly.value), condition=condition)
            for own in years.by_assembly if own.conditional for condition in own.conditions
        ]  # fmt: skip
        _list(self.lines, [*shown, *hanging, *years.running])
        _list(self.why, [*years.reasons, *(own.sentence for own in years.by_assembly)])
        self.weight.show_weight(years.weight, years.claimed)

    def _show_chart(self, years: Years) -> None:
        rows = [year_row(own) for own in years.by_assembly]
        ends = (end for row in rows for span in row.spans for end in (span.first, span.last))
        first, last = chart_years(self.desk.profile.years, years.claimed, ends)
        self.chart.set_rows(first, last, years.claimed, rows, claimed_word=tr("claimed") if years.claimed else "")
        self.chart.setAccessibleName(" ".join(tr(own.sentence) for own in years.by_assembly))


class WeightPart(Column):
    """Decibans for each year, with parts swapped as often as assumed, half as often and twice as often."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.head = SectionHead(desk.look, tr("Weight of evidence, in decibans"))
        self.sentence = Text(desk.look)
        self.table = Table(desk.look)
        self.reasons = Column(desk.look, edge=0, top=0)
        self.assumption = Text(desk.look, ink="soft")
        for widget, gap in (
            (self.head, 0),
            (self.sentence, 2),
            (self.table, 2),
            (self.reasons, 2),
            (self.assumption, 2),
        ):
            self.add(widget, gap)

    def show_weight(self, weight: Weight, claimed: int | None) -> None:
        """The heaviest years stand first; the claimed one is in semibold, and always there."""
        self.sentence.say(tr(weight.sentence))
        self.assumption.say(tr(weight.assumption))
        _list(self.reasons, weight.reasons)
        ranked = list(weight.ranking[:MOST_WEIGHED])
        if claimed is not None and claimed in weight.decibans and claimed not in ranked:
            ranked.append(claimed)
        rows = [
            (str(year), signed(weight.decibans[year]), signed(weight.halved[year]), signed(weight.doubled[year]))
            for year in ranked
        ]
        heads = (tr("year"), tr("as assumed"), tr("swapped half as often"), tr("swapped twice as often"))
        self.table.set_rows(heads, rows, ranked.index(claimed) if claimed in ranked else -1)
        self.table.setVisible(bool(rows))


def year_row(own: AssemblyYears) -> YearRow:
    """The bar of one assembly: odd hatched, what hangs on a figure broken, the rest plain."""
    years = own.years or own.left
    kind = ODD if own.odd or (own.left and not own.years) else ALLOWED
    firm = [year for year in years if year not in own.conditional]
    spans = [*_spans(firm, kind), *_spans(own.conditional, ODD if kind == ODD else CONDITION)]
    notes = [tr("odd one out")] if kind == ODD else []
    notes += [tr(condition) for condition in own.conditions] if own.conditional else []
    return YearRow(tr(own.assembly.value), tuple(sorted(spans, key=lambda span: span.first)), "; ".join(notes))


def spans_of(years: Iterable[int], kind: str) -> list[Span]:
    """Years that follow one another as one span."""
    spans: list[Span] = []
    for year in sorted(years):
        if spans and spans[-1].last == year - 1:
            spans[-1] = Span(spans[-1].first, year, kind)
        else:
            spans.append(Span(year, year, kind))
    return spans


def _spans(years: Iterable[int], kind: str) -> list[Span]:
    return [Span(first, last, kind) for first, last in runs(tuple(years))]


def _list(column: Column, sentences: Iterable[Say | None]) -> None:
    column.clear()
    for sentence in dict.fromkeys(tr(one) for one in sentences if one is not None):
        column.add(Text(column.look, sentence), 1)


def _toggle(key: Key, body: QWidget) -> None:
    body.setVisible(body.isHidden())
    key.hold("" if body.isHidden() else "kept")
