"""A row that shows a number as read, each doubtful figure with its line, under a name and over a word."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import hatch
from inspector.window.look.figures import PROBABLE, UNREADABLE, Cell
from inspector.window.look.look import Look
from inspector.window.look.rows import BaseRow
from inspector.window.look.stack import Part, Stack
from inspector.window.look.type import STEPS, make_font

STEP = "head"
UNDER, THICK, HATCHED = 0.4, 0.7, 2.7  # of the line below a figure, and the width of a hatched one, in millimetres
GAP = 1.3


class NumberRow(BaseRow):
    """Name, where, the number large with a broken line below what is doubtful, and a word on its state."""

    def __init__(self, look: Look, *, edge: float = 5.0, arrow: bool = False, opens: bool = True,
                 parent: QWidget | None = None) -> None:  # fmt: skip
        super().__init__(look, arrow=arrow, opens=opens, edge=edge, parent=parent)
        self.title = self.where = self.state = self.said = ""
        self.cells: tuple[Cell, ...] = ()

    def say(self, title: str, where: str, cells: Sequence[Cell], state: str, *, said: str = "") -> None:
        """The row says this; ``said`` is the number as it is read out, for the accessible name."""
        now = (title, where, tuple(cells), state, said)
        if now == (self.title, self.where, self.cells, self.state, self.said):
            return
        self.title, self.where, self.cells, self.state, self.said = now
        self.setAccessibleName(", ".join(word for word in (title, where, said, state) if word))
        self.restyle()

    def _above(self) -> Stack:
        return Stack(self.look, (
            Part(self.title, "text", self.current), Part(self.where, "small", False, "soft"),
        ))  # fmt: skip

    def _below(self) -> Stack:
        return Stack(self.look, (Part(self.state, "small", False, "soft"),))

    def _lines(self, width: float) -> list[list[tuple[Cell, float, float]]]:
        """Cells with left edge and width, line by line."""
        font = make_font(self.look.grown(STEPS[STEP]), True, True)
        lines: list[list[tuple[Cell, float, float]]] = [[]]
        metrics, left = QFontMetricsF(font), 0.0
        for cell in self.cells:
            gap = self.look.grown(GAP) if cell.after_gap else 0.0
            wide = self.look.grown(HATCHED) if cell.kind == UNREADABLE else metrics.horizontalAdvance(cell.text)
            if lines[-1] and left + gap + wide > width:
                lines.append([])
                left, gap = 0.0, 0.0
            lines[-1].append((cell, left + gap, wide))
            left += gap + wide
        return lines

    def _line_high(self) -> float:
        return self.look.leading(STEP)

    def _number_high(self, width: float) -> float:
        return len(self._lines(width)) * self._line_high() if self.cells else 0.0

    def content_height(self, width: float) -> float:
        """Name, where, number and state, one under the other."""
        return self._above().height(width) + self._number_high(width) + self._below().height(width)

    def sizeHint(self) -> QSize:
        """The width at which nothing wraps."""
        number = max((left + wide for _, left, wide in self._lines(1e6)[0]), default=0.0)
        wide = max(self._above().natural, self._below().natural, number)
        return QSize(round(wide + self.look.mm(2 * self.edge) + 2), self.heightForWidth(round(wide)))

    def paint_content(self, painter: QPainter, room: QRectF) -> None:
        """Draws the words and, between them, the number."""
        above, below = self._above(), self._below()
        high = above.height(room.width())
        top = round(room.y() + (room.height() - self.content_height(room.width())) / 2)
        above.paint(painter, QRectF(room.x(), top, room.width(), high))
        top += round(high)
        for line in self._lines(room.width()) if self.cells else ():
            for cell, left, wide in line:
                self._paint_cell(painter, cell, QRectF(room.x() + left, top, wide, self._line_high()))
            top += round(self._line_high())
        below.paint(painter, QRectF(room.x(), top, room.width(), below.height(room.width())))

    def _paint_cell(self, painter: QPainter, cell: Cell, room: QRectF) -> None:
        if cell.kind == UNREADABLE:
            inset = room.height() * 0.2
            hatch(painter, room.adjusted(1, inset, -1, -inset), self.look.colour("soft"), self.look.mm(1), 1.2)
            return
        painter.setFont(make_font(self.look.grown(STEPS[STEP]), True, True))
        painter.setPen(self.look.colour("ink"))
        painter.drawText(room, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextDontClip, cell.text)
        if cell.kind == PROBABLE:
            thick = self.look.grown(THICK)
            pen = QPen(self.look.colour("doubt"), thick)
            pen.setDashPattern([1.3, 0.6])
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
            painter.setPen(pen)
            foot = room.bottom() - self.look.grown(UNDER)
            painter.drawLine(QPointF(room.left(), foot), QPointF(room.right(), foot))
