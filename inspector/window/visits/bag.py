"""A bag that was packed, and one from elsewhere shown before it is taken in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.packing.standing import Here
from inspector.packing.take import TakenIn, take_in
from inspector.record.words import Role
from inspector.storage.trouble import StorageTrouble
from inspector.texts import say, tr, trn
from inspector.window.longwords import LongWords
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.visits.dialog import View
from inspector.window.visits.working import Working

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.packing.pack import Packed
    from inspector.packing.take import Offer
    from inspector.texts import Say
    from inspector.window.desk import Desk

MOST = 40  # faults and differences listed one by one
STANDS = {
    Here.NEW: say("It is not in this library yet."),
    Here.SAME: say("It is in this library already, the same. There is nothing to take in."),
    Here.OLDER: say("It is in this library already. Changes made here since: {here}."),
    Here.NEWER: say("It is in this library, as it was before. Changes made since that the bag has: {there}."),
    Here.OTHER: say("A record of the same id is in this library and is not the same. Changes only here: {here}; only"
                    " in the bag: {there}."),
}  # fmt: skip


class PackedView(View):
    """Where the bag stands, what is not in it, and the sum by which it is known again."""

    def __init__(self, desk: Desk, made: Packed, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, tr("The bag is packed"), parent)
        look, add = desk.look, self.column.add
        add(Text(look, tr("The bag is packed"), step="head"))
        add(LongWords(look, str(made.path), semibold=True), 2)
        count = trn("{count} file, {size} kB.", "{count} files, {size} kB.", made.files, size=made.size // 1000)
        add(Text(look, count, ink="soft"), 1)
        for line in made.left_out:
            add(LongWords(look, tr(line)), 2)
        add(SectionHead(look, tr("Sum of its lists (SHA-256)")))
        add(LongWords(look, " ".join(made.sha256[n : n + 8] for n in range(0, 64, 8))), 2)
        add(Text(look, tr(
            "Written down elsewhere or sent to somebody today, it shows later that nothing in the bag was changed. It"
            " cannot keep anybody from changing it.",
        ), ink="soft"), 2)  # fmt: skip
        self.folder = Key(look, tr("open its folder"))
        close = Key(look, tr("close"))
        add(KeyRow(look, [self.folder, close], fit="flow"), 4)
        self.folder.clicked.connect(lambda: desk.ask.show_folder(made.path.parent))
        close.clicked.connect(self.close)


class BagView(View):
    """What a bag is, whether it is whole, how it differs from what is here; then it may be taken in."""

    def __init__(self, desk: Desk, made: Offer, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, tr("A bag"), parent)
        self.desk, self.made = desk, made
        look = desk.look
        beside = made.here not in (Here.NEW, Here.SAME)
        word = tr("take it in beside the one here") if beside else tr("take it in")
        self.take = Key(look, word, step="key")
        self.close_key = Key(look, tr("close"), name=tr("Close; nothing is taken in"))
        self.working = Working(desk)
        self.after = Key(look, tr("compare with the one here"))
        self.join = Key(look, tr("join with the one here"))
        self.go = Key(look, tr("open it"), arrow="right")
        self.taken: TakenIn | None = None
        self._say_what()
        self._say_whole()
        self._say_here()
        self._lay_out()

    def _say_what(self) -> None:
        record, look, add = self.made.record, self.look, self.column.add
        title = record.claim.model or self.made.profile_title
        add(Text(look, tr("Shared copy: {machine}", machine=title) if self.made.sharing else title, step="head"))
        year = tr("claimed {year}", year=record.claim.model_year) if record.claim.model_year else tr("no year claimed")
        add(Text(look, ", ".join((year, tr("record {id}", id=record.id))), ink="soft"), 1)
        inspectors = ", ".join(p.name for p in record.people_as(Role.INSPECTOR) if p.name) or tr("no name entered")
        rows = (
            (tr("Inspected"), record.claim.date or record.created[:10]),
            (tr("By"), inspectors),
            (tr("Photographs"), str(len(record.photographs))),
            (tr("Findings"), str(len(record.findings))),
            (tr("Last changed"), self.made.updated[:16].replace("T", " ")),
            (tr("File"), self.made.path.name),
        )
        for label, words in rows:
            add(Row(look, words, label=label, opens=False), 0)

    def _say_whole(self) -> None:
        faults, add = self.made.checked.faults, self.column.add
        add(SectionHead(self.look, tr("Is it whole?")))
        if not faults:
            files = trn("{count} file", "{count} files", self.made.checked.files)
            add(Text(self.look, tr("Yes: {files}, each as it was packed.", files=files), semibold=True), 2)
            if self.made.absent:
                self._say_absent(self.made.absent)
            return
        add(Text(self.look, tr("No. It cannot be taken in as it is; ask for it again."), semibold=True), 2)
        self._list([fault.said for fault in faults])

    def _say_absent(self, count: int) -> None:
        words = trn("{count} photograph that it names was lost before it was packed. The rest can be taken in.",
                    "{count} photographs that it names were lost before it was packed. The rest can be taken in.",
                    count)  # fmt: skip
        self.column.add(Text(self.look, words), 2)

    def _say_here(self) -> None:
        made = self.made
        self.column.add(SectionHead(self.look, tr("What is here")))
        words = STANDS[made.here]
        told = tr(words.template, here=made.later_here, there=made.later_there)
        if made.twin:
            told = tr("It came in before and is here, the same, as record {id}. There is nothing to take in.",
                      id=made.twin)  # fmt: skip
        self.column.add(Text(self.look, told, semibold=True), 2)
        if made.taken_out:
            self.column.add(Text(self.look, tr(
                "The one here is among the machines taken out. It can be brought back below the list of machines.",
            ), semibold=True), 2)  # fmt: skip
        if made.here in (Here.NEW, Here.SAME):
            return
        self.column.add(Text(self.look, tr(
            "Nothing here is overwritten. It comes in beside, as a record of its own; then the two can be compared, or"
            " joined into a third with every difference kept under the name of who made it.",
        ), ink="soft"), 2)  # fmt: skip
        if made.differences:
            self.column.add(Text(self.look, tr("Where they differ; “now” is the bag, “before” is the one here:")), 3)
            self._list(list(made.differences))

    def _list(self, lines: list[Say]) -> None:
        for line in lines[:MOST]:
            self.column.add(LongWords(self.look, "–  " + tr(line)), 2)
        if len(lines) > MOST:
            self.column.add(Text(self.look, tr("and {count} more", count=len(lines) - MOST), ink="soft"), 2)

    def _lay_out(self) -> None:
        can = self.made.checked.whole and self.made.here is not Here.SAME
        self.take.setVisible(can)
        self.take.hold("chosen" if can else "")
        self.told = LongWords(self.look, semibold=True)
        self.told.hide()
        self.keys = KeyRow(self.look, [self.take, self.close_key] if can else [self.close_key], fit="flow")
        self.column.add(self.working, 4)
        self.column.add(self.told, 4)
        self.column.add(self.keys, 6)
        self.take.clicked.connect(self.take_in)
        self.close_key.clicked.connect(self.close)
        self.go.clicked.connect(self._go)
        self.after.clicked.connect(self._compare)
        self.join.clicked.connect(self._join)

    def reject(self) -> None:
        """Closed, or, while it is being taken in, stopped first."""
        if self.working.job is not None:
            self.working.stop.click()
        else:
            super().reject()

    def take_in(self) -> None:
        """The bag is being taken in beside the window; then it can be opened, compared or joined."""
        path, library = self.made.path, self.desk.library
        words = tr("Taking in {name}:", name=path.name)
        if self.working.run(words, lambda report: take_in(path, library, report), self._taken, self.take.turn_on):
            self.take.turn_off(tr("It is being taken in."))

    def _taken(self, taken: TakenIn) -> None:
        self.taken = taken
        name = tr("{machine} is in the list, as record {id}.", machine=taken.title, id=taken.record_id)
        self.told.say(name)
        self.told.show()
        more = [self.go, self.after, self.join] if taken.beside else [self.go]
        self.take.hide()
        self.keys.set_keys([*more, self.close_key])
        self.close_key.say(name=tr("close"))
        self.desk.listed.emit()

    def _go(self) -> None:
        if self.taken and self.desk.open(self.taken.record_id, "result"):
            self.close()

    def _compare(self) -> None:
        from inspector.window.visits.compare import CompareView

        if self.taken and self.desk.open(self.taken.record_id, "machines"):
            view = CompareView(self.desk, self.parentWidget())
            view.show_other(self.taken.was_id)
            self.close()
            view.open()

    def _join(self) -> None:
        from inspector.window.visits.joining import JoinView

        if not self.taken or not self.desk.open(self.taken.was_id, "machines"):
            return
        try:
            other = self.desk.library.load(self.taken.record_id).record
        except StorageTrouble as trouble:
            self.told.say(tr(trouble.said))
            return
        view = JoinView(self.desk, other, self.parentWidget())
        self.close()
        view.open()
