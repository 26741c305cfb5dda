"""A sheet composed as text, block by block, before anything is drawn. No amount of money is ever read here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.versions import for_the_seller
from inspector.record.words import Role
from inspector.sheet import finding, people, seen
from inspector.sheet.blank import blank_sheet as blank_sheet
from inspector.sheet.blocks import Block, PicturesBlock, Sheet
from inspector.sheet.condition import condition_block
from inspector.sheet.in_short import found_in_short, questions_in_short
from inspector.sheet.measured_values import photographs_block
from inspector.sheet.papers import papers_block
from inspector.sheet.passes import passes_block
from inspector.sheet.photos import pictures_of
from inspector.sheet.points import points_blocks
from inspector.sheet.reading import numbers_block
from inspector.sheet.standing import beside_blocks, seventeen_blocks
from inspector.sheet.statements import statements_block
from inspector.sheet.versioning import Issue, differences_block, seal_block
from inspector.sheet.words import FOOT, moment
from inspector.sheet.years import years_block
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile
    from inspector.record.model import Record


def seller_sheet(
    profile: Profile,
    record: Record,
    judgement: Judgement,
    pictures: Mapping[str, bytes],
    outline_svg: str | None,
    made_at: str,
    version: int,
    issue: Issue | None = None,
) -> Sheet:
    """The seller's copy of a record: everything seen and not seen, no money, and no place unless that was chosen.

    ``pictures`` holds JPEG print copies by photograph id; ``outline_svg`` is the left side as SVG text or None.
    ``issue`` tells of the version before, and of the key where the sheet is to be sealed.
    """
    record = for_the_seller(record)
    return Sheet(
        title=tr("Inspection sheet, seller’s copy"),
        kind="seller",
        record_id=record.id,
        version=version,
        made_at=made_at,
        machine=people.machine_name(record),
        author=people.names_as(record, Role.INSPECTOR),
        foot=tr(FOOT),
        stamp=(tr("Record {record}, version {version}", record=record.id, version=version), moment(made_at)),
        blocks=(
            *_blocks(profile, record, judgement, pictures, outline_svg),
            *_last_blocks(record, made_at, version, issue or Issue()),
        ),
    )


def _last_blocks(record: Record, made_at: str, version: int, issue: Issue) -> tuple[Block, ...]:
    """What is signed and sealed, and what it differs in from what was signed before."""
    blocks: tuple[Block | None, ...] = (
        differences_block(issue),
        people.reply_block(),
        people.signature_block(record, version, made_at),
        seal_block(issue, made_at),
    )
    return tuple(block for block in blocks if block is not None)


def _blocks(
    profile: Profile,
    record: Record,
    judgement: Judgement,
    store: Mapping[str, bytes],
    outline_svg: str | None,
) -> tuple[Block, ...]:
    pictures = pictures_of(record, store)
    told = finding.in_full(profile, record, judgement)
    numbers = {one.item: number for number, one in enumerate(told, 1)}
    rest = tuple(pictures[p.id] for p in record.photographs if p.item not in numbers)
    return (
        people.head(record, record.invented or profile.invented, placed=record.choices.place_told),
        seen.safety_block(judgement),
        *found_in_short(judgement),
        questions_in_short(judgement),
        seen.seen_block(profile, judgement, outline_svg, numbers),
        numbers_block(profile, record, judgement),
        *beside_blocks(record, judgement),
        *seventeen_blocks(judgement),
        papers_block(record, judgement),
        seen.not_examined_block(profile, record, judgement, set(numbers)),
        seen.sources_block(),
        finding.findings_block(profile, record, told, pictures),
        passes_block(profile, record, judgement, set(numbers), pictures),
        *((PicturesBlock(tr("Other photographs"), rest),) if rest else ()),
        *((measured,) if (measured := photographs_block(record, pictures, numbers)) else ()),
        seen.score_block(judgement),
        *points_blocks(profile, judgement),
        years_block(profile, judgement),
        condition_block(judgement),
        people.claim_block(record),
        people.inquiries_block(record),
        statements_block(judgement),
        people.people_block(record),
        people.cautions_block(profile),
        people.questions_block(judgement, numbers),
    )
