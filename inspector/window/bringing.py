"""Photographs that belong to something: small pictures, a key to add, drop and paste."""

from abc import abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QMimeData
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QImage, QImageWriter
from PySide6.QtWidgets import QWidget

from inspector.photo.intake import Source, Taken, intake
from inspector.photo.refusal import Refusal
from inspector.record.edits import Part
from inspector.record.finding import Photograph
from inspector.record.verbs import add_photographs, drop_entry
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import Text
from inspector.window.thumb import Thumb


@dataclass(frozen=True, slots=True)
class Tie:
    """What photographs belong to: an item of the walk, or a numbered place."""

    item: str = ""
    place: str = ""

    def holds(self, photograph: Photograph) -> bool:
        """Whether the photograph belongs to it."""
        return photograph.item == self.item if self.item else photograph.place == self.place


class PhotographStrip(Column):
    """Small pictures in the order brought in; each opens large, and can be taken out again.

    What they belong to is said by ``tie``.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self._job: Job | None = None
        self.plus = Key(
            desk.look, tr("photograph"), sign="plus", name=tr("Add photographs: choose, drop or paste them")
        )
        self.paste = Key(desk.look, tr("paste"), name=tr("Paste a photograph"))
        self.stop = Key(desk.look, tr("stop"), sign="stop", name=tr("Stop taking photographs in"))
        self.progress = Text(desk.look, ink="soft")
        self.row = KeyRow(desk.look, [self.plus, self.paste], fit="flow")
        self.add(self.row)
        self.add(self.progress, 1)
        self.add(self.stop, 1)
        self.progress.hide()
        self.stop.hide()
        self.setAcceptDrops(True)
        self.plus.clicked.connect(lambda: desk.ask.photographs(self.take_in))
        self.paste.clicked.connect(self.paste_now)
        self.stop.clicked.connect(self._stop)

    @abstractmethod
    def tie(self) -> Tie:
        """What photographs are shown, and brought in, for."""

    def tied(self, tie: Tie) -> tuple[Photograph, ...]:
        """The photographs of the record that belong to it, in the order brought in."""
        return tuple(p for p in self.desk.record.photographs if tie.holds(p))

    def show_item(self) -> None:
        """The photographs that belong here are shown."""
        had = {key.photograph: key for key in self.row.keys if isinstance(key, Thumb)}
        thumbs = [had.get(p) or self._thumb(p) for p in self.tied(self.tie())]
        self.row.set_keys([*thumbs, self.plus, self.paste, *self.more()])

    def more(self) -> list[QWidget]:
        """Keys beside those that choose and paste."""
        return []

    def _thumb(self, photograph: Photograph) -> Thumb:
        thumb = Thumb(self.desk, photograph)
        thumb.removed.connect(self._remove)
        return thumb

    # bringing in

    def take_in(self, sources: Sequence[Source]) -> None:
        """The photographs are taken in beside the window and tied to what is open now."""
        if not sources:
            return
        tie, photographs = self.tie(), self.desk.library.photographs
        record = self.desk.record.id
        self._job = Job(lambda report: intake(sources, photographs, report))
        self._job.progress.connect(self._show_progress)
        self._job.done.connect(lambda results: self._taken(record, tie, results))
        self._job.failed.connect(lambda error: self._failed(str(error)))
        self.progress.show()
        self.stop.show()
        self._job.start(self.desk.pool)

    def _show_progress(self, done: int, total: int, name: str) -> None:
        self.progress.say(tr("Taking in {done} of {total}: {name}", done=done + 1, total=total, name=name))

    def _stop(self) -> None:
        if self._job is not None:
            self._job.stop()

    def _finish(self) -> None:
        self._job = None
        self.progress.hide()
        self.stop.hide()

    def _failed(self, what: str) -> None:
        self._finish()
        self.desk.told.emit(tr("The photographs could not be taken in: {what}", what=what))

    def _taken(self, record: str, tie: Tie, results: list[Taken | Refusal]) -> None:
        self._finish()
        refused = [tr(r.why) for r in results if isinstance(r, Refusal)]
        taken = [r for r in results if isinstance(r, Taken)]
        here = taken and self.desk.session is not None and self.desk.record.id == record
        if here and put_taken(self.desk, tie, taken) < len(taken):
            refused.append(tr("A photograph that is already here was not added twice."))
        if refused:
            self.desk.told.emit(" ".join(refused))

    def _remove(self, photograph: str) -> None:
        self.desk.do(drop_entry(Part.PHOTOGRAPHS, photograph, label="Take a photograph out"))

    # drop and paste

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped."""
        if sources_of(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """What is dropped is taken in."""
        event.acceptProposedAction()
        self.take_in(sources_of(event.mimeData()))

    def paste_now(self) -> None:
        """What the clipboard holds is taken in, or a sentence says that it holds no picture."""
        sources = sources_of(QGuiApplication.clipboard().mimeData())
        if sources:
            self.take_in(sources)
        else:
            self.desk.told.emit(tr("There is no photograph to paste. Copy a picture or a file first."))


def put_taken(desk: Desk, tie: Tie, taken: Sequence[Taken]) -> int:
    """How many of these were not there yet; the record has them as one step, or a sentence says why it has not."""
    at, by = desk.clock(), desk.here.by
    have = {p.sha256 for p in desk.record.photographs if tie.holds(p)}
    fresh = [t for t in taken if t.sha256 not in have]
    if fresh:
        desk.do(add_photographs(tuple(photograph_of(t, tie, at, by) for t in fresh)))
    return len(fresh)


def sources_of(mime: QMimeData | None) -> list[Source]:
    """Files if there are any, so that what the camera wrote is kept; else the picture itself."""
    if mime is None:
        return []
    files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()] if mime.hasUrls() else []
    if files or not mime.hasImage():
        return list(files)
    image = mime.imageData()
    return [(tr("pasted.png"), _png(image))] if isinstance(image, QImage) and not image.isNull() else []


def _png(image: QImage) -> bytes:
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return bytes(data.data())


def photograph_of(taken: Taken, tie: Tie, at: str, by: str) -> Photograph:
    """The photograph as the record keeps it, brought in at that time by that person."""
    when = taken.taken_at.isoformat() + taken.offset if taken.taken_at else ""
    return Photograph(
        id=f"{taken.sha256[:12]}-{tie.item or 'at-' + tie.place}"[:120], sha256=taken.sha256,
        name=taken.name, media=taken.media,
        width=taken.width, height=taken.height, size=taken.size, taken_at=when, imported_at=at, by=by,
        has_place=taken.has_place, item=tie.item, place=tie.place,
    )  # fmt: skip
