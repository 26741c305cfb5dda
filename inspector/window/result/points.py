"""Points: a count of its own by the scheme of the profile, off until it is asked for."""

from collections.abc import Iterable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.judgement.judge import Judgement
from inspector.judgement.points import Deduction, Points
from inspector.record.verbs import choose_points
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.rows import Row
from inspector.window.look.text import Text


class PointsPart(Column):
    """What the points are, the key that asks for them, and what was taken off; ``wanted(item)`` asks to open one."""

    wanted = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.what = Text(desk.look, ink="soft")
        self.key = Key(desk.look, tr("count points"))
        self.body = Column(desk.look, edge=0, top=0)
        self.add(self.what)
        self.add(self.key, 2)
        self.add(self.body, 2)
        self.key.clicked.connect(lambda: desk.do(choose_points(not desk.record.choices.points)))

    def show_points(self, judged: Judgement) -> None:
        """The points as the record stands, or why there are none."""
        scheme, asked = self.desk.profile.points, self.desk.record.choices.points
        if scheme:
            self.what.say(tr(
                "{scheme}: points are taken off a full count, heading by heading. It is kept apart from the score.",
                scheme=scheme.name,
            ))  # fmt: skip
        else:
            self.what.say(tr("Some profiles bring a scheme of points. This one has none."))
        self.key.turn_off("" if scheme else tr("This profile has no points scheme."))
        self.key.hold("kept" if asked and scheme else "")
        self.body.clear()
        if judged.points is not None and asked:
            self._list(judged.points)

    def _list(self, points: Points) -> None:
        look = self.desk.look
        self.body.add(Text(look, tr("{total} of {full}", total=points.total, full=points.full), step="name"), 1)
        for reason in points.reasons:
            self.body.add(Text(look, tr(reason)), 1)
        self._rows(points.deductions)
        if not points.deductions:
            self.body.add(Text(look, tr("nothing taken off")), 1)
        if points.may_lose:
            self.body.add(Text(look, tr("What may still be lost"), semibold=True), 4)
            self._rows(points.may_lose)

    def _rows(self, deductions: Iterable[Deduction]) -> None:
        for deduction in deductions:
            lost = tr("{heading}, −{lost}", heading=deduction.name, lost=deduction.lost)
            row = Row(self.desk.look, tr(deduction.reason), aside=lost, aside_soft=True, opens=bool(deduction.item))
            row.clicked.connect(lambda _=False, item=deduction.item: self.wanted.emit(item))
            self.body.add(row, 0)
