"""How old a tyre is by its date code, and which sizes are about the same."""

from datetime import date

from inspector.judgement.tyres import SIZE_SOURCE, NotATyreCode, about_the_same, tyre_age, tyre_date
from inspector.profile.items import Item
from inspector.record.words import Evidence
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import KeyRow
from inspector.window.look.text import Text
from inspector.window.walk.into_note import Said

RULE = "Week and year of a date code: 64 FR 36807 of 8 July 1999"


class TyreTool(Column):
    """Code and size as they stand on the side-wall; age and advice are shown, never a verdict."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk = desk
        look = desk.look
        self.code = LineField(look, tr("Date code, last 3 or 4 figures of DOT"), zero=True)
        self.marked = LineField(look, tr("Size, such as 3.50-19 or MT90-16"), zero=True)
        self.placed = Text(look, tr("The profile reads this code as a number: enter it on the page Numbers too."))
        self.said, self.same = Said(desk), Said(desk)
        fields = KeyRow(look, [self.code, self.marked], fit="fill")
        for widget in (fields, self.placed, self.said, self.same):
            self.add(widget, 2)
        self.code.committed.connect(lambda _: self._date())
        self.marked.committed.connect(lambda _: self._alike())
        self.placed.hide()

    def show_item(self, item: Item) -> None:
        """Another item has another tyre."""
        place = self.desk.profile.place_by_id.get(item.place) if item.place else None
        dated = place is not None and place.dates_part
        self.placed.setVisible(dated)
        self.said.evidence = () if dated else (Evidence.DATE_CODE,)
        for field in (self.code, self.marked):
            field.let_go()
            field.set_value("")
        self._date()
        self._alike()

    def _today(self) -> date:
        for words in (self.desk.record.claim.date, self.desk.clock()):
            try:
                return date.fromisoformat(words[:10])
            except ValueError:
                continue
        return date.max

    def _date(self) -> None:
        self.code.say("")
        code = self.code.value().strip()
        if not code:
            self.said.say("")
            return
        try:
            age = tyre_age(tyre_date(code), self._today())
        except NotATyreCode as wrong:
            self.code.say(tr(wrong.said))
            self.said.say("")
            return
        note = tr("Tyre code {code}: {sentence}", code=code, sentence=tr(age.sentence))
        self.said.say(tr(age.sentence), [tr(age.advice)], [tr(RULE)], note)

    def _alike(self) -> None:
        size = self.marked.value().strip()
        self.marked.say("")
        if not size:
            self.same.say("")
            return
        words = {"front": tr("At the front"), "rear": tr("At the rear")}
        rows = {end: about_the_same(size, end) for end in words}
        lines = [
            tr("{end}: {first}, {second} and {inch} are about the same size.", end=words[end], first=row.alphanumeric,
               second=row.metric, inch=row.inch)
            for end, row in rows.items() if row is not None
        ]  # fmt: skip
        if not lines:
            self.marked.say(tr("The table has no size like this one."))
            self.same.say("")
            return
        caution = tr("About the same size is no leave to interchange: rim, load, room and papers decide.")
        note = tr("Tyre size {size}. {lines}", size=size, lines=" ".join(lines))
        self.same.say("", [*lines, caution], [SIZE_SOURCE], note)
