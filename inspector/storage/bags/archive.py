"""A bag opened to be read: a zip or a folder, file by file, in pieces, and never written out under its own names."""

from __future__ import annotations

import os
import zlib
from contextlib import suppress
from typing import IO, TYPE_CHECKING, Protocol

from inspector.storage.bags import limits
from inspector.storage.bags.directory import DEFLATED, Entry, read_directory
from inspector.storage.bags.names import refused, shown_name
from inspector.storage.bags.refusal import BagRefused, Broken
from inspector.storage.trouble import reading
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path
    from types import TracebackType

BAGIT_TXT = "bagit.txt"


class _Store(Protocol):
    @property
    def sizes(self) -> dict[str, int]: ...
    def chunks(self, name: str) -> Iterator[bytes]: ...
    def close(self) -> None: ...


class Archive:
    """The files of one bag by their path below its folder; ``outside`` are those beside that folder."""

    def __init__(self, path: Path, store: _Store) -> None:
        """Use ``opened``."""
        self.path, self._store = path, store
        self._base = _base(path, store.sizes)
        start = len(self._base)
        self.sizes = {n[start:]: size for n, size in store.sizes.items() if n.startswith(self._base)}
        self.outside = tuple(n for n in store.sizes if not n.startswith(self._base))

    def __enter__(self) -> Archive:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._store.close()

    @property
    def folder(self) -> str:
        """The name of the bag's folder in the zip; empty where there is none."""
        return self._base.removesuffix("/")

    def chunks(self, name: str) -> Iterator[bytes]:
        """The bytes of the file, in pieces of at most a million or so. Raises Broken, and StorageTrouble."""
        return self._store.chunks(self._base + name)

    def read(self, name: str, most: int = limits.MOST_TAG) -> bytes:
        """All bytes of the file. Raises Broken where it is not there, larger than ``most``, or damaged."""
        if name not in self.sizes:
            raise Broken(name, say("{name}: missing.", name=shown_name(name)))
        if self.sizes[name] > most:
            raise Broken(name, say("{name}: larger than such a file can be.", name=shown_name(name)))
        return b"".join(self.chunks(name))


def opened(path: Path) -> Archive:
    """The bag, to be read. Raises BagRefused for what is none or tries tricks, and other StorageTrouble."""
    store = _Folder(path) if path.is_dir() else _Zip(path)
    try:
        return Archive(path, store)
    except BaseException:
        store.close()
        raise


def _base(path: Path, sizes: dict[str, int]) -> str:
    if BAGIT_TXT in sizes:
        return ""
    homes = [n.removesuffix(BAGIT_TXT) for n in sizes if n.endswith("/" + BAGIT_TXT) and n.count("/") == 1]
    if len(homes) != 1:
        why = say("There is no bagit.txt in it.") if not homes else say("It holds several bags; take in one at a time.")
        raise BagRefused(say("{path} is not a bag. {why}", path=path, why=why))
    return homes[0]


class _Zip:
    def __init__(self, path: Path) -> None:
        self._path = path
        try:
            self._file: IO[bytes] = path.open("rb")
        except OSError as error:
            raise reading(error, path) from error
        try:
            self._entries = {e.name: e for e in read_directory(self._file, os.fstat(self._file.fileno()).st_size)}
        except OSError as error:
            self._file.close()
            raise reading(error, path) from error
        except BaseException:
            self._file.close()
            raise
        self.sizes = {name: entry.size for name, entry in self._entries.items()}

    def chunks(self, name: str) -> Iterator[bytes]:
        entry = self._entries[name]
        if entry.fault is not None:
            raise Broken(name, entry.fault)
        crc, left = 0, entry.size
        for chunk in self._unpacked(entry):
            left -= len(chunk)
            if left < 0:
                break
            crc = zlib.crc32(chunk, crc)
            yield chunk
        if left or crc != entry.crc:
            raise Broken(name, say("{name}: changed or damaged; it does not unpack to what was packed.",
                                   name=shown_name(name)))  # fmt: skip

    def _unpacked(self, entry: Entry) -> Iterator[bytes]:
        if entry.method != DEFLATED:
            yield from self._packed(entry)
            return
        unpack = zlib.decompressobj(-zlib.MAX_WBITS)
        with suppress(zlib.error):  # the sum of what came out tells
            for chunk in self._packed(entry):
                yield unpack.decompress(chunk, limits.CHUNK)
                while unpack.unconsumed_tail and not unpack.eof:
                    yield unpack.decompress(unpack.unconsumed_tail, limits.CHUNK)
            while not unpack.eof and (rest := unpack.decompress(b"", limits.CHUNK)):
                yield rest

    def _packed(self, entry: Entry) -> Iterator[bytes]:
        at, left = entry.start, entry.packed
        while left:
            try:
                self._file.seek(at)
                chunk = self._file.read(min(left, limits.CHUNK))
            except OSError as error:
                raise reading(error, self._path) from error
            if not chunk:
                return
            at, left = at + len(chunk), left - len(chunk)
            yield chunk

    def close(self) -> None:
        self._file.close()


class _Folder:
    def __init__(self, path: Path) -> None:
        self._path = path
        self.sizes: dict[str, int] = {}
        try:
            self._look(path, "")
        except OSError as error:
            raise reading(error, path) from error

    def _look(self, folder: Path, above: str) -> None:
        with os.scandir(folder) as found:
            for one in found:
                name = above + one.name
                self._accept(name, one)
                if one.is_dir(follow_symlinks=False):
                    self._look(folder / one.name, name + "/")
                else:
                    self.sizes[name] = one.stat(follow_symlinks=False).st_size

    def _accept(self, name: str, one: os.DirEntry[str]) -> None:
        why: Say | None = refused(name)
        if one.is_symlink() or not (one.is_dir(follow_symlinks=False) or one.is_file(follow_symlinks=False)):
            why = say('"{name}" is a link or a device, not a file.', name=shown_name(name))
        if len(self.sizes) >= limits.MOST_ENTRIES:
            why = say("It holds more than {most} files.", most=limits.MOST_ENTRIES)
        if why is not None:
            raise BagRefused(say("This folder is not opened. {why}", why=why))

    def chunks(self, name: str) -> Iterator[bytes]:
        path = self._path / name
        try:
            with path.open("rb") as file:
                while chunk := file.read(limits.CHUNK):
                    yield chunk
        except OSError as error:
            raise reading(error, path) from error

    def close(self) -> None:
        """Nothing is held."""
