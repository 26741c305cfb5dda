"""A second photograph beside the first: before and after cleaning, machine and reference, seen alike."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.record.finding import Photograph
from inspector.texts import tr
from inspector.window.bench.canvas import Canvas
from inspector.window.bench.pairs import is_pair, partners, same_thing
from inspector.window.bench.panel import EDGE, Panel
from inspector.window.bench.subject import Subject
from inspector.window.look.columns import Column
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text

MOST = 60
FILE = "file"  # no id of a photograph


class BesidePanel(Panel):
    """``wanted(photograph)`` tells which is to stand beside, None that the first stands alone.

    ``file_wanted(path)`` tells of a picture that is no photograph of this machine, such as one out of a book.
    """

    wanted = Signal(object)
    file_wanted = Signal(object)

    def __init__(self, subject: Subject, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(subject, canvas, parent)
        look = self.look
        self.beside = ""
        self.said = Text(look)
        self.linked = ChoiceKeys(look, [Option("linked", tr("both move as one"))], many=True, held="kept")
        self.linked.set_held("linked")
        self.rows = Column(look, edge=0, top=0)
        self.file = Key(look, tr("a picture from a file"), name=tr("Put a picture from a file beside it, to compare"))
        self.file.clicked.connect(lambda: self.desk.ask.photographs(self.choose_file))
        self.add(SectionHead(look, tr("Beside it")))
        self.add(self.said, 2)
        self.add(KeyRow(look, [self.linked, self.file], fit="flow"), 2)
        self.add(self.rows, 2)
        self.add(Text(look, tr(
            "Two pictures side by side show what differs to the eye. Light, lens and cleaning differ too: nothing is "
            "decided from them.",
        ), ink="soft", step="small"), 2)  # fmt: skip

    def show_kept(self) -> None:
        """A row for each photograph that may stand beside it."""
        photograph = self.subject.photograph
        if photograph is None:
            return
        self.rows.clear()
        found = partners(photograph, self.desk.record.photographs)
        pair = next((other for other in found if is_pair(photograph, other)), None)
        words = tr("No other photograph is in the record yet.") if not found else tr("Choose what stands beside it.")
        words = tr("Before and after cleaning: the pair stands first.") if pair else words
        self.said.say(tr("A picture from a file stands beside it; it is not kept.") if self.beside == FILE else words)
        if self.beside:
            self.rows.add(self._row(None, tr("nothing: show it alone")), 0)
        for other in found[:MOST]:
            self.rows.add(self._row(other, _told(photograph, other)), 0)

    def _row(self, other: Photograph | None, words: str) -> Row:
        name = words if other is None else other.caption or other.name
        second = "" if other is None else words
        row = Row(self.look, name, second=second, arrow=False, edge=EDGE)
        row.set_current(other is not None and other.id == self.beside)
        row.clicked.connect(partial(self.choose, other))
        return row

    def choose(self, other: Photograph | None, _: bool = False) -> None:
        """This one stands beside, or none."""
        self.beside = other.id if other is not None else ""
        self.wanted.emit(other)
        self.show_kept()

    def choose_file(self, paths: list[Path]) -> None:
        """The picture in the first of these files stands beside."""
        if paths:
            self.beside = FILE
            self.file_wanted.emit(paths[0])
            self.show_kept()

    def are_linked(self) -> bool:
        """Whether both show the same part."""
        return bool(self.linked.held())


def _told(photograph: Photograph, other: Photograph) -> str:
    """What the other photograph is to this one."""
    words = [tr(other.cleaned)] if other.cleaned else []
    words += [tr("light {where}", where=tr(other.light))] if other.light else []
    if same_thing(photograph, other):
        words.insert(0, tr("same place") if other.place and other.place == photograph.place else tr("same item"))
    return ", ".join(words)
