"""Running text that wraps, and the heads that stand over parts of a page."""

from html import escape

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from inspector.window.look.inks import palette
from inspector.window.look.look import Look
from inspector.window.look.stack import Part, Stack
from inspector.window.look.type import LEADING, RIGHT, SEMIBOLD

THICK, HAIR = 0.35, 0.22  # of the line under a head and of a hairline, in millimetres


class Text(QLabel):
    """Words as plain text, wrapped, lines 1.28 sizes apart; ``lead`` stands before them in semibold.

    ``ink`` is "ink" or "soft"; a lead is always in ink. With ``selectable`` it can be copied.
    """

    def __init__(
        self, look: Look, text: str = "", *, lead: str = "", step: str = "text",
        semibold: bool | None = None, ink: str = "ink", selectable: bool = False,
        right: bool = False, wrap: bool = True, zero: bool = False, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._step, self._ink, self._zero = look, step, ink, zero
        self._semibold = step in SEMIBOLD if semibold is None else semibold
        self._right = right
        self.setWordWrap(wrap)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        if selectable:
            self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(wrap)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)
        self.say(text, lead)

    def say(self, text: str, lead: str = "") -> None:
        """The words are these, none of them read as markup."""
        if (text, lead) == (getattr(self, "words", None), getattr(self, "lead", None)):
            return
        self.words, self.lead = text, lead
        self.setAccessibleName(f"{lead} {text}".strip())
        self.restyle()

    def restyle(self) -> None:
        """The words are set again in the look that holds now."""
        font = self.look.font(self._step, self._semibold, self._zero)
        self.setFont(font)
        inks = palette(self.look.inks)
        inks.setColor(QPalette.ColorRole.WindowText, self.look.colour(self._ink))
        self.setPalette(inks)
        lead = ""
        if self.lead:
            ink = self.look.colour("ink").name()
            lead = f'<span style="font-weight:600;color:{ink}">{escape(self.lead)}</span> '
        body = escape(self.words).replace("\n", "<br>")
        side = "right" if self._right else "left"
        high = font.pixelSize() * LEADING
        style = f"margin:0;line-height:{high:.1f}px"
        whole = f'<p align="{side}" style="{style}">{lead}{body}</p>' if lead or body else ""
        self.setText(whole)


class Hairline(QWidget):
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


class SectionHead(QWidget):
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

    def _stacks(self) -> tuple[Stack, Stack]:
        title = Stack(self.look, (Part(self.title, self._step, True),))
        return title, Stack(self.look, (Part(self.aside, "small", False, "soft"),))

    def _room(self, width: int) -> float:
        aside = self._stacks()[1].natural
        return width - (aside + self.look.mm(3) if aside else 0)

    def hasHeightForWidth(self) -> bool:
        """The title wraps."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The title, a gap and the line."""
        text = self._stacks()[0].height(self._room(width))
        return round(text + self.look.grown(1.4) + self.look.px(THICK))

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


class ItemHead(QWidget):
    """Where one is, over the name of what is open: "Left side  item 14 of 62 ... about 2 minutes"."""

    def __init__(
        self, look: Look, name: str = "", *, where: str = "", place: str = "", aside: str = "",
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self._where = Text(look, ink="soft")
        self._aside = Text(look, ink="soft", right=True, wrap=False)
        self._name = Text(look, step="name")
        top = QHBoxLayout()
        top.addWidget(self._where, 1)
        top.addWidget(self._aside, 0, Qt.AlignmentFlag.AlignTop)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(top)
        whole.addWidget(self._name)
        self.say(name, where=where, place=place, aside=aside)

    def say(self, name: str, *, where: str = "", place: str = "", aside: str = "") -> None:
        """Name and place are these."""
        self._where.say(f"\u00a0\u00a0{place}" if where and place else place, where)
        self._aside.say(aside)
        self._name.say(name)
        self._where.setVisible(bool(where or place or aside))
        self._aside.setVisible(bool(aside))
        self.setAccessibleName(name)
