"""The stations of a walk: rows with what is left of each, or a strip where rows have no room."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import STROKE_HIGH, paint_coverage
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.press import TARGET, Pressable
from inspector.window.look.rows import BaseRow
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import HAIR
from inspector.window.look.type import CENTRE, RIGHT

BELOW = 3.2  # between the name and what is left, in millimetres


@dataclass(frozen=True, slots=True)
class Station:
    """A station: its id, name and short name, what stands at its right, items seen and left."""

    id: str
    word: str
    aside: str = ""
    seen: int = 0
    left: int = 0
    short: str = ""


class StationRow(BaseRow):
    """A station's name, what is left in words at the right, and below it a stroke an item."""

    def __init__(
        self, look: Look, station: Station | None = None, *, edge: float = 5.0,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, arrow=False, edge=edge, parent=parent)
        self.say(station or Station("", ""))

    def say(self, station: Station) -> None:
        """The row shows this station."""
        if station == getattr(self, "station", None):
            return
        self.station = station
        self.setAccessibleName(", ".join(w for w in (station.word, station.aside) if w))
        self.restyle()

    @measured
    def _stacks(self) -> tuple[Stack, Stack]:
        left = bool(self.station.left)
        name = Stack(self.look, (Part(self.station.word, "text", self.current),))
        part = Part(self.station.aside, "text", left, "ink" if left else "soft")
        return name, Stack(self.look, (part,))

    def _name_room(self, width: float) -> float:
        return max(width - self._stacks()[1].natural - self.look.mm(2), 1.0)

    def content_height(self, width: float) -> float:
        """Name, a gap and the strokes."""
        name = self._stacks()[0].height(self._name_room(width))
        return name + self.look.grown(BELOW) + self.look.grown(STROKE_HIGH) + self.look.grown(1.2)

    @measured
    def sizeHint(self) -> QSize:
        """The width at which the name does not wrap."""
        name, aside = self._stacks()
        wide = round(name.natural + aside.natural + self.look.mm(2 + 2 * self.edge) + 2)
        return QSize(wide, self.heightForWidth(wide))

    def paint_content(self, painter: QPainter, room: QRectF) -> None:
        """Draws the name, what is left in words, and the strokes below."""
        name, aside = self._stacks()
        high = self.content_height(room.width())
        top = round((self.height() - high) / 2 + self.look.mm(0.6))
        text = name.height(self._name_room(room.width()))
        name.paint(painter, QRectF(room.x(), top, self._name_room(room.width()), text))
        aside.paint(painter, QRectF(room.x(), top, room.width(), aside.height(1e6)), RIGHT)
        strokes = QRectF(room.x(), top + text + self.look.grown(BELOW), room.width(),
                         self.look.grown(STROKE_HIGH))  # fmt: skip
        paint_coverage(painter, strokes, self.look, self.station.seen, self.station.left, False)


class _Cell(Pressable):
    """A station of the strip: short name over what is left."""

    def __init__(self, look: Look, station: Station) -> None:
        super().__init__(look)
        self.station, self.current = station, False
        self._describe()

    def say(self, station: Station, current: bool) -> None:
        """The cell shows this station, and whether one is at it."""
        if (station, current) == (self.station, self.current):
            return
        self.station, self.current = station, current
        self._describe()
        self.restyle()

    def _describe(self) -> None:
        self.setAccessibleName(", ".join(w for w in (self.station.word, self.station.aside) if w))

    @measured
    def _stack(self, heavy: bool) -> Stack:
        name = self.station.short or self.station.word
        return Stack(self.look, (Part(name, "text", heavy), Part(self.station.aside, "small", False,
                                                                 "ink" if heavy else "soft")))  # fmt: skip

    @measured
    def sizeHint(self) -> QSize:
        """The width at which nothing wraps, at least a finger."""
        wide = round(self._stack(True).natural + 2 * self.look.mm(1.2))
        wide = max(wide, self.look.least(TARGET))
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """A finger each way."""
        return QSize(self.look.least(TARGET), self.look.least(TARGET))

    @measured
    def heightForWidth(self, width: int) -> int:
        """Its text and some air."""
        text = self._stack(True).height(max(width - 2 * self.look.mm(1), 1.0))
        return max(round(text + 2 * self.look.grown(2.8)), self.look.least(TARGET))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws its words; tray, and a thick bar on top, where one is."""
        painter = QPainter(self)
        hair = self.look.px(HAIR)
        if self.current or self.isDown():
            painter.fillRect(self.rect(), self.look.colour("tray"))
        if self.current:
            bar = QRectF(0, 0, self.width(), self.look.px(1.3))
            painter.fillRect(bar, self.look.colour("ink"))
        rule = self.look.colour("rule")
        painter.fillRect(self.width() - hair, 0, hair, self.height(), rule)
        painter.fillRect(0, self.height() - hair, self.width(), hair, rule)
        side = self.look.mm(0.8)
        room = QRectF(self.rect()).adjusted(side, 0, -side, 0)
        self._stack(self.current).paint(painter, room, CENTRE)
        painter.end()


class Strip(KeyRow):
    """Stations beside one another; ``chosen(id)`` tells of a touch."""

    chosen = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, gap=0.0, parent=parent)

    def set_stations(self, stations: Sequence[Station], current: str = "") -> None:
        """The strip shows these stations, and that one is at ``current``."""
        cells = [cell for cell in self.keys if isinstance(cell, _Cell)]
        if len(cells) != len(stations):
            cells = [_Cell(self.look, station) for station in stations]
            for cell in cells:
                cell.clicked.connect(self._clicked)
            self.set_keys(cells)
        for cell, station in zip(cells, stations, strict=True):
            cell.say(station, station.id == current)

    def _clicked(self) -> None:
        cell = self.sender()
        if isinstance(cell, _Cell):
            self.chosen.emit(cell.station.id)
