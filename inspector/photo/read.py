"""The bytes of a chosen file, or why there are none."""

from __future__ import annotations

import stat
from typing import TYPE_CHECKING

from inspector.photo.refusal import Refusal
from inspector.texts import Say, say

if TYPE_CHECKING:
    from pathlib import Path

MOST_BYTES = 80_000_000


def read(path: Path) -> bytes | Refusal:
    """All bytes of the file, or the reason why it is not read; no file above 80 MB is read."""
    name = path.name or str(path)
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            return Refusal(name, _no_file(name, found.st_mode))
        if refusal := too_large(name, found.st_size):
            return refusal
        with path.open("rb") as file:
            return file.read(found.st_size)
    except MemoryError:
        return no_memory(name)
    except (OSError, ValueError) as error:  # ValueError: a name that no file can have
        return Refusal(name, _unread(name, error))


def too_large(name: str, size: int) -> Refusal | None:
    """The refusal of more bytes than are taken in one file, or None."""
    if size <= MOST_BYTES:
        return None
    return Refusal(
        name,
        say(
            "{name} is larger than {most} MB. Save a smaller copy as a JPEG, and choose that.",
            name=name,
            most=MOST_BYTES // 1_000_000,
        ),
    )


def no_memory(name: str) -> Refusal:
    """The refusal of a picture that this computer has no memory for."""
    return Refusal(
        name,
        say(
            "{name} needs more memory than this computer has free. Close other programs, or save"
            " a smaller copy as a JPEG, and choose that.",
            name=name,
        ),
    )


def _no_file(name: str, mode: int) -> Say:
    if stat.S_ISDIR(mode):
        return say("{name} is a folder. Open it, and choose the photographs inside.", name=name)
    return say("{name} is not a file. Choose a photograph.", name=name)


def _unread(name: str, error: OSError | ValueError) -> Say:
    if isinstance(error, FileNotFoundError | ValueError):
        return say(
            "{name} is not there any more. Check that its card or drive is connected, and choose it again.",
            name=name,
        )
    if isinstance(error, PermissionError):
        return say(
            "{name} may not be read by you. Allow reading it, or copy it into a folder of yours.",
            name=name,
        )
    return say(
        "{name} cannot be read ({reason}). Check its card or drive, and choose it again.",
        name=name,
        reason=error.strerror or type(error).__name__,
    )
