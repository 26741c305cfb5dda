"""Records and steps as text, and how those of an older format are read.

A record of format n is brought to the next by ``MIGRATIONS[n]``, one function for the record and one for
a step, so that what was written years ago is replayed as it was meant.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from inspector.record.format import FORMAT

if TYPE_CHECKING:
    from collections.abc import Callable

    from inspector.record.base import Piece
    from inspector.record.edits import Step
    from inspector.record.model import Record

    Body = dict[str, Any]
    Change = Callable[[Body], Body]

P = TypeVar("P", bound="Piece")


class Migration(NamedTuple):
    """From one format to the next: a record's body, and a step's."""

    record: Change
    step: Change


MIGRATIONS: dict[int, Migration] = {}


def text_of(piece: Piece) -> str:
    """The piece as JSON text; read back it is equal."""
    return piece.model_dump_json()


def record_of(text: str, written: int, migrations: dict[int, Migration] | None = None) -> Record:
    """The record of a text in the format ``written``.

    A newer format loses what this program does not know. Raises ValueError when it is no record.
    """
    from inspector.record.model import Record

    known = MIGRATIONS if migrations is None else migrations
    body: Body = json.loads(text)
    for number in range(written, FORMAT):
        body = known[number].record(body)
    body["format"] = FORMAT
    return _read(Record, body, newer=written > FORMAT)


def step_of(text: str, written: int, migrations: dict[int, Migration] | None = None) -> Step:
    """The step of a text in the format ``written``. Raises ValueError when it is no step."""
    from inspector.record.edits import Step

    if written == FORMAT:
        return Step.model_validate_json(text)
    known = MIGRATIONS if migrations is None else migrations
    body: Body = json.loads(text)
    for number in range(written, FORMAT):
        body = known[number].step(body)
    return _read(Step, body, newer=written > FORMAT)


def _read(kind: type[P], body: Body, *, newer: bool) -> P:
    from pydantic import ValidationError

    try:
        return kind.model_validate_json(json.dumps(body))
    except ValidationError as trouble:
        unknown = [e["loc"] for e in trouble.errors() if e["type"] == "extra_forbidden"]
        if not newer or not unknown:
            raise
    for place in unknown:
        _drop(body, place)
    return _read(kind, body, newer=newer)


def _drop(body: Any, place: tuple[int | str, ...]) -> None:
    for part in place[:-1]:
        body = body[part]
    del body[place[-1]]
