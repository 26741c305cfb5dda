"""Sharing copies written into a folder: new files only, nothing that stands there is touched."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.photo.refusal import Cancelled, Refusal
from inspector.photo.sharing import sharing_copy
from inspector.storage.landing import discard, land, write_unfinished
from inspector.storage.photographs import Missing
from inspector.storage.trouble import StorageTrouble

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence
    from pathlib import Path

    from inspector.photo.marks import Marked
    from inspector.photo.masks import Cover
    from inspector.storage.photographs import Photographs
    from inspector.texts import Say

UNFIT = re.compile(r'[\x00-\x1f<>:"/\\|?*.]+')
LONGEST = 60


@dataclass(frozen=True, slots=True)
class ToShare:
    """A kept photograph, the words of its file name, what is covered and drawn, and the time to tell, if any."""

    sha256: str
    words: str
    covers: tuple[Cover, ...] = ()
    taken: str = ""
    marks: tuple[Marked, ...] = ()


@dataclass(frozen=True, slots=True)
class Shared:
    """The files that were written, and why others were not."""

    written: tuple[Path, ...]
    troubles: tuple[Say, ...]


def share(
    photographs: Photographs, wanted: Sequence[ToShare], folder: Path,
    report: Callable[[int, int, str], None] = lambda done, total, name: None,
) -> Shared:  # fmt: skip
    """A sharing copy of each stands in the folder under a new name; what was done when it was stopped stays.

    The kept originals are only read.
    """
    written: list[Path] = []
    troubles: list[Say] = []
    try:
        for n, one in enumerate(wanted):
            report(n, len(wanted), one.words)
            _share_one(photographs, one, folder, f"{n + 1:02d} {_fit(one.words)}", written, troubles)
        report(len(wanted), len(wanted), "")
    except Cancelled:
        pass
    return Shared(tuple(written), tuple(troubles))


def _share_one(
    photographs: Photographs, one: ToShare, folder: Path, stem: str, written: list[Path], troubles: list[Say]
) -> None:
    source = photographs.path(one.sha256)
    if isinstance(source, Missing):
        troubles.append(source.said)
        return
    made = sharing_copy(source, one.covers, marks=one.marks, taken=one.taken, name=one.words)
    if isinstance(made, Refusal):
        troubles.append(made.why)
        return
    try:
        written.append(_write(folder, stem, made))
    except StorageTrouble as trouble:
        troubles.append(trouble.said)


def _write(folder: Path, stem: str, data: bytes) -> Path:
    unfinished = write_unfinished(folder, [data])
    try:
        target = next(path for path in _names(folder, stem) if not path.exists())
    except BaseException:
        discard(unfinished)
        raise
    land(unfinished, target)
    return target


def _names(folder: Path, stem: str) -> Iterable[Path]:
    yield folder / f"{stem}.jpg"
    yield from (folder / f"{stem} {n}.jpg" for n in range(2, 100_000))


def _fit(words: str) -> str:
    """The words as a file name may hold them on every system."""
    return UNFIT.sub(" ", words).strip()[:LONGEST].strip() or "photograph"
