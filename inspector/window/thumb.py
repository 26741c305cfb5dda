"""One small picture; pressed, it opens large with its words and a key to take it out."""

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QLabel, QVBoxLayout, QWidget

from inspector.record.finding import Photograph
from inspector.texts import tr
from inspector.window.bench import open_bench
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.longwords import LongWords
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.press import Pressable

WIDE, HIGH, PX, LARGE_PX = 20.0, 13.5, 320, 1200


class Thumb(Pressable):
    """A photograph, small; drawn from the cache, or in words when its original is gone."""

    removed = Signal(str)

    def __init__(self, desk: Desk, photograph: Photograph, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, parent)
        self.desk, self.photograph = desk, photograph
        self._image: QImage | None = None
        self._scaled = QImage()  # for the size it was painted in last
        self._words = ""
        self.setAccessibleName(tr("Photograph {name}", name=photograph.caption or photograph.name))
        self.clicked.connect(self.open_large)
        self._job = Job(lambda report: desk.library.thumbs.get(photograph.sha256, PX))
        self._job.done.connect(self._loaded)
        self._job.failed.connect(self._lost)
        self._job.start(desk.pool)

    def _loaded(self, data: bytes | None) -> None:
        image = QImage.fromData(data) if isinstance(data, bytes) else QImage()
        self._image = None if image.isNull() else image
        self._scaled = QImage()
        self._words = tr("not in the store") if image.isNull() else ""
        self.update()

    def _lost(self, _: object) -> None:
        self._loaded(None)

    def sizeHint(self) -> QSize:
        """A landscape picture, never lower than a finger."""
        return QSize(self.look.grown(WIDE), self.look.grown(HIGH))

    def heightForWidth(self, width: int) -> int:
        """Its height does not follow its width."""
        return self.look.grown(HIGH)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the picture to fill its place, or says that it is not there."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        rect = QRectF(self.rect())
        if self._image is not None:
            painter.drawImage(self.rect(), self._fitted(self._image))
        else:
            painter.fillRect(rect, self.look.colour("tray"))
            words = self.look.words(self._words, "small")
            words.paint(painter, rect.adjusted(4, 2, -4, -2), self.look.colour("soft"))
        painter.setPen(self.look.colour("line"))
        painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()

    def _fitted(self, image: QImage) -> QImage:
        """The middle of the picture, as large as its place; worked out once for a size."""
        wanted = self.size() * self.devicePixelRatioF()
        if self._scaled.size() != wanted:
            whole = image.scaled(
                wanted, Qt.AspectRatioMode.KeepAspectRatioByExpanding, Qt.TransformationMode.SmoothTransformation
            )
            cut = QRect(QPoint(), wanted)
            cut.moveCenter(whole.rect().center())
            self._scaled = whole.copy(cut)
        return self._scaled

    def open_large(self) -> QDialog:
        """The photograph is shown large in a window of its own."""
        dialog = Large(self.desk, self.photograph, self.window())
        dialog.remove.clicked.connect(lambda: self._remove(dialog))
        dialog.open()
        return dialog

    def _remove(self, dialog: QDialog) -> None:
        dialog.close()
        self.removed.emit(self.photograph.id)


class Large(QDialog):
    """A photograph as large as the window allows, with what is known of it."""

    def __init__(self, desk: Desk, photograph: Photograph, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(photograph.caption or photograph.name)
        look = desk.look
        self.picture = QLabel(tr("not in the store"))
        self.picture.setAccessibleName(photograph.caption or photograph.name)
        data = desk.library.thumbs.get(photograph.sha256, LARGE_PX)
        image = QImage.fromData(data) if isinstance(data, bytes) else QImage()
        if not image.isNull():
            from PySide6.QtGui import QPixmap

            room = parent.size() * 0.75 if parent else QSize(900, 600)
            kept = Qt.AspectRatioMode.KeepAspectRatio
            smooth = Qt.TransformationMode.SmoothTransformation
            self.picture.setPixmap(QPixmap.fromImage(image.scaled(room, kept, smooth)))
        words = [photograph.name, f"{photograph.width} × {photograph.height}"]
        if photograph.taken_at:
            words.append(tr("the camera says {when}", when=photograph.taken_at[:16].replace("T", " ")))
        words.append("SHA-256 " + photograph.sha256[:16] + "…")
        self.closely = Key(look, tr("look closely"), name=tr("Look at the photograph closely"))
        self.closely.clicked.connect(self.close)
        self.closely.clicked.connect(lambda: open_bench(desk, photograph.id))
        self.remove = Key(look, tr("take it out"), name=tr("Take this photograph out of the record"))
        close = Key(look, tr("close"))
        close.clicked.connect(self.close)
        box = QVBoxLayout(self)
        box.addWidget(self.picture)
        box.addWidget(LongWords(look, ", ".join(words), ink="soft"))
        box.addWidget(KeyRow(look, [self.closely, self.remove, close], fit="flow"))
