"""Numbers as read, figure by figure, and the places that were not read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.reading import numbered
from inspector.record.words import Clarity, StampSight
from inspector.sheet.blocks import Cell, NumberRow, NumbersBlock
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Figure, Reading


def numbers_block(profile: Profile, record: Record) -> NumbersBlock:
    """Every reading in the order of the profile's places, then the places nobody read."""
    order = {place.id: at for at, place in enumerate(profile.places)}
    readings = sorted(record.readings, key=lambda r: order.get(r.place, len(order)))
    rows = [_row(profile, record, reading) for reading in readings]
    read = {reading.place for reading in record.readings}
    rows += [NumberRow(p.name, "", (), tr("not read"), "") for p in profile.places if p.id not in read]
    return NumbersBlock(tr("Numbers as read"), tuple(rows))


def _row(profile: Profile, record: Record, reading: Reading) -> NumberRow:
    place = profile.place_by_id.get(reading.place)
    typed = reading.typed()
    how = tr("{how} by {who}", how=_how(reading), who=record.name_of(reading.by)) if reading.by else _how(reading)
    more = (_cleaned(reading), _stamping(reading), reading.note)
    return NumberRow(
        place.name if place else reading.place,
        typed,
        tuple(_cell(figure) for figure in reading.figures),
        tr("as read, not compared"),
        f"{how}; {clearness(reading)}",
        tuple(part for part in more if part),
    )


def _how(reading: Reading) -> str:
    """How it was read; who read it stands beside it."""
    return tr(reading.how_read.value.removesuffix(" by me"))


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
    return Cell(figure.could_be[0] if figure.could_be else "?", figure.clarity.value)


def _cleaned(reading: Reading) -> str:
    if not reading.cleaned:
        return ""
    if reading.leave_of:
        return sentence(tr("cleaned, with leave of {who}", who=reading.leave_of))
    return sentence(tr("cleaned; with whose leave is not noted"))


def _stamping(reading: Reading) -> str:
    """The features of the stamping under what was seen of them."""
    by_sight = {sight: [n.replace("_", " ") for n, s in reading.stamping.items() if s is sight] for sight in StampSight}
    sights = listed((f"{tr(sight.value)} {listed(names)}" for sight, names in by_sight.items() if names), "; ")
    return sentence(tr("stamping: {sights}", sights=sights)) if sights else ""
