"""Writing a sheet to where the user wants it: all of it or none of it."""

from __future__ import annotations

import contextlib
import errno
import os
import tempfile
from pathlib import Path

from inspector.texts import Say, say

FULL = frozenset({errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)})
FORBIDDEN = frozenset({errno.EROFS, errno.EACCES, errno.EPERM})
MISSING = frozenset({errno.ENOENT, errno.ENOTDIR})
OPEN_ELSEWHERE = frozenset({32, 33})  # what Windows answers where another program holds the file
NAME_TOO_LONG = errno.ENAMETOOLONG


class SheetTrouble(Exception):
    """A sheet could not be written; ``sentence`` says what, where and how to mend it."""

    def __init__(self, sentence: Say) -> None:
        super().__init__(str(sentence))
        self.sentence = sentence


def write_atomically(path: Path, data: bytes, mode: int | None = None) -> None:
    """The file holds exactly ``data``, on disk when this returns; on any trouble what was there before is untouched.

    ``mode`` are its rights, else those of the file that was there. Raises SheetTrouble.
    """
    path = Path(path)
    try:
        if path.is_dir():
            raise SheetTrouble(say("{path} is a folder. Give the sheet a name inside it.", path=path))
        if path.exists() and not path.is_file():
            raise SheetTrouble(say("{path} is a device, not a file. Choose another name.", path=path))
        _write_beside(path, data, mode)
    except OSError as error:
        raise SheetTrouble(_sentence(error, path)) from error


def _write_beside(path: Path, data: bytes, mode: int | None) -> None:
    handle, name = tempfile.mkstemp(prefix=".sheet-", suffix=".part", dir=path.parent)
    beside = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.chmod(_mode(path) if mode is None else mode)
        os.replace(beside, path)  # noqa: PTH105
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise
    _settle(path.parent)


def _mode(path: Path) -> int:
    """The rights of the file that was there, or those that a new file gets for its owner and readers."""
    try:
        return path.stat().st_mode & 0o777
    except OSError:
        return 0o644


def _settle(folder: Path) -> None:
    """The new name is on disk too, where the system lets a folder be flushed."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def another_name(path: Path) -> Path:
    """A free name beside this one: ``sheet 2.pdf``, ``sheet 3.pdf``, and so on."""
    path, number = Path(path), 2
    while (free := path.with_name(f"{path.stem} {number}{path.suffix}")).exists():
        number += 1
    return free


def _sentence(error: OSError, path: Path) -> Say:
    folder = path.parent
    if error.errno in FULL:
        return say("There is no room left on the disk of {folder}. Free some space and write again.", folder=folder)
    replacing = error.errno in FORBIDDEN and error.filename2 is not None and path.exists()
    if replacing or getattr(error, "winerror", None) in OPEN_ELSEWHERE or error.errno == errno.EBUSY:
        return say(
            "{path} is open in another program. Close it there, or write to {other}.",
            path=path,
            other=another_name(path).name,
        )
    if error.errno in FORBIDDEN:
        return say("{folder} may not be written to. Choose another folder for {name}.", folder=folder, name=path.name)
    if error.errno in MISSING:
        return say("There is no folder {folder}. Choose one that exists for {name}.", folder=folder, name=path.name)
    if error.errno == NAME_TOO_LONG:
        return say("The name {name} is too long for this disk. Choose a shorter one.", name=path.name)
    reason = error.strerror or type(error).__name__
    return say("{path} cannot be written ({reason}). Choose another place.", path=path, reason=reason)
