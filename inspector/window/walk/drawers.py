"""Why, how it shows, what it measures and the rest: drawers below the forms, one open at a time."""

from collections.abc import Callable, Iterable
from enum import StrEnum
from typing import Any

from PySide6.QtCore import QPoint, QTimer
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget

from inspector.judgement.measured import measured_again
from inspector.record import verbs
from inspector.record.edits import Step
from inspector.record.finding import Concluded, Finding
from inspector.record.words import Conclusion, Condition, Evidence, Sureness
from inspector.texts import tr, trn
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import LineField, TextField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.scroll import top_in_area
from inspector.window.look.text import Text
from inspector.window.walk.material import MaterialLooks
from inspector.window.walk.measuring import Measuring
from inspector.window.walk.telling import Telling
from inspector.window.walk.unkept import Unkept
from inspector.window.walk.whatcan import WhatCanItBe


class Drawers(Column):
    """Keys that say what was entered; pressing one opens its choices in place."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        look = desk.look
        self.keys = {
            "why": Key(look, tr("none yet"), over=tr("Why"), left=True),
            "how": Key(look, tr("none yet"), over=tr("How it shows"), left=True),
            "note": Key(look, tr("none yet"), over=tr("Note and condition"), left=True),
            "tell": Key(look, "", over=tr("How to tell them apart"), left=True),
            "measure": Key(look, tr("none yet"), over=tr("Measure"), left=True),
            "can": Key(look, tr("thread, tyre, colour"), over=tr("What can it be"), left=True),
        }
        self._known: list[tuple[str, str]] = []
        self.telling, self.measuring, self.can = Telling(desk), Measuring(desk), WhatCanItBe(desk)
        self.conclusions = ChoiceKeys(look, _options(Conclusion), many=True, held="kept", fit="fill")
        self.sureness = Column(look, edge=0, top=0)
        self._sure: tuple[Concluded, ...] = ()
        self.evidence = ChoiceKeys(look, _options(Evidence), many=True, held="kept", fit="fill")
        self.material = MaterialLooks(desk)
        self.conditions = ChoiceKeys(
            look, [*_options(Condition), Option("unsafe", tr("unsafe"), sign="fail")], many=True, held="kept",
        )  # fmt: skip
        self.people = ChoiceKeys(look, held="kept", fit="flow")
        self.fields = {
            "fitted_other": LineField(look, tr("Fitted, in words, where no key above is it")),
            "note": TextField(look, tr("Note"), lines=3),
            "next_step": LineField(look, tr("Next step: the book, measurement or person that would settle it")),
            "book": LineField(look, tr("Book and page, where a book is the evidence")),
            "reply": TextField(look, tr("The seller's reply to this finding"), lines=2),
        }
        self.other = self.fields["fitted_other"]
        self.unkept = Unkept(desk, self.fields)
        self.bodies = {
            "why": self._why(), "how": self._how(), "note": self._note(), "tell": self.telling,
            "measure": self.measuring, "can": self.can,
        }  # fmt: skip
        self.add(KeyRow(look, list(self.keys.values()), fit="fill"))
        for body in self.bodies.values():
            self.add(body, 2)
            body.hide()
        self._connect()

    def _why(self) -> Column:
        body = Column(self.look, edge=0, top=0)
        body.add(self.conclusions)
        body.add(self.sureness, 2)
        return body

    def _how(self) -> Column:
        body = Column(self.look, edge=0, top=0)
        body.add(self.evidence)
        body.add(self.material, 3)
        return body

    def _note(self) -> Column:
        body = Column(self.look, edge=0, top=0)
        body.add(Text(self.look, tr("Who says so (each person's finding is kept apart)"), semibold=True))
        body.add(self.people, 2)
        body.add(Text(self.look, tr("Condition, whatever the year"), semibold=True))
        body.add(self.conditions, 2)
        for field in self.fields.values():
            body.add(field, 2)
        return body

    def _connect(self) -> None:
        for name, key in self.keys.items():
            key.clicked.connect(lambda _=False, name=name: self.toggle(name))
        self.can.opened.connect(lambda: QTimer.singleShot(0, self, lambda: self._come_into_view("can")))
        self.conclusions.picked.connect(self._pick_conclusion)
        self.evidence.picked.connect(self._pick_evidence)
        self.people.picked.connect(self._pick_person)
        self.conditions.picked.connect(self._pick_condition)
        for name, field in self.fields.items():
            field.committed.connect(lambda text, name=name: self._write(name, text))

    # opening

    def toggle(self, name: str) -> None:
        """The drawer is open, or shut when it was open; the others are shut."""
        self.open("" if self.bodies[name].isVisibleTo(self) else name)

    def open(self, name: str) -> None:
        """Only the named drawer is open; none for an empty name, nor where the item has no such thing."""
        item = self.desk.profile.item_by_id[self.desk.item]
        if (name == "measure" and not item.measures) or (name == "tell" and not item.variants):
            name = ""
        if name == "tell":
            self.telling.show_item(item)
        if name == "why":
            self._show_sureness(self.desk.finding or Finding(item=self.desk.item, by=self.desk.here.by))
        for other, body in self.bodies.items():
            body.setVisible(other == name)
            self.keys[other].hold("kept" if other == name else "")
        if name == "measure":
            self.measuring.show_item(item)
            self.measuring.begin()
        if name == "can":
            self.can.show_item(item)
        if name:
            QTimer.singleShot(0, self, lambda: self._come_into_view(name))

    def _come_into_view(self, name: str) -> None:
        """The open drawer is where one looks; one that needs the room stands at the top by itself."""
        body = self.bodies[name]
        if body.isHidden():
            return
        found = top_in_area(body if body in (self.measuring, self.can) else self)
        if found is not None:
            found[0].verticalScrollBar().setValue(found[1])

    # showing

    def show_item(self) -> None:
        """Another item is open: every drawer is shut, and nothing in one has the focus."""
        focus = QApplication.focusWidget()
        if focus is not None and self.isAncestorOf(focus):
            focus.clearFocus()
        self.open("")
        record = self.desk.record
        people = [Option(p.id, record.name_of(p.id), second=tr(p.role.value)) for p in record.people]
        if [(o.id, o.word) for o in people] != self._known:
            self._known = [(o.id, o.word) for o in people]
            self.people.set_options(people)
        self.people.set_held(self.desk.here.by)
        item = self.desk.profile.item_by_id[self.desk.item]
        forms = trn("{count} form", "{count} forms", len(item.variants))
        drawn = any(variant.picture for variant in item.variants)
        self.keys["tell"].say(tr("{forms}, with drawings", forms=forms) if drawn else forms)
        self.keys["tell"].setVisible(bool(item.variants))
        self.keys["measure"].setVisible(bool(item.measures))

    def show_finding(self, found: Finding | None) -> None:
        """What was entered is held in the drawers and told on their keys."""
        found = found or Finding(item=self.desk.item, by=self.desk.here.by)
        held = self._where()
        self.conclusions.set_held(*(c.what.value for c in found.conclusions))
        self.evidence.set_held(*(e.value for e in found.evidence))
        self.material.show_finding(found, self.desk.profile.item_by_id[self.desk.item])
        unsafe = ("unsafe",) if found.unsafe else ()
        self.conditions.set_held(*(c.value for c in found.conditions), *unsafe)
        self.unkept.show(found)
        if self.bodies["why"].isVisibleTo(self):
            self._show_sureness(found)
        self.measuring.show_finding(found)
        self._tell(found)
        self._stay(held)

    def _where(self) -> tuple[QWidget, int] | None:
        """The open drawer that one works in with large keys, and where it stands in what is seen."""
        body = next((b for b in (self.measuring, self.can) if not b.isHidden()), None)
        area = self.parentWidget() if body is not None else None
        while area is not None and not isinstance(area, QScrollArea):
            area = area.parentWidget()
        return (body, body.mapTo(area, QPoint(0, 0)).y()) if body is not None and area is not None else None

    def _stay(self, held: tuple[QWidget, int] | None) -> None:
        """What stood under the finger still does, whatever grew above it."""
        found = top_in_area(held[0]) if held is not None else None
        if held is not None and found is not None:
            found[0].verticalScrollBar().setValue(found[1] - held[1])

    def _tell(self, found: Finding) -> None:
        none = tr("none yet")
        why = [f"{tr(c.what.value)}, {tr(c.sureness.value)}" for c in found.conclusions]
        conditions = [tr(c.value) for c in found.conditions] + ([tr("unsafe")] if found.unsafe else [])
        note = "; ".join([*conditions, *([_short(found.note)] if found.note.strip() else [])])
        evidence = ", ".join(tr(e.value) for e in (*found.evidence, *found.material.told))
        missing = tr("no evidence recorded") if found.conclusions else none
        self.keys["why"].say("; ".join(why) or none)
        self.keys["how"].say(evidence or missing)
        waiting = tr("not kept yet") if self.unkept.here() else ""
        self.keys["note"].say("; ".join(part for part in (waiting, note) if part) or none)

        self.keys["measure"].say("; ".join(self._measured(found)) or none)

    def _measured(self, found: Finding) -> list[str]:
        """Each measure of the item with what it fits."""
        item, year = self.desk.profile.item_by_id[self.desk.item], self.desk.record.claim.model_year
        lines = [measured_again(self.desk.profile, item, one, found.by, year) for one in found.measured]
        return [tr(line.short) for line in lines if line is not None]

    def _show_sureness(self, found: Finding) -> None:
        if found.conclusions == self._sure:
            return
        self._sure = found.conclusions
        self.sureness.clear()
        for concluded in found.conclusions:
            self.sureness.add(Text(self.look, tr(concluded.what.value), semibold=True), 2)
            keys = ChoiceKeys(self.look, _options(Sureness), held="kept")
            keys.set_held(concluded.sureness.value)
            keys.picked.connect(lambda sure, what=concluded.what: self._be_sure(what, Sureness(sure)))
            self.sureness.add(keys, 1)

    # doing

    def _do(self, verb: Callable[..., Step], *values: object) -> None:
        self.desk.do(verb(*self.desk.at(), *values))

    def _pick_person(self, person: str) -> None:
        """What is entered from now on is this person's; another person's finding stays as it is."""
        self.desk.speak_as(person)

    def _pick_conclusion(self, word: str) -> None:
        what, found = Conclusion(word), self.desk.finding
        stood = next((c for c in found.conclusions if c.what is what), None) if found else None
        self._do(verbs.toggle_conclusion, what, stood.sureness if stood else Sureness.SURE)

    def _pick_evidence(self, word: str) -> None:
        self._do(verbs.toggle_evidence, Evidence(word))
        if word == Evidence.MATERIAL.value and not self.material.isHidden():
            QTimer.singleShot(0, self, self._show_looks)

    def _show_looks(self) -> None:
        """The keys that ask for magnet, tap and underside are seen, and the evidence as far as there is room."""
        found = top_in_area(self.material)
        if found is not None and not self.material.isHidden():
            area, top = found
            foot = top + self.material.height() - area.viewport().height()
            area.verticalScrollBar().setValue(max(area.verticalScrollBar().value(), foot))

    def _be_sure(self, what: Conclusion, sureness: Sureness) -> None:
        found = self.desk.finding
        if found and not any(c.what is what and c.sureness is sureness for c in found.conclusions):
            self._do(verbs.toggle_conclusion, what, sureness)

    def _pick_condition(self, word: str) -> None:
        found = self.desk.finding
        if word == "unsafe":
            changes: dict[str, Any] = {"unsafe": not (found and found.unsafe)}
        else:
            had = found.conditions if found else ()
            kind = Condition(word)
            now = tuple(c for c in had if c is not kind) if kind in had else (*had, kind)
            changes = {"conditions": now}
        self.desk.do(verbs.change_finding(*self.desk.at(), label="Condition", **changes))

    def _write(self, name: str, text: str) -> None:
        found = self.desk.finding
        if text == (getattr(found, name) if found else ""):
            self.unkept.tried(name, text, True)
            return
        label = name.replace("_", " ").capitalize()
        joins = f"{name} {self.desk.item}"
        changes: dict[str, Any] = {name: text}
        kept = self.desk.do(verbs.change_finding(*self.desk.at(), label=label, joins=joins, **changes))
        self.unkept.tried(name, text, kept)
        self._tell(self.desk.finding or found or Finding(item=self.desk.item, by=self.desk.here.by))


def _options(words: Iterable[StrEnum]) -> list[Option]:
    return [Option(word.value, tr(word.value)) for word in words]


def _short(note: str) -> str:
    first = note.strip().splitlines()[0]
    return first if len(first) <= 60 else first[:57] + "…"
