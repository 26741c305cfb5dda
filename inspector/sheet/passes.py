"""What passed, one entry an item: what is fitted, why it is right, what was expected, who said so."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.proposal import expected_lines
from inspector.sheet.blocks import PassesBlock, Phrase, Row
from inspector.sheet.finding import in_short
from inspector.sheet.words import listed, said_by, sentence
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.judgement.judge import Judgement
    from inspector.judgement.proposal import ExpectedLine
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record
    from inspector.sheet.blocks import Picture

DAY = len("2025-05-17")


def passes_block(
    profile: Profile, record: Record, judgement: Judgement, told: set[str], pictures: Mapping[str, Picture]
) -> PassesBlock:
    """Every item that passed and is not told in full, each finding with what was expected and its source."""
    items = [i for i in profile.items() if i.id not in told and _passed(judgement, i.id)]
    found = [(item, finding) for item in items for finding in judgement.states[item.id].findings]
    one = _one_voice(record, [finding for _, finding in found])
    rows = tuple(_row(profile, record, item, finding, pictures, one) for item, finding in found)
    who = tr("Said by {who}.", who=one) if one else ""
    note = listed((who, tr("The source of what was expected stands last.")), " ")
    return PassesBlock(tr("What passed"), rows, sign="pass", note=note if rows else tr("Nothing is marked pass."))


def _one_voice(record: Record, found: list[Finding]) -> str:
    """Who said all of it on which day, where that is one person and one day."""
    voices = {said_by(record, f.by, f.at[:DAY]) for f in found}
    return voices.pop() if len(voices) == 1 else ""


def _passed(judgement: Judgement, item: str) -> bool:
    state = judgement.states.get(item)
    return state is not None and state.sign == "pass"


def _row(
    profile: Profile, record: Record, item: Item, finding: Finding, pictures: Mapping[str, Picture], one: str
) -> Row:  # fmt: skip
    said = Phrase(item.name + ":", sentence(in_short(item, finding)))
    shown = [pictures[p.id].number for p in record.photographs_at(item.id)]
    seen = trn("photograph {numbers}", "photographs {numbers}", len(shown), numbers=listed(map(str, shown)))
    expected = _expected(expected_lines(profile, item, record.claim.model_year), finding.fitted)
    who = "" if one else said_by(record, finding.by, finding.at)
    return Row("", said, sentence(listed((expected, seen if shown else "", who), "; ")))


def _expected(lines: Iterable[ExpectedLine], fitted: str) -> str:
    """What was expected, in one line with its sources; where that is the form found fitted, its sources alone."""
    at = {line.variant: line for line in lines}
    if fitted in at:
        return _sources(at[fitted])
    forms = (f"{line.name} ({_sources(line)})" for line in at.values())
    return tr("expected: {forms}", forms=listed(forms, tr(" or "))) if at else ""


def _sources(line: ExpectedLine) -> str:
    cited = (listed((s.title, s.place)) for s in line.sources)
    return listed((*(cited if line.sources else (tr("no source"),)), tr("the sources differ") if line.disputed else ""),
                  " + ")  # fmt: skip
