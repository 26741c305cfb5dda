"""What the number can be by the profile's rules: every possibility, with its condition and its sources."""

from PySide6.QtWidgets import QWidget

from inspector.judgement.decode import Decoded, Hit, NumberField, Outcome, decode_reading
from inspector.judgement.decoded_words import outside_words
from inspector.profile.words import Gives
from inspector.record.reading import Reading, numbered
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.facts import FactRow
from inspector.window.look.text import SectionHead, Text
from inspector.window.numbers.opening import Opening
from inspector.window.numbers.telling import condition, remain, second, sources, title

MOST = 8  # rows; what is more is said as a number


class CanBe(Column):
    """Rows of what remains possible; nothing is filled in, and no row is chosen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.head = SectionHead(desk.look, tr("What it can be"))
        self.rows = Column(desk.look, edge=0, top=0)
        self.add(self.head)
        self.add(self.rows, 0)
        self._shown: object = None
        self._profile: object = None

    def show_reading(self, reading: Reading | None) -> None:
        """What this reading allows is shown; without figures there is nothing to say."""
        there = reading is not None and bool(reading.figures)
        self.setVisible(there)
        if reading is None or not there:
            self._shown = None
            return
        now = (reading.place, reading.figures)
        if now != self._shown or self._profile is not self.desk.profile:
            self._shown, self._profile = now, self.desk.profile
            # Worked out here, so that it follows each figure; the whole judgement takes longer.
            self._show(decode_reading(self.desk.profile, reading), reading)

    def _show(self, decoded: Decoded, reading: Reading) -> None:
        self.head.say(tr("What it can be"), remain(decoded))
        self.rows.clear()
        hits = sorted(decoded.hits, key=lambda hit: first_guess(hit, reading))
        for hit in hits[:MOST]:
            self.rows.add(self._row(hit), 0)
        if len(decoded.hits) > MOST:
            more = len(decoded.hits) - MOST
            words = trn("and {count} possibility more", "and {count} possibilities more", more)
            self.rows.add(Text(self.look, words, ink="soft"), 2)
        outside = outside_words(decoded) if decoded.outcome is Outcome.OUTSIDE else None
        said = [outside, decoded.disagreement, *decoded.reasons]
        for sentence in dict.fromkeys(tr(one) for one in said if one is not None):
            self.rows.add(Text(self.look, sentence), 2)

    def _row(self, hit: Hit) -> Opening:
        found = sources(self.desk.profile, hit.sources)
        row = FactRow(
            self.look, title(hit), second=second(hit), lead=condition(hit), grade=hit.grade,
            kind=tr(found[0].kind.value) if found else tr("no source"), place=found[0].title if found else "",
        )  # fmt: skip
        meant = [
            tr("{text}: {means}", text=field.text, means=field.means or says_of(field))
            for field in hit.fields if field.text
        ]  # fmt: skip
        return Opening(
            self.look, row, [tr("By the rule “{title}”.", title=hit.title), "; ".join(meant), hit.note], found
        )


def says_of(field: NumberField) -> str:
    """What a stretch of the number gives; where it gives nothing of its own, what the profile calls it."""
    return field.segment if field.gives is Gives.OTHER else tr(field.gives.value)


def first_guess(hit: Hit, reading: Reading) -> tuple[int, ...]:
    """Where this hit stands in the list: what the reader took each doubtful figure for first, comes first."""
    read = dict(numbered(reading.figures))
    order = []
    for number, text in hit.if_figures:
        could = read[number].could_be if number in read else ()
        order.append(could.index(text) if text in could else len(could))
    return tuple(order)
