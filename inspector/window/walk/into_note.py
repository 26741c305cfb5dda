"""What a tool says, and one key that puts it into the note; never into a mark."""

from collections.abc import Iterable

from inspector.record import verbs
from inspector.record.words import Evidence
from inspector.texts import tr
from inspector.window.desk import Desk, keep_typing
from inspector.window.look.columns import Column
from inspector.window.look.keys import Key
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import Text


class Said(Column):
    """A sentence, what stands behind it, warnings and sources, and the key."""

    def __init__(self, desk: Desk, evidence: tuple[Evidence, ...] = ()) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk, self.evidence = desk, evidence
        look = desk.look
        self.sentence = Text(look, semibold=True)
        self.more = Column(look, edge=0, top=0)
        self.key = Key(look, tr("into the note"), name=tr("Put this into the note"))
        self._words = ""
        for widget in (self.sentence, self.more, self.key):
            self.add(widget, 2)
        self.key.clicked.connect(self._into_note)
        self.say("")

    def say(self, sentence: str, more: Iterable[str] = (), sources: Iterable[str] = (), note: str = "") -> None:
        """The sentence with these lines below it; ``note`` is what the key writes, nothing turns it off."""
        self.sentence.say(sentence)
        self.sentence.setVisible(bool(sentence))
        self.more.clear()
        for line in more:
            self.more.add(Text(self.look, line), 1)
        for line in sources:
            self.more.add(Text(self.look, line, step="small", ink="soft"), 1)
        self._words = note
        self.key.setVisible(bool(note))
        top_in_area(self)  # laid out now: it stands several columns deep

    def _into_note(self) -> None:
        keep_typing()
        found = self.desk.finding
        had = found.note if found else ""
        kept = self.desk.do(verbs.add_to_note(*self.desk.at(), self._words, self.evidence))
        if kept and self._words not in had.splitlines():
            self.desk.told.emit(tr("It stands in the note now. The mark is yours."))
