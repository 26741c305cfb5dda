"""Packing as a command: what it answers as data and in lines."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from inspector.packing.pack import Packed, pack
from inspector.packing.share import Sharing, pack_to_share
from inspector.storage.landing import make_folder
from inspector.storage.trouble import StorageTrouble
from inspector.texts import Say, say, tr

if TYPE_CHECKING:
    from inspector.storage.library import Library


def packed(
    library: Library, record_id: str, target: Path, *, sharing: bool, names: bool
) -> tuple[dict[str, Any], tuple[Say, ...]]:  # fmt: skip
    """The bag stands at the target; what is to be said of it. Raises StorageTrouble."""
    if Path(record_id).suffix == ".json":
        raise StorageTrouble(
            say("A record file has no photographs and no history with it: give the id of a record in the library.")
        )
    if not names and not sharing:
        raise StorageTrouble(say("Only a copy made to be shared can be without names: add --sharing."))
    make_folder(target.parent)
    made = pack_to_share(library, record_id, target, Sharing(names=names)) if sharing else pack(
        library, record_id, target
    )  # fmt: skip
    told = {
        "written": str(made.path), "files": made.files, "bytes": made.size, "sha256": made.sha256,
        "left_out": [tr(line) for line in made.left_out],
    }  # fmt: skip
    return told, said(made)


def said(made: Packed) -> tuple[Say, ...]:
    """What is told of a bag that was written."""
    return (
        say("{path}", path=made.path),
        say("{files} files, {size} bytes. Sum of its lists (SHA-256): {sum}", files=made.files, size=made.size,
            sum=made.sha256),
        *made.left_out,
    )  # fmt: skip
