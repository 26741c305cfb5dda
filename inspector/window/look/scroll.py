"""Scrolling by finger, wheel or bar, with no frame round it."""

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QFrame,
    QScrollArea,
    QScrollBar,
    QScroller,
    QStyle,
    QStyleOptionSlider,
    QWidget,
)
from shiboken6 import isValid

from inspector.window.look.inks import palette
from inspector.window.look.look import Look
from inspector.window.look.measured import Placing

BAR = 2.2  # width of a scroll bar, in millimetres


class ScrollBar(QScrollBar):
    """A stroke that says where one is, drawn over the margin of what scrolls beside it."""

    def __init__(self, look: Look, area: QAbstractScrollArea) -> None:
        super().__init__(Qt.Orientation.Vertical, area)
        self.look, self._area, self._own = look, area, area.verticalScrollBar()
        self._own.rangeChanged.connect(self._ranged)
        self._own.valueChanged.connect(self.setValue)
        self.valueChanged.connect(self._own.setValue)
        look.changed.connect(self.place)
        area.installEventFilter(self)
        self._ranged(self._own.minimum(), self._own.maximum())

    def _ranged(self, least: int, most: int) -> None:
        if not isValid(self._own):  # the area is going and takes its own bar first
            return
        self.setRange(least, most)
        self.setPageStep(self._own.pageStep())
        self.setSingleStep(self._own.singleStep())
        self.setVisible(most > least)
        self.place()

    def place(self) -> None:
        """The bar stands at the right edge of its area."""
        wide = self.look.px(BAR)
        self.setGeometry(self._area.width() - wide, 0, wide, self._area.height())
        self.raise_()
        self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follows the size of its area."""
        if event.type() == QEvent.Type.Resize:
            self.place()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the stroke where the style puts the handle."""
        option = QStyleOptionSlider()
        self.initStyleOption(option)
        handle = self.style().subControlRect(
            QStyle.ComplexControl.CC_ScrollBar, option, QStyle.SubControl.SC_ScrollBarSlider, self
        )
        painter = QPainter(self)
        wide = self.look.mm(0.8)
        left = (self.width() - wide) / 2
        stroke = QRectF(left, handle.y(), wide, handle.height())
        painter.fillRect(stroke, self.look.colour("line"))
        painter.end()


def tame(area: QAbstractScrollArea, look: Look) -> ScrollBar:
    """The area has no frame, follows the finger and has this look's bar, which is given back."""
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    QScroller.grabGesture(area.viewport(), QScroller.ScrollerGestureType.TouchGesture)
    return ScrollBar(look, area)


class _Watch(QObject):
    """Starts a timer whenever what it watches is laid out, shown or resized."""

    # A scroll area's own filter must stay its own: called from an override it comes back for ever.

    def __init__(self, settle: QTimer) -> None:
        super().__init__(settle)
        self._settle = settle

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Lets every event pass."""
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show, QEvent.Type.Resize):
            self._settle.start()
        return False


class Scroll(QScrollArea):
    """One widget that may be higher than its room; ``hold(widget)`` puts another in its place."""

    def __init__(self, look: Look, widget: QWidget | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.bar = tame(self, look)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(0)
        self._settle.timeout.connect(self.settle)
        self._watch = _Watch(self._settle)
        look.changed.connect(self.restyle)
        self.restyle()
        if widget is not None:
            self.hold(widget)

    def hold(self, widget: QWidget) -> None:
        """This widget is what scrolls; the one before is let go, not deleted."""
        if widget is not self.widget():
            self.release()
        self.setWidget(widget)
        widget.installEventFilter(self._watch)
        widget.show()
        self._settle.start()

    def release(self) -> QWidget | None:
        """Nothing scrolls any more; what did is given back without a parent."""
        # An area that has not let go goes on resizing its widget, also in another area.
        before = self.takeWidget()
        if before is not None:
            before.removeEventFilter(self._watch)
            before.setParent(None)
        return before

    def settle(self) -> None:
        """What scrolls is as wide as the area and as high as it needs, at least as high as the area."""
        widget = self.widget()
        if widget is None or not widget.hasHeightForWidth():
            return
        room = self.viewport().size()
        high = max(widget.heightForWidth(room.width()), room.height())
        if widget.height() != high:
            widget.resize(room.width(), high)

    def restyle(self) -> None:
        """The ground is paper."""
        inks = palette(self.look.inks)
        self.setPalette(inks)
        self.viewport().setPalette(inks)


def bring_into_sight(widget: QWidget, air: int = 0) -> None:
    """Every area in which the widget scrolls shows it, with so many pixels above and below it."""
    here = widget.parentWidget()
    while here is not None:
        held = here.widget() if isinstance(here, QScrollArea) else None
        if isinstance(here, QScrollArea) and held is not None and held.isAncestorOf(widget):
            _show_whole(here, held, widget, air)
        here = here.parentWidget()


def _show_whole(area: QScrollArea, held: QWidget, widget: QWidget, air: int) -> None:
    # Qt's own ensureWidgetVisible is content with the cursor of a field, and leaves half of the field out of sight.
    bar, room = area.verticalScrollBar(), area.viewport().height()
    top = widget.mapTo(held, widget.rect().topLeft()).y() - air
    foot = top + widget.height() + 2 * air
    if top < bar.value() or foot - top > room:
        bar.setValue(top)
    elif foot > bar.value() + room:
        bar.setValue(foot - room)


def top_in_area(widget: QWidget) -> tuple[QScrollArea, int] | None:
    """The area in which the widget scrolls, laid out, and how far down in it the widget begins, in pixels."""
    here: QWidget | None = widget
    while here is not None and not isinstance(here, QScrollArea):
        _settle(here)
        here = here.parentWidget()
    if here is None:
        return None
    if isinstance(here, Scroll):
        here.settle()
    return here, widget.mapTo(here, widget.rect().topLeft()).y() + here.verticalScrollBar().value()


def _settle(widget: QWidget) -> None:
    """What stands in the widget stands where it belongs, without waiting for the next round of events."""
    layout = widget.layout()
    if isinstance(widget, Placing):
        widget.settle()
    elif layout is not None:
        layout.activate()
