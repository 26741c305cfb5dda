"""From a kept record to the sheet that is handed over: the same for the window and the commands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.judge import judge
from inspector.record.versions import next_version
from inspector.resource import outline
from inspector.sheet.compose import blank_sheet, seller_sheet

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.sheet.blank import Form
    from inspector.sheet.blocks import Sheet
    from inspector.sheet.pdf import Paper
    from inspector.sheet.versioning import Issue
    from inspector.storage.photographs import Photographs


def sellers_copy(
    profile: Profile, record: Record, photographs: Photographs, made_at: str, issue: Issue | None = None
) -> Sheet:
    """The seller's copy of the next version as composed text, with print copies of the photographs that can be read."""
    pictures = {
        photograph.id: data
        for photograph in record.photographs
        if isinstance(data := photographs.copy(photograph.sha256), bytes)
    }
    left = outline("left")
    drawing = left.read_text("utf-8") if left else None
    judged, version = judge(profile, record), next_version(record)
    return seller_sheet(profile, record, judged, pictures, drawing, made_at, version, issue)


def walk_sheet(profile: Profile, year: int | None, made_at: str, form: Form = "short") -> Sheet:
    """The blank walk sheet of a profile for one claimed year, or for all its years, short or in full."""
    return blank_sheet(profile, year, made_at, form)


def wants_list(profile: Profile, record: Record, made_at: str, suffix: str = ".pdf", paper: Paper = "A4") -> bytes:
    """The parts to look for as a file: CSV in UTF-8 where the name ends so, else PDF. It names prices."""
    from inspector.amounts import Amounts
    from inspector.judgement.cost import costs
    from inspector.judgement.wants import wants
    from inspector.sheet.pdf import as_pdf
    from inspector.sheet.wants import wants_csv, wants_sheet

    spent = costs(profile, record)
    found = wants(profile, record, spent)
    if suffix.lower() == ".csv":
        return wants_csv(found, spent.currency).encode("utf-8-sig")
    return as_pdf(wants_sheet(profile, record, found, spent.currency, made_at, Amounts()), paper)
