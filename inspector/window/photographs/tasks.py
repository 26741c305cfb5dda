"""Beside the list: how photographs come in, which item they may belong to, what is missing, copies to hand on."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import Signal

from inspector.photo.clock_offset import offset_told
from inspector.record.photographs import forget_clock
from inspector.texts import tr, trn
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.photographs.camera import may_be_there

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtWidgets import QWidget

    from inspector.judgement.offers import Offer
    from inspector.judgement.shots import ShotLine, ShotList
    from inspector.window.desk import Desk
    from inspector.window.photographs.watching import Watching

SOME = 6  # so many are shown before all are asked for
TIME, MARKS = "time", "marks"


class BringIn(Column):
    """Keys for every way in, and what is going on; ``choose``, ``paste``, ``camera`` and ``watch`` are wished for."""

    def __init__(self, desk: Desk, watching: Watching, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.watching = watching
        look = desk.look
        self.choose = Key(look, tr("choose photographs"), sign="plus", step="key", name=tr("Choose photographs"))
        self.choose.hold("chosen")
        self.paste = Key(look, tr("paste"), name=tr("Paste a photograph"))
        self.camera = Key(look, tr("camera"), name=tr("Camera of this computer"))
        self.watch = Key(look, tr("watch a folder"))
        self.progress = Text(look, ink="soft")
        self.stop = Key(look, tr("stop"), sign="stop", name=tr("Stop taking photographs in"))
        self.watched = Text(look, ink="soft")
        self.camera.setVisible(may_be_there())
        self.add(SectionHead(look, tr("Bring in")))
        self.add(self.choose, 2)
        self.add(KeyRow(look, [self.paste, self.watch, self.camera], fit="flow"), 2)
        self.add(Text(look, tr("Or drop them anywhere on this page. Files stay where they are."), ink="soft"), 2)
        self.add(self.progress, 2)
        self.add(self.stop, 1)
        self.add(self.watched, 2)
        self.ended()
        watching.changed.connect(self.show_watched)
        self.show_watched()

    def begin(self) -> None:
        """Photographs are coming in, and that can be stopped."""
        self.progress.say(tr("Taking photographs in."))
        self.progress.show()
        self.stop.show()

    def going(self, done: int, total: int, name: str) -> None:
        """So many have come in."""
        if name:
            self.progress.say(tr("{done} of {total}: {name}", done=done + 1, total=total, name=name))

    def ended(self) -> None:
        """None is coming in."""
        self.progress.hide()
        self.stop.hide()

    def show_watched(self) -> None:
        """The key tells whether a folder is watched, the words which."""
        folder = self.watching.folder
        self.watch.say(tr("watch no more") if folder else tr("watch a folder"))
        self.watch.hold("kept" if folder else "")
        words = tr("Watched: {folder}. What is new there comes in by itself; nothing there is changed or deleted.",
                   folder=folder)  # fmt: skip
        self.watched.say(self.watching.trouble or words if folder else "")
        self.watched.setVisible(folder is not None)


class Offers(Column):
    """Which item each photograph may belong to, with the reason; none is assigned until it is taken."""

    taken = Signal(object)
    shown = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.words = Text(look)
        self.all = Key(look, "")
        self.all.hide()
        self.rows = Column(look, edge=0, top=0)
        self.clocks = Column(look, edge=0, top=0)
        self.offers: Sequence[Offer] = ()
        self.add(SectionHead(look, tr("Which item?")))
        self.add(self.words, 2)
        self.add(self.all, 2)
        self.add(self.rows, 1)
        self.add(self.clocks, 2)
        self.all.clicked.connect(lambda: self.taken.emit(tuple(self.offers)))

    def show_offers(self, offers: Sequence[Offer], loose: int) -> None:
        """So many are not assigned, and these are offered an item."""
        self.offers = offers
        if not loose:
            self.words.say(tr("Every photograph is assigned."))
        elif not offers:
            self.words.say(trn(
                "{count} is not assigned, and its time tells of no item.",
                "{count} are not assigned, and their times tell of no item.", loose,
            ))  # fmt: skip
        else:
            self.words.say(tr("{some} of {all} not assigned are offered an item. You decide.", some=len(offers),
                              all=loose))  # fmt: skip
        self.all.say(trn("take {count} offer", "take all {count} offers", len(offers)))
        self.all.setVisible(bool(offers))
        self._show_rows()
        self._show_clocks()

    def _show_rows(self) -> None:
        self.rows.clear()
        names = {p.id: p.name for p in self.desk.record.photographs}
        for offer in self.offers[:SOME]:
            row = Row(self.desk.look, offer.name, label=names.get(offer.photograph, ""), second=tr(offer.reason))
            row.clicked.connect(partial(self.shown.emit, offer.photograph))
            self.rows.add(row, 0)

    def _show_clocks(self) -> None:
        self.clocks.clear()
        look, clocks = self.desk.look, self.desk.record.choices.clocks
        if not clocks:
            self.clocks.add(Text(look, tr(
                "Camera clock not checked. Photograph a clock, pick that picture here and write what the clock shows."
                " What the camera wrote stays as it is.",
            ), ink="soft"))  # fmt: skip
        for clock in clocks:
            name = clock.camera or tr("Camera without a name")
            self.clocks.add(Text(look, tr(offset_told(clock.seconds)), lead=name + ":"))
            forget = Key(look, tr("forget it"), name=tr("Forget the clock of {camera}", camera=name))
            forget.clicked.connect(partial(self._forget, clock.camera))
            self.clocks.add(KeyRow(look, [forget], fit="flow"), 1)

    def _forget(self, camera: str) -> None:
        self.desk.do(forget_clock(self.desk.record, camera))


class MissingShots(Column):
    """What is still to be photographed before leaving; a row opens its item, or its place among the numbers."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.head = SectionHead(look, tr("Still missing"))
        self.caution = Text(look, ink="soft")
        self.rows = Column(look, edge=0, top=0)
        self.more = Key(look, "")
        self.more.hide()
        self._all = False
        self._list: ShotList | None = None
        for part, gap in ((self.head, 0), (self.caution, 2), (self.rows, 1), (self.more, 2)):
            self.add(part, gap)
        self.more.clicked.connect(self._show_all)

    def show_shots(self, found: ShotList) -> None:
        """The shots that no photograph answers."""
        if self._list is not None and found == self._list:
            return
        self._list = found
        missing = found.missing
        self.head.say(tr("Still missing"), tr("{count} of {all}", count=len(missing), all=len(found.lines)))
        self.caution.say(tr(found.caution))
        shown = missing if self._all else missing[:SOME]
        self.rows.clear()
        for line in shown:
            self.rows.add(self._row(line), 0)
        self.more.say(trn("show {count} more", "show {count} more", len(missing) - len(shown)))
        self.more.setVisible(len(shown) < len(missing))

    def _show_all(self) -> None:
        self._all, found, self._list = True, self._list, None
        if found is not None:
            self.show_shots(found)

    def _row(self, line: ShotLine) -> Row:
        second = " ".join(part for part in (line.how and line.how.rstrip(".") + ".", tr(line.reason)) if part)
        row = Row(self.desk.look, tr(line.name), second=second, opens=bool(line.item or line.place), strong=True)
        row.clicked.connect(partial(self._open, line))
        return row

    def _open(self, line: ShotLine, _: bool = False) -> None:
        if line.item:
            self.desk.go_to(line.item)
            self.desk.wanted.emit("walk")
        elif line.place:
            self.desk.show_place(line.place)


class Wish(NamedTuple):
    """What a copy for others holds beside the picture: the time it was taken, the marks drawn on it."""

    time: bool = False
    marks: bool = False


class SharingCopies(Column):
    """Copies for others; ``wanted`` carries the Wish."""

    wanted = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        look = desk.look
        self.words = Text(look)
        self.extras = ChoiceKeys(look, [
            Option(TIME, tr("with the time taken")), Option(MARKS, tr("with my marks")),
        ], many=True, held="kept")  # fmt: skip
        self.marked = Text(look)
        self.write = Key(look, tr("write copies"))
        self.progress = Text(look, ink="soft")
        self.stop = Key(look, tr("stop"), sign="stop", name=tr("Stop writing copies"))
        self.add(SectionHead(look, tr("Copies to share")))
        self.add(Text(look, tr(
            "A copy holds the picture alone: no place, no serial number, no name of its file. What you covered is"
            " overwritten in it. The kept photographs keep everything.",
        ), ink="soft"), 2)  # fmt: skip
        for part, gap in (
            (self.words, 2), (self.marked, 2), (self.extras, 2), (self.write, 2), (self.progress, 2), (self.stop, 1),
        ):  # fmt: skip
            self.add(part, gap)
        self.ended()
        self._show_marked(0)
        self.write.clicked.connect(lambda: self.wanted.emit(self.wish()))

    def wish(self) -> Wish:
        """What the copies are to hold beside the pictures."""
        held = self.extras.held()
        return Wish(TIME in held, MARKS in held)

    def _show_marked(self, drawn: int) -> None:
        """How many carry marks, and that their words are copied as they stand."""
        self.extras.key(MARKS).turn_off("" if drawn else tr("None of them carries a mark."))
        there = trn("{count} of them carries marks.", "{count} of them carry marks.", drawn)
        more = tr("Arrows, rings and words can be drawn over the picture as they stand: read the words first.")
        self.marked.say(f"{there} {more}")
        self.marked.setVisible(bool(drawn))

    def show_count(self, count: int, picked: bool, bare: int, drawn: int = 0) -> None:
        """So many would be written, picked or all that are listed.

        ``bare`` numbers among them have no box, ``drawn`` carry marks.
        """
        self._show_marked(drawn)
        one, many = ("write {count} that is picked", "write the {count} that are picked") if picked else (
            "write {count} that is listed", "write all {count} that are listed")  # fmt: skip
        self.write.say(trn(one, many, count))
        self.write.turn_off("" if count else tr("There is no photograph to copy."))
        self.words.say(trn(
            "{count} photograph of a number has nothing covered.",
            "{count} photographs of numbers have nothing covered.", bare,
        ) if bare else "")  # fmt: skip
        self.words.setVisible(bool(bare))

    def going(self, done: int, total: int, name: str) -> None:
        """So many are written."""
        if name:
            self.progress.say(tr("{done} of {total}: {name}", done=done + 1, total=total, name=name))
        self.progress.show()
        self.stop.show()

    def ended(self) -> None:
        """None is being written."""
        self.progress.hide()
        self.stop.hide()
