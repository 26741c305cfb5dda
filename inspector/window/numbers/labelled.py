"""A label at the left of keys, or above them where there is no room beside."""

from PySide6.QtCore import QRect, QSize
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Places, Placing, height_at, measured
from inspector.window.look.text import Text

LABEL, BETWEEN, LEAST = 20.0, 2.0, 60.0  # widths in millimetres: label, gap, and the least of what stands beside it


class Labelled(Placing, QWidget):
    """The label in semibold, midway beside what it names."""

    def __init__(self, look: Look, label: str, body: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.body = look, body
        self.label = Text(look, label, semibold=True, parent=self)
        body.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.settle_soon)

    @measured
    def places_at(self, width: int) -> Places:
        """The label beside the body where there is room for both, else above it."""
        left, gap = self.look.grown(LABEL), self.look.px(BETWEEN)
        if width - left - gap < self.look.grown(LEAST):
            above = height_at(self.label, width)
            high = height_at(self.body, width)
            return [(self.label, QRect(0, 0, width, above)), (self.body, QRect(0, above + gap, width, high))], (
                above + gap + high
            )
        wide = width - left - gap
        high = max(height_at(self.body, wide), height_at(self.label, left))
        return [(self.label, QRect(0, 0, left, high)), (self.body, QRect(left + gap, 0, wide, high))], high

    def sizeHint(self) -> QSize:
        """The width at which the body does not wrap."""
        hint = self.body.sizeHint()
        return QSize(hint.width() + self.look.grown(LABEL) + self.look.px(BETWEEN), hint.height())

    def minimumSizeHint(self) -> QSize:
        """The width that the body needs at least."""
        return self.body.minimumSizeHint()
