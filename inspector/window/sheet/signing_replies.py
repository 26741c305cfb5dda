"""The seller's own words, beside each finding that the sheet tells in full."""

from PySide6.QtWidgets import QWidget

from inspector.record.finding import Finding
from inspector.record.signing import set_reply
from inspector.sheet.finding import in_full, in_short
from inspector.texts import tr
from inspector.window.desk import Desk
from inspector.window.look.columns import Column
from inspector.window.look.fields import TextField
from inspector.window.look.text import Text


class Replies(Column):
    """One field a finding; what is written is kept with the finding and printed beside it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        self.desk = desk
        self.fields: dict[str, TextField] = {}
        self._said: dict[str, Text] = {}
        self.add(Text(desk.look, tr(
            "What the seller says to a finding is printed beside it. No reply is not agreement.",
        ), ink="soft"), 1)  # fmt: skip

    def show_findings(self) -> None:
        """There is a field for each finding in full, numbered as on the sheet; what is being written stays."""
        record, profile = self.desk.record, self.desk.profile
        for number, told in enumerate(in_full(profile, record, self.desk.judgement), 1):
            item = profile.item_by_id.get(told.item)
            for finding in told.findings:
                name = item.name if item else told.item
                lead = tr("{number} {name}: {mark}.", number=number, name=name, mark=_mark(finding))
                told_short = in_short(item, finding.model_copy(update={"reply": ""}))
                self._show(finding, lead, told_short)

    def _show(self, finding: Finding, lead: str, said: str) -> None:
        if finding.key not in self.fields:
            self._add(finding, lead)
        self._said[finding.key].say(f" {said}", lead)
        self.fields[finding.key].set_value(finding.reply)

    def _add(self, finding: Finding, lead: str) -> None:
        said, field = Text(self.look), TextField(self.look, tr("The seller’s reply"), lines=2)
        field.set_label(tr("The seller’s reply"), name=tr("The seller’s reply to {finding}", finding=lead))
        key = finding.key
        field.committed.connect(lambda text: self._write(key, text))
        self._said[key], self.fields[key] = said, field
        self.add(said, 4)
        self.add(field, 1)

    def _write(self, key: str, text: str) -> None:
        finding = next((f for f in self.desk.record.findings if f.key == key), None)
        if finding is not None and finding.reply != text.strip():
            self.desk.do(set_reply(self.desk.record, finding, text.strip()))


def _mark(finding: Finding) -> str:
    return tr(finding.mark.value if finding.mark else finding.seen.value)
