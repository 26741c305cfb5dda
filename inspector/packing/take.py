"""A bag from elsewhere: what it is, whether it is whole, how it differs from what is here, and taking it in beside."""

from __future__ import annotations

import hashlib
import json
import tempfile
from contextlib import suppress
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.packing import layout
from inspector.packing.inside import Inside, inside
from inspector.packing.pack import readable_profile
from inspector.record.differing import differences
from inspector.record.versions import without_money
from inspector.storage.bags.archive import Archive, opened
from inspector.storage.bags.checking import Checked, check
from inspector.storage.bags.limits import MOST_PROFILE, MOST_PROFILE_FILES
from inspector.storage.bags.names import shown_name
from inspector.storage.bags.refusal import BagRefused, Broken
from inspector.storage.codes import new_record_id
from inspector.storage.landing import UNFINISHED, land, make_folder, write_unfinished
from inspector.storage.photographs import Missing
from inspector.storage.trouble import StorageTrouble
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.library import Library
    from inspector.storage.whole import Whole

    Report = Callable[[int, int, str], None]

FROM_BAG = "from bag"  # the desk note that tells which record a record came in as


class Here(StrEnum):
    """How a bag stands to what is here."""

    NEW = "not here yet"
    SAME = "here already, the same"
    OLDER = "here already, with later changes"
    NEWER = "here, without the bag's later changes"
    OTHER = "here, and not the same"


@dataclass(frozen=True, slots=True)
class Offer:
    """What a bag is, before anything of it is taken in."""

    path: Path
    checked: Checked
    record: Record
    profile_title: str
    sharing: bool
    updated: str
    here: Here
    differences: tuple[Say, ...]
    later_here: int = 0  # changes made here that the bag does not have
    later_there: int = 0
    absent: int = 0  # photographs that it names, and that are neither in it nor here
    twin: str = ""  # the record as which it came in before, where that is still the same
    taken_out: bool = False  # the record of its id is among the machines taken out of the list


@dataclass(frozen=True, slots=True)
class TakenIn:
    """A record from a bag, now in the library; ``beside`` when it came in under another id than it had."""

    record_id: str
    was_id: str
    title: str
    photographs: int
    absent: int = 0  # photographs that it names, and that are not here now

    @property
    def beside(self) -> bool:
        """Whether a record of its id was here before."""
        return self.record_id != self.was_id


def offer(path: Path, library: Library, report: Report = lambda done, total, name: None) -> Offer:
    """What the bag is and how it stands to what is here; nothing is changed.

    ``report`` hears of bytes read and may raise to stop. Raises BagRefused and other StorageTrouble.
    """
    with opened(path) as archive:
        checked = check(archive, report)
        found = inside(archive, report)
        brought = _brought(archive)
        with tempfile.TemporaryDirectory() as scratch:
            profile = _profile(archive, Path(scratch))
    made = Offer(
        path, checked, found.record, profile.title, found.sharing, found.kept.updated,
        *_standing(library, found, profile),
        absent=_absent(library, found.record, brought),
        taken_out=any(t.summary.id == found.record.id for t in library.taken_out()),
    )  # fmt: skip
    if made.here in (Here.NEW, Here.SAME):
        return made
    twin = _twin(library, found)
    return replace(made, here=Here.SAME, twin=twin, differences=()) if twin else made


def take_in(
    path: Path, library: Library, report: Report = lambda done, total, name: None
) -> TakenIn:  # fmt: skip
    """The record of the bag is in the library with its history and photographs; nothing that was here is changed.

    Where a record of its id is here it comes in beside, under a new one. ``report`` may raise to stop. Raises
    BagRefused for a bag that is not whole or cannot be read, and other StorageTrouble; nothing of it stays then.
    """
    with opened(path) as archive:
        checked = check(archive, report)
        if not checked.whole:
            raise BagRefused(_not_whole(path, checked))
        found = inside(archive, report)
        with tempfile.TemporaryDirectory() as scratch:
            _profile(archive, Path(scratch))
            record = found.record if _here(library, found.record.id) is None else _renamed(found.record)
            new = _Kept(library)
            try:
                count = new.files(archive, report)
                library.take_in(record, found.kept, Path(scratch))
            except BaseException:
                new.forget()
                raise
    if record.id != found.record.id:
        library.remember(record.id, FROM_BAG, found.record.id)
    title = record.claim.model or record.profile.title
    return TakenIn(record.id, found.record.id, title, count, _absent(library, record, frozenset()))


def read_bag(path: Path) -> tuple[Profile, Record]:
    """Profile and record of a whole bag, to be looked at; nothing is kept. Raises BagRefused, other StorageTrouble."""
    with opened(path) as archive, tempfile.TemporaryDirectory() as scratch:
        checked = check(archive)
        if not checked.whole:
            raise BagRefused(say("{path} is not whole: {what}", path=path, what=checked.faults[0].said))
        return _profile(archive, Path(scratch)), inside(archive).record


def _not_whole(path: Path, checked: Checked) -> Say:
    first = checked.faults[0].said
    more = len(checked.faults) - 1
    if not more:
        return say("{path} is not whole, so nothing was taken in. {first}", path=path, first=first)
    return say("{path} is not whole, so nothing was taken in. {first} And {count} more.", path=path, first=first,
               count=more)  # fmt: skip


class _Kept:
    """What a bag brings to photographs and versions, to be let go again where it cannot come in."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self._new: list[str] = []
        self._frozen: list[str] = []

    def files(self, archive: Archive, report: Report) -> int:
        """How many photographs are kept now."""
        names = [n for n in archive.sizes if layout.KEPT_NAME.fullmatch(n.removeprefix("data/"))]
        count = 0
        with tempfile.TemporaryDirectory(dir=self.library.folder, prefix=UNFINISHED) as scratch:
            for n, name in enumerate(sorted(names)):
                report(n, len(names), name)
                path = Path(scratch) / "file"
                _write(archive, name, path)
                count += self._keep(name, path)
        return count

    def _keep(self, name: str, path: Path) -> bool:
        short = name.removeprefix("data/")
        found = layout.KEPT_NAME.fullmatch(short)
        version = short.startswith(layout.VERSIONS)
        sha256 = self._freeze(path) if version else self._photograph(path)
        if found is None or found[1] != sha256:
            raise BagRefused(say("{name} is not what its name says, so nothing was taken in.", name=shown_name(name)))
        return not version

    def _photograph(self, path: Path) -> str:
        kept = self.library.photographs.keep(path)
        if not kept.already:
            self._new.append(kept.sha256)
        return kept.sha256

    def _freeze(self, path: Path) -> str:
        data, frozen = path.read_bytes(), self.library.frozen
        already = (frozen.folder / hashlib.sha256(data).hexdigest()).exists()
        sha256 = frozen.keep(data)
        if not already:
            self._frozen.append(sha256)
        return sha256

    def forget(self) -> None:
        """What was not here before is gone again."""
        for sha256 in self._new:
            self.library.photographs.forget(sha256)
        for sha256 in self._frozen:
            self.library.frozen.forget(sha256)


def _write(archive: Archive, name: str, path: Path) -> None:
    try:
        land(write_unfinished(path.parent, archive.chunks(name)), path)
    except Broken as broken:
        raise BagRefused(broken.said) from broken


def _profile(archive: Archive, folder: Path) -> Profile:
    """The profile of the bag, its files in that folder of this computer's own making."""
    start = f"data/{layout.PROFILE}"
    names = sorted(n for n in archive.sizes if n.startswith(start))
    if len(names) > MOST_PROFILE_FILES or sum(archive.sizes[n] for n in names) > MOST_PROFILE:
        raise BagRefused(say("{path} cannot be taken in. Its profile is larger than one can be.", path=archive.path))
    for name in names:
        target = folder / name.removeprefix(start)
        make_folder(target.parent)
        _write(archive, name, target)
    try:
        return readable_profile(folder)
    except StorageTrouble as trouble:
        raise BagRefused(say("{path} cannot be taken in. {why}", path=archive.path, why=trouble.said)) from trouble


def _brought(archive: Archive) -> frozenset[str]:
    """The photographs in the bag, by SHA-256."""
    found = (layout.KEPT_NAME.fullmatch(n.removeprefix("data/")) for n in archive.sizes)
    return frozenset(one[1] for one in found if one)


def _absent(library: Library, record: Record, brought: frozenset[str]) -> int:
    """How many of the photographs that the record names are not here, and were not brought either."""
    named = {p.sha256 for p in record.photographs} - brought
    return sum(isinstance(library.photographs.path(sha256), Missing) for sha256 in named)


def _twin(library: Library, found: Inside) -> str:
    """The id of the record as which this very one came in before; empty where it did not, or was changed since."""
    for machine in library.machines():
        key = machine.summary.id
        if library.recall(key, FROM_BAG) == found.record.id:
            with suppress(StorageTrouble):  # one that cannot be read is none that is the same
                if library.load(key).record.model_copy(update={"id": found.record.id}) == found.record:
                    return key
    return ""


def _here(library: Library, record_id: str) -> Whole | None:
    """What is kept of that record here; a record that was taken out of the list is here too."""
    try:
        return library.whole(record_id)
    except StorageTrouble:
        return None


def _renamed(record: Record) -> Record:
    return record.model_copy(update={"id": new_record_id()})


def _standing(library: Library, found: Inside, profile: Profile) -> tuple[Here, tuple[Say, ...], int, int]:
    kept = _here(library, found.record.id)
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
