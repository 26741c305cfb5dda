"""The page Sheet: choose a copy and paper, see it as it will print, keep it as a PDF."""

from collections.abc import Callable
from pathlib import Path
from typing import Literal

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices, QDragEnterEvent, QDropEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from inspector.answer import Answer
from inspector.checking import check, of_sheet
from inspector.handover import changes_of, copy_of, owners_file, walk_sheet
from inspector.issuing import place_of, sealed_sheet
from inspector.record.edits import Changed
from inspector.record.money import Version
from inspector.record.verbs import choose_place_told
from inspector.record.versions import stands_as_sealed
from inspector.sealing import drawn
from inspector.sheet.blank import Form
from inspector.sheet.write import SheetTrouble, write_atomically
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.scroll import Scroll
from inspector.window.look.text import Hairline, SectionHead, Text
from inspector.window.sheet.preview import Preview
from inspector.window.sheet.signing import Signing
from inspector.window.sheet.signing_check import CheckSheet
from inspector.window.sheet.signing_versions import SealedVersions

PAPERS: tuple[Literal["A4"], Literal["Letter"]] = ("A4", "Letter")
FORMS: dict[str, Form] = {"walk-short": "short", "walk-full": "full"}
SELLER, (SHORT, FULL) = "seller", FORMS
OWNER, DATING, PICTURES = "owner", "dating", "pictures"
PRIVATE = (OWNER, PICTURES)  # may name amounts
SIDE_MM = 84.0


class SheetPage(QWidget):
    """The sheet is made beside the window each time it is looked at, from the record as it stands."""

    id = "sheet"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        look = desk.look
        self.copy = ChoiceKeys(look, [
            Option(SELLER, tr("seller's copy"), second=tr("no money on it")),
            Option(OWNER, tr("owner's file"), second=tr("private: all of it, money too")),
            Option(DATING, tr("pack to date it"), second=tr("ages of components, no money")),
            Option(PICTURES, tr("pack for an insurer"), second=tr("views by day; worth if it may be printed")),
            Option(SHORT, tr("walk sheet, short"), second=tr("for pencil, one line an item")),
            Option(FULL, tr("walk sheet, full"), second=tr("with how to look and sources")),
        ], held="kept")  # fmt: skip
        self.paper = ChoiceKeys(look, [Option(p, p) for p in PAPERS], held="kept")
        self.place = Key(look, tr("place on it"), second=tr("where the machine was looked at; left out unless chosen"))
        self.save = Key(look, tr("save as PDF"), step="key")
        self.view = Key(look, tr("open or print"), second=tr("in the program that shows PDFs"))
        self.sign = Key(look, tr("sign and seal"), step="key", name=tr("Sign and seal, by inspector and seller"))
        self.check = Key(look, tr("check a sheet or bag"), second=tr("as sealed? It may be dropped here too"))
        self.versions = SealedVersions(desk)
        self.signing: Signing | None = None
        self.checking: CheckSheet | None = None
        self.setAcceptDrops(True)
        self.state = Text(look, ink="soft")
        self.preview = Preview(look)
        self.pdf: bytes = b""
        self.saved: Path | None = None
        self._job: Job | None = None
        self._stale = True
        self.copy.set_held(SELLER)
        self.paper.set_held(PAPERS[0])
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        look = self.desk.look
        self.save.hold("chosen")
        side = Column(look)
        side.add(SectionHead(look, tr("Sheet")))
        paper = Text(look, tr("Paper"), ink="soft")
        for widget in (self.copy, paper, self.paper, self.place, self.view, self.versions, self.check):
            side.add(widget, 3)
        side.add(Text(look, tr(
            "The sheet says what was seen on this day. Ownership, theft, registration and roadworthiness "
            "are decided by the authorities and licensed people of the place.",
        ), ink="soft"), 6)  # fmt: skip
        self.side = self._footed(Scroll(look, side))
        self.box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self.box.setContentsMargins(0, 0, 0, 0)
        self.box.setSpacing(0)
        self.box.addWidget(self.side)
        self.box.addWidget(self.preview, 1)

    def _footed(self, scroll: Scroll) -> QWidget:
        """What scrolls, and below it what is always in sight: what there is, and the keys that keep and seal it."""
        look = self.desk.look
        foot = Column(look, top=2, foot=3)
        foot.add(self.state)
        foot.add(KeyRow(look, [self.save, self.sign], fit="fill"), 2)
        return _Side(scroll, Hairline(look), foot)

    def _connect(self) -> None:
        self.copy.picked.connect(self.make)
        self.paper.picked.connect(self.make)
        self.place.clicked.connect(lambda: self.desk.do(choose_place_told(not self.desk.record.choices.place_told)))
        self.save.clicked.connect(self.ask_where)
        self.view.clicked.connect(self.open_outside)
        self.sign.clicked.connect(self.open_signing)
        self.check.clicked.connect(lambda: self.desk.ask.a_sheet(self.check_file))
        self.versions.picked.connect(self.show_sealed)
        self.versions.asked.connect(self.check_version)
        self.desk.opened.connect(self._forget)
        self.desk.private.changed.connect(self._be_private)
        self.desk.changed.connect(self.show_change)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Beside one another where there is room, else one above the other."""
        super().resizeEvent(event)
        look = self.desk.look
        wide = self.width() >= look.grown(SIDE_MM) + look.mm(110)
        self.box.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)
        self.side.setMaximumWidth(look.grown(SIDE_MM) if wide else 16777215)
        self.side.setMinimumWidth(look.grown(SIDE_MM) if wide else 0)
        self.side.setMaximumHeight(16777215 if wide else self.height() // 2)

    def showEvent(self, event: QShowEvent) -> None:
        """The sheet is that of the record as it stands now."""
        super().showEvent(event)
        if self._stale and self.desk.session is not None:
            self.make()

    def show_change(self, _: Changed | None) -> None:
        """The sheet is made again, at once where it is looked at."""
        self._stale = True
        if self.isVisible() and self.desk.session is not None:
            self.make()

    def _be_private(self, hidden: bool) -> None:
        """What names amounts gives way to the seller's copy as soon as all that is private is hidden."""
        if hidden and self._let_go_of_private():
            self.show_change(None)

    def _let_go_of_private(self) -> bool:
        """Whether a copy that names amounts was chosen; nothing of it is left then."""
        if self.copy.held()[0] not in PRIVATE:
            return False
        self.copy.set_held(SELLER)
        self._job, self.pdf, self.saved = None, b"", None
        self.preview.show_nothing()
        self.state.say("")
        return True

    def _forget(self) -> None:
        self._let_go_of_private()
        self._stale, self.pdf, self.saved = True, b"", None
        if self.isVisible() and self.desk.session is not None:
            self.make()

    # making

    def make(self, _: str = "") -> None:
        """The chosen sheet is being made; the preview follows when it is there."""
        if self.desk.private.hidden and self._let_go_of_private():
            self.desk.told.emit(tr("What is private is hidden. F9 shows it again; then this copy can be made."))
        self._stale, self.pdf, self.saved = False, b"", None
        self.place.setVisible(self.copy.held() == [SELLER])
        self.place.hold("kept" if self.desk.record.choices.place_told else "")
        self.versions.show_versions()
        self.versions.mark(None)
        self.state.say(tr("The sheet is being made …"))
        work = self._work()
        self._job = job = Job(lambda report: work())
        job.done.connect(lambda pdf, job=job: self._made(job, pdf))
        job.failed.connect(lambda error, job=job: self._failed(job, error))
        job.start(self.desk.pool)

    def _work(self) -> Callable[[], bytes]:
        desk, paper = self.desk, PAPERS[self.paper.held() == [PAPERS[1]]]
        profile, record, made_at = desk.profile, desk.record, desk.clock()
        library, place = desk.library, place_of(desk.library)
        (chosen,) = self.copy.held()
        changes = changes_of(profile, record, library) if chosen == OWNER else ()

        def work() -> bytes:
            from inspector.sheet.pdf import as_pdf

            if chosen == SELLER:
                return drawn(profile, record, place, made_at, paper)
            if chosen == OWNER:
                return as_pdf(owners_file(profile, record, place, made_at, changes), paper)
            if chosen not in FORMS:
                return as_pdf(copy_of(chosen, profile, record, library, made_at), paper)
            return as_pdf(walk_sheet(profile, record.claim.model_year, made_at, FORMS[chosen]), paper)

        return work

    def _made(self, job: Job, pdf: bytes) -> None:
        if job is not self._job or self.desk.session is None:
            return
        self._job, self.pdf = None, pdf
        pages = self.preview.show_pdf(pdf)
        said = tr("{pages} pages. Nothing is kept as a file until you save it.", pages=pages)
        sealed = stands_as_sealed(self.desk.record) if self.copy.held() == [SELLER] else None
        if sealed is not None:
            said = tr("{pages} pages: version {number} as it was sealed.", pages=pages, number=sealed.number)
        self.state.say(said)

    def _failed(self, job: Job, error: object) -> None:
        if job is not self._job:
            return
        self._job = None
        self.state.say(tr("The sheet could not be made: {what}", what=str(error)))

    # signing, and what was sealed

    def open_signing(self) -> None:
        """Everything that is signed and sealed stands over the window."""
        self.signing = Signing(self.desk, PAPERS[self.paper.held() == [PAPERS[1]]], self.window())
        self.signing.sealed.connect(self.show_new_version)
        self.signing.open()

    def show_new_version(self) -> None:
        """The sealed sheet is shown, ready to be saved."""
        self.copy.set_held(SELLER)
        self.make()

    def show_sealed(self, version: Version) -> None:
        """The sheet of that version is shown as it was sealed, and saved as it is."""
        try:
            pdf = sealed_sheet(version, place_of(self.desk.library))
        except StorageTrouble as trouble:
            self.desk.told.emit(tr(trouble.said))
            return
        self._job, self.pdf, self.saved = None, pdf, None
        self.copy.set_held(SELLER)
        self.versions.mark(version)
        pages = self.preview.show_pdf(pdf)
        self.state.say(tr("{pages} pages: version {number} as it was sealed.", pages=pages, number=version.number))

    def check_file(self, path: Path) -> None:
        """What there is to say of that file is shown over the window."""
        library = self.desk.library
        self._check(path.name, lambda: check(path, library))

    def check_version(self, version: Version) -> None:
        """What there is to say of the sheet that is kept here as this version is shown over the window."""
        library, name = self.desk.library, tr("Version {number}, as it is kept here", number=version.number)
        self._check(name, lambda: of_sheet(sealed_sheet(version, place_of(library)), library.folder, library))

    def _check(self, name: str, look_into: Callable[[], Answer]) -> None:
        self.checking = CheckSheet(self.desk, name, look_into, self.window())
        self.checking.open()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """One sheet or bag may be dropped."""
        if _dropped(event) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """What is dropped is checked."""
        path = _dropped(event)
        if path is not None:
            event.acceptProposedAction()
            self.check_file(path)

    # handing over

    def file_name(self) -> str:
        """A name that says what it is."""
        title = "".join(c if c.isalnum() else "-" for c in self.desk.record.claim.model or "machine")
        shown = self.versions.shown
        version = f"-version-{shown.number}" if shown is not None else ""
        return f"{title}-{self.copy.held()[0]}-{self.desk.record.id}{version}.pdf".lower()

    def ask_where(self) -> None:
        """The person is asked where the PDF goes."""
        if self._is_there():
            self.desk.ask.where_to_save(self.file_name(), self.save_to)

    def save_to(self, path: Path) -> None:
        """The PDF stands at that path, whole, or a sentence says why it does not."""
        if not self._is_there():
            return
        try:
            write_atomically(path, self.pdf)
        except SheetTrouble as trouble:
            self.desk.told.emit(tr(trouble.sentence))
            return
        self.saved = path
        self.state.say(tr("Saved as {name}.", name=path.name))

    def _is_there(self) -> bool:
        """Whether there is a sheet to be kept; else it is said why not."""
        if not self.pdf and self._job is None:
            self.desk.told.emit(tr("There is no sheet to keep. {why}", why=self.state.words))
        elif not self.pdf:
            self.desk.told.emit(tr("The sheet is still being made. Try again in a moment."))
        return bool(self.pdf)

    def open_outside(self) -> None:
        """The saved PDF is opened by the program that shows PDFs, from where it can be printed."""
        if self.saved is None or self._stale:
            self.desk.told.emit(tr("Save the sheet first; then it can be opened and printed."))
        elif not QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.saved))):
            self.desk.told.emit(tr("No program here shows PDFs. The sheet is at {path}.", path=self.saved))


class _Side(QWidget):
    """What scrolls over a foot that does not; it takes the height that there is."""

    def __init__(self, scroll: Scroll, *foot: QWidget) -> None:
        super().__init__()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(scroll, 1)
        for widget in foot:
            box.addWidget(widget)

    def hasHeightForWidth(self) -> bool:
        """What scrolls needs no height of its own."""
        return False


def _dropped(event: QDropEvent) -> Path | None:
    files = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
    return files[0] if len(files) == 1 and files[0].suffix.casefold() in (".pdf", ".zip") else None
