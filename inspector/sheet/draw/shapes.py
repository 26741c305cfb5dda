"""What is drawn rather than written: coverage, score bands, figures of a number, photographs, signatures, lines."""

from __future__ import annotations

from hashlib import sha256
from io import BytesIO
from math import isfinite
from typing import TYPE_CHECKING, Any

from inspector.sheet.draw.kit import (
    HEAD,
    INK,
    LINE,
    MM,
    REGULAR,
    RULE,
    SEMIBOLD,
    SIGN_INKS,
    SMALL,
    SOFT,
    TRAY,
    Piece,
    clean,
    width_of,
)

if TYPE_CHECKING:
    from inspector.sheet.blocks import Cell, Picture


UNSEEN = 3  # text that is there to be found and copied, but not painted (ISO 32000-1, table 106)


class Rule(Piece):
    """A line across the column; its strength in points."""

    def __init__(self, strength: float = 0.85, *, hair: bool = False) -> None:
        super().__init__(0, 0)
        self.strength, self.hair = strength, hair

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width and no height."""
        self.width = width
        return width, 0

    def draw(self) -> None:
        """The line."""
        self.canv.setStrokeColor(RULE if self.hair else INK)
        self.canv.setLineWidth(0.5 if self.hair else self.strength)
        self.canv.line(0, 0, self.width, 0)


class Ruled(Piece):
    """One line to write on, its foot ruled, a small word under or before it."""

    def __init__(self, height: float, word: str = "") -> None:
        super().__init__(0, height)
        self.word = word

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width."""
        self.width = width
        return width, self.height

    def draw(self) -> None:
        """The word, and the line from behind it to the edge."""
        left = 0.0
        if self.word:
            self.canv.setFont(REGULAR, SMALL)
            self.canv.setFillColor(SOFT)
            self.canv.drawString(0, 1.2 * MM, clean(self.word))
            left = width_of(clean(self.word), SMALL) + 2 * MM
        self.canv.setStrokeColor(LINE)
        self.canv.setLineWidth(0.6)
        self.canv.line(left, 0, self.width, 0)


class Comb(Piece):
    """Places for figures, one short line each, to write a number on."""

    STEP, WIDE = 7 * MM, 5.4 * MM

    def __init__(self, height: float = 10 * MM) -> None:
        super().__init__(0, height)

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width."""
        self.width = width
        return width, self.height

    def draw(self) -> None:
        """As many places as fit."""
        self.canv.setStrokeColor(INK)
        self.canv.setLineWidth(0.8)
        for n in range(int((self.width - self.WIDE) / self.STEP) + 1):
            left = n * self.STEP
            self.canv.line(left, 0, left + self.WIDE, 0)


class Coverage(Piece):
    """What was seen lies down as dots, what is left stands as strokes; one of each for a hundredth."""

    def __init__(self, percent: int) -> None:
        super().__init__(0, 4 * MM)
        self.percent = percent

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width."""
        self.width = width
        return width, self.height

    def draw(self) -> None:
        """Dots from the left, strokes at the right."""
        step, canvas = self.width / 100, self.canv
        dot, stroke = min(0.62 * MM, 0.47 * step), min(0.72 * MM, 0.55 * step)
        canvas.setFillColor(INK)
        for n in range(100):
            x = n * step
            if n < self.percent:
                canvas.rect(x, 0.4 * MM, dot, 0.42 * MM, stroke=0, fill=1)
            else:
                canvas.rect(x + step - stroke, 0.2 * MM, stroke, 2.6 * MM, stroke=0, fill=1)


class Band(Piece):
    """A scale of 0 to 100 with its quarters, a band from lowest to highest, and a thick stroke at the value."""

    def __init__(self, value: int | None, low: int, high: int, width: float) -> None:
        super().__init__(width, 4.4 * MM)
        self.value, self.low, self.high = value, low, high

    def draw(self) -> None:
        """Scale, band and stroke in ink and tray; the stroke never without the band."""
        canvas, per = self.canv, self.width / 100
        canvas.setStrokeColor(LINE)
        canvas.setLineWidth(0.5)
        canvas.line(0, 0.8 * MM, self.width, 0.8 * MM)
        for quarter in range(5):
            x = quarter * 25 * per
            canvas.line(x, 0.8 * MM, x, 1.8 * MM)
        if self.value is None:
            return
        canvas.setFillColor(TRAY)
        canvas.setStrokeColor(INK)
        canvas.rect(self.low * per, 1.2 * MM, max(0.4, (self.high - self.low) * per), 2.4 * MM, stroke=1, fill=1)
        canvas.setLineWidth(1.8)
        canvas.line(self.value * per, 0.4 * MM, self.value * per, 4.4 * MM)


class Figures(Piece):
    """A number figure by figure, zeros slashed: a line under a clear one, a broken one with what else it could be
    under a probable one, hatching for an unreadable one."""

    def __init__(self, cells: tuple[Cell, ...]) -> None:
        super().__init__()
        self.cells = [(clean(cell.text) or " ", cell.clarity, clean(cell.others)) for cell in cells]
        self.lines: list[list[tuple[float, str, str, float, str]]] = []
        self._measure()

    def _measure(self) -> None:
        """A line is higher where a word stands under it."""
        self.below = SMALL if any(others for _, _, others in self.cells) else 0.0
        self.each = HEAD * 1.4 + self.below

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """As many lines as the figures need."""
        lines, x = [[]], 0.0  # type: list[list[tuple[float, str, str, float, str]]], float
        for text, clarity, others in self.cells:
            wide = width_of(text, HEAD, bold=True)
            if x and x + wide > width:
                lines.append([])
                x = 0.0
            lines[-1].append((x, text, clarity, wide, others))
            x += wide
        self.lines, self.width, self.height = lines, width, self.each * len(lines)
        return self.width, self.height

    def split(self, width: float, height: float) -> list[Any]:
        """The lines that fit, and the rest."""
        fits = int(height / self.each)
        if not 0 < fits < len(self.lines):
            return []
        at = sum(len(line) for line in self.lines[:fits])
        parts = (Figures(()), Figures(()))
        parts[0].cells, parts[1].cells = self.cells[:at], self.cells[at:]
        for one in parts:
            one._measure()
        return list(parts)

    def draw(self) -> None:
        """Each line from its left."""
        for n, line in enumerate(self.lines):
            foot, taken = self.height - self.each * (n + 1) + 0.32 * HEAD + self.below, 0.0
            for x, text, clarity, wide, others in line:
                self._figure(x, foot, text, clarity, wide)
                taken = self._others(x + wide / 2, foot, others, taken)

    def _others(self, middle: float, foot: float, others: str, taken: float) -> float:
        """What else the figure could be stands under it where there is room; how far the words then reach."""
        wide = width_of(others, SMALL)
        left = max(0.0, middle - wide / 2)
        if not others or left < taken or left + wide > self.width:
            return taken
        self.canv.setFont(REGULAR, SMALL)
        self.canv.setFillColor(INK)
        self.canv.drawString(left, foot - 3.4 - 0.8 * SMALL, others)
        return left + wide + 1 * MM

    def _figure(self, x: float, foot: float, text: str, clarity: str, wide: float) -> None:
        canvas = self.canv
        canvas.setFont(SEMIBOLD, HEAD)
        canvas.setFillColor(INK)
        canvas.drawString(x, foot, text, mode=UNSEEN if clarity == "unreadable" else None)
        canvas.setLineWidth(0.8)
        if text == "0":
            canvas.setStrokeColor(INK)
            canvas.line(x + 0.36 * wide, foot + 0.2 * HEAD, x + 0.64 * wide, foot + 0.45 * HEAD)
        if clarity == "clear" and text != " ":
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(0.6)
            canvas.line(x + 0.5, foot - 2.2, x + wide - 0.5, foot - 2.2)
        if clarity == "probable":
            canvas.setStrokeColor(SIGN_INKS["doubt"])
            canvas.setLineWidth(1.2)
            canvas.setDash(2.6, 1.3)
            canvas.line(x, foot - 2.2, x + wide, foot - 2.2)
            canvas.setDash()
        if clarity == "unreadable":
            canvas.setStrokeColor(SOFT)
            canvas.setLineWidth(0.6)
            for off in range(4):
                left = x + off * wide / 4
                canvas.line(left, foot - 1, left + wide / 4, foot + 0.66 * HEAD)


class _Jpeg:
    """What the drawing library needs to take a JPEG in as it is, without decoding it."""

    def __init__(self, data: bytes) -> None:
        self._data = data

    def jpeg_fh(self) -> BytesIO:
        return BytesIO(self._data)

    def __str__(self) -> str:
        return sha256(self._data).hexdigest()


class Photo(Piece):
    """A photograph with a hairline round it, as large as fits."""

    def __init__(self, picture: Picture, most_wide: float, most_high: float) -> None:
        scale = min(most_wide / picture.width, most_high / picture.height)
        super().__init__(max(1.0, picture.width * scale), max(1.0, picture.height * scale))
        self.jpeg = picture.jpeg or b""

    def draw(self) -> None:
        """The picture, its own bytes embedded."""
        canvas = self.canv
        canvas.drawImage(_Jpeg(self.jpeg), 0, 0, self.width, self.height)
        canvas.setStrokeColor(LINE)
        canvas.setLineWidth(0.4)
        canvas.rect(0, 0, self.width, self.height, stroke=1, fill=0)


class Drawn(Piece):
    """A signature as drawn, its shape kept, above its line."""

    def __init__(self, strokes: tuple[tuple[tuple[float, float], ...], ...], height: float = 14 * MM) -> None:
        super().__init__(0, height)
        self.strokes = strokes

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """The whole width."""
        self.width = width
        return width, self.height

    def draw(self) -> None:
        """The strokes scaled into the room, the line under them."""
        canvas = self.canv
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.8)
        canvas.line(0, 0, self.width, 0)
        points = [point for stroke in self.strokes for point in stroke]
        if not points:
            return
        left, top = min(x for x, _ in points), min(y for _, y in points)
        wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - top
        if not isfinite(wide) or not isfinite(high):
            return
        scale = min((self.width - 4 * MM) / max(wide, 1e-6), (self.height - 3 * MM) / max(high, 1e-6), 1e6)
        canvas.setStrokeColor(SIGN_INKS["pass"])
        canvas.setLineWidth(1.2)
        canvas.setLineCap(1)
        for stroke in self.strokes:
            self._stroke([(2 * MM + (x - left) * scale, 1.5 * MM + (high - y + top) * scale) for x, y in stroke])
        canvas.setLineCap(0)

    def _stroke(self, points: list[tuple[float, float]]) -> None:
        path = self.canv.beginPath()
        path.moveTo(*points[0])
        for point in points[1:] or points:
            path.lineTo(*point)
        self.canv.drawPath(path, stroke=1, fill=0)
