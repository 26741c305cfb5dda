"""A walk sheet to fill in on paper, for any profile and year: short, or in full with how to look and sources."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from inspector.profile.expected import applies
from inspector.sheet.blocks import (
    BlanksBlock,
    Block,
    CautionsBlock,
    ListBlock,
    Phrase,
    Row,
    Sheet,
    StationBlock,
    WalkItem,
)
from inspector.sheet.expects import expectations, span
from inspector.sheet.people import cautions_block
from inspector.sheet.seen import NO_RIDE, sources_block
from inspector.sheet.short import CLAIM, blank_head, short_blocks
from inspector.sheet.words import FOOT, listed, moment
from inspector.texts import tr

if TYPE_CHECKING:
    from inspector.profile.items import Item, Measure, Station
    from inspector.profile.model import Profile


Form = Literal["short", "full"]


def blank_sheet(profile: Profile, year: int | None, made_at: str, form: Form = "short") -> Sheet:
    """The walk of the profile with what a machine of that year should have, and room to write.

    The short form has one ruled line an item; the full form adds questions, ways to look, measures and sources.
    """
    short = form == "short"
    return Sheet(
        title=tr("Walk sheet, short form") if short else tr("Walk sheet, full form"),
        kind="blank",
        record_id="",
        version=0,
        made_at=made_at,
        machine=profile.title,
        author="",
        foot=tr(FOOT),
        stamp=(tr("Profile {id}, version {version}", id=profile.id, version=profile.version), moment(made_at)),
        blocks=short_blocks(profile, year) if short else _blocks(profile, year),
    )


def _blocks(profile: Profile, year: int | None) -> tuple[Block, ...]:
    numbers = {item.id: at for at, item in enumerate((i for i in profile.items() if applies(i, year)), 1)}
    stations = tuple(_station(profile, station, numbers, year) for station in profile.stations)
    return (
        blank_head(profile, year),
        BlanksBlock(tr("The claim"), tuple(tr(b) for b in CLAIM)),
        _how_to_fill(profile),
        _before(profile),
        BlanksBlock(tr("Numbers"), tuple(_place(profile, p.id) for p in profile.places), True, _figures()),
        sources_block(),
        *(s for s in stations if s.items),
        _shots(profile),
        BlanksBlock(tr("Said by the seller"), ("", "", "")),
        BlanksBlock(tr("Signed"), (tr("inspector, date"), tr("seller, date"))),
    )


def _station(profile: Profile, station: Station, numbers: dict[str, int], year: int | None) -> StationBlock:
    items = tuple(_item(profile, i, numbers[i.id], year) for i in station.items if i.id in numbers)
    return StationBlock(station.name, station.say_first, items)


def _how_to_fill(profile: Profile) -> ListBlock:
    rows = (
        Row("", Phrase(tr("Mark:"), tr("pass, doubt or fail."))),
        Row("", Phrase(tr("Not marked:"), tr("write not checked, not seen, cannot be seen, or not fitted."))),
        Row("", Phrase(tr("Why:"), tr("what it shows, how sure (sure, likely, possible), and how it shows."))),
        Row("", Phrase(tr("Bring:"), listed(dict.fromkeys(_to_bring(profile))) or tr("nothing named"))),
    )
    return ListBlock(tr("How to fill it in"), rows, note=tr("What was not seen is never right."))


def _to_bring(profile: Profile) -> tuple[str, ...]:
    return (*profile.tools, *(thing for item in profile.items() for thing in item.bring))


def _before(profile: Profile) -> CautionsBlock:
    block = cautions_block(profile)
    return CautionsBlock(block.title, (Row("", Phrase(tr(NO_RIDE))), *block.rows))


def _place(profile: Profile, place_id: str) -> str:
    place = profile.place_by_id[place_id]
    return listed((place.name, place.where, place.how_to_read, place.caution), "; ")


def _figures() -> str:
    return tr("One figure a place. ? is unreadable; write both where two are possible.")


def _item(profile: Profile, item: Item, number: int, year: int | None) -> WalkItem:
    rows = (
        Row(tr("Look"), Phrase("", item.how)),
        Row(tr("Tell by"), Phrase("", listed((f"{v.name}: {v.tell}" for v in item.variants if v.tell), "; "))),
    )
    return WalkItem(
        number,
        item.name,
        item.question,
        tuple(row for row in rows if str(row.said)),
        expectations(profile, item, year),
        tuple(_measure(m, year) for m in item.measures),
        item.place is not None,
        item.caution,
    )


def _measure(measure: Measure, year: int | None) -> str:
    reach = listed((measure.start, measure.end), tr(" to "))
    should = listed(
        (span(measure, n) for n in measure.nominals if year is None or n.years.holds(year)), tr(" or ")
    )
    name = f"{measure.name} ({reach})" if reach else measure.name
    unit = tr("in {unit}", unit=tr(measure.unit.value))
    return listed((name, tr("should be {should}", should=should) if should else unit), "; ")


def _shots(profile: Profile) -> ListBlock:
    rows = tuple(Row("", Phrase(shot.name + (":" if shot.how else ""), shot.how)) for shot in profile.shots)
    return ListBlock(tr("Photographs to bring home"), rows, numbered=True, note="" if rows else tr("None is listed."))
