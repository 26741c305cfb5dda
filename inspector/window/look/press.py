"""What every key and row shares: the ring, being off with a reason, Enter, and its look."""

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QToolTip, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.ring import Ringed, show_ring

TARGET = 12.0  # the least height and width of anything to press, in millimetres
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
_HELD = (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_AltGr, Qt.Key.Key_Meta)


class Pressable(Ringed, Measured, QAbstractButton):
    """Something to press; where it is off it stays reachable, and a press says why in words.

    ``clicked`` tells of a press while it is on, ``refused(reason)`` of one while it is off.
    """

    refused = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._reason = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_MacShowFocusRect, False)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)

    @property
    def off(self) -> bool:
        """Whether a press does nothing but say why."""
        return bool(self._reason)

    @property
    def reason(self) -> str:
        """Why it is off; empty while it is on."""
        return self._reason

    def turn_off(self, reason: str) -> None:
        """A press from now on gives ``reason`` instead of acting; an empty one turns it on."""
        self.blockSignals(False)
        if reason != self._reason:
            self._reason = reason
            self.forget()
            self.describe()
            self.update()

    def turn_on(self) -> None:
        """A press acts again."""
        self.turn_off("")

    def describe(self) -> None:
        """The accessible description holds the reason, if there is one."""
        self.setAccessibleDescription(self._reason)

    def restyle(self) -> None:
        """It is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def nextCheckState(self) -> None:
        """Holds nothing by itself; refuses the press while off, whichever way it came."""
        if not self._reason:
            return
        self.blockSignals(False)
        self.refused.emit(self._reason)
        QToolTip.showText(self.mapToGlobal(QPoint(0, self.height())), self._reason, self)
        # Qt announces the click right after this; nobody is to hear of it.
        self.blockSignals(True)
        QTimer.singleShot(0, self, self._listen_again)

    def _listen_again(self) -> None:
        self.blockSignals(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses as Space does; any key brings the ring, but not one that is only held beside another."""
        if event.key() not in _HELD:
            show_ring(self, self.look)
        if event.key() in _ENTER and not event.isAutoRepeat():
            self.click()
        else:
            super().keyPressEvent(event)

    def hasHeightForWidth(self) -> bool:
        """Text wraps, so height follows width."""
        return True
