"""Pictures and outlines: inside the profile's folder, there, and of a sensible size."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from inspector.profile.model import Profile
from inspector.profile.problem import Flaw, Where
from inspector.profile.walk import items
from inspector.texts import say

PICTURE_LIMIT = 20 * 1024 * 1024  # bytes


def files_in_folder(profile: Profile, folder: Path) -> Iterator[Flaw]:
    """A picture outside the folder or too large stops; one that is missing is only said."""
    for where, name in _named(profile):
        yield from _file(where, name, folder)


def picture_path(folder: Path, name: str) -> Path | None:
    """The file of that name inside the folder, or None when it would lie outside it.

    Absolute names, "..", backslashes and links that leave the folder all lie outside.
    """
    if "\\" in name or "\0" in name or ":" in name or Path(name).is_absolute():
        return None
    try:
        home = folder.resolve()
        path = (home / name).resolve()
    except (OSError, RuntimeError):
        return None
    return path if path.is_relative_to(home) and path != home else None


def _named(profile: Profile) -> Iterator[tuple[Where, str]]:
    for view, name in profile.outlines.items():
        yield ("outlines", view.value), name
    for where, item in items(profile):
        for n, form in enumerate(item.variants):
            if form.picture:
                yield (*where, "variant", n, "picture"), form.picture


def _file(where: Where, name: str, folder: Path) -> Iterator[Flaw]:
    path = picture_path(folder, name)
    if path is None:
        yield Flaw(
            where,
            say('the picture "{name}" lies outside the profile\'s folder.', name=name[:120]),
            say("put it in the folder and name it from there, with / between folders."),
        )
        return
    size = _size(path)
    if size is None:
        yield Flaw(
            where,
            say('the picture "{name}" is not there.', name=name[:120]),
            say("put the file there, or take the line out."),
            stops=False,
        )
    elif size > PICTURE_LIMIT:
        yield Flaw(
            where,
            say('the picture "{name}" has {size} bytes.', name=name[:120], size=size),
            say("make it smaller than {limit} bytes.", limit=PICTURE_LIMIT),
        )


def _size(path: Path) -> int | None:
    """Bytes of an ordinary file; None when there is none."""
    try:
        return path.stat().st_size if path.is_file() else None
    except OSError:
        return None
