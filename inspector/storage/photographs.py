"""The original bytes of photographs, each kept once and untouched under its SHA-256."""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

from inspector.storage.landing import (
    READ_ONLY,
    discard,
    land,
    make_folder,
    sweep,
    write_unfinished,
)
from inspector.storage.trouble import StorageTrouble, reading
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.photo.refusal import Refusal

CHUNK = 1 << 20
NAME = re.compile(r"[0-9a-f]{64}")
COPIES = "copies"
JPEG_START, JPEG_END = b"\xff\xd8", b"\xff\xd9"


@dataclass(frozen=True, slots=True)
class Kept:
    """Bytes that are kept: their SHA-256, how many they are, whether they were kept before."""

    sha256: str
    size: int
    already: bool


@dataclass(frozen=True, slots=True)
class Missing:
    """No photograph is kept under this SHA-256; ``said`` tells it to the person."""

    sha256: str

    @property
    def said(self) -> Say:
        """The sentence for the person."""
        return say(
            "The photograph {short} is not where it was kept. Put its file back, or take it in again.",
            short=self.sha256[:12],
        )


class State(StrEnum):
    """What became of a kept photograph."""

    OK = "ok"
    MISSING = "missing"
    CHANGED = "changed"
    UNREADABLE = "unreadable"


class Photographs:
    """The photographs kept in one folder; several threads may use it at once."""

    def __init__(self, folder: Path) -> None:
        """The folder is there, without what a dead process left; raises StorageTrouble."""
        self.folder = folder
        self._copies = folder / COPIES
        self._landing = Lock()
        make_folder(folder)
        sweep(folder)
        sweep(self._copies)

    def keep(self, source: bytes | Path, copy: bytes | None = None) -> Kept:
        """The bytes are safe on the disk under their SHA-256, a print copy given beside them.

        Raises StorageTrouble; nothing of them is left then.
        """
        kept = self._keep_file(source) if isinstance(source, Path) else self._keep_bytes(source)
        if copy is not None and not self._read_copy(kept.sha256):
            self._keep_copy(kept.sha256, copy)
        return kept

    def path(self, sha256: str) -> Path | Missing:
        """Where the original bytes are, to be read only."""
        path = self.folder / sha256
        try:
            there = NAME.fullmatch(sha256) and path.is_file()
        except OSError:  # the folder itself may not be looked into
            there = False
        return path if there else Missing(sha256)

    def check(self, sha256: str) -> State:
        """Whether the bytes kept under this SHA-256 are still those; all of them are read."""
        path = self.path(sha256)
        if isinstance(path, Missing):
            return State.MISSING
        try:
            with path.open("rb") as file:
                found = hashlib.file_digest(file, "sha256").hexdigest()
        except FileNotFoundError:
            return State.MISSING
        except OSError:
            return State.UNREADABLE
        return State.OK if found == sha256 else State.CHANGED

    def listing(self) -> list[str]:
        """The SHA-256 of every photograph kept, in order; raises StorageTrouble."""
        try:
            return sorted(p.name for p in self.folder.iterdir() if NAME.fullmatch(p.name))
        except OSError as error:
            raise reading(error, self.folder) from error

    def copy(self, sha256: str) -> bytes | Missing | Refusal:
        """The print copy, an upright JPEG of at most 1200 pixels a side; made anew if it is lost.

        A Missing is given for a lost original, a Refusal for one that cannot be shown.
        """
        path = self.path(sha256)
        if isinstance(path, Missing):
            return path
        if found := self._read_copy(sha256):
            return found
        from inspector.photo.copies import print_copy  # what opens pictures is loaded with the first of them

        made = print_copy(path, name=sha256[:12])
        if isinstance(made, bytes):
            self._keep_copy(sha256, made)
        return made

    def forget(self, sha256: str) -> bool:
        """Whether original and print copy are gone for good; only where the system lets the files go."""
        discard(self.copy_path(sha256))
        discard(self.folder / sha256)
        return not (self.folder / sha256).exists()

    def copy_path(self, sha256: str) -> Path:
        """Where the print copy of this photograph stands once it is made."""
        from inspector.photo.copies import PRINT_PX

        return self._copies / f"{sha256}-{PRINT_PX}.jpg"

    def _keep_bytes(self, data: bytes) -> Kept:
        sha256 = hashlib.sha256(data).hexdigest()
        if self.check(sha256) is State.OK:
            return Kept(sha256, len(data), already=True)
        unfinished = write_unfinished(self.folder, [data])
        return Kept(sha256, len(data), already=self._land(unfinished, sha256))

    def _keep_file(self, source: Path) -> Kept:
        digest, size = hashlib.sha256(), 0

        def passing() -> Iterator[bytes]:
            nonlocal size
            for chunk in _chunks(source):
                digest.update(chunk)
                size += len(chunk)
                yield chunk

        unfinished = write_unfinished(self.folder, passing())
        sha256 = digest.hexdigest()
        return Kept(sha256, size, already=self._land(unfinished, sha256))

    def _land(self, unfinished: Path, sha256: str) -> bool:
        """Whether the same bytes stood there already; they stand there now in either case."""
        with self._landing:
            if self.check(sha256) is State.OK:
                discard(unfinished)
                return True
            land(unfinished, self.folder / sha256, READ_ONLY)
            return False

    def _read_copy(self, sha256: str) -> bytes | None:
        return whole_jpeg(self.copy_path(sha256))

    def _keep_copy(self, sha256: str, copy: bytes) -> None:
        keep_jpeg(self.copy_path(sha256), copy)


def whole_jpeg(path: Path) -> bytes | None:
    """The JPEG that a cache keeps there, or None if it is lost or cut short."""
    try:
        data = path.read_bytes()
    except OSError:
        return None
    return data if data.startswith(JPEG_START) and data.endswith(JPEG_END) else None


def keep_jpeg(path: Path, data: bytes) -> bool:
    """Whether a cache now keeps the JPEG there; it can be made again, so trouble is no trouble."""
    try:
        make_folder(path.parent)
        land(write_unfinished(path.parent, [data]), path)
    except StorageTrouble:
        return False
    return True


def _chunks(source: Path) -> Iterator[bytes]:
    try:
        with source.open("rb") as file:
            while chunk := file.read(CHUNK):
                yield chunk
    except OSError as error:
        raise reading(error, source) from error
