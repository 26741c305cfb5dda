"""The steps of type, the fonts they are set in, and text laid out line by line."""

from functools import cache, cached_property

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QPainter,
    QTextCharFormat,
    QTextLayout,
    QTextOption,
)

from inspector.resource import resource

FAMILY = "Source Sans Pro"
LEADING = 1.28  # line height in sizes of the type
WIDE = 1e6  # pixels in which any text stands on one line
STEPS = {"small": 3.4, "text": 3.8, "next": 4.4, "key": 4.7, "head": 5.5, "name": 8.5, "figure": 15.0}
SEMIBOLD = ("next", "key", "head", "name", "figure")
LEFT, CENTRE, RIGHT = (
    Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignHCenter, Qt.AlignmentFlag.AlignRight,
)  # fmt: skip


@cache
def load_fonts() -> None:
    """The two weights that ship are known to Qt; raises ResourceMissing where one is not there."""
    for weight in ("Regular", "Semibold"):
        QFontDatabase.addApplicationFont(str(resource("fonts", f"SourceSansPro-{weight}.ttf")))


def make_font(pixels: int, semibold: bool = False, zero: bool = False) -> QFont:
    """The text face in this size, unhinted; ``zero`` slashes the nought, for numbers off metal."""
    load_fonts()
    font = QFont(FAMILY)
    font.setPixelSize(max(pixels, 1))
    font.setWeight(QFont.Weight.DemiBold if semibold else QFont.Weight.Normal)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    if zero:
        font.setFeature(QFont.Tag("zero"), 1)
    return font


class Words:
    """A text set in one font with lines 1.28 sizes apart, wrapped to any width, never cut off.

    A ``lead`` stands before it in a font and an ink of its own.
    """

    def __init__(self, text: str, font: QFont, lead: str = "", lead_in: tuple[QFont, QColor] | None = None) -> None:
        self.text = f"{lead} {text}" if lead and text else lead or text
        self.font = font
        self.leading = font.pixelSize() * LEADING
        self._lead, self._lead_in = len(lead), lead_in
        self._layout = QTextLayout(self.text.replace("\n", "\u2028"), font)
        if lead_in is not None:
            rest = self._format(len(lead), len(self.text), font)
            self._layout.setFormats([self._format(0, len(lead), *lead_in), rest])
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        self._layout.setTextOption(option)
        self._width = -1.0
        self._heights: dict[float, float] = {}
        self.natural = WIDE
        self._set(WIDE)
        lines = range(self._layout.lineCount())
        self.natural = max((self._layout.lineAt(n).naturalTextWidth() for n in lines), default=0.0)

    @cached_property
    def least(self) -> float:
        """The width below which a word would be broken, in pixels."""
        lead, text = self.text[: self._lead], self.text[self._lead :]
        first = self._lead_in[0] if self._lead_in else self.font
        words = [*((word, first) for word in lead.split()), *((word, self.font) for word in text.split())]
        return max((_advance(word, font) for word, font in words), default=0.0)

    @staticmethod
    def _format(start: int, end: int, font: QFont, ink: QColor | None = None) -> QTextLayout.FormatRange:
        made, form = QTextLayout.FormatRange(), QTextCharFormat()
        form.setFont(font)
        if ink is not None:
            form.setForeground(ink)
        made.start, made.length, made.format = start, end - start, form  # type: ignore[method-assign]
        return made

    def _set(self, width: float) -> None:
        """Lays the lines out for this width once."""
        width = WIDE if width >= self.natural else width  # where nothing wraps, all widths are alike
        if width == self._width:
            return
        self._width = width
        self._layout.beginLayout()
        count = 0
        while (line := self._layout.createLine()).isValid():
            line.setLineWidth(max(width, 1.0))
            line.setPosition(QPointF(0, count * self.leading + (self.leading - line.height()) / 2))
            count += 1
        self._layout.endLayout()

    def height(self, width: float) -> float:
        """The height in pixels when wrapped to ``width`` pixels; nothing takes no room."""
        if not self.text:
            return 0.0
        width = WIDE if width >= self.natural else width
        if width not in self._heights:
            self._set(width)
            self._heights[width] = self._layout.lineCount() * self.leading
        return self._heights[width]

    def baseline(self) -> float:
        """How far below the top the first line stands, in pixels."""
        self._set(self._width)
        line = self._layout.lineAt(0)
        return line.position().y() + line.ascent() if line.isValid() else 0.0

    def paint(
        self, painter: QPainter, rect: QRectF, colour: QColor,
        align: Qt.AlignmentFlag = LEFT,
    ) -> None:  # fmt: skip
        """The text stands at the top of ``rect`` in this colour."""
        self._set(rect.width())
        painter.setPen(colour)
        if align == LEFT:
            self._layout.draw(painter, rect.topLeft())
            return
        for number in range(self._layout.lineCount()):
            line = self._layout.lineAt(number)
            left = (rect.width() - line.naturalTextWidth()) * _SHARE[align]
            line.draw(painter, QPointF(rect.x() + max(left, 0.0), rect.y()))


_SHARE = {LEFT: 0.0, CENTRE: 0.5, RIGHT: 1.0}


@cache
def _metrics(pixels: int, weight: int, zero: bool) -> QFontMetricsF:
    return QFontMetricsF(make_font(pixels, weight > QFont.Weight.Normal, zero))


def _advance(word: str, font: QFont) -> float:
    zero = bool(font.featureTags())
    return _metrics(font.pixelSize(), font.weight(), zero).horizontalAdvance(word)
