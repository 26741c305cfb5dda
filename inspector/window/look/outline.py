"""The drawing of a machine with a sign at every item: it shows, and it is touched."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QPoint, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QRegion,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.look.drawing import Drawing, drawing_at
from inspector.window.look.halo import HALO, sign_on_halo
from inspector.window.look.keys import Option
from inspector.window.look.leader import Place, leader_line, number_places, place_number
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.menus import WordList, offer
from inspector.window.look.ring import hide_ring, show_ring
from inspector.window.look.signs import sign_width

if TYPE_CHECKING:
    from inspector.window.look.inks import Inks

REACH = 6.0  # how far from a spot a touch still finds it, in millimetres
SIGN = 3.6
OPEN = 1.4  # of the open item, to its plain size
RING = 0.55
_SIZES = {"fail": 1.15, "doubt": 1.0}
_ORDER = {"pass": 1, "doubt": 2, "fail": 3}
_STEPS = {
    Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Spot:
    """An item on the drawing: where it is in millimetres of the viewBox, its sign and its name."""

    id: str
    x: float
    y: float
    sign: str
    label: str


class OutlineView(Measured, QWidget):
    """An outline drawing with spots; the open one is larger, ringed, and led to its number.

    ``spotChosen(id)`` tells of the spot nearest to a touch within 6 mm. Where several are that
    near, ``spotsOffered(ids)`` tells of them, and the view itself opens their names to choose from.
    Arrows go from spot to spot in the order given, Enter chooses.
    """

    spotChosen = Signal(str)
    spotsOffered = Signal(list)

    def __init__(
        self, look: Look, source: Path | str | None = None, *, name: str = "", ink: str = "line",
        edge: float = 3.0, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._ink, self._edge, self._name = look, ink, edge, name
        self.drawing: Drawing | None = None
        self.spots: list[Spot] = []
        self.open, self.number, self.at = "", "", ""
        self.list: WordList | None = None
        self._places: dict[str, QPointF] = {}
        self._drawn: QRectF | None = None
        self._layer: tuple[float, QPixmap] | None = None  # drawing and signs, painted once until one of them changes
        self._number_at: tuple[object, QRectF, QLineF] | None = None
        self._tried: dict[tuple[float, float], list[Place]] = {}
        self._signs: dict[tuple[str, float, float, Inks], QPixmap] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)
        self.set_spots(())
        if source is not None:
            self.set_drawing(source)
        self._tell()

    # what it shows

    def set_drawing(self, source: Path | str, name: str | None = None) -> None:
        """The drawing is read from this file; raises NoDrawing, and keeps the one before, if it
        cannot be.
        """
        self.drawing = drawing_at(source)
        self._name = self._name if name is None else name
        self._tell()
        self.updateGeometry()
        self._draw_again()

    def prepare(self, source: Path | str) -> None:
        """The drawing in this file is read and rendered for the present width, to be there at once when it is set."""
        drawing = drawing_at(source)
        size = self._place_drawing(drawing, QSize(self.width(), self._high(drawing, self.width()))).size().toSize()
        drawing.edges()
        drawing.pixmap(size, self.devicePixelRatioF(), self.look.inks, self._ink, True)

    def set_spots(self, spots: Sequence[Spot]) -> None:
        """These spots stand on the drawing and no others."""
        if self.spots == list(spots):
            return
        self.spots = list(spots)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if spots else Qt.FocusPolicy.NoFocus)
        if self.at not in {spot.id for spot in spots}:
            self.at = ""
        self._draw_again()

    def set_open(self, spot: str, number: str = "") -> None:
        """The spot with this id is the open item, ``number`` stands off the machine."""
        if (spot, number) == (self.open, self.number):
            return
        if self._layer is None:  # all of it will be painted
            self.open, self.number = spot, number
            return
        self.update(self._taken())
        self.open, self.number = spot, number
        self.update(self._taken())

    def restyle(self) -> None:
        """The view is measured and drawn again in the look that holds now."""
        self._signs.clear()
        self.updateGeometry()
        self._draw_again()

    def _draw_again(self) -> None:
        self._places.clear()
        self._tried.clear()
        self._layer = self._number_at = self._drawn = None
        self.update()

    def _taken(self) -> QRegion:
        """What the open item covers: its sign and ring, its number and the leader to it."""
        spot = self._spot(self.open)
        if spot is None or self.drawing is None:
            return QRegion()
        reach = self.radius(spot) + self.look.mm(2 * RING)
        centre = self.place(spot)
        taken = QRegion(QRectF(centre.x() - reach, centre.y() - reach, 2 * reach, 2 * reach).toAlignedRect())
        if self.number:
            rect, line = self.number_place(spot)
            air = self.look.mm(RING)
            leader = QRectF(line.p1(), line.p2()).normalized().adjusted(-air, -air, air, air)
            taken = taken.united(rect.toAlignedRect()).united(leader.toAlignedRect())
        return taken

    def _tell(self) -> None:
        spot = self._spot(self.at)
        name = self._name or tr("outline of the machine")
        self.setAccessibleName(f"{name}, {spot.label}, {tr(spot.sign)}" if spot else name)

    def _spot(self, spot: str) -> Spot | None:
        return next((s for s in self.spots if s.id == spot), None)

    # how large it is

    def hasHeightForWidth(self) -> bool:
        """The drawing keeps its shape."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of the drawing at this width, and a margin."""
        return self._high(self.drawing, width) if self.drawing else 0

    def _high(self, drawing: Drawing, width: int) -> int:
        edge, box = self.look.px(self._edge), drawing.box
        inner = max(width - 2 * edge, 1)
        tallest = self.look.mm(60)
        high = min(inner * box.height() / box.width(), tallest)
        return round(high + 2 * self.look.px(2))

    def sizeHint(self) -> QSize:
        """As wide as the column beside an item."""
        wide = self.look.px(77)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """No smaller than the signs allow."""
        return QSize(self.look.px(40), self.look.px(20))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Every spot moves with the drawing."""
        super().resizeEvent(event)
        self._draw_again()

    def drawn(self) -> QRectF:
        """Where the drawing is in the view, in pixels."""
        if self.drawing is None:
            return QRectF()
        if self._drawn is None:
            self._drawn = self._place_drawing(self.drawing, self.size())
        return self._drawn

    def _place_drawing(self, drawing: Drawing, whole: QSize) -> QRectF:
        edge, above = self.look.px(self._edge), self.look.px(2)
        room = QRectF(QPointF(), whole.toSizeF()).adjusted(edge, above, -edge, -above)
        size = drawing.box.size().scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
        left = room.x() + (room.width() - size.width()) / 2
        top = room.y() + (room.height() - size.height()) / 2
        return QRectF(round(left), round(top), round(size.width()), round(size.height()))

    def place(self, spot: Spot) -> QPointF:
        """Where a spot is in the view, in pixels."""
        if self.drawing is None:
            return QPointF()
        if spot.id not in self._places:
            self._places[spot.id] = self._place(self.drawing, spot)
        return self._places[spot.id]

    def _place(self, drawing: Drawing, spot: Spot) -> QPointF:
        box, drawn = drawing.box, self.drawn()
        x = drawn.x() + (spot.x - box.x()) * drawn.width() / box.width()
        y = drawn.y() + (spot.y - box.y()) * drawn.height() / box.height()
        return QPointF(x, y)

    def diameter(self, spot: Spot) -> float:
        """The size of its sign, in pixels: what needs you is larger, the open item larger still."""
        return self._plain(spot) * (OPEN if spot.id == self.open else 1.0)

    def _plain(self, spot: Spot) -> float:
        return self.look.mm(SIGN) * _SIZES.get(spot.sign, 0.82)

    # how it is drawn

    def painted_order(self) -> list[Spot]:
        """The spots from what lies lowest to what lies on top."""
        return sorted(self.spots, key=lambda s: (s.id == self.open, _ORDER.get(s.sign, 0)))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the drawing, the leader, and the signs over it."""
        if self.drawing is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ratio = self.devicePixelRatioF()
        if self._layer is None or self._layer[0] != ratio:
            self._layer = (ratio, self._paint_layer(self.drawing, ratio))
        painter.drawPixmap(0, 0, self._layer[1])
        spot = self._spot(self.open)
        if spot is not None:
            self._paint_leader(painter, spot)
            self._paint_spot(painter, spot, self.diameter(spot), ratio)
            self._paint_ring(painter, self.place(spot), self.radius(spot))
        here = self._spot(self.at)
        if here is not None and self.hasFocus():
            self._paint_ring(painter, self.place(here), self.radius(here))
        painter.end()

    def _paint_layer(self, drawing: Drawing, ratio: float) -> QPixmap:
        """The drawing with every sign in its plain size; that of the open item will lie under its own ground."""
        layer = QPixmap(self.size() * ratio)
        layer.setDevicePixelRatio(ratio)
        layer.fill(Qt.GlobalColor.transparent)
        painter = QPainter(layer)
        drawn = self.drawn()
        size = drawn.size().toSize()
        picture = drawing.pixmap(size, ratio, self.look.inks, self._ink, bool(self.spots))
        painter.drawPixmap(drawn.topLeft(), picture)
        for spot in self.painted_order():
            self._paint_spot(painter, spot, self._plain(spot), ratio)
        painter.end()
        return layer

    def radius(self, spot: Spot) -> float:
        """From the middle of a sign to the outer edge of its halo, in pixels."""
        return self.diameter(spot) * (sign_width(spot.sign, 1.0) / 2 + HALO)

    def _paint_spot(self, painter: QPainter, spot: Spot, size: float, ratio: float) -> None:
        key = (spot.sign, size, ratio, self.look.inks)
        if key not in self._signs:
            self._signs[key] = sign_on_halo(spot.sign, size, ratio, self.look.inks)
        picture = self._signs[key]
        half = QPointF(picture.width(), picture.height()) / (2 * ratio)
        painter.drawPixmap(self.place(spot) - half, picture)

    def _paint_leader(self, painter: QPainter, spot: Spot) -> None:
        """The number of the open item, the leader to it, and a ground of paper for its sign."""
        if self.number:
            rect, line = self.number_place(spot)
            painter.setPen(QPen(self.look.colour("focus"), self.look.mm(RING)))
            painter.drawLine(line)
            words = self.look.words(self.number, "next")
            words.paint(painter, rect, self.look.colour("ink"))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.look.colour("paper"))
        radius = self.radius(spot)
        painter.drawEllipse(self.place(spot), radius, radius)

    def _paint_ring(self, painter: QPainter, centre: QPointF, radius: float) -> None:
        wide = self.look.mm(RING)
        painter.setPen(QPen(self.look.colour("focus"), wide))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(centre, radius + wide / 2, radius + wide / 2)

    def number_place(self, spot: Spot) -> tuple[QRectF, QLineF]:
        """Where the number of the open item stands, and the leader to it."""
        asked = (spot.id, self.number)
        if self._number_at is None or self._number_at[0] != asked:
            self._number_at = (asked, *self._find_place(spot))
        return self._number_at[1:]

    def _find_place(self, spot: Spot) -> tuple[QRectF, QLineF]:
        assert self.drawing is not None
        words = self.look.words(self.number, "next")
        size = QSizeF(words.natural + 1, words.leading)
        gap, centre, radius = self.look.mm(1.0), self.place(spot), self.radius(spot)
        key = (size.width(), size.height())
        if key not in self._tried:
            self._tried[key] = number_places(size, QRectF(self.rect()), self.drawn(), self.drawing.edges(), gap)
        signs = [(self.place(s).x(), self.place(s).y(), self.radius(s)) for s in self.spots if s.id != spot.id]
        rect = place_number(centre, radius + self.look.mm(2.5), self._tried[key], signs)
        rect = rect or QRectF(QPointF(), size)
        return rect, leader_line(centre, radius, rect, gap / 2)

    # how it is touched

    def near(self, point: QPointF) -> list[Spot]:
        """The spots within 6 mm of a point of the view, nearest first."""
        reach = self.look.mm(REACH)
        found = []
        for spot in self.spots:
            here = self.place(spot)
            distance = hypot(here.x() - point.x(), here.y() - point.y())
            if distance <= reach:
                found.append((distance, spot))
        return [spot for _, spot in sorted(found, key=lambda pair: pair[0])]

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A touch chooses the spot that is near, or offers those that are."""
        found = self.near(event.position())
        if len(found) == 1:
            self.spotChosen.emit(found[0].id)
        elif found:
            self._offer(found, event.globalPosition().toPoint())

    def _offer(self, found: list[Spot], corner: QPoint) -> None:
        options = [Option(spot.id, spot.label, second=tr(spot.sign), sign=spot.sign) for spot in found]
        self.list = offer(self.look, self, options, corner)
        self.list.picked.connect(self.spotChosen)
        self.spotsOffered.emit([spot.id for spot in found])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go to the spot before or after, Enter and Space choose it."""
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None and self.spots:
            show_ring(self, self.look)
            ids = [spot.id for spot in self.spots]
            at = ids.index(self.at) + step if self.at in ids else 0
            self.at = ids[at % len(ids)]
            self._tell()
            self.update()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space) and self.at:
            self.spotChosen.emit(self.at)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The ring comes, and the spot that is open is the first to start from."""
        super().focusInEvent(event)
        if not self.at and self._spot(self.open):
            self.at = self.open
        self._tell()
        show_ring(self, self.look, event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ring goes."""
        super().focusOutEvent(event)
        hide_ring(self)
        self.update()
