"""Numbers as read, figure by figure, what each says by the rules of its place, and the places that were not read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.decode import Outcome
from inspector.judgement.decoded_words import (
    answers,
    condition_words,
    decoded_words,
    grouped,
    hit_words,
    serial_words,
)
from inspector.judgement.stamping import CAUTION, stamping_said
from inspector.record.reading import numbered
from inspector.record.words import Clarity, HowRead, NumberState
from inspector.sheet.blocks import Cell, Cited, Expectation, NumberRow, NumbersBlock
from inspector.sheet.expects import no_source
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.judgement.decode import Decoded
    from inspector.judgement.decoded_words import Answer
    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Figure, Reading

MOST_TOLD = 3  # possibilities told one by one; of more, what they have in common is told


def numbers_block(profile: Profile, record: Record, judgement: Judgement) -> NumbersBlock:
    """Every reading in the order of the profile's places, then the places nobody read."""
    order = {place.id: at for at, place in enumerate(profile.places)}
    readings = sorted(record.readings, key=lambda r: order.get(r.place, len(order)))
    rows = [_row(profile, record, judgement, reading) for reading in readings]
    read = {reading.place for reading in record.readings}
    rows += [NumberRow(p.name, "", (), tr("not read"), "") for p in profile.places if p.id not in read]
    note = tr(CAUTION) if judgement.stamping else ""
    return NumbersBlock(tr("Numbers as read"), tuple(rows), note)


def _row(profile: Profile, record: Record, judgement: Judgement, reading: Reading) -> NumberRow:
    place = profile.place_by_id.get(reading.place)
    decoded = judgement.decoded.get(reading.id)
    how = _how_by(reading.how_read, record.name_of(reading.by) if reading.by else "", there=bool(reading.figures))
    return NumberRow(
        place.name if place else reading.place,
        reading.typed(),
        tuple(_cell(figure) for figure in reading.figures),
        _says(profile, reading, decoded),
        f"{how}; {clearness(reading)}",
        tuple(dict.fromkeys(part for part in _more(profile, record, judgement, reading) if part)),
        _reads(profile, reading, decoded),
    )


def _says(profile: Profile, reading: Reading, decoded: Decoded | None) -> str:
    """What stands first where no rule reads the number, or none was read; nothing where a rule reads it."""
    if reading.state is not NumberState.READ or not reading.figures:
        return tr(reading.state.value) if reading.state is not NumberState.READ else tr("nothing read")
    if decoded is None or decoded.outcome is Outcome.DECODED:
        return ""
    told = decoded_words(profile, decoded)
    return tr(told) if told is not None else tr("nothing read")


def _reads(profile: Profile, reading: Reading, decoded: Decoded | None) -> tuple[Expectation, ...]:
    """Each possibility by itself while they are few, in the order in which the figures were guessed."""
    if decoded is None or not decoded.hits:
        return ()
    told = answers(decoded.hits)
    if len(told) <= MOST_TOLD:
        return tuple(_read(profile, decoded, one) for one in sorted(told, key=lambda one: _guessed(reading, one)))
    said = decoded_words(profile, decoded)
    return (Expectation(tr(said).rstrip(".") if said else "", _cited(profile, decoded.sources)),)


def _read(profile: Profile, decoded: Decoded, told: Answer) -> Expectation:
    hit = told.hit
    number = serial_words(hit) if hit.row is not None else decoded.typed
    if hit.serials > 1:
        number = tr("{count} numbers remain, {number}", count=grouped(str(hit.serials)), number=number)
    if hit.if_figures:
        number = tr("{number}, {condition}", number=number, condition=tr(condition_words(hit.if_figures)))
    said = tr("{number}: {answer}", number=number, answer=tr(hit_words(hit)))
    return Expectation(said.rstrip("."), _cited(profile, told.sources), hit.note)


def _guessed(reading: Reading, told: Answer) -> list[int]:
    """How early each figure of the condition stands among what was guessed at its place."""
    figures = dict(numbered(reading.figures))
    return [
        figures[number].could_be.index(sign) if number in figures and sign in figures[number].could_be else 0
        for number, sign in told.hit.if_figures
    ]


def _cited(profile: Profile, sources: Iterable[str]) -> tuple[Cited, ...]:
    known = [profile.source_by_id[one] for one in dict.fromkeys(sources) if one in profile.source_by_id]
    best = sorted(known, key=lambda source: -source.grade)
    return tuple(Cited(s.grade, listed((tr(s.kind.value), s.title))) for s in best) or (no_source(),)


def _more(profile: Profile, record: Record, judgement: Judgement, reading: Reading) -> Iterable[str]:
    """Where sources disagree, what was assumed, how a date stands to the claim, what was seen of the stamping."""
    decoded = judgement.decoded.get(reading.id)
    if decoded is not None and decoded.hits:
        yield tr(decoded.disagreement) if decoded.disagreement is not None else ""
        yield from (tr(reason) for reason in decoded.reasons)
    dates = (d for d in judgement.dates if (d.place, d.typed) == (reading.place, reading.typed()) and d.typed)
    yield from (tr(date.sentence) for date in dates)
    alone = record.model_copy(update={"readings": (reading,)})
    yield from (tr(said) for _, said in stamping_said(profile, alone))
    yield reading.note


def _how_by(how: HowRead, who: str, *, there: bool) -> str:
    if not who:
        return how_read(how)
    if not there and how is HowRead.NOT_SAID:
        return tr("noted by {who}", who=who)
    if how is HowRead.NOT_SAID:
        return tr("{who} did not say how it was read", who=who)
    return tr("{how} by {who}", how=how_read(how), who=who)


def how_read(how: HowRead) -> str:
    """How a number was read, without the "by me" of whoever entered it."""
    return tr(how.value.removesuffix(" by me"))


def clearness(reading: Reading) -> str:
    """Which figures were not clear, and what they could be."""
    if not reading.figures:
        return tr("no figure noted")
    unclear = [
        _unclear(at, figure) for at, figure in numbered(reading.figures) if figure.clarity is not Clarity.CLEAR
    ]
    return listed(unclear) if unclear else tr("every figure clear")


def _unclear(at: int, figure: Figure) -> str:
    if figure.clarity is Clarity.UNREADABLE:
        return tr("figure {at} is unreadable", at=at)
    if len(figure.could_be) == 1:
        return tr("figure {at} is probably {one}", at=at, one=figure.could_be[0])
    return tr("figure {at} is {either}", at=at, either=tr(" or ").join(figure.could_be))


def _cell(figure: Figure) -> Cell:
    others = " ".join(figure.could_be[1:])
    shown = figure.could_be[0] if figure.could_be else "?"
    return Cell(shown, figure.clarity.value, tr("or {others}", others=others) if others else "")
