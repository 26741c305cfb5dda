"""A notice where a number of this machine, or one that may be it, stands in another record of the library."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from inspector.judgement.sides import identity_places
from inspector.judgement.wording import lower_first
from inspector.storage.same import SameNumber
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.text import Text

REST_MS = 300  # after the last figure, before the other records are looked through


class Elsewhere(Column):
    """One sentence for each such number; it does not say which record is right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.found: tuple[SameNumber, ...] = ()
        self._asked: tuple[str, tuple[str, ...]] | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._look)
        self.hide()

    def ask(self) -> None:
        """The other records are looked through once the figures rest."""
        record = self.desk.record
        asked = (record.id, tuple(reading.typed() for reading in record.readings))
        if asked != self._asked:
            if self._asked is None or self._asked[0] != record.id:
                self.hide()
            self._asked = asked
            self._rest.start()

    def _look(self) -> None:
        if self.desk.session is None:
            return
        record, library = self.desk.record.id, self.desk.library
        places = identity_places(self.desk.profile)  # a date code comes again on many machines
        job = Job(lambda report: library.same_numbers(record, places))
        job.done.connect(lambda found: self._show(record, found))
        job.start(self.desk.pool)

    def _show(self, record: str, found: tuple[SameNumber, ...]) -> None:
        if self.desk.session is None or self.desk.record.id != record:
            return
        if found != self.found:
            self.found = found
            self._list()
        self.setVisible(bool(found))

    def _list(self) -> None:
        self.clear()
        for same in self.found:
            self.add(Text(self.look, self._words(same), lead=tr("In another record.")), 2)
        self.add(Text(self.look, tr("Which is right, this does not say. Look at both."), ink="soft"), 1)

    def _words(self, same: SameNumber) -> str:
        place = self.desk.profile.place_by_id.get(same.own_place)
        values = {
            "place": lower_first(place.name) if place else same.own_place, "number": same.number,
            "title": same.title or same.record_id, "there": same.place,
        }  # fmt: skip
        if same.sure:
            return tr("The {place} {number} also stands in “{title}”, at {there}.", **values)
        return tr("The {place} may be {number}, which stands in “{title}”, at {there}.", **values)
