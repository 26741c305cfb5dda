"""Where one is: the outline drawing with a spot an item, and the stations with what is left."""

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QMenu, QWidget

from inspector.judgement.route import first_ten, left_by_station, order
from inspector.profile.words import View
from inspector.resource import ResourceMissing, resource
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.outline import OutlineView, Spot
from inspector.window.look.signs import SignLabel
from inspector.window.look.stations import Station, StationRow

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
        self._drawn = ""
        self.add(self.outline)
        counts = Column(look, edge=5, top=0)
        counts.add(KeyRow(look, list(self.counts.values()), fit="flow"))
        self.add(counts, 2)
        self.add(self.stations, 2)
        self.outline.spotChosen.connect(desk.go_to)
        self.outline.spotsOffered.connect(self._offer)

    def show_machine(self) -> None:
        """Another machine is open: its stations are listed."""
        self.stations.clear()
        self.rows = {}
        self._drawn = ""
        ten = StationRow(self.look)
        ten.clicked.connect(self._go_short)
        self.ten = ten
        self.stations.add(ten, 0)
        for station in left_by_station(self.desk.profile, self.desk.record):
            row = StationRow(self.look)
            row.clicked.connect(lambda _=False, station=station.id: self._go(station))
            self.rows[station.id] = row
            self.stations.add(row, 0)

    def show_judgement(self) -> None:
        """Signs, counts and strokes are those of the record as it stands."""
        desk = self.desk
        here = desk.profile.station_of[desk.item].id
        for station in left_by_station(desk.profile, desk.record, desk.judgement.states):
            self.rows[station.id].say(_station(station.id, station.name, station.total, station.left))
            self.rows[station.id].set_current(station.id == here)
        short = first_ten(desk.profile, desk.record)
        todo = [item for item in short if desk.judgement.states[item].mark is None]
        self.ten.say(_station("", tr("First ten minutes"), len(short), len(todo)))
        for name, label in self.counts.items():
            label.say(name, f"{desk.judgement.counts.get(name, 0)} {tr(name)}")
        self._show_spots()

    def _show_spots(self) -> None:
        desk = self.desk
        item = desk.profile.item_by_id[desk.item]
        view = item.spot.view if item.spot else desk.profile.station_of[item.id].view
        if view.value != self._drawn:
            self._drawn = view.value
            self.outline.set_drawing(outline_svg(desk, view))
        numbers = {key: n for n, key in enumerate(order(desk.profile, desk.record), 1)}
        spots = [
            Spot(i.id, i.spot.x, i.spot.y, desk.judgement.states[i.id].sign, i.name, str(numbers.get(i.id, "")))
            for i in desk.profile.items() if i.spot and i.spot.view is view and i.id in desk.judgement.states
        ]  # fmt: skip
        self.outline.set_spots(spots)
        self.outline.set_open(desk.item)

    # going

    def _go(self, station: str) -> None:
        left = next(s for s in left_by_station(self.desk.profile, self.desk.record) if s.id == station)
        todo = [item for item in left.items if self.desk.judgement.states[item].sign == "not checked"]
        self.desk.go_to((todo or list(left.items))[0])

    def _go_short(self) -> None:
        short = first_ten(self.desk.profile, self.desk.record)
        todo = [item for item in short if self.desk.judgement.states[item].mark is None and item != self.desk.item]
        if todo:
            self.desk.go_to(todo[0])
        else:
            self.desk.told.emit(tr("Every item of the first ten minutes carries a mark."))

    def _offer(self, items: list[str]) -> None:
        menu = QMenu(self)
        for item in items:
            action = menu.addAction(self.desk.profile.item_by_id[item].name)
            action.triggered.connect(lambda _=False, item=item: self.desk.go_to(item))
        menu.popup(self.outline.mapToGlobal(QPoint(self.outline.width() // 2, self.outline.height() // 2)))


def _station(key: str, name: str, total: int, left: int) -> Station:
    return Station(key, name, aside=_left_words(left), seen=total - left, left=left)


def _left_words(left: int) -> str:
    return trn("{count} left", "{count} left", left) if left else tr("done")


def outline_svg_of(view: str) -> str:
    """The drawing of that view that ships with the program; empty where there is none."""
    try:
        return resource("outlines", f"{view}.svg").read_text("utf-8")
    except (OSError, ResourceMissing):
        return ""


def outline_svg(desk: Desk, view: View) -> str:
    """The drawing of that view: the profile's own where it has one, else the one that ships."""
    own = desk.profile.outlines.get(view)
    if not own:
        return outline_svg_of(view.value)
    try:
        return (desk.folder / own).read_text("utf-8")
    except (OSError, UnicodeDecodeError):
        return outline_svg_of(view.value)
