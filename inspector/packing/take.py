"""A bag from elsewhere: what it is, whether it is whole, how it differs from what is here, and taking it in beside."""

from __future__ import annotations

import hashlib
import tempfile
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.packing import layout
from inspector.packing.inside import inside
from inspector.packing.laid_out import profile_of, write_out
from inspector.packing.standing import FROM_BAG, Here, absent, brought, kept_here, standing, twin
from inspector.storage.bags.archive import opened
from inspector.storage.bags.checking import Checked, check
from inspector.storage.bags.names import shown_name
from inspector.storage.bags.refusal import BagRefused
from inspector.storage.codes import new_record_id
from inspector.storage.landing import UNFINISHED
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.storage.bags.archive import Archive
    from inspector.storage.library import Library

    Report = Callable[[int, int, str], None]


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
        there = brought(archive)
        with tempfile.TemporaryDirectory() as scratch:
            profile = profile_of(archive, Path(scratch))
    made = Offer(
        path, checked, found.record, profile.title, found.sharing, found.kept.updated,
        *standing(library, found, profile),
        absent=absent(library, found.record, there),
        taken_out=any(t.summary.id == found.record.id for t in library.taken_out()),
    )  # fmt: skip
    if made.here in (Here.NEW, Here.SAME):
        return made
    known = twin(library, found)
    return replace(made, here=Here.SAME, twin=known, differences=()) if known else made


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
            profile_of(archive, Path(scratch))
            record = found.record if kept_here(library, found.record.id) is None else _renamed(found.record)
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
    return TakenIn(record.id, found.record.id, title, count, absent(library, record, frozenset()))


def read_bag(path: Path) -> tuple[Profile, Record]:
    """Profile and record of a whole bag, to be looked at; nothing is kept. Raises BagRefused, other StorageTrouble."""
    with opened(path) as archive, tempfile.TemporaryDirectory() as scratch:
        checked = check(archive)
        if not checked.whole:
            raise BagRefused(say("{path} is not whole: {what}", path=path, what=checked.faults[0].said))
        return profile_of(archive, Path(scratch)), inside(archive).record


def _renamed(record: Record) -> Record:
    return record.model_copy(update={"id": new_record_id()})


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
                write_out(archive, name, path)
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


