"""The photographs of a record as they stand on a sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.photo.marks import burned
from inspector.sheet.blocks import Picture
from inspector.sheet.jpeg import Bare, bare
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.record.finding import Photograph
    from inspector.record.model import Record


def pictures_of(record: Record, store: Mapping[str, bytes]) -> dict[str, Picture]:
    """Every photograph of the record by its id, numbered in the order brought in."""
    return {p.id: _picture(number, p, store.get(p.id)) for number, p in enumerate(record.photographs, 1)}


def _picture(number: int, photograph: Photograph, data: bytes | None) -> Picture:
    caption = listed((tr("photograph {number}", number=number), photograph.caption, photograph.light), "; ")
    if data is None:
        missing = tr("photograph {number} is not in the store", number=number)
        return Picture(number, caption, missing=missing)
    shown = bare(burned(data, photograph.marks))
    if isinstance(shown, Bare):
        return Picture(number, caption, shown.data, shown.width, shown.height)
    return Picture(number, caption, missing=tr("photograph {number} is not shown: {why}", number=number, why=shown))
