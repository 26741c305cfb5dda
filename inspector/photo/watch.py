"""A folder that is looked at again and again: which of its files are new, and whole by now."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inspector.texts import Say, say

if TYPE_CHECKING:
    from pathlib import Path

ENDINGS = {".jpg", ".jpeg", ".jpe", ".jfif", ".png", ".webp", ".heic", ".heif", ".hif", ".tif", ".tiff"}
LOOKS = 2  # a file that is alike at so many looks is no longer being written


class Print(NamedTuple):
    """What tells whether a file is still the same: bytes and time of the last writing, in nanoseconds."""

    size: int
    written: int


class Watch:
    """What a folder held at the last look; files are only looked at, never opened, moved or deleted."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._seen: dict[str, tuple[Print, int]] = {}
        self._given: dict[str, Print] = {}

    @property
    def waiting(self) -> bool:
        """Whether a file was there at the last look that may not be whole yet."""
        return any(self._given.get(name) != found for name, (found, _) in self._seen.items())

    def look(self, found: dict[str, Print]) -> tuple[Path, ...]:
        """The files, by name, that were alike at this look and the one before and were not given yet."""
        ready = []
        for name, now in sorted(found.items()):
            before, times = self._seen.get(name, (None, 0))
            times = times + 1 if before == now else 1
            self._seen[name] = (now, times)
            if times >= LOOKS and now.size and self._given.get(name) != now:
                self._given[name] = now
                ready.append(self.folder / name)
        for name in self._seen.keys() - found.keys():
            del self._seen[name]
        return tuple(ready)


def listed(folder: Path) -> dict[str, Print] | Say:
    """The pictures that stand in the folder now, by their endings, or why it cannot be looked into."""
    found: dict[str, Print] = {}
    try:
        for path in folder.iterdir():
            if path.suffix.lower() in ENDINGS and not path.name.startswith("."):
                _note(found, path)
    except OSError:
        return say("{folder} cannot be looked into. Check that its card or drive is connected.", folder=folder)
    return found


def _note(found: dict[str, Print], path: Path) -> None:
    try:
        state = path.stat()
    except OSError:  # gone between being listed and being looked at
        return
    found[path.name] = Print(state.st_size, state.st_mtime_ns)
