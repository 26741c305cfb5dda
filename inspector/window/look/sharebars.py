"""Bars for shares of a whole, each with its figure in print."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import Chart, paint_band
from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.stack import Part, Stack
from inspector.window.look.type import RIGHT

BAR, ABOVE, GAP = 3.0, 1.3, 1.0  # height of a bar, above a row, between text and bar, in millimetres

Share = tuple[str, float, str]  # a name, 0 to 1, and the figure in print


class ShareBars(Chart):
    """One row a share: its name, its figure at the right, and below both a band as long as the share."""

    def __init__(self, look: Look, shares: Sequence[Share] = (), parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self.shares: tuple[Share, ...] = ()
        self.set_shares(shares)

    def set_shares(self, shares: Sequence[Share]) -> None:
        """Each is a name, a share from 0 to 1, and the figure that is printed for it."""
        self.shares = tuple(shares)
        self.setAccessibleName(". ".join(f"{name} {figure}" for name, _, figure in self.shares))
        self.restyle()

    def _stack(self, text: str, heavy: bool) -> Stack:
        return Stack(self.look, (Part(text, "small", heavy),))

    def _text_room(self, figure: str, width: float) -> float:
        return max(width - self._stack(figure, True).natural - self.look.mm(3), 1.0)

    def _high(self, name: str, figure: str, width: float) -> float:
        text = self._stack(name, False).height(self._text_room(figure, width))
        return text + self.look.grown(BAR) + self.look.mm(GAP) + 2 * self.look.mm(ABOVE)

    @measured
    def heightForWidth(self, width: int) -> int:
        """All rows."""
        return round(sum(self._high(name, figure, width) for name, _, figure in self.shares))

    def sizeHint(self) -> QSize:
        """Room for a name and its figure."""
        wide = self.look.grown(50)
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which no word is broken."""
        both = (self._stack(n, False).least + self._stack(f, True).natural for n, _, f in self.shares)
        least = max(both, default=0.0)
        return QSize(round(least + self.look.mm(3)) + 1, 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws names, figures and bands."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        top, bar = 0.0, self.look.grown(BAR)
        for name, share, figure in self.shares:
            text, room = self._stack(name, False), self._text_room(figure, self.width())
            high, begin = text.height(room), top + self.look.mm(ABOVE)
            text.paint(painter, QRectF(0, begin, room, high))
            self._stack(figure, True).paint(painter, QRectF(0, begin, self.width(), high), RIGHT)
            long = max(min(max(share, 0.0), 1.0) * self.width(), self.look.mm(1))
            paint_band(painter, QRectF(0, begin + high + self.look.mm(GAP), long, bar), self.look)
            top += self._high(name, figure, self.width())
        painter.end()
