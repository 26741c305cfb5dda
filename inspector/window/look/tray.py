"""A strip of tray across a page that says one thing, with a key at its right and others between."""

from collections.abc import Sequence

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.keys import Key
from inspector.window.look.look import Look
from inspector.window.look.measured import Places, Placing, height_at, measured
from inspector.window.look.text import HAIR, Text

EDGE, ABOVE, BETWEEN = 5.0, 1.6, 4.0  # at both sides, above and below, before the key, in millimetres


class TrayStrip(Placing, QWidget):
    """Words at the left, a key at the right, between them or below the first of ``others`` that is not hidden."""

    def __init__(
        self, look: Look, words: str, lead: str, key: Key, others: Sequence[QWidget], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.look, self.key, self._others = look, key, tuple(others)
        self.text = Text(look, words, lead=lead, parent=self)
        for widget in (*others, key):
            widget.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.settle_soon)

    @property
    def others(self) -> QWidget:
        """What stands between words and key, or below them."""
        return next((widget for widget in self._others if not widget.isHidden()), self._others[-1])

    @measured
    def places_at(self, width: int) -> Places:
        """All on one line where there is room, else words and key over the others."""
        edge, above, gap = (self.look.px(mm) for mm in (EDGE, ABOVE, BETWEEN))
        key = min(self.key.sizeHint().width(), max(width // 2, 1))
        text, others = self.text.sizeHint().width(), self.others.sizeHint().width()
        one_line = 2 * edge + text + others + key + 2 * gap <= width
        room = text if one_line else max(width - 2 * edge - key - gap, 1)
        high = max(height_at(self.key, key), height_at(self.text, room))
        places: list[tuple[QWidget, QRect]] = [(self.text, QRect(edge, above, room, high))]
        if one_line:
            left = width - edge - key - gap - others
            places.append((self.others, QRect(left, above, others, height_at(self.others, others))))
        else:
            wide = max(width - 2 * edge, 1)
            below = height_at(self.others, wide)
            places.append((self.others, QRect(edge, above + high + above, wide, below)))
        foot = max(rect.bottom() + 1 for _, rect in places)
        places.append((self.key, QRect(width - edge - key, above, key, high)))
        return places, max(foot, above + high) + above + self.look.px(HAIR)

    def sizeHint(self) -> QSize:
        """As high as its key needs."""
        wide = max(self.width(), self.look.grown(120))
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """The key and the longest word."""
        wide = self.text.minimumSizeHint().width() + self.key.minimumSizeHint().width() + self.look.px(BETWEEN)
        return QSize(max(wide, self.others.minimumSizeHint().width()) + 2 * self.look.px(EDGE), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Fills the ground and draws the line below."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour("tray"))
        hair = self.look.px(HAIR)
        painter.fillRect(0, self.height() - hair, self.width(), hair, self.look.colour("rule"))
        painter.end()
