"""The wants list on paper and as a table: what to look for, how it is told, what not to buy, a fair price."""

from __future__ import annotations

import csv
from io import StringIO
from typing import TYPE_CHECKING

from inspector.sheet.blocks import Block, Head, ListBlock, Phrase, Row, Sheet
from inspector.sheet.words import listed, moment, sentence, year_of
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.amounts import Amounts
    from inspector.judgement.dealt import Want
    from inspector.profile.model import Profile
    from inspector.record.model import Record

HEADS = ("item", "looking for", "decided", "right", "how to tell", "not to buy", "low", "likely", "high", "currency",
         "price from")  # fmt: skip
DANGEROUS = ("=", "+", "-", "@", "\t", "\r")


def wants_sheet(
    profile: Profile, record: Record, found: Sequence[Want], currency: str, made_at: str, amounts: Amounts
) -> Sheet:
    """The list as composed text, private to whoever looks for the parts."""
    name = record.claim.model or profile.title
    claimed = Phrase(tr("Parts looked for"), listed((year_of(record), currency)))
    private = tr("Private: it names prices. Not for the seller.")
    blocks: tuple[Block, ...] = (
        Head(name, claimed, (private,)),
        *(_want(want, currency, amounts) for want in found),
    )
    if not found:
        blocks = (*blocks, ListBlock(tr("Nothing"), (), note=tr("No part is to be bought as things stand.")))
    return Sheet(
        title=tr("Wants list"), kind="wants", record_id=record.id, version=0, made_at=made_at, machine=name, author="",
        foot=tr("Prices are estimates of the day they carry; see the part before you pay."),
        stamp=(moment(made_at),), blocks=blocks,
    )  # fmt: skip


def _want(want: Want, currency: str, amounts: Amounts) -> ListBlock:
    rows = [Row(tr("Right"), Phrase("", "; ".join(want.spec)))] if want.spec else []
    if want.how_to_tell:
        rows.append(Row(tr("How to tell"), Phrase("", " ".join(sentence(tell) for tell in want.how_to_tell))))
    if want.not_to_buy:
        rows.append(Row(tr("Not to buy"), Phrase("", "; ".join(amounts.sentence(words) for words in want.not_to_buy))))
    rows.append(Row(tr("Fair price"), Phrase(_price(want, currency, amounts), ""), amounts.sentence(want.price_words)))
    state = "" if want.decided else tr("Not decided yet.")
    return ListBlock(f"{want.looking_for} ({want.name})", tuple(rows), note=state)


def _price(want: Want, currency: str, amounts: Amounts) -> str:
    if want.fair is None:
        return tr("no price")
    low, likely, high = want.fair
    return tr("{span}, likely {likely} {currency}", span=amounts.span(low, high), likely=amounts.told(likely),
              currency=currency).strip()  # fmt: skip


def wants_csv(found: Sequence[Want], currency: str) -> str:
    """The list as comma-separated lines under headings, figures plain with a decimal point."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(tr(head) for head in HEADS)
    for want in found:
        prices = [str(one) for one in want.fair] if want.fair else ["", "", ""]
        writer.writerow([
            *map(_cell, (want.name, want.looking_for, tr("yes") if want.decided else tr("no"), "; ".join(want.spec),
                         "; ".join(want.how_to_tell), "; ".join(tr(words) for words in want.not_to_buy))),
            *prices, currency, _cell(tr(want.price_words)),
        ])  # fmt: skip
    return out.getvalue()


def _cell(text: str) -> str:
    """The text so that no spreadsheet takes it for a formula."""
    return f"'{text}" if text.startswith(DANGEROUS) else text
