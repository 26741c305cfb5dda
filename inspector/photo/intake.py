"""Taking many photographs in, one after another: a bad one never stops the others."""

from __future__ import annotations

from collections import deque
from concurrent.futures import ThreadPoolExecutor
from contextlib import nullcontext, suppress
from dataclasses import dataclass
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Protocol

from inspector.photo.copies import PRINT_PX, copy_of
from inspector.photo.probe import UNNAMED, Picture, probe
from inspector.photo.read import read
from inspector.photo.refusal import Cancelled, NotKept, Refusal

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from concurrent.futures import Future
    from datetime import datetime

    from inspector.texts import Say

Source = Path | tuple[str, bytes]
LARGE, LARGE_PIXELS = Lock(), 30_000_000


class Receipt(Protocol):
    """What a keeper gives back for bytes that it has kept."""

    @property
    def sha256(self) -> str:
        """The SHA-256 of the bytes, as 64 small hexadecimal figures."""

    @property
    def already(self) -> bool:
        """Whether the same bytes had been kept before."""


class Keeper(Protocol):
    """Keeps the untouched bytes of a photograph, and its print copy beside them."""

    def keep(self, source: bytes, copy: bytes | None = None) -> Receipt:
        """The bytes are kept for good, or NotKept is raised."""


@dataclass(frozen=True, slots=True)
class Taken:
    """A photograph whose original bytes are kept; width and height in pixels, upright.

    ``taken_at`` is the camera's own local time and ``offset`` its zone ("+01:00" or "").
    """

    sha256: str
    name: str
    media: str
    width: int
    height: int
    taken_at: datetime | None
    offset: str
    camera: str
    has_place: bool
    size: int
    already: bool
    notes: tuple[Say, ...] = ()

    @property
    def moment(self) -> str:
        """When the camera says it was taken, as ISO 8601 with the zone it wrote; empty where it wrote none."""
        return self.taken_at.isoformat() + self.offset if self.taken_at else ""


def intake(
    sources: Sequence[Source],
    photographs: Keeper,
    report: Callable[[int, int, str], None] = lambda done, total, name: None,
) -> list[Taken | Refusal]:
    """One result for each source, in order; those reached before ``report`` raised Cancelled.

    ``report(done, total, name)`` is called before each source and once when all are done.
    """
    return list(arriving(sources, photographs, report))


def arriving(
    sources: Sequence[Source],
    photographs: Keeper,
    report: Callable[[int, int, str], None] = lambda done, total, name: None,
    *,
    px: int = PRINT_PX,
    threads: int = 1,
) -> Iterator[Taken | Refusal]:
    """As `intake`, each result as soon as it is there, in order; ``px`` is the longer side of the copies.

    Up to ``threads`` sources are worked on at once, by the computer's cores.
    """
    waiting: deque[Future[Taken | Refusal]] = deque()
    ahead = 1 if threads < 2 else 2 * threads
    with ThreadPoolExecutor(max(threads, 1), "intake") as workers:
        try:
            for done, source in enumerate(sources):
                report(done, len(sources), name_of(source))
                waiting.append(workers.submit(take, source, photographs, px))
                if len(waiting) >= ahead:
                    yield waiting.popleft().result()
        except Cancelled:  # what was begun is whole, or its file would be kept without a word
            yield from (begun.result() for begun in waiting)
            return
        yield from (begun.result() for begun in waiting)
    with suppress(Cancelled):
        report(len(sources), len(sources), "")


def take(source: Source, photographs: Keeper, px: int = PRINT_PX) -> Taken | Refusal:
    """The one photograph, kept, or why it is not; its file is read once, so what was looked at
    and what is kept are the same bytes.
    """
    data = read(source) if isinstance(source, Path) else source[1]
    if isinstance(data, Refusal):
        return data
    picture = probe(data, name_of(source))
    if isinstance(picture, Refusal):
        return picture
    # Two very large pictures at once could need more memory than there is.
    with LARGE if picture.width * picture.height > LARGE_PIXELS else nullcontext():
        copy = copy_of(picture, data, px)
    if isinstance(copy, Refusal):
        return copy
    try:
        return _taken(picture, photographs.keep(data, copy))
    except NotKept as error:
        return Refusal(picture.name, error.said)


def name_of(source: Source) -> str:
    """The name by which the person knows this source."""
    named = (source.name or str(source)) if isinstance(source, Path) else source[0]
    return named or UNNAMED


def _taken(picture: Picture, receipt: Receipt) -> Taken:
    width, height = picture.upright
    camera = picture.camera
    return Taken(
        sha256=receipt.sha256,
        name=picture.name,
        media=picture.kind.media,
        width=width,
        height=height,
        taken_at=camera.taken_at,
        offset=camera.offset,
        camera=camera.words,
        has_place=camera.has_place,
        size=picture.size,
        already=receipt.already,
        notes=picture.notes,
    )
