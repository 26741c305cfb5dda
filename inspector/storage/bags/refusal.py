"""A bag that is not opened at all, and a file in it that cannot be read as it was packed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.storage.trouble import StorageTrouble

if TYPE_CHECKING:
    from inspector.texts import Say


class BagRefused(StorageTrouble):
    """The file is not opened as a bag; nothing of it was written anywhere."""


class Broken(Exception):
    """One file of a bag cannot be read as it was packed; ``said`` names it."""

    def __init__(self, name: str, said: Say) -> None:
        super().__init__(str(said))
        self.name, self.said = name, said
