"""Files that are whole or not there: written beside their place, flushed, then renamed into it."""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import time
from typing import TYPE_CHECKING

from inspector.storage.trouble import writing

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

UNFINISHED = ".unfinished-"
NO_FLUSHING = {errno.EINVAL, errno.EBADF, errno.ENOTSUP}  # some network and card file systems
STALE_SECONDS = 3600.0  # another process may be writing the younger ones
READ_ONLY, WRITABLE = 0o444, 0o644


def write_unfinished(folder: Path, chunks: Iterable[bytes]) -> Path:
    """The path of a new file in the folder that holds the chunks, safe on the disk.

    Raises StorageTrouble, and whatever the chunks raise, leaving nothing behind.
    """
    path = folder / f"{UNFINISHED}{os.urandom(8).hex()}"
    try:
        _write(path, chunks)
    except BaseException:
        discard(path)
        raise
    return path


def land(unfinished: Path, target: Path, mode: int = WRITABLE) -> None:
    """The finished file stands at the target with these permissions, for good.

    Raises StorageTrouble with the unfinished file gone.
    """
    try:
        unfinished.chmod(mode)
        _replace(unfinished, target)
        _flush_folder(target.parent)
    except OSError as error:
        discard(unfinished)
        raise writing(error, target.parent) from error


def discard(path: Path) -> None:
    """The file is gone, if the system lets it go."""
    with contextlib.suppress(OSError):
        path.chmod(WRITABLE)  # Windows removes no file that is read-only
        path.unlink()


def make_folder(folder: Path) -> None:
    """The folder is there; raises StorageTrouble."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise writing(error, folder) from error


def sweep(folder: Path) -> None:
    """What a process that died left unfinished in the folder more than an hour ago is gone, folders included."""
    now = time.time()
    with contextlib.suppress(OSError):
        for path in list(folder.glob(f"{UNFINISHED}*")):
            if now - path.stat().st_mtime <= STALE_SECONDS:
                continue
            if path.is_dir():
                shutil.rmtree(path, ignore_errors=True)
            else:
                discard(path)


def _write(path: Path, chunks: Iterable[bytes]) -> None:
    """The chunks are in the file and on the disk; an error of the chunks' own passes unchanged."""
    try:
        file = path.open("xb")
    except OSError as error:
        raise writing(error, path.parent) from error
    with file:
        for chunk in chunks:
            _put(file.fileno(), chunk, path.parent)
        try:
            os.fsync(file.fileno())
        except OSError as error:
            raise writing(error, path.parent) from error


def _put(number: int, chunk: bytes, folder: Path) -> None:
    left = memoryview(chunk)
    try:
        while left:
            left = left[os.write(number, left) :]
    except OSError as error:
        raise writing(error, folder) from error


def _replace(unfinished: Path, target: Path) -> None:
    try:
        unfinished.replace(target)
    except PermissionError:  # Windows replaces no file that is read-only
        if not target.exists():
            raise
        target.chmod(WRITABLE)
        unfinished.replace(target)


def _flush_folder(folder: Path) -> None:
    """The renaming itself is on the disk, where the system can do that for a folder."""
    if os.name == "nt":
        return
    number = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(number)
    except OSError as error:
        if error.errno not in NO_FLUSHING:
            raise
    finally:
        os.close(number)
