"""The state of the parts, whatever their year: kept apart from correctness."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.observers import by_item
from inspector.judgement.wording import condition_words, joined, name_of
from inspector.record.words import Condition
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.observers import ByItem
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record


def condition(profile: Profile, record: Record, findings: ByItem | None = None) -> tuple[Say, ...]:
    """One sentence an item that was found worn, damaged, repaired or not working, then how many were found sound."""
    found = by_item(record) if findings is None else findings
    walk = (*profile.item_by_id, *sorted(i for i in found if i not in profile.item_by_id))
    lines = [line for item in walk if (line := _line(profile, item, found.get(item, ())))]
    sound = sum(_sound(those) for those in found.values())
    if sound:
        lines.append(say("Found sound: {count}.", count=sound))
    return tuple(lines) or (say("No condition recorded."),)


def _line(profile: Profile, item: str, findings: tuple[Finding, ...]) -> Say | None:
    words = {str(word): word for f in findings for word in condition_words(f)}
    if not words:
        return None
    return say("{item}: {words}.", item=name_of(profile, item), words=joined(list(words.values())))


def _sound(findings: tuple[Finding, ...]) -> bool:
    said = {c for f in findings for c in f.conditions}
    return said == {Condition.SOUND}
