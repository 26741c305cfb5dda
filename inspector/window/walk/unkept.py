"""Words that could not be kept: they wait where they were written until they are kept or cleared."""

from collections.abc import Mapping

from inspector.record.finding import Finding
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.fields import Field

Place = tuple[str, str, str]  # the record, the item and the person


class Unkept:
    """What the fields of an item were refused, by record, item, person and field."""

    def __init__(self, desk: Desk, fields: Mapping[str, Field]) -> None:
        self.desk, self.fields = desk, fields
        self._words: dict[tuple[Place, str], str] = {}
        self._at: Place | None = None
        self._heard = self._why = ""
        desk.told.connect(self._hear)

    def _hear(self, sentence: str) -> None:
        self._heard = sentence

    def _place(self) -> Place:
        return self.desk.record.id, self.desk.item, self.desk.here.by

    def here(self) -> bool:
        """Whether words wait at the open item."""
        return self._waiting(self._place())

    def _waiting(self, place: Place) -> bool:
        return any((place, name) in self._words for name in self.fields)

    def tried(self, name: str, words: str, kept: bool) -> None:
        """The words of this field were kept, or wait from now on."""
        if kept:
            self._words.pop((self._place(), name), None)
        else:
            self._words[self._place(), name] = words
            self._why = self._heard
        self._mark(name)

    def show(self, found: Finding) -> None:
        """The fields hold what the finding says; where one has come back, the words that wait stand in them."""
        place = self._place()
        left, self._at = self._at, place
        if left is not None and left != place:
            self._take_along(left)
        for name, field in self.fields.items():
            if left != place:
                field.let_go()
            field.set_value(getattr(found, name))
            if left != place and (place, name) in self._words:
                field.show_value(self._words[place, name])
            self._mark(name)
        if left != place:
            self._tell(left, place)

    def _take_along(self, left: Place) -> None:
        """What waits at the item that one leaves is what stands in its fields now."""
        for name, field in self.fields.items():
            if (left, name) in self._words:
                if field.waits():
                    self._words[left, name] = field.value()
                else:
                    del self._words[left, name]

    def _mark(self, name: str) -> None:
        waits = (self._place(), name) in self._words
        self.fields[name].say(tr("Not kept yet. Leave the field to try again.") if waits else "")

    def _tell(self, left: Place | None, place: Place) -> None:
        said = []
        if left is not None and left[0] == place[0] and self._waiting(left):
            name = self.desk.profile.item_by_id[left[1]].name
            said.append(tr("{why} What you wrote at {item} waits there in its field.", why=self._why, item=name))
        if self._waiting(place):
            said.append(tr("What you wrote here is not kept yet: it stands in its field again."))
        if said:
            self.desk.told.emit(" ".join(said))
