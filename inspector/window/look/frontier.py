"""A chart of what more money gains: cost across, score up, one point a choice."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import Chart
from inspector.window.look.look import Look
from inspector.window.look.lozenge import broken
from inspector.window.look.scale import Scale, scale_for

HIGH, DOT, MARGIN = 52.0, 2.6, 4.0  # of the whole, across a point, between figures and lines, in millimetres


@dataclass(frozen=True, slots=True)
class Reached:
    """A score that is reached at this cost."""

    cost: float
    score: float


class FrontierChart(Chart):
    """A step for every choice: the score holds until the money for the next is there."""

    def __init__(self, look: Look, written: Callable[[float], str], parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self._written = written
        self.points: tuple[Reached, ...] = ()
        self.budget: float | None = None
        self._across, self._up = scale_for(()), scale_for(())
        self.unit = self.what = ""

    def show_frontier(
        self, points: Sequence[Reached], budget: float | None, *, unit: str, what: str, told: str
    ) -> None:
        """The chart shows these points, the budget as a broken upright; ``told`` says all of it in words."""
        self.points, self.budget, self.unit, self.what = tuple(points), budget, unit, what
        costs = [p.cost for p in self.points]
        self._across = scale_for([*costs, *([] if budget is None else [budget])], 5, from_nought=True)
        self._up = scale_for([p.score for p in self.points], 4)
        self.setAccessibleName(told)
        self.restyle()

    def sizeHint(self) -> QSize:
        """As high as it is read well."""
        return QSize(self.look.grown(80), self.look.grown(HIGH) if self.points else 0)

    def minimumSizeHint(self) -> QSize:
        """The width below which no figure of the scale would have room."""
        return QSize(self.look.grown(50), 0)

    def _room(self) -> QRectF:
        """Where the points stand: right of the figures of the score and above those of the cost."""
        left = max((self.look.words(f"{t:g}", "small").natural for t in self._up.ticks), default=0.0) + self.look.mm(2)
        top = self.look.leading("small") + self.look.mm(2)
        foot = self.height() - 2 * self.look.leading("small") - self.look.mm(2)
        right = self.width() - self.look.grown(MARGIN)
        return QRectF(left, top, max(right - left, 1.0), max(foot - top, 1.0))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws scales, steps, points and the budget."""
        if not self.points:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = self._room()
        self._paint_up(painter, room)
        self._paint_across(painter, room)
        self._paint_steps(painter, room)
        if self.budget is not None:
            x = self._across.at(self.budget, room.x(), room.width())
            painter.setPen(broken(self.look))
            painter.drawLine(QLineF(x, room.y(), x, room.bottom()))
        painter.end()

    def _small(self, painter: QPainter, text: str, left: float, top: float) -> None:
        words = self.look.words(text, "small")
        words.paint(painter, QRectF(left, top, words.natural + 1, words.leading), self.look.colour("soft"))

    def _paint_up(self, painter: QPainter, room: QRectF) -> None:
        self._small(painter, self.what, 0, 0)
        for tick in self._up.ticks:
            y = room.bottom() - (self._up.at(tick, 0, room.height()))
            painter.setPen(QPen(self.look.colour("rule"), self.look.mm(0.22)))
            painter.drawLine(QLineF(room.x(), y, room.right(), y))
            self._small(painter, f"{tick:g}", 0, y - self.look.leading("small") / 2)

    def _paint_across(self, painter: QPainter, room: QRectF) -> None:
        scale: Scale = self._across
        after = 0.0
        for tick in scale.ticks:
            words = self.look.words(self._written(tick), "small")
            begin = scale.at(tick, room.x(), room.width()) - words.natural / 2
            begin = min(begin, self.width() - words.natural - 1)
            if begin >= after:
                self._small(painter, self._written(tick), begin, room.bottom() + self.look.mm(1))
                after = begin + words.natural + self.look.mm(2)
        self._small(painter, self.unit, room.x(), room.bottom() + self.look.mm(1) + self.look.leading("small"))

    def _paint_steps(self, painter: QPainter, room: QRectF) -> None:
        places = [QPointF(self._across.at(p.cost, room.x(), room.width()),
                          room.bottom() - self._up.at(p.score, 0, room.height())) for p in self.points]  # fmt: skip
        painter.setPen(QPen(self.look.colour("ink"), self.look.mm(0.42)))
        for one, other in pairwise(places):
            corner = QPointF(other.x(), one.y())
            painter.drawLine(QLineF(one, corner))
            painter.drawLine(QLineF(corner, other))
        painter.setBrush(self.look.colour("ink"))
        half = self.look.grown(DOT) / 2
        for place in places:
            painter.drawEllipse(place, half, half)
