"""A print copy as it stands on a sheet, under its words."""

from __future__ import annotations

from inspector.sheet.jpeg import Bare, bare
from inspector.sheet.pieces import Picture
from inspector.texts import tr


def print_of(number: int, caption: str, name: str, data: bytes | None) -> Picture:
    """The JPEG without metadata under its caption; where there is none, or it cannot be shown, the words say so.

    ``name`` is what those words call it.
    """
    if data is None:
        return Picture(number, caption, missing=tr("{name} is not in the store", name=name))
    made = bare(data)
    if isinstance(made, Bare):
        return Picture(number, caption, made.data, made.width, made.height)
    return Picture(number, caption, missing=tr("{name} is not shown: {why}", name=name, why=made))
