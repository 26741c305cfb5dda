"""A bag written as one zip: the same files give the same bytes, and it is whole or not there."""

from __future__ import annotations

import hashlib
import os
from dataclasses import dataclass
from typing import IO, TYPE_CHECKING
from zipfile import ZIP_STORED, ZipFile, ZipInfo

from inspector.storage.bags.limits import CHUNK
from inspector.storage.bags.names import encoded
from inspector.storage.landing import UNFINISHED, discard, land
from inspector.storage.trouble import reading, writing

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence
    from pathlib import Path

    Report = Callable[[int, int, str], None]

BAGIT = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
MANIFEST, TAG_MANIFEST = "manifest-sha256.txt", "tagmanifest-sha256.txt"
FIRST_DAY = (1980, 1, 1, 0, 0, 0)  # the earliest that a zip can say: the time of packing is no part of the bag
UNIX, PLAIN_FILE = 3, 0o100644 << 16


@dataclass(frozen=True, slots=True)
class BagFile:
    """A file below ``data/`` of a bag: its path there, and its bytes or where they are."""

    name: str
    source: bytes | Path


@dataclass(frozen=True, slots=True)
class Written:
    """A bag on the disk; ``sha256`` is that of its list of lists, and so stands for every byte in it."""

    path: Path
    files: int
    size: int
    sha256: str


def write_bag(
    target: Path, base: str, files: Sequence[BagFile], info: Iterable[tuple[str, str]],
    report: Report = lambda done, total, name: None,
) -> Written:  # fmt: skip
    """The bag of these files stands at the target, safe on the disk.

    ``report`` hears of bytes done and of all, and may raise to stop. Raises StorageTrouble and what ``report``
    raises; what stood at the target before is untouched then.
    """
    unfinished = target.parent / f"{UNFINISHED}{os.urandom(8).hex()}"
    try:
        written = _written(unfinished, target, base, sorted(files, key=lambda one: one.name), info, report)
        land(unfinished, target)
    except BaseException:
        discard(unfinished)
        raise
    return written


def _written(
    unfinished: Path, target: Path, base: str, files: Sequence[BagFile], info: Iterable[tuple[str, str]],
    report: Report,
) -> Written:  # fmt: skip
    try:
        with unfinished.open("x+b") as file:
            with ZipFile(file, "w", ZIP_STORED, allowZip64=True) as archive:
                sums, size = _payload(archive, base, files, report)
                oxum = ("Payload-Oxum", f"{size}.{len(sums)}")
                sha256 = _tags(archive, base, sums, (*info, oxum))
            file.flush()
            os.fsync(file.fileno())
    except OSError as error:
        raise writing(error, target) from error
    return Written(target, len(sums), size, sha256)


def _payload(
    archive: ZipFile, base: str, files: Sequence[BagFile], report: Report
) -> tuple[list[tuple[str, str]], int]:
    total, done = sum(_size(one) for one in files), 0
    sums: list[tuple[str, str]] = []
    for one in files:
        report(done, total, one.name)
        digest = hashlib.sha256()
        with archive.open(_entry(f"{base}/data/{one.name}", _size(one)), "w") as into:
            for chunk in _chunks(one):
                digest.update(chunk)
                into.write(chunk)
                done += len(chunk)
                report(done, total, one.name)
        sums.append((digest.hexdigest(), f"data/{one.name}"))
    return sums, done


def _tags(archive: ZipFile, base: str, sums: list[tuple[str, str]], info: Iterable[tuple[str, str]]) -> str:
    """The SHA-256 of the list of lists."""
    tags = {
        "bag-info.txt": "".join(f"{label}: {' '.join(value.split())}\n" for label, value in info).encode(),
        "bagit.txt": BAGIT,
        MANIFEST: _listed(sums),
    }
    lists = [(hashlib.sha256(data).hexdigest(), name) for name, data in tags.items()]
    for name, data in (*tags.items(), (TAG_MANIFEST, _listed(lists))):
        with archive.open(_entry(f"{base}/{name}", len(data)), "w") as into:
            into.write(data)
    return hashlib.sha256(_listed(lists)).hexdigest()


def _listed(sums: list[tuple[str, str]]) -> bytes:
    return "".join(f"{digest}  {encoded(name)}\n" for digest, name in sums).encode()


def _entry(name: str, size: int) -> ZipInfo:
    entry = ZipInfo(name, FIRST_DAY)
    entry.create_system, entry.external_attr, entry.file_size = UNIX, PLAIN_FILE, size
    return entry


def _size(one: BagFile) -> int:
    if isinstance(one.source, bytes):
        return len(one.source)
    try:
        return one.source.stat().st_size
    except OSError as error:
        raise reading(error, one.source) from error


def _chunks(one: BagFile) -> Iterator[bytes]:
    if isinstance(one.source, bytes):
        yield one.source
        return
    with _opened(one.source) as file:
        while chunk := _read(file, one.source):
            yield chunk


def _opened(path: Path) -> IO[bytes]:
    try:
        return path.open("rb")
    except OSError as error:
        raise reading(error, path) from error


def _read(file: IO[bytes], path: Path) -> bytes:
    try:
        return file.read(CHUNK)
    except OSError as error:
        raise reading(error, path) from error
