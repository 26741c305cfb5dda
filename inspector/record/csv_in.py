"""Comparables from a pasted table: rows that can be taken, and each other line named with what to do."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from decimal import Decimal
from io import StringIO
from typing import Any

from pydantic import ValidationError

from inspector.record import csv_cells as cells
from inspector.record.csv_cells import Unread
from inspector.record.csv_columns import Columns, columns_of
from inspector.record.money import Comparable
from inspector.texts import Say, say

MOST_LINES = 5000
SEPARATORS = "\t;,"


@dataclass(frozen=True, slots=True)
class CsvError:
    """A line that was not taken: its number from 1, what stands there, and what to do, naming the line."""

    line: int
    text: str
    sentence: Say


@dataclass(frozen=True, slots=True)
class CsvRead:
    """What a paste gave: rows ready to be entered, lines not taken, and how the columns were understood."""

    rows: tuple[Comparable, ...]
    errors: tuple[CsvError, ...]
    notes: tuple[Say, ...]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the table: where it began, its cells, and its text as it stood."""

    number: int
    cells: tuple[str, ...]
    text: str
    by_commas: bool


def read_comparables(text: str, *, taken: Collection[str] = (), today: str = "") -> CsvRead:
    """The table read: comma, semicolon or tab; decimal comma or point; columns in any order, with headings or without.

    ``taken`` are ids in use; ``today`` (ISO 8601) is the day after which no price can be. Nothing raises.
    """
    text = text.removeprefix("\ufeff")
    try:
        lines = list(_lines(text, _separator(text)))
    except csv.Error as trouble:
        return _nothing(say("The table cannot be taken apart: {why}. Copy it again.", why=str(trouble)))
    if not lines:
        return _nothing(say("There is nothing to read. Paste lines with a price each."))
    if len(lines) > MOST_LINES:
        return _nothing(say("There are more than {most} lines. Paste fewer at a time.", most=MOST_LINES))
    columns = columns_of([line.cells for line in lines])
    if columns.trouble is not None:
        return CsvRead((), (CsvError(lines[0].number, lines[0].text, _at(lines[0].number, columns.trouble)),), ())
    return _read(lines[1:] if columns.headed else lines, columns, taken, today)


def _read(lines: list[Line], columns: Columns, taken: Collection[str], today: str) -> CsvRead:
    free = _free_ids(taken)
    rows: list[Comparable] = []
    errors: list[CsvError] = []
    for line in lines:
        try:
            rows.append(_row(line, columns, today, lambda: next(free)))
        except Unread as trouble:
            errors.append(CsvError(line.number, line.text, _at(line.number, trouble.sentence)))
    if not lines:
        errors.append(CsvError(1, "", say("There are headings and no lines below. Copy the lines too.")))
    return CsvRead(tuple(rows), tuple(errors), columns.notes)


def _row(line: Line, columns: Columns, today: str, new_id: Callable[[], str]) -> Comparable:
    """The comparable of one line. Raises Unread at its first cell that cannot be taken."""
    if len(line.cells) > columns.count or (line.by_commas and columns.split_price(line.cells)):
        raise Unread(
            say(
                "It has {count} cells where {wanted} were to be expected, or a comma inside its price. Put quotation "
                "marks around a price or name with a comma in it.",
                count=len(line.cells), wanted=columns.count,
            )
        )  # fmt: skip
    cell = columns.reader(line.cells)
    amount, beside = cells.price(cell("price"))
    currency = cells.currency(cell("currency"))
    other_sign = beside == "$" and currency in cells.SIGNS.values()
    if other_sign or (beside and currency and beside not in {currency, "$"}):
        raise Unread(say("The price is in {one} and the currency column says {other}. Leave one.",
                         one=beside, other=currency))  # fmt: skip
    if beside == "$" and not currency:
        raise Unread(say('"$" says not which dollar. Write the three letters, such as USD.'))
    fees_in, premium = _fees(cell)
    values: dict[str, Any] = {
        "kind": cells.kind(cell("kind")), "price": amount, "currency": currency or cells.currency(beside),
        "fees_in": fees_in, "premium_percent": premium, "date": cells.date(cell("date"), today),
        "condition": cells.grade(cell("condition"), say("condition")), "numbers": cells.agree(cell("numbers")),
        "score": cells.score(cell("score")), "how_like": cells.grade(cell("how_like"), say("likeness")) or 3,
        **{name: cells.plain(cell(name)) for name in ("title", "place", "source", "photograph", "excluded_because")},
        "note": columns.note(line.cells),
    }  # fmt: skip
    return _made({"id": new_id(), **values})


def _fees(cell: Callable[[str], str]) -> tuple[bool, Decimal | None]:
    fees_in, percent = cells.fees(cell("fees"))
    own = cells.fees(cell("premium"))[1] if cell("premium").strip() else None
    return fees_in, percent if own is None else own


def _made(values: dict[str, Any]) -> Comparable:
    try:
        return Comparable.model_validate(values)
    except ValidationError as trouble:
        first = trouble.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        raise Unread(say("{where}: {what}. Shorten or mend it.", where=where, what=first["msg"])) from trouble


def _lines(text: str, separator: str) -> Iterator[Line]:
    """The lines that are not empty, quoted cells over several lines kept whole."""
    source = text.splitlines()
    reader = csv.reader(StringIO(text, newline=""), delimiter=separator, skipinitialspace=True)
    before = 0
    for row in reader:
        number, before = before + 1, reader.line_num
        if any(cell.strip() for cell in row):
            yield Line(number, tuple(row), "\n".join(source[number - 1 : before]), separator == ",")
        if number > MOST_LINES * 2:
            return


def _separator(text: str) -> str:
    """A tab where there is one, else a semicolon, else a comma: in this order none stands inside a price."""
    bare = re.sub(r'"[^"]*"', "", text)
    return next((one for one in SEPARATORS if one in bare), ",")


def _free_ids(taken: Collection[str]) -> Iterator[str]:
    number = 0
    while True:
        number += 1
        if f"c{number}" not in taken:
            yield f"c{number}"


def _at(line: int, sentence: Say) -> Say:
    return say("Line {line}: {sentence}", line=line, sentence=sentence)


def _nothing(sentence: Say) -> CsvRead:
    return CsvRead((), (CsvError(1, "", sentence),), ())
