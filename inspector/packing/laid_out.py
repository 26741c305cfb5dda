"""Files of a bag written out, each under a path of this computer's own making."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.packing import layout
from inspector.packing.pack import readable_profile
from inspector.storage.bags.limits import MOST_PROFILE, MOST_PROFILE_FILES
from inspector.storage.bags.refusal import BagRefused, Broken
from inspector.storage.landing import land, make_folder, write_unfinished
from inspector.storage.trouble import StorageTrouble
from inspector.texts import say

if TYPE_CHECKING:
    from pathlib import Path

    from inspector.profile.model import Profile
    from inspector.storage.bags.archive import Archive


def write_out(archive: Archive, name: str, path: Path) -> None:
    """The file of the bag stands at that path of this computer's own making. Raises BagRefused where it is damaged."""
    try:
        land(write_unfinished(path.parent, archive.chunks(name)), path)
    except Broken as broken:
        raise BagRefused(broken.said) from broken


def profile_of(archive: Archive, folder: Path) -> Profile:
    """The profile of the bag, its files in that folder of this computer's own making. Raises BagRefused."""
    start = f"data/{layout.PROFILE}"
    names = sorted(n for n in archive.sizes if n.startswith(start))
    if len(names) > MOST_PROFILE_FILES or sum(archive.sizes[n] for n in names) > MOST_PROFILE:
        raise BagRefused(say("{path} cannot be taken in. Its profile is larger than one can be.", path=archive.path))
    for name in names:
        target = folder / name.removeprefix(start)
        make_folder(target.parent)
        write_out(archive, name, target)
    try:
        return readable_profile(folder)
    except StorageTrouble as trouble:
        raise BagRefused(say("{path} cannot be taken in. {why}", path=archive.path, why=trouble.said)) from trouble
