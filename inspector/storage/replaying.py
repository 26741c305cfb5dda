"""A record put together again from what is kept: its newest snapshot that can be read, and every edit since."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING, NamedTuple

from inspector.storage import history
from inspector.storage.formats import record_of
from inspector.storage.rows import UNREADABLE

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from inspector.record.model import Record
    from inspector.storage.lines import Row

    Snapshots = Callable[[int], tuple[int, int, str] | None]

log = logging.getLogger(__name__)


class Replayed(NamedTuple):
    """The record, the number of the last edit in it, and how many edits no snapshot holds."""

    record: Record
    seq: int
    later: int


def replayed(edits: Sequence[Row], snapshot_before: Snapshots) -> Replayed | None:
    """The record after all these edits; None where no snapshot leads to one.

    ``snapshot_before`` gives number, format and body of the newest snapshot below a number, or None.
    """
    last = edits[-1].seq if edits else 0
    below = last + 1
    while snapshot := snapshot_before(below):
        below, written, body = snapshot
        later = [row for row in edits if row.seq > below]
        try:
            return Replayed(history.replayed(record_of(body, written), later), last, len(later))
        except UNREADABLE:
            log.exception("the snapshot %s cannot be read", below)
    return None


def stacks(edits: Sequence[Row]) -> history.Stacks:
    """What can be undone and redone; nothing where an edit cannot be read, which takes nothing from the record."""
    try:
        return history.stacks(edits)
    except UNREADABLE:
        log.exception("the history cannot be read")
        return history.Stacks((), ())
