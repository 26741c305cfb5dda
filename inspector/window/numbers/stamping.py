"""What was seen of the stamping, feature by feature; nothing is concluded from it."""

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QWidget

from inspector.judgement.stamping import CAUTION, FEATURES, Feature
from inspector.record.reading import Reading
from inspector.record.words import StampSight
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.keys import Option
from inspector.window.look.menus import WordList, offer
from inspector.window.look.rows import Row
from inspector.window.look.text import SectionHead, Text
from inspector.window.numbers.readings import Shown, change_reading
from inspector.window.numbers.telling import capital

SIGNS = {
    StampSight.SEE: "see", StampSight.DO_NOT_SEE: "do not see", StampSight.CANNOT_SEE: "cannot see",
    StampSight.NOT_LOOKED: "not checked",
}  # fmt: skip


class Stamping(Column):
    """A row a feature; touched, it offers see, do not see, cannot see and not looked."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.shown = desk, Shown()
        self.list: WordList | None = None
        self.add(SectionHead(desk.look, tr("Seen of the stamping")))
        self.rows = {feature.id: self._row(feature) for feature in FEATURES}
        for row in self.rows.values():
            self.add(row, 0)
        self.add(Text(desk.look, tr(CAUTION), ink="soft"), 2)

    def _row(self, feature: Feature) -> Row:
        row = Row(self.look, capital(tr(feature.name)), second=tr(feature.look_for))
        row.clicked.connect(lambda: self._offer(feature.id))
        return row

    def show_reading(self, shown: Shown, reading: Reading | None) -> None:
        """The rows say what was seen at this reading; a cast number has no stamping."""
        self.shown = shown
        place = self.desk.profile.place_by_id.get(shown.place)
        self.setVisible(reading is not None and not (place and place.cast))
        if reading is None:
            return
        for key, row in self.rows.items():
            sight = reading.stamping.get(key, StampSight.NOT_LOOKED)
            row.say(aside=tr(sight.value), aside_sign=SIGNS[sight], aside_soft=sight is StampSight.NOT_LOOKED)

    def _offer(self, feature: str) -> None:
        row = self.rows[feature]
        options = [Option(sight.value, tr(sight.value), sign=SIGNS[sight]) for sight in StampSight]
        self.list = offer(self.look, row, options, row.mapToGlobal(QPoint(row.width() // 3, row.height())))
        self.list.picked.connect(lambda word: self._write(feature, StampSight(word)))

    def _write(self, feature: str, sight: StampSight) -> None:
        reading = next((r for r in self.desk.record.readings if r.id == self.shown.reading), None)
        if reading is None:
            return
        stamping = {**reading.stamping, feature: sight}
        if sight is StampSight.NOT_LOOKED:
            stamping.pop(feature)
        change_reading(self.desk, self.shown, f"{capital(feature)}: {sight.value}", stamping=stamping)
