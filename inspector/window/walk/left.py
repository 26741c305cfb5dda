"""Where one is: the outline drawing with a spot an item, and the stations with what is left."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from inspector.judgement.route import first_ten, left_by_station, order
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.drawing import drawings, show_drawing
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.outline import OutlineView, Spot
from inspector.window.look.signs import SignLabel
from inspector.window.look.stations import Station, StationRow, Strip
from inspector.window.walk.order import WalkOrder

TEN = "first-ten"
if TYPE_CHECKING:
    from inspector.judgement.judge import Judgement

MARKS = ("pass", "doubt", "fail")


class Where(Column):
    """The drawing of the side one stands at, and every station with its strokes."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.outline = OutlineView(look)
        self.counts = {name: SignLabel(look, name, "") for name in MARKS}
        self.rows: dict[str, StationRow] = {}
        self.stations = Column(look, edge=0, top=0)
        self.order = WalkOrder(desk)
        self.strip = Strip(look)
        self.strip.chosen.connect(self._choose)
        self._drawn = ""
        self._judged: Judgement | None = None
        self._counted: list[Station] = []
        self.add(self.outline)
        counts = Column(look, edge=5, top=0)
        counts.add(KeyRow(look, list(self.counts.values()), fit="flow"))
        self.add(counts, 2)
        self.add(self.stations, 2)
        self.add(self.order, 4)
        self.outline.spotChosen.connect(desk.go_to)

    def be_brief(self, brief: bool) -> None:
        """In one column the stations stand as a strip over the item, and not here."""
        self.stations.setVisible(not brief)
        self.order.setVisible(not brief)

    def show_machine(self) -> None:
        """Another machine is open: its stations are listed."""
        self._drawn, self._judged = "", None
        self._list_stations([s.id for s in left_by_station(self.desk.profile, self.desk.record)])

    def _list_stations(self, stations: list[str]) -> None:
        self.stations.clear()
        self.rows = {}
        self.ten = StationRow(self.look)
        self.ten.clicked.connect(self._go_short)
        self.stations.add(self.ten, 0)
        for station in stations:
            row = StationRow(self.look)
            row.clicked.connect(partial(self._go, station))
            self.rows[station] = row
            self.stations.add(row, 0)

    def show_judgement(self) -> None:
        """Signs, counts and strokes are those of the record as it stands."""
        desk = self.desk
        here = desk.profile.station_of[desk.item].id
        if desk.judgement is not self._judged:
            self._count()
        for station in self._counted[1:]:
            self.rows[station.id].set_current(station.id == here)
        self.strip.set_stations(self._counted, here)
        self._show_spots()

    def _count(self) -> None:
        """What is left of each station is counted and told."""
        desk, self._judged = self.desk, self.desk.judgement
        shown = [
            _station(s.id, s.name, s.total, s.left, s.short)
            for s in left_by_station(desk.profile, desk.record, desk.judgement.states)
        ]
        if [station.id for station in shown] != list(self.rows):
            self._list_stations([station.id for station in shown])
        self.order.show_order()
        for station in shown:
            self.rows[station.id].say(station)
        short = first_ten(desk.profile, desk.record)
        todo = [item for item in short if desk.judgement.states[item].mark is None]
        ten = _station(TEN, tr("First ten minutes"), len(short), len(todo), tr("First ten"))
        self.ten.say(ten)
        self._counted = [ten, *shown]
        for name, label in self.counts.items():
            label.say(name, f"{desk.judgement.counts.get(name, 0)} {tr(name)}")

    def _show_spots(self) -> None:
        desk = self.desk
        item = desk.profile.item_by_id[desk.item]
        view = item.spot.view if item.spot else desk.profile.station_of[item.id].view
        if view.value != self._drawn:
            self._drawn = view.value
            show_drawing(self.outline, drawings(desk, view))
        numbers = {key: n for n, key in enumerate(order(desk.profile, desk.record), 1)}
        spots = [
            Spot(i.id, i.spot.x, i.spot.y, desk.judgement.states[i.id].sign, i.name)
            for i in desk.profile.items() if i.spot and i.spot.view is view and i.id in desk.judgement.states
        ]  # fmt: skip
        self.outline.set_spots(spots)
        self.outline.set_open(desk.item, str(numbers.get(desk.item, "")))

    # going

    def _go(self, station: str, _: bool = False) -> None:
        left = next(s for s in left_by_station(self.desk.profile, self.desk.record) if s.id == station)
        todo = [item for item in left.items if self.desk.judgement.states[item].sign == "not checked"]
        self.desk.go_to((todo or list(left.items))[0])

    def _choose(self, station: str) -> None:
        self._go_short() if station == TEN else self._go(station)

    def _go_short(self) -> None:
        short = first_ten(self.desk.profile, self.desk.record)
        todo = [item for item in short if self.desk.judgement.states[item].mark is None and item != self.desk.item]
        if todo:
            self.desk.go_to(todo[0])
        else:
            self.desk.told.emit(tr("Every item of the first ten minutes carries a mark."))


def _station(key: str, name: str, total: int, left: int, short: str = "") -> Station:
    return Station(key, name, aside=_left_words(left), seen=total - left, left=left, short=short)


def _left_words(left: int) -> str:
    return trn("{count} left", "{count} left", left) if left else tr("done")
