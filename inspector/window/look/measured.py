"""What a widget measures is measured once, until its words or its look change."""

from abc import abstractmethod
from collections.abc import Callable
from functools import wraps
from typing import Any

from PySide6.QtCore import QEvent, QRect
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

Places = tuple[list[tuple[QWidget, QRect]], int]


class Measured:
    """Makes a widget remember its sizes until ``updateGeometry`` is called on it or on what stands in it.

    Stands before the Qt class among the bases.
    """

    # Layouts ask for the same sizes many times over: each answer that is at hand is a frame sooner.

    _sizes: dict[Any, Any] | None = None

    def forget(self) -> None:
        """Its sizes, and those of all that it stands in, are measured anew when they are next asked for."""
        own: Any = self
        self._sizes = None
        _forget(own.parentWidget())

    def updateGeometry(self) -> None:
        """Every size is measured anew, and whoever lays the widget out is told."""
        self.forget()
        super().updateGeometry()  # type: ignore[misc]

    def setVisible(self, visible: bool) -> None:
        """Shown or hidden: those that it stands in are measured anew."""
        own: Any = self
        changes = own.isHidden() == visible
        super().setVisible(visible)  # type: ignore[misc]
        if changes:
            _forget(own.parentWidget())


def _forget(widget: Any) -> None:
    """The widget and all that it stands in are measured anew, up to what is to be anyway."""
    while widget is not None:
        if isinstance(widget, Measured):
            if widget._sizes is None and isinstance(widget, Placing):
                return
            widget._sizes = None
        widget = widget.parentWidget()


def measured(work: Callable[..., Any]) -> Callable[..., Any]:
    """The method works its answer out once for the same arguments, until the widget forgets its sizes."""
    name = work.__qualname__

    @wraps(work)
    def remembered(self: Any, *given: Any) -> Any:
        sizes = self._sizes
        if sizes is None:
            sizes = self._sizes = {}
        key = (name, *given)
        found = sizes.get(key)
        if found is None:
            found = sizes[key] = work(self, *given)
        return found

    return remembered


class Placing(Measured):
    """Places the widgets in it by itself, as ``places_at`` says; stands before the Qt class among the bases."""

    # One measuring and one placing, where nested Qt layouts take several rounds and paint between them.

    _stood: object = None
    _announced: object = None
    _settled: object = None

    @abstractmethod
    def places_at(self, width: int) -> Places:
        """Where each widget stands at this width, and the height of all: the same object until something changes."""

    def hasHeightForWidth(self) -> bool:
        """What stands in it wraps."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all that stands in it."""
        return self.places_at(width)[1]

    def put_in_place(self) -> None:
        """Every widget stands where it was measured to stand."""
        own: Any = self
        places = self.places_at(own.width())
        if places is not self._stood:
            self._stood = places
            for widget, rect in places[0]:
                widget.setGeometry(rect)
                if isinstance(widget, Placing):
                    widget.put_in_place()

    def settle(self) -> None:
        """Every widget stands in its place, and whoever lays this one out knows its size."""
        own: Any = self
        if own.isHidden() or self._settled is self._sizes is not None:
            return
        self.put_in_place()
        high, nested = self.heightForWidth(own.width()), isinstance(own.parentWidget(), Placing)
        # What stands in another of its kind is asked for its least width there, if it is asked at all.
        now = (None if nested else own.minimumSizeHint(), high, own.width())
        if now != self._announced:
            self._announced = now
            if not nested or high != own.height():
                _forget(own.parentWidget())
                QWidget.updateGeometry(own)
        self._settled = self._sizes

    def settle_soon(self) -> None:
        """What stands in it changed: it is measured anew, and settled before anything is painted."""
        self.forget()
        QApplication.postEvent(self, QEvent(QEvent.Type.LayoutRequest))  # type: ignore[arg-type]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may ask for other lines."""
        super().resizeEvent(event)  # type: ignore[misc]
        self.put_in_place()

    def event(self, event: QEvent) -> bool:
        """A widget that needs another size, comes or goes moves the others."""
        if event.type() == QEvent.Type.LayoutRequest:
            own: Any = self
            if not all(isinstance(widget, Measured) for widget, _ in self.places_at(own.width())[0]):
                self.forget()
            self.settle()
        return bool(super().event(event))  # type: ignore[misc]


def height_at(widget: QWidget, width: int) -> int:
    """The height that the widget needs at this width, within its own bounds."""
    high = widget.heightForWidth(width) if widget.hasHeightForWidth() else widget.sizeHint().height()
    return min(max(high, widget.minimumHeight()), widget.maximumHeight())


def least_width(widget: QWidget) -> int:
    """The width below which the widget does not shrink."""
    least = widget.minimumSizeHint().width()
    if not may(widget, QSizePolicy.PolicyFlag.ShrinkFlag):
        least = max(least, widget.sizeHint().width())
    return max(least, widget.minimumWidth())


def may(widget: QWidget, flag: QSizePolicy.PolicyFlag) -> bool:
    """Whether the widget may grow or shrink in width."""
    return flag in _FLAGS[widget.sizePolicy().horizontalPolicy()]


_FLAGS = {
    policy: {flag for flag in (QSizePolicy.PolicyFlag.GrowFlag, QSizePolicy.PolicyFlag.ShrinkFlag)
             if policy.value & flag.value}
    for policy in QSizePolicy.Policy
}  # fmt: skip
