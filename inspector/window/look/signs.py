"""Every sign by its name, its width, a label of sign and word, and a sign as an icon."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look import marks
from inspector.window.look.inks import MARKS, Inks
from inspector.window.look.look import Look
from inspector.window.look.measured import Measured, measured
from inspector.window.look.strokes import (
    ACTIONS,
    GRADE_WIDE,
    RELATION_WIDE,
    RELATIONS,
    paint_action,
    paint_grade,
    paint_relation,
)

_Round = Callable[[QPainter, QPointF, float, QColor], None]

_ROUND: dict[str, _Round] = {
    "pass": marks.paint_pass,
    "doubt": marks.paint_doubt,
    "fail": marks.paint_fail,
    "examined": marks.paint_examined,
    "not checked": marks.paint_dots,
    "not seen": marks.paint_ring,
    "cannot be seen": marks.paint_hatched,
    "not fitted to this version": marks.paint_crossed,
    "see": marks.paint_examined,
    "do not see": marks.paint_ring,
    "cannot see": marks.paint_hatched,
}
SEEN = ("examined", "not checked", "not seen", "cannot be seen", "not fitted to this version")
OF_STAMPING = ("see", "do not see", "cannot see")
GRADES = ("grade 0", "grade 1", "grade 2", "grade 3")
SIGNS = (*_ROUND, *GRADES, *RELATIONS, *ACTIONS)
SMALLEST = 2.8  # of a round sign, in millimetres


def sign_share(name: str) -> float:
    """How high a sign stands beside words, in sizes of their type."""
    if name in MARKS:
        return 1.25
    return 1.1 if name in _ROUND else 0.84 if name in GRADES else 1.34 if name in RELATIONS else 1.2


def sign_width(name: str, height: float) -> float:
    """How wide a sign is when it is this high, in the same unit; raises KeyError for no sign."""
    if name not in SIGNS:
        raise KeyError(f"There is no sign {name!r}.")
    if name in GRADES:
        return height * GRADE_WIDE
    if name in RELATIONS:
        return height * RELATION_WIDE
    return height * (1.52 if name == "fail" else 1.08 if name == "doubt" else 1.0)


def sign_ink(name: str) -> str:
    """The ink that a sign is drawn in where nothing else is said."""
    if name in MARKS:
        return name
    return "soft" if name in _ROUND else "ink"


def paint_sign(painter: QPainter, rect: QRectF, name: str, inks: Inks, colour: QColor | None = None) -> None:
    """The sign stands in the middle of ``rect``, as large as fits, in its ink or in ``colour``."""
    high = min(rect.height(), rect.width() / sign_width(name, 1.0))
    box = QRectF(0, 0, sign_width(name, high), high)
    box.moveCenter(rect.center())
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    drawn = colour or inks.colour(sign_ink(name))
    if name in _ROUND:
        _ROUND[name](painter, box.center(), high, drawn)
    elif name in GRADES:
        paint_grade(painter, _whole(box), int(name[-1]), drawn, colour or inks.colour("line"))
    elif name in RELATIONS:
        paint_relation(painter, _whole(box), name, drawn)
    else:
        paint_action(painter, box, name, drawn)
    painter.restore()


def _whole(box: QRectF) -> QRectF:
    """The box moved to whole pixels, so that upright and level edges are sharp."""
    return QRectF(round(box.x()), round(box.y()), box.width(), box.height())


def sign_icon(name: str, look: Look, millimetres: float = 4.0, ratio: float = 2.0) -> QIcon:
    """The sign as an icon in the look that holds now; ask again after the look changed."""
    high = look.grown(millimetres)
    wide = round(sign_width(name, high))
    picture = QPixmap(QSize(wide, high) * ratio)
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    paint_sign(painter, QRectF(0, 0, wide, high), name, look.inks)
    painter.end()
    return QIcon(picture)


class SignLabel(Measured, QWidget):
    """A sign with its word beside it, or alone; the word is its accessible name either way.

    The sign goes with the size of the type, or is ``size`` millimetres high.
    """

    def __init__(
        self, look: Look, sign: str, word: str, *, alone: bool = False, size: float = 0.0,
        step: str = "text", semibold: bool | None = None, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._alone, self._step, self._semibold = look, alone, step, semibold
        self._size = size
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.restyle)
        self.say(sign, word)

    def say(self, sign: str, word: str) -> None:
        """The sign and the word are these."""
        if (sign, word) == (getattr(self, "sign", None), getattr(self, "word", None)):
            return
        self.sign, self.word = sign, word
        self.setAccessibleName(word)
        self.setToolTip(word if self._alone else "")
        self.restyle()

    def restyle(self) -> None:
        """The label is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    def _sign_high(self) -> float:
        if self._size:
            return self.look.grown(self._size)
        size = self.look.font(self._step).pixelSize() * sign_share(self.sign)
        return max(round(size), self.look.grown(SMALLEST))

    def _text_left(self) -> float:
        return sign_width(self.sign, self._sign_high()) + self.look.mm(2.2)

    @measured
    def sizeHint(self) -> QSize:
        """The sign, a gap, and the word on one line."""
        high = max(self._sign_high(), self.look.leading(self._step))
        if self._alone:
            return QSize(round(sign_width(self.sign, high)), round(high))
        words = self.look.words(self.word, self._step, self._semibold)
        return QSize(round(self._text_left() + words.natural + 1), round(high))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the sign, then the word in line with its middle."""
        painter = QPainter(self)
        high = self._sign_high()
        box = QRectF(0, (self.height() - high) / 2, sign_width(self.sign, high), high)
        paint_sign(painter, box, self.sign, self.look.inks)
        if not self._alone:
            words = self.look.words(self.word, self._step, self._semibold)
            top = round((self.height() - words.leading) / 2)
            room = QRectF(self._text_left(), top, words.natural + 1, words.leading)
            words.paint(painter, room, self.look.colour("ink"))
        painter.end()
