"""Measurements kept with the photograph, and what one of them may be at the item."""

from __future__ import annotations

from functools import partial
from math import floor, log10, sqrt
from typing import TYPE_CHECKING

from inspector.judgement.lengths import MM_PER_INCH, photograph_instrument
from inspector.photo.references import OWN, RULE, figures
from inspector.profile.words import Unit
from inspector.record.finding import Measured, PhotoMeasure
from inspector.record.verbs import change_finding
from inspector.texts import tr
from inspector.window.bench.panel import EDGE
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead

if TYPE_CHECKING:
    from inspector.photo.references import Reference
    from inspector.profile.items import Measure
    from inspector.window.bench.measuring import MeasurePanel
    from inspector.window.bench.panel import Panel


class KeptMeasures(Column):
    """A row for each kept measurement, which puts it back into the picture; a key takes the open one out."""

    def __init__(self, panel: MeasurePanel) -> None:
        super().__init__(panel.look, edge=0, top=0)
        self.panel = panel
        self.open_id = ""
        self.head = SectionHead(self.look, tr("Kept with the photograph"))
        self.rows = Column(self.look, edge=0, top=0)
        self.out = Key(self.look, tr("take it out"), name=tr("Take the open measurement out"))
        self.over = MenuKey(self.look, tr("take over to a measure"), [], held="")
        self.add(self.over)
        self.add(self.head, 3)
        self.add(self.rows, 0)
        self.add(self.out, 2)
        self.out.clicked.connect(self._take_out)
        self.over.picked.connect(self.take_over)

    # keeping

    def all(self) -> tuple[PhotoMeasure, ...]:
        """What the record keeps of this photograph, but for rows of figures."""
        photograph = self.panel.subject.photograph
        return tuple(m for m in photograph.measures if m.what in ("length", "angle")) if photograph else ()

    def keep(self) -> None:
        """What was measured is kept with the photograph: value, interval, points, and what it rests on."""
        panel, photograph = self.panel, self.panel.subject.photograph
        if panel.answer is None or photograph is None:
            return
        told, setting = panel.answer.told, panel.setting()
        words = (panel.result.words, panel.beware.words, panel.rests.words)
        measure = PhotoMeasure(
            id=free_id(photograph.measures), what=panel.what, reference=panel.reference.id,
            size=_size(panel.reference), corners=panel.subject.shares(panel.corners),
            points=panel.subject.shares(panel.points), value=told.value, low=told.low, high=told.high,
            uncertainty=told.uncertainty, unit=panel.answer.unit, pointing=setting.pointing, above=setting.above,
            camera=setting.camera, note="\n".join(w for w in words if w),
        )  # fmt: skip
        self.open_id = measure.id
        change_measures(panel, "Measure in a photograph", (*photograph.measures, measure))

    def _take_out(self, _: bool = False) -> None:
        photograph = self.panel.subject.photograph
        if photograph is not None:
            left = tuple(m for m in photograph.measures if m.id != self.open_id)
            self.open_id = ""
            change_measures(self.panel, "Take a measurement out of a photograph", left)

    def show_kept(self) -> None:
        """The rows are those of the record."""
        self.rows.clear()
        kept = self.all()
        for measure in kept:
            row = Row(self.look, measure.note.split("\n")[0], second=tr(measure.what), arrow=False, edge=EDGE)
            row.set_current(measure.id == self.open_id)
            row.clicked.connect(partial(self._open, measure))
            self.rows.add(row, 0)
        self.head.setVisible(bool(kept))
        self.out.setVisible(any(m.id == self.open_id for m in kept))
        self.show_take_over()

    def _open(self, measure: PhotoMeasure, _: bool = False) -> None:
        self.open_id = measure.id
        self.panel.restore(measure)
        self.show_kept()

    # at the item

    def measures(self) -> tuple[Measure, ...]:
        """The lengths that the item of the photograph is measured by."""
        photograph, profile = self.panel.subject.photograph, self.panel.desk.profile
        item = profile.item_by_id.get(photograph.item) if photograph is not None else None
        return tuple(m for m in item.measures if m.unit in (Unit.MM, Unit.INCH)) if item is not None else ()

    def show_take_over(self) -> None:
        """The key is there where the item has a length that this one may be."""
        if self.panel.desk.session is None:
            return
        found, answer = self.measures(), self.panel.answer
        self.over.setVisible(bool(found) and answer is not None and answer.unit == "mm")
        self.over.set_options([Option(m.id, m.name) for m in found])

    def take_over(self, measure_id: str) -> None:
        """What was measured is a reading of that measure, by photograph, with what it may be wrong by."""
        panel, photograph = self.panel, self.panel.subject.photograph
        measure = next((m for m in self.measures() if m.id == measure_id), None)
        if panel.answer is None or photograph is None or measure is None:
            return
        desk = panel.desk
        new = reading_of(measure, panel.answer.told.value, panel.answer.told.uncertainty)
        finding = desk.record.finding(photograph.item, desk.here.by)
        before = finding.measured if finding is not None else ()
        had = next((m for m in before if m.measure == measure_id and m.readings), None)
        if had is not None:
            desk.told.emit(tr("{name} has a reading already. Take that out on the Walk first.", name=measure.name))
            return
        others = tuple(m for m in before if m.measure != measure_id)
        step = change_finding(desk.record, photograph.item, desk.here.by, desk.clock(),
                              label="Measure from a photograph", measured=(*others, new))  # fmt: skip
        if desk.do(step):
            desk.told.emit(tr("{name}: {value} {unit} was taken over, by photograph.", name=measure.name,
                              value=new.readings[0], unit=tr(measure.unit.value)))  # fmt: skip


def reading_of(measure: Measure, mm: float, uncertainty: float) -> Measured:
    """The length as a reading in the measure's unit; the limit it names has the same standard uncertainty.

    A limit e taken as rectangular has the standard uncertainty e over the root of 3 (JCGM 100:2008, 4.3.7).
    """
    by = float(MM_PER_INCH) if measure.unit is Unit.INCH else 1.0
    limit = uncertainty * sqrt(3) / by
    places = figures(uncertainty) + (2 if measure.unit is Unit.INCH else 0)
    shown = f"{limit:.{max(1 - floor(log10(limit)), 0)}f}"  # two figures of it
    instrument = photograph_instrument(shown, measure.unit)
    return Measured(measure=measure.id, readings=(f"{mm / by:.{places}f}",), unit=measure.unit.value,
                    instrument=instrument)  # fmt: skip


def _size(reference: Reference) -> tuple[float, ...]:
    """The size that was typed for the reference, in mm; nothing where it has its own."""
    if reference.shape not in (OWN, RULE):
        return ()
    return tuple(size for size in (reference.width, reference.height) if size)


def free_id(kept: tuple[PhotoMeasure, ...]) -> str:
    """An id that none of these has."""
    taken = {measure.id for measure in kept}
    return next(name for name in (f"m{n}" for n in range(1, len(kept) + 2)) if name not in taken)


def change_measures(panel: Panel, label: str, measures: tuple[PhotoMeasure, ...]) -> bool:
    """The record keeps these measurements with the photograph."""
    return panel.subject.change(label, measures=tuple(m.model_dump() for m in measures))
