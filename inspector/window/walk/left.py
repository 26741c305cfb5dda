"""Where one is: the outline drawing with a spot an item, and the stations with what is left."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from inspector.judgement.route import first_ten, left_by_station
from inspector.profile.words import View
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.drawing import drawings, prepare_drawing, show_drawing
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
        self._spotted: Judgement | None = None
        self._counted: list[Station] = []
        self._ahead: list[View] = []
        self._soon = QTimer(self)  # while nobody waits for anything
        self._soon.setSingleShot(True)
        self._soon.setInterval(0)
        self._soon.timeout.connect(self._prepare_drawing)
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
        self._drawn, self._judged, self._spotted = "", None, None
        self._list_stations([s.id for s in left_by_station(self.desk.profile, self.desk.record)])
        self._ahead = list(View)
        self._soon.start()

    def _prepare_drawing(self) -> None:
        """One more drawing is ready before one walks round to that side."""
        if self._ahead and self.desk.session is not None:
            prepare_drawing(self.outline, drawings(self.desk, self._ahead.pop(0)))
            self._soon.start()

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
        if desk.judgement is not self._spotted or view.value != self._drawn:
            self._spotted = desk.judgement
            self.outline.set_spots(self._spots(view))
        if view.value != self._drawn:
            self._drawn = view.value
            show_drawing(self.outline, drawings(desk, view))
        number = desk.walk.index(desk.item) + 1 if desk.item in desk.walk else ""
        self.outline.set_open(desk.item, str(number))

    def _spots(self, view: View) -> list[Spot]:
        states = self.desk.judgement.states
        return [
            Spot(i.id, i.spot.x, i.spot.y, states[i.id].sign, i.name)
            for i in self.desk.profile.items() if i.spot and i.spot.view is view and i.id in states
        ]  # fmt: skip

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
