"""Measuring in the photograph: a reference in the plane, its corners, and lengths or angles with their interval."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QThreadPool, Signal

from inspector.photo.corners import ordered, propose, propose_ring
from inspector.photo.plane import TooWeak, View
from inspector.photo.references import (
    COIN,
    OWN,
    REFERENCES,
    RULE,
    Answer,
    Reference,
    Setting,
    in_words,
    length,
    sized,
    turning,
    view_of,
)
from inspector.photo.straight import straightened
from inspector.photo.working import smaller
from inspector.texts import tr
from inspector.window.bench.kept import KeptMeasures
from inspector.window.bench.panel import Panel
from inspector.window.bench.plane_overlay import PlaneOverlay
from inspector.window.bench.typed import millimetres
from inspector.window.job import Job
from inspector.window.look.fields import ChoiceField, LineField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import SectionHead, Text

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.record.finding import PhotoMeasure
    from inspector.window.bench.canvas import Canvas
    from inspector.window.bench.overlay import Point
    from inspector.window.bench.subject import Subject

LENGTH, ANGLE = "length", "angle"
FINE, PLAIN, COARSE = "1", "1.5", "3"


class MeasurePanel(Panel):
    """Reference, points, the question of the plane, and what comes out.

    ``straight(levels)`` asks for the plane, seen from above, to be shown: a picture, and smaller copies of it.
    """

    straight = Signal(object)

    def __init__(self, subject: Subject, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(subject, canvas, parent)
        self.corners: list[Point] = []
        self.points: list[Point] = []
        self.answer: Answer | None = None
        self.figure = ""
        self._proposals: list[list[Point]] = []
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._make_keys()
        self._fill()
        self.overlay = PlaneOverlay(self)
        self._connect()
        self.show_all()

    # the keys

    def _make_keys(self) -> None:
        look = self.look
        options = [Option(one.id, tr(one.name)) for one in REFERENCES.values()]
        self.choice = ChoiceField(look, tr("Reference in the picture"), options, "id-1")
        self.wide = LineField(look, tr("Its length or width, mm or in"))
        self.high = LineField(look, tr("Its height, mm or in"))
        self.finder = Key(look, tr("find it"), name=tr("Find the reference in the picture"))
        self.again = Key(look, tr("new points"), name=tr("Point at what is measured anew"))
        self.anew = Key(look, tr("new reference"), name=tr("Point at the reference anew"))
        self.whats = ChoiceKeys(look, [Option(LENGTH, tr("length")), Option(ANGLE, tr("angle"))], held="kept")
        self.whats.set_held(LENGTH)
        self.planes = ChoiceKeys(look, [Option("in", tr("in its plane")), Option("out", tr("not quite"))], held="kept",
                                 may_clear=True)  # fmt: skip
        self.above = LineField(look, tr("By how many mm may it lie above or below?"))
        self.camera = LineField(look, tr("How far was the camera, about? mm or in"))
        self.pointing = ChoiceKeys(look, [Option(px, px) for px in (FINE, PLAIN, COARSE)], held="kept")
        self.pointing.set_held(PLAIN)
        self.status = Text(look, semibold=True)
        self.result = Text(look, step="key")
        self.beware, self.rests = Text(look), Text(look, ink="soft", step="small")
        self.keep = Key(look, tr("keep it"), name=tr("Keep this measurement with the photograph"))
        self.above_view = Key(look, tr("from above"), name=tr("Show the plane of the reference from straight above"))
        self.kept = KeptMeasures(self)

    def _fill(self) -> None:
        look, add = self.look, self.add
        add(SectionHead(look, tr("Reference")))
        add(self.choice, 2)
        add(self.wide, 1)
        add(self.high, 1)
        add(KeyRow(look, [self.finder, self.anew], fit="fill"), 2)
        add(SectionHead(look, tr("What is measured")))
        add(self.whats, 2)
        add(self.status, 2)
        add(self.result, 2)
        add(self.beware, 1)
        add(KeyRow(look, [self.keep, self.again, self.above_view], fit="fill"), 2)
        add(Text(look, tr("Does it lie in the plane of the reference?")), 3)
        add(self.planes, 1)
        add(self.above, 1)
        add(self.camera, 1)
        add(Text(look, tr("How well can one point at it? Pixels, one standard deviation")), 3)
        add(self.pointing, 1)
        add(self.rests, 3)
        add(self.kept, 3)

    def _connect(self) -> None:
        self.choice.committed.connect(lambda _: self._choose())
        for field in (self.wide, self.high, self.above, self.camera):
            field.committed.connect(lambda _: self.show_all())
        for keys in (self.whats, self.planes, self.pointing):
            keys.changed.connect(lambda _: self._set_anew())
        self.finder.clicked.connect(self.look_for_it)
        self.again.clicked.connect(self.begin_points)
        self.anew.clicked.connect(self._choose)
        self.keep.clicked.connect(self.kept.keep)
        self.above_view.clicked.connect(self._show_straight)

    # what is set

    @property
    def what(self) -> str:
        """Whether a length or an angle is measured."""
        return (self.whats.held() or [LENGTH])[0]

    @property
    def reference(self) -> Reference:
        """The reference as chosen, with the size typed for it."""
        chosen = REFERENCES[self.choice.value() or "id-1"]
        if chosen.shape not in (OWN, RULE):
            return chosen
        wide, high = millimetres(self.wide), millimetres(self.high)
        try:
            return sized(chosen, wide or 0.0, (high or 0.0) if chosen.shape == OWN else 0.0)
        except TooWeak:
            return chosen

    @property
    def ratio(self) -> float:
        """Width over height of the reference, 0 where it has none."""
        reference = self.reference
        return reference.width / reference.height if reference.height and reference.shape != COIN else 0.0

    def setting(self) -> Setting:
        """Everything that the figure rests on."""
        held = self.planes.held()
        above = None if not held else 0.0 if held == ["in"] else millimetres(self.above)
        return Setting(
            self.reference, tuple(self.corners), float((self.pointing.held() or [PLAIN])[0]), above,
            millimetres(self.camera),
        )  # fmt: skip

    def needed(self) -> int:
        """How many points what is measured has."""
        return 3 if self.what == ANGLE else 2

    def next_point(self) -> str:
        """What the next touch points at, in words; empty where all points are there."""
        reference = self.reference
        if len(self.corners) < reference.marks:
            thing = {COIN: tr("the rim of the coin"), RULE: tr("a stroke of the rule")}
            return thing.get(reference.shape, tr("a corner of the reference"))
        if len(self.points) < self.needed():
            if self.what == ANGLE and not self.points:
                return tr("the corner of the angle")
            return tr("an end of what is measured")
        return ""

    # points

    def _choose(self, _: bool = False) -> None:
        self.corners, self._proposals = [], []
        self.begin_points()

    def _set_anew(self) -> None:
        self.points = self.points[: self.needed()]
        self.show_all()

    def begin_points(self, _: bool = False) -> None:
        """What is measured is pointed at anew."""
        self.points = []
        self.show_all()

    def put(self, point: Point) -> None:
        """The next point stands there."""
        if len(self.corners) < self.reference.marks:
            self.corners.append(point)
            self._order()
        else:
            self.points.append(point)
        self.show_all()

    def _order(self) -> None:
        """Four corners, touched in any order, run round the reference from its upper left."""
        if self.reference.shape not in (COIN, RULE) and len(self.corners) == 4:
            self.corners = list(ordered(np.array(self.corners, float), self.ratio))

    def put_at(self, index: int, point: Point, *, done: bool) -> None:
        """A point stands elsewhere; the figure follows when it is let go."""
        corners = len(self.corners)
        if index < corners:
            self.corners[index] = point
        else:
            self.points[index - corners] = point
        if done:
            self.show_all()
        else:
            self.figure = ""
            self.overlay.changed.emit()

    def drop_point(self, index: int) -> None:
        """The point goes."""
        corners = len(self.corners)
        if index < corners:
            del self.corners[index]
        else:
            del self.points[index - corners]
        self.show_all()

    # finding the reference

    def look_for_it(self, _: bool = False) -> None:
        """The likeliest outline is proposed; asked again, the next one."""
        if self._proposals:
            self._propose()
            return
        base, reference, ratio = self.subject.copy.base, self.reference, self.ratio
        if not base or reference.shape == RULE:
            return
        picture = base[0]
        round_ = reference.shape == COIN
        job = Job(lambda report: [r.rim for r in propose_ring(picture)] if round_ else propose(picture, ratio))
        job.done.connect(lambda found: self._found(reference, found))
        job.failed.connect(self._not_found)
        self.status.say(tr("Looking for it."))
        job.start(self._pool)

    def _found(self, reference: Reference, found: object) -> None:
        if self.reference != reference:  # another one was chosen meanwhile
            self.show_all()
            return
        self._proposals = [list(corners) for corners in found]  # type: ignore[attr-defined]
        if self._proposals:
            self._propose()
        else:
            self.show_all()
            self.status.say(tr("It was not found. Touch {what} by hand.", what=self.next_point()))

    def _not_found(self, error: object) -> None:
        self.status.say(tr("It could not be looked for: {what}", what=str(error)))

    def _propose(self) -> None:
        self.corners = self._proposals.pop(0)
        self.show_all()

    # what comes out

    def view(self) -> View | None:
        """The plane of the reference, or None while it carries nothing."""
        try:
            return view_of(self.setting())
        except TooWeak:
            return None

    def measure(self) -> Answer:
        """What the points say; raises TooWeak."""
        setting, points = self.setting(), self.points
        if self.what == ANGLE:
            return turning(setting, points[0], points[1], points[2])
        return length(setting, points[0], points[1])

    def show_all(self) -> None:
        """Fields, sentence and figure are those of what is set."""
        shape = self.reference.shape
        self.wide.setVisible(shape in (OWN, RULE))
        self.high.setVisible(shape == OWN)
        out = self.planes.held() == ["out"]
        self.above.setVisible(out)
        self.camera.setVisible(out or shape in (COIN, RULE))
        self.finder.turn_off(tr("Touch two strokes of the rule by hand.") if shape == RULE else "")
        self._show_answer()
        self.overlay.changed.emit()

    def _show_answer(self) -> None:
        self.answer, self.figure = None, ""
        waiting = self.next_point()
        words = tr("Touch {what}.", what=waiting) if waiting else ""
        try:
            self.answer = None if waiting else self.measure()
            if len(self.corners) >= self.reference.marks:
                view_of(self.setting())
        except TooWeak as weak:
            words = tr(weak.said)
        answer = self.answer
        self.status.say(words)
        self.status.setVisible(bool(words))
        self.result.say(tr(in_words(answer)) if answer else "")
        self.beware.say(" ".join(tr(said) for said in answer.beware) if answer else "")
        self.rests.say(" ".join(tr(said) for said in answer.rests_on) if answer else "")
        for text in (self.result, self.beware, self.rests):
            text.setVisible(answer is not None and bool(text.words))
        if answer is not None:
            self.figure = self.result.words.split(";")[0]
        why = tr("Nothing is measured yet.")
        self.keep.turn_off("" if answer else why)
        self.above_view.turn_off("" if self.view() else tr("Point at the reference first."))
        self.kept.show_take_over()

    def _show_straight(self, _: bool = False) -> None:
        view, base = self.view(), self.subject.copy.base
        if view is None or not base:
            return
        job = Job(lambda report: smaller(straightened(base[0], view)[0]))
        job.done.connect(self.straight)
        job.failed.connect(lambda error: self.status.say(tr("It cannot be shown from above: {what}", what=str(error))))
        job.start(self._pool)

    def show_kept(self) -> None:
        """The measurements that the record keeps are listed."""
        self.kept.show_kept()

    def restore(self, measure: PhotoMeasure) -> None:
        """A kept measurement stands in the picture again, with its reference and its points."""
        if measure.reference in REFERENCES:
            self.choice.set_value(measure.reference)
        for field, size in zip((self.wide, self.high), measure.size, strict=False):
            field.set_value(f"{size:g}")
        self.whats.set_held(measure.what if measure.what in (LENGTH, ANGLE) else LENGTH)
        self._restore_doubt(measure)
        self.corners = self.subject.spots(measure.corners)
        self.points = self.subject.spots(measure.points)
        self.show_all()

    def _restore_doubt(self, measure: PhotoMeasure) -> None:
        """What was said of the plane, the camera and the pointing is said again."""
        self.planes.set_held(*([] if measure.above is None else ["out"] if measure.above else ["in"]))
        self.above.set_value(f"{measure.above:g}" if measure.above else "")
        self.camera.set_value(f"{measure.camera:g}" if measure.camera else "")
        self.pointing.set_held(f"{measure.pointing or float(PLAIN):g}")
