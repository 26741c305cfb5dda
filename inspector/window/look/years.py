"""Years across, a row for each assembly, and the claimed year ruled through all of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QLineF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import BAND_LINE, Chart, hatch, paint_band
from inspector.window.look.look import Look
from inspector.window.look.text import HAIR
from inspector.window.look.type import CENTRE, LEFT

ROW, BAR = 6.2, 3.4  # heights of a row and of a bar, in millimetres
LABELS = 0.21  # of the width, at least, for the names of the assemblies
NOTE_GAP = 1.2  # clear on both sides of a row's words, in millimetres
ALLOWED, CONDITION, ODD = "allowed", "condition", "odd"


@dataclass(frozen=True, slots=True)
class Span:
    """Years first to last that a row allows; ``kind`` is allowed, condition or odd."""

    first: int
    last: int
    kind: str = ALLOWED


@dataclass(frozen=True, slots=True)
class YearRow:
    """An assembly with the years it allows and, where needed, a few words in its row.

    Without spans there is no evidence: a dotted line goes over all years.
    """

    label: str
    spans: tuple[Span, ...] = ()
    note: str = ""


class YearsChart(Chart):
    """Bars over the years each assembly allows; what lies in the claimed year is solid."""

    def __init__(
        self, look: Look, first: int = 0, last: int = 0, claimed: int | None = None,
        rows: Sequence[YearRow] = (), *, claimed_word: str = "", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, parent)
        self.set_rows(first, last, claimed, rows, claimed_word=claimed_word)

    def set_rows(
        self, first: int, last: int, claimed: int | None, rows: Sequence[YearRow], *,
        claimed_word: str = "",
    ) -> None:  # fmt: skip
        """The chart goes from ``first`` to ``last``; ``claimed_word`` stands below that year."""
        self.first, self.last, self.claimed = first, max(last, first), claimed
        self.rows, self.claimed_word = tuple(rows), claimed_word
        self.restyle()

    def _labels(self, width: int) -> float:
        widest = max((self.look.words(r.label, "text", True).natural for r in self.rows), default=0.0)
        return min(max(widest + self.look.mm(3), width * LABELS), width * 0.45)

    def _row_high(self, row: YearRow, width: int) -> int:
        """The height of a row's name and bars, without words below them."""
        room = max(self._labels(width) - self.look.mm(1), 1.0)
        text = self.look.words(row.label, "text", _is_odd(row)).height(room)
        return max(self.look.grown(ROW), round(text + self.look.mm(0.6)))

    def _below(self, row: YearRow, width: int) -> int:
        """How much higher a row is whose words have no room in one line beside its bars."""
        left, right = self._free(row, width)
        words = self.look.words(row.note, "small")
        if not row.note or words.natural + 2 * self.look.mm(NOTE_GAP) <= right - left:
            return 0
        return round(words.height(max(width - self._labels(width), 1.0)) + self.look.mm(1))

    def _head(self) -> int:
        return round(self.look.leading("small") + self.look.mm(1.5))

    def heightForWidth(self, width: int) -> int:
        """Years, rows, and the word below the claimed year."""
        rows = sum(self._row_high(row, width) + self._below(row, width) for row in self.rows)
        foot = self.look.leading("small") + self.look.mm(1) if self.claimed_word else 0
        return round(self._head() + rows + foot)

    def sizeHint(self) -> QSize:
        """Room for the names and some years."""
        return QSize(self.look.grown(110), self.heightForWidth(self.look.grown(110)))

    def _x(self, year: float, width: int | None = None) -> float:
        """The left edge of a year, in pixels."""
        wide = self.width() if width is None else width
        labels = self._labels(wide)
        return labels + (year - self.first) * (wide - labels) / (self.last - self.first + 1)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws years, rows, and the two lines of the claimed year through all rows."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_years(painter)
        top = self._head()
        self._rule(painter, top)
        for row in self.rows:
            high = self._row_high(row, self.width())
            self._paint_row(painter, row, QRectF(0, top, self.width(), high))
            top += high + self._below(row, self.width())
            self._rule(painter, top)
        if self.claimed is not None and self.first <= self.claimed <= self.last:
            self._paint_claimed(painter, top)
        self._paint_notes(painter)
        painter.end()

    def _rule(self, painter: QPainter, top: float) -> None:
        hair = self.look.px(HAIR)
        painter.fillRect(QRectF(0, top - hair, self.width(), hair), self.look.colour("rule"))

    def _paint_years(self, painter: QPainter) -> None:
        """As many years in print as have room, the claimed one always."""
        wide = self.look.words("0000", "small", True).natural + self.look.mm(1.5)
        step = max(ceil(wide / max(self._x(self.first + 1) - self._x(self.first), 1.0)), 1)
        start = self.first if self.claimed is None else self.claimed % step
        for year in range(self.first, self.last + 1):
            claimed = year == self.claimed
            if (year - start) % step and not claimed:
                continue
            words = self.look.words(str(year), "small", claimed)
            middle = (self._x(year) + self._x(year + 1)) / 2
            room = QRectF(middle - words.natural, 0, 2 * words.natural, words.leading)
            words.paint(painter, room, self.look.colour("ink" if claimed else "soft"), CENTRE)

    def _paint_row(self, painter: QPainter, row: YearRow, room: QRectF) -> None:
        label = self.look.words(row.label, "text", _is_odd(row))
        wide = self._labels(self.width()) - self.look.mm(1)
        high = label.height(wide)
        place = QRectF(0, room.y() + round((room.height() - high) / 2), wide, high)
        label.paint(painter, place, self.look.colour("ink"), LEFT)
        if not row.spans:
            self._paint_none(painter, room)
        for span in row.spans:
            self._paint_span(painter, span, room)

    def _paint_none(self, painter: QPainter, room: QRectF) -> None:
        pen = QPen(self.look.colour("line"), self.look.mm(0.4))
        pen.setDashPattern([1.0, 2.2])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        middle = room.center().y()
        painter.drawLine(QLineF(self._x(self.first), middle, self._x(self.last + 1), middle))

    def _bar(self, first: float, last: float, room: QRectF) -> QRectF:
        """The bar over these years, held within the chart."""
        left = self._x(max(first, self.first)) + 1
        right = self._x(min(last, self.last) + 1) - 1
        high = self.look.grown(BAR)
        top = round(room.y() + (room.height() - high) / 2)
        return QRectF(left, top, max(right - left, 1.0), high)

    def _paint_span(self, painter: QPainter, span: Span, room: QRectF) -> None:
        if span.last < self.first or span.first > self.last:
            return
        bar = self._bar(span.first, span.last, room)
        wide = self.look.mm(BAND_LINE)
        inner = bar.adjusted(wide / 2, wide / 2, -wide / 2, -wide / 2)
        pen = QPen(self.look.colour("ink"), wide)
        if span.kind == ALLOWED:
            paint_band(painter, bar, self.look)
            if self.claimed is not None and span.first <= self.claimed <= span.last:
                painter.fillRect(self._bar(self.claimed, self.claimed, room), self.look.colour("ink"))
            return
        if span.kind == ODD:
            hatch(painter, bar, self.look.colour("ink"), self.look.mm(1.3), self.look.mm(0.36))
        else:
            pen.setDashPattern([3.0, 1.6])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen)
        painter.drawRect(inner)

    def _paint_notes(self, painter: QPainter) -> None:
        """The words of each row stand in its widest free part, or below its bars; no line goes through them."""
        top = self._head()
        for row in self.rows:
            high, below = self._row_high(row, self.width()), self._below(row, self.width())
            if row.note:
                room = QRectF(0, top, self.width(), high)
                self._paint_note(painter, row, self._place_of_note(row, room, below))
            top += high + below

    def _place_of_note(self, row: YearRow, room: QRectF, below: int) -> QRectF:
        """Where the words of a row stand that has this room for its bars."""
        words, gap = self.look.words(row.note, "small"), self.look.mm(NOTE_GAP)
        if below:
            left = self._x(self.first)
            return QRectF(left, room.bottom(), self.width() - left, below - self.look.mm(1))
        left = self._free(row)[0] + gap
        return QRectF(left, round(room.y() + (room.height() - words.leading) / 2), words.natural + 1, words.leading)

    def _paint_note(self, painter: QPainter, row: YearRow, place: QRectF) -> None:
        gap = self.look.mm(NOTE_GAP) / 2
        painter.fillRect(place.adjusted(-gap, 0, gap, 0), self.look.colour("paper"))
        self.look.words(row.note, "small").paint(painter, place, self.look.colour("soft"), LEFT)

    def _free(self, row: YearRow, width: int | None = None) -> tuple[float, float]:
        """The widest part of the row that no bar and no claimed year takes, in pixels."""
        taken = sorted((span.first, span.last + 1) for span in row.spans)
        if self.claimed is not None:
            taken = sorted([*taken, (self.claimed, self.claimed + 1)])
        best, at = (self.first, self.first), self.first
        for begin, end in [*taken, (self.last + 1, self.last + 1)]:
            if begin - at > best[1] - best[0]:
                best = (at, begin)
            at = max(at, end)
        return self._x(best[0], width), self._x(best[1], width)

    def _paint_claimed(self, painter: QPainter, foot: float) -> None:
        assert self.claimed is not None
        wide, reach = self.look.mm(0.36), self.look.mm(1)
        head = self._head() - reach
        for edge in (self._x(self.claimed), self._x(self.claimed + 1)):
            line = QRectF(edge - wide / 2, head, wide, foot - head + reach)
            painter.fillRect(line, self.look.colour("ink"))
        words = self.look.words(self.claimed_word, "small", True)
        middle = (self._x(self.claimed) + self._x(self.claimed + 1)) / 2
        left = min(max(middle - words.natural / 2, 0.0), self.width() - words.natural - 1)
        room = QRectF(left, foot + reach, words.natural + 1, words.leading)
        words.paint(painter, room, self.look.colour("ink"))


def _is_odd(row: YearRow) -> bool:
    return any(span.kind == ODD for span in row.spans)
