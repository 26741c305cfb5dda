"""The very profile that an inspection used, kept beside it for good."""

from __future__ import annotations

import hashlib
import os
import shutil
from typing import TYPE_CHECKING

from inspector.storage.landing import UNFINISHED, land, make_folder, write_unfinished
from inspector.storage.paths import PROFILES
from inspector.storage.trouble import reading

if TYPE_CHECKING:
    from pathlib import Path

FOLDER_MODE = 0o755
DEMO = "demo"  # an inspection that shows the profile off is no part of it


def keep(folder: Path, profile: Path) -> str:
    """The profile's files are in ``profiles/NAME`` of the library's folder; NAME, the SHA-256 of all of them.

    A profile kept before is not copied again, unless its files are no longer those. Raises StorageTrouble.
    """
    contents = _contents(profile)
    name = _digest(contents)
    home = folder / PROFILES
    if not (home / name).is_dir():
        make_folder(home)
        _land(home, name, contents)
    elif _digest(_contents(home / name)) != name:
        _mend(home / name, contents)
    return name


def _contents(profile: Path) -> dict[str, bytes]:
    """Each file below the profile's folder by its path; hidden ones and its demo are left out."""
    try:
        paths = sorted(p for p in profile.rglob("*") if p.is_file())
        inside = {p.relative_to(profile): p for p in paths}
        return {
            short.as_posix(): path.read_bytes()
            for short, path in inside.items()
            if short.parts[0] != DEMO and not any(part.startswith((".", "__")) for part in short.parts)
        }
    except OSError as error:
        raise reading(error, profile) from error


def _digest(contents: dict[str, bytes]) -> str:
    lines = (f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in contents.items())
    return hashlib.sha256("".join(lines).encode()).hexdigest()


def _mend(kept: Path, contents: dict[str, bytes]) -> None:
    """Each file is again as it was; what was put there besides is left alone."""
    for short, data in contents.items():
        target = kept / short
        if not target.is_file() or target.read_bytes() != data:
            make_folder(target.parent)
            land(write_unfinished(target.parent, [data]), target)


def _land(home: Path, name: str, contents: dict[str, bytes]) -> None:
    unfinished = home / f"{UNFINISHED}{os.urandom(8).hex()}"
    try:
        for short, data in contents.items():
            target = unfinished / short
            make_folder(target.parent)
            land(write_unfinished(target.parent, [data]), target)
        make_folder(unfinished)
        land(unfinished, home / name, FOLDER_MODE)
    finally:
        shutil.rmtree(unfinished, ignore_errors=True)
