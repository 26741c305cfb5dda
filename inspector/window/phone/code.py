"""The address as a code that a phone's camera reads."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.inks import SUNLIGHT
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured, measured

WIDE = 62.0  # with its quiet edge, in millimetres: read easily from half a metre
QUIET = 4  # modules of paper on every side, by ISO/IEC 18004


class QrCode(Measured, QWidget):
    """A QR code of the text, black on white in every scheme, since a camera reads no other well."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._rows: tuple[tuple[bool, ...], ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def say(self, text: str, name: str) -> None:
        """The code says this text; ``name`` says what it is to whoever does not see it."""
        import segno

        code = segno.make(text, error="m", micro=False)
        self._rows = tuple(tuple(bool(module) for module in row) for row in code.matrix)
        self.setAccessibleName(name)
        self.update()

    @property
    def modules(self) -> tuple[tuple[bool, ...], ...]:
        """The modules, row by row, dark ones true, without the quiet edge."""
        return self._rows

    @measured
    def sizeHint(self) -> QSize:
        """As wide as it is high."""
        wide = self.look.px(WIDE)
        return QSize(wide, wide)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws every module on whole pixels, so that its edges are sharp."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), SUNLIGHT.colour("paper"))
        count = len(self._rows) + 2 * QUIET
        ratio = self.devicePixelRatioF()
        side = int(min(self.width(), self.height()) * ratio / count) / ratio
        left = round((self.width() - side * len(self._rows)) / 2 * ratio) / ratio
        top = round((self.height() - side * len(self._rows)) / 2 * ratio) / ratio
        painter.setPen(Qt.PenStyle.NoPen)
        for y, row in enumerate(self._rows):
            for x, dark in enumerate(row):
                if dark:
                    painter.fillRect(QRectF(left + x * side, top + y * side, side, side), SUNLIGHT.colour("ink"))
        painter.end()
