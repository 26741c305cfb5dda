"""The whole file of a machine: packed, packed to be shared, taken in from elsewhere, visited again, compared."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from inspector.storage.trouble import StorageTrouble
from inspector.texts import tr
from inspector.window.desk import keep_typing
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import SectionHead, Text
from inspector.window.visits.working import Working

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QDialog, QWidget

    from inspector.packing.pack import Packed
    from inspector.packing.take import Offer
    from inspector.window.desk import Desk
    from inspector.window.visits.working import Report


class WholeFile(Column):
    """Keys for the open machine's file; those that need a machine say so while none is open."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.of = Text(look, ink="soft")
        self.pack = Key(look, tr("pack this machine"), name=tr("Pack the whole file of this machine"))
        self.share = Key(look, tr("pack a copy to share"), name=tr("Pack a copy of this machine's file to share"))
        self.nameless = Key(look, tr("share without names"), name=tr("Pack a copy to share without names"))
        self.take_key = Key(look, tr("take in a bag"), name=tr("Take in the file of a machine from elsewhere"))
        self.again = Key(look, tr("second visit"), name=tr("Begin a second visit to this machine"))
        self.compare = Key(look, tr("compare visits"), name=tr("Compare two visits"))
        self.working = Working(desk)
        self.view: QDialog | None = None
        self._lay_out()
        self._connect()
        self.show_machine()

    def _lay_out(self) -> None:
        look = self.desk.look
        self.add(SectionHead(look, tr("The whole file")))
        self.add(Text(look, tr(
            "A bag is one file with the record, its history, its profile and the photographs as they came. It opens on"
            " another computer, can be read there without this program, and shows whether anything in it was changed.",
        ), ink="soft"), 2)  # fmt: skip
        self.add(self.of, 2)
        self.add(KeyRow(look, [self.pack, self.share, self.nameless, self.again, self.compare], fit="flow"), 2)
        self.add(KeyRow(look, [self.take_key], fit="flow"), 2)
        self.add(self.working, 2)

    def _connect(self) -> None:
        self.pack.clicked.connect(lambda: self.ask_where(sharing=False))
        self.share.clicked.connect(lambda: self.ask_where(sharing=True))
        self.nameless.clicked.connect(lambda: self.ask_where(sharing=True, names=False))
        self.take_key.clicked.connect(lambda: self.desk.ask.a_bag(self.look_into))
        self.again.clicked.connect(self.second_visit)
        self.compare.clicked.connect(self.open_compare)
        self.desk.opened.connect(self.show_machine)

    def show_machine(self) -> None:
        """The keys are for the machine that is open, or say that none is."""
        session = self.desk.session
        why = "" if session else tr("Open the machine first: touch it in the list.")
        for key in (self.pack, self.share, self.nameless, self.again, self.compare):
            key.turn_off(why)
        if session:
            title = session.record.claim.model or session.record.profile.title
            self.of.say(tr("For the open machine, {machine} ({id}):", machine=title, id=session.record.id))
        else:
            self.of.say(tr("No machine is open. Touch one in the list, then come back here."))

    # packing

    def ask_where(self, *, sharing: bool, names: bool = True) -> None:
        """The person is asked where the bag goes."""
        keep_typing()
        end = "-shared" if sharing else ""
        name = f"inspection-{self.desk.record.id}{end}.zip"
        self.desk.ask.where_to_pack(name, partial(self.pack_to, sharing=sharing, names=names))

    def pack_to(self, path: Path, *, sharing: bool = False, names: bool = True) -> None:
        """The bag is being packed beside the window; a sentence tells when it stands there."""
        library, record_id = self.desk.library, self.desk.record.id

        def work(report: Report) -> Packed:
            from inspector.packing.pack import pack
            from inspector.packing.share import Sharing, pack_to_share

            if sharing:
                return pack_to_share(library, record_id, path, Sharing(names=names), report)
            return pack(library, record_id, path, report)

        self.working.run(tr("Packing {name}:", name=path.name), work, self._packed)

    def _packed(self, made: Packed) -> None:
        from inspector.window.visits.bag import PackedView

        self._open(PackedView(self.desk, made, self.window()))

    # taking in

    def look_into(self, path: Path) -> None:
        """The bag is read and checked beside the window, then shown before anything is taken in."""
        library = self.desk.library

        def work(report: Report) -> Offer:
            from inspector.packing.take import offer

            return offer(path, library, report)

        self.working.run(tr("Reading {name}:", name=path.name), work, self._offered)

    def _offered(self, made: Offer) -> None:
        from inspector.window.visits.bag import BagView

        self._open(BagView(self.desk, made, self.window()))

    # visits

    def second_visit(self) -> None:
        """A new record of the open machine, begun from it, is open at its claim; nothing in it is seen yet."""
        from inspector.revisit import begin_second_visit

        keep_typing()
        try:
            record_id = begin_second_visit(self.desk.library, self.desk.record.id, self.desk.clock())
        except StorageTrouble as trouble:
            self.desk.told.emit(tr(trouble.said))
            return
        if self.desk.open(record_id, "claim"):
            self.desk.told.emit(
                tr("A second visit is begun. What was found before stands at each item; nothing counts as seen yet.")
            )

    def open_compare(self) -> None:
        """The open machine's visit is laid beside another one."""
        from inspector.window.visits.compare import CompareView

        keep_typing()
        self._open(CompareView(self.desk, self.window()))

    def _open(self, view: QDialog) -> None:
        self.view = view
        view.destroyed.connect(lambda: self._closed(view))
        view.open()

    def _closed(self, view: QDialog) -> None:
        if self.view is view:
            self.view = None
