"""One program at a time writes in a folder; the system lets go of the lock when that program dies."""

from __future__ import annotations

import contextlib
import errno
import json
import os
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from inspector.storage.trouble import Locked, writing
from inspector.texts import Say, say

if TYPE_CHECKING:
    from pathlib import Path
    from typing import TextIO

NAME = "library.lock"
TAKEN = {errno.EAGAIN, errno.EACCES, errno.EDEADLK}

if sys.platform == "win32":
    import msvcrt

    def _host() -> str:
        return os.environ.get("COMPUTERNAME", "")

    BEYOND = 1 << 20  # a locked byte cannot be read by others, so none of the text is locked

    def _lock(file: TextIO) -> None:
        file.seek(BEYOND)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

    def _unlock(file: TextIO) -> None:
        file.seek(BEYOND)
        msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    def _host() -> str:
        return os.uname().nodename

    def _lock(file: TextIO) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)

    def _unlock(file: TextIO) -> None:
        fcntl.flock(file, fcntl.LOCK_UN)


@dataclass(frozen=True, slots=True)
class FolderLock:
    """The right to write in a folder, held until it is released or its program ends."""

    file: TextIO

    def release(self) -> None:
        """Another program may take the folder now."""
        with contextlib.suppress(OSError):
            self.file.truncate(0)
            _unlock(self.file)
        self.file.close()


def take(folder: Path, since: str) -> FolderLock:
    """The lock of the folder, with host, process and time noted for others to read.

    Raises Locked when another program has it, and StorageTrouble when no lock can be had there.
    """
    path = folder / NAME
    try:
        file = path.open("a+", encoding="utf-8")
    except OSError as error:
        raise writing(error, folder) from error
    try:
        _lock(file)
    except OSError as error:
        file.close()
        raise (Locked(_held(path)) if error.errno in TAKEN else writing(error, folder)) from error
    with contextlib.suppress(OSError):  # on a full disk the lock holds without a name
        file.truncate(0)
        os.write(file.fileno(), json.dumps(_holder(since)).encode())
    return FolderLock(file)


def _holder(since: str) -> dict[str, str | int]:
    return {"host": _host(), "pid": os.getpid(), "since": since}


def _held(path: Path) -> Say:
    holder: Any = None
    with contextlib.suppress(OSError, ValueError):
        holder = json.loads(path.read_text("utf-8"))
    if not isinstance(holder, dict) or not {"host", "pid", "since"} <= holder.keys():
        return say("The library in {folder} is open in another program. Close it there first.", folder=path.parent)
    return say(
        "The library in {folder} has been open on the computer {host} since {since} (process {pid})."
        " Close it there first, or choose another folder.",
        folder=path.parent,
        host=holder["host"],
        since=holder["since"],
        pid=holder["pid"],
    )
