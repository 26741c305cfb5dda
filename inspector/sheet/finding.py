"""Findings in full as they stand on a sheet: fails and doubts first."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inspector.record.words import Evidence, Mark
from inspector.sheet.blocks import Entry, FindingsBlock, Phrase, Row, Voice
from inspector.sheet.expects import expectations, sizes
from inspector.sheet.material import material_rows, material_words
from inspector.sheet.measured_values import measured_rows, measured_words, photograph_rows, with_photographs
from inspector.sheet.words import listed, said_by, sentence, year_of
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.judge import Judgement
    from inspector.judgement.state import ItemState
    from inspector.profile.items import Item
    from inspector.profile.model import Profile
    from inspector.record.finding import Finding
    from inspector.record.model import Record
    from inspector.sheet.blocks import Expectation, Picture

ORDER = {"fail": 0, "doubt": 1, "pass": 2}


class InFull(NamedTuple):
    """An item that is told in full: its id, its sign, and all that was found there."""

    item: str
    sign: str
    findings: tuple[Finding, ...]
    differs: bool


def in_full(profile: Profile, record: Record, judgement: Judgement) -> tuple[InFull, ...]:
    """Fails, then doubts, then what else must be told in full, each in the order of the walk.

    Told in full besides: what observers differ on, what anybody called unsafe, and what was examined but not marked.
    """
    walk = [_state_in_full(s) for i in profile.items() if (s := judgement.states.get(i.id)) and _needs_words(record, s)]
    strangers = dict.fromkeys(f.item for f in record.findings if f.item not in judgement.states)
    walk += [_stranger(record, item) for item in strangers]
    return tuple(sorted(walk, key=lambda told: ORDER.get(told.sign, 3)))


def _needs_words(record: Record, state: ItemState) -> bool:
    if state.sign in ("fail", "doubt") or state.differs or any(f.unsafe for f in state.findings):
        return True
    return state.sign == "examined" and (any(map(_says, state.findings)) or bool(record.photographs_at(state.item)))


def _says(finding: Finding) -> bool:
    words = (finding.note, finding.next_step, finding.reply, finding.fitted, finding.fitted_other)
    noted = finding.conclusions or finding.evidence or finding.measured or finding.conditions
    return any(words) or bool(noted or finding.material.told)


def _state_in_full(state: ItemState) -> InFull:
    return InFull(state.item, state.sign, state.findings, state.differs)


def _stranger(record: Record, item: str) -> InFull:
    """An item that this profile does not list, with the gravest mark that anybody gave it."""
    findings = record.findings_at(item)
    marks = {f.mark for f in findings}
    grave = next((m for m in (Mark.FAIL, Mark.DOUBT, Mark.PASS) if m in marks), None)
    return InFull(item, grave.value if grave else findings[0].seen.value, findings, len(marks) > 1)


def findings_block(
    profile: Profile, record: Record, told: tuple[InFull, ...], pictures: Mapping[str, Picture]
) -> FindingsBlock:
    """The findings in full, numbered from 1."""
    entries = tuple(_entry(profile, record, number, one, pictures) for number, one in enumerate(told, 1))
    note = tr("expected as for a {year}", year=year_of(record)) if record.claim.model_year else year_of(record)
    none = "" if entries else tr("No doubt and no fail is recorded.")
    return FindingsBlock(tr("Findings"), note, entries, none)


def _entry(
    profile: Profile, record: Record, number: int, told: InFull, pictures: Mapping[str, Picture]
) -> Entry:  # fmt: skip
    item = profile.item_by_id.get(told.item)
    expected: tuple[Expectation, ...] = ()
    if item is not None:
        year = record.claim.model_year
        fitted = [f.fitted for f in told.findings if f.fitted]
        measured = [m.measure for f in told.findings for m in f.measured]
        expected = expectations(profile, item, year) + sizes(profile, item, year, fitted, measured)
    shown = record.photographs_at(told.item)
    voices = tuple(_voice(record, item, finding) for finding in told.findings)
    voices = with_photographs(voices, photograph_rows(shown, pictures))
    if told.differs:
        voices = (Voice((Row("", Phrase(tr("Two who looked differ, and both are kept."))),)), *voices)
    return Entry(
        number, told.sign, tr(word_of(told.sign)), item.name if item else _unlisted(told.item), expected, voices,
        tuple(pictures[p.id] for p in shown),
    )  # fmt: skip


def _unlisted(item: str) -> str:
    return tr("{item} (not listed in this profile)", item=item)


def word_of(sign: str) -> str:
    """The English word that stands beside a sign."""
    return "examined, no mark yet" if sign == "examined" else sign


def _voice(record: Record, item: Item | None, finding: Finding) -> Voice:
    rows = (
        Row(tr("Found"), _found(item, finding)),
        *measured_rows(item, finding, record.claim.model_year),
        *material_rows(finding),
        Row(tr("Why"), why(finding)),
        Row(tr("Note"), Phrase("", finding.note)),
        Row(tr("Next step"), Phrase("", finding.next_step)),
        Row(tr("Reply"), Phrase("", tr("seller: {reply}", reply=finding.reply) if finding.reply else "")),
    )
    return Voice(tuple(row for row in rows if str(row.said).strip()), _mark_said(record, finding))


def _found(item: Item | None, finding: Finding) -> Phrase:
    """What was called unsafe, what is fitted and in which condition."""
    fitted = listed((_open_ended(fitted_words(item, finding)), *(tr(c.value) for c in finding.conditions)), "; ")
    unsafe = tr("Marked unsafe.") if finding.unsafe else ""
    return Phrase(unsafe, sentence(fitted))


def _mark_said(record: Record, finding: Finding) -> str:
    mark = tr(finding.mark.value) if finding.mark else tr(finding.seen.value)
    return f"{said_by(record, finding.by, finding.at)}: {mark}"


def fitted_words(item: Item | None, finding: Finding) -> str:
    """What was found fitted, in the words of the profile or of the person."""
    variant = next((v for v in item.variants if v.id == finding.fitted), None) if item and finding.fitted else None
    named = variant.name if variant else finding.fitted
    return listed((named, finding.fitted_other), "; ")


def why(finding: Finding) -> Phrase:
    """The conclusions, each with how sure, and the evidence; both said to be wanting where they are."""
    strong = "; ".join(f"{tr(c.what.value)}, {tr(c.sureness.value)}" for c in finding.conclusions)
    evidence = listed(_evidence(e, finding.book) for e in finding.evidence)
    if finding.mark is None and not strong and not evidence:
        return Phrase("")
    strong = (strong or tr("no conclusion recorded")) + ":"
    return Phrase(strong, (evidence or tr("no evidence recorded")) + ".")


def _evidence(kind: Evidence, book: str) -> str:
    return f"{tr(kind.value)} ({book})" if kind is Evidence.BOOK and book else tr(kind.value)


def in_short(item: Item | None, finding: Finding) -> str:
    """Everything of a finding but its mark, in one line."""
    parts = (
        fitted_words(item, finding),
        str(why(finding)),
        tr("marked unsafe") if finding.unsafe else "",
        listed(tr(c.value) for c in finding.conditions),
        measured_words(item, finding),
        material_words(finding),
        finding.note,
        tr("next step: {step}", step=finding.next_step) if finding.next_step else "",
        tr("seller’s reply: {reply}", reply=finding.reply) if finding.reply else "",
    )
    return listed((_open_ended(part) for part in parts), "; ")


def _open_ended(part: str) -> str:
    """The part without its one full stop, so that another can follow."""
    part = part.strip()
    return part[:-1] if part.endswith(".") and not part.endswith("..") else part
