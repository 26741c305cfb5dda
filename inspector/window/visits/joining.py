"""Two records laid side by side before they are joined: what speaks against one machine, and what joining does."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.alike import warnings
from inspector.record.joining import why_not
from inspector.record.refusing import EditRefused
from inspector.record.words import Role
from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr, trn
from inspector.window.longwords import LongWords
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.visits.dialog import View

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.record.model import Record
    from inspector.window.desk import Desk


class JoinView(View):
    """The open machine's record and another one; joined, they make a third and stay as they are."""

    def __init__(self, desk: Desk, other: Record, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, tr("Join two records"), parent)
        self.desk, self.here, self.other = desk, desk.record, other
        look, add = desk.look, self.column.add
        self.join = Key(look, tr("of one machine: join them"), step="key",
                        name=tr("They are of one machine: join them"))  # fmt: skip
        self.close_key = Key(look, tr("close"), name=tr("Close; nothing is joined"))
        self.told = LongWords(look, semibold=True)
        self.told.hide()
        add(Text(look, tr("Join two records"), step="head"))
        for record, word in ((self.here, tr("The open one")), (other, tr("The other one"))):
            add(self._row(record, word), 1)
        self._say_against()
        self._say_what_happens()
        add(self.told, 4)
        add(KeyRow(look, [self.join, self.close_key], fit="flow"), 4)
        refused = why_not(self.here, other)
        self.join.turn_off(tr(refused) if refused else "")
        self.join.hold("" if refused else "chosen")
        if refused:
            self._tell(tr(refused))
        self.join.clicked.connect(self.join_them)
        self.close_key.clicked.connect(self.close)

    def _row(self, record: Record, word: str) -> Row:
        who = ", ".join(p.name for p in record.people_as(Role.INSPECTOR) if p.name) or tr("no name entered")
        marks = trn("{count} finding", "{count} findings", len(record.findings))
        day = record.claim.date or record.created[:10]
        second = ", ".join((day, who, marks, tr("record {id}", id=record.id)))
        return Row(self.look, record.claim.model or record.profile.title, label=word, second=second, opens=False)

    def _say_against(self) -> None:
        look, add = self.look, self.column.add
        places = {place.id: place.name for place in self.desk.profile.places}
        found = warnings(self.here, self.other, places)
        add(SectionHead(look, tr("Before you join them")))
        if not found:
            add(Text(look, tr("Every number that was read in both can be one and the same.")), 2)
        for line in found:
            add(LongWords(look, "–  " + tr(line), semibold=True), 2)
        add(Text(look, tr("Whether they are of one machine is for you to say; the program does not know it."),
                 ink="soft"), 2)  # fmt: skip

    def _say_what_happens(self) -> None:
        look, add = self.look, self.column.add
        add(SectionHead(look, tr("What joining does")))
        add(Text(look, tr(
            "A third record is made: all of the open one, and what the other has more or differently, each finding and"
            " reading under the name of who made it. Where the two claim different things, the open one's claim stays"
            " and the other's is noted as said there. Signatures, sealed versions and the other's money stay out.",
        )), 2)  # fmt: skip
        add(Text(look, tr("Both records stay as they are. Undo takes the joining back in the third."), ink="soft"), 2)

    def join_them(self) -> None:
        """The third record is made and open; or a sentence says why it cannot be."""
        from inspector.packing.joined import join_as_new

        desk = self.desk
        try:
            record_id = join_as_new(desk.library, self.here.id, self.other.id, desk.clock(), desk.here.by)
        except EditRefused as refused:
            self._tell(tr(refused.sentence))
            return
        except StorageTrouble as trouble:
            self._tell(tr(trouble.said))
            return
        if desk.open(record_id, "result"):
            desk.told.emit(tr(
                "Record {id} joins {here} and {other}; both are as they were. Undo takes the joining back.",
                id=record_id, here=self.here.id, other=self.other.id,
            ))  # fmt: skip
            self.close()

    def _tell(self, words: str) -> None:
        self.told.say(words)
        self.told.show()
