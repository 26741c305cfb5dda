"""The ring round whatever the keyboard is at: drawn over its neighbours, so that nothing clips it."""

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QScrollArea, QWidget
from shiboken6 import isValid

from inspector.window.look.look import Look

WIDE = 0.6  # of the ring, and of the gap between it and the key, in millimetres
CORNER = 0.4
_BY_KEY = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason,
           Qt.FocusReason.ShortcutFocusReason)  # fmt: skip
_MOVES = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Hide, QEvent.Type.Show)


class FocusRing(QWidget):
    """One ring for all that stands on one ground (a window, or what a scroll area holds)."""

    def __init__(self, ground: QWidget, look: Look) -> None:
        super().__init__(ground)
        self.look = look
        self._target: QWidget | None = None
        self._watched: list[QWidget] = []
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        look.changed.connect(self._place)
        self.hide()

    def follow(self, target: QWidget) -> None:
        """The ring stands round ``target`` and stays there while things move."""
        self.leave()
        self._target = target
        widget: QWidget | None = target
        while widget is not None:
            widget.installEventFilter(self)
            self._watched.append(widget)
            # The ground too: it may grow only after what stands on it was moved to where there was none of it before.
            widget = widget.parentWidget() if widget is not self.parentWidget() else None
        self._place()
        self.raise_()
        self.show()

    def leave(self) -> None:
        """The ring stands round nothing."""
        for widget in filter(isValid, self._watched):  # some may have gone with what they stood in
            widget.removeEventFilter(self)
        self._watched, self._target = [], None
        self.hide()

    def target(self) -> QWidget | None:
        """The widget that the ring stands round, if any."""
        return self._target

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keeps the ring where its target is."""
        if event.type() in _MOVES:
            self._place()
        return False

    def _place(self) -> None:
        ground = self.parentWidget()
        if self._target is None or ground is None or not isValid(self._target):
            return
        reach = self.look.px(2 * WIDE)
        corner = self._target.mapTo(ground, QPoint(0, 0))
        rect = QRect(corner, self._target.size()).adjusted(-reach, -reach, reach, reach)
        self.setGeometry(rect.intersected(ground.rect()))
        self.setVisible(self._target.isVisibleTo(ground))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the ring along the edge of its own room."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = self.look.mm(WIDE)
        painter.setPen(QPen(self.look.colour("focus"), wide))
        radius = self.look.mm(CORNER + 1.5 * WIDE)
        room = QRectF(self.rect()).adjusted(wide / 2, wide / 2, -wide / 2, -wide / 2)
        painter.drawRoundedRect(room, radius, radius)
        painter.end()


def ground_of(widget: QWidget) -> QWidget:
    """What a ring round ``widget`` is drawn on: the content of its scroll area, or its window."""
    here = widget
    above = here.parentWidget()
    while above is not None and not here.isWindow():
        beyond = above.parentWidget()
        if isinstance(beyond, QScrollArea) and beyond.widget() is here:
            return here
        here, above = above, beyond
    return here


def ring_on(ground: QWidget) -> FocusRing | None:
    """The ring of this ground, if anything on it has had the focus."""
    options = Qt.FindChildOption.FindDirectChildrenOnly
    return next(iter(ground.findChildren(FocusRing, "", options)), None)


def show_ring(widget: QWidget, look: Look, event: QFocusEvent | None = None) -> None:
    """The ring stands round ``widget``, unless a finger or the mouse is at work."""
    if event is None or event.reason() in _BY_KEY:
        look.by_keyboard = True
    if event is not None and event.reason() == Qt.FocusReason.MouseFocusReason:
        look.by_keyboard = False
    if look.by_keyboard:
        ground = ground_of(widget)
        (ring_on(ground) or FocusRing(ground, look)).follow(widget)


def hide_ring(widget: QWidget) -> None:
    """No ring stands round ``widget``."""
    ring = ring_on(ground_of(widget))
    if ring is not None and ring.target() is widget:
        ring.leave()


class Ringed:
    """Beside a widget that has a ``look``: the ring stands round it while it has the keyboard."""

    look: Look

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The ring comes."""
        super().focusInEvent(event)  # type: ignore[misc]
        show_ring(self, self.look, event)  # type: ignore[arg-type]

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ring goes."""
        super().focusOutEvent(event)  # type: ignore[misc]
        hide_ring(self)  # type: ignore[arg-type]
