"""Boxes round the figures of a stamping, and what they say of its row: described, never judged."""

from __future__ import annotations

from math import atan2, degrees, hypot
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF
from PySide6.QtGui import QTransform

from inspector.photo.plane import TooWeak
from inspector.photo.stamping import CAUTION, FEWEST, StampedRow, stamped_row
from inspector.record.edits import Part
from inspector.record.finding import PhotoMeasure
from inspector.record.verbs import put_entry
from inspector.texts import tr, trn
from inspector.window.bench.kept import change_measures, free_id
from inspector.window.bench.overlay import Overlay, Point
from inspector.window.bench.panel import Panel
from inspector.window.bench.pens import paint_polygon, paint_words
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.keys import Key
from inspector.window.look.text import SectionHead, Text

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

    from inspector.record.reading import Reading
    from inspector.window.bench.canvas import Canvas
    from inspector.window.bench.measuring import MeasurePanel
    from inspector.window.bench.subject import Subject

ROW = "row of figures"
SMALLEST_PX = 6.0
MOST_BOXES = 60
Quad = tuple[Point, Point, Point, Point]


def upright_box(start: Point, end: Point, turn: float) -> Quad:
    """The box between two points that stands upright on a screen turned by ``turn`` degrees, from its upper left."""
    onto = QTransform().rotate(turn)
    back = onto.inverted()[0]
    one, other = onto.map(QPointF(*start)), onto.map(QPointF(*end))
    left, right = sorted((one.x(), other.x()))
    top, foot = sorted((one.y(), other.y()))
    first, second, third, fourth = (
        back.map(QPointF(x, y)).toTuple() for x, y in ((left, top), (right, top), (right, foot), (left, foot))
    )
    return first, second, third, fourth


class BoxOverlay(Overlay):
    """The boxes, each with a handle at two of its corners, and the one being drawn."""

    def __init__(self, panel: FiguresPanel) -> None:
        super().__init__(panel)
        self.panel = panel
        self.coming: Quad | None = None

    @property
    def draws(self) -> bool:
        """A pull draws a box."""
        return True

    def handles(self) -> list[Point]:
        """The upper left and lower right corner of each box."""
        return [corner for box in self.panel.boxes for corner in (box[0], box[2])]

    def name(self, index: int) -> str:
        """Which box the handle belongs to."""
        return tr("box {n}", n=index // 2 + 1)

    def draw(self, start: Point, end: Point, canvas: Canvas, *, done: bool) -> None:
        """A box follows the hand, and is there when it is let go."""
        box = upright_box(start, end, canvas.sight.turn)
        self.coming = None if done else box
        large = min(_side(box[0], box[1]), _side(box[0], box[3])) >= SMALLEST_PX
        if done and large and len(self.panel.boxes) < MOST_BOXES:
            self.panel.set_boxes([*self.panel.boxes, box])
        self.changed.emit()

    def move(self, index: int, point: Point, *, done: bool) -> None:
        """The box follows its corner."""
        boxes = list(self.panel.boxes)
        box = boxes[index // 2]
        turn = QPointF(box[1][0] - box[0][0], box[1][1] - box[0][1])
        still = box[2] if index % 2 == 0 else box[0]
        boxes[index // 2] = upright_box(still, point, -_degrees(turn))
        self.panel.set_boxes(boxes, done=done)

    def drop(self, index: int) -> None:
        """The box goes."""
        boxes = list(self.panel.boxes)
        del boxes[index // 2]
        self.panel.set_boxes(boxes)

    def paint(self, painter: QPainter, canvas: Canvas) -> None:
        """All boxes with their numbers."""
        for n, box in enumerate(self.panel.boxes, 1):
            spots = [canvas.to_screen(corner) for corner in box]
            paint_polygon(painter, canvas.look, spots)
            paint_words(painter, canvas.look, spots[0], str(n))
        if self.coming is not None:
            paint_polygon(painter, canvas.look, [canvas.to_screen(corner) for corner in self.coming])


def _side(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def _degrees(way: QPointF) -> float:
    return degrees(atan2(way.y(), way.x()))


class FiguresPanel(Panel):
    """How the figures stand, in sentences; with a reference in the picture in mm, else in heights of a figure."""

    def __init__(self, subject: Subject, canvas: Canvas, measuring: MeasurePanel) -> None:
        super().__init__(subject, canvas)
        look = self.look
        self.measuring = measuring
        self.boxes: list[Quad] = []
        self.row: StampedRow | None = None
        self.status, self.words = Text(look), Text(look)
        self.keep = Key(look, tr("keep it"), name=tr("Keep the boxes and what they say with the photograph"))
        self.note = Key(look, tr("into the reading's note"))
        self.clear_all = Key(look, tr("new boxes"), name=tr("Take all boxes away and draw anew"))
        self.add(SectionHead(look, tr("Figures of a stamping")))
        self.add(Text(look, tr("Pull a box close round each figure, from its upper left to its lower right."),
                      ink="soft", step="small"), 2)  # fmt: skip
        self.add(self.status, 2)
        self.add(self.words, 2)
        self.add(KeyRow(look, [self.keep, self.note, self.clear_all], fit="fill"), 2)
        self.add(Text(look, tr(CAUTION), ink="soft", step="small"), 2)
        self.overlay = BoxOverlay(self)
        self.keep.clicked.connect(self._keep)
        self.note.clicked.connect(self._into_note)
        self.clear_all.clicked.connect(lambda: self.set_boxes([]))

    def open(self) -> None:
        """The boxes that are kept stand there again where none were drawn."""
        kept = self._kept()
        if not self.boxes and kept is not None:
            spots = self.subject.spots(kept.points)
            self.boxes = [_four(spots[n : n + 4]) for n in range(0, len(spots) - 3, 4)]
        super().open()
        self.show_row()

    def _kept(self) -> PhotoMeasure | None:
        photograph = self.subject.photograph
        return next((m for m in photograph.measures if m.what == ROW), None) if photograph is not None else None

    def set_boxes(self, boxes: list[Quad], *, done: bool = True) -> None:
        """These are the boxes."""
        self.boxes = boxes
        if done:
            self.show_row()
        self.overlay.changed.emit()

    def show_row(self) -> None:
        """The sentences are those of the boxes."""
        pointing = float((self.measuring.pointing.held() or ["1.5"])[0])
        try:
            self.row = stamped_row(self.boxes, self.measuring.view(), pointing)
        except TooWeak as weak:
            self.row = None
            drawn = trn("{count} box is drawn.", "{count} boxes are drawn.", len(self.boxes))
            self.status.say(f"{drawn} {tr(weak.said)}" if len(self.boxes) < FEWEST else tr(weak.said))
        else:
            scale = tr("In mm, by the reference under Measure.") if self.row.unit == "mm" else tr(
                "In heights of a figure: no reference is set under Measure."
            )  # fmt: skip
            self.status.say(scale)
        self.words.say("\n".join(tr(said) for said in self.row.sentences) if self.row else "")
        self.words.setVisible(self.row is not None)
        why = "" if self.row else tr("Draw a box round at least three figures first.")
        self.keep.turn_off(why)
        self.note.turn_off(why or ("" if self._reading() else tr("This photograph belongs to no reading of a number.")))
        self.clear_all.turn_off("" if self.boxes else tr("There is no box yet."))

    def _keep(self, _: bool = False) -> None:
        photograph, row = self.subject.photograph, self.row
        if photograph is None or row is None:
            return
        others = tuple(m for m in photograph.measures if m.what != ROW)
        measure = PhotoMeasure(
            id=free_id(others), what=ROW, reference=self.measuring.reference.id if row.unit == "mm" else "",
            corners=self.subject.shares(self.measuring.corners) if row.unit == "mm" else (),
            points=self.subject.shares(corner for box in self.boxes for corner in box),
            value=row.height, unit=row.unit, note=self.words.words,
        )  # fmt: skip
        change_measures(self, "Figures of a stamping described", (*others, measure))

    def _reading(self) -> Reading | None:
        """The reading of the place that the photograph shows, the last one where there are several."""
        photograph = self.subject.photograph
        if photograph is None or not photograph.place:
            return None
        return next((r for r in reversed(self.desk.record.readings) if r.place == photograph.place), None)

    def _into_note(self, _: bool = False) -> None:
        reading, row = self._reading(), self.row
        if reading is None or row is None:
            return
        words = "\n".join(part for part in (reading.note, tr("By boxes in a photograph:"), self.words.words) if part)
        entry = reading.model_copy(update={"note": words})
        if self.desk.do(put_entry(Part.READINGS, entry, label="Note from a photograph")):
            self.desk.told.emit(tr("What the boxes say stands in the note of the reading."))


def _four(spots: list[Point]) -> Quad:
    return spots[0], spots[1], spots[2], spots[3]
