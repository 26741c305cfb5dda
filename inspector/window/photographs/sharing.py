"""Writing sharing copies beside the window, with word of how far it is and a key to stop it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from inspector.photo.masks import Cover
from inspector.storage.sharing import Shared, ToShare, share
from inspector.texts import tr, trn
from inspector.window.job import Job
from inspector.window.photographs.entries import tied_words

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from inspector.record.finding import Photograph
    from inspector.window.desk import Desk
    from inspector.window.photographs.tasks import SharingCopies, Wish


class Sharing(QObject):
    """One writing at a time; what was written when it is stopped stays."""

    def __init__(self, desk: Desk, shown: SharingCopies) -> None:
        super().__init__(shown)
        self.desk, self.shown = desk, shown
        self._job: Job | None = None
        shown.stop.clicked.connect(self.stop)

    def write(self, photographs: Sequence[Photograph], folder: Path, wish: Wish) -> None:
        """A copy of each is written into the folder."""
        if self._job is not None:
            self.desk.told.emit(tr("Copies are being written. Wait for them, or stop."))
            return
        profile, kept = self.desk.profile, self.desk.library.photographs
        wanted = [to_share(one, tied_words(profile, one), wish) for one in photographs]
        self._job = Job(lambda report: share(kept, wanted, folder, report))
        self._job.progress.connect(self.shown.going)
        self._job.done.connect(lambda shared: self._done(shared, folder))
        self._job.failed.connect(lambda error: self._done(Shared((), ()), folder, str(error)))
        self._job.start(self.desk.pool)

    def stop(self) -> None:
        """No further copy is begun."""
        if self._job is not None:
            self._job.stop()

    def _done(self, shared: Shared, folder: Path, trouble: str = "") -> None:
        self._job = None
        self.shown.ended()
        count = len(shared.written)
        words = [trn("{count} copy is in {folder}.", "{count} copies are in {folder}.", count, folder=folder)]
        words += [tr(said) for said in shared.troubles[:3]]
        words += [trouble] if trouble else []
        sentence = " ".join(words)
        if count:
            self.desk.offered.emit(sentence, tr("show the folder"), lambda: self.desk.ask.show_folder(folder))
        else:
            self.desk.told.emit(sentence)


def to_share(photograph: Photograph, words: str, wish: Wish) -> ToShare:
    """What of the photograph is handed on: its parts covered, its time and its marks only if that is wished."""
    covers = tuple(Cover(box.left, box.top, box.right, box.bottom) for box in photograph.masks)
    taken = photograph.taken_at[:19].replace("-", ":").replace("T", " ") if wish.time else ""
    return ToShare(photograph.sha256, words, covers, taken, photograph.marks if wish.marks else ())
