"""The plain readable summary in a bag: the same words as text and as a page for any browser."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING
from urllib.parse import quote

from inspector.judgement.judge import judge
from inspector.packing import layout
from inspector.sheet.blocks import ReplyBlock, SignatureBlock
from inspector.sheet.compose import seller_sheet
from inspector.sheet.html import Linked, as_html
from inspector.sheet.text import as_text
from inspector.storage.bags.writing import BagFile
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.profile.model import Profile
    from inspector.record.model import Record


def summary_files(
    profile: Profile, record: Record, pictures: Mapping[str, bytes], addresses: Mapping[str, str], at: str
) -> Iterator[BagFile]:
    """Both summaries of the record as it stood then.

    ``pictures`` are JPEG copies and ``addresses`` the paths in the bag, both by photograph id.
    """
    version = max((v.number for v in record.versions), default=0) + 1
    sheet = seller_sheet(profile, record, judge(profile, record), pictures, None, at, version)
    blocks = tuple(block for block in sheet.blocks if not isinstance(block, ReplyBlock | SignatureBlock))
    sheet = replace(sheet, title=tr("Summary of the inspection"), kind="summary", blocks=blocks)
    linked = [
        Linked(quote(addresses[p.id]), _caption(profile, number, p.caption, p.item))
        for number, p in enumerate(record.photographs, 1)
        if p.id in addresses
    ]
    yield BagFile(layout.SUMMARY_TEXT, as_text(sheet).encode())
    yield BagFile(layout.SUMMARY_HTML, as_html(sheet, linked).encode())


def _caption(profile: Profile, number: int, caption: str, item: str) -> str:
    known = profile.item_by_id.get(item)
    parts = (tr("photograph {number}", number=number), known.name if known else "", caption)
    return "; ".join(part for part in parts if part)
