"""A kept record packed whole: with its history, its profile, its photographs as they came, its sealed versions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.packing import layout
from inspector.packing.summary import summary_files
from inspector.profile.read import read_profile
from inspector.record.format import FORMAT
from inspector.storage import history
from inspector.storage.bags.limits import MOST_HISTORY
from inspector.storage.bags.writing import BagFile, write_bag
from inspector.storage.formats import record_of
from inspector.storage.photographs import Missing, State
from inspector.storage.rows import UNREADABLE
from inspector.storage.trouble import Damaged, StorageTrouble, reading
from inspector.storage.whole import Whole
from inspector.texts import Say, say, tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator
    from pathlib import Path

    from inspector.profile.model import Profile
    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.storage.bags.writing import Report
    from inspector.storage.library import Library, Loaded
    from inspector.storage.photographs import Photographs


@dataclass(frozen=True, slots=True)
class Packed:
    """A bag on the disk; ``sha256`` stands for every byte in it, ``left_out`` says what is not in it and why."""

    path: Path
    files: int
    size: int
    sha256: str
    left_out: tuple[Say, ...] = ()


def pack(
    library: Library, record_id: str, target: Path, report: Report = lambda done, total, name: None
) -> Packed:  # fmt: skip
    """The whole bag of a record stands at the target; the same record always gives the same bytes.

    ``report`` may raise to stop. Raises StorageTrouble; what stood at the target is untouched then.
    """
    loaded = library.load(record_id)
    record = loaded.record
    kept, unread = _history(library, loaded)
    profile = readable_profile(loaded.profile_folder)
    photographs = list(_photographs(record))
    addresses, files, left_out = _originals(library.photographs, photographs, report)
    versions, lost = _versions(library, record)
    left_out += [*lost, *unread]
    files += [
        BagFile(layout.ABOUT, layout.about(record, layout.WHOLE, kept)),
        BagFile(layout.RECORD, layout.written(record.model_dump(mode="json"))),
        BagFile(layout.BEGUN, kept.begun.encode()),
        BagFile(layout.EDITS, layout.edits_written(kept)),
        BagFile(layout.HISTORY_TEXT, layout.history_told(record, kept)),
        *profile_files(loaded.profile_folder),
        *_undone(library, kept, {photograph.sha256 for photograph in photographs}),
        *versions,
        *summary_files(profile, record, _copies(library.photographs, record), addresses, kept.updated),
    ]
    if left_out:
        files.append(BagFile(layout.LEFT_OUT, "".join(f"{tr(line)}\n" for line in left_out).encode()))
    written = write_bag(target, layout.base_of(record.id), files, info(record, profile, layout.WHOLE, loaded), report)
    return Packed(target, written.files, written.size, written.sha256, tuple(left_out))


def _history(library: Library, loaded: Loaded) -> tuple[Whole, tuple[Say, ...]]:
    """All that led to the record; where that cannot be read any more, the record as it stands, and that this is so."""
    record = loaded.record
    lost = say("The history of this record cannot be read as it was written, so it is not in the bag; the record is.")
    try:
        kept = library.whole(record.id)
        history.stacks(kept.edits)
        if history.replayed(record_of(kept.begun, kept.format), kept.edits) == record:
            if len(layout.edits_written(kept)) <= MOST_HISTORY:
                return kept, ()
            lost = say("The history of this record is longer than a bag can hold, so it is not in it; the record is.")
    except (Damaged, *UNREADABLE):
        pass
    return Whole(FORMAT, record.model_dump_json(), (), loaded.at), (lost,)


def readable_profile(folder: Path) -> Profile:
    """The profile kept with a record. Raises StorageTrouble where it cannot be read."""
    read = read_profile(folder)
    if read.profile is None:
        problem = str(read.problems[0]) if read.problems else str(folder)
        raise StorageTrouble(say("The profile kept with this machine cannot be read: {what}", what=problem))
    return read.profile


def profile_files(folder: Path) -> Iterator[BagFile]:
    """Every file of the profile as it was used."""
    try:
        for path in sorted(p for p in folder.rglob("*") if p.is_file()):
            yield BagFile(layout.PROFILE + path.relative_to(folder).as_posix(), path)
    except OSError as error:
        raise reading(error, folder) from error


def info(record: Record, profile: Profile, kind: str, loaded: Loaded) -> Iterable[tuple[str, str]]:
    """What the notes of the bag say of it."""
    return (
        ("Bag-Software-Agent", layout.SOFTWARE),
        ("External-Identifier", record.id),
        ("External-Description", f"{record.claim.model or profile.title}"),
        ("Internal-Sender-Description", f"{kind}; record format {record.format}; last changed {loaded.at}"),
    )


def _photographs(record: Record) -> Iterator[Photograph]:
    yield from record.photographs
    if record.earlier is not None:
        yield from record.earlier.photographs


def _originals(
    store: Photographs, photographs: Iterable[Photograph], report: Report
) -> tuple[dict[str, str], list[BagFile], list[Say]]:
    """Paths in the bag by photograph id, the files, and which photographs are not as they were kept."""
    addresses: dict[str, str] = {}
    files: dict[str, BagFile] = {}
    left_out: list[Say] = []
    for photograph in photographs:
        report(0, 0, photograph.name)
        path = store.path(photograph.sha256)
        if isinstance(path, Missing):
            left_out.append(path.said)
        elif photograph.sha256 not in files and store.check(photograph.sha256) is not State.OK:
            left_out.append(say("The photograph {name} is not as it was kept, so it is not in the bag.",
                                name=photograph.name or photograph.sha256[:12]))  # fmt: skip
        else:
            one = files.setdefault(photograph.sha256, BagFile(layout.photograph_name(photograph), path))
            addresses[photograph.id] = one.name
    return addresses, list(files.values()), left_out


def _undone(library: Library, kept: Whole, packed: set[str]) -> Iterator[BagFile]:
    """Photographs that only the history names, so that what was taken out can be brought back."""
    for sha256 in sorted(kept.hashes - packed):
        path = library.photographs.path(sha256)
        if not isinstance(path, Missing) and library.photographs.check(sha256) is State.OK:
            yield BagFile(layout.PHOTOGRAPHS + sha256, path)


def _versions(library: Library, record: Record) -> tuple[list[BagFile], list[Say]]:
    """The sealed sheets and the records that they froze, and what of them is not as it was frozen."""
    files: list[BagFile] = []
    left_out: list[Say] = []
    for version in record.versions:
        for sha256, end in ((version.sheet, ".pdf"), (version.whole, ".json"), (version.sha256, ".json")):
            if not sha256 or (sha256 == version.sha256 and not (library.frozen.folder / sha256).exists()):
                continue  # what is attached to the sheet is not always kept beside it
            try:
                data = library.frozen.read(sha256)
            except StorageTrouble as trouble:
                left_out.append(trouble.said)
            else:
                files.append(BagFile(f"{layout.VERSIONS}{sha256}-{version.number}{end}", data))
    return files, left_out


def _copies(store: Photographs, record: Record) -> dict[str, bytes]:
    found = ((photograph.id, store.copy(photograph.sha256)) for photograph in record.photographs)
    return {key: copy for key, copy in found if isinstance(copy, bytes)}
