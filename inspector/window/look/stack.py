"""Lines of text of several steps, one under the other, measured and painted as one."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from inspector.window.look.look import Look
from inspector.window.look.type import LEFT, Words


@dataclass(frozen=True, slots=True)
class Part:
    """One text of a stack: what, in which step, how heavy and in which ink."""

    text: str
    step: str = "text"
    semibold: bool | None = None
    ink: str = "ink"


class Stack:
    """The parts that are not empty, one under the other, each wrapped to the same width."""

    def __init__(self, look: Look, parts: Sequence[Part]) -> None:
        self.parts = [part for part in parts if part.text]
        self._look = look
        self.words = [look.words(p.text, p.step, p.semibold) for p in self.parts]

    @property
    def natural(self) -> float:
        """The width that needs no wrapping, in pixels."""
        return max((words.natural for words in self.words), default=0.0)

    @property
    def least(self) -> float:
        """The width below which a word would be broken, in pixels."""
        return max((words.least for words in self.words), default=0.0)

    def height(self, width: float) -> float:
        """The height of all parts at this width, in pixels."""
        return sum(words.height(width) for words in self.words)

    def first(self) -> Words | None:
        """The words that stand on top, if there are any."""
        return next(iter(self.words), None)

    def paint(
        self, painter: QPainter, rect: QRectF, align: Qt.AlignmentFlag = LEFT,
        colour: QColor | None = None,
    ) -> None:  # fmt: skip
        """The stack stands in ``rect`` midway between top and foot, each part in its ink."""
        top: float = round(rect.y() + (rect.height() - self.height(rect.width())) / 2)
        for part, words in zip(self.parts, self.words, strict=True):
            high = words.height(rect.width())
            room = QRectF(rect.x(), top, rect.width(), high)
            words.paint(painter, room, colour or self._look.colour(part.ink), align)
            top += high
