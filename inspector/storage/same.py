"""The same number in other records: found in the lines of the list, so that no record is read for it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from inspector.storage import rows
from inspector.texts import Say, say

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Collection, Iterable, Iterator

SHORTEST = 4  # figures; shorter numbers come again by chance
AGREED = 3  # figures that both read and that agree, where others are open
_SIGN = re.compile(r"\[([^]]+)]|(.)", re.DOTALL)
_APART = re.compile(r"[\s./-]+")
_LAST_RUN = re.compile(r"\d+(?=\D*$)")


@dataclass(frozen=True, slots=True)
class SameNumber:
    """A number of another record that is the same, or may be: record, its title, place there, number as typed.

    ``sure`` when every figure of both was read clearly and all agree; ``own_place`` is the place in this record.
    """

    record_id: str
    title: str
    place: str
    number: str
    sure: bool
    own_place: str

    @property
    def sentence(self) -> Say:
        """The notice; which machine bears the number by right it does not say."""
        values = {"number": self.number, "title": self.title, "id": self.record_id}
        if self.sure:
            return say("The same number, {number}, stands in another record: {title} ({id}).", **values)
        return say("A number in another record may be the same, {number}: {title} ({id}).", **values)


@dataclass(frozen=True)
class _Number:
    place: str
    typed: str

    @cached_property
    def key(self) -> str:
        """Capitals and figures alone, as typed."""
        return _APART.sub("", self.typed).upper()

    @cached_property
    def clear(self) -> bool:
        return "?" not in self.typed and "[" not in self.typed

    @cached_property
    def signs(self) -> tuple[str | None, ...]:
        """What each figure can be, None for unreadable."""
        if self.clear:
            return tuple(self.key)
        return tuple(None if one == "?" else several or one for several, one in _SIGN.findall(self.key))

    @cached_property
    def serial(self) -> str:
        """The last run of figures, where all is clear."""
        found = _LAST_RUN.search(self.key) if self.clear else None
        return found.group() if found else ""

    @cached_property
    def counts(self) -> bool:
        """Whether it is long enough to mean something."""
        return len(self.signs) >= SHORTEST and any(c.isdigit() for c in self.key)


def same_numbers(
    db: sqlite3.Connection, record_id: str, places: Collection[str] | None = None
) -> tuple[SameNumber, ...]:
    """The numbers of other records in the list that are, or may be, one of this record's: sure ones first.

    ``places`` keeps it to these places of this record.
    """
    lines = rows.number_lines(db, record_id)
    own = [n for line in lines if line.id == record_id for n in _numbers(db, line) if n.counts]
    own = [n for n in own if places is None or n.place in places]
    others = [line for line in lines if line.id != record_id and own and _worth_reading(line, own)]
    found = [same for line in others for number in _numbers(db, line) for same in _of(line, number, own)]
    return tuple(sorted(dict.fromkeys(found), key=lambda same: not same.sure))


def readings_of(db: sqlite3.Connection, record_id: str) -> rows.Readings:
    """Places and numbers as typed of the record as it was left; none where it cannot be read."""
    from inspector.record.summary import summary
    from inspector.storage.replaying import replayed

    edits = rows.edits(db, record_id)
    found = replayed(edits, lambda below: rows.snapshot_before(db, record_id, below))
    return () if found is None else summary(found.record).readings


def _numbers(db: sqlite3.Connection, line: rows.NumberLine) -> Iterator[_Number]:
    readings = readings_of(db, line.id) if line.readings is None else line.readings
    return (_Number(place, typed) for place, typed in readings)


def _worth_reading(line: rows.NumberLine, own: Iterable[_Number]) -> bool:
    """False for an older line whose numbers, all clear, hold none of ours."""
    if line.readings is not None:
        return True
    numbers = _APART.sub("", line.numbers).upper()
    return "?" in numbers or "[" in numbers or any(not n.clear or n.serial in numbers for n in own)


def _of(line: rows.NumberLine, number: _Number, own: Iterable[_Number]) -> Iterator[SameNumber]:
    for mine in own:
        sure = _same(mine, number)
        if sure is not None:
            yield SameNumber(line.id, line.title, number.place, number.typed, sure, mine.place)


def _same(one: _Number, other: _Number) -> bool | None:
    """True for the same number, False where it may be the same, None where it is another."""
    if one.clear and other.clear:
        return True if one.key == other.key else (False if _bare(one, other) else None)
    return False if _may_be(one, other) else None


def _bare(one: _Number, other: _Number) -> bool:
    """Whether one is nothing but the other's serial, at the same place: its letters were not read, or not typed."""
    if one.place != other.place or one.serial != other.serial or len(one.serial) < SHORTEST:
        return False
    return one.key == one.serial or other.key == other.serial


def _may_be(one: _Number, other: _Number) -> bool:
    """Whether what was read of both agrees, and enough of it was read."""
    if len(one.signs) != len(other.signs):
        return False
    agreed = 0
    for a, b in zip(one.signs, other.signs, strict=True):
        if a is None or b is None:
            continue
        if not set(a) & set(b):
            return False
        agreed += 1
    return agreed >= max(AGREED, len(one.signs) / 2)
