"""An opinion of worth on paper: for what, of which kind, on which day, in whose name, and every step to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.day_words import day_words
from inspector.sheet.blocks import Head, Phrase, Sheet
from inspector.sheet.words import listed, moment, year_of
from inspector.sheet.worth_blocks import worth_blocks
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.amounts import Amounts
    from inspector.judgement.reckoned import Worth
    from inspector.profile.model import Profile
    from inspector.record.model import Record


class NotPrintable(ValueError):
    """Something without which a worth is not said is not entered; the sentences say what."""


def worth_sheet(
    profile: Profile, record: Record, worth: Worth, made_at: str, amounts: Amounts,
    pictures: Mapping[str, bytes] | None = None,
) -> Sheet:  # fmt: skip
    """The worth as composed text, ``pictures`` being print copies of the comparables' pictures by SHA-256.

    Raises NotPrintable while purpose, kind, day or name is lacking.
    """
    if not worth.printable:
        raise NotPrintable(" ".join(amounts.sentence(why) for why in worth.why_not_printable))
    money, name = record.money, record.claim.model or profile.title
    head = Head(
        name, Phrase(tr("Opinion of worth"), listed((year_of(record), worth.currency))),
        (tr("Purpose: {purpose}", purpose=money.purpose), tr("Kind of value: {kind}", kind=money.kind_of_value),
         tr("On: {day}", day=tr(day_words(money.effective_date))), tr("Said by: {name}", name=money.in_the_name_of)),
    )  # fmt: skip
    return Sheet(
        title=tr("Opinion of worth"), kind="worth", record_id=record.id, version=0, made_at=made_at, machine=name,
        author=money.in_the_name_of, foot=tr("An opinion from the comparables entered, for this purpose, on this day."),
        stamp=(moment(made_at),), blocks=(head, *worth_blocks(money, worth, amounts, pictures)),
    )  # fmt: skip
