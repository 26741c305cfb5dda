"""The open item: what is expected, how to look, what is fitted, and the mark."""

from functools import partial
from itertools import zip_longest

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget

from inspector.judgement.proposal import ExpectedLine, Proposal, SourceLine, expected_lines, propose
from inspector.profile.items import Item, Variant
from inspector.record import verbs
from inspector.record.finding import Finding
from inspector.record.words import Mark, Seen
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.facts import FactRow
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import ItemHead, SectionHead, Text
from inspector.window.visits.was import WasLine
from inspector.window.walk.asread import AsRead
from inspector.window.walk.drawers import Drawers
from inspector.window.walk.marks import MarkStrip
from inspector.window.walk.photographs import PhotographStrip
from inspector.window.walk.telling import years_of

OTHER = "other"
UNSEEN = (Seen.NOT_CHECKED, Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN, Seen.NOT_FITTED)
MARK_TALL = 15.5


class ItemView(Column):
    """Everything about the open item in reading order; each touch is one step, kept at once."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, parent=parent)
        self.desk = desk
        look = desk.look
        self.head = ItemHead(look)
        self.question = Text(look)
        self.caution = Text(look, semibold=True)
        self.was = WasLine(desk)
        self.as_read = AsRead(desk)
        self.expected_head = SectionHead(look, "")
        self.expected = Column(look, edge=0, top=0)
        self.no_form = Text(look, ink="soft")
        self._rows: list[FactRow] = []
        self._facts: list[tuple[ExpectedLine, int, SourceLine | None]] = []
        self.how = Text(look)
        self.fitted_head = Text(look, tr("Fitted"), semibold=True)
        self.fitted = ChoiceKeys(look, held="kept", may_clear=True, fit="fill")
        self.proposal = Text(look, ink="soft")
        self.others = Text(look)
        self.marks = ChoiceKeys(
            look, [Option(m.value, tr(m.value), sign=m.value) for m in Mark],
            may_clear=True, step="key", tall=MARK_TALL,
        )  # fmt: skip
        self.unseen = MenuKey(look, tr("not seen"), _unseen_options(), tall=MARK_TALL)
        self.drawers = Drawers(desk)
        self.photographs = PhotographStrip(desk)
        self.back = Key(look, tr("back"), arrow="left", step="next", tall=MARK_TALL)
        self.next = Key(look, tr("next"), arrow="right", step="next", strong=True, tall=MARK_TALL)
        self.foot = MarkStrip(look, self.back, self.marks, self.unseen, self.next)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.add(self.head)
        self.add(self.question, 1)
        self.add(self.caution, 2)
        self.add(self.was, 2)
        self.add(self.as_read, 2)
        self.add(self.expected_head)
        self.add(self.expected, 0)
        self.add(self.no_form, 2)
        self.add(self.how)
        self.add(self.fitted_head)
        self.add(self.fitted, 2)
        self.add(self.proposal)
        self.add(self.others, 2)
        self.add(self.drawers)
        self.add(self.photographs)

    def put_above(self, strip: QWidget) -> None:
        """The strip of stations stands above the item's head."""
        self.insert(0, strip)

    def come_to_top(self) -> None:
        """The head of the item is where one looks, whatever was scrolled before; in one column with all above it."""
        found = top_in_area(self)
        if found is not None:
            area, top = found
            area.verticalScrollBar().setValue(top if top > area.height() // 2 else 0)

    def minimumSizeHint(self) -> QSize:
        """It takes the width that the other columns leave, which is never too little."""
        return QSize(0, 0)

    def _connect(self) -> None:
        self.fitted.picked.connect(self.pick_fitted)
        self.marks.picked.connect(self.pick_mark)
        self.unseen.picked.connect(self.pick_unseen)
        self.back.clicked.connect(self.desk.previous_item)
        self.next.clicked.connect(self.desk.next_item)

    # what is shown

    @property
    def item(self) -> Item:
        """The open item."""
        return self.desk.profile.item_by_id[self.desk.item]

    def show_item(self) -> None:
        """Another item is open: all of it is shown anew."""
        item, desk = self.item, self.desk
        walk = desk.walk
        place = tr("item {n} of {all}", n=walk.index(item.id) + 1, all=len(walk)) if item.id in walk else ""
        minutes = trn("about {count} minute", "about {count} minutes", max(1, round(item.minutes)))
        self.head.say(item.name, where=desk.profile.station_of[item.id].name, place=place, aside=minutes)
        self.foot.name.say(item.name)
        self.question.say(item.question)
        self.caution.say(item.caution)
        self.caution.setVisible(bool(item.caution))
        self.was.show_item()
        self.as_read.show_item()
        self._show_expected()
        bring = " " + tr("Bring: {things}.", things=", ".join(item.bring)) if item.bring else ""
        self.how.say(item.how + bring, lead=tr("How to look."))
        self.fitted.set_options(self._options())
        self.drawers.show_item()
        self.show_finding()

    def _show_expected(self) -> None:
        year = self.desk.record.claim.model_year
        head = tr("Expected for a {year} model", year=year) if year else tr("Expected, of whatever year")
        self.expected_head.say(head)
        lines = expected_lines(self.desk.profile, self.item, year)
        self._facts = [(line, n, source) for line in lines for n, source in enumerate(line.sources or (None,))]
        # A number has no forms to choose from: what was read stands there instead.
        number = bool(self.item.place) and not self.item.variants
        self.expected_head.setVisible(not number)
        self.expected.setVisible(not number)
        self.no_form.say(no_form_words(self.item, year))
        self.no_form.setVisible(not lines and not number)
        # Rows are made once and say something else at the next item.
        while len(self._rows) < len(self._facts):
            row = FactRow(self.look, "")
            row.clicked.connect(partial(self._tell_fact, len(self._rows)))
            self._rows.append(row)
            self.expected.add(row, 0)
        for row, fact in zip_longest(self._rows, self._facts):
            row.setVisible(fact is not None)
            if fact is not None:
                _say_expected(row, *fact)

    def _tell_fact(self, n: int, _: bool = False) -> None:
        self.desk.told.emit(_told(self._facts[n][0]))

    def _options(self) -> list[Option]:
        year = self.desk.record.claim.model_year
        ranked = sorted(self.item.variants, key=lambda v: _rank(v, year))
        options = [Option(v.id, v.name, second=_span(v)) for v in ranked]
        return [*options, Option(OTHER, tr("other"), second=tr("describe it"))]

    def show_finding(self) -> None:
        """The finding at the open item is what is held, chosen and written."""
        found = self.desk.finding
        self._hold_fitted()
        self.marks.set_held(found.mark.value if found and found.mark else "")
        self.unseen.set_picked(found.seen.value if found and found.mark is None else "")
        self.proposal.say(self._proposed(found))
        self.proposal.setVisible(bool(self.proposal.words))
        others = [f for f in self.desk.record.findings_at(self.desk.item) if f.by != self.desk.here.by]
        self.others.say(" ".join(_said(self.desk, other) for other in others))
        self.others.setVisible(bool(others))
        self.drawers.show_finding(found)
        self.photographs.show_item()

    def _hold_fitted(self) -> None:
        found = self.desk.finding
        held = (found.fitted or (OTHER if found.fitted_other else "")) if found else ""
        self.fitted.set_held(held)
        for part in (self.fitted_head, self.fitted):
            part.setVisible(bool(self.item.variants or held))

    def _proposed(self, found: Finding | None) -> str:
        proposal = self._proposal(found)
        return tr(proposal.sentence) if proposal else ""

    def _proposal(self, found: Finding | None) -> Proposal | None:
        if not found or not found.fitted:
            return None
        return propose(self.desk.profile, self.item, found.fitted, self.desk.record.claim.model_year)

    # what the person does

    def pick_fitted(self, option: str) -> None:
        """That form is noted as fitted, or no longer; "other" opens the place to describe it."""
        if option == OTHER:
            self._hold_fitted()  # "other" is held once it is described
            self.drawers.open("note")
            self.drawers.other.setFocus()
            return
        found = self.desk.finding
        again = found is not None and found.fitted == option
        self.desk.do(verbs.choose_fitted(*self.desk.at(), "" if again else option))

    def pick_mark(self, option: str) -> None:
        """The item carries that mark, or none when it stood so. A taken proposal brings its conclusion."""
        found, mark = self.desk.finding, Mark(option)
        if found and found.mark is mark:
            self.desk.do(verbs.mark(*self.desk.at(), None))
            return
        proposal = self._proposal(found)
        if found and proposal and proposal.mark is mark and not found.conclusions:
            self.desk.do(verbs.take_proposal(*self.desk.at(), mark, proposal.conclusion))
        else:
            self.desk.do(verbs.mark(*self.desk.at(), mark))

    def pick_unseen(self, option: str) -> None:
        """The item is noted as one of the unseen states, or as examined when it stood so."""
        state, found = Seen(option), self.desk.finding
        again = found is not None and found.seen is state
        self.desk.do(verbs.set_seen(*self.desk.at(), Seen.EXAMINED if again else state))


def no_form_words(item: Item, year: int | None) -> str:
    """Why no form is expected: the profile lists none at all, or none for that year."""
    if not item.variants:
        return tr("The profile lists no forms of it. Say in a note what you see.")
    if year is None:
        return tr("The profile lists no form of it that is right for some year.")
    return tr("The profile lists no form of it for {year}.", year=year)


def _say_expected(row: FactRow, line: ExpectedLine, n: int, source: SourceLine | None) -> None:
    row.be_open(bool(line.note or line.detail))
    row.say(
        line.name if n == 0 else tr("also"), second=_second(line) if n == 0 else "",
        grade=source.grade if source else 0, kind=tr(source.kind) if source else tr("no source"),
        place=source.place or source.title if source else "",
    )  # fmt: skip


def _said(desk: Desk, finding: Finding) -> str:
    """What somebody else said of the item, in one sentence."""
    words = [tr(finding.mark.value) if finding.mark else tr(finding.seen.value)]
    words += [tr(concluded.what.value) for concluded in finding.conclusions]
    return tr("{name} says: {words}.", name=desk.record.name_of(finding.by), words=", ".join(words))


def _unseen_options() -> list[Option]:
    words = {Seen.EXAMINED: tr("examined, no mark yet")}
    return [Option(s.value, words.get(s, tr(s.value)), sign=s.value) for s in (Seen.EXAMINED, *UNSEEN)]


def _rank(variant: Variant, year: int | None) -> tuple[bool, str]:
    fits = variant.years is not None and (year is None or variant.years.holds(year))
    return (not fits, "" if variant.origin.value == "factory" else variant.origin.value)


def _span(variant: Variant) -> str:
    origin = "" if variant.origin.value == "factory" else tr(variant.origin.value)
    return ", ".join(part for part in (years_of(variant), origin) if part)


def _second(line: ExpectedLine) -> str:
    detail = tr(line.detail) if line.detail else ""
    return "; ".join(part for part in (detail, tr("sources disagree") if line.disputed else "") if part)


def _told(line: ExpectedLine) -> str:
    sources = "; ".join(
        f"{tr(s.kind)}: {s.title}" + (f", {s.place}" if s.place else "") for s in line.sources
    ) or tr("no source")  # fmt: skip
    return " ".join(part for part in (f"{line.name}.", line.note, sources + ".") if part)
