"""Thumbnails on the disk: made when first asked for, the longest unused ones dropped."""

from __future__ import annotations

import contextlib
import os
from threading import Lock
from typing import TYPE_CHECKING

from inspector.storage.landing import discard, sweep
from inspector.storage.photographs import Missing, Photographs, keep_jpeg, whole_jpeg

if TYPE_CHECKING:
    from pathlib import Path

MOST_BYTES = 200_000_000
LEFT_AFTER_DROPPING = 0.9  # so that the folder is not looked through for each new one
LOCKS = 64


class Thumbs:
    """Thumbnails of kept photographs, below ``most`` bytes in all; several threads may ask."""

    def __init__(self, cache: Path, photographs: Photographs, most: int = MOST_BYTES) -> None:
        self._cache, self._photographs, self._most = cache, photographs, most
        self._making = tuple(Lock() for _ in range(LOCKS))
        self._counting = Lock()
        self._bytes: int | None = None
        sweep(cache)

    def get(self, sha256: str, px: int | None = None) -> bytes | None:
        """An upright JPEG of at most ``px`` a side; None if its original is lost or unreadable."""
        px = px or _thumbnail_px()
        if isinstance(self._photographs.path(sha256), Missing):
            return None
        path = self._cache / f"{sha256}-{px}.jpg"
        if found := _used(path):
            return found
        with self._making[int(sha256[:8], 16) % LOCKS]:
            return _used(path) or self._made(path, sha256, px)

    def put(self, sha256: str, made: bytes) -> None:
        """The thumbnail, made elsewhere of this photograph, is kept."""
        if keep_jpeg(self._cache / f"{sha256}-{_thumbnail_px()}.jpg", made):
            self._count(len(made))

    def forget(self, sha256: str) -> None:
        """No thumbnail of this photograph is kept."""
        for path in list(self._cache.glob(f"{sha256}-*.jpg")):
            discard(path)

    def _made(self, path: Path, sha256: str, px: int) -> bytes | None:
        from inspector.photo.copies import thumbnail  # what opens pictures is loaded with the first of them

        data = self._source(sha256, px)
        made = thumbnail(data, px) if isinstance(data, bytes) else None
        if not isinstance(made, bytes):
            return None
        if keep_jpeg(path, made):
            self._count(len(made))
        return made

    def _source(self, sha256: str, px: int) -> bytes | None:
        """The bytes to make it from: the print copy where it is large enough, being far quicker."""
        from inspector.photo.copies import PRINT_PX

        if px <= PRINT_PX:
            copy = self._photographs.copy(sha256)
            return copy if isinstance(copy, bytes) else None
        path = self._photographs.path(sha256)
        with contextlib.suppress(OSError):
            return None if isinstance(path, Missing) else path.read_bytes()
        return None

    def _count(self, size: int) -> None:
        with self._counting:
            if self._bytes is None:
                self._bytes = sum(found[1] for found in self._found())
            else:
                self._bytes += size
            if self._bytes > self._most:
                self._bytes = self._drop(int(self._most * LEFT_AFTER_DROPPING))

    def _drop(self, most: int) -> int:
        """The bytes left once the longest unused ones are gone, at most ``most``."""
        found = sorted(self._found())
        left = sum(size for _, size, _ in found)
        for _, size, path in found:
            if left <= most:
                break
            discard(path)
            left -= size
        return left

    def _found(self) -> list[tuple[int, int, Path]]:
        """When each was last used, its bytes and its path."""
        found = []
        for path in self._cache.glob("*.jpg"):
            with contextlib.suppress(OSError):  # another process may have dropped it
                state = path.stat()
                found.append((state.st_mtime_ns, state.st_size, path))
        return found


def _thumbnail_px() -> int:
    from inspector.photo.copies import THUMBNAIL_PX

    return THUMBNAIL_PX


def _used(path: Path) -> bytes | None:
    """The thumbnail there, marked as used now; or None."""
    found = whole_jpeg(path)
    if found:
        with contextlib.suppress(OSError):
            os.utime(path)
    return found
