"""What a row of the tables holds, apart from the records: read without knowing what an edit means."""

from __future__ import annotations

from typing import NamedTuple


class HistoryLine(NamedTuple):
    """One change as a list of changes shows it; ``kind`` is do, undo or redo."""

    seq: int
    at: str
    by: str
    kind: str
    label: str


class Row(NamedTuple):
    """One edit as it is kept; ``joined`` makes one thing to undo of it and the edit before."""

    seq: int
    kind: str
    joined: bool
    at: str
    who: str
    format: int
    step: str
    inverse: str
