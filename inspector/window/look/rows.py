"""Rows across a column: what opens has an arrow at the right and a hairline below."""

from abc import abstractmethod
from typing import Any

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.press import TARGET, Pressable
from inspector.window.look.signs import paint_sign, sign_share, sign_width
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import HAIR
from inspector.window.look.type import RIGHT

ABOVE = 1.3  # above and below the text of a row, in millimetres
ARROW = 5.0
ARROW_ROOM = 5.5
CURRENT = 1.5  # width of the bar at the row one is at
BETWEEN = 2.6


class BaseRow(Pressable):
    """What rows share: the hairline, the arrow, the tray and bar of the row one is at.

    ``edge`` is what is kept free at both sides, in millimetres, for rows as wide as their column.
    A row that only chooses among its like has no ``arrow``; one that does not open cannot be pressed.
    """

    def __init__(
        self, look: Look, *, opens: bool = True, arrow: bool = True, edge: float = 0.0,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, parent)
        self.opens, self.edge, self._current, self._with_arrow = True, edge, False, arrow
        self.arrow = arrow
        self.be_open(opens)

    def be_open(self, opens: bool) -> None:
        """The row opens something and can be pressed, or does not and cannot."""
        if opens == self.opens:
            return
        self.opens, self.arrow = opens, self._with_arrow and opens
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if opens else Qt.FocusPolicy.NoFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, not opens)
        self.restyle()

    @property
    def current(self) -> bool:
        """Whether this is the row one is at."""
        return self._current

    def set_current(self, current: bool) -> None:
        """The row is, or is not, the one that one is at: tray, bar and semibold."""
        if current == self._current:
            return
        self._current = current
        self.setCheckable(current)
        self.setChecked(current)
        self.restyle()

    def inner(self, width: float) -> QRectF:
        """The room between the edges and left of the arrow, as high as the row."""
        edge = self.look.mm(self.edge)
        arrow = self.look.grown(ARROW_ROOM) if self.arrow else 0
        return QRectF(edge, 0, max(width - 2 * edge - arrow, 1.0), self.height())

    @abstractmethod
    def content_height(self, width: float) -> float:
        """The height of what stands in the row when the inner room is this wide, in pixels."""

    @abstractmethod
    def paint_content(self, painter: QPainter, room: QRectF) -> None:
        """What stands in the row is drawn in ``room``."""

    @measured
    def heightForWidth(self, width: int) -> int:
        """The height that its text and a finger need."""
        content = self.content_height(self.inner(width).width())
        return max(round(content + 2 * self.look.grown(ABOVE)), self.look.least(TARGET))

    def minimumSizeHint(self) -> QSize:
        """At least a finger's width and height."""
        return QSize(self.look.least(TARGET), self.look.least(TARGET))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws tray and bar where they belong, the content, the arrow and the hairline."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        edge, hair = round(self.look.mm(self.edge)), self.look.px(HAIR)
        if self._current or self.isDown():
            painter.fillRect(self.rect(), self.look.colour("tray"))
        if self._current:
            bar = QRectF(0, 0, self.look.mm(CURRENT), self.height())
            painter.fillRect(bar, self.look.colour("ink"))
        left = 0 if self._current else edge
        line = QRectF(left, self.height() - hair, self.width() - left, hair)
        painter.fillRect(line, self.look.colour("rule"))
        self.paint_content(painter, self.inner(self.width()))
        if self.arrow:
            self._paint_arrow(painter, edge)
        painter.end()

    def _paint_arrow(self, painter: QPainter, edge: float) -> None:
        size = self.look.grown(ARROW)
        # The arrow's own field is wider than its stroke: its tip is to end at the edge.
        left = self.width() - edge - size * 0.72
        box = QRectF(left, (self.height() - size) / 2, size, size)
        ink = "soft" if self.off else "ink" if self.isDown() else "line"
        paint_sign(painter, box, "right", self.look.inks, self.look.colour(ink))


class Row(BaseRow):
    """A row of up to four parts from left to right: sign, ``lead``, text and ``aside``.

    The text is a ``label`` in small over the title over a ``second`` line, each if given. The aside
    stands at the right, semibold or (``aside_soft``) soft, with its own sign before it. ``strong``
    sets the title semibold, as it is under a label if nothing is said. ``say`` replaces parts.
    """

    def __init__(
        self, look: Look, title: str = "", *, opens: bool = True, arrow: bool = True,
        edge: float = 0.0, parent: QWidget | None = None, **parts: Any,
    ) -> None:  # fmt: skip
        super().__init__(look, opens=opens, arrow=arrow, edge=edge, parent=parent)
        self.title = title
        self.label = self.second = self.lead = self.sign = self.second_sign = ""
        self.aside = self.aside_sign = ""
        self.step, self.zero, self.aside_soft = "text", False, False
        self.strong: bool | None = None
        self.say(**parts)

    def say(self, title: str | None = None, **parts: Any) -> None:
        """What is given replaces what stood in the row; raises AttributeError for no such part."""
        given = parts if title is None else {"title": title, **parts}
        if self.accessibleName() and all(getattr(self, name) == value for name, value in given.items()):
            return
        for name, value in given.items():
            getattr(self, name)
            setattr(self, name, value)
        words = (self.lead, self.label, self.title, self.second, self.aside)
        self.setAccessibleName(", ".join(word for word in words if word))
        self.restyle()

    def _strong(self) -> bool:
        plain = bool(self.label) if self.strong is None else self.strong
        return plain or self.current

    @measured
    def _text(self) -> Stack:
        ink = "soft" if self.off else "ink"
        return Stack(self.look, (
            Part(self.label, "small", False, "soft"),
            Part(self.title, self.step, self._strong(), ink),
            Part(self.second, "small", False, "soft"),
        ))  # fmt: skip

    @measured
    def _aside(self) -> Stack:
        heavy, ink = not self.aside_soft, "soft" if self.aside_soft else "ink"
        return Stack(self.look, (Part(self.aside, "text", heavy, ink),))

    def _sign_size(self, sign: str) -> QSize:
        if not sign:
            return QSize(0, 0)
        high = self.look.font().pixelSize() * sign_share(sign)
        return QSize(round(sign_width(sign, high)), round(high))

    def _before(self) -> float:
        """What sign and lead take at the left, in pixels."""
        gap = self.look.mm(BETWEEN)
        taken = self._sign_size(self.sign).width() + gap if self.sign else 0.0
        if self.lead:
            taken += max(self.look.words(self.lead, "text", True).natural + gap, self.look.grown(6))
        return taken

    def _after(self, width: float) -> float:
        """What aside and its sign take at the right, in pixels; never more than half."""
        if not self.aside and not self.aside_sign:
            return 0.0
        sign = self._sign_size(self.aside_sign).width()
        wide = self._aside().natural + (sign + self.look.mm(2) if sign else 0) + 1
        return min(wide, width / 2)

    def _text_room(self, width: float) -> float:
        after = self._after(width)
        return max(width - self._before() - after - (self.look.mm(BETWEEN) if after else 0), 1.0)

    def content_height(self, width: float) -> float:
        """The height of the text, the aside or the sign, whichever is highest."""
        text = self._text_height(self._text_room(width))
        aside = self._aside().height(max(self._after(width) - self._aside_sign_room(), 1.0))
        return max(text, aside, float(self._sign_size(self.sign).height()))

    def _text_height(self, width: float) -> float:
        """The height of label, title and second line, of which only the last stands beside its sign."""
        text = self._text()
        if not self.second_sign:
            return text.height(width)
        upper, lower = Stack(self.look, text.parts[:-1]), Stack(self.look, text.parts[-1:])
        return upper.height(width) + lower.height(width - self._second_indent())

    def _second_indent(self) -> float:
        return self._sign_size(self.second_sign).width() + self.look.mm(2) if self.second_sign else 0

    def _aside_sign_room(self) -> float:
        return self._sign_size(self.aside_sign).width() + self.look.mm(2) if self.aside_sign else 0

    @measured
    def sizeHint(self) -> QSize:
        """The width at which nothing wraps."""
        text = self._text().natural + self._second_indent()
        wide = text + self._before() + self._aside().natural + self._aside_sign_room()
        wide += self.look.grown(ARROW_ROOM) + self.look.mm(2 * self.edge + BETWEEN) + 2
        return QSize(round(wide), self.heightForWidth(round(wide)))

    def paint_content(self, painter: QPainter, room: QRectF) -> None:
        """Draws sign, lead, text and aside in the middle of the row's height."""
        text_room = self._text_room(room.width())
        left = room.x() + self._before()
        if self.sign:
            box = _middle(room.x(), self._sign_size(self.sign), room)
            paint_sign(painter, box, self.sign, self.look.inks)
        self._paint_text(painter, QRectF(left, room.y(), text_room, room.height()))
        if self.lead:
            words = self.look.words(self.lead, "text", True)
            text = self._text()
            top = round(room.center().y() - text.height(text_room - self._second_indent()) / 2)
            first = room.x() + (self._before() - self._lead_room())
            words.paint(painter, QRectF(first, top, self._lead_room(), words.leading),
                        self.look.colour("ink"))  # fmt: skip
        self._paint_aside(painter, room)

    def _lead_room(self) -> float:
        gap = self.look.mm(BETWEEN)
        return max(self.look.words(self.lead, "text", True).natural + gap, self.look.grown(6))

    def _paint_text(self, painter: QPainter, room: QRectF) -> None:
        text = self._text()
        if not self.second_sign:
            text.paint(painter, room)
            return
        upper, lower = Stack(self.look, text.parts[:-1]), Stack(self.look, text.parts[-1:])
        indent = self._second_indent()
        high, low = upper.height(room.width()), lower.height(room.width() - indent)
        top = room.center().y() - (high + low) / 2
        upper.paint(painter, QRectF(room.x(), top, room.width(), high))
        foot = QRectF(room.x() + indent, top + high, room.width() - indent, low)
        lower.paint(painter, foot)
        box = _middle(room.x(), self._sign_size(self.second_sign), foot)
        paint_sign(painter, box, self.second_sign, self.look.inks)

    def _paint_aside(self, painter: QPainter, room: QRectF) -> None:
        after = self._after(room.width())
        if not after:
            return
        # A sign before the arrow wants a little air.
        left = room.right() - after - (self.look.mm(0.6) if self.arrow else 0)
        if self.aside_sign:
            box = _middle(left, self._sign_size(self.aside_sign), room)
            paint_sign(painter, box, self.aside_sign, self.look.inks)
        taken = self._aside_sign_room()
        place = QRectF(left + taken, room.y(), after - taken, room.height())
        self._aside().paint(painter, place, RIGHT)


def _middle(left: float, size: QSize, room: QRectF) -> QRectF:
    """A box of this size at ``left``, midway in the height of ``room``."""
    top = room.y() + (room.height() - size.height()) / 2
    return QRectF(left, top, size.width(), size.height())
