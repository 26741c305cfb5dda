"""Boxes drawn on a photograph, by hand or by keys; they cover its sharing copies and nothing else."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from inspector.photo.masks import INK
from inspector.record.finding import Box, Photograph
from inspector.record.photographs import change_photograph
from inspector.record.words import Covered
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.look import Look
from inspector.window.look.ring import Ringed, show_ring
from inspector.window.look.text import Text

PX = 1600
LEAST, STEP = 0.005, 0.01  # shares of the picture
_MOVES = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
}  # fmt: skip


class Canvas(Ringed, QWidget):
    """The picture whole, with its boxes; a drag draws one. ``drawn`` carries left, top, right, bottom as shares."""

    drawn = Signal(float, float, float, float)
    moved = Signal(float, float, float, float)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.image = QImage()
        self.boxes: tuple[Box, ...] = ()
        self._from: QPointF | None = None
        self._to = QPointF()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(tr("Draw a box over what is to be covered"))
        self.setMinimumSize(QSize(look.px(60), look.px(45)))
        self.setCursor(Qt.CursorShape.CrossCursor)

    def room(self) -> QRectF:
        """Where the whole picture lies."""
        if self.image.isNull():
            return QRectF(self.rect())
        size = self.image.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        return QRectF((self.width() - size.width()) / 2, (self.height() - size.height()) / 2, size.width(),
                      size.height())  # fmt: skip

    def share(self, spot: QPointF) -> QPointF:
        """The spot as shares of the picture, held within it."""
        room = self.room()
        x, y = (spot.x() - room.x()) / max(room.width(), 1), (spot.y() - room.y()) / max(room.height(), 1)
        return QPointF(min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A box begins here."""
        self._from = self._to = self.share(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The box reaches to here."""
        if self._from is not None:
            self._to = self.share(event.position())
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The box is drawn, if it is one."""
        if self._from is None:
            return
        a, b, self._from = self._from, self.share(event.position()), None
        left, right, top, bottom = min(a.x(), b.x()), max(a.x(), b.x()), min(a.y(), b.y()), max(a.y(), b.y())
        if right - left > LEAST and bottom - top > LEAST:
            self.drawn.emit(left, top, right, bottom)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space draws a box in the middle; arrows move the last one, with Shift they make it larger or smaller."""
        show_ring(self, self.look)
        if event.key() == Qt.Key.Key_Space:
            self.drawn.emit(0.4, 0.4, 0.6, 0.6)
        elif Qt.Key(event.key()) in _MOVES and self.boxes:
            x, y = (step * STEP for step in _MOVES[Qt.Key(event.key())])
            self._shift(x, y, larger=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        else:
            super().keyPressEvent(event)

    def _shift(self, x: float, y: float, *, larger: bool) -> None:
        box = self.boxes[-1]
        right, bottom = min(max(box.right + x, 0), 1), min(max(box.bottom + y, 0), 1)
        left = box.left if larger else min(max(box.left + x, 0), 1)
        top = box.top if larger else min(max(box.top + y, 0), 1)
        if right - left > LEAST and bottom - top > LEAST:
            self.moved.emit(left, top, right, bottom)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture, and over it the boxes filled as they will be."""
        painter, look = QPainter(self), self.look
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.fillRect(self.rect(), look.colour("tray"))
        room = self.room()
        if not self.image.isNull():
            painter.drawImage(room, self.image)
        for box in self.boxes:
            shown = _placed(room, box.left, box.top, box.right, box.bottom)
            painter.fillRect(shown, QColor(*INK))
            painter.setPen(QPen(look.colour("focus"), look.mm(0.4)))
            painter.drawRect(shown)
        if self._from is not None:
            painter.setPen(QPen(look.colour("focus"), look.mm(0.6)))
            painter.drawRect(QRectF(_spot(room, self._from), _spot(room, self._to)))
        painter.end()


def _spot(room: QRectF, share: QPointF) -> QPointF:
    return QPointF(room.x() + share.x() * room.width(), room.y() + share.y() * room.height())


def _placed(room: QRectF, left: float, top: float, right: float, bottom: float) -> QRectF:
    return QRectF(_spot(room, QPointF(left, top)), _spot(room, QPointF(right, bottom)))


class CoverSheet(QDialog):
    """One photograph with the boxes of its sharing copies; each box is kept in the record and can be undone."""

    def __init__(self, desk: Desk, photograph: Photograph, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(tr("Cover for sharing"))
        self.desk, self.id = desk, photograph.id
        look = desk.look
        self.canvas = Canvas(look)
        self.kinds = ChoiceKeys(look, [Option(kind.value, tr(kind.value)) for kind in Covered], held="kept", fit="flow")
        self.kinds.set_held(Covered.NUMBER.value)
        self.count = Text(look, ink="soft")
        self.last = Key(look, tr("take the last away"), name=tr("Take the last box away"))
        self.close_key = Key(look, tr("done"))
        box = QVBoxLayout(self)
        box.addWidget(Text(look, tr(
            "Draw a box over what others shall not see. The kept photograph stays as it is; every sharing copy is"
            " covered there for good.",
        )))  # fmt: skip
        box.addWidget(Text(look, tr("By keys: Space draws a box, arrows move it, with Shift they size it."), ink="soft",
                           step="small"))  # fmt: skip
        box.addWidget(self.kinds)
        box.addWidget(self.canvas, 1)
        box.addWidget(self.count)
        box.addWidget(KeyRow(look, [self.last, self.close_key], fit="flow"))
        room = parent.size() * 0.9 if parent else QSize(900, 700)
        self.resize(room)
        self._connect(photograph)

    def _connect(self, photograph: Photograph) -> None:
        self.canvas.drawn.connect(self._add)
        self.canvas.moved.connect(self._move)
        self.last.clicked.connect(self._drop)
        self.close_key.clicked.connect(self.close)
        self.desk.changed.connect(self.show_boxes)
        job = Job(lambda report: self.desk.library.thumbs.get(photograph.sha256, PX))
        job.done.connect(self._loaded)
        job.start(self.desk.pool)
        self.show_boxes()

    def _loaded(self, data: object) -> None:
        self.canvas.image = QImage.fromData(data) if isinstance(data, bytes) else QImage()
        self.canvas.update()

    @property
    def photograph(self) -> Photograph | None:
        """The photograph as the record has it now."""
        if self.desk.session is None:
            return None
        return next((p for p in self.desk.record.photographs if p.id == self.id), None)

    def show_boxes(self, _: object = None) -> None:
        """The boxes of the record are shown."""
        one = self.photograph
        if one is None:
            self.close()
            return
        self.canvas.boxes = one.masks
        named = ", ".join(tr(box.hides.value) for box in one.masks)
        count = len(one.masks)
        words = trn("{count} part is covered: {named}", "{count} parts are covered: {named}", count, named=named)
        self.count.say(words if one.masks else tr("Nothing is covered."))
        self.last.turn_off("" if one.masks else tr("There is no box."))
        self.canvas.update()

    def _put(self, masks: tuple[Box, ...], joins: str = "") -> None:
        one = self.photograph
        if one is not None:
            self.desk.do(change_photograph(one, label="Cover for sharing", joins=joins, masks=masks))

    def _add(self, left: float, top: float, right: float, bottom: float) -> None:
        one, kind = self.photograph, Covered(self.kinds.held()[0])
        if one is not None:
            self.desk.here.end_visit()
            self._put((*one.masks, Box(left=left, top=top, right=right, bottom=bottom, hides=kind)))

    def _move(self, left: float, top: float, right: float, bottom: float) -> None:
        one = self.photograph
        if one is not None and one.masks:
            moved = Box(left=left, top=top, right=right, bottom=bottom, hides=one.masks[-1].hides)
            self._put((*one.masks[:-1], moved), joins=f"cover {one.id}")

    def _drop(self) -> None:
        one = self.photograph
        if one is not None and one.masks:
            self._put(one.masks[:-1])
