"""The list of machines: searched, opened, one taken out of it, and those taken out brought back."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QApplication, QScrollArea

from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.machines.taking import Taking

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.record.summary import Summary
    from inspector.storage.library import Machine, TakenOut
    from inspector.window.desk import Desk

SHOWN_AT_ONCE = 20


class MachineList(Column):
    """The machines that the search finds, the last changed first, and below them those taken out.

    ``listed`` tells that what is listed may be another.
    """

    listed = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.taking = desk, Taking(desk)
        look = desk.look
        self.search = LineField(look, tr("Search: name, number, place, seller, year"))
        self.which = Text(
            look,
            tr("It is kept for 30 days with its photographs and can be brought back until then."),
            lead=tr("Which machine is to go out of the list? Touch it."),
        )
        self.rows = Column(look, edge=0, top=0)
        self.more = Key(look, tr("show more"))
        self.take_key = Key(look, tr("take a machine out"))
        self.none = Key(look, tr("take none out"))
        self.out = Key(look, arrow="down")
        self.keys = KeyRow(look, [self.take_key, self.none, self.out], fit="flow")
        self.gone = Column(look, edge=0, top=0)
        self.gone.hide()
        self.picking = False
        self._shown = SHOWN_AT_ONCE
        self._machines: tuple[Machine, ...] = ()
        self._count = 0
        self._taken_out: tuple[TakenOut, ...] = ()
        self._of_row: dict[Row, Summary] = {}
        self._alike: Counter[tuple[object, ...]] = Counter()
        self.add(self.search)
        self.add(self.which, 3)
        self.add(self.rows, 2)
        self.add(self.more, 2)
        self.add(self.keys, 3)
        self.add(self.gone, 4)
        self._connect()

    def _connect(self) -> None:
        self.search.edit.textChanged.connect(self._search)
        self.more.clicked.connect(self._show_more)
        self.take_key.clicked.connect(lambda: self.pick(on=True))
        self.none.clicked.connect(lambda: self.pick(on=False))
        self.out.clicked.connect(self.toggle_gone)
        self.desk.opened.connect(self.show_machines)
        self.desk.listed.connect(self.show_machines)
        self.taking.changed.connect(self.show_machines)

    def actions_of_keys(self) -> list[QAction]:
        """What keys of the keyboard do in the list."""
        delete = QAction(tr("Take the machine out of the list"), self)
        delete.setShortcut(QKeySequence(Qt.Key.Key_Delete))
        delete.triggered.connect(self.take_focused)
        escape = QAction(tr("Take none out"), self)
        escape.setShortcut(QKeySequence(Qt.Key.Key_Escape))
        escape.triggered.connect(lambda: self.pick(on=False))
        return [delete, escape]

    # showing

    def is_empty(self) -> bool:
        """Whether there is no machine at all, neither in the list nor out of it."""
        return not self._machines and not self.search.value() and not self._taken_out

    def show_machines(self) -> None:
        """The machines that the search finds are listed, newest first."""
        try:
            self._machines = self.desk.library.machines(self.search.value(), self._shown)
            self._count = self.desk.library.count(self.search.value())
            self._taken_out = self.desk.library.taken_out()
        except StorageTrouble as trouble:
            self.desk.told.emit(tr(trouble.said))
            return
        machines, at = self._machines, self._place()
        self._alike = Counter(_line_of(m.summary) for m in machines)
        self.picking = self.picking and bool(machines)
        self.search.setVisible(bool(machines or self.search.value()))
        self.which.setVisible(self.picking)
        self.rows.clear()
        self._of_row.clear()
        for machine in machines:
            self.rows.add(self._row(machine), 0)
        if not machines and not self.is_empty():
            found = tr("No machine has these words.") if self.search.value() else tr("No machine is in the list.")
            self.rows.add(Text(self.desk.look, found, ink="soft"))
        self.more.setVisible(self._count > len(machines))
        self.more.say(tr("show {count} more", count=self._count - len(machines)))
        self._show_keys()
        self._list_gone()
        self._focus(at)
        self.listed.emit()

    def _show_keys(self) -> None:
        count = len(self._taken_out)
        self.take_key.setVisible(bool(self._machines) and not self.picking)
        self.none.setVisible(self.picking)
        self.out.setVisible(bool(count))
        self.out.say(trn("{count} machine taken out", "{count} machines taken out", count))
        self.out.hold("kept" if self.gone.isVisibleTo(self) and count else "")
        self.keys.setVisible(bool(self._machines or count))

    def _row(self, machine: Machine) -> Row:
        line = machine.summary
        marks = trn("{count} mark", "{count} marks", line.passes + line.doubts + line.fails)
        aside = tr("take out") if self.picking else marks
        second = told_apart(line)
        if self._alike[_line_of(line)] > 1:  # as one that was joined, or came in beside another
            second = f"{second}, {tr('record {id}', id=line.id)}"
        row = Row(self.desk.look, line.title, second=second, aside=aside, aside_soft=not self.picking,
                  strong=True, edge=4.0, arrow=not self.picking)  # fmt: skip
        row.set_current(self.desk.session is not None and self.desk.record.id == line.id)
        row.clicked.connect(lambda _=False: self._chosen(line))
        self._of_row[row] = line
        return row

    def _chosen(self, line: Summary) -> None:
        if self.picking:
            self.picking = False
            self.taking.take_out(line)
        else:
            self.desk.open(line.id)

    def _search(self, _: str) -> None:
        self._shown = SHOWN_AT_ONCE
        self.show_machines()

    def _show_more(self) -> None:
        self._shown += SHOWN_AT_ONCE
        self.show_machines()

    # where the keyboard is, in a list that is made anew

    def _place(self) -> int | None:
        """The number of the row that has the focus."""
        focus = QApplication.focusWidget()
        rows = self.rows.widgets()
        return rows.index(focus) if focus in rows else None

    def _focus(self, at: int | None) -> None:
        rows = [row for row in self.rows.widgets() if isinstance(row, Row)]
        if at is not None and rows:
            row = rows[min(at, len(rows) - 1)]
            row.show()  # what is not shown yet does not take the focus
            row.setFocus(Qt.FocusReason.OtherFocusReason)

    # taking out and bringing back

    def pick(self, *, on: bool) -> None:
        """The next row that is touched goes out of the list, or is opened as ever."""
        if on == self.picking:
            return
        self.picking = on
        self.show_machines()
        if on:
            self._to_the_top()
            self._focus(0)

    def take_focused(self) -> None:
        """The machine whose row has the focus goes out of the list; without one, it is asked which."""
        focus = QApplication.focusWidget()
        line = self._of_row.get(focus) if isinstance(focus, Row) else None
        if line is None:
            self.pick(on=bool(self._machines))
            return
        self.picking = False
        self.taking.take_out(line)

    def _to_the_top(self) -> None:
        above = self.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        if above is not None:
            above.ensureWidgetVisible(self.which)

    def toggle_gone(self) -> None:
        """Those taken out are listed, or no longer."""
        self.gone.setVisible(not self.gone.isVisibleTo(self))
        self.show_machines()

    def _list_gone(self) -> None:
        self.gone.clear()
        if not self._taken_out:
            self.gone.hide()
            return
        self.gone.add(SectionHead(self.desk.look, tr("Taken out")), 0)
        self.gone.add(Text(self.desk.look, tr(
            "Touch one to bring it back. After its day it is deleted for good, with the photographs that no other"
            " machine has.",
        ), ink="soft"), 2)  # fmt: skip
        for taken in self._taken_out:
            self.gone.add(self._gone_row(taken), 0)

    def _gone_row(self, taken: TakenOut) -> Row:
        line = taken.summary
        days = tr("taken out {day}, kept until {date}", day=taken.at[:10], date=taken.until.isoformat())
        row = Row(self.desk.look, line.title, label=days, second=told_apart(line), aside=tr("bring back"), arrow=False,
                  edge=4.0)  # fmt: skip
        row.clicked.connect(lambda _=False: self.taking.bring_back(line))
        return row


def _line_of(line: Summary) -> tuple[object, ...]:
    """What a row shows of the machine, not yet in words: there may be a thousand."""
    return line.title, line.model_year, line.place, line.date, line.numbers, line.invented


def told_apart(line: Summary) -> str:
    """What tells the machine from others of its name: year, place, date, numbers."""
    year = tr("claimed {year}", year=line.model_year) if line.model_year else tr("no year claimed")
    invented = tr("invented") if line.invented else ""
    return ", ".join(part for part in (year, line.place, line.date, line.numbers, invented) if part)
