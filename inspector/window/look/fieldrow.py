"""Small fields beside one another, as many a line as have room."""

from collections.abc import Iterable

from PySide6.QtCore import QRect, QSize
from PySide6.QtWidgets import QWidget

from inspector.window.look.keyrow import KeyRow
from inspector.window.look.look import Look
from inspector.window.look.measured import Places, height_at, measured

LEAST = 27.0  # the least width of one of them, in millimetres


class FieldRow(KeyRow):
    """Fields of one width, their upper edges level; each keeps the height that it needs."""

    def __init__(
        self, look: Look, fields: Iterable[QWidget] = (), *, least: float = LEAST, parent: QWidget | None = None
    ) -> None:
        self._least = least
        super().__init__(look, fields, parent=parent)

    def _per_line(self, width: int) -> int:
        gap, least = self._between(), self.look.grown(self._least)
        fitting = max((width + gap) // (least + gap), 1)
        count = max(len(self._standing()), 1)
        return -(-count // -(-count // min(fitting, count)))

    @measured
    def places_at(self, width: int) -> Places:
        """Where each field stands at this width, and the height of all of them."""
        gap, shown, count = self._between(), self._standing(), self._per_line(width)
        wide = max((width - gap * (count - 1)) // count, 1)
        places: list[tuple[QWidget, QRect]] = []
        top = 0
        for at in range(0, len(shown), count):
            line = shown[at : at + count]
            highs = [height_at(field, wide) for field in line]
            for n, (field, high) in enumerate(zip(line, highs, strict=True)):
                places.append((field, QRect(n * (wide + gap), top, wide, high)))
            top += max(highs) + gap
        return places, max(top - gap, 0)

    @measured
    def sizeHint(self) -> QSize:
        """Two fields beside one another."""
        wide = 2 * self.look.grown(self._least) + self._between()
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """One field alone on its line."""
        return QSize(max((w.minimumSizeHint().width() for w in self._standing()), default=0), 0)
