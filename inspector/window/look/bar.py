"""The bar of pages, and the frame that puts it on top or, in portrait, at the foot."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from inspector.texts import tr
from inspector.window.look.inks import palette
from inspector.window.look.keys import Key, paint_ground
from inspector.window.look.look import Look
from inspector.window.look.press import TARGET, Pressable
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import THICK, Text
from inspector.window.look.type import CENTRE

HIGH = 13.2  # of the bar on top, in millimetres
FOOT = 14.0  # of a line of pages at the foot
EDGE = 5.0
AROUND = 4.0  # at both sides of a page's name
THICK_BAR = 1.4  # of the bar at the page one is on
Page = tuple[str, str, bool, str]  # id, word, whether it can be opened, why it cannot


class BareKey(Key):
    """A key of one sign without an outline; its ground shows only while it is pressed."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the sign, on tray while pressed, soft over a dotted line while off."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.state == "pressed":
            paint_ground(painter, QRectF(self.rect()), self.look, "pressed")
        if self.off:
            sign = self.look.grown(6)
            middle = QPoint(self.rect().center().x() - sign // 2, self.height() // 2)
            _dotted(painter, self.look, QRectF(middle, QSize(sign, sign // 2 + self.look.px(1.2))))
        self._paint_content(painter, None)
        painter.end()


class PageName(Pressable):
    """The name of a page: current has a thick bar on the ruled edge, off a dotted line below."""

    def __init__(self, look: Look, page: str, word: str, parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self.page, self.word, self.ruled = page, word, "foot"
        self.setAccessibleName(word)
        self.setCheckable(True)

    def set_current(self, current: bool) -> None:
        """The page is, or is not, the one that is open."""
        self.setChecked(current)
        self.update()

    def _stack(self) -> Stack:
        current = self.isChecked()
        return Stack(self.look, (Part(self.word, "text", current, "ink" if current else "soft"),))

    def sizeHint(self) -> QSize:
        """The name in semibold with room around it, at least a finger wide."""
        wide = self.look.words(self.word, "text", True).natural + 2 * self.look.mm(AROUND)
        least = self.look.least(TARGET)
        return QSize(max(round(wide), least), max(self.look.least(HIGH), least))

    def heightForWidth(self, width: int) -> int:
        """The height of the bar."""
        return self.sizeHint().height()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the name, and the bar or the dotted line that goes with its state."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.isDown():
            painter.fillRect(self.rect(), self.look.colour("tray"))
        stack, room = self._stack(), QRectF(self.rect())
        wide, high = stack.natural, stack.height(1e6)
        stack.paint(painter, room, CENTRE)
        reach = self.look.mm(1.2)
        left = (self.width() - wide) / 2 - reach
        if self.off:
            below = QRectF(left, (self.height() - high) / 2, wide + 2 * reach, high + reach)
            _dotted(painter, self.look, below)
        if self.isChecked():
            thick = self.look.mm(THICK_BAR)
            top = self.height() - thick if self.ruled == "foot" else 0
            bar = QRectF(left, top, wide + 2 * reach, thick)
            painter.fillRect(bar, self.look.colour("ink"))
        painter.end()


def _dotted(painter: QPainter, look: Look, above: QRectF) -> None:
    """A dotted line stands at the foot of ``above``."""
    pen = QPen(look.colour("line"), look.mm(0.34))
    pen.setDashPattern([3.2, 1.7])
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    foot = round(above.bottom()) - 0.5
    painter.drawLine(QRectF(above.x(), foot, above.width(), 0).topLeft(),
                     QRectF(above.x(), foot, above.width(), 0).topRight())  # fmt: skip


class PageBar(QWidget):
    """The names of the pages, on one line if they fit; ``pageChosen(id)`` tells of a touch.

    A page that cannot be opened says why when it is touched. ``ruled`` is the edge with the line.
    """

    pageChosen = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.names: list[PageName] = []
        self._current = ""
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self._again)

    def set_pages(self, pages: Sequence[Page]) -> None:
        """There is a name for each page; names that stay the same are kept with their focus."""
        if [(n.page, n.word) for n in self.names] != [(page[0], page[1]) for page in pages]:
            for name in self.names:
                name.hide()
                name.deleteLater()
            self.names = [self._name(page, word) for page, word, _, _ in pages]
        for name, (_, _, enabled, reason) in zip(self.names, pages, strict=True):
            name.turn_off("" if enabled else reason or tr("This page has nothing to show yet."))
        self.set_current(self._current)
        self._again()

    def _name(self, page: str, word: str) -> PageName:
        name = PageName(self.look, page, word, self)
        name.clicked.connect(self._clicked)
        name.show()
        return name

    def name(self, page: str) -> PageName:
        """The name of the page with this id; raises KeyError where there is none."""
        for name in self.names:
            if name.page == page:
                return name
        raise KeyError(page)

    def set_current(self, page: str) -> None:
        """The page with this id is the open one."""
        self._current = page
        for name in self.names:
            name.set_current(name.page == page)

    def current(self) -> str:
        """The id of the open page."""
        return self._current

    def set_ruled(self, edge: str) -> None:
        """The line of the bar is at its "foot" or its "top"."""
        for name in self.names:
            name.ruled = edge
            name.update()

    def _clicked(self) -> None:
        name = self.sender()
        if isinstance(name, PageName):
            self.pageChosen.emit(name.page)

    def natural(self) -> int:
        """The width of all names on one line, in pixels."""
        return sum(name.sizeHint().width() for name in self.names)

    def _lines(self, width: int) -> list[list[PageName]]:
        lines: list[list[PageName]] = []
        used = width + 1
        for name in self.names:
            wide = name.sizeHint().width()
            if used + wide > width:
                lines.append([])
                used = 0
            lines[-1].append(name)
            used += wide
        return lines

    def hasHeightForWidth(self) -> bool:
        """Names wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all lines."""
        high = max((name.sizeHint().height() for name in self.names), default=0)
        return max(len(self._lines(width)), 1) * high

    def sizeHint(self) -> QSize:
        """All names on one line."""
        return QSize(self.natural(), self.heightForWidth(self.natural()))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Puts the names in their places."""
        super().resizeEvent(event)
        self._settle()

    def _settle(self) -> None:
        lines = self._lines(self.width())
        high = self.height() // max(len(lines), 1)
        for number, line in enumerate(lines):
            spare = max(self.width() - sum(n.sizeHint().width() for n in line), 0)
            left = 0.0
            for name in line:
                right = left + name.sizeHint().width() + spare / len(line)
                place = QRect(round(left), number * high, round(right) - round(left), high)
                name.setGeometry(place)
                left = right

    def _again(self) -> None:
        self.updateGeometry()
        self._settle()


class PageFrame(QWidget):
    """The whole window: machine, pages, "kept 10:42" and undo round whatever page is open.

    Pages stand on top beside the machine's name, or at the foot in portrait and where they would
    not fit. ``pageChosen(id)`` tells of a page that was touched; ``undo`` is a key.
    """

    pageChosen = Signal(str)

    def __init__(self, look: Look, body: QWidget | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setAutoFillBackground(True)
        self._top, self._foot = _Strip(look, "foot"), _Strip(look, "top")
        self._name = Text(look, semibold=True, wrap=False, parent=self._top)
        self._second = Text(look, step="small", ink="soft", wrap=False, parent=self._top)
        self._kept = Text(look, step="small", ink="soft", wrap=False, parent=self._top)
        self.undo = BareKey(look, sign="undo", name=tr("undo"), parent=self._top)
        self.bar = PageBar(look, self._top)
        self.bar.pageChosen.connect(self.pageChosen)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(0)
        self._box.addWidget(self._top)
        self._box.addWidget(self._foot)
        self._body: QWidget | None = None
        self._machine = ("", "")
        look.changed.connect(self.arrange)
        if body is not None:
            self.set_body(body)
        self.arrange()

    def set_body(self, body: QWidget) -> None:
        """This is what stands between the bars; the one before is let go, not deleted."""
        if self._body is not None:
            self._box.removeWidget(self._body)
            self._body.setParent(None)
        self._body = body
        self._box.insertWidget(1, body, 1)

    def set_pages(self, pages: Sequence[Page]) -> None:
        """The pages are these: id, word, whether it can be opened, why it cannot."""
        self.bar.set_pages(pages)
        self.arrange()

    def set_current(self, page: str) -> None:
        """The page with this id is the open one."""
        self.bar.set_current(page)

    def set_machine(self, name: str, second: str = "") -> None:
        """The machine's name, and below it what it is claimed to be; each cut short where it must be."""
        self._machine = (name, second)
        self.arrange()

    def set_kept(self, text: str) -> None:
        """When the last change was kept, as in "kept 10:42"."""
        self._kept.say(text)
        self.arrange()

    @property
    def pages_at_foot(self) -> bool:
        """Whether the pages stand at the foot."""
        return self.bar.parentWidget() is self._foot

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size may put the pages elsewhere."""
        super().resizeEvent(event)
        self.arrange()

    def arrange(self) -> None:
        """Everything in the bars stands where it fits now, on paper."""
        self.setPalette(palette(self.look.inks))
        high = self.look.least(HIGH)
        self._top.setFixedHeight(high)
        right = self._place_kept(high)
        left = self._place_machine(high, right)
        fits = left + self.bar.natural() + self.look.px(4) <= right
        self._place_pages(fits and self.width() >= self.height(), left, right)
        self._box.activate()

    def _place_machine(self, high: int, right: int) -> int:
        """Gives the right end of the machine's name, in pixels; it ends before ``right``."""
        edge = self.look.px(EDGE)
        for text, words in zip((self._name, self._second), self._machine, strict=True):
            _say_short(text, words, max(right - 2 * edge, 1))
        name, second = self._name.sizeHint(), self._second.sizeHint()
        below = second.height() if self._second.words else 0
        top = (high - name.height() - below) // 2
        self._name.setGeometry(edge, top, name.width(), name.height())
        self._second.setGeometry(edge, top + name.height(), second.width(), second.height())
        self._second.setVisible(bool(below))
        return edge + max(name.width(), second.width())

    def _place_kept(self, high: int) -> int:
        """Gives the left end of "kept 10:42", in pixels."""
        side = max(self.look.least(TARGET), self.undo.sizeHint().width())
        left = self.width() - side - self.look.px(EDGE - 1.5)
        self.undo.setGeometry(left, (high - side) // 2, side, side)
        size = self._kept.sizeHint()
        left -= size.width() + self.look.px(3)
        self._kept.setGeometry(left, (high - size.height()) // 2, size.width(), size.height())
        return left

    def _place_pages(self, on_top: bool, left: int, right: int) -> None:
        home = self._top if on_top else self._foot
        if self.bar.parentWidget() is not home:
            self.bar.setParent(home)
            self.bar.show()
        self.bar.set_ruled("foot" if on_top else "top")
        if on_top:
            wide = self.bar.natural()
            middle = min(max((self.width() - wide) // 2, left + self.look.px(3)), right - wide)
            self.bar.setGeometry(middle, 0, wide, self._top.height())
            self._foot.setFixedHeight(0)
        else:
            high = self.bar.heightForWidth(self.width())
            self._foot.setFixedHeight(max(high, self.look.least(FOOT)))
            self.bar.setGeometry(0, 0, self.width(), self._foot.height())
        self._foot.setVisible(not on_top)


def _say_short(text: Text, words: str, room: int) -> None:
    """The text says as much of the words as has room on its line; all of them to whoever does not see it."""
    text.say(words)
    if text.sizeHint().width() > room:
        short = QFontMetricsF(text.styled()).elidedText(words, Qt.TextElideMode.ElideRight, room - 1)
        text.say(short)
        text.setAccessibleName(words)
    text.setToolTip(words if text.words != words else "")


class _Strip(QWidget):
    """A strip of paper with a line of ink along one edge."""

    def __init__(self, look: Look, edge: str) -> None:
        super().__init__()
        self.look, self._edge = look, edge
        look.changed.connect(self.update)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the line along its edge."""
        painter = QPainter(self)
        thick = self.look.px(THICK)
        top = self.height() - thick if self._edge == "foot" else 0
        painter.fillRect(self.rect(), self.look.colour("paper"))
        painter.fillRect(0, top, self.width(), thick, self.look.colour("ink"))
        painter.end()
