"""Keeping many photographs quickly: the original for good and a thumbnail at once, the print copy later."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.storage.photographs import Kept, Photographs
    from inspector.storage.thumbs import Thumbs


class Taking:
    """A keeper whose copies are thumbnails; several threads may use it at once."""

    def __init__(self, photographs: Photographs, thumbs: Thumbs) -> None:
        self._photographs, self._thumbs = photographs, thumbs

    def keep(self, source: bytes, copy: bytes | None = None) -> Kept:
        """The bytes are safe on the disk, and the thumbnail is in the cache. Raises StorageTrouble."""
        kept = self._photographs.keep(source)
        if copy is not None:
            self._thumbs.put(kept.sha256, copy)
        return kept
