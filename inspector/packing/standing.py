"""How a bag stands to what is here: new, the same, older, newer, or another; and what came in before."""

from __future__ import annotations

import json
from contextlib import suppress
from enum import StrEnum
from typing import TYPE_CHECKING

from inspector.packing import layout
from inspector.record.differing import differences
from inspector.record.versions import without_money
from inspector.storage.photographs import Missing
from inspector.storage.trouble import StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.packing.inside import Inside
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.bags.archive import Archive
    from inspector.storage.library import Library
    from inspector.storage.whole import Whole

FROM_BAG = "from bag"  # the desk note that tells which record a record came in as


class Here(StrEnum):
    """How a bag stands to what is here."""

    NEW = "not here yet"
    SAME = "here already, the same"
    OLDER = "here already, with later changes"
    NEWER = "here, without the bag's later changes"
    OTHER = "here, and not the same"


def brought(archive: Archive) -> frozenset[str]:
    """The photographs in the bag, by SHA-256."""
    found = (layout.KEPT_NAME.fullmatch(n.removeprefix("data/")) for n in archive.sizes)
    return frozenset(one[1] for one in found if one)


def absent(library: Library, record: Record, brought: frozenset[str]) -> int:
    """How many of the photographs that the record names are not here, and were not brought either."""
    named = {p.sha256 for p in record.photographs} - brought
    return sum(isinstance(library.photographs.path(sha256), Missing) for sha256 in named)


def twin(library: Library, found: Inside) -> str:
    """The id of the record as which this very one came in before; empty where it did not, or was changed since."""
    for machine in library.machines():
        key = machine.summary.id
        if library.recall(key, FROM_BAG) == found.record.id:
            with suppress(StorageTrouble):  # one that cannot be read is none that is the same
                if library.load(key).record.model_copy(update={"id": found.record.id}) == found.record:
                    return key
    return ""


def kept_here(library: Library, record_id: str) -> Whole | None:
    """What is kept of that record here; a record that was taken out of the list is here too."""
    try:
        return library.whole(record_id)
    except StorageTrouble:
        return None


def standing(library: Library, found: Inside, profile: Profile) -> tuple[Here, tuple[Say, ...], int, int]:
    """How the bag stands to what is here, where they differ, and how many changes only here and only there."""
    kept = kept_here(library, found.record.id)
    if kept is None:
        return Here.NEW, (), 0, 0
    mine = library.load(found.record.id).record
    here, there = [_bare(kept, n) for n in range(len(kept.edits))], [_bare(found.kept, n) for n in
                                                                    range(len(found.kept.edits))]  # fmt: skip
    shared = next((n for n, (a, b) in enumerate(zip(here, there, strict=False)) if a != b), min(len(here), len(there)))
    later = len(here) - shared, len(there) - shared
    told = tuple(_differences(profile, mine, found))
    if mine == found.record and later == (0, 0):
        return Here.SAME, (), 0, 0
    if found.sharing or (later[0] and later[1]) or later == (0, 0):
        return Here.OTHER, told, *later
    return (Here.NEWER if later[1] else Here.OLDER), told, *later


def _bare(kept: Whole, n: int) -> tuple[object, ...]:
    row = kept.edits[n]
    return row.kind, row.at, row.who, json.loads(row.step)


def _differences(profile: Profile, mine: Record, found: Inside) -> Iterator[Say]:
    yield from differences(profile, mine, found.record)
    if mine != without_money(mine) and found.sharing:
        yield say("Money: it is not in a copy made to be shared.")
    elif (mine.money, mine.comparables, mine.remedies) != (
        found.record.money, found.record.comparables, found.record.remedies
    ):  # fmt: skip
        yield say("Money: not the same in both.")
