"""An outline drawing of a machine: recoloured, rendered once a size, and where it leaves room."""

import re
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from inspector.window.look.inks import Inks

DRAWN_INK, DRAWN_PAPER = "#1B2230", "#FBFAF6"  # what the drawings are drawn in
DRAWN_STROKE = 7.5
UNDER_SIGNS, THINNEST = 6.5, 4.0  # of the strokes where signs stand on them
FINE = 1.35  # what such a stroke is to be in pixels, between those two
_CELLS = 222  # across, when the room round the machine is looked at
_VIEWBOX = re.compile(r'viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"')


_STROKE = re.compile(rf'(stroke="{DRAWN_PAPER}" )?stroke-width="([\d.]+)"')


class NoDrawing(ValueError):
    """The file is not an outline drawing."""


class Drawing:
    """One outline drawing; its ``box`` is the viewBox, in millimetres of the machine."""

    def __init__(self, source: Path | str) -> None:
        try:
            self._text = Path(source).read_text("utf-8")
        except (OSError, UnicodeDecodeError) as error:
            raise NoDrawing(f"{source}: the outline drawing cannot be read ({error}).") from error
        found = _VIEWBOX.search(self._text)
        if found is None:
            raise NoDrawing(f"{source}: the outline drawing has no viewBox: give its svg element one.")
        self.box = QRectF(*(float(part) for part in found.groups()))
        self._kept: dict[tuple[int, int, float, Inks, str, bool], QPixmap] = {}
        self._edges: Edges | None = None

    def coloured(self, inks: Inks, ink: str = "line", stroke: float = DRAWN_STROKE) -> str:
        """The drawing in one ink on paper, its strokes this many millimetres of the machine."""
        text = _STROKE.sub(lambda found: _thinner(found, stroke), self._text)
        return text.replace(DRAWN_INK, inks.colour(ink).name()).replace(DRAWN_PAPER, inks.paper)

    def stroke(self, width: float, signs: bool) -> float:
        """The stroke that suits the drawing when it is this wide in pixels."""
        if not signs:
            return DRAWN_STROKE
        return min(max(FINE * self.box.width() / max(width, 1.0), THINNEST), UNDER_SIGNS)

    def pixmap(self, size: QSize, ratio: float, inks: Inks, ink: str, signs: bool) -> QPixmap:
        """The drawing filling ``size``; the same is rendered once."""
        key = (size.width(), size.height(), ratio, inks, ink, signs)
        if key not in self._kept:
            if len(self._kept) > 8:
                self._kept.clear()
            stroke = self.stroke(size.width(), signs)
            image = self._render(size * ratio, self.coloured(inks, ink, stroke))
            image.setDevicePixelRatio(ratio)
            self._kept[key] = QPixmap.fromImage(image)
        return self._kept[key]

    def _render(self, size: QSize, text: str) -> QImage:
        image = QImage(size.expandedTo(QSize(1, 1)), QImage.Format.Format_ARGB32_Premultiplied)
        image.fill(Qt.GlobalColor.transparent)
        painter = QPainter(image)
        renderer = QSvgRenderer(QByteArray(text.encode("utf-8")))
        renderer.render(painter, QRectF(image.rect()))
        painter.end()
        return image

    def edges(self) -> "Edges":
        """Where the machine begins and ends in each column and row of a coarse grid."""
        if self._edges is None:
            high = max(round(_CELLS * self.box.height() / self.box.width()), 1)
            self._edges = Edges(self._render(QSize(_CELLS, high), self._text))
        return self._edges


def drawing_at(source: Path | str) -> Drawing:
    """The drawing in this file, read and rendered once while the file stays as it is; raises NoDrawing."""
    try:
        stat = Path(source).stat()
    except OSError as error:
        raise NoDrawing(f"{source}: the outline drawing cannot be read ({error}).") from error
    return _kept(str(source), stat.st_mtime_ns, stat.st_size)


@lru_cache(maxsize=16)
def _kept(source: str, changed: int, size: int) -> Drawing:
    return Drawing(source)


def _thinner(found: re.Match[str], stroke: float) -> str:
    """A stroke of the drawing, or the paper within the two strokes of a tube, made to measure."""
    paper, width = found.group(1) or "", float(found.group(2))
    if paper:
        width += 2 * (DRAWN_STROKE - stroke)
    elif width == DRAWN_STROKE:
        width = stroke
    return f'{paper}stroke-width="{width:g}"'


class Edges:
    """The first and last drawn cell of each column and row, as shares of height and width."""

    def __init__(self, image: QImage) -> None:
        flat = image.convertToFormat(QImage.Format.Format_Alpha8)
        wide, high, line = flat.width(), flat.height(), flat.bytesPerLine()
        data = bytes(flat.constBits())
        columns = [data[x::line][:high] for x in range(wide)]
        rows = [data[y * line : y * line + wide] for y in range(high)]
        self.top, self.foot = _ends(columns)
        self.left, self.right = _ends(rows)

    def above(self, left: float, right: float) -> float:
        """The highest drawn share between two shares of the width; 1 where nothing is drawn."""
        return min(_part(self.top, left, right), default=1.0)

    def below(self, left: float, right: float) -> float:
        """The lowest drawn share between two shares of the width; 0 where nothing is drawn."""
        return max(_part(self.foot, left, right), default=0.0)

    def before(self, top: float, foot: float) -> float:
        """The leftmost drawn share between two shares of the height."""
        return min(_part(self.left, top, foot), default=1.0)

    def after(self, top: float, foot: float) -> float:
        """The rightmost drawn share between two shares of the height."""
        return max(_part(self.right, top, foot), default=0.0)


def _ends(lines: list[bytes]) -> tuple[list[float], list[float]]:
    blank = b"\0"
    first = [(len(line) - len(line.lstrip(blank))) / len(line) for line in lines]
    last = [len(line.rstrip(blank)) / len(line) for line in lines]
    return first, last


def _part(values: list[float], begin: float, end: float) -> list[float]:
    count = len(values)
    return values[max(int(begin * count), 0) : max(int(end * count) + 1, 0)]
