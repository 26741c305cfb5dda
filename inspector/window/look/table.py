"""A small table: heads over columns of figures, a row for each thing, one row marked."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.text import HAIR, THICK
from inspector.window.look.type import LEFT, RIGHT

ROW, BETWEEN, FIRST, WIDEST = 6.0, 3.0, 14.0, 30.0  # height of a row, gap, first column, widest other, in millimetres


class Table(Measured, QWidget):
    """Text at the left in the first column, figures at the right in the others; nothing in it is pressed."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.heads: tuple[str, ...] = ()
        self.rows: tuple[tuple[str, ...], ...] = ()
        self.marked = -1
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)

    def set_rows(self, heads: Sequence[str], rows: Sequence[Sequence[str]], marked: int = -1) -> None:
        """The table says this; the ``marked`` row, counted from 0, stands in semibold."""
        self.heads, self.rows, self.marked = tuple(heads), tuple(tuple(row) for row in rows), marked
        told = ("; ".join(f"{head} {cell}" for head, cell in zip(self.heads, row, strict=True)) for row in self.rows)
        self.setAccessibleName(". ".join(told))
        self.restyle()

    def restyle(self) -> None:
        """The table is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def _wides(self, width: int) -> list[float]:
        """The width of each column."""
        others = max(len(self.heads) - 1, 1)
        first, gap = float(self.look.grown(FIRST)), self.look.mm(BETWEEN)
        wide = min((width - first) / others - gap, float(self.look.grown(WIDEST)))
        return [first, *[max(wide, 1.0)] * others]

    def _head_high(self, width: int) -> float:
        wides = self._wides(width)
        heads = zip(self.heads, wides, strict=False)
        return max((self.look.words(head, "small").height(wide) for head, wide in heads), default=0.0)

    def hasHeightForWidth(self) -> bool:
        """Heads wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Heads, their line, and the rows."""
        rows = len(self.rows) * self.look.grown(ROW)
        return round(self._head_high(width) + self.look.grown(1) + self.look.px(THICK) + rows)

    def sizeHint(self) -> QSize:
        """Room for every column."""
        wide = self.look.grown(FIRST) + max(len(self.heads) - 1, 1) * self.look.grown(22)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """The width at which no figure is cut."""
        return QSize(self.look.grown(FIRST) + max(len(self.heads) - 1, 1) * self.look.grown(14), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws heads, rows and the lines between."""
        painter = QPainter(self)
        high, wides = self._head_high(self.width()), self._wides(self.width())
        self._paint_row(painter, self.heads, 0.0, high, wides, "small", False, "soft")
        top = round(high + self.look.grown(1))
        painter.fillRect(0, top, self.width(), self.look.px(THICK), self.look.colour("ink"))
        top += self.look.px(THICK)
        for n, row in enumerate(self.rows):
            self._paint_row(painter, row, top, self.look.grown(ROW), wides, "text", n == self.marked, "ink")
            top += self.look.grown(ROW)
            line = QRectF(0, top - self.look.px(HAIR), self.width(), self.look.px(HAIR))
            painter.fillRect(line, self.look.colour("rule"))
        painter.end()

    def _paint_row(
        self, painter: QPainter, cells: Sequence[str], top: float, high: float, wides: list[float],
        step: str, heavy: bool, ink: str,
    ) -> None:  # fmt: skip
        left = 0.0
        for n, (cell, wide) in enumerate(zip(cells, wides, strict=True)):
            words = self.look.words(cell, step, heavy)
            own = words.height(wide)
            room = QRectF(left, top + (high - own) / 2, wide, own)
            words.paint(painter, room, self.look.colour(ink), RIGHT if n else LEFT)
            left += wide + self.look.mm(BETWEEN)
