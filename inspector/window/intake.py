"""Bringing photographs in: one path for every way in which they come, beside the window and open to a stop."""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QBuffer, QByteArray, QMimeData, QObject, QThread, QThreadPool, Signal
from PySide6.QtGui import QImage, QImageWriter

from inspector.photo.copies import THUMBNAIL_PX
from inspector.photo.intake import Source, Taken, arriving
from inspector.photo.refusal import Refusal
from inspector.record import photographs
from inspector.record.verbs import add_photographs
from inspector.storage.taking import Taking
from inspector.texts import tr, trn
from inspector.window.job import Job

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from inspector.record.finding import Photograph
    from inspector.storage.library import Library
    from inspector.window.desk import Desk

BATCH, BATCH_SECONDS = 12, 0.5  # what has come is put into the record so often
SENTENCES = 3  # so many refusals are told in full, the others by name
_numbers = count(1)
Outcome = Literal["kept", "there", "refused"]


@dataclass(frozen=True, slots=True)
class Tie:
    """What photographs belong to: an item of the walk, or a numbered place."""

    item: str = ""
    place: str = ""

    def holds(self, photograph: Photograph) -> bool:
        """Whether the photograph belongs to it."""
        if not self.item and not self.place:
            return not photograph.item and not photograph.place
        return photograph.item == self.item if self.item else photograph.place == self.place


@dataclass(slots=True)
class _Run:
    """One bringing in: for which record and what, and what came of it so far."""

    record: str
    tie: Tie
    everywhere: bool
    quiet: bool
    number: int = field(default_factory=lambda: next(_numbers))
    taken: int = 0
    lost: int = 0
    refused: list[Refusal] = field(default_factory=list)
    had: list[str] = field(default_factory=list)
    assigned: list[str] = field(default_factory=list)
    each: Callable[[Outcome, str], None] = lambda outcome, sentence: None


class Bringing(QObject):
    """Takes photographs in, one call after another; they stand in the record as they come.

    ``began`` and ``ended`` tell of the whole, ``progress(done, total, name)`` of each.
    """

    began = Signal()
    progress = Signal(int, int, str)
    ended = Signal()
    _arrived = Signal(object, object)

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._job: Job | None = None
        self._next: list[tuple[tuple[Source, ...], _Run]] = []
        self._later = QThreadPool(self)
        self._later.setMaxThreadCount(1)
        self._later.setThreadPriority(QThread.Priority.LowPriority)
        self._copying: Job | None = None
        self._uncopied: list[str] = []
        self._arrived.connect(self._put)
        desk.opened.connect(self._machine_changed)

    @property
    def running(self) -> bool:
        """Whether photographs are being taken in."""
        return self._job is not None

    def take_in(
        self, sources: Sequence[Source], tie: Tie, *, everywhere: bool = False, quiet: bool = False,
        each: Callable[[Outcome, str], None] | None = None,
    ) -> None:  # fmt: skip
        """The photographs are taken in beside the window and tied to this.

        A photograph that is there already is known by its hash and said: with ``everywhere`` wherever it is in
        the record, else only at the same tie; one that was not assigned belongs to this tie from now on. ``quiet``
        says nothing of those that are there. ``each`` hears of every photograph whether it is "kept", "there" or
        "refused", and the sentence that says why, if there is one.
        """
        if not sources or self.desk.session is None:
            return
        run = _Run(self.desk.record.id, tie, everywhere, quiet)
        run.each = each or run.each
        self._next.append((tuple(sources), run))
        if self._job is None:
            self.began.emit()
            self._start()

    def stop(self) -> None:
        """No further photograph is begun; what has come stays."""
        self._next.clear()
        if self._job is not None:
            self._job.stop()

    def _start(self) -> None:
        if self._copying is not None:
            self._copying.stop()
        (sources, run), library, arrived = self._next.pop(0), self.desk.library, self._arrived
        job = self._job = Job(lambda report: _work(sources, library, report, lambda batch: arrived.emit(run, batch)))
        job.progress.connect(self.progress)
        job.done.connect(lambda _: self._finish(run))
        job.failed.connect(lambda error: self._finish(run, str(error)))
        job.start(self.desk.pool)

    # what has come

    def _put(self, run: _Run, batch: list[Taken | Refusal]) -> None:
        """Those of the batch that are new stand in the record."""
        for refusal in (result for result in batch if isinstance(result, Refusal)):
            run.refused.append(refusal)
            run.each("refused", tr(refusal.why))
        taken = [result for result in batch if isinstance(result, Taken)]
        if self.desk.session is None or self.desk.record.id != run.record:
            run.lost += len(taken)
            for _ in taken:
                run.each("refused", tr("It came for a machine that is no longer open. Bring it in there."))
            return
        fresh, loose = self._fresh(run, taken)
        new = photographs_of(self.desk, run.tie, fresh)
        self._uncopied += [photograph.sha256 for photograph in new]
        if new or loose:
            tied = {"item": run.tie.item, "place": run.tie.place}
            step = add_photographs((*new, *(photograph.model_copy(update=tied) for photograph in loose)))
            done = self.desk.do(step.model_copy(update={"joins": f"bringing in {run.number}"}))
            run.taken += len(new) if done else 0
            run.assigned += [photograph.name for photograph in loose] if done else []
            for _ in (*new, *loose):
                run.each("kept" if done else "refused", "")

    def _fresh(self, run: _Run, taken: list[Taken]) -> tuple[tuple[Taken, ...], tuple[Photograph, ...]]:
        """Those that the record does not have, and those that it has without an item or a place."""
        have = {p.sha256: p for p in self.desk.record.photographs if run.everywhere or run.tie.holds(p)}
        waiting = {} if run.everywhere else {p.sha256: p for p in self.desk.record.photographs if Tie().holds(p)}
        new: dict[str, Taken] = {}
        loose: dict[str, Photograph] = {}
        for one in taken:
            if one.sha256 in have:
                run.had.append(self._had(one.name, have[one.sha256], run))
            elif one.sha256 in new or one.sha256 in loose:
                run.had.append(self._had(one.name, None, run))
            elif one.sha256 in waiting:
                loose[one.sha256] = waiting[one.sha256]
            else:
                new[one.sha256] = one
        return tuple(new.values()), tuple(loose.values())

    def _had(self, name: str, photograph: Photograph | None, run: _Run) -> str:
        run.each("there", "")
        if not run.everywhere or photograph is None:
            return tr("A photograph that is already here was not added twice.")
        where = self._named(photograph.item, photograph.place) or tr("not yet assigned")
        return tr("{name} is here already ({where}).", name=name, where=where)

    def _named(self, item: str, place: str) -> str:
        """What the item or the numbered place is called."""
        profile = self.desk.profile
        found = profile.item_by_id.get(item) or profile.place_by_id.get(place)
        return found.name if found is not None else ""

    def _assigned(self, run: _Run) -> list[str]:
        """That photographs which were here without an item or a place have one now."""
        if not run.assigned or self.desk.session is None or self.desk.record.id != run.record:
            return []
        return [trn(
            "{name} was here already, not assigned; it belongs to {where} now.",
            "{count} photographs were here already, not assigned; they belong to {where} now.",
            len(run.assigned), name=run.assigned[0], where=self._named(run.tie.item, run.tie.place),
        )]  # fmt: skip

    def _finish(self, run: _Run, trouble: str = "") -> None:
        self._job = None
        if trouble:
            run.each("refused", trouble)
        self._tell(run, trouble)
        if self._next:
            self._start()
            return
        self._copy_later()
        self.ended.emit()

    def _tell(self, run: _Run, trouble: str) -> None:
        told = [tr("The photographs could not be taken in: {what}", what=trouble)] if trouble else []
        told += [tr(refusal.why) for refusal in run.refused[:SENTENCES]]
        if rest := run.refused[SENTENCES:]:
            told.append(tr("Nor were these taken in: {names}.", names=", ".join(r.name for r in rest)))
        told += self._assigned(run)
        told += [] if run.quiet else _few(list(dict.fromkeys(run.had)))
        if run.lost:
            told.append(tr("{count} came for a machine that is no longer open. Bring them in there.", count=run.lost))
        if told:
            self.desk.told.emit(" ".join(told))

    def _machine_changed(self) -> None:
        if self._copying is not None:
            self._copying.stop()
        self.stop()

    # print copies, while nobody waits for anything

    def _copy_later(self) -> None:
        kept, wanted = self.desk.library.photographs, tuple(self._uncopied)
        self._uncopied.clear()
        if not wanted:
            return

        def copy(report: Callable[[int, int, str], None]) -> None:
            for n, sha256 in enumerate(wanted):
                report(n, len(wanted), "")
                kept.copy(sha256)

        self._copying = Job(copy)
        self._copying.start(self._later)


def _work(
    sources: Sequence[Source], library: Library, report: Callable[[int, int, str], None],
    arrived: Callable[[list[Taken | Refusal]], None],
) -> None:  # fmt: skip
    """Each source is taken in; what has come is handed on in batches."""
    batch: list[Taken | Refusal] = []
    since = perf_counter()
    keeper = Taking(library.photographs, library.thumbs)
    for result in arriving(sources, keeper, report, px=THUMBNAIL_PX, threads=os.cpu_count() or 1):
        batch.append(result)
        if len(batch) >= BATCH or perf_counter() - since > BATCH_SECONDS:
            arrived(batch)
            batch, since = [], perf_counter()
    if batch:
        arrived(batch)


def _few(sentences: list[str]) -> list[str]:
    if len(sentences) <= SENTENCES:
        return sentences
    rest = len(sentences) - SENTENCES
    more = trn("So is {count} other.", "So are {count} others.", rest)
    return [*sentences[:SENTENCES], more]


def _free(key: str, taken: set[str]) -> str:
    """The key, with a number after it where it is taken."""
    if key not in taken:
        return key
    return next(made for n in count(2) if (made := f"{key[:110]}-{n}") not in taken)


def photographs_of(desk: Desk, tie: Tie, taken: Sequence[Taken]) -> tuple[Photograph, ...]:
    """The photographs as the record keeps them, brought in now; each has an id that none has yet."""
    ids = {p.id for p in desk.record.photographs}
    made, at, by = [], desk.clock(), desk.here.by
    for one in taken:
        photograph = photograph_of(one, tie, at, by)
        key = _free(photograph.id, ids)
        ids.add(key)
        made.append(photograph.model_copy(update={"id": key}))
    return tuple(made)


def photograph_of(taken: Taken, tie: Tie, at: str, by: str) -> Photograph:
    """The photograph as the record keeps it, brought in at that time by that person."""
    return photographs.photograph_of(taken, at, by, item=tie.item, place=tie.place)


def sources_of(mime: QMimeData | None) -> list[Source]:
    """Files if there are any, so that what the camera wrote is kept; else the picture itself."""
    if mime is None:
        return []
    files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()] if mime.hasUrls() else []
    if files or not mime.hasImage():
        return list(files)
    image = mime.imageData()
    return [(tr("pasted.png"), png_of(image))] if isinstance(image, QImage) and not image.isNull() else []


def png_of(image: QImage) -> bytes:
    """The image as the bytes of a PNG."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return bytes(data.data())
