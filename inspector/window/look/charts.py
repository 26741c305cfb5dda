"""Charts of what is left to see and of the score: ink and tray only, every value printed."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured
from inspector.window.look.signs import paint_sign, sign_share, sign_width
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import HAIR, THICK

STROKE_HIGH = 2.9  # of what is left, in millimetres
PITCH = 2.55  # from one item to the next in a station
PART = 2  # per cent that one stroke stands for in the whole
BAND_HIGH, BAND_LINE = 3.3, 0.36
SCORE_WIDE, SCORE_HIGH = 1.0, 5.2


class Chart(Measured, QWidget):
    """What all charts share; its accessible name is the sentence that says the same."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)

    def restyle(self) -> None:
        """The chart is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        """What is narrow may be higher."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of the chart, in pixels."""
        return self.sizeHint().height()


def paint_coverage(painter: QPainter, rect: QRectF, look: Look, seen: int, left: int, fill: bool) -> None:
    """What was seen lies down as dots, what is left stands as strokes, on the foot of ``rect``.

    With ``fill`` they take the whole width, else an item takes a fixed one while there is room.
    """
    count = seen + left
    if not count:
        return
    pitch = rect.width() / count
    pitch = pitch if fill else min(look.grown(PITCH), pitch)
    wide = max(1.0, min(look.mm(0.85), pitch * 0.54))
    foot, dot = round(rect.bottom()), max(2, round(wide))
    if fill and count > 1:
        pitch = (rect.width() - wide) / (count - 1)
    for number in range(count):
        begin = rect.x() + number * pitch
        if number < seen:
            square = QRectF(round(begin), foot - dot, dot, dot)
            painter.fillRect(square, look.colour("line"))
        else:
            stroke = QRectF(begin, rect.y(), wide, foot - rect.y())
            painter.fillRect(stroke, look.colour("ink"))


class CoverageBar(Chart):
    """Of one station a stroke an item, or of the whole a stroke for each 2 per cent left."""

    def __init__(self, look: Look, *, seen: int = 0, left: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self._fill = False
        self.set_items(seen, left)

    def set_items(self, seen: int, left: int) -> None:
        """So many items lie, so many still stand."""
        self.seen, self.left, self._fill = max(seen, 0), max(left, 0), False
        self.update()

    def set_seen(self, percent: float) -> None:
        """This much of the whole was seen; the least rest still stands as one stroke."""
        left = min(max(100 - percent, 0.0), 100.0)
        self.left = ceil(left / PART)
        self.seen, self._fill = 100 // PART - self.left, True
        self.update()

    def sizeHint(self) -> QSize:
        """As high as a stroke."""
        return QSize(self.look.grown(40), self.look.grown(STROKE_HIGH))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws dots and strokes."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect = QRectF(self.rect())
        paint_coverage(painter, rect, self.look, self.seen, self.left, self._fill)
        painter.end()


def paint_band(painter: QPainter, rect: QRectF, look: Look) -> None:
    """A band of tray with an outline of ink fills ``rect``."""
    wide = look.mm(BAND_LINE)
    painter.setPen(QPen(look.colour("ink"), wide))
    painter.setBrush(look.colour("tray"))
    painter.drawRect(rect.adjusted(wide / 2, wide / 2, -wide / 2, -wide / 2))


class ScoreBar(Chart):
    """A scale from 0 to 100 with the band in which the score may end, and a stroke where it is."""

    def __init__(
        self, look: Look, score: float | None = None, lowest: float = 0, highest: float = 100,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, parent)
        self.set_score(score, lowest, highest)

    def set_score(self, score: float | None, lowest: float, highest: float) -> None:
        """The score is this, or not known yet (None), and may end within these."""
        self.score, self.lowest, self.highest = score, lowest, highest
        self.update()

    def sizeHint(self) -> QSize:
        """The stroke, and under it the two ends in print."""
        high = self.look.grown(SCORE_HIGH) + self.look.leading("small")
        return QSize(self.look.grown(50), round(high))

    def _at(self, value: float) -> float:
        edge = self.look.mm(0.2)
        return edge + (self.width() - 2 * edge) * min(max(value, 0.0), 100.0) / 100

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws scale, band, stroke and both ends."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = self.look.grown(SCORE_HIGH) / 2
        self._paint_scale(painter, middle)
        half = self.look.grown(BAND_HIGH) / 2
        left, right = self._at(self.lowest), self._at(self.highest)
        least = self.look.mm(0.8)
        band = QRectF(left, middle - half, max(right - left, least), 2 * half)
        paint_band(painter, band, self.look)
        if self.score is not None:
            wide = self.look.mm(SCORE_WIDE)
            stroke = QRectF(self._at(self.score) - wide / 2, 0, wide, 2 * middle)
            painter.fillRect(stroke, self.look.colour("ink"))
        self._paint_ends(painter, 2 * middle)
        painter.end()

    def _paint_scale(self, painter: QPainter, middle: float) -> None:
        painter.setPen(QPen(self.look.colour("line"), self.look.mm(0.3)))
        painter.drawLine(QLineF(self._at(0), middle, self._at(100), middle))
        reach = self.look.mm(0.9)
        for tick in (0, 25, 50, 75, 100):
            painter.drawLine(QLineF(self._at(tick), middle - reach, self._at(tick), middle + reach))

    def _paint_ends(self, painter: QPainter, top: float) -> None:
        """Both ends in print, moved apart where they would touch."""
        words = [self.look.words(f"{end:.0f}", "small") for end in (self.lowest, self.highest)]
        if f"{self.lowest:.0f}" == f"{self.highest:.0f}":
            words = words[:1]
        lefts = [self._at(end) - w.natural / 2
                 for end, w in zip((self.lowest, self.highest), words, strict=False)]  # fmt: skip
        for left, word in zip(self._moved(lefts, [w.natural for w in words]), words, strict=True):
            room = QRectF(left, top, word.natural + 1, word.leading)
            word.paint(painter, room, self.look.colour("ink"))

    def _moved(self, lefts: list[float], wides: list[float]) -> list[float]:
        """Where the ends begin so that they neither touch nor leave the chart."""
        most = self.width() - wides[-1] - 1
        first, last = max(lefts[0], 0.0), min(lefts[-1], most)
        if len(lefts) == 1:
            return [min(first, most)]
        need = max(first + wides[0] + self.look.mm(2) - last, 0.0)
        back = min(need - min(need / 2, most - last), first)
        return [first - back, last + need - back]


@dataclass(frozen=True, slots=True)
class Move:
    """One thing that would move the score: its sign and words, and how far down and up."""

    title: str
    second: str = ""
    sign: str = ""
    down: float = 0.0
    up: float = 0.0


class MoveBars(Chart):
    """What would move the score most: from an upright at today's score, a band to each side."""

    ROW, BESIDE, SHARE = 14.0, 90.0, 0.56  # height of a row; below this width the band stands below

    def __init__(
        self, look: Look, title: str = "", now: str = "", moves: Sequence[Move] = (),
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, parent)
        self.set_moves(title, now, moves)

    def set_moves(self, title: str, now: str, moves: Sequence[Move]) -> None:
        """The head says ``title``, the upright ``now``; the rows are these, largest first."""
        self.title, self.now, self.moves = title, now, tuple(moves)
        self.restyle()

    def _text(self, move: Move) -> Stack:
        parts = (Part(move.title, "text", True), Part(move.second, "small", False, "soft"))
        return Stack(self.look, parts)

    def _indent(self) -> float:
        return self.look.grown(9) if any(move.sign for move in self.moves) else 0.0

    def _split(self, width: float) -> tuple[float, bool]:
        """The width of the text, and whether the bands stand beside it."""
        beside = width >= self.look.grown(self.BESIDE)
        whole = width * self.SHARE if beside else width
        return max(whole - self._indent(), 1.0), beside

    def _row_high(self, move: Move, width: float) -> int:
        text, beside = self._split(width)
        high = self._text(move).height(text) + 2 * self.look.grown(1.6)
        extra = 0 if beside else self.look.grown(9)
        return max(round(high + extra), self.look.grown(self.ROW))

    def _head_high(self) -> int:
        return round(self.look.leading("next") + self.look.grown(1.4)) + self.look.px(THICK)

    def heightForWidth(self, width: int) -> int:
        """Head and rows."""
        return self._head_high() + sum(self._row_high(move, width) for move in self.moves)

    def sizeHint(self) -> QSize:
        """Wide enough for text and bands beside one another."""
        wide = self.look.grown(self.BESIDE)
        return QSize(wide, self.heightForWidth(wide))

    def _scale(self, left: float, right: float) -> tuple[float, float]:
        """Where the upright stands, and pixels to the point, between these edges."""
        label = max((self.look.words(_signed(v), "text", True).natural
                     for m in self.moves for v in (-m.down, m.up) if v), default=0.0)  # fmt: skip
        down = max((move.down for move in self.moves), default=0.0)
        up = max((move.up for move in self.moves), default=0.0)
        label += self.look.mm(2)
        room = max(right - left - (label if down else 0) - (label if up else 0), 1.0)
        unit = room / max(down + up, 1.0)
        return left + (label if down else self.look.mm(1)) + down * unit, unit

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the head, then row by row sign, words and bands."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        text, beside = self._split(self.width())
        begin = text + self._indent() if beside else self._indent()
        upright, unit = self._scale(begin, self.width())
        self._paint_head(painter, upright)
        top = self._head_high()
        for move in self.moves:
            high = self._row_high(move, self.width())
            row = QRectF(0, top, self.width(), high)
            self._paint_words(painter, row, move, text, beside)
            extra = 0 if beside else self._text(move).height(text)
            self._paint_bands(painter, row.adjusted(0, extra, 0, 0), move, upright, unit)
            line = QRectF(0, top + high - self.look.px(HAIR), self.width(), self.look.px(HAIR))
            painter.fillRect(line, self.look.colour("rule"))
            top += high
        painter.end()

    def _paint_head(self, painter: QPainter, upright: float) -> None:
        high = self._head_high() - self.look.px(THICK)
        title = self.look.words(self.title, "next")
        title.paint(painter, QRectF(0, 0, self.width(), title.leading), self.look.colour("ink"))
        now = self.look.words(self.now, "small")
        left = min(max(upright - now.natural / 2, title.natural + self.look.mm(2)),
                   self.width() - now.natural - 1)  # fmt: skip
        below = title.baseline() - now.baseline()
        room = QRectF(left, below, now.natural + 1, now.leading)
        now.paint(painter, room, self.look.colour("soft"))
        painter.fillRect(QRectF(0, high, self.width(), self.look.px(THICK)), self.look.colour("ink"))

    def _paint_words(self, painter: QPainter, row: QRectF, move: Move, text: float, beside: bool) -> None:
        stack = self._text(move)
        high = row.height() if beside else stack.height(text) + 2 * self.look.grown(1.6)
        if move.sign:
            size = self.look.font().pixelSize() * sign_share(move.sign)
            wide = sign_width(move.sign, size)
            box = QRectF(self.look.grown(3) - wide / 2, row.y() + (high - size) / 2, wide, size)
            box.moveLeft(max(box.x(), 0.0))
            paint_sign(painter, box, move.sign, self.look.inks)
        stack.paint(painter, QRectF(self._indent(), row.y(), text, high))

    def _paint_bands(self, painter: QPainter, row: QRectF, move: Move, upright: float, unit: float) -> None:
        half, reach = self.look.grown(2.0), self.look.grown(4.4)
        middle = row.center().y()
        left, right = upright - move.down * unit, upright + move.up * unit
        if move.down or move.up:
            paint_band(painter, QRectF(left, middle - half, right - left, 2 * half), self.look)
        wide = self.look.mm(0.75)
        painter.fillRect(QRectF(upright - wide / 2, middle - reach, wide, 2 * reach),
                         self.look.colour("ink"))  # fmt: skip
        gap = self.look.mm(1.2)
        for value, edge, side in ((-move.down, left, -1), (move.up, right, 1)):
            if value:
                words = self.look.words(_signed(value), "text", True)
                begin = edge + gap if side > 0 else edge - gap - words.natural
                room = QRectF(begin, middle - words.leading / 2, words.natural + 1, words.leading)
                words.paint(painter, room, self.look.colour("ink"))


def _signed(value: float) -> str:
    """The figure with its sign, a true minus before what is less; a move too small for a figure says so."""
    size = round(abs(value))
    return f"{'+' if value > 0 else '−'}{size}" if size else "<1"


def hatch(painter: QPainter, rect: QRectF, colour: QColor, pitch: float, wide: float) -> None:
    """Lines at 45 degrees fill ``rect``, ``pitch`` pixels apart along its foot."""
    painter.save()
    painter.setClipRect(rect)
    painter.setPen(QPen(colour, wide, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
    at = rect.x() - rect.height()
    while at < rect.right():
        painter.drawLine(QPointF(at, rect.bottom()), QPointF(at + rect.height(), rect.y()))
        at += pitch
    painter.restore()
