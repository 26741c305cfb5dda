"""What a checked bag holds, read with distrust: its record, its history, and that the one follows from the other."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any

from inspector.packing import layout
from inspector.record.edits import LISTED, apply
from inspector.record.format import FORMAT
from inspector.storage import history
from inspector.storage.bags.limits import MOST_HISTORY, MOST_RECORD, MOST_WORK
from inspector.storage.bags.refusal import BagRefused, Broken
from inspector.storage.formats import record_of, step_of
from inspector.storage.whole import Whole
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.record.model import Record
    from inspector.storage.bags.archive import Archive
    from inspector.storage.bags.checking import Report
    from inspector.storage.lines import Row

LONGEST_MOMENT = 40
OFTEN = 200  # edits after which it is told how far it is


@dataclass(frozen=True, slots=True)
class Inside:
    """The record of a bag, all that led to it, and whether the bag was made to be shared."""

    record: Record
    kept: Whole
    sharing: bool


def inside(archive: Archive, report: Report = lambda done, total, name: None) -> Inside:
    """What is in the bag. Raises BagRefused in one sentence where it is no bag of an inspection, or does not fit.

    ``report`` hears of the edits that were followed, and may raise to stop.
    """
    try:
        return _inside(archive, report)
    except Broken as broken:
        raise _no(archive, broken.said) from broken
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError, RecursionError) as error:
        first = str(error).splitlines()[0][:200] if str(error) else type(error).__name__
        raise _no(archive, say("What is in it cannot be read: {why}.", why=first)) from error


def _no(archive: Archive, why: Say) -> BagRefused:
    return BagRefused(say("{path} cannot be taken in. {why}", path=archive.path, why=why))


def _inside(archive: Archive, report: Report) -> Inside:
    if f"data/{layout.ABOUT}" not in archive.sizes:
        raise Broken(layout.ABOUT, say("It is a bag, but not of an inspection."))
    about = _json(archive, layout.ABOUT)
    written = int(about["format"]), int(about["begun_format"]), int(_json(archive, layout.RECORD)["format"])
    if written[0] > layout.FORMAT or max(written[1:]) > FORMAT:
        raise Broken(layout.ABOUT, say("A newer version of this program made it. Install that one to take it in."))
    record = record_of(_text(archive, layout.RECORD), written[2])
    updated = str(about["updated"])[:LONGEST_MOMENT]
    datetime.fromisoformat(updated)
    if about["kind"] == layout.SHARING:
        return Inside(record, Whole(FORMAT, record.model_dump_json(), (), updated), sharing=True)
    edits = tuple(layout.edits_read(archive.read(f"data/{layout.EDITS}", MOST_HISTORY)))
    if any(row.format > FORMAT for row in edits):
        raise Broken(layout.ABOUT, say("A newer version of this program made it. Install that one to take it in."))
    kept = Whole(written[1], _text(archive, layout.BEGUN), edits, updated)
    _must_follow(record, kept, report)
    return Inside(record, kept, sharing=False)


def _must_follow(record: Record, kept: Whole, report: Report) -> None:
    begun = record_of(kept.begun, kept.format)
    if begun.id != record.id or _followed(begun, kept.edits, report) != record:
        raise Broken(layout.RECORD, say("Its history does not lead to its record."))
    history.stacks(kept.edits)  # what can be undone must follow from it too


def _followed(record: Record, edits: tuple[Row, ...], report: Report) -> Record:
    """The record after these edits, as long as following them takes no longer than an inspection can need."""
    work = 0
    for n, row in enumerate(edits):
        if not n % OFTEN:
            report(n, len(edits), layout.EDITS)
        step = step_of(row.step, row.format)
        work += len(step.puts) * max(len(getattr(record, part.value)) for part in LISTED)
        if work > MOST_WORK:
            raise Broken(layout.EDITS, say("Its history is longer than that of an inspection can be."))
        record = apply(record, step).record
    return record


def _text(archive: Archive, name: str) -> str:
    _json(archive, name)
    return archive.read(f"data/{name}", MOST_RECORD).decode()


def _json(archive: Archive, name: str) -> dict[str, Any]:
    told = layout.read_json(archive.read(f"data/{name}", MOST_RECORD))
    if not isinstance(told, dict):
        raise TypeError(f"{name} is not an object")
    return told
