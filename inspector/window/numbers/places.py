"""The left column: every place and paper with its number as it stands, and keys to add one."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.record.claim import Paper
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import WIDEST_SCALE, Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.numberrow import NumberRow
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import Text
from inspector.window.numbers.entry import pasted
from inspector.window.numbers.readings import (
    Shown,
    all_shown,
    cells_of,
    reading_of,
    readings_at,
    said,
    state_words,
    which_words,
)
from inspector.window.numbers.telling import paper_words

SHORT = 30  # letters that stand on one line of the list


class Places(Column):
    """Rows, or in one column keys, of all that carries a number; ``chosen(Shown)`` tells which was touched."""

    chosen = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, parent=parent)
        self.desk = desk
        self.brief = False
        self.rows: dict[Shown, NumberRow] = {}
        self.keys: dict[Shown, Key] = {}
        self.head = Column(desk.look, edge=5.0, top=0)
        self.head.add(Text(desk.look, tr("Places and papers"), ink="soft"))
        self.list = Column(desk.look, edge=0, top=0)
        self.strip = KeyRow(desk.look, fit="fill")
        self.feet = Column(desk.look, edge=5.0, top=0)
        self.menu = MenuKey(desk.look, tr("Places and papers"), held="kept")
        self.menu.prefix = tr("Open")
        self.menu.picked.connect(self._picked)
        self.feet.add(self.menu)
        self.feet.add(self.strip)
        self.another = Key(desk.look, tr("another reading here"), name=tr("Add another reading of this place"))
        self.paper = Key(desk.look, tr("add a paper"))
        self.feet.add(KeyRow(desk.look, [self.paper, self.another], fit="fill"))
        self.add(self.head)
        self.add(self.list, 2)
        self.add(self.feet, 3)
        self.restyle()

    def _picked(self, at: str) -> None:
        self.chosen.emit(list(self.rows)[int(at)])

    def be_brief(self, brief: bool) -> None:
        """In one column keys beside one another take the place of the rows; with large type one key that opens them."""
        self.brief = brief
        self.restyle()

    def restyle(self) -> None:
        """Rows, keys or the one key are there, as the look that holds now has room for."""
        if hasattr(self, "menu"):  # asked for before there is anything to show, too
            large = self.look.text_scale > WIDEST_SCALE
            self.list.setVisible(not self.brief)
            self.strip.setVisible(self.brief and not large)
            self.menu.setVisible(self.brief and large)
            self.head.setVisible(not (self.brief and large))
        super().restyle()

    def show_all(self, shown: Shown) -> None:
        """Everything that carries a number is listed, the open one marked."""
        wanted = all_shown(self.desk.profile, self.desk.record)
        if list(self.rows) != list(wanted):
            self._rebuild(wanted)
        for key in wanted:
            self._say(key)
            self.rows[key].set_current(key == shown)
            self.keys[key].hold("kept" if key == shown else "")
        self.menu.set_options([
            Option(str(n), self.keys[key].title, second=self.keys[key].second) for n, key in enumerate(wanted)
        ])  # fmt: skip
        self.menu.set_picked(str(wanted.index(shown)) if shown in wanted else "")

    def come_to(self, shown: Shown) -> None:
        """The row of what is open is seen whole."""
        row = self.rows.get(shown)
        found = top_in_area(row) if row is not None and row.isVisible() and not self.brief else None
        if row is not None and found is not None:
            area, top = found
            bar = area.verticalScrollBar()
            if not bar.value() <= top <= bar.value() + area.height() - row.height():
                bar.setValue(top - (area.height() - row.height()) // 2)

    def show_one(self, shown: Shown) -> None:
        """The open one says what the record has; the others as soon as the figures rest."""
        if shown in self.rows and shown.place:
            self._say(shown)
        elif shown not in self.rows:
            self.show_all(shown)

    def _rebuild(self, wanted: tuple[Shown, ...]) -> None:
        self.list.clear()
        self.rows = {shown: self._row(shown) for shown in wanted}
        self.keys = {shown: self._key(shown) for shown in wanted}
        for row in self.rows.values():
            self.list.add(row, 0)
        self.strip.set_keys(self.keys.values())

    def _row(self, shown: Shown) -> NumberRow:
        row = NumberRow(self.look)
        row.clicked.connect(lambda: self.chosen.emit(shown))
        return row

    def _key(self, shown: Shown) -> Key:
        key = Key(self.look, left=True)
        key.clicked.connect(lambda: self.chosen.emit(shown))
        return key

    def _say(self, shown: Shown) -> None:
        if shown.paper:
            self._say_paper(shown, next(p for p in self.desk.record.papers if p.id == shown.paper))
            return
        record, place = self.desk.record, self.desk.profile.place_by_id.get(shown.place)
        reading, beside = reading_of(record, shown), readings_at(record, shown.place)
        first = reading is None or reading.id == beside[0].id
        name = place.name if place else shown.place
        where = short(place.where) if place and first else ""
        if reading is not None and len(beside) > 1:
            where = which_words(self.desk, reading, beside)
        state, figures = state_words(reading), reading.figures if reading else ()
        self.rows[shown].say(name, where, cells_of(figures), state, said=said(figures))
        self.keys[shown].say(name, second=reading.typed() if reading and figures else state)

    def _say_paper(self, shown: Shown, paper: Paper) -> None:
        name, where = paper.name or tr("paper without a name"), tr(paper.state.value)
        state = paper_words(self.desk, paper)
        number = paper.quoted[0].number if paper.quoted else ""
        self.rows[shown].say(name, where, quoted_cells(number), state, said=number)
        self.keys[shown].say(name, second=number or state)


def short(where: str) -> str:
    """The first words of where a number is, up to a comma and short enough for one line."""
    parts = where.split(", ")
    fitting = [", ".join(parts[:n]) for n in range(1, len(parts) + 1)]
    return [words for words in fitting if len(words) <= SHORT or words == parts[0]][-1]


def quoted_cells(number: str) -> tuple:
    """The figures of a number as a paper writes it; as they stand where a bracket was left open."""
    try:
        return cells_of(pasted(number).figures)
    except ValueError:
        return cells_of(pasted(number.replace("[", "").replace("]", "")).figures)
