"""A table of sums: what, from where, and the figure at the right."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import Chart
from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import HAIR, THICK
from inspector.window.look.type import RIGHT

ABOVE, LEAST, BETWEEN = 1.0, 9.0, 4.0  # above a row's text, least height of a row, before the figure, in millimetres


@dataclass(frozen=True, slots=True)
class Sum:
    """One line: its name, a smaller second line, its figure in print; ``total`` stands under a thick line."""

    name: str
    figure: str
    second: str = ""
    total: bool = False


class SumTable(Chart):
    """Lines of sums, hairlines between; nothing in it is pressed."""

    def __init__(self, look: Look, lines: Sequence[Sum] = (), parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self.lines: tuple[Sum, ...] = ()
        self.set_lines(lines)

    def set_lines(self, lines: Sequence[Sum]) -> None:
        """The lines are these, from the top."""
        self.lines = tuple(lines)
        told = ". ".join(" ".join(w for w in (one.name, one.second, one.figure) if w) for one in self.lines)
        self.setAccessibleName(told)
        self.restyle()

    def _text(self, one: Sum) -> Stack:
        return Stack(self.look, (Part(one.name, "text", one.total), Part(one.second, "small", False, "soft")))

    def _figure(self, one: Sum) -> Stack:
        return Stack(self.look, (Part(one.figure, "head" if one.total else "key"),))

    def _room(self, one: Sum, width: float) -> float:
        """What the text has, at the left of its figure."""
        figure = self._figure(one).natural
        return max(width - figure - (self.look.mm(BETWEEN) if figure else 0), 1.0)

    def _high(self, one: Sum, width: float) -> int:
        text = self._text(one).height(self._room(one, width))
        figure = self._figure(one).height(1e6)
        return max(round(max(text, figure) + 2 * self.look.grown(ABOVE)), self.look.grown(LEAST))

    @measured
    def heightForWidth(self, width: int) -> int:
        """All lines."""
        return sum(self._high(one, width) for one in self.lines)

    @measured
    def sizeHint(self) -> QSize:
        """The width at which nothing wraps."""
        gap = self.look.mm(BETWEEN)
        wide = max((self._text(o).natural + self._figure(o).natural + gap for o in self.lines), default=0.0)
        return QSize(round(wide) + 1, self.heightForWidth(round(wide) + 1))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which no word is broken."""
        gap = self.look.mm(BETWEEN)
        least = max((self._text(o).least + self._figure(o).natural + gap for o in self.lines), default=0.0)
        return QSize(round(least) + 1, 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws line by line."""
        painter = QPainter(self)
        top = 0
        for one in self.lines:
            high, room = self._high(one, self.width()), self._room(one, self.width())
            if one.total:
                painter.fillRect(0, top, self.width(), self.look.px(THICK), self.look.colour("ink"))
            self._text(one).paint(painter, QRectF(0, top, room, high))
            self._figure(one).paint(painter, QRectF(0, top, self.width(), high), RIGHT)
            hair = self.look.px(HAIR)
            painter.fillRect(0, top + high - hair, self.width(), hair, self.look.colour("rule"))
            top += high
        painter.end()
