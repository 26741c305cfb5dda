"""Tab goes through a window in the order in which it is read, whatever was made first."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from inspector.window.look.scroll import bring_into_sight

AIR = 12  # above and below what Tab comes to, where that had to be scrolled, in pixels: its ring, and what follows


def in_reading_order(widget: QWidget) -> list[QWidget]:
    """All that Tab reaches in this widget: what stands higher comes first, on one line what stands at the left.

    What stands together in one widget stays together, so a column is read to its end before the next.
    """
    found: list[QWidget] = []
    children = [w for w in widget.children() if isinstance(w, QWidget) and w.isVisible() and not w.isWindow()]
    for child in sorted(children, key=lambda w: (w.y(), w.x())):
        if takes_tab(child):
            found.append(child)
        found += in_reading_order(child)
    return found


def takes_tab(widget: QWidget) -> bool:
    """Whether Tab stops at this widget itself."""
    stops = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    return bool(stops) and widget.isEnabled() and widget.focusProxy() is None


def step_focus(window: QWidget, forward: bool) -> bool:
    """The focus is one further on in reading order, round the end; False where nothing takes it."""
    stops = in_reading_order(window)
    if not stops:
        return False
    here = QApplication.focusWidget()
    at = stops.index(here) + (1 if forward else -1) if here in stops else 0 if forward else -1
    reason = Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason
    stop = stops[at % len(stops)]
    stop.setFocus(reason)
    bring_into_sight(stop, AIR)
    return True
