"""The photograph on the bench: what the record keeps of it, its working copy, and one way to change it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from inspector.record.photographs import change_photograph
from inspector.window.bench.copies import WorkingCopy

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.record.finding import Photograph
    from inspector.window.bench.overlay import Point
    from inspector.window.desk import Desk


class Subject(QObject):
    """One photograph of the open record. ``changed`` tells that the record keeps something else of it."""

    changed = Signal()

    def __init__(self, desk: Desk, photo_id: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk, self.photo_id = desk, photo_id
        self.copy = WorkingCopy(desk, self)
        self._seen = self.photograph
        desk.changed.connect(self._heard)

    @property
    def photograph(self) -> Photograph | None:
        """The photograph as the record has it now, or None where it was taken out."""
        if self.desk.session is None:
            return None
        return next((p for p in self.desk.record.photographs if p.id == self.photo_id), None)

    def _heard(self, _: object) -> None:
        now = self.photograph
        if now != self._seen:
            self._seen = now
            self.changed.emit()

    def change(self, label: str, **changes: Any) -> bool:
        """These fields of the photograph are kept; the file itself is not touched."""
        photograph = self.photograph
        return photograph is not None and self.desk.do(change_photograph(photograph, label=label, **changes))

    def shares(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """The points as shares of the upright picture, as the record keeps them."""
        wide, high = self.copy.size
        return tuple((round(min(max(x / wide, 0), 1), 6), round(min(max(y / high, 0), 1), 6)) for x, y in points)

    def spots(self, shares: Iterable[Point]) -> list[Point]:
        """The shares as pixels of the picture."""
        wide, high = self.copy.size
        return [(x * wide, y * high) for x, y in shares]
