"""A place to sign on: what pen, finger or mouse draws is kept as points in millimetres, and nothing is read from it."""

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPen, QTabletEvent, QTouchEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.record.signing import Strokes
from inspector.texts import tr
from inspector.window.look.look import Look
from inspector.window.look.type import LEFT

HIGH, WIDE = 60.0, 90.0  # the least room to sign in, in millimetres
LINE_AT, LINE_IN = 0.72, 6.0  # how far down the line lies, and how far in it begins
STROKE = 0.7
NEAR = 0.15  # points nearer than this to the one before are not kept


class Pad(QWidget):
    """``drawn`` tells that a stroke has begun, ended, or that all of them are gone."""

    drawn = Signal()

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._strokes: list[list[QPointF]] = []
        self._by = ""  # what draws the stroke that is being drawn: mouse, pen, or a finger by its number
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setAccessibleName(tr("Place to sign for {name}, with pen, finger or mouse", name=name))
        look.changed.connect(self.update)

    def strokes(self) -> Strokes:
        """What is drawn, in millimetres from the top left corner."""
        one = self.look.mm(1)
        return tuple(
            tuple((round(p.x() / one, 2), round(p.y() / one, 2)) for p in stroke) for stroke in self._strokes if stroke
        )

    def clear(self) -> None:
        """Nothing is drawn."""
        self._strokes, self._by = [], ""
        self.update()
        self.drawn.emit()

    # drawing

    def _begin(self, by: str, at: QPointF) -> None:
        if not self._by:
            self._by = by
            self._strokes.append([at])
            self.update()
            self.drawn.emit()

    def _go_on(self, by: str, at: QPointF) -> None:
        if by != self._by:
            return
        last = self._strokes[-1][-1]
        if (at - last).manhattanLength() >= self.look.mm(NEAR):
            self._strokes[-1].append(at)
            self.update()

    def _end(self, by: str) -> None:
        if by == self._by:
            self._by = ""
            self.drawn.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A stroke begins."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._begin("mouse", event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The stroke goes on."""
        self._go_on("mouse", event.position())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The stroke ends."""
        self._end("mouse")

    def tabletEvent(self, event: QTabletEvent) -> None:
        """A pen draws as a mouse does; how hard it is pressed is not kept."""
        kind = event.type()
        if kind == QEvent.Type.TabletPress:
            self._begin("pen", event.position())
        elif kind == QEvent.Type.TabletMove:
            self._go_on("pen", event.position())
        elif kind == QEvent.Type.TabletRelease:
            self._end("pen")
        event.accept()

    def event(self, event: QEvent) -> bool:
        """The first finger draws; a palm that rests beside it does not."""
        if isinstance(event, QTouchEvent):
            self._touch(event)
            event.accept()
            return True
        return super().event(event)

    def _touch(self, event: QTouchEvent) -> None:
        if event.type() == QEvent.Type.TouchCancel:
            self._by = ""
            return
        for point in event.points():
            by = f"finger {point.id()}"
            if point.state() == point.State.Pressed:
                self._begin(by, point.position())
            elif point.state() == point.State.Released:
                self._end(by)
            else:
                self._go_on(by, point.position())

    # showing

    def sizeHint(self) -> QSize:
        """Room for a whole hand."""
        return QSize(self.look.px(WIDE), self.look.px(HIGH))

    def minimumSizeHint(self) -> QSize:
        """Never smaller than a hand can sign in."""
        return QSize(self.look.px(60), self.look.px(35))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the ground, the line to sign on, and the strokes."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, box = self.look, QRectF(self.rect())
        thick = look.mm(0.3)
        painter.setPen(QPen(look.colour("line"), thick))
        painter.setBrush(look.colour("paper"))
        painter.drawRect(box.adjusted(thick / 2, thick / 2, -thick / 2, -thick / 2))
        self._line(painter)
        pen = QPen(look.colour("ink"), look.mm(STROKE))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for stroke in self._strokes:
            painter.drawPath(_path(stroke))
        painter.end()

    def _line(self, painter: QPainter) -> None:
        look, y = self.look, self.height() * LINE_AT
        left = look.mm(LINE_IN)
        painter.drawLine(QPointF(left, y), QPointF(self.width() - left, y))
        words = look.words(tr("sign on this line"), "small")
        room = QRectF(left, y + look.mm(1), self.width() - 2 * left, words.leading)
        words.paint(painter, room, look.colour("soft"), LEFT)


def _path(stroke: list[QPointF]) -> QPainterPath:
    path = QPainterPath(stroke[0])
    for point in stroke[1:] or stroke:
        path.lineTo(point)
    return path
