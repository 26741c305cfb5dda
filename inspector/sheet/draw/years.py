"""The years that each assembly allows, as bars over years, with the claimed year ruled through all rows."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.beside import Beside, Mark
from inspector.sheet.draw.kit import (
    CONTENT,
    INK,
    LINE,
    LISTED,
    MM,
    REGULAR,
    RULE,
    SEMIBOLD,
    SMALL,
    SOFT,
    TRAY,
    Gap,
    Piece,
    clean,
    para,
    width_of,
)
from inspector.sheet.draw.setting import part, stack

if TYPE_CHECKING:
    from inspector.sheet.blocks import YearRow, YearsBlock, YearSpan

NAMES, WORDS = 29 * MM, 21 * MM  # the columns of names and of years in words, left and right of the bars
BARS = CONTENT - NAMES - WORDS
ROW, BAR = 5.0 * MM, 2.7 * MM
LEAST = 24 * MM  # room in which a note is set beside the bars, over several lines if it must
WHOLE = 110 * MM  # a chart is not parted while it is shorter than this
WEIGHED = 34 * MM  # the names beside the table of weights


def years(block: YearsBlock, key: str) -> list[Any]:
    """The sentence, the chart that says the same, what it rests on, and the weight of the years."""
    sentence = para(block.sentence, bold=True)
    sentence.head = bool(block.rows)
    chart = [Gap(1.4), _chart(block)] if block.rows else []
    below: list[Any] = [para(line, LISTED) for line in block.lines]
    if block.reasons:
        below += [Gap(0.8), para(" ".join(block.reasons), SMALL, soft=True, tight=True)]
    top = part([para(block.title, bold=True)], [sentence, *chart], Mark(key, block.title), short=WHOLE)
    top.below = 1.6 * MM
    return [top, stack([*below, Gap(1.4), *_weight(block), Gap(3)])]


def _chart(block: YearsBlock) -> Beside:
    scale = Scale(block)
    lines = [_Line(row, scale) for row in block.rows]
    foot = [_Foot(scale, block.claimed_word)] if scale.claimed is not None else []
    return Beside([], [_Head(scale), *lines, *foot], at=0, gap=0, whole=True, short=WHOLE)


class Scale:
    """Where each year lies, in points from the left edge; ``claimed`` is None where it is not on the chart."""

    def __init__(self, block: YearsBlock) -> None:
        self.first, self.last = block.first, max(block.first, block.last)
        inside = block.claimed is not None and self.first <= block.claimed <= self.last
        self.claimed = block.claimed if inside else None
        self.step = BARS / (self.last - self.first + 1)

    def x(self, year: int) -> float:
        """The left edge of a year."""
        return NAMES + (year - self.first) * self.step

    def between(self, span: YearSpan) -> tuple[float, float]:
        """The left and right edge of the span, held inside the chart; equal where it lies outside."""
        first, last = max(span.first, self.first), min(span.last, self.last)
        return (self.x(first), self.x(last + 1)) if first <= last else (NAMES, NAMES)


class _Across(Piece):
    """A line of the chart; the claimed year is ruled through each."""

    def __init__(self, scale: Scale, height: float) -> None:
        super().__init__(CONTENT, height)
        self.scale = scale

    def _rule(self, y: float) -> None:
        self.canv.setStrokeColor(RULE)
        self.canv.setLineWidth(0.5)
        self.canv.line(0, y, self.width, y)

    def _claim(self, foot: float, top: float) -> None:
        if self.scale.claimed is None:
            return
        self.canv.setStrokeColor(INK)
        self.canv.setLineWidth(1)
        for year in (self.scale.claimed, self.scale.claimed + 1):
            self.canv.line(self.scale.x(year), foot, self.scale.x(year), top)


class _Head(_Across):
    """The years in print, as many as have room, the claimed one always."""

    head = True

    def __init__(self, scale: Scale) -> None:
        super().__init__(scale, SMALL * 1.3 + 1.2 * MM)

    def draw(self) -> None:
        """Each year in the middle of its room, a hairline below."""
        canvas, scale = self.canv, self.scale
        every = max(1, ceil((width_of("0000", SMALL, bold=True) + 1.2 * MM) / scale.step))
        start = scale.first if scale.claimed is None else scale.claimed % every
        for year in range(scale.first, scale.last + 1):
            if (year - start) % every:
                continue
            claimed = year == scale.claimed
            canvas.setFont(SEMIBOLD if claimed else REGULAR, SMALL)
            canvas.setFillColor(INK if claimed else SOFT)
            canvas.drawCentredString(scale.x(year) + scale.step / 2, 1.2 * MM + 0.2 * SMALL, str(year))
        self._rule(0)
        self._claim(0, 0.8 * MM)


class _Foot(_Across):
    """The word below the claimed year."""

    def __init__(self, scale: Scale, word: str) -> None:
        super().__init__(scale, 0.8 * MM + SMALL * 1.2)
        self.word = clean(word)

    def draw(self) -> None:
        """The lines end a little below the last row, the word under them."""
        self._claim(self.height - 0.8 * MM, self.height)
        if self.scale.claimed is None:
            return
        wide = width_of(self.word, SMALL, bold=True)
        left = self.scale.x(self.scale.claimed) + (self.scale.step - wide) / 2
        self.canv.setFont(SEMIBOLD, SMALL)
        self.canv.setFillColor(INK)
        self.canv.drawString(min(max(left, 0), self.width - wide), 0.25 * SMALL, self.word)


class _Line(_Across):
    """One assembly: its name, its bars, its years in words, and a word in the free part of the row or below it."""

    def __init__(self, row: YearRow, scale: Scale) -> None:
        odd = any(span.kind == "odd" for span in row.spans)
        self.row, self.odd = row, odd
        self.name = para(row.name, SMALL, bold=odd, tight=True)
        self.words = para(row.years, SMALL, soft=not row.spans, right=True, tight=True)
        left, right = _free(row, scale)
        needs = min(width_of(clean(row.note), SMALL), LEAST) + 3 * MM
        self.inside = needs <= right - left
        self.note = para(row.note, SMALL, tight=True) if row.note else None
        self.at, self.room = (left + 1.5 * MM, right - left - 3 * MM) if self.inside else (NAMES, BARS)
        super().__init__(scale, 0)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """As high as the name, the years in words, and the note beside or below the bars need."""
        own = self.canv
        told = self.note.wrapOn(own, self.room, 1e6)[1] if self.note else 0.0
        tall = max(self.name.wrapOn(own, NAMES - 2 * MM, 1e6)[1], self.words.wrapOn(own, WORDS - 1 * MM, 1e6)[1])
        self.bar = max(ROW, max(tall, told if self.inside else 0.0) + 1.2 * MM)
        self.height = self.bar + (0.0 if self.inside else told + 0.8 * MM if told else 0.0)
        return self.width, self.height

    def draw(self) -> None:
        """Words at both sides, bars between them, and the claimed year over all of it."""
        canvas, middle = self.canv, self.height - self.bar / 2
        self.name.drawOn(canvas, 0, middle - self.name.height / 2)
        self.words.drawOn(canvas, self.width - WORDS + 1 * MM, middle - self.words.height / 2)
        if not self.row.spans:
            self._none(middle)
        for span in self.row.spans:
            self._span(span, middle - BAR / 2)
        self._rule(0)
        self._claim(0 if self.inside or not self.note else self.height - self.bar, self.height)
        if self.note:
            self.note.drawOn(canvas, self.at, middle - self.note.height / 2 if self.inside else 0.8 * MM)

    def _none(self, middle: float) -> None:
        canvas = self.canv
        canvas.setStrokeColor(LINE)
        canvas.setLineWidth(1)
        canvas.setDash(1, 2.4)
        canvas.line(NAMES, middle, NAMES + BARS, middle)
        canvas.setDash()

    def _span(self, span: YearSpan, foot: float) -> None:
        left, right = self.scale.between(span)
        if right <= left:
            return
        canvas, wide = self.canv, right - left - 1.2
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.9)
        if span.kind == "allowed":
            canvas.setFillColor(TRAY)
            canvas.rect(left + 0.6, foot, wide, BAR, stroke=1, fill=1)
            self._solid(span, foot)
            return
        if span.kind == "odd":
            self._hatch(left + 0.6, foot, wide)
        else:
            canvas.setDash(2.6, 1.6)
        canvas.rect(left + 0.6, foot, wide, BAR, stroke=1, fill=0)
        canvas.setDash()

    def _solid(self, span: YearSpan, foot: float) -> None:
        """What lies in the claimed year is filled."""
        claimed = self.scale.claimed
        if claimed is not None and span.first <= claimed <= span.last:
            self.canv.setFillColor(INK)
            self.canv.rect(self.scale.x(claimed) + 0.6, foot, self.scale.step - 1.2, BAR, stroke=1, fill=1)

    def _hatch(self, left: float, foot: float, wide: float) -> None:
        canvas = self.canv
        canvas.saveState()
        room = canvas.beginPath()
        room.rect(left, foot, wide, BAR)
        canvas.clipPath(room, stroke=0, fill=0)
        canvas.setLineWidth(0.8)
        at = left - BAR
        while at < left + wide:
            canvas.line(at, foot, at + BAR, foot + BAR)
            at += 1.15 * MM
        canvas.restoreState()


def _free(row: YearRow, scale: Scale) -> tuple[float, float]:
    """The widest stretch of the row that neither a bar nor the claimed year takes."""
    taken = [scale.between(span) for span in row.spans]
    if scale.claimed is not None:
        taken.append((scale.x(scale.claimed), scale.x(scale.claimed + 1)))
    best, at = (NAMES, NAMES), NAMES
    for left, right in [*sorted(taken), (NAMES + BARS, NAMES + BARS)]:
        if left - at > best[1] - best[0]:
            best = (at, left)
        at = max(at, right)
    return best


def _weight(block: YearsBlock) -> list[Any]:
    """The sentence, the table, and what was assumed."""
    if not block.weight:
        return []
    first, *others = block.weight
    cells = [_Cells(*row, head=n == 0) for n, row in enumerate(block.table)]
    table: list[Any] = [Gap(0.6), Beside([], cells, at=0, gap=0, whole=True), Gap(0.6)]
    rest: list[Any] = [para(" ".join(others), SMALL, soft=True, tight=True)] if others else []
    return [para(first, LISTED), *(table if block.table else []), *rest]


class _Cells(Piece):
    """One line of the table of weights, its cells under each other from the right."""

    def __init__(self, name: str, cells: tuple[str, ...], *, head: bool) -> None:
        super().__init__(CONTENT, SMALL * 1.35)
        self.name = clean(name)
        self.cells, self.heads = cells, head
        self.step = min(11 * MM, (CONTENT - WEIGHED) / max(len(cells), 1))

    def draw(self) -> None:
        """The name, then the cells; the head in semibold over a hairline."""
        canvas, foot = self.canv, 0.4 * SMALL
        canvas.setFont(SEMIBOLD if self.heads else REGULAR, SMALL)
        canvas.setFillColor(INK)
        canvas.drawString(0, foot, self.name)
        for n, cell in enumerate(self.cells, 1):
            canvas.drawRightString(WEIGHED + n * self.step, foot, cell)
        if self.heads:
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(0.5)
            canvas.line(0, 0.5, WEIGHED + len(self.cells) * self.step, 0.5)
