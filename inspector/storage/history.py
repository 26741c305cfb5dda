"""The edits of a record, oldest first, are its history; the record and both undo stacks follow from them."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inspector.record.edits import SINGLE, Put, Step, apply
from inspector.record.format import FORMAT
from inspector.record.refusing import EditRefused
from inspector.storage.formats import step_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.record.model import Record
    from inspector.storage.lines import Row

DO, UNDO, REDO = "do", "undo", "redo"


class StepPair(NamedTuple):
    """What was done, what takes it back, when and by whom."""

    step: Step
    inverse: Step
    at: str
    by: str


class Stacks(NamedTuple):
    """What can be undone and redone, the next one last."""

    undo: tuple[StepPair, ...]
    redo: tuple[StepPair, ...]


def merged(first: StepPair, then: StepPair) -> StepPair:
    """Both as one: the second's time and person, the first's old values."""
    step = _together(first.step, then.step)
    inverse = first.inverse if len(step.puts) == 1 else _chained(then.inverse, first.inverse)
    return StepPair(step, inverse, then.at, then.by)


def stacks(rows: Iterable[Row]) -> Stacks:
    """The stacks that these edits leave; a new edit clears what could be redone."""
    undo: list[list[Row]] = []
    redo: list[list[Row]] = []
    for row in rows:
        if row.format > FORMAT:  # written by a newer program: here nothing is undone
            return Stacks((), ())
        if row.kind == UNDO:
            redo.append(undo.pop())
        elif row.kind == REDO:
            undo.append(redo.pop())
        else:
            redo.clear()
            undo[-1].append(row) if row.joined else undo.append([row])
    return Stacks(tuple(map(_pair, undo)), tuple(map(_pair, redo)))


def replayed(record: Record, rows: Iterable[Row]) -> Record:
    """The record after these edits; from a newer format, without those this program cannot make.

    Raises ValueError (EditRefused is one) when an edit of a known format cannot be made.
    """
    for row in rows:
        try:
            record = apply(record, step_of(row.step, row.format)).record
        except (ValueError, EditRefused):
            if row.format <= FORMAT:
                raise
    return record


def _pair(group: Sequence[Row]) -> StepPair:
    first, *rest = (StepPair(step_of(r.step, r.format), step_of(r.inverse, r.format), r.at, r.who) for r in group)
    for pair in rest:
        first = merged(first, pair)
    return first


def _together(first: Step, then: Step) -> Step:
    """Both steps in turn; a value put twice at one place is put once, so that typing does not pile up."""
    if len(first.puts) == len(then.puts) == 1 and _same_place(first.puts[0], then.puts[0]):
        put = then.puts[0].model_copy(update={"index": first.puts[0].index})
        return then.model_copy(update={"puts": (put,)})
    return _chained(first, then)


def _same_place(first: Put, then: Put) -> bool:
    same = (first.part, first.key) == (then.part, then.key)
    stays = first.part in SINGLE or (first.value is not None and then.value is not None)
    return same and stays


def _chained(first: Step, then: Step) -> Step:
    return then.model_copy(update={"puts": (*first.puts, *then.puts)})
