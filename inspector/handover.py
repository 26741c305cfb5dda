"""From a kept record to the sheet that is handed over: the same for the window and the commands."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from inspector.amounts import Amounts
from inspector.issuing import issue_of, place_of
from inspector.judgement.judge import judge
from inspector.record.versions import next_version
from inspector.resource import outline
from inspector.sheet.compose import blank_sheet, seller_sheet

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.issuing import Place
    from inspector.profile.model import Profile
    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.sheet.blank import Form
    from inspector.sheet.blocks import Sheet
    from inspector.sheet.history import Change
    from inspector.sheet.pdf import Paper
    from inspector.sheet.versioning import Issue
    from inspector.storage.library import Library
    from inspector.storage.photographs import Photographs

PLAIN = Amounts()


def sellers_copy(
    profile: Profile, record: Record, photographs: Photographs, made_at: str, issue: Issue | None = None
) -> Sheet:
    """The seller's copy of the next version as composed text, with print copies of the photographs that can be read."""
    pictures, judged, version = to_share(record, photographs), judge(profile, record), next_version(record)
    return seller_sheet(profile, record, judged, pictures, _drawing(), made_at, version, issue)


def owners_file(
    profile: Profile,
    record: Record,
    place: Place,
    made_at: str,
    history: Iterable[Change] = (),
    *,
    amounts: Amounts = PLAIN,
) -> Sheet:
    """The owner's own file of the next version: photographs uncovered, money, history, sources, what differs."""
    from inspector.judgement.money import money
    from inspector.judgement.plan import chosen, frontier, planning
    from inspector.sheet.money_blocks import Purse
    from inspector.sheet.owner import Held, owner_sheet

    judged = judge(profile, record)
    work = planning(profile, record, judged.states)
    told, seen = money(profile, record, judged.states), pictures_of_comparables(record, place.photographs)
    purse = Purse(told, chosen(work, record.money.budget), frontier(work), amounts, seen)
    pictures, issue = _uncovered(record, place.photographs), issue_of(profile, record, place)
    held = Held(pictures, _drawing(), purse, tuple(history), issue)
    return owner_sheet(profile, record, judged, held, made_at, next_version(record))


def dating_pack(profile: Profile, record: Record, photographs: Photographs, made_at: str) -> Sheet:
    """The pack for an application to have the machine dated: no money, no place, chosen parts covered."""
    from inspector.sheet.dating import dating_sheet

    pictures, judged = to_share(record, photographs), judge(profile, record)
    return dating_sheet(profile, record, judged, pictures, made_at, next_version(record))


def picture_pack(
    profile: Profile, record: Record, photographs: Photographs, made_at: str, *, amounts: Amounts = PLAIN
) -> Sheet:
    """The pack of dated photographs for an insurer, chosen parts covered; a worth only where it may be printed."""
    from inspector.judgement.money import money
    from inspector.sheet.pictures_pack import pictures_sheet

    worth = money(profile, record).worth
    pictures = to_share(record, photographs)
    return pictures_sheet(profile, record, pictures, worth, amounts, made_at, next_version(record))


def walk_sheet(profile: Profile, year: int | None, made_at: str, form: Form = "short") -> Sheet:
    """The blank walk sheet of a profile for one claimed year, or for all its years, short or in full."""
    return blank_sheet(profile, year, made_at, form)


def wants_list(profile: Profile, record: Record, made_at: str, suffix: str = ".pdf", paper: Paper = "A4") -> bytes:
    """The parts to look for as a file: CSV in UTF-8 where the name ends so, else PDF. It names prices."""
    from inspector.judgement.cost import costs
    from inspector.judgement.wants import wants
    from inspector.sheet.pdf import as_pdf
    from inspector.sheet.wants import wants_csv, wants_sheet

    spent = costs(profile, record)
    found = wants(profile, record, spent)
    if suffix.lower() == ".csv":
        return wants_csv(found, spent.currency).encode("utf-8-sig")
    return as_pdf(wants_sheet(profile, record, found, spent.currency, made_at, PLAIN), paper)


def copy_of(copy: str, profile: Profile, record: Record, library: Library, made_at: str) -> Sheet:
    """The copy "seller", "owner", "dating" or "pictures" of a record of this library. Raises StorageTrouble."""
    shown, place = library.photographs, place_of(library)
    if copy == "owner":
        return owners_file(profile, record, place, made_at, changes_of(profile, record, library))
    if copy == "dating":
        return dating_pack(profile, record, shown, made_at)
    if copy == "pictures":
        return picture_pack(profile, record, shown, made_at)
    return sellers_copy(profile, record, shown, made_at, issue_of(profile, record, place))


def changes_of(profile: Profile, record: Record, library: Library) -> tuple[Change, ...]:
    """Every change that is kept of the record, oldest first, with what it was about. Raises StorageTrouble."""
    from inspector.sheet.history import Change as Changed
    from inspector.sheet.history import about

    found = []
    for row in library.whole(record.id).edits:
        step = json.loads(row.step)
        touched = [(str(put.get("part", "")), str(put.get("key", ""))) for put in step.get("puts", ())]
        label, what = str(step.get("label", "")), about(profile, record, touched)
        named = "" if what and label in {key for _, key in touched} else label  # a bare key tells people nothing
        found.append(Changed(row.at, row.who, row.kind, named, what))
    return tuple(found)


def to_share(record: Record, photographs: Photographs) -> dict[str, bytes]:
    """Print copies by photograph id for a copy that leaves the house: what the user chose to cover is covered.

    Where a covered one cannot be made, there is none: it is never shown uncovered instead.
    """
    found = ((p.id, _covered(p, photographs) if p.masks else photographs.copy(p.sha256)) for p in record.photographs)
    return {key: data for key, data in found if isinstance(data, bytes)}


def _covered(photograph: Photograph, photographs: Photographs) -> bytes | None:
    """A print copy made anew from the original, so that nothing of what is covered is mixed into its neighbours."""
    from inspector.photo.copies import PRINT_PX
    from inspector.photo.masks import Cover
    from inspector.photo.sharing import sharing_copy
    from inspector.storage.photographs import Missing

    path = photographs.path(photograph.sha256)
    if isinstance(path, Missing):
        return None
    covers = [Cover(box.left, box.top, box.right, box.bottom) for box in photograph.masks]
    made = sharing_copy(path, covers, px=PRINT_PX)
    return made if isinstance(made, bytes) else None


def _uncovered(record: Record, photographs: Photographs) -> dict[str, bytes]:
    copies = ((p.id, photographs.copy(p.sha256)) for p in record.photographs)
    return {key: data for key, data in copies if isinstance(data, bytes)}


def pictures_of_comparables(record: Record, photographs: Photographs) -> dict[str, bytes]:
    """Print copies of the pictures of other machines by SHA-256. Private, as the comparables are."""
    copies = {p.sha256: photographs.copy(p.sha256) for one in record.comparables for p in one.pictures}
    return {key: data for key, data in copies.items() if isinstance(data, bytes)}


def _drawing() -> str | None:
    left = outline("left")
    return left.read_text("utf-8") if left else None
