"""A column that scrolls over a foot that does not."""

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.window.look.measured import Placing
from inspector.window.look.scroll import Scroll


class Footed(QWidget):
    """What scrolls, and below it a foot that is shown only while not all of it fits."""

    def __init__(self, scroll: Scroll, foot: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.area, self.foot = scroll, foot
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(scroll, 1)
        box.addWidget(foot)
        scroll.verticalScrollBar().rangeChanged.connect(self.fit)
        self.fit()

    def fit(self, *_: int) -> None:
        """The foot is there if what scrolls, down to the last thing it stands for, is higher than the column."""
        held, last = self.area.widget(), getattr(self.foot, "stands_for", None)
        if isinstance(held, Placing):
            places, high = held.places_at(self.width())
            high = next((rect.bottom() for widget, rect in places if widget is last), high)
            self.foot.setVisible(high > self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another height may hold all of it."""
        super().resizeEvent(event)
        self.fit()
