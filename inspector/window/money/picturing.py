"""Pictures of other machines at their comparables: brought in, or picked from those that are kept here."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QDialog, QWidget

from inspector.photo.intake import Taken
from inspector.photo.refusal import Refusal
from inspector.record.edits import Step
from inspector.record.finding import Photograph
from inspector.record.verbs_money import add_pictures, drop_picture
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.bringing import PhotographStrip, Tie
from inspector.window.desk import Desk
from inspector.window.intake import Bringing, photograph_of
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.text import Text
from inspector.window.money.book import Book
from inspector.window.thumb import Thumb

AT_ONCE = 24  # small pictures that are offered, and so many more with each touch


@dataclass(frozen=True, slots=True)
class OfComparable(Tie):
    """A comparable, to which no photograph of this machine belongs."""

    comparable: str = ""

    def holds(self, photograph: Photograph) -> bool:
        """Never: photographs of the record show this machine."""
        return False


class PictureBringing(Bringing):
    """Takes pictures in as photographs are, but to a comparable: none of them is a photograph of this machine."""

    said = Signal(str)

    def _put(self, run: Any, batch: list[Taken | Refusal]) -> None:
        """What has come stands at its comparable."""
        run.refused += [one for one in batch if isinstance(one, Refusal)]
        taken = [one for one in batch if isinstance(one, Taken)]
        desk, tie = self.desk, run.tie
        if desk.session is None or desk.record.id != run.record:
            run.lost += len(taken)
            return
        if not any(one.id == tie.comparable for one in desk.record.comparables):
            run.lost += len(taken)
        elif taken:
            at, by = desk.clock(), desk.here.by
            pictures = [photograph_of(one, Tie(), at, by) for one in taken]
            step = add_pictures(desk.record, tie.comparable, pictures)
            if desk.do(step.model_copy(update={"joins": f"bringing in {run.number}"})):
                self._uncopied += [picture.sha256 for picture in pictures]

    def _tell(self, run: Any, trouble: str = "") -> None:
        """What could not be taken in is said at the comparable: over the page others may read it."""
        told = [tr("The pictures could not be taken in: {what}", what=trouble)] if trouble else []
        told += [tr(refusal.why) for refusal in run.refused]
        if run.lost:
            told.append(tr("The comparable for which it came is no longer open. Bring it in there."))
        self.said.emit(" ".join(told))


class PictureThumb(Thumb):
    """A small picture of a comparable; opened large it goes where Money is hidden."""

    def open_large(self) -> QDialog:
        """The picture is shown large; the key that hides Money closes it."""
        dialog = super().open_large()
        for key in dialog.findChildren(Key):
            # What looks closely knows photographs of this machine alone.
            key.setVisible(key.accessibleName() != tr("Look at the photograph closely"))
        private = self.desk.private
        private.changed.connect(dialog.close)
        QShortcut(QKeySequence("F9"), dialog, private.hide)
        return dialog


class PictureStrip(PhotographStrip):
    """The pictures of the open comparable, and keys to bring more or pick one that is here."""

    brings = PictureBringing

    def __init__(self, book: Book) -> None:
        super().__init__(book.desk)
        self.book, self.key = book, ""
        self.plus.say(tr("picture"))
        self.plus.setAccessibleName(tr("Add pictures of that machine: choose, drop or paste them"))
        self.pick = Key(self.look, tr("pick one from here"), name=tr("Pick a picture that is kept here"))
        self.offered = PickPart(book.desk)
        self.trouble = Text(self.look, semibold=True)
        self.add(self.trouble, 1)
        self.add(self.offered, 2)
        self.offered.hide()
        self.trouble.hide()
        self.pick.clicked.connect(self._turn)
        self.offered.picked.connect(self._take)
        if isinstance(self.bringing, PictureBringing):
            self.bringing.said.connect(self.say)

    def tie(self) -> Tie:
        """The comparable that is open."""
        return OfComparable(comparable=self.key)

    def tied(self, tie: Tie) -> tuple[Photograph, ...]:
        """The pictures of that comparable."""
        found = (one.pictures for one in self.book.record.comparables if one.id == self.key)
        return next(found, ())

    def more(self) -> list[QWidget]:
        """The key that picks from those that are here."""
        return [self.pick]

    def show_pictures(self, key: str) -> None:
        """The pictures of this comparable are shown."""
        if key != self.key:
            self.say("")
            self.offered.hide()
        self.key = key
        self.show_item()

    def say(self, sentence: str) -> None:
        """What could not be done."""
        self.trouble.say(sentence)
        self.trouble.setVisible(bool(sentence))

    def _thumb(self, photograph: Photograph) -> Thumb:
        thumb = PictureThumb(self.desk, photograph)
        thumb.removed.connect(self._remove)
        return thumb

    def _remove(self, photograph: str) -> None:
        self._do(lambda: drop_picture(self.book.record, self.key, photograph))

    def _take(self, photograph: Photograph) -> None:
        self._do(lambda: add_pictures(self.book.record, self.key, [photograph]))

    def _do(self, make: Callable[[], Step]) -> None:
        self.say(self.book.do(make))

    def _turn(self) -> None:
        if self.offered.isHidden():
            self.offered.show_machine(self.desk.record.id)
        self.offered.setVisible(self.offered.isHidden())


class PickPart(Column):
    """The photographs that are kept of one machine of the library; ``picked(photograph)`` tells of a touch."""

    picked = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        self.machine = MenuKey(self.look, tr("of which machine"), name=tr("Of which machine"), held="kept")
        self.row = KeyRow(self.look, fit="flow")
        self.none = Text(self.look, ink="soft")
        self.further = Key(self.look, tr("more of them"))
        for widget, gap in ((self.machine, 0), (self.none, 1), (self.row, 2), (self.further, 2)):
            self.add(widget, gap)
        self.machine.picked.connect(self.show_machine)
        self.further.clicked.connect(self._show_more)
        self._photographs: tuple[Photograph, ...] = ()
        self._shown = 0

    def show_machine(self, record: str) -> None:
        """The photographs of that machine are offered, and every machine of the library by name."""
        lines = [machine.summary for machine in self.desk.library.machines()]
        self.machine.set_options([Option(one.id, one.title, second=one.date) for one in lines])
        self.machine.set_picked(record)
        trouble = ""
        try:
            kept = self.desk.record if record == self.desk.record.id else self.desk.library.load(record).record
            self._photographs = kept.photographs
        except StorageTrouble as error:
            self._photographs, trouble = (), tr(error.said)
        self.none.say(trouble or ("" if self._photographs else tr("No photograph of it is kept here.")))
        self.none.setVisible(bool(self.none.words))
        self._shown = 0
        self._show_more()

    def _show_more(self) -> None:
        self._shown = min(self._shown + AT_ONCE, len(self._photographs))
        self.row.set_keys([self._key(photograph) for photograph in self._photographs[: self._shown]])
        self.further.setVisible(self._shown < len(self._photographs))

    def _key(self, photograph: Photograph) -> Thumb:
        thumb = Thumb(self.desk, photograph)
        thumb.clicked.disconnect(thumb.open_large)
        thumb.clicked.connect(lambda: self.picked.emit(photograph))
        thumb.setAccessibleName(tr("Pick {name}", name=photograph.caption or photograph.name))
        return thumb
