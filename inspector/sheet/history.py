"""What was entered, by whom and when, as it stands in the owner's file."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inspector.sheet.figure_blocks import HistoryBlock
from inspector.sheet.words import listed, moment
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.profile.model import Profile
    from inspector.record.model import Record

KINDS = {"undo": "undone: {what}", "redo": "done again: {what}"}
PARTS = {
    "people": "people",
    "papers": "papers",
    "inquiries": "asked of others",
    "statements": "what was said",
    "questions": "open questions",
    "comparables": "comparables",
    "adjustments": "adjustments",
    "money": "money",
}


class Change(NamedTuple):
    """One change of the record as it was kept: when, by whose id, done, undone or done again, what, and about what."""

    at: str
    by: str
    kind: str
    label: str
    about: str = ""


def about(profile: Profile, record: Record, touched: Sequence[tuple[str, str]]) -> str:
    """What the touched parts and keys of a record are called, each once."""
    return listed(dict.fromkeys(_name(profile, record, part, key) for part, key in touched), "; ")


def _name(profile: Profile, record: Record, part: str, key: str) -> str:
    """The item of a finding or remedy, the place of a reading, what a photograph belongs to; else the part."""
    first = key.split("/", 1)[0]
    items = {item.id: item.name for item in profile.items()}
    places = {place.id: place.name for place in profile.places}
    if part in ("findings", "remedies"):
        return items.get(first, first)
    if part == "readings":
        place = next((r.place for r in record.readings if r.id == key), key)
        return places.get(place, place)
    if part == "photographs":
        shown = next((p for p in record.photographs if p.id == key), None)
        return (items.get(shown.item) or places.get(shown.place, "")) if shown else ""
    return tr(PARTS[part]) if part in PARTS else ""


def history_block(record: Record, history: Iterable[Change]) -> HistoryBlock:
    """Every change in order; the same touch again and again stands once, with how often and when last."""
    rows: list[tuple[str, str, str]] = []
    same: list[Change] = []
    for change in history:
        if same and change[1:] != same[-1][1:]:
            rows.append(_changed(record, same))
            same = []
        same.append(change)
    if same:
        rows.append(_changed(record, same))
    note = tr("By this computer’s clock.") if rows else tr("No change is kept.")
    return HistoryBlock(tr("History of changes"), note, tuple(rows))


def _changed(record: Record, same: list[Change]) -> tuple[str, str, str]:
    last = same[-1]
    label = tr(last.label)
    what = listed(dict.fromkeys((last.about, label)), ": ")
    if last.kind in KINDS:
        what = tr(KINDS[last.kind], what=what)
    times = tr("{what} ({count} times)", what=what, count=len(same)) if len(same) > 1 else what
    return moment(last.at), record.name_of(last.by) if last.by else tr("not noted"), times
