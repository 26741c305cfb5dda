"""Keys: what is pressed to act or to choose, in every state that a key can be in."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from inspector.window.look.inks import MARKS
from inspector.window.look.look import Look
from inspector.window.look.measured import measured
from inspector.window.look.press import TARGET, Pressable
from inspector.window.look.signs import paint_sign, sign_share, sign_width
from inspector.window.look.stack import Part, Stack
from inspector.window.look.type import CENTRE, LEFT

INSIDE = 2.7  # from the edge of a key to what stands in it, in millimetres
TIGHT = 2.0  # the same at the right of text that begins at the left
AFTER_BAR = 1.3
ABOVE = 1.7
BAR = 2.0
CORNER = 0.4
ARROW = 5.5
HELD = ("", "kept", "chosen")
_OUTLINE = {"rest": 0.3, "written": 0.5, "pressed": 0.5, "kept": 0.6, "chosen": 0.0, "off": 0.3}


@dataclass(frozen=True, slots=True)
class Option:
    """One thing to choose: its id, its word, and what else stands on its key or row."""

    id: str
    word: str
    second: str = ""
    sign: str = ""
    reason: str = ""


class Key(Pressable):
    """A key with a title, and if wanted a line below or above it, a sign and an arrow.

    ``sign`` and ``arrow`` ("right", "left", "down") are names of signs; ``tall`` is in millimetres.
    Text stands in the middle unless the key has a second line; it wraps rather than being cut.
    """

    def __init__(
        self, look: Look, title: str = "", *, second: str = "", over: str = "", sign: str = "",
        arrow: str = "", name: str = "", step: str = "", strong: bool = False,
        tall: float = TARGET, left: bool | None = None, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, parent)
        self.title, self.second, self.over = title, second, over
        self.sign, self.arrow, self.name = sign, arrow, name
        self.step = step or ("small" if over else "text")
        self.strong, self.tall, self._left = strong, tall, left
        self._held = ""
        self.prefix = ""  # said before the words of the key, where a label stands beside it
        self.describe()

    # what it says

    def say(
        self, title: str | None = None, *, second: str | None = None, over: str | None = None,
        sign: str | None = None, name: str | None = None,
    ) -> None:  # fmt: skip
        """What is given replaces what stood on the key; the rest stays."""
        given = {"title": title, "second": second, "over": over, "sign": sign, "name": name}
        new = {part: words for part, words in given.items() if words not in (None, getattr(self, part))}
        if not new:
            return
        for part, words in new.items():
            setattr(self, part, words)
        self.describe()
        self.restyle()

    def describe(self) -> None:
        """The accessible name is all words on the key, or the name given to it."""
        super().describe()
        parts = (self.prefix, self.over, self.title, self.second)
        words = ", ".join(part for part in parts if part)
        self.setAccessibleName(self.name or words or self.sign)
        tip = "" if words else self.name
        if tip != self.toolTip():
            self.setToolTip(tip)

    def become(self, option: Option, left: bool | None) -> None:
        """The key says what this option says; its text begins at the left if ``left``."""
        if left != self._left:
            self._left = left
            self.restyle()
        self.turn_off(option.reason)
        self.say(option.word, second=option.second, sign=option.sign)

    # what state it is in

    @property
    def held(self) -> str:
        """What it shows while nobody presses it: nothing, "kept" or "chosen"."""
        return self._held

    def hold(self, held: str) -> None:
        """The key shows "kept" (a bar), "chosen" (reversed) or, when empty, neither."""
        if held not in HELD:
            raise ValueError(f"A key is kept, chosen or neither, not {held!r}.")
        if held == self._held and self.isChecked() == bool(held):
            return
        self._held = held
        self.setCheckable(bool(held) or self.isCheckable())
        self.setChecked(bool(held))
        self.update()  # its size is the same, held or not

    @property
    def state(self) -> str:
        """What is drawn: rest, pressed, kept, chosen or off."""
        if self.off:
            return "off"
        return "pressed" if self.isDown() else self._held or "rest"

    # how large it is

    @property
    def leftward(self) -> bool:
        """Whether its text begins at the left and does not stand in the middle."""
        return bool(self.second or self.over) if self._left is None else self._left

    def _stack(self, heavy: bool | None = None) -> Stack:
        return self._set(bool(self._held) if heavy is None else heavy, self.off)

    @measured
    def _set(self, held: bool, off: bool) -> Stack:
        own = self.step == "key" or (self.step == "next" and bool(self.second))
        bold = bool(self.strong or self.over or held or own)
        title = "soft" if off else "ink"
        return Stack(self.look, (
            Part(self.over, "small", False, "soft"),
            Part(self.title, self.step, bold, title),
            Part(self.second, "small", False, "soft"),
        ))  # fmt: skip

    def _sign_high(self) -> float:
        if not self.sign:
            return 0.0
        if not self.title:
            return self.look.grown(ARROW)
        share = 1.36 if self.sign in MARKS else sign_share(self.sign)
        return share * self.look.font(self.step).pixelSize()

    @measured
    def _sides(self, kept: bool) -> tuple[float, float]:
        """What is taken at the left and at the right of the text, in pixels."""
        inside, arrow = self.look.mm(INSIDE), self.look.grown(ARROW) + self.look.mm(1)
        tight = self.look.mm(TIGHT) if self.leftward else inside
        left = inside + (arrow if self.arrow == "left" else 0)
        right = arrow + inside if self.arrow and self.arrow != "left" else tight
        beside_bar = self.look.mm(BAR + AFTER_BAR)
        if kept and self.leftward:
            left, right = max(left, beside_bar), right - tight / 2
        elif kept:
            left, right = max(left, beside_bar), max(right, beside_bar)
        if self.sign:
            left += sign_width(self.sign, self._sign_high()) + (inside if self.title else 0)
        return left, right

    def _wide(self, plain: float, kept: float) -> int:
        """The width that holds text this wide at rest, and this wide while kept."""
        wide = max(sum(self._sides(False)) + plain, sum(self._sides(True)) + kept)
        return max(ceil(wide) + 1, self.look.least(TARGET))

    @measured
    def natural(self) -> int:
        """The width at which nothing wraps, kept or not, in pixels."""
        return self._wide(self._stack(False).natural, self._stack(True).natural)

    @measured
    def sizeHint(self) -> QSize:
        """The size at which nothing wraps, kept or not."""
        wide = self.natural()
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The size at which no word is broken."""
        wide = self._wide(self._stack(False).least, self._stack(True).least)
        return QSize(wide, self.look.least(self.tall))

    @measured
    def heightForWidth(self, width: int) -> int:
        """The height that its wrapped text and a finger need, kept or not."""
        text = max(self._stack(heavy).height(max(width - sum(self._sides(heavy)), 1.0)) for heavy in (False, True))
        content = max(text, self._sign_high()) + 2 * self.look.grown(ABOVE)
        return max(round(content), self.look.least(self.tall))

    # how it is drawn

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws ground and outline of its state, then sign, text and arrow."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_ground(painter, QRectF(self.rect()), self.look, self.state)
        reversed_ = self.look.colour("paper") if self.state == "chosen" else None
        self._paint_content(painter, reversed_)
        painter.end()

    def _paint_content(self, painter: QPainter, colour: QColor | None) -> None:
        stack, (left, right) = self._stack(), self._sides(self._held == "kept")
        wide = self.width() - left - right
        begin = left if self.leftward else left + max(wide - stack.natural, 0) / 2
        self._paint_sign(painter, begin, colour)
        centred = not self.leftward and not self.sign
        room = QRectF(left if centred else begin, 0, wide, self.height())
        stack.paint(painter, room, CENTRE if centred else LEFT, colour)
        self._paint_arrow(painter, colour)

    def _paint_sign(self, painter: QPainter, begin: float, colour: QColor | None) -> None:
        """The sign ends a gap before where the text begins."""
        high = self._sign_high()
        if not high:
            return
        wide = sign_width(self.sign, high)
        left = begin - wide - (self.look.mm(INSIDE) if self.title else 0)
        plain = colour or (self.look.colour("soft") if self.off else None)
        box = QRectF(left, (self.height() - high) / 2, wide, high)
        paint_sign(painter, box, self.sign, self.look.inks, plain)

    def _paint_arrow(self, painter: QPainter, colour: QColor | None) -> None:
        if not self.arrow:
            return
        size, inside = self.look.grown(ARROW), self.look.mm(INSIDE)
        left = inside if self.arrow == "left" else self.width() - inside - size
        box = QRectF(left, (self.height() - size) / 2, size, size)
        drawn = colour or self.look.colour("soft" if self.off else "ink")
        paint_sign(painter, box, self.arrow, self.look.inks, drawn)


def paint_ground(painter: QPainter, rect: QRectF, look: Look, state: str) -> None:
    """Ground and outline of a key in this state fill ``rect``, the outline inside its edge."""
    wide = look.mm(_OUTLINE[state])
    corner = look.mm(CORNER)
    box = rect.adjusted(wide / 2, wide / 2, -wide / 2, -wide / 2)
    ground = {"pressed": "tray", "chosen": "ink"}.get(state, "paper")
    painter.setBrush(look.colour(ground))
    painter.setPen(_outline(look, state, wide) if wide else Qt.PenStyle.NoPen)
    painter.drawRoundedRect(box, corner, corner)
    if state == "kept":
        path = QPainterPath()
        path.addRect(QRectF(rect.x(), rect.y(), look.mm(BAR), rect.height()))
        painter.fillPath(path, look.colour("ink"))


def _outline(look: Look, state: str, wide: float) -> QPen:
    pen = QPen(look.colour("ink" if state in ("pressed", "kept", "written") else "line"), wide)
    if state == "off":
        pen.setDashPattern([2.4, 1.5])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


def keys_of(look: Look, options: Sequence[Option], left: bool | None = None, **how: object) -> list[Key]:
    """One key for each option; where one has a second line, all begin at the left."""
    left = left or any(option.second for option in options) or None
    made = []
    for option in options:
        key = Key(look, option.word, second=option.second, sign=option.sign, left=left, **how)  # type: ignore[arg-type]
        key.turn_off(option.reason)
        made.append(key)
    return made
