"""The owner's own file: everything that was seen, judged and reckoned, the first page telling it in short."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.score import percent_seen
from inspector.judgement.wording import lower_first
from inspector.record.words import Role
from inspector.sheet import finding, people, seen
from inspector.sheet.blocks import Block, Head, Phrase, PicturesBlock, QuestionsBlock, Row, Sheet, ShortBlock
from inspector.sheet.condition import condition_block
from inspector.sheet.figure_blocks import (
    ContentsBlock,
    Fraction,
    SourceLine,
    SourceListBlock,
    StoryBlock,
)
from inspector.sheet.history import history_block
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
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.judgement.judge import Judgement
    from inspector.judgement.relations import Standing
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.sheet.history import Change
    from inspector.sheet.money_blocks import Purse

MOST_ASKED = 6  # open questions told on the first page; all of them stand further on


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
    yield story_block(judgement)
    yield _numbers_in_short(judgement)
    yield _years_in_short(judgement)
    yield money_in_short(record.money, held.purse)
    yield _questions_in_short(judgement)
    yield ContentsBlock("", ())


def story_block(judgement: Judgement) -> StoryBlock:
    """Coverage, then how much of what was examined is right, with the lowest and highest it may end at."""
    score = judgement.score
    percent = percent_seen(score.seen_percent)
    examined = Fraction(tr("Seen"), percent, f"{percent} %", seen.coverage(percent))
    name, none = tr("Correct, of what was seen"), tr("nothing seen yet")
    if score.value is None:
        right = Fraction(name, None, "–", none, round(score.low), round(score.high))
    else:
        low, high = round(score.low), round(score.high)
        may_end = tr("may end at {low} to {high}", low=low, high=high)
        right = Fraction(name, round(score.value), str(round(score.value)), may_end, low, high)
    policy = tr("Pattern parts are counted as {policy}.", policy=tr(score.policy))
    apart = tr("Identity, condition and safety are kept apart from it.")
    return StoryBlock(tr("What was seen, and how much is right"), examined, right, f"{policy} {apart}")


def _numbers_in_short(judgement: Judgement) -> ShortBlock:
    """Every number as typed with its place, then what raises a question."""
    read = [one for one in judgement.numbers if one.typed]
    said = tuple(Row("", Phrase(one.typed, f"{one.name}, {tr(one.how_read)}" + (";" if one is not read[-1] else ".")))
                 for one in read)  # fmt: skip
    unread = listed((one.name for one in judgement.numbers if not one.typed), "; ")
    rows = (*said, *((Row("", Phrase("", tr("Not read: {names}.", names=unread))),) if unread else ()))
    asks = (Row("", Phrase("", _stands(one))) for one in judgement.standings if one.raises)
    return ShortBlock(tr("Numbers as read"), (*rows, *asks), running=True)


def _stands(one: Standing) -> str:
    names = tr("{one} and {other}", one=one.names[0], other=lower_first(one.names[1]))
    return sentence(f"{names}: {tr(one.sentence)}")


def _years_in_short(judgement: Judgement) -> ShortBlock:
    years = judgement.years
    told = (years.sentence, years.claim_sentence)
    return ShortBlock(tr("Years"), tuple(Row("", Phrase("", tr(one))) for one in told if one is not None), running=True)


def _questions_in_short(judgement: Judgement) -> QuestionsBlock:
    asked = [tr(one.short or one.text) for one in judgement.questions]
    rows = tuple(Row("", Phrase("", one)) for one in asked[:MOST_ASKED])
    more = len(asked) - MOST_ASKED
    note = trn("{count} more is in this file.", "{count} more are in this file.", more) if more > 0 else ""
    return QuestionsBlock(tr("Open questions"), rows, numbered=True, note=note if rows else tr("None is noted."))


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
