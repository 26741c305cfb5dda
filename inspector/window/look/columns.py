"""Columns beside one another that become one where there is no room, and what stands in them."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import ceil

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QSizePolicy, QWidget

from inspector.window.look.footed import Footed
from inspector.window.look.look import Look
from inspector.window.look.measured import Places, Placing, height_at, least_width, may, measured
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import HAIR, Hairline

EDGE = 6.0  # from the edge of a column to what stands in it, in millimetres
NARROW_EDGE = 5.0
BLOCK = 4.0  # between blocks
LEAST_REST = 90.0  # the least width of a column that takes the rest, at plain text size
WIDEST_SCALE = 1.3  # above this size of type there is one column


class Column(Placing, QWidget):
    """Widgets one under the other, ``gap`` millimetres before each, ``edge`` at both sides.

    ``top`` is kept free above them, and below them too unless ``foot`` says otherwise.
    """

    stands_for: QWidget | None = None  # as the foot of another column: the last thing there that it repeats

    def __init__(
        self, look: Look, *, edge: float = EDGE, top: float = BLOCK, foot: float | None = None,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._edge, self._top, self._narrow = look, edge, top, False
        self._below = top if foot is None else foot
        self._entries: list[tuple[QWidget, float, bool]] = []  # widget, gap, and whether it grows in width
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)

    def add(self, widget: QWidget, gap: float = BLOCK) -> QWidget:
        """The widget stands below those before it, ``gap`` millimetres away; gives it back."""
        return self.insert(len(self._entries), widget, gap)

    def insert(self, at: int, widget: QWidget, gap: float = BLOCK) -> QWidget:
        """The widget stands at this place in the column, ``gap`` millimetres below the one before; gives it back."""
        self._entries.insert(at, (widget, gap, may(widget, QSizePolicy.PolicyFlag.GrowFlag)))
        hidden = widget.isHidden() and widget.testAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide)
        widget.setParent(self)
        widget.setVisible(not hidden)
        self.settle_soon()
        return widget

    def take(self, widget: QWidget) -> None:
        """The widget stands in the column no longer; it is let go, not deleted."""
        self._entries = [entry for entry in self._entries if entry[0] is not widget]
        self.settle_soon()

    def clear(self) -> None:
        """Nothing stands in the column; what stood there is deleted."""
        for widget, *_ in self._entries:
            widget.hide()
            widget.deleteLater()
        self._entries.clear()
        self.settle_soon()

    def widgets(self) -> list[QWidget]:
        """All that stands in the column, from the top."""
        return [widget for widget, *_ in self._entries]

    def set_narrow(self, narrow: bool) -> None:
        """In the one column of a narrow window all edges are alike."""
        self._narrow = narrow
        self.restyle()

    def restyle(self) -> None:
        """Edges and gaps are millimetres of the look that holds now."""
        self.settle_soon()

    # how large it is

    def _sides(self) -> tuple[int, int, int]:
        """What is kept free at both sides, above and below, in pixels."""
        wide = min(self._edge, NARROW_EDGE) if self._narrow else self._edge
        edge, top, foot = (self.look.px(free) if free else 0 for free in (wide, self._top, self._below))
        return edge, top, foot

    @measured
    def places_at(self, width: int) -> Places:
        """Where each widget stands at this width, and the height of all of them."""
        edge, foot, below = self._sides()
        places: list[tuple[QWidget, QRect]] = []
        inner = max(width - 2 * edge, 1)
        for widget, gap, grows in self._entries:
            if not widget.isHidden():
                foot += self.look.px(gap) if places and gap else 0
                wide = min(inner if grows else widget.sizeHint().width(), inner, widget.maximumWidth())
                high = height_at(widget, wide)
                places.append((widget, QRect(edge, foot, wide, high)))
                foot += high
        return places, foot + below

    def sizeHint(self) -> QSize:
        """As wide as it must be, and as high as it is at the width that it has."""
        least = self.minimumSizeHint().width()
        return QSize(least, self.heightForWidth(max(self.width(), least)))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width that each of them needs at least."""
        least = (least_width(widget) for widget, *_ in self._entries if not widget.isHidden())
        wide = max(least, default=0) + 2 * self._sides()[0]
        return QSize(wide, 0)


class Abreast(Placing, QWidget):
    """Widgets beside one another from edge to edge, all as high as the highest, their widths in given shares."""

    def __init__(self, look: Look, columns: Sequence[tuple[QWidget, float]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self._columns = look, list(columns)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        for widget, _ in self._columns:
            widget.setParent(self)
        look.changed.connect(self.settle_soon)

    @measured
    def places_at(self, width: int) -> Places:
        """Each beside the one before, the last to the right edge, and the height of the highest."""
        whole, so_far = sum(share for _, share in self._columns), 0.0
        edges = [0]
        for _, share in self._columns:
            so_far += share
            edges.append(round(width * so_far / whole))
        wides = [max(right - left, 1) for left, right in pairwise(edges)]
        high = max(height_at(widget, wide) for (widget, _), wide in zip(self._columns, wides, strict=True))
        places = zip(self._columns, edges, wides, strict=False)
        return [(widget, QRect(left, 0, wide, high)) for (widget, _), left, wide in places], high

    @measured
    def sizeHint(self) -> QSize:
        """As wide as they must be, and as high as the highest at the width that it has."""
        least = self.minimumSizeHint().width()
        return QSize(least, self.heightForWidth(max(self.width(), least)))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width in which each has what it needs at least."""
        whole = sum(share for _, share in self._columns)
        return QSize(max(ceil(least_width(widget) * whole / share) for widget, share in self._columns), 0)


class Columns(QWidget):
    """Widgets beside one another, each scrolling by itself, parted by hairlines.

    ``columns`` are (widget, width in millimetres), 0 for what takes the rest. In portrait, or with
    large type, there is one column that scrolls as a whole: the fixed ones side by side on top if
    there is room for that and ``beside`` is wanted, then the rest; ``narrowChanged`` says so.
    ``over`` stands above all of that one column, and nowhere else. ``feet`` are what stands below a
    column, while there are several, as long as not all of the column is in sight.
    """

    narrowChanged = Signal(bool)

    def __init__(
        self, look: Look, columns: Sequence[tuple[QWidget, float]], *, beside: bool = True,
        over: QWidget | None = None, feet: Mapping[QWidget, QWidget] | None = None, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._columns, self._beside = look, list(columns), beside
        self._over, self._feet = over, dict(feet or {})
        self._form = ""
        self._box = QHBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(0)
        self._scrolls: list[Scroll] = []
        self._widths: list[tuple[QWidget, float]] = []
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
        self._loosen(form)
        if form == "wide":
            self._put_wide()
        else:
            self._put_narrow(form == "beside")
        self._measure()
        if was_narrow != self.narrow:
            self.narrowChanged.emit(self.narrow)

    def _loosen(self, form: str) -> None:
        """What stood in the form before is free to stand in this one."""
        for loose in (self._over, *self._feet.values()):
            if loose is not None:
                loose.setParent(None)
        for widget, _ in self._columns:
            widget.setParent(None)
            if isinstance(widget, Column):
                widget.set_narrow(form != "wide")
        # Only now: what held them in one column goes as soon as it is released.
        for scroll in self._scrolls:
            scroll.release()
        self._scrolls.clear()
        self._widths.clear()
        _empty(self._box)

    def _put_wide(self) -> None:
        for number, (widget, wide) in enumerate(self._columns):
            if number:
                line = _upright(self.look)
                self._box.addWidget(line)
                line.show()
            scroll = Scroll(self.look, widget)
            self._scrolls.append(scroll)
            foot = self._feet.get(widget)
            column = Footed(scroll, foot) if foot is not None else scroll
            self._widths.append((column, wide))
            self._box.addWidget(column, 0 if wide else 1)
            column.show()

    def _put_narrow(self, beside: bool) -> None:
        # Of our own kind down to the last: a Qt layout would ask what stands in it for its height at other widths too.
        whole = Column(self.look, edge=0, top=0)
        if self._over is not None:
            whole.add(self._over, 0)
        first = [(widget, wide) for widget, wide in self._columns if wide] if beside else []
        if first:
            whole.add(Abreast(self.look, first), 0)
            whole.add(Hairline(self.look), 0)
        for widget, wide in self._columns:
            if (widget, wide) not in first:
                whole.add(widget, 0)
            widget.show()
        scroll = Scroll(self.look, whole)
        self._scrolls.append(scroll)
        self._box.addWidget(scroll, 1)
        scroll.show()

    def _measure(self) -> None:
        if self._form != "wide":
            return
        for column, wide in self._widths:
            if wide:
                column.setFixedWidth(self.look.px(wide))


def _empty(box: QBoxLayout) -> None:
    """All items leave the box; their widgets are deleted."""
    while box.count():
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
