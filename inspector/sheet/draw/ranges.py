"""Ranges and prices over one scale of money: a band with its middle, a ring as entered, a diamond as adjusted."""

from __future__ import annotations

from math import floor, log10
from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside
from inspector.sheet.draw.figures import titled
from inspector.sheet.draw.kit import (
    INK,
    LINE,
    LISTED,
    MM,
    PAPER,
    REGULAR,
    RULE,
    SMALL,
    SOFT,
    TRAY,
    WIDE,
    Gap,
    Piece,
    clean,
    para,
    width_of,
)
from inspector.sheet.draw.setting import Running, stack
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.sheet.figure_blocks import RangeRow, RangesBlock

NAMES, WORDS = 46 * MM, 44 * MM
BARS = WIDE - NAMES - WORDS
BAR, SIGN = 3.2 * MM, 1.75 * MM
TICKS = 4
THOUSANDS = "\u202f"


def ranges(block: RangesBlock, key: str) -> list[Any]:
    """Title and sentences, the scale, every row on it, and what the signs mean."""
    head = titled(block.title, block.lines, key)
    if not block.rows:
        return [stack([head, para(" ".join(block.notes), SMALL, soft=True, tight=True), Gap(2)])]
    scale = Scale(block)
    running = Running(block.title, again=lambda: _Head(scale))
    running.head = True
    rows = [_Line(row, scale) for row in block.rows]
    notes = para(" ".join(block.notes), SMALL, soft=True, tight=True)
    below = [para(" ".join(_legend(block)), SMALL, tight=True), notes]
    pieces = [stack([head, running, _Head(scale), rows[0]]), *rows[1:], Running()]
    return [*pieces, Gap(1.2), *below, Gap(3)]


def _legend(block: RangesBlock) -> list[str]:
    kinds = {row.kind for row in block.rows}
    told = [block.ruled_word and tr("Broken line: {word}.", word=block.ruled_word)]
    if kinds - {"range"}:
        told.append(tr("Ring: as entered. Diamond: as adjusted, filled where sold, half where bid, empty where asked."))
    if "range" in kinds:
        told.append(tr("Band: lowest to highest; thick stroke: the middle."))
    return [one for one in told if one]


class Scale:
    """Where an amount lies between the lowest and the highest, and round amounts to print above."""

    def __init__(self, block: RangesBlock) -> None:
        ends = [end for row in block.rows for end in (row.low, row.middle, row.high)]
        ends += [block.ruled] if block.ruled is not None else []
        self.step = _round_step((max(ends) - min(ends)) / TICKS)
        self.low = floor(min(ends) / self.step) * self.step
        self.high = max(-floor(-max(ends) / self.step) * self.step, self.low + self.step)
        self.unit, self.ruled = block.unit, block.ruled

    def x(self, amount: float) -> float:
        """Points from the left edge of the page's text."""
        return NAMES + BARS * (amount - self.low) / (self.high - self.low)

    def ticks(self) -> Sequence[float]:
        """The round amounts from one end to the other."""
        return [self.low + n * self.step for n in range(round((self.high - self.low) / self.step) + 1)]


def _round_step(rough: float) -> float:
    """1, 2 or 5 times a power of ten, not below what is given."""
    if rough <= 0:
        return 1.0
    power = 10.0 ** floor(log10(rough))
    return next(power * factor for factor in (1, 2, 5, 10) if power * factor >= rough * 0.999)


class _Across(Piece):
    """A row over the scale, with the ruled price through it."""

    def __init__(self, scale: Scale, height: float) -> None:
        super().__init__(WIDE, height)
        self.scale = scale

    def _furniture(self) -> None:
        canvas = self.canv
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.line(0, 0, self.width, 0)
        if self.scale.ruled is not None:
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(0.9)
            canvas.setDash(3, 2)
            canvas.line(self.scale.x(self.scale.ruled), 0, self.scale.x(self.scale.ruled), self.height)
            canvas.setDash()


class _Head(_Across):
    """The currency and the round amounts."""

    head = True

    def __init__(self, scale: Scale) -> None:
        super().__init__(scale, SMALL * 1.3 + 1.2 * MM)

    def draw(self) -> None:
        """Each amount over its place."""
        canvas = self.canv
        canvas.setFont(REGULAR, SMALL)
        canvas.setFillColor(SOFT)
        canvas.drawString(0, 1.4 * MM, clean(self.scale.unit))
        taken = width_of(clean(self.scale.unit), SMALL)
        for amount in self.scale.ticks():
            word = clean(f"{amount:,.0f}" if self.scale.step >= 1 else f"{amount:,.2f}").replace(",", THOUSANDS)
            wide, x = width_of(word, SMALL), self.scale.x(amount)
            if x - wide / 2 > taken:
                canvas.drawCentredString(x, 1.4 * MM, word)
                taken = x + wide / 2 + 2 * MM
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.line(0, 0, self.width, 0)


class _Line(_Across):
    """One range or price: its name, what is drawn, and the same in words."""

    def __init__(self, row: RangeRow, scale: Scale) -> None:
        super().__init__(scale, 0)
        self.row = row
        name = para(row.name, LISTED, bold=row.kind == "range", tight=True)
        self.name = Beside([], [name, *([para(row.said, SMALL, soft=True, tight=True)] if row.said else [])],
                           at=0, gap=0)  # fmt: skip
        self.words = para(row.words, SMALL, right=True, tight=True)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """As high as its name and its words need."""
        high = max(self.name.wrapOn(self.canv, NAMES - 2 * MM, 1e6)[1], self.words.wrapOn(self.canv, WORDS, 1e6)[1])
        self.height = max(high, BAR) + 2 * MM
        return self.width, self.height

    def draw(self) -> None:
        """Words at both sides, the range or the signs between them."""
        middle = self.height / 2
        self._furniture()
        self.name.drawOn(self.canv, 0, middle - self.name.height / 2)
        self.words.drawOn(self.canv, self.width - WORDS, middle - self.words.height / 2)
        if self.row.kind == "range":
            self._range(middle)
        else:
            self._price(middle)

    def _range(self, middle: float) -> None:
        canvas, row = self.canv, self.row
        left, right = self.scale.x(row.low), self.scale.x(row.high)
        canvas.setFillColor(TRAY)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.9)
        canvas.rect(left, middle - BAR / 2, max(right - left, 0.6), BAR, stroke=1, fill=1)
        canvas.setLineWidth(2.2)
        canvas.line(self.scale.x(row.middle), middle - BAR / 2 - 1, self.scale.x(row.middle), middle + BAR / 2 + 1)

    def _price(self, middle: float) -> None:
        canvas, entered, adjusted = self.canv, self.scale.x(self.row.low), self.scale.x(self.row.middle)
        canvas.setStrokeColor(LINE)
        canvas.setLineWidth(0.8)
        canvas.line(entered, middle, adjusted, middle)
        canvas.setFillColor(PAPER)
        canvas.circle(entered, middle, 1.6, stroke=1, fill=1)
        canvas.setStrokeColor(INK)
        self._diamond(adjusted, middle, fill=self.row.kind == "sold")
        if self.row.kind == "bid":
            path = canvas.beginPath()
            path.moveTo(adjusted - SIGN, middle)
            path.lineTo(adjusted + SIGN, middle)
            path.lineTo(adjusted, middle + SIGN)
            path.close()
            canvas.setFillColor(INK)
            canvas.drawPath(path, stroke=0, fill=1)

    def _diamond(self, x: float, y: float, *, fill: bool) -> None:
        canvas, path = self.canv, self.canv.beginPath()
        path.moveTo(x - SIGN, y)
        for dx, dy in ((0, SIGN), (SIGN, 0), (0, -SIGN)):
            path.lineTo(x + dx, y + dy)
        path.close()
        canvas.setFillColor(INK if fill else PAPER)
        canvas.drawPath(path, stroke=1, fill=1)
