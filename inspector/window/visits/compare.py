"""Two visits to one machine beside each other, item by item, with the photographs of both."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.visits import Became, compare, day
from inspector.record.second import visit_before
from inspector.sheet.visits import visits_sheet
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr, trn
from inspector.window.longwords import LongWords
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.thumb import Thumb
from inspector.window.visits.dialog import View

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

    from inspector.judgement.visits import Side, VisitLine, Visits
    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.window.desk import Desk

PICTURES = 3  # of one item on one visit
LISTED = 60  # machines offered to compare with


class CompareView(View):
    """The open machine's visit beside the one before, or beside any other record that is chosen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, tr("Two visits compared"), parent)
        self.desk = desk
        look = desk.look
        self.was: Record | None = visit_before(desk.record)
        self.now = desk.record
        self.visits: Visits | None = None
        self.other = Key(look, tr("another visit"), name=tr("Choose another visit to compare with"), arrow="down")
        self.save = Key(look, tr("save as PDF"), name=tr("Save the comparison as a PDF"))
        self.join = Key(look, tr("join the two"), name=tr("Join the two records, if they are of one machine"))
        self.beside: Record | None = None  # the other record, where it is one of the library
        close = Key(look, tr("close"))
        self.body, self.choices = Column(look, edge=0, top=0), Column(look, edge=0, top=0)
        self.choices.hide()
        self.column.add(Text(look, tr("Two visits compared"), step="head"))
        self.column.add(KeyRow(look, [self.other, self.save, self.join, close], fit="flow"), 3)
        self.column.add(self.choices, 2)
        self.column.add(self.body, 3)
        self.other.clicked.connect(self.toggle_choices)
        self.save.clicked.connect(self._ask_where)
        self.join.clicked.connect(self.open_join)
        close.clicked.connect(self.close)
        if self.was is None:
            self.toggle_choices()
        self._show()

    # which visits

    def toggle_choices(self) -> None:
        """The other records are listed, or no longer; those of the same profile come first."""
        shown = not self.choices.isVisibleTo(self.column)
        self.choices.setVisible(shown)
        self.other.hold("kept" if shown else "")
        if not shown:
            return
        self.choices.clear()
        others = [m.summary for m in self.desk.library.machines() if m.summary.id != self.now.id]
        others.sort(key=lambda line: line.title != (self.now.claim.model or self.now.profile.title))
        for line in others[:LISTED]:
            row = Row(self.look, line.title, second=f"{line.date}  {line.numbers}", label=line.id)
            row.clicked.connect(lambda _=False, key=line.id: self.show_other(key))
            self.choices.add(row, 0)
        if not others:
            self.choices.add(Text(self.look, tr("There is no other record here."), ink="soft"))

    def show_other(self, record_id: str) -> None:
        """That record is compared with the open one, the earlier of the two as what was."""
        try:
            other = self.desk.library.load(record_id).record
        except StorageTrouble as trouble:
            self.desk.told.emit(tr(trouble.said))
            return
        self.beside = other
        self.was, self.now = in_order(other, self.desk.record)
        self.choices.hide()
        self.other.hold("")
        self._show()

    # what became of what

    def _show(self) -> None:
        self.body.clear()
        self.save.turn_off("" if self.was else tr("Choose a visit to compare with first."))
        self.join.turn_off("" if self.beside else tr("Choose another record of this machine first."))
        if self.was is None:
            self.body.add(
                Text(self.look, tr("This record was not begun from another. Choose what to compare it with."))
            )
            return
        self.visits = visits = compare(self.desk.profile, self.was, self.now)
        days = tr("{was} ({was_id}) beside {now} ({now_id})", was=visits.was_day, was_id=visits.was_id,
                  now=visits.now_day, now_id=visits.now_id)  # fmt: skip
        self.body.add(Text(self.look, days, semibold=True))
        self.body.add(Text(self.look, "; ".join(
            f"{count} {tr(word)}" for word, count in visits.counts.items() if count
        )), 1)  # fmt: skip
        for note in visits.notes:
            self.body.add(LongWords(self.look, tr(note), ink="soft"), 1)
        for became in Became:
            self._group(became, [line for line in visits.lines if line.became is became])
        self._numbers(visits)

    def _group(self, became: Became, lines: list[VisitLine]) -> None:
        if not lines:
            return
        head = trn("{word}: {count} item", "{word}: {count} items", len(lines), word=tr(became.value).capitalize())
        self.body.add(SectionHead(self.look, head))
        for line in lines:
            here = self.now.id == self.desk.record.id
            was, now = tr("Was: {words}", words=_said(line.was)), tr("Now: {words}", words=_said(line.now))
            row = Row(self.look, line.name, strong=True, second=f"{was}\n{now}", sign=line.now.sign,
                      aside=tr(line.now.sign), aside_soft=True, opens=here)  # fmt: skip
            row.clicked.connect(lambda _=False, item=line.item: self._go_to(item))
            self.body.add(row, 0)
            self._pictures(line)

    def _pictures(self, line: VisitLine) -> None:
        for words, side in ((tr("then"), line.was), (tr("now"), line.now)):
            if side.photographs:
                thumbs = [Thumb(self.desk, photograph) for photograph in side.photographs[:PICTURES]]
                for thumb in thumbs:
                    thumb.clicked.disconnect()
                    thumb.clicked.connect(lambda _=False, one=thumb.photograph: self._enlarge(one))
                self.body.add(Text(self.look, words, ink="soft", step="small"), 1)
                self.body.add(KeyRow(self.look, thumbs, fit="flow"), 1)

    def _enlarge(self, photograph: Photograph) -> None:
        from inspector.window.thumb import Large

        dialog = Large(self.desk, photograph, self)
        dialog.remove.hide()
        dialog.closely.hide()
        dialog.open()

    def _numbers(self, visits: Visits) -> None:
        if not visits.numbers:
            return
        self.body.add(SectionHead(self.look, tr("Numbers as read")))
        for number in visits.numbers:
            words = tr("was {was}; is {now}", was=number.was or "–", now=number.now or "–")
            self.body.add(Row(self.look, tr(number.sentence), label=f"{number.name}: {words}", opens=False), 0)

    def _go_to(self, item: str) -> None:
        self.desk.go_to(item)
        self.desk.wanted.emit("walk")
        self.close()

    # as one record

    def open_join(self) -> None:
        """What speaks against one machine is shown, and the two can be joined."""
        from inspector.window.visits.joining import JoinView

        if self.beside is not None:
            view = JoinView(self.desk, self.beside, self.parentWidget())
            self.close()
            view.open()

    # as a sheet

    def _ask_where(self) -> None:
        self.desk.ask.where_to_save(f"visits-{self.now.id}.pdf", self.save_to)

    def save_to(self, path: Path) -> None:
        """The comparison stands there as a PDF, or a sentence says why it does not."""
        from inspector.sheet.pdf import as_pdf
        from inspector.sheet.write import SheetTrouble, write_atomically

        if self.was is None or self.visits is None:
            return
        sheet = visits_sheet(self.was, self.now, self.visits, self.desk.clock())
        try:
            write_atomically(path, as_pdf(sheet))
        except SheetTrouble as trouble:
            self.desk.told.emit(tr(trouble.sentence))
            return
        self.desk.told.emit(tr("Saved as {name}.", name=path.name))


def in_order(one: Record, other: Record) -> tuple[Record, Record]:
    """The earlier visit first: that from which the other was begun, else by the day."""
    if one.earlier is not None and one.earlier.record == other.id:
        return other, one
    if other.earlier is not None and other.earlier.record == one.id:
        return one, other
    first, then = sorted((one, other), key=lambda record: (day(record), record.created))
    return first, then


def _said(side: Side) -> str:
    return tr(side.said)
