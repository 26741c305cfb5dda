"""The picture on the bench worked by keys alone."""

from typing import Any

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent

from inspector.window.look.ring import show_ring

STEP, REACH = 1.5, 0.12
_WAYS = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
}  # fmt: skip
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)


class CanvasKeys:
    """Plus, minus, 0 and 1 zoom; arrows move the picture, or the handle that , and . choose; Enter puts a point."""

    by_keys = False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """One key."""
        canvas: Any = self
        show_ring(canvas, canvas.look)
        self.by_keys = True
        if not (self._zoom_key(event) or self._handle_key(event) or self._point_key(event) or self._way_key(event)):
            super().keyPressEvent(event)  # type: ignore[misc]
        canvas.update()

    def _zoom_key(self, event: QKeyEvent) -> bool:
        canvas: Any = self
        acts = {
            "+": lambda: canvas.zoom(STEP), "-": lambda: canvas.zoom(1 / STEP),
            "0": canvas.whole, "1": canvas.one_to_one,
        }  # fmt: skip
        act = acts.get(event.text())
        if act is not None:
            act()
        return act is not None

    def _handle_key(self, event: QKeyEvent) -> bool:
        canvas: Any = self
        many = len(canvas.overlay.handles())
        if event.text() in (",", ".") and many:
            canvas.selected = (canvas.selected + (1 if event.text() == "." else -1)) % many
            canvas.setAccessibleDescription(canvas.overlay.name(canvas.selected))
            return True
        if event.key() == Qt.Key.Key_Escape and (canvas.selected >= 0 or canvas.begun is not None):
            canvas.selected, canvas.begun = -1, None
            return True
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and 0 <= canvas.selected < many:
            canvas.overlay.drop(canvas.selected)
            canvas.selected = -1
            return True
        return False

    def _point_key(self, event: QKeyEvent) -> bool:
        canvas: Any = self
        if event.key() not in _ENTER or canvas.selected >= 0:
            return False
        here = canvas.to_picture(QPointF(canvas.rect().center()))
        if canvas.overlay.places:
            canvas.overlay.place(here)
        elif canvas.overlay.draws and canvas.begun is None:
            canvas.begun = here
        elif canvas.overlay.draws:
            begun, canvas.begun = canvas.begun, None
            canvas.overlay.draw(begun, here, canvas, done=True)
        else:
            return False
        return True

    def _way_key(self, event: QKeyEvent) -> bool:
        canvas: Any = self
        way = _WAYS.get(Qt.Key(event.key()))
        if way is None:
            return False
        if 0 <= canvas.selected < len(canvas.overlay.handles()):
            far = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            spot = canvas.to_screen(canvas.overlay.handles()[canvas.selected])
            step = QPointF(*way) * far * max(canvas.scale, 0.5)
            canvas.overlay.move(canvas.selected, canvas.to_picture(spot + step), done=True)
        else:
            reach = REACH * min(canvas.width(), canvas.height())
            canvas.pull(-QPointF(*way) * reach)
        return True
