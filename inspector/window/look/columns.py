"""Columns beside one another that become one where there is no room, and what stands in them."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QSizePolicy, QSpacerItem, QVBoxLayout, QWidget

from inspector.window.look.look import Look
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import HAIR, Hairline

EDGE = 6.0  # from the edge of a column to what stands in it, in millimetres
NARROW_EDGE = 5.0
BLOCK = 4.0  # between blocks
LEAST_REST = 90.0  # the least width of a column that takes the rest, at plain text size
WIDEST_SCALE = 1.3  # above this size of type there is one column


class Column(QWidget):
    """Widgets one under the other, ``gap`` millimetres before each, ``edge`` at both sides."""

    def __init__(self, look: Look, *, edge: float = EDGE, top: float = BLOCK, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self._edge, self._top, self._narrow = look, edge, top, False
        self._gaps: list[tuple[QSpacerItem, float]] = []
        self._box = QVBoxLayout(self)
        self._box.setSpacing(0)
        self._box.addStretch(1)
        look.changed.connect(self.restyle)
        self.restyle()

    def add(self, widget: QWidget, gap: float = BLOCK) -> QWidget:
        """The widget stands below those before it, ``gap`` millimetres away; gives it back."""
        if self._box.count() > 1:
            self.space(gap)
        self._box.insertWidget(self._box.count() - 1, widget)
        return widget

    def space(self, gap: float) -> None:
        """What comes next stands this many millimetres lower."""
        item = QSpacerItem(0, self.look.px(gap) if gap else 0, QSizePolicy.Policy.Minimum,
                           QSizePolicy.Policy.Fixed)  # fmt: skip
        self._gaps.append((item, gap))
        self._box.insertItem(self._box.count() - 1, item)

    def fill(self, widget: QWidget, gap: float = BLOCK) -> QWidget:
        """As `add`, and the widget takes all the height that is left."""
        self.add(widget, gap)
        self._box.setStretchFactor(widget, 100)
        return widget

    def clear(self) -> None:
        """Nothing stands in the column; what stood there is deleted."""
        _empty(self._box, 1)
        self._gaps.clear()

    def widgets(self) -> list[QWidget]:
        """All that stands in the column, from the top."""
        items = [self._box.itemAt(n) for n in range(self._box.count())]
        found = [item.widget() for item in items if item is not None]
        return [widget for widget in found if widget is not None]

    def set_narrow(self, narrow: bool) -> None:
        """In the one column of a narrow window all edges are alike."""
        self._narrow = narrow
        self.restyle()

    def restyle(self) -> None:
        """Edges and gaps are millimetres of the look that holds now."""
        wide = min(self._edge, NARROW_EDGE) if self._narrow else self._edge
        edge = self.look.px(wide) if wide else 0
        top = self.look.px(self._top) if self._top else 0
        self._box.setContentsMargins(edge, top, edge, top)
        for item, gap in self._gaps:
            high = self.look.px(gap) if gap else 0
            item.changeSize(0, high, QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)
        self._box.invalidate()


class Columns(QWidget):
    """Widgets beside one another, each scrolling by itself, parted by hairlines.

    ``columns`` are (widget, width in millimetres), 0 for what takes the rest. In portrait, or with
    large type, there is one column that scrolls as a whole: the fixed ones side by side on top if
    there is room for that and ``beside`` is wanted, then the rest; ``narrowChanged`` says so.
    """

    narrowChanged = Signal(bool)

    def __init__(
        self, look: Look, columns: Sequence[tuple[QWidget, float]], *, beside: bool = True,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._columns, self._beside = look, list(columns), beside
        self._form = ""
        self._box = QHBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(0)
        self._scrolls: list[Scroll] = []
        look.changed.connect(self._arrange)
        self._arrange()

    @property
    def narrow(self) -> bool:
        """Whether there is one column."""
        return self._form != "wide"

    def form(self) -> str:
        """What fits now: "wide", "beside" (one column, the fixed ones side by side) or "one"."""
        width = self.width() / self.look.mm(1)
        scale = self.look.text_scale
        fixed = [wide for _, wide in self._columns if wide]
        rest = LEAST_REST * scale * (len(self._columns) - len(fixed))
        if scale <= WIDEST_SCALE and width >= sum(fixed) + rest:
            return "wide"
        together = len(fixed) > 1 and self._beside and width >= sum(fixed) * scale
        return "beside" if together else "one"

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may ask for another form."""
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        form = self.form()
        if form == self._form:
            self._measure()
            return
        was_narrow, self._form = self.narrow if self._form else None, form
        for widget, _ in self._columns:
            widget.setParent(None)
            if isinstance(widget, Column):
                widget.set_narrow(form != "wide")
        # Only now: what held them in one column goes as soon as it is released.
        for scroll in self._scrolls:
            scroll.release()
        self._scrolls.clear()
        _empty(self._box)
        if form == "wide":
            self._put_wide()
        else:
            self._put_narrow(form == "beside")
        self._measure()
        if was_narrow != self.narrow:
            self.narrowChanged.emit(self.narrow)

    def _put_wide(self) -> None:
        for number, (widget, wide) in enumerate(self._columns):
            if number:
                line = _upright(self.look)
                self._box.addWidget(line)
                line.show()
            scroll = Scroll(self.look, widget)
            self._scrolls.append(scroll)
            self._box.addWidget(scroll, 0 if wide else 1)
            scroll.show()

    def _put_narrow(self, beside: bool) -> None:
        whole = QWidget()
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        fixed = [widget for widget, wide in self._columns if wide]
        first = fixed if beside else []
        if first:
            row = QHBoxLayout()
            row.setSpacing(0)
            for widget, wide in self._columns:
                if wide:
                    row.addWidget(widget, round(wide))
            rows.addLayout(row)
            rows.addWidget(Hairline(self.look))
        for widget, _ in self._columns:
            if widget not in first:
                rows.addWidget(widget)
            widget.show()
        rows.addStretch(1)
        scroll = Scroll(self.look, whole)
        self._scrolls.append(scroll)
        self._box.addWidget(scroll, 1)
        scroll.show()

    def _measure(self) -> None:
        if self._form != "wide":
            return
        for scroll, (_, wide) in zip(self._scrolls, self._columns, strict=True):
            if wide:
                scroll.setFixedWidth(self.look.px(wide))


def _empty(box: QBoxLayout, keep: int = 0) -> None:
    """All but the last ``keep`` items leave the box; their widgets are deleted."""
    while box.count() > keep:
        item = box.takeAt(0)
        widget = item.widget() if item is not None else None
        if widget is not None:
            widget.hide()
            widget.deleteLater()


def _upright(look: Look) -> QWidget:
    line = Hairline(look)
    line.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
    line.setFixedWidth(look.px(HAIR))
    return line
