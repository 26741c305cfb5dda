"""What can go wrong where things are kept: one class a kind, one clear sentence each."""

from __future__ import annotations

import errno
from typing import TYPE_CHECKING

from inspector.photo.refusal import NotKept
from inspector.texts import Say, say

if TYPE_CHECKING:
    from pathlib import Path

FULL = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}
FORBIDDEN = {errno.EROFS, errno.EACCES, errno.EPERM}
BUSY = {errno.EBUSY, getattr(errno, "ETXTBSY", errno.EBUSY), errno.EAGAIN}
BUSY_ON_WINDOWS = {32, 33}  # sharing violation, lock violation


class StorageTrouble(NotKept):
    """Something could not be kept or read back; ``said`` tells what, where and how to mend it."""


class DiskFull(StorageTrouble):
    """There is no room left where things are kept; nothing kept before is lost."""


class ReadOnly(StorageTrouble):
    """The place where things are kept may be read but not written."""


class Locked(StorageTrouble):
    """Another program holds what was to be written."""


class Damaged(StorageTrouble):
    """What is kept cannot be read as it was written."""


class NewerFormat(StorageTrouble):
    """What is kept was written by a newer version of the program."""


def writing(error: OSError, where: Path) -> StorageTrouble:
    """The trouble of this error from writing to ``where``, of the class that fits it."""
    kind, said = _kind(error, where)
    return kind(said)


def reading(error: OSError, what: Path) -> StorageTrouble:
    """The trouble of this error from reading ``what``: Damaged where the disk itself fails."""
    kind = Damaged if error.errno == errno.EIO else StorageTrouble
    return kind(
        say(
            "{what} cannot be read ({reason}). Check that its drive is connected, then try again.",
            what=what,
            reason=reason(error),
        )
    )


def reason(error: OSError) -> str:
    """The system's own words for this error, without number and path."""
    return error.strerror or type(error).__name__


def _kind(error: OSError, where: Path) -> tuple[type[StorageTrouble], Say]:
    if error.errno in FULL:
        return DiskFull, say(
            "There is no room left on the disk of {where}. Free some space and try again: nothing kept before is lost.",
            where=where,
        )
    if error.errno in BUSY or getattr(error, "winerror", None) in BUSY_ON_WINDOWS:
        return Locked, say("Another program is using {where}. Close it there and try again.", where=where)
    if error.errno in FORBIDDEN:
        return ReadOnly, say(
            "{where} cannot be written. Allow writing there, or choose another folder.",
            where=where,
        )
    return StorageTrouble, say(
        "{where} cannot be written ({reason}). Check that its drive is connected, then try again.",
        where=where,
        reason=reason(error),
    )
