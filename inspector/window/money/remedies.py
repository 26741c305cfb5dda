"""What to put right: the items that are not as they should be, the ways offered at one of them, and what it costs."""

from functools import partial

from PySide6.QtCore import Signal

from inspector.judgement.reckoned import Costs, Faulted
from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.keys import Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.rows import Row
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import SectionHead, Text
from inspector.window.money.book import Book
from inspector.window.money.costing import CostPart
from inspector.window.money.view import View
from inspector.window.money.ways import WaysPart

LIST_MM, COST_MM = 84.0, 78.0
EDGE = 2.6  # before the words of a row, beside the bar of the open one, in millimetres


class RemediesView(View):
    """The list at the left, the open item in the middle, the sum at the right, alive after every touch."""

    def __init__(self, book: Book) -> None:
        super().__init__(book)
        self.list, self.ways, self.costs = FaultList(book), WaysPart(book), CostPart(book)
        self.columns = self.stand([(self.list, LIST_MM), (self.ways, 0), (self.costs, COST_MM)])
        self.item = ""
        self.list.chosen.connect(self.open_at)
        self.costs.figures.clicked.connect(lambda: self.wanted.emit("figures", ""))

    def open_at(self, item: str) -> None:
        """The ways at that item are shown, and brought into sight where they stand below the list."""
        self.ways.let_go()
        self.item = item
        self.show_money()
        if self.columns.narrow and self.isVisible() and (found := top_in_area(self.ways)):
            area, top = found
            area.verticalScrollBar().setValue(top)

    def let_go(self) -> None:
        """Another machine is open: its first item is, too."""
        self.item = ""
        self.ways.let_go()

    def show_money(self) -> None:
        """Items, ways and costs as the record stands."""
        costs = self.book.costs
        known = {fault.item: fault for fault in costs.items}
        if self.item not in self.book.desk.profile.item_by_id:
            with_ways = [fault.item for fault in costs.items if fault.ways]
            self.item = next(iter(with_ways or known), "")
        self.list.show_faults(costs, self.item)
        self.ways.show_item(self.item, known.get(self.item))
        self.costs.show_costs()


class FaultList(Column):
    """One row an item: what is to be done there, or what is to be decided; ``chosen(item)`` tells of a touch."""

    chosen = Signal(str)

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk.look)
        self.book = book
        self.head = SectionHead(self.look, tr("What to put right"))
        self.none = Text(self.look, tr("Nothing was found that is not as it should be."), ink="soft")
        self.body = Column(self.look, edge=0, top=0)
        self.other = MenuKey(self.look, tr("put something else right"))
        self.other.picked.connect(self.chosen)
        self.rows: dict[str, Row] = {}
        for widget, gap in ((self.head, 0), (self.none, 2), (self.body, 0), (self.other, 4)):
            self.add(widget, gap)

    def show_faults(self, costs: Costs, current: str) -> None:
        """These items, the one that is open marked."""
        count = trn("{count} to decide", "{count} to decide", len(costs.to_decide)) if costs.to_decide else ""
        self.head.say(tr("What to put right"), count)
        self.none.setVisible(not costs.items)
        if list(self.rows) != [fault.item for fault in costs.items]:
            self._make(costs)
        for fault in costs.items:
            second, aside = self._words(fault)
            self.rows[fault.item].say(fault.name, second=second, aside=aside)
            self.rows[fault.item].set_current(fault.item == current)

    def _make(self, costs: Costs) -> None:
        self.body.clear()
        self.rows.clear()
        for fault in costs.items:
            row = self.rows[fault.item] = Row(self.look, fault.name, sign=fault.sign, strong=True, edge=EDGE)
            row.clicked.connect(partial(self._choose, fault.item))
            self.body.add(row, 0)
        others = [item for item in self.book.desk.profile.items() if item.id not in self.rows]
        self.other.set_options([Option(item.id, item.name) for item in others])

    def _choose(self, item: str, _: bool = False) -> None:
        self.chosen.emit(item)

    def _words(self, fault: Faulted) -> tuple[str, str]:
        """What is to be done there, and what its parts likely cost."""
        if fault.to_decide is not None:
            return tr("decide first"), ""
        if not fault.counted:
            return self.book.say(fault.reason), ""
        amounts = [way.parts[1] for way in fault.counted if way.parts is not None]
        names = "; ".join(way.name for way in fault.counted)
        return names, self.book.told(sum(amounts[1:], amounts[0])) if amounts else tr("no price")
