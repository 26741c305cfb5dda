"""Where two people differ: both are kept, neither is averaged."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.observers import by_item, differ
from inspector.judgement.state import states
from inspector.judgement.wording import finding_words, joined, name_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.observers import ByItem
    from inspector.judgement.state import ItemState
    from inspector.profile.model import Profile
    from inspector.record.model import Record


@dataclass(frozen=True, slots=True)
class Difference:
    """An item on which people differ, with what each of them says."""

    item: str
    name: str
    sentence: Say


def differences(
    profile: Profile, record: Record, known: Mapping[str, ItemState] | None = None, findings: ByItem | None = None
) -> tuple[Difference, ...]:
    """Every item on which people differ, in the profile's order, then any that the profile does not know."""
    at = states(profile, record) if known is None else known
    found = by_item(record) if findings is None else findings
    strangers = sorted(item for item, those in found.items() if item not in at and differ(those))
    differing = (*(item for item, state in at.items() if state.differs), *strangers)
    return tuple(_difference(profile, record, item) for item in differing)


def _difference(profile: Profile, record: Record, item: str) -> Difference:
    name = name_of(profile, item)
    known = profile.item_by_id.get(item)
    said = [
        say("{person} says {words}", person=record.name_of(f.by), words=finding_words(known, f))
        for f in sorted(record.findings_at(item), key=lambda f: (f.by, f.at))
    ]
    return Difference(item, name, say("{item}: {said}.", item=name, said=joined(said, "; ")))
