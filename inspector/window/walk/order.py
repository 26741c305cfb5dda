"""The order of the walk: stations moved up or down, kept as one step to undo."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from inspector.judgement.route import StationLeft, left_by_station
from inspector.record.verbs import set_order
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import Text


class WalkOrder(Column):
    """A key that opens the stations with a key each to walk it earlier; another sets the profile's order again."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=5.0, top=0, parent=parent)
        self.desk = desk
        self.key = Key(desk.look, tr("order of the walk"), arrow="down")
        self.body = Column(desk.look, edge=0, top=0)
        self.body.hide()
        self.keys: list[Key] = []
        self.add(self.key)
        self.add(self.body, 2)
        self.key.clicked.connect(self.toggle)

    def toggle(self) -> None:
        """The stations are listed to be moved, or no longer."""
        shown = self.body.isVisibleTo(self)
        self.body.setVisible(not shown)
        self.key.hold("" if shown else "kept")
        if not shown:
            self.show_order()

    def show_order(self) -> None:
        """Every station stands in its present place with the key that moves it."""
        if not self.body.isVisibleTo(self):
            return
        self.body.clear()
        self.keys.clear()
        stations = self._stations()
        for place, station in enumerate(stations):
            earlier = Key(self.look, tr("earlier"), name=tr("Walk {name} earlier", name=station.name))
            earlier.clicked.connect(partial(self.move_earlier, place))
            if place == 0:
                earlier.turn_off(tr("This station is the first one already."))
            self.keys.append(earlier)
            row = KeyRow(self.look, [earlier, Text(self.look, f"{place + 1}  {station.name}")], fit="flow")
            self.body.add(row, 2)
        usual = Key(self.look, tr("the profile's order"))
        usual.clicked.connect(lambda: self.desk.do(set_order(())))
        self.body.add(usual, 2)

    def _stations(self) -> list[StationLeft]:
        return list(left_by_station(self.desk.profile, self.desk.record, self.desk.judgement.states))

    def move_earlier(self, place: int) -> None:
        """The station at this place changes places with the one before it."""
        stations = self._stations()
        stations[place - 1], stations[place] = stations[place], stations[place - 1]
        if self.desk.do(set_order(tuple(item for station in stations for item in station.items))):
            self.keys[place - 1].setFocus(Qt.FocusReason.OtherFocusReason)  # pressed again, it moves on
