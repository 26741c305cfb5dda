"""A list of entries of one part of the record, each a small form made from data."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from PySide6.QtWidgets import QWidget

from inspector.record.base import Piece
from inspector.record.edits import LISTED, Part
from inspector.record.verbs import drop_entry, put_entry
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField
from inspector.window.look.keyrow import ChoiceKeys
from inspector.window.look.keys import Key, Option
from inspector.window.look.text import Hairline, SectionHead, Text


@dataclass(frozen=True, slots=True)
class FieldSpec:
    """One line of a form: the field of the entry, its label, and its words when it is a choice."""

    name: str
    label: str
    words: type[StrEnum] | None = None


class Entries(Column):
    """All entries of a part, a key to add one, and with each a key to take it out."""

    def __init__(
        self, desk: Desk, part: Part, title: str, add_word: str, specs: tuple[FieldSpec, ...],
        new: Callable[[Desk], Piece], parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk, self.part, self.specs, self._new = desk, part, specs, new
        self.forms: dict[str, Form] = {}
        self.body = Column(desk.look, edge=0, top=0)
        self.plus = Key(desk.look, add_word, sign="plus")
        self.add(SectionHead(desk.look, title))
        self.add(self.body, 2)
        self.add(self.plus, 2)
        self.plus.clicked.connect(self.add_entry)

    def entries(self) -> tuple[Any, ...]:
        """The entries as the record has them."""
        return getattr(self.desk.record, self.part.value)

    def show_entries(self) -> None:
        """There is a form for every entry; those that stay keep what is being typed elsewhere."""
        key_name = LISTED[self.part][1]
        wanted = [str(getattr(entry, key_name)) for entry in self.entries()]
        if wanted != list(self.forms):
            self.body.clear()
            self.forms = {key: Form(self.desk, self.part, key, self.specs) for key in wanted}
            for form in self.forms.values():
                self.body.add(form, 3)
            if not wanted:
                self.body.add(Text(self.look, tr("none entered"), ink="soft"), 1)
        for entry in self.entries():
            self.forms[str(getattr(entry, key_name))].show_entry(entry)

    def add_entry(self) -> None:
        """A new, empty entry stands at the end, ready to be typed in."""
        before = set(self.forms)
        if self.desk.do(put_entry(self.part, self._new(self.desk), label=self.plus.title.capitalize())):
            for key in self.forms.keys() - before:
                self.forms[key].begin()


class Form(Column):
    """The fields of one entry; each is kept when one leaves it."""

    def __init__(self, desk: Desk, part: Part, key: str, specs: tuple[FieldSpec, ...]) -> None:
        super().__init__(desk.look, edge=0, top=0)
        self.desk, self.part, self.key = desk, part, key
        self.entry: Any = None
        self._kinds = {spec.name: spec.words for spec in specs if spec.words is not None}
        self.fields: dict[str, LineField] = {}
        self.choices: dict[str, ChoiceKeys] = {}
        for spec in specs:
            self._add(spec)
        self.out = Key(desk.look, tr("take it out"))
        self.out.clicked.connect(lambda: desk.do(drop_entry(part, key, label="Take an entry out")))
        self.add(self.out, 2)
        self.add(Hairline(desk.look), 2)

    def _add(self, spec: FieldSpec) -> None:
        if spec.words is not None:
            keys = ChoiceKeys(self.look, [Option(w.value, tr(w.value)) for w in spec.words], held="kept")
            keys.picked.connect(lambda word, name=spec.name: self._write(name, word))
            self.choices[spec.name] = keys
            self.add(Text(self.look, spec.label, ink="soft"), 2)
            self.add(keys, 1)
            return
        field = LineField(self.look, spec.label)
        field.committed.connect(lambda text, name=spec.name: self._write(name, text))
        self.fields[spec.name] = field
        self.add(field, 2)

    def show_entry(self, entry: Any) -> None:
        """The form shows this entry."""
        self.entry = entry
        for name, field in self.fields.items():
            field.set_value(str(getattr(entry, name)))
        for name, keys in self.choices.items():
            keys.set_held(getattr(entry, name).value)

    def begin(self) -> None:
        """The first field has the focus."""
        self.show()  # a form just added is shown later by itself, and what is hidden takes no focus
        if self.fields:
            next(iter(self.fields.values())).setFocus()

    def _write(self, name: str, value: str) -> None:
        if self.entry is None or value == str(getattr(self.entry, name)):
            return
        entry = self.entry.model_copy(update={name: self._kinds.get(name, str)(value)})
        label = name.replace("_", " ").capitalize()
        self.desk.do(put_entry(self.part, entry, label=label, joins=f"{self.key} {name}"))
