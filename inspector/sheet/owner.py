"""The owner's own file: everything that was seen, judged and reckoned, the first page telling it in short."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.record.words import Role
from inspector.sheet import finding, people, seen
from inspector.sheet.blocks import Block, Head, PicturesBlock, Sheet
from inspector.sheet.condition import condition_block
from inspector.sheet.figure_blocks import (
    ContentsBlock,
    SourceLine,
    SourceListBlock,
)
from inspector.sheet.history import history_block
from inspector.sheet.in_short import found_in_short, questions_in_short
from inspector.sheet.measured_values import photographs_block
from inspector.sheet.money_blocks import money_blocks, money_in_short
from inspector.sheet.papers import papers_block
from inspector.sheet.passes import passes_block
from inspector.sheet.photos import pictures_of
from inspector.sheet.points import points_blocks
from inspector.sheet.reading import numbers_block
from inspector.sheet.standing import beside_blocks, seventeen_blocks
from inspector.sheet.statements import statements_block
from inspector.sheet.versioning import Issue, differences_block
from inspector.sheet.words import FOOT, listed, moment, sentence
from inspector.sheet.year_evidence import evidence_blocks
from inspector.sheet.years import years_block
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.sheet.history import Change
    from inspector.sheet.money_blocks import Purse


@dataclass(frozen=True, slots=True)
class Held:
    """What the file is made of besides profile, record and judgement."""

    pictures: Mapping[str, bytes]
    outline: str | None
    purse: Purse
    history: tuple[Change, ...] = ()
    issue: Issue | None = None


def owner_sheet(
    profile: Profile, record: Record, judgement: Judgement, held: Held, made_at: str, version: int
) -> Sheet:
    """The whole of it as composed text: private, with money, history and sources."""
    whole = (profile, record, judgement, held)
    blocks: tuple[Block, ...] = (*_first_page(*whole), *_blocks(*whole))
    signed, history = people.signature_block(record, version, made_at), history_block(record, held.history)
    last: tuple[Block, ...] = (signed, history, *_sources_blocks(profile, record))
    return Sheet(
        title=tr("Owner’s file, private"), kind="owner", record_id=record.id, version=version, made_at=made_at,
        machine=people.machine_name(record), author=people.names_as(record, Role.INSPECTOR), foot=tr(FOOT),
        stamp=(tr("Record {record}, version {version}", record=record.id, version=version), moment(made_at)),
        blocks=with_contents((*blocks, *last)),
    )  # fmt: skip


def with_contents(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The blocks, the one place kept for contents filled with the titles of all that follow it."""
    at = next((n for n, block in enumerate(blocks) if isinstance(block, ContentsBlock)), None)
    if at is None:
        return blocks
    entries = tuple((n, title) for n, block in enumerate(blocks) if n > at and (title := getattr(block, "title", "")))
    return (*blocks[:at], ContentsBlock(tr("In this file"), entries), *blocks[at + 1 :])


# the first page


def _first_page(profile: Profile, record: Record, judgement: Judgement, held: Held) -> Iterator[Block]:
    head = people.head(record, record.invented or profile.invented)
    private = tr("Private: it names prices and what they rest on. Not for the seller.")
    yield Head(head.name, head.claimed, (*head.lines, private))
    yield seen.safety_block(judgement)
    yield from found_in_short(judgement)
    yield money_in_short(record.money, held.purse)
    yield questions_in_short(judgement)
    yield ContentsBlock("", ())


# all of it


def _blocks(profile: Profile, record: Record, judgement: Judgement, held: Held) -> Iterator[Block]:
    pictures = pictures_of(record, held.pictures)
    told = finding.in_full(profile, record, judgement)
    numbers = {one.item: number for number, one in enumerate(told, 1)}
    rest = tuple(pictures[p.id] for p in record.photographs if p.item not in numbers)
    yield seen.seen_block(profile, judgement, held.outline, numbers)
    yield numbers_block(profile, record, judgement)
    yield from beside_blocks(record, judgement)
    yield from seventeen_blocks(judgement)
    yield papers_block(record, judgement)
    yield seen.not_examined_block(profile, record, judgement, set(numbers))
    yield seen.sources_block()
    yield finding.findings_block(profile, record, told, pictures)
    yield passes_block(profile, record, judgement, set(numbers), pictures)
    if rest:
        yield PicturesBlock(tr("Other photographs"), rest)
    measured = photographs_block(record, pictures, numbers)
    if measured is not None:
        yield measured
    yield seen.score_block(judgement)
    yield from points_blocks(profile, judgement)
    yield years_block(profile, judgement)
    yield from evidence_blocks(profile, judgement)
    yield condition_block(judgement)
    yield from money_blocks(record.money, held.purse)
    yield from _said_blocks(profile, record, judgement, numbers)
    differences = differences_block(held.issue or Issue())
    if differences is not None:
        yield differences


def _said_blocks(
    profile: Profile, record: Record, judgement: Judgement, numbers: Mapping[str, int]
) -> Iterator[Block]:
    yield people.claim_block(record)
    yield people.inquiries_block(record)
    yield statements_block(judgement)
    yield people.people_block(record)
    yield people.cautions_block(profile)
    yield people.questions_block(judgement, numbers)


def _sources_blocks(profile: Profile, record: Record) -> Iterator[SourceListBlock]:
    """Every source of the profile, then the books that evidence names."""
    rows = [SourceLine(one.grade, listed((one.title, one.by, moment(one.date))),
                       sentence(listed((tr(one.kind.value), one.address, one.note), "; ")))
            for one in sorted(profile.sources, key=lambda one: -one.grade)]  # fmt: skip
    books = dict.fromkeys(f.book for f in record.findings if f.book.strip())
    rows += [SourceLine(0, book, tr("Named as evidence of a finding.")) for book in books]
    authors = listed(listed((one.name, one.role)) for one in profile.authors)
    note = tr("Profile {title}, version {version}, by {authors}.", title=profile.title, version=profile.version,
              authors=authors)  # fmt: skip
    yield SourceListBlock(tr("List of sources"), note, tuple(rows))
