"""What was measured, at the machine and in photographs, as it stands on a sheet: value, spread, doubt, what it fits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.lengths import instrument_of
from inspector.judgement.measured import measured_line
from inspector.photo.references import figures
from inspector.profile.words import Unit
from inspector.sheet.blocks import ListBlock, Phrase, Row, Voice
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from inspector.profile.items import Item
    from inspector.record.finding import Finding, Measured, Photograph, PhotoMeasure
    from inspector.record.model import Record
    from inspector.sheet.blocks import Picture


class MeasuredBlock(ListBlock):
    """What was measured in photographs that stand at no finding in full."""


def measured_words(item: Item | None, finding: Finding) -> str:
    """Every measure in one line: readings, unit, instrument, mean and spread of several, and what they fit."""
    return listed(
        (tr("{name}: {readings}", name=_name(item, one), readings=_told(item, one, finding.by))
         for one in finding.measured), "; ",
    )  # fmt: skip


def measured_rows(item: Item | None, finding: Finding, year: int | None) -> tuple[Row, ...]:
    """A row for each measure, below it how well it is known and with which probability it conforms."""
    return tuple(
        Row(tr("Measured"), Phrase(_name(item, one) + ":", _told(item, one, finding.by) + "."),
            _reasons(item, one, finding.by, year))
        for one in finding.measured
    )  # fmt: skip


def with_photographs(voices: tuple[Voice, ...], rows: tuple[Row, ...]) -> tuple[Voice, ...]:
    """What was measured in photographs behind what was said: behind the one who spoke, or behind all of them."""
    if len(voices) == 1:
        return (Voice((*voices[0].rows, *rows), voices[0].said),)
    return (*voices, Voice(rows)) if rows else voices


def photograph_rows(photographs: Iterable[Photograph], pictures: Mapping[str, Picture]) -> tuple[Row, ...]:
    """A row for each measurement kept with these photographs: its 95 % interval, below it what it rests on."""
    return tuple(
        _photograph_row(one, kept, pictures[one.id].number) for one in photographs for kept in one.measures
    )  # fmt: skip


def photographs_block(record: Record, pictures: Mapping[str, Picture], told: Iterable[str]) -> MeasuredBlock | None:
    """What was measured in photographs of nothing that is told in full; None where there is none."""
    at = frozenset(told)
    rows = photograph_rows((p for p in record.photographs if p.item not in at), pictures)
    return MeasuredBlock(tr("Measured in photographs"), rows) if rows else None


def _photograph_row(photograph: Photograph, kept: PhotoMeasure, number: int) -> Row:
    value, *rest = kept.note.splitlines() or [_interval(kept)]
    named = tr("{what} in photograph {number}:", what=sentence(tr(kept.what)).rstrip("."), number=number)
    return Row(tr("Measured"), Phrase(named, sentence(value)), " ".join(rest))


def _interval(kept: PhotoMeasure) -> str:
    """The value with its 95 % interval, where a record tells no words of its own."""
    ends = (kept.value, kept.low, kept.high)
    places = figures(kept.uncertainty) if kept.uncertainty is not None else 0
    value, low, high = (f"{end:.{places}f}" if end is not None else tr("not known") for end in ends)
    return tr("{value} {unit}; 95 %: {low} to {high} {unit}", value=value, low=low, high=high, unit=kept.unit)


def _name(item: Item | None, measured: Measured) -> str:
    return next((m.name for m in item.measures if m.id == measured.measure), measured.measure) if item else (
        measured.measure
    )  # fmt: skip


def _told(item: Item | None, measured: Measured, by: str) -> str:
    """Readings as they were typed, then with what, then what they give."""
    by_what = tr(" by {instrument}", instrument=_instrument(measured)) if measured.instrument else ""
    return _readings(measured) + by_what + (_gives(item, measured, by) if item else "")


def _readings(measured: Measured) -> str:
    read = [reading for reading in measured.readings if reading.strip()]
    return f"{listed(read)} {measured.unit}".strip() if read else tr("not read")


def _instrument(measured: Measured) -> str:
    unit = next((u for u in Unit if u.value == measured.unit), Unit.MM)
    known = instrument_of(measured.instrument, unit)
    return tr(known.name) if known else measured.instrument


def _gives(item: Item, measured: Measured, by: str) -> str:
    """What the readings fit, with the mean and spread of several; nothing where they are no lengths."""
    line = measured_line(item, measured, by, None)
    if line is None or not line.shown:
        return ""
    fit = tr(line.fit)
    if not line.spread:
        return tr(", {fit}", fit=fit)
    unit = next(m.unit.value for m in item.measures if m.id == measured.measure)
    return tr(", mean {mean} {unit}, spread {spread} {unit}, {fit}", mean=line.shown, spread=line.spread,
              unit=tr(unit), fit=fit)  # fmt: skip


def _reasons(item: Item | None, measured: Measured, by: str, year: int | None) -> str:
    line = measured_line(item, measured, by, year) if item else None
    return " ".join(tr(reason) for reason in line.reasons) if line else ""
