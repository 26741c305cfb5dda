"""Worth as bands, comparables from as entered to adjusted, and the price asked as a broken upright."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from inspector.window.look.charts import Chart, paint_band
from inspector.window.look.look import Look
from inspector.window.look.lozenge import ASKED, BID, SIZE, SOLD, broken, paint_lozenge, paint_way
from inspector.window.look.measured import measured
from inspector.window.look.scale import Scale, scale_for
from inspector.window.look.stack import Part, Stack
from inspector.window.look.text import HAIR, THICK

ROW, ABOVE, LABEL, SHARE = 11.0, 1.2, 52.0, 0.42  # row, above its text, width of labels, and their most of the whole
BAND, MIDDLE, GAP = 5.2, 1.1, 3.0  # height of a band, thickness of its middle, between label and chart


@dataclass(frozen=True, slots=True)
class WorthBand:
    """A worth: its name, what is printed below it, and its ends and middle."""

    name: str
    second: str
    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True)
class Comparison:
    """A comparable: its name, what is printed below it, sold, bid or asked, and the figure entered and adjusted.

    ``adjusted`` is None where nothing can be drawn for it.
    """

    name: str
    second: str
    kind: str
    entered: float | None
    adjusted: float | None


@dataclass(frozen=True, slots=True)
class WorthWords:
    """The words on the chart: the unit, over the comparables, and what each sign stands for."""

    unit: str = ""
    comparables: str = ""
    how: str = ""
    sold: str = ""
    bid: str = ""
    asked: str = ""
    upright: str = ""


@dataclass(frozen=True, slots=True)
class WorthDrawn:
    """Everything that the chart shows."""

    words: WorthWords = field(default_factory=WorthWords)
    bands: tuple[WorthBand, ...] = ()
    comparisons: tuple[Comparison, ...] = ()
    asked: float | None = None


class WorthChart(Chart):
    """All on one scale; the sentence beside it and the small print in each row say the same."""

    def __init__(self, look: Look, written: Callable[[float], str], parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self.drawn, self._written = WorthDrawn(), written
        self._scale = scale_for(())

    def show_worth(self, drawn: WorthDrawn) -> None:
        """The chart shows this."""
        self.drawn = drawn
        ends = [v for band in drawn.bands for v in (band.low, band.high)]
        ends += [v for one in drawn.comparisons for v in (one.entered, one.adjusted) if v is not None]
        self._scale = scale_for([*ends, *([] if drawn.asked is None else [drawn.asked])], 5)
        rows: Sequence[WorthBand | Comparison] = (*drawn.bands, *drawn.comparisons)
        told = [f"{row.name}, {row.second}" for row in rows]
        told += [drawn.words.upright] if drawn.asked is not None and drawn.words.upright else []
        self.setAccessibleName(". ".join(told))
        self.restyle()

    # measuring

    def _label(self, width: float) -> float:
        return min(float(self.look.grown(LABEL)), width * SHARE)

    def _text(self, row: WorthBand | Comparison) -> Stack:
        heavy = isinstance(row, WorthBand)
        return Stack(self.look, (Part(row.name, "text", heavy), Part(row.second, "small", False, "soft")))

    def _row_high(self, row: WorthBand | Comparison, width: float) -> int:
        text = self._text(row).height(self._label(width))
        return max(round(text + 2 * self.look.grown(ABOVE)), self.look.grown(ROW))

    def _head_high(self) -> int:
        return round(self.look.leading("small") + self.look.grown(1.6))

    def _between_high(self, width: float) -> int:
        """Of the head over the comparables, whose aside goes below it where both do not fit."""
        name, how = self._between(), self._how()
        beside = name.natural + how.natural + self.look.mm(GAP) <= width
        text = max(name.height(width), how.height(width)) if beside else name.height(width) + how.height(width)
        return round(text + 2 * self.look.grown(ABOVE))

    def _between(self) -> Stack:
        return Stack(self.look, (Part(self.drawn.words.comparables, "text", True),))

    def _how(self) -> Stack:
        return Stack(self.look, (Part(self.drawn.words.how, "small", False, "soft"),))

    def _legend(self) -> list[tuple[str, str]]:
        words, kinds = self.drawn.words, {one.kind for one in self.drawn.comparisons}
        told = [(k, w) for k, w in ((SOLD, words.sold), (BID, words.bid), (ASKED, words.asked)) if k in kinds]
        return [*told, *([("upright", words.upright)] if self.drawn.asked is not None else [])]

    def _legend_places(self, width: float) -> tuple[list[tuple[str, str, float, float]], int]:
        """Sign and word of each with where it begins, and the height of all of them."""
        sign, gap, high = self.look.grown(SIZE), self.look.mm(2), round(self.look.leading() + self.look.grown(2))
        places, left, top = [], 0.0, 0.0
        for kind, word in self._legend():
            wide = sign + gap + self.look.words(word).natural
            if left and left + wide > width:
                left, top = 0.0, top + high
            places.append((kind, word, left, top))
            left += wide + self.look.mm(6)
        return places, round(top + high) if places else 0

    @measured
    def heightForWidth(self, width: int) -> int:
        """Scale, bands, comparables and legend."""
        bands = sum(self._row_high(band, width) for band in self.drawn.bands)
        rows = sum(self._row_high(one, width) for one in self.drawn.comparisons)
        between = self._between_high(width) if self.drawn.comparisons else 0
        return self._head_high() + bands + between + rows + self._legend_places(width)[1]

    def sizeHint(self) -> QSize:
        """Room for labels and a chart beside them."""
        wide = self.look.grown(120)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """The width below which no figure of the scale would have room."""
        return QSize(self.look.grown(60), 0)

    # drawing

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws from the top: scale, bands, comparables, upright, legend."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left = self._label(self.width()) + self.look.mm(GAP) + self.look.grown(SIZE) / 2
        wide = max(self.width() - left - self.look.grown(5), 1.0)
        self._paint_scale(painter, left, wide)
        top = broken_off = go_on = self._head_high()
        for band in self.drawn.bands:
            top = self._paint_row(painter, band, top, left, wide)
        if self.drawn.comparisons:
            painter.fillRect(0, top - self.look.px(THICK), self.width(), self.look.px(THICK), self.look.colour("ink"))
            broken_off = top
            top = go_on = self._paint_between(painter, top)
        for one in self.drawn.comparisons:
            top = self._paint_row(painter, one, top, left, wide)
        if self.drawn.asked is not None:
            x = self._scale.at(self.drawn.asked, left, wide)
            painter.setPen(broken(self.look))
            # It does not run through the words between bands and comparables.
            painter.drawLine(QLineF(x, self._head_high() - self.look.grown(0.8), x, broken_off))
            painter.drawLine(QLineF(x, go_on, x, top))
        self._paint_legend(painter, top)
        painter.end()

    def _paint_scale(self, painter: QPainter, left: float, wide: float) -> None:
        high, soft = self._head_high(), self.look.colour("soft")
        if not self.drawn.bands and not self.drawn.comparisons:
            return
        unit = self.look.words(self.drawn.words.unit, "small")
        unit.paint(painter, QRectF(0, 0, self._label(self.width()), unit.leading), soft)
        after = 0.0
        for tick in self._ticks(wide):
            words = self.look.words(self._written(tick), "small")
            begin = self._scale.at(tick, left, wide) - words.natural / 2
            begin = min(begin, self.width() - words.natural - 1)
            if begin >= after:
                words.paint(painter, QRectF(begin, 0, words.natural + 1, words.leading), soft)
                after = begin + words.natural + self.look.mm(2)
        self._hair(painter, high)

    def _ticks(self, wide: float) -> tuple[float, ...]:
        scale: Scale = self._scale
        return scale.ticks

    def _hair(self, painter: QPainter, foot: float) -> None:
        hair = self.look.px(HAIR)
        painter.fillRect(0, round(foot) - hair, self.width(), hair, self.look.colour("rule"))

    def _paint_row(self, painter: QPainter, row: WorthBand | Comparison, top: int, left: float, wide: float) -> int:
        high = self._row_high(row, self.width())
        self._text(row).paint(painter, QRectF(0, top, self._label(self.width()), high))
        middle = top + high / 2
        if isinstance(row, WorthBand):
            self._paint_band(painter, row, middle, left, wide)
        elif row.adjusted is not None:
            entered = row.adjusted if row.entered is None else row.entered
            begin, end = (QPointF(self._scale.at(v, left, wide), middle) for v in (entered, row.adjusted))
            paint_way(painter, begin, end, row.kind, self.look)
        self._hair(painter, top + high)
        return top + high

    def _paint_band(self, painter: QPainter, band: WorthBand, middle: float, left: float, wide: float) -> None:
        begin, end = self._scale.at(band.low, left, wide), self._scale.at(band.high, left, wide)
        half, thick = self.look.grown(BAND) / 2, self.look.mm(MIDDLE)
        least = self.look.mm(0.8)
        paint_band(painter, QRectF(begin, middle - half, max(end - begin, least), 2 * half), self.look)
        at, reach = self._scale.at(band.middle, left, wide), half + self.look.grown(1.1)
        painter.fillRect(QRectF(at - thick / 2, middle - reach, thick, 2 * reach), self.look.colour("ink"))

    def _paint_between(self, painter: QPainter, top: int) -> int:
        high, above = self._between_high(self.width()), self.look.grown(ABOVE)
        name, how = self._between(), self._how()
        wide = float(self.width())
        name.paint(painter, QRectF(0, top + above, wide, name.height(wide)))
        beside = name.natural + how.natural + self.look.mm(GAP) <= wide
        left = wide - how.natural - 1 if beside else 0.0
        begin = top + high - above - how.height(wide)
        how.paint(painter, QRectF(left, begin, wide - left, how.height(wide)))
        self._hair(painter, top + high)
        return top + high

    def _paint_legend(self, painter: QPainter, top: int) -> None:
        sign, gap = self.look.grown(SIZE), self.look.mm(2)
        places, _ = self._legend_places(self.width())
        for kind, word, left, down in places:
            words = self.look.words(word)
            begin = top + down + self.look.grown(2)
            middle = QPointF(left + sign / 2, begin + words.leading / 2)
            if kind == "upright":
                painter.setPen(QPen(broken(self.look)))
                painter.drawLine(QLineF(middle.x(), begin, middle.x(), begin + words.leading))
            else:
                paint_lozenge(painter, middle, kind, self.look)
            words.paint(painter, QRectF(left + sign + gap, begin, words.natural + 1, words.leading),
                        self.look.colour("ink"))  # fmt: skip
