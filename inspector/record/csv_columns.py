"""Which column of a pasted table is what: by its heading, else by what stands in it."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from inspector.record import csv_cells as cells
from inspector.record.csv_cells import Unread
from inspector.record.days import day_of, two_ways
from inspector.texts import Say, say

NAMES: dict[str, tuple[str, ...]] = {
    "price": ("price", "amount", "price paid", "sum", "figure", "value"),
    "kind": ("kind", "type", "price kind", "kind of price", "asked bid sold", "status", "asked, bid or sold"),
    "currency": ("currency", "cur", "ccy"),
    "date": ("date", "day", "when", "sold on", "date of sale"),
    "place": ("place", "where", "venue", "location"),
    "condition": ("condition", "state"),
    "numbers": ("numbers", "numbers agree", "numbers match", "matching numbers"),
    "score": ("score", "correctness", "points"),
    "how_like": ("like", "how like", "likeness", "weight"),
    "title": ("title", "machine", "what", "model", "description", "name"),
    "source": ("source", "from", "link", "seen in"),
    "photograph": ("picture", "photograph", "photo", "image"),
    "fees": ("fees", "fees in", "fees included"),
    "premium": ("premium", "premium percent", "premium %", "buyers premium", "buyer's premium"),
    "excluded_because": ("excluded", "excluded because", "left out", "left out because"),
    "note": ("note", "notes", "remark", "remarks"),
}
FEW, THOUSANDS = re.compile(r"\D{0,4}[0-9]{1,3}"), re.compile(r"[0-9]{3}([.][0-9]+)?")
FIELD_OF = {name: field for field, names in NAMES.items() for name in names}
NO_PRICE = say("No column is a price. Give the columns headings, among them price and kind.")
NO_KIND = say("No column says whether a price was asked, bid or sold. Add one headed kind.")
GUESSED = say("There were no headings; columns were taken as: {columns}.")


@dataclass(frozen=True, slots=True)
class Columns:
    """The field of each column ("" where it has none), whether there was a line of headings, and what to say of it."""

    fields: tuple[str, ...]
    headings: tuple[str, ...]
    headed: bool
    notes: tuple[Say, ...] = ()
    trouble: Say | None = None

    @property
    def count(self) -> int:
        """How many columns there are."""
        return len(self.fields)

    def reader(self, row: Sequence[str]) -> Callable[[str], str]:
        """The cell of that field in this row; empty where there is none."""
        found = {field: cell for field, cell in zip(self.fields, row, strict=False) if field}
        return lambda field: found.get(field, "")

    def split_price(self, row: Sequence[str]) -> bool:
        """True where the price may have been cut in two at a comma that parts its thousands."""
        at = self.fields.index("price")
        if at + 1 >= len(row):
            return False
        return bool(FEW.fullmatch(row[at].strip()) and THOUSANDS.fullmatch(row[at + 1].strip()))

    def note(self, row: Sequence[str]) -> str:
        """The note column, and behind it what stands in columns that are not known, so that nothing is lost."""
        told = [self.reader(row)("note").strip()]
        for field, heading, cell in zip(self.fields, self.headings, row, strict=False):
            if not field and cell.strip():
                told.append(f"{heading}: {cell.strip()}" if heading else cell.strip())
        return "; ".join(part for part in told if part)


def columns_of(rows: Sequence[Sequence[str]]) -> Columns:
    """What the columns are; ``trouble`` where no price or no kind can be found."""
    first = tuple(_heading(cell) for cell in rows[0])
    known = [name for name in first if name in FIELD_OF]
    if len(known) >= 2 or (known and not any(c.isdigit() for cell in rows[0] for c in cell)):
        return _checked(_by_heading(rows[0], first))
    return _checked(_by_content(rows))


def _checked(columns: Columns) -> Columns:
    trouble = NO_PRICE if "price" not in columns.fields else NO_KIND if "kind" not in columns.fields else None
    return Columns(columns.fields, columns.headings, columns.headed, columns.notes, trouble)


def _by_heading(row: Sequence[str], names: Sequence[str]) -> Columns:
    fields: list[str] = []
    for name in names:
        field = FIELD_OF.get(name, "")
        fields.append("" if field in fields else field)
    lost = [cell.strip() for cell, field in zip(row, fields, strict=True) if not field and cell.strip()]
    notes = (say("Not known, and kept in the note: {columns}.", columns=", ".join(lost)),) if lost else ()
    return Columns(tuple(fields), tuple(cell.strip() for cell in row), True, notes)


def _by_content(rows: Sequence[Sequence[str]]) -> Columns:
    """Each field to the column in which most cells can be read as it; words left over are title, then place."""
    lengths = [len(row) for row in rows]
    # A line longer than most has a separator inside a cell, and must not shift what the columns are.
    width = min(set(lengths), key=lambda length: (-lengths.count(length), length))
    columns = [[row[at] for row in rows if at < len(row) and row[at].strip()] for at in range(width)]
    fields = [""] * width
    for field, fits in (("kind", _is_kind), ("date", _is_date), ("currency", _is_currency), ("price", _is_price)):
        free = [at for at in range(width) if not fields[at] and columns[at]]
        found = max(free, key=lambda at: _share(columns[at], fits), default=None)
        if found is not None and _share(columns[found], fits) > 0.5:
            fields[found] = field
    words = [at for at in range(width) if not fields[at] and columns[at] and _share(columns[at], _is_words) > 0.5]
    for at, field in zip(words, ("title", "place", "source"), strict=False):
        fields[at] = field
    told = ", ".join(field or "note" for field in fields)
    return Columns(tuple(fields), ("",) * width, False, (say(GUESSED.template, columns=told),))


def _heading(cell: str) -> str:
    return cells.word(cell).replace("_", " ").rstrip(".:")


def _share(column: Sequence[str], fits: Callable[[str], bool]) -> float:
    return sum(fits(cell) for cell in column) / len(column)


def _is_kind(cell: str) -> bool:
    return cells.word(cell) in cells.KIND_OF


def _is_date(cell: str) -> bool:
    # Years alone are prices as often as dates, so they do not make a column of dates.
    plain = cells.plain(cell)
    return two_ways(plain) or (day_of(plain) is not None and not plain.isdecimal())


def _is_currency(cell: str) -> bool:
    plain = cells.plain(cell)
    return plain in cells.SIGNS or (len(plain) == 3 and plain.isalpha() and plain.isupper())


def _is_price(cell: str) -> bool:
    try:
        return cells.price(cell)[0] > 100
    except Unread:
        return cells.plain(cell).startswith("-")


def _is_words(cell: str) -> bool:
    return any(c.isalpha() for c in cell)
