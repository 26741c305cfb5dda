"""Running text that wraps, and the heads that stand over parts of a page."""

from math import ceil

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured, Places, Placing, measured
from inspector.window.look.stack import Part, Stack
from inspector.window.look.type import LEFT, RIGHT, SEMIBOLD, Words

THICK, HAIR = 0.35, 0.22  # of the line under a head and of a hairline, in millimetres
ASIDE_GAP = 1.3  # before what stands at the right of where one is


class Text(Measured, QLabel):
    """Words as plain text, wrapped, lines 1.28 sizes apart; ``lead`` stands before them in semibold.

    ``ink`` is "ink" or "soft"; a lead is always in ink.
    """

    # A label to the system and to its buddy; set by the look, which lays the same words out only once.

    def __init__(
        self, look: Look, text: str = "", *, lead: str = "", step: str = "text",
        semibold: bool | None = None, ink: str = "ink",
        right: bool = False, wrap: bool = True, zero: bool = False, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._step, self._ink, self._zero = look, step, ink, zero
        self._semibold = step in SEMIBOLD if semibold is None else semibold
        self._align, self._wrap = RIGHT if right else LEFT, wrap
        self.words = self.lead = ""
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(wrap)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)
        self.say(text, lead)

    def say(self, text: str, lead: str = "") -> None:
        """The words are these, none of them read as markup."""
        if (text, lead) == (self.words, self.lead):
            return
        self.words, self.lead = text, lead
        self.setAccessibleName(f"{lead} {text}".strip())
        self.restyle()

    def restyle(self) -> None:
        """The words are measured and set again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def styled(self) -> QFont:
        """The font in which the words stand."""
        return self.look.font(self._step, self._semibold, self._zero)

    def _set(self) -> Words:
        return self.look.words(self.words, self._step, self._semibold, self._zero, self.lead)

    def hasHeightForWidth(self) -> bool:
        """Words wrap, unless they are to stand on one line."""
        return self._wrap

    @measured
    def heightForWidth(self, width: int) -> int:
        """The height of all lines at this width."""
        return round(self._set().height(width))

    @measured
    def sizeHint(self) -> QSize:
        """The width at which nothing wraps."""
        words = self._set()
        return QSize(ceil(words.natural) + 1 if words.text else 0, round(words.height(1e6)))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which no word is broken, or no line where none may be."""
        words = self._set()
        least = words.least if self._wrap else words.natural
        return QSize(ceil(least) + 1 if words.text else 0, round(words.leading) if words.text else 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the words, midway between top and foot."""
        words, wide = self._set(), float(self.width()) if self._wrap else max(float(self.width()), 1e4)
        if not words.text:
            return
        painter = QPainter(self)
        top = (self.height() - round(words.height(wide))) // 2
        words.paint(painter, QRectF(0, top, self.width(), self.height()), self.look.colour(self._ink), self._align)
        painter.end()


class Hairline(Measured, QWidget):
    """A line right across that parts one thing from the next and means nothing."""

    def __init__(self, look: Look, *, ink: str = "rule", thick: float = HAIR, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self._ink, self._thick = look, ink, thick
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.restyle)

    def restyle(self) -> None:
        """The line is drawn in the look that holds now."""
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """As high as the line is thick."""
        return QSize(0, self.look.px(self._thick))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Fills the whole of it."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour(self._ink))
        painter.end()


class SectionHead(Measured, QWidget):
    """A semibold title over a line in ink; ``aside`` stands at the right in soft."""

    def __init__(
        self, look: Look, title: str, *, aside: str = "", step: str = "text",
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._step = look, step
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)
        self.say(title, aside)

    def say(self, title: str, aside: str = "") -> None:
        """Title and aside are these."""
        self.title, self.aside = title, aside
        self.setAccessibleName(f"{title} {aside}".strip())
        self.restyle()

    def restyle(self) -> None:
        """The head is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    @measured
    def _stacks(self) -> tuple[Stack, Stack]:
        title = Stack(self.look, (Part(self.title, self._step, True),))
        return title, Stack(self.look, (Part(self.aside, "small", False, "soft"),))

    def _room(self, width: int) -> float:
        aside = self._stacks()[1].natural
        return width - (aside + self.look.mm(3) if aside else 0)

    def hasHeightForWidth(self) -> bool:
        """The title wraps."""
        return True

    @measured
    def heightForWidth(self, width: int) -> int:
        """The title, a gap and the line."""
        text = self._stacks()[0].height(self._room(width))
        return round(text + self.look.grown(1.4) + self.look.px(THICK))

    @measured
    def sizeHint(self) -> QSize:
        """The width at which the title does not wrap."""
        title, aside = self._stacks()
        wide = round(title.natural + aside.natural + self.look.mm(4))
        return QSize(wide, self.heightForWidth(wide))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the title, the aside on its last line, and the line below."""
        painter = QPainter(self)
        title, aside = self._stacks()
        thick = self.look.px(THICK)
        high = self.height() - thick - self.look.grown(1.4)
        title.paint(painter, QRectF(0, 0, self._room(self.width()), high))
        foot = QRectF(0, high - aside.height(1e6), self.width(), aside.height(1e6))
        aside.paint(painter, foot, RIGHT)
        painter.fillRect(0, self.height() - thick, self.width(), thick, self.look.colour("ink"))
        painter.end()


class ItemHead(Placing, QWidget):
    """Where one is, over the name of what is open: "Left side  item 14 of 62 ... about 2 minutes"."""

    def __init__(
        self, look: Look, name: str = "", *, where: str = "", place: str = "", aside: str = "",
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look = look
        self._where = Text(look, ink="soft", parent=self)
        self._aside = Text(look, ink="soft", right=True, wrap=False, parent=self)
        self._name = Text(look, step="name", parent=self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.say(name, where=where, place=place, aside=aside)

    def say(self, name: str, *, where: str = "", place: str = "", aside: str = "") -> None:
        """Name and place are these."""
        self._where.say(f"\u00a0\u00a0{place}" if where and place else place, where)
        self._aside.say(aside)
        self._name.say(name)
        self.setAccessibleName(name)

    @measured
    def places_at(self, width: int) -> Places:
        """The place at the left and the aside at the right, and below them the name."""
        after = min(self._aside.sizeHint().width(), width // 2)
        first = max(width - after - (self.look.px(ASIDE_GAP) if after else 0), 1)
        top = max(self._where.heightForWidth(first), self._aside.sizeHint().height())
        name = self._name.heightForWidth(width)
        places: list[tuple[QWidget, QRect]] = [
            (self._where, QRect(0, 0, first, self._where.heightForWidth(first))),
            (self._aside, QRect(width - after, 0, after, self._aside.sizeHint().height())),
            (self._name, QRect(0, top, width, name)),
        ]
        return places, top + name

    @measured
    def sizeHint(self) -> QSize:
        """The width at which nothing wraps."""
        top = self._where.sizeHint().width() + self._aside.sizeHint().width() + self.look.px(ASIDE_GAP)
        wide = max(top, self._name.sizeHint().width())
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which no word is broken."""
        top = self._where.minimumSizeHint().width() + self._aside.sizeHint().width() + self.look.px(ASIDE_GAP)
        return QSize(max(top, self._name.minimumSizeHint().width()), 0)
