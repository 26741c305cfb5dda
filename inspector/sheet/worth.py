"""An opinion of worth on paper: for what, of which kind, on which day, in whose name, and every step to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.sheet.blocks import Block, Head, ListBlock, Phrase, Row, Sheet
from inspector.sheet.words import listed, moment, year_of
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.amounts import Amounts
    from inspector.judgement.reckoned import GridRow, Range, Worth
    from inspector.profile.model import Profile
    from inspector.record.model import Record


class NotPrintable(ValueError):
    """Something without which a worth is not said is not entered; the sentences say what."""


def worth_sheet(profile: Profile, record: Record, worth: Worth, made_at: str, amounts: Amounts) -> Sheet:
    """The worth as composed text. Raises NotPrintable while purpose, kind, day or name is lacking."""
    if not worth.printable:
        raise NotPrintable(" ".join(amounts.sentence(why) for why in worth.why_not_printable))
    money, name = record.money, record.claim.model or profile.title
    head = Head(
        name, Phrase(tr("Opinion of worth"), listed((year_of(record), worth.currency))),
        (tr("Purpose: {purpose}", purpose=money.purpose), tr("Kind of value: {kind}", kind=money.kind_of_value),
         tr("On: {day}", day=moment(money.effective_date)), tr("Said by: {name}", name=money.in_the_name_of)),
    )  # fmt: skip
    blocks: tuple[Block, ...] = (head, _ranges(worth, amounts), _grid(tr("Comparables counted"), worth.rows, amounts))
    if worth.left_out:
        blocks = (*blocks, _grid(tr("Comparables not counted"), worth.left_out, amounts))
    how = tuple(Row("", Phrase("", amounts.sentence(reason))) for reason in worth.reasons)
    return Sheet(
        title=tr("Opinion of worth"), kind="worth", record_id=record.id, version=0, made_at=made_at, machine=name,
        author=money.in_the_name_of, foot=tr("An opinion from the comparables entered, for this purpose, on this day."),
        stamp=(moment(made_at),), blocks=(*blocks, ListBlock(tr("How it was reckoned"), how)),
    )  # fmt: skip


def _ranges(worth: Worth, amounts: Amounts) -> ListBlock:
    rows = [_range(name, one, amounts) for name, one in ((tr("As it stands"), worth.as_it_stands),
            (tr("Put right"), worth.put_right)) if one is not None]  # fmt: skip
    return ListBlock(tr("Worth, in {currency}", currency=worth.currency), tuple(rows),
                     note=amounts.sentence(worth.headline))  # fmt: skip


def _range(name: str, one: Range, amounts: Amounts) -> Row:
    words = tr("weighted middle {middle}, from {count} comparables", middle=amounts.told(one.middle), count=one.count)
    return Row(name, Phrase(amounts.span(one.low, one.high), words))


def _grid(title: str, rows: tuple[GridRow, ...], amounts: Amounts) -> ListBlock:
    return ListBlock(title, tuple(_row(row, amounts) for row in rows))


def _row(row: GridRow, amounts: Amounts) -> Row:
    entered = f"{amounts.told(row.as_entered)} {row.currency}"
    steps = [f"{amounts.sentence(line.words)} {amounts.signed(line.amount)}" for line in row.lines]
    adjusted = amounts.told(row.as_it_stands) if row.as_it_stands is not None else tr("no rate")
    where = listed((row.title, row.place, moment(row.date), row.source))
    why = amounts.sentence(row.why_not) if row.why_not is not None else ""
    return Row(tr(row.kind.value), Phrase(adjusted, listed((tr("as entered {amount}", amount=entered), *steps), "; ")),
               listed((where, why), ". "))  # fmt: skip
