"""The picture on the bench: zoomed under the finger, wheel or keys, with handles to pull and a magnifier."""

from math import hypot

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QTransform, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from inspector.texts import tr
from inspector.window.bench.canvas_keys import CanvasKeys
from inspector.window.bench.copies import WorkingCopy
from inspector.window.bench.loupe import paint_loupe
from inspector.window.bench.overlay import Overlay, Point
from inspector.window.bench.pens import paint_handle
from inspector.window.bench.sight import Sight
from inspector.window.desk import Desk
from inspector.window.look.ring import Ringed
from inspector.window.look.type import CENTRE

GRAB = 6.0  # a touch takes the nearest handle within so many millimetres
STILL = 1.5  # a touch that moved less is a touch, not a pull
STEP = 1.5
SHARP = 3.0  # pixels of the screen to one of the picture from which its pixels are shown as they are


class Canvas(Ringed, CanvasKeys, QWidget):
    """A working copy, its overlay, and the hands that move both. ``moved`` tells of another sight."""

    moved = Signal()

    def __init__(self, desk: Desk, copy: WorkingCopy, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk, self.look, self.copy = desk, desk.look, copy
        self.sight = Sight()
        self.overlay = Overlay()
        self.selected = -1  # the handle that keys move
        self.aim: Point | None = None  # where a finger points while it is down
        self.begun: Point | None = None  # where drawing by keys began
        self._words = tr("coming")
        self._from: QPointF | None = None
        self._last: QPointF | None = None
        self._held, self._pulling, self._panning = -1, False, False
        self._fingers: tuple[QPointF, float] | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.overlay.changed.connect(self.update)
        copy.ready.connect(self.update)
        copy.failed.connect(self._failed)
        self.look.changed.connect(self.update)

    def lay(self, overlay: Overlay) -> None:
        """This lies over the picture now."""
        self.overlay.changed.disconnect(self.update)
        self.overlay, self.selected, self.begun = overlay, -1, None
        overlay.changed.connect(self.update)
        self.update()

    def _failed(self, words: str) -> None:
        self._words = words
        self.update()

    # where things are

    @property
    def picture(self) -> QSizeF:
        """The size of the whole picture in its own pixels."""
        return QSizeF(*self.copy.size)

    @property
    def room(self) -> QSizeF:
        """The size of what it is seen in."""
        return QSizeF(self.size())

    @property
    def scale(self) -> float:
        """Pixels of the screen to one of the picture."""
        return self.sight.scale(self.picture, self.room)

    def transform(self) -> QTransform:
        """From pixels of the picture to those of the widget."""
        return self.sight.transform(self.picture, self.room)

    def to_screen(self, point: Point) -> QPointF:
        """Where a point of the picture stands in the widget."""
        return self.transform().map(QPointF(*point))

    def to_picture(self, spot: QPointF) -> Point:
        """The point of the picture that stands there, held within the picture."""
        there = self.transform().inverted()[0].map(spot)
        wide, high = self.copy.size
        return (min(max(there.x(), 0.0), float(wide)), min(max(there.y(), 0.0), float(high)))

    # what part is seen

    def see(self, sight: Sight) -> None:
        """This part is seen, and whoever is linked hears of it."""
        if sight != self.sight:
            self.sight = sight
            self.update()
            self.moved.emit()

    def follow(self, sight: Sight) -> None:
        """The same part is seen as elsewhere; nobody is told."""
        self.sight = sight
        self.update()

    def zoom(self, times: float, at: QPointF | None = None) -> None:
        """So many times larger, what lies under ``at`` staying there."""
        self.see(self.sight.zoomed(times, at or QPointF(self.rect().center()), self.picture, self.room))

    def pull(self, by: QPointF) -> None:
        """The picture follows by so many pixels of the screen."""
        self.see(self.sight.moved(by, self.picture, self.room))

    def turn(self, by: float) -> None:
        """Turned with the clock by so many degrees."""
        self.see(self.sight.turned(by))

    def whole(self) -> None:
        """All of it is seen, as it is turned."""
        self.see(Sight(turn=self.sight.turn))

    def one_to_one(self) -> None:
        """One pixel of the picture is one of the screen."""
        if self.copy.there:
            self.zoom(1 / max(self.scale * self.devicePixelRatioF(), 1e-9))

    # hands

    def down(self, spot: QPointF, *, pan: bool = False) -> None:
        """A finger or a button goes down there."""
        self._from = self._last = spot
        self._held = -1 if pan else self._handle_at(spot)
        self.selected = self._held
        self._panning = pan
        self._pulling = False
        if self._held >= 0 or (not pan and self.overlay.places):
            self.aim = self.overlay.handles()[self._held] if self._held >= 0 else self.to_picture(spot)
        self.update()

    def drag(self, spot: QPointF) -> None:
        """It moves there."""
        if self._from is None or self._last is None:
            return
        way, self._last = spot - self._last, spot
        far = hypot(spot.x() - self._from.x(), spot.y() - self._from.y())
        self._pulling = self._pulling or far > self.look.mm(STILL)
        if self._held >= 0:
            self._pull_handle(way)
        elif self.overlay.places and not self._panning:
            self.aim = self.to_picture(spot)
        elif self.overlay.draws and not self._panning:
            if self._pulling:
                self.overlay.draw(self.to_picture(self._from), self.to_picture(spot), self, done=False)
        elif self._pulling:
            self.pull(way)
        self.update()

    def _pull_handle(self, way: QPointF) -> None:
        """The handle moves as the finger does, from where it was: the finger may lie beside it."""
        assert self.aim is not None
        self.aim = self.to_picture(self.to_screen(self.aim) + way)
        if self._pulling:
            self.overlay.move(self._held, self.aim, done=False)

    def up(self, spot: QPointF) -> None:
        """It is let go there."""
        if self._from is None:
            return
        begun, aim, held = self._from, self.aim, self._held
        pulling, panning = self._pulling, self._panning
        self.let_go()
        if held >= 0:
            if pulling and aim is not None:
                self.overlay.move(held, aim, done=True)
        elif panning:
            return
        elif self.overlay.places and aim is not None:
            self.overlay.place(aim)
        elif self.overlay.draws and pulling:
            self.overlay.draw(self.to_picture(begun), self.to_picture(spot), self, done=True)

    def let_go(self) -> None:
        """Nothing is held any more; what was begun is left."""
        self._from = self._last = self.aim = None
        self._held, self._pulling, self._panning = -1, False, False
        self.update()

    def _handle_at(self, spot: QPointF) -> int:
        """The handle nearest to the touch, or -1."""
        near = [(hypot(*(self.to_screen(p) - spot).toTuple()), n) for n, p in enumerate(self.overlay.handles())]
        far, index = min(near, default=(1e9, -1))
        return index if far <= self.look.mm(GRAB) else -1

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The left button works, the others move the picture."""
        self.down(event.position(), pan=event.button() != Qt.MouseButton.LeftButton)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """What is held follows."""
        self.drag(event.position())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """What is held is let go."""
        self.up(event.position())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Where nothing is drawn, twice as large there, or whole again."""
        if self.overlay.places or self.overlay.draws:
            self.down(event.position())
        elif self.sight.zoom > 1:
            self.whole()
        else:
            self.zoom(3.0, event.position())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel makes it larger or smaller under the pointer."""
        if event.angleDelta().y():
            self.zoom(1.25 ** (event.angleDelta().y() / 120), event.position())
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Fingers: one works, two move and zoom; a pad's pinch zooms."""
        kind = event.type()
        if kind in (QEvent.Type.TouchBegin, QEvent.Type.TouchUpdate, QEvent.Type.TouchEnd, QEvent.Type.TouchCancel):
            self._touched(event)
            event.accept()
            return True
        if kind == QEvent.Type.NativeGesture and event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:  # type: ignore[attr-defined]
            self.zoom(1 + event.value(), event.position())  # type: ignore[attr-defined]
            return True
        return super().event(event)

    def _touched(self, event: QEvent) -> None:
        spots = [point.position() for point in event.points()]  # type: ignore[attr-defined]
        over = event.type() in (QEvent.Type.TouchEnd, QEvent.Type.TouchCancel)
        if len(spots) >= 2 and not over:
            self._two(spots[0], spots[1])
        elif self._fingers is not None:
            self._fingers = None if over else self._fingers  # the finger left over works nothing
        elif event.type() == QEvent.Type.TouchBegin:
            self.setFocus(Qt.FocusReason.MouseFocusReason)
            self.down(spots[0])
        elif event.type() == QEvent.Type.TouchUpdate:
            self.drag(spots[0])
        elif event.type() == QEvent.Type.TouchEnd:
            self.up(spots[0])
        else:
            self.let_go()

    def _two(self, one: QPointF, other: QPointF) -> None:
        """Two fingers hold the picture: it follows their middle and grows with their distance."""
        middle, apart = (one + other) / 2, max(hypot(*(one - other).toTuple()), 1.0)
        if self._fingers is None:
            self.let_go()
        else:
            was, wide = self._fingers
            sight = self.sight.moved(middle - was, self.picture, self.room)
            self.see(sight.zoomed(apart / wide, middle, self.picture, self.room))
        self._fingers = (middle, apart)

    # drawing

    def sizeHint(self) -> QSize:
        """Room for a picture."""
        return QSize(self.look.px(120), self.look.px(90))

    def minimumSizeHint(self) -> QSize:
        """Room for a finger and the magnifier."""
        return QSize(self.look.px(40), self.look.px(36))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture, what lies over it, and the magnifier while a finger is down."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour("tray"))
        if not self.copy.there:
            self._paint_words(painter)
            return
        self.paint_picture(painter, self.transform())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.overlay.paint(painter, self)
        for n, point in enumerate(self.overlay.handles()):
            paint_handle(painter, self.look, self.to_screen(point), held=n in (self.selected, self._held))
        if self.begun is not None:
            paint_handle(painter, self.look, self.to_screen(self.begun))
        if self.by_keys and (self.overlay.places or self.overlay.draws) and self.selected < 0:
            paint_handle(painter, self.look, QPointF(self.rect().center()), held=True)
        if self.aim is not None:
            paint_loupe(painter, self, self.aim)
        painter.end()

    def _paint_words(self, painter: QPainter) -> None:
        words = self.look.words(self._words, "text")
        edge = self.look.px(6)
        high = words.height(self.width() - 2 * edge)
        room = QRectF(edge, (self.height() - high) / 2, self.width() - 2 * edge, high)
        words.paint(painter, room, self.look.colour("soft"), CENTRE)

    def paint_picture(self, painter: QPainter, transform: QTransform) -> None:
        """The picture is drawn from the copy that is just fine enough, only where it is seen."""
        scale = hypot(transform.m11(), transform.m12())
        fitting = [n for n in self.copy.images if 0.5**n >= scale * self.devicePixelRatioF() * 0.75]
        level = max(fitting) if fitting else min(self.copy.images)
        image = self.copy.images[level]
        wide, high = self.copy.size
        across, down = wide / image.width(), high / image.height()
        painter.save()
        whole = QTransform().scale(across, down) * transform
        painter.setTransform(whole, combine=True)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, scale * self.devicePixelRatioF() < SHARP)
        clip = painter.clipBoundingRect() if painter.hasClipping() else whole.inverted()[0].mapRect(QRectF(self.rect()))
        seen = clip.adjusted(-1, -1, 1, 1).intersected(QRectF(image.rect()))
        painter.drawImage(seen, image, seen)
        painter.restore()
