"""The photographs of a record as they stand on a sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.photo.marks import burned
from inspector.sheet.prints import print_of
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.sheet.pieces import Picture


def pictures_of(record: Record, store: Mapping[str, bytes]) -> dict[str, Picture]:
    """Every photograph of the record by its id, numbered in the order brought in."""
    return {p.id: _picture(number, p, store.get(p.id)) for number, p in enumerate(record.photographs, 1)}


def _picture(number: int, photograph: Photograph, data: bytes | None) -> Picture:
    name = tr("photograph {number}", number=number)
    caption = listed((name, photograph.caption, photograph.light), "; ")
    shown = None if data is None else burned(data, photograph.marks)
    return print_of(number, caption, name, shown)
