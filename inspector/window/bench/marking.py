"""Arrows, rings and words over the photograph: kept as data, drawn into copies, undone like everything else."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from inspector.record.finding import PhotoMark
from inspector.record.words import Drawn
from inspector.texts import tr
from inspector.window.bench.overlay import Overlay, Point
from inspector.window.bench.panel import EDGE, Panel
from inspector.window.bench.pens import paint_arrow, paint_ring, paint_words
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Option
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text

if TYPE_CHECKING:
    from PySide6.QtCore import QPointF
    from PySide6.QtGui import QPainter
    from PySide6.QtWidgets import QWidget

    from inspector.window.bench.canvas import Canvas
    from inspector.window.bench.subject import Subject

MOST_LETTERS = 200


class MarkOverlay(Overlay):
    """The marks that are kept, each with handles, and the one being drawn."""

    def __init__(self, panel: MarkPanel) -> None:
        super().__init__(panel)
        self.panel = panel
        self.coming: tuple[Point, Point] | None = None
        self.pulled: tuple[int, Point] | None = None

    @property
    def places(self) -> bool:
        """A touch puts words."""
        return self.panel.kind is Drawn.WORDS

    @property
    def draws(self) -> bool:
        """A pull draws an arrow or a ring."""
        return self.panel.kind is not Drawn.WORDS

    def spots(self) -> list[list[Point]]:
        """The points of each mark, the one that is pulled about where it is now."""
        found, n = [], 0
        for mark in self.panel.marks():
            points = self.panel.subject.spots(mark.points)
            if self.pulled is not None and n <= self.pulled[0] < n + len(points):
                points[self.pulled[0] - n] = self.pulled[1]
            n += len(points)
            found.append(points)
        return found

    def handles(self) -> list[Point]:
        """Every point of every mark."""
        return [point for points in self.spots() for point in points]

    def name(self, index: int) -> str:
        """Which mark the handle belongs to."""
        return self.panel.named(self._owner(index))

    def _owner(self, index: int) -> int:
        for n, points in enumerate(self.spots()):
            if index < len(points):
                return n
            index -= len(points)
        return -1

    def place(self, point: Point) -> None:
        """Words begin there."""
        self.panel.put(PhotoMark(kind=Drawn.WORDS, points=self.panel.subject.shares([point]), text=self.panel.words()))

    def draw(self, start: Point, end: Point, canvas: Canvas, *, done: bool) -> None:
        """An arrow or a ring follows the hand, and is kept when it is let go."""
        self.coming = None if done else (start, end)
        if done:
            self.panel.put(PhotoMark(kind=self.panel.kind, points=self.panel.subject.shares([start, end])))
        self.changed.emit()

    def move(self, index: int, point: Point, *, done: bool) -> None:
        """The mark follows its handle."""
        self.pulled = (index, point)
        if done:
            marks = self.panel.marks()
            new = [m.model_copy(update={"points": self.panel.subject.shares(points)})
                   for m, points in zip(marks, self.spots(), strict=True)]  # fmt: skip
            self.pulled = None
            self.panel.keep("Move a mark in a photograph", new)
        self.changed.emit()

    def drop(self, index: int) -> None:
        """The mark of the handle goes."""
        self.panel.remove(self._owner(index))

    def paint(self, painter: QPainter, canvas: Canvas) -> None:
        """All marks, as they are drawn into copies."""
        for mark, points in zip(self.panel.marks(), self.spots(), strict=True):
            _paint(painter, canvas, mark.kind, [canvas.to_screen(p) for p in points], mark.text)
        if self.coming is not None:
            _paint(painter, canvas, self.panel.kind, [canvas.to_screen(p) for p in self.coming], "")


def _paint(painter: QPainter, canvas: Canvas, kind: Drawn, spots: list[QPointF], text: str) -> None:
    if kind is Drawn.WORDS:
        paint_words(painter, canvas.look, spots[0], text)
    elif len(spots) == 2:
        (paint_arrow if kind is Drawn.ARROW else paint_ring)(painter, canvas.look, spots[0], spots[1])


class MarkPanel(Panel):
    """What is drawn next, and a row for each mark, which takes it away."""

    def __init__(self, subject: Subject, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(subject, canvas, parent)
        look = self.look
        self.kinds = ChoiceKeys(look, [
            Option(Drawn.ARROW.value, tr("arrow")), Option(Drawn.RING.value, tr("ring")),
            Option(Drawn.WORDS.value, tr("words")),
        ], held="kept")  # fmt: skip
        self.kinds.set_held(Drawn.ARROW.value)
        self.text = LineField(look, tr("Words to put there"))
        self.text.edit.setMaxLength(MOST_LETTERS)
        self.rows = Column(look, edge=0, top=0)
        self.how = Text(look, ink="soft", step="small")
        self.add(SectionHead(look, tr("Draw on the copy")))
        self.add(self.kinds, 2)
        self.add(self.text, 2)
        self.add(self.how, 2)
        self.add(self.rows, 3)
        self.add(Text(look, tr(
            "Marks are kept beside the photograph and drawn into copies only, such as the one on the sheet. The "
            "original has none. Undo takes them back.",
        ), ink="soft", step="small"), 2)  # fmt: skip
        self.overlay = MarkOverlay(self)
        self.kinds.changed.connect(lambda _: self._show_kind())
        self._show_kind()

    @property
    def kind(self) -> Drawn:
        """What is drawn next."""
        held = self.kinds.held()
        return Drawn(held[0]) if held else Drawn.ARROW

    def words(self) -> str:
        """The words to put, or "here" where none were written."""
        return self.text.value().strip() or tr("here")

    def marks(self) -> tuple[PhotoMark, ...]:
        """The marks that the record keeps."""
        photograph = self.subject.photograph
        return photograph.marks if photograph is not None and self.subject.copy.there else ()

    def named(self, index: int) -> str:
        """What a mark is called in its row."""
        mark = self.marks()[index]
        return tr("{n}. {what}", n=index + 1, what=mark.text or tr(mark.kind.value))

    def put(self, mark: PhotoMark) -> None:
        """One more mark is kept."""
        self.keep("Mark in a photograph", [*self.marks(), mark])

    def remove(self, index: int, _: bool = False) -> None:
        """The mark at this place goes."""
        marks = list(self.marks())
        del marks[index]
        self.keep("Take a mark out of a photograph", marks)

    def keep(self, label: str, marks: list[PhotoMark]) -> None:
        """The record keeps these marks with the photograph."""
        self.subject.change(label, marks=tuple(mark.model_dump() for mark in marks))

    def _show_kind(self) -> None:
        self.text.setVisible(self.kind is Drawn.WORDS)
        ways = {
            Drawn.ARROW: tr("Pull from where it begins to what it points at."),
            Drawn.RING: tr("Pull from the middle to the rim."),
            Drawn.WORDS: tr("Write the words, then touch where they begin."),
        }
        self.how.say(ways[self.kind])

    def show_kept(self) -> None:
        """A row for each mark."""
        self.rows.clear()
        for n in range(len(self.marks())):
            row = Row(self.look, self.named(n), aside=tr("take it out"), aside_soft=True, arrow=False, edge=EDGE)
            row.clicked.connect(partial(self.remove, n))
            self.rows.add(row, 0)
        self.overlay.changed.emit()
