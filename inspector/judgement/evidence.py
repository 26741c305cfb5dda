"""What each part found says about the year: firmly, of an era only, or nothing, with the reason in words."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.judgement.observers import by_item
from inspector.judgement.said import Said, Strength, said_by, speaking
from inspector.judgement.wording import joined
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.judgement.observers import ByItem
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.profile.words import Assembly
    from inspector.record.finding import Finding
    from inspector.record.model import Record


class Kind(StrEnum):
    """What the years of a part are."""

    MODEL_YEAR = "model year"
    BUILD_DATE = "build date"
    DATE_CODE = "date code"
    NUMBER = "number"


@dataclass(frozen=True, slots=True)
class DatedPart:
    """One part or number and the model years it allows; only a firm one narrows anything.

    ``id`` is the item's id, or "number:" and the place's id; ``item`` and ``place`` hold the plain ids, one of
    them empty. A firm part has at least one year, a silent one none, and one that shows an era only has the years
    of its form for the eye. ``alternatives`` are the years on each condition, where a probable figure decides;
    ``years`` is then their union and ``condition`` says it all in one. ``forms`` are the ids of the fitted forms.
    """

    id: str
    name: str
    assembly: Assembly
    kind: Kind
    years: tuple[int, ...]
    strength: Strength
    what: str
    condition: Say | None
    alternatives: tuple[tuple[tuple[int, ...], Say], ...]
    sources: tuple[str, ...]
    grade: int
    reason: Say
    item: str = ""
    place: str = ""
    forms: tuple[str, ...] = ()

    @property
    def firm(self) -> bool:
        """True where the years hold and narrow."""
        return self.strength is Strength.FIRM


def form_parts(profile: Profile, record: Record, findings: ByItem | None = None) -> tuple[DatedPart, ...]:
    """One part for every item that somebody looked at or named a form of, in the order of the walk."""
    found = by_item(record) if findings is None else findings
    parts = (_part(profile, record, item, found[item.id]) for item in profile.items() if item.id in found)
    return tuple(part for part in parts if part is not None)


def _part(profile: Profile, record: Record, item: Item, findings: tuple[Finding, ...]) -> DatedPart | None:
    told = [one for f in findings if (one := said_by(profile, item, f)) is not None]
    if not told:
        return None
    kept = told if len(told) == 1 else speaking(told)
    first = kept[0] if len(kept) == 1 else _together(record, kept)
    return DatedPart(
        id=item.id,
        name=item.name,
        assembly=item.assembly,
        kind=Kind.MODEL_YEAR,
        years=() if first.strength is Strength.SILENT else first.years,
        strength=first.strength,
        what=first.what,
        condition=None,
        alternatives=(),
        sources=first.sources,
        grade=first.grade,
        reason=first.reason,
        item=item.id,
        forms=tuple(dict.fromkeys([one.form for one in kept if one.form])),
    )


def _together(record: Record, kept: list[Said]) -> Said:
    """What several people say as one: the weakest strength, all of the years, forms and sources."""
    strength = next(s for s in (Strength.SILENT, Strength.ERA, Strength.FIRM) if any(o.strength is s for o in kept))
    return Said(
        by="",
        strength=strength,
        years=tuple(sorted({year for one in kept for year in one.years})),
        form="",
        what=" / ".join(dict.fromkeys(one.what for one in kept if one.what)),
        reason=_reason(record, kept, strength),
        sources=tuple(dict.fromkeys(source for one in kept for source in one.sources)),
        grade=max(one.grade for one in kept),
    )


def _reason(record: Record, kept: list[Said], strength: Strength) -> Say:
    if all(one.reason == kept[0].reason for one in kept[1:]):
        return kept[0].reason
    each = joined([say("{person}: {reason}", person=record.name_of(one.by), reason=one.reason) for one in kept], " ")
    if strength is Strength.FIRM:
        return say("{each} Both are kept, and their years are united.", each=each)
    return say("{each} Both are kept, so nothing is narrowed by it.", each=each)
