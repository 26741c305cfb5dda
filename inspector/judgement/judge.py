"""Everything computed from a profile and a record, together."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.condition import condition
from inspector.judgement.dates import dated
from inspector.judgement.decode import decode_reading
from inspector.judgement.differences import differences
from inspector.judgement.measured import measured_lines
from inspector.judgement.numbers import numbers
from inspector.judgement.observers import by_item
from inspector.judgement.papers import compare_papers, inquiries_said, years_kept_apart
from inspector.judgement.plain import plain
from inspector.judgement.points import points
from inspector.judgement.questions import questions
from inspector.judgement.relations import relations
from inspector.judgement.safety import safety
from inspector.judgement.score import score
from inspector.judgement.seventeens import seventeens
from inspector.judgement.sides import sides_of
from inspector.judgement.stamping import stamping_said
from inspector.judgement.state import SIGNS, states
from inspector.judgement.statements import unlinked_statements
from inspector.judgement.years import years

if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from inspector.judgement.dates import PartDate
    from inspector.judgement.decode import Decoded
    from inspector.judgement.differences import Difference
    from inspector.judgement.measured import MeasuredLine
    from inspector.judgement.numbers import NumberLine
    from inspector.judgement.papers import PaperStanding
    from inspector.judgement.points import Points
    from inspector.judgement.questions import OpenQuestion
    from inspector.judgement.relations import Standing
    from inspector.judgement.safety import Safety
    from inspector.judgement.score import Score
    from inspector.judgement.seventeens import SeventeenLine
    from inspector.judgement.state import ItemState
    from inspector.judgement.statements import UnlinkedStatement
    from inspector.judgement.years import Years
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.texts import Say


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a profile and a record mean together; identity, correctness, condition and safety stay apart."""

    states: Mapping[str, ItemState]
    score: Score
    points: Points | None
    safety: Safety
    questions: tuple[OpenQuestion, ...]
    differences: tuple[Difference, ...]
    numbers: tuple[NumberLine, ...]
    counts: Mapping[str, int]
    condition: tuple[Say, ...]
    unlinked_statements: tuple[UnlinkedStatement, ...]
    decoded: Mapping[str, Decoded]
    years: Years
    dates: tuple[PartDate, ...]
    standings: tuple[Standing, ...]
    papers: tuple[PaperStanding, ...]
    paper_years: tuple[Say, ...]
    inquiries: tuple[Say, ...]
    seventeen: tuple[SeventeenLine, ...]
    stamping: tuple[tuple[str, Say], ...]
    measured: tuple[MeasuredLine, ...]


def judge(profile: Profile, record: Record) -> Judgement:
    """Everything that the record means by the profile; the same for the same two, whenever and wherever."""
    found = by_item(record)
    at = states(profile, record, found)
    differing = differences(profile, record, at, found)
    decoded = {reading.id: decode_reading(profile, reading) for reading in record.readings}
    sides = sides_of(profile, record, decoded)
    standings = relations(profile, record, decoded, sides)
    return Judgement(
        states=at,
        score=score(profile, record, at),
        points=points(profile, record, at),
        safety=safety(profile, record, at, found),
        questions=questions(profile, record, at, standings, differing),
        differences=differing,
        numbers=numbers(profile, record, decoded),
        counts=_counts(at),
        condition=condition(profile, record, found),
        unlinked_statements=unlinked_statements(record),
        decoded=decoded,
        years=years(profile, record, decoded, found),
        dates=dated(profile, record, decoded),
        standings=standings,
        papers=compare_papers(profile, record, decoded, sides),
        paper_years=years_kept_apart(record),
        inquiries=inquiries_said(record),
        seventeen=seventeens(profile, record),
        stamping=stamping_said(profile, record),
        measured=measured_lines(profile, record),
    )


def _counts(at: Mapping[str, ItemState]) -> dict[str, int]:
    """How many items carry each sign, every sign named even where there are none."""
    counted = Counter(state.sign for state in at.values())
    return {sign: counted[sign] for sign in SIGNS}


def to_json(judgement: Judgement) -> dict[str, Any]:
    """The judgement as plain dictionaries, lists, figures and texts; a finding is named by its key."""
    return dict(plain(judgement))
