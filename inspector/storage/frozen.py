"""What was frozen: sealed sheets and the records they were made from, kept whole under their SHA-256."""

from __future__ import annotations

import hashlib
import re
from typing import TYPE_CHECKING

from inspector.storage.landing import READ_ONLY, discard, land, make_folder, write_unfinished
from inspector.storage.trouble import Damaged, StorageTrouble, reading
from inspector.texts import say

if TYPE_CHECKING:
    from pathlib import Path

FOLDER = "versions"
NAME = re.compile(r"[0-9a-f]{64}")


class Frozen:
    """The frozen files of one library; nothing in it ever changes under its name."""

    def __init__(self, folder: Path) -> None:
        """The folder is made with the first file."""
        self.folder = folder

    def keep(self, data: bytes) -> str:
        """The bytes are safe on the disk under their SHA-256, which is given back. Raises StorageTrouble."""
        sha256 = hashlib.sha256(data).hexdigest()
        if not self._is_whole(sha256):
            make_folder(self.folder)
            land(write_unfinished(self.folder, [data]), self.folder / sha256, READ_ONLY)
        return sha256

    def read(self, sha256: str) -> bytes:
        """The bytes kept under this SHA-256. Raises StorageTrouble where they are not there, Damaged where changed."""
        path = self.folder / sha256
        try:
            data = path.read_bytes() if NAME.fullmatch(sha256) else None
        except FileNotFoundError:
            data = None
        except OSError as error:
            raise reading(error, path) from error
        if data is None:
            raise StorageTrouble(
                say("What was frozen as {sha} is not in {folder}. Put it back from a copy.", sha=sha256[:12],
                    folder=self.folder)
            )  # fmt: skip
        if hashlib.sha256(data).hexdigest() != sha256:
            raise Damaged(say("{path} is not as it was frozen. Put it back from a copy.", path=path))
        return data

    def forget(self, sha256: str) -> bool:
        """Whether nothing is kept under this SHA-256 any more."""
        if NAME.fullmatch(sha256):
            discard(self.folder / sha256)
        return not (self.folder / sha256).exists()

    def _is_whole(self, sha256: str) -> bool:
        try:
            self.read(sha256)
        except StorageTrouble:
            return False
        return True
