"""Where each thing stands below ``data/`` in a bag, and how the history is written there."""

from __future__ import annotations

import json
import re
from io import BytesIO
from typing import TYPE_CHECKING, Any

from inspector.storage.bags.limits import MOST_VALUES
from inspector.storage.bags.names import fit
from inspector.storage.lines import Row
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.storage.whole import Whole

FORMAT = 1  # of this layout
WHOLE, SHARING = "whole", "sharing"
ABOUT, RECORD = "about.json", "record.json"
BEGUN, EDITS, HISTORY_TEXT = "history/begun.json", "history/edits.jsonl", "history/history.txt"
SUMMARY_HTML, SUMMARY_TEXT, LEFT_OUT = "summary.html", "summary.txt", "left-out.txt"
PROFILE, PHOTOGRAPHS, VERSIONS = "profile/", "photographs/", "versions/"
KEPT_NAME = re.compile(r"(?:photographs|versions)/([0-9a-f]{64})(?:[-.].*)?")
SOFTWARE = "inspector"


def base_of(record_id: str) -> str:
    """The name of the bag's own folder."""
    return f"inspection-{fit(record_id) or 'record'}"


def photograph_name(photograph: Photograph) -> str:
    """The path of an original: its SHA-256, and the name that it came with."""
    name = fit(photograph.name)
    return f"{PHOTOGRAPHS}{photograph.sha256}" + (f"-{name}" if name else "")


def written(value: Any) -> bytes:
    """The JSON of it, to be read by people too; equal values give equal bytes."""
    return (json.dumps(value, ensure_ascii=False, indent=1) + "\n").encode()


def about(record: Record, kind: str, kept: Whole) -> bytes:
    """What sort of bag it is, of which record, and how that was last changed."""
    told = {"format": FORMAT, "kind": kind, "record": record.id, "updated": kept.updated, "begun_format": kept.format}
    return written(told)


def edits_written(kept: Whole) -> bytes:
    """One line an edit, oldest first."""
    return b"".join(_edit(row) for row in kept.edits)


def _edit(row: Row) -> bytes:
    told = {
        "kind": row.kind, "joined": row.joined, "at": row.at, "who": row.who, "format": row.format,
        "step": json.loads(row.step), "inverse": json.loads(row.inverse),
    }  # fmt: skip
    return (json.dumps(told, ensure_ascii=False, separators=(",", ":")) + "\n").encode()


def read_json(data: bytes) -> Any:
    """The data of a text from elsewhere. Raises ValueError for none, and for more values than a record can hold."""
    if sum(data.count(sign) for sign in (b",", b"[", b"{")) > MOST_VALUES:
        raise ValueError("it holds more values than a record can")
    return json.loads(data)


def edits_read(data: bytes) -> Iterator[Row]:
    """The edits of such lines. Raises ValueError (and RecursionError) for a line that is none."""
    for number, line in enumerate(BytesIO(data), 1):
        told = read_json(line)
        if not isinstance(told, dict) or told.keys() != {"kind", "joined", "at", "who", "format", "step", "inverse"}:
            raise ValueError(f"line {number} is no edit")
        if told["kind"] not in {"do", "undo", "redo"} or not isinstance(told["format"], int):
            raise ValueError(f"line {number} is no edit")
        step, inverse = (json.dumps(told[key], ensure_ascii=False, separators=(",", ":")) for key in
                         ("step", "inverse"))  # fmt: skip
        at, who = str(told["at"])[:40], str(told["who"])[:120]
        yield Row(number, told["kind"], bool(told["joined"]), at, who, told["format"], step, inverse)


def history_told(record: Record, kept: Whole) -> bytes:
    """Every change in a line for people: when, who, what."""
    words = {"do": "", "undo": tr("taken back: "), "redo": tr("done again: ")}
    lines = [
        f"{row.at}  {record.name_of(row.who)}  {words[row.kind]}{json.loads(row.step).get('label', '')}"
        for row in kept.edits
    ]
    return ("\n".join((f"{record.created}  {tr('begun')}", *lines)) + "\n").encode("utf-8", "replace")
