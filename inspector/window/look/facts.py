"""A fact with its source at the right of it, and what is unsafe, in words."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.window.look.look import Look
from inspector.window.look.measured import Measured, measured
from inspector.window.look.rows import ARROW_ROOM, BETWEEN, BaseRow
from inspector.window.look.signs import paint_sign, sign_width
from inspector.window.look.stack import Part, Stack

GRADE_HIGH = 3.1  # of the strokes that tell the grade of a source, in millimetres
SHARE = 2 / 3  # where the source begins, of the whole width


class FactRow(BaseRow):
    """A fact with a second line at the left; at the right the grade, kind and place of its source.

    ``grade`` is 0 to 3. Where there is no room beside the fact, the source stands below it.
    """

    def __init__(
        self, look: Look, title: str, *, second: str = "", grade: int = 0, kind: str = "",
        place: str = "", lead: str = "", opens: bool = True, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, opens=opens, parent=parent)
        self._said: tuple[object, ...] = ()
        self.say(title, second=second, grade=grade, kind=kind, place=place, lead=lead)

    def say(
        self, title: str, *, second: str = "", grade: int = 0, kind: str = "", place: str = "",
        lead: str = "",
    ) -> None:  # fmt: skip
        """The fact and its source are these."""
        said = (title, second, grade, kind, place, lead)
        if said == self._said:
            return
        self._said = said
        self.title, self.second, self.lead = title, second, lead
        self.grade, self.kind, self.place = min(max(grade, 0), 3), kind, place
        words = (lead, title, second, kind, place)
        self.setAccessibleName(", ".join(word for word in words if word))
        self.restyle()

    @measured
    def _fact(self) -> Stack:
        return Stack(self.look, (
            Part(self.title, "text", True), Part(self.second, "small", False, "soft"),
        ))  # fmt: skip

    @measured
    def _source(self) -> Stack:
        return Stack(self.look, (
            Part(self.kind, "small", True), Part(self.place, "small", False, "soft"),
        ))  # fmt: skip

    def _indent(self) -> float:
        """From the left of the grade to the left of the kind, in pixels."""
        return sign_width("grade 3", self.look.grown(GRADE_HIGH)) + self.look.mm(2.1)

    def _lead(self) -> float:
        if not self.lead:
            return 0.0
        words = self.look.words(self.lead)
        return max(words.natural + self.look.mm(BETWEEN), self.look.grown(11))

    def _beside(self, width: float) -> bool:
        """Whether fact and source fit beside one another without breaking a word."""
        whole = width + self.look.grown(ARROW_ROOM)
        left = whole * SHARE - self._lead() - self.look.mm(BETWEEN)
        right = width - whole * SHARE - self._indent()
        return self._fact().least <= left and self._source().least <= right and left > right

    @measured
    def _rooms(self, width: float) -> tuple[QRectF, QRectF]:
        """The rooms of fact and source, tops at 0, each as high as its text."""
        fact, source, lead, indent = self._fact(), self._source(), self._lead(), self._indent()
        if self._beside(width):
            at = (width + self.look.grown(ARROW_ROOM)) * SHARE
            wide = max(at - lead - self.look.mm(BETWEEN), 1.0)
            first = QRectF(lead, 0, wide, fact.height(wide))
            rest = max(width - at - indent, 1.0)
            return first, QRectF(at + indent, 0, rest, source.height(rest))
        wide = max(width - lead, 1.0)
        first = QRectF(lead, 0, wide, fact.height(wide))
        rest = max(width - lead - indent, 1.0)
        top = first.height() + self.look.mm(1)
        return first, QRectF(lead + indent, top, rest, source.height(rest))

    def content_height(self, width: float) -> float:
        """The height down to the end of whichever text ends lower."""
        first, second = self._rooms(width)
        return max(first.bottom(), second.bottom())

    @measured
    def sizeHint(self) -> QSize:
        """The width at which fact and source stand on one line each."""
        wide = round(max(
            (self._fact().natural + self._lead() + self.look.mm(BETWEEN)) / SHARE,
            (self._source().natural + self._indent()) / (1 - SHARE) + self.look.grown(ARROW_ROOM),
        ))  # fmt: skip
        return QSize(wide, self.heightForWidth(wide))

    def paint_content(self, painter: QPainter, room: QRectF) -> None:
        """Draws lead, fact, grade and source, their first lines level."""
        first, second = (QRectF(place) for place in self._rooms(room.width()))
        top = round(room.y() + (room.height() - max(first.bottom(), second.bottom())) / 2)
        first.translate(room.x(), top)
        second.translate(room.x(), top)
        if self.lead:
            lead = QRectF(room.x(), top, self._lead(), first.height())
            self.look.words(self.lead).paint(painter, lead, self.look.colour("soft"))
        self._fact().paint(painter, first)
        source = self._source()
        words = source.first()
        if words is None:
            return
        # The kind is set smaller than the fact: both stand on one line.
        fact = self._fact().first()
        level = fact.baseline() - words.baseline() if fact and self._beside(room.width()) else 0.0
        second.translate(0, round(level))
        source.paint(painter, second)
        high = self.look.grown(GRADE_HIGH)
        foot = second.y() + words.baseline() + self.look.mm(0.35)
        wide = sign_width("grade 3", high)
        box = QRectF(second.x() - self._indent(), foot - high, wide, high)
        paint_sign(painter, box, f"grade {self.grade}", self.look.inks)


class SafetyBlock(Measured, QWidget):
    """A bar down the whole block, the sign, a head, each finding as a sentence, then the caution."""

    BAR, SIGN_LEFT, TEXT_LEFT, SIGN, GAP = 1.7, 3.4, 4.3, 5.2, 2.0

    def __init__(
        self, look: Look, head: str = "", findings: Sequence[str] = (), caution: str = "",
        *, step: str = "next", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.look, self._step = look, step
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self.restyle)
        self.say(head, findings, caution)

    def say(self, head: str, findings: Sequence[str], caution: str) -> None:
        """Head, findings and caution are these; all of them are its accessible name."""
        self.head, self.findings, self.caution = head, tuple(findings), caution
        self.setAccessibleName(" ".join(t for t in (head, *findings, caution) if t))
        self.restyle()

    def restyle(self) -> None:
        """The block is measured and drawn again in the look that holds now."""
        self.updateGeometry()
        self.update()

    @measured
    def _head(self) -> Stack:
        return Stack(self.look, (Part(self.head, self._step, True),))

    @measured
    def _body(self) -> Stack:
        found = [Part(text, "text", True) for text in self.findings]
        return Stack(self.look, (*found, Part(self.caution, "text", False)))

    def _head_left(self) -> float:
        sign = sign_width("fail", self.look.grown(self.SIGN))
        return self.look.mm(self.SIGN_LEFT) + sign + self.look.mm(1.1)

    @measured
    def _heights(self, width: float) -> tuple[float, float]:
        head = self._head().height(max(width - self._head_left(), 1.0))
        body = self._body().height(max(width - self.look.mm(self.TEXT_LEFT), 1.0))
        return max(head, self.look.grown(self.SIGN)), body

    def hasHeightForWidth(self) -> bool:
        """Its sentences wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Head and body with a little air at both ends."""
        return round(sum(self._heights(width)) + self.look.grown(self.GAP))

    @measured
    def sizeHint(self) -> QSize:
        """A width at which a sentence takes a few lines."""
        wide = self.look.grown(54)
        return QSize(wide, self.heightForWidth(wide))

    @measured
    def minimumSizeHint(self) -> QSize:
        """The width at which no word is broken."""
        left, text = self._head_left(), self.look.mm(self.TEXT_LEFT)
        wide = max(left + self._head().least, text + self._body().least) + 1
        return QSize(round(wide), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws bar, sign, head and sentences."""
        painter = QPainter(self)
        bar = QRectF(0, 0, self.look.mm(self.BAR), self.height())
        painter.fillRect(bar, self.look.colour("fail"))
        head, body = self._heights(self.width())
        top, sign = self.look.grown(self.GAP) * 0.3, self.look.grown(self.SIGN)
        wide = sign_width("fail", sign)
        box = QRectF(self.look.mm(self.SIGN_LEFT), top, wide, sign)
        box.moveTop(top + (min(head, self.look.leading(self._step)) - sign) / 2)
        paint_sign(painter, box, "fail", self.look.inks)
        left = self._head_left()
        self._head().paint(painter, QRectF(left, top, self.width() - left, head))
        left = self.look.mm(self.TEXT_LEFT)
        room = QRectF(left, self.height() - body - top * 0.7, self.width() - left, body)
        self._body().paint(painter, room)
        painter.end()
