"""The short walk sheet: a table for each station, one ruled line an item."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from inspector.judgement.proposal import expected_lines
from inspector.judgement.route import first_ten, order
from inspector.record.begin import new_record
from inspector.record.claim import Claim
from inspector.record.model import ProfileRef
from inspector.sheet.blocks import BlanksBlock, Block, Head, Phrase, Row, TableBlock, TableItem, WideBlock
from inspector.sheet.people import cautions_block
from inspector.sheet.seen import NO_RIDE
from inspector.sheet.words import listed, sentence
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.profile.items import Item, Measure, Nominal, Station
    from inspector.profile.model import Profile
    from inspector.record.model import Record

DECIDED = (
    "Ownership, theft, registration and roadworthiness are decided by the authorities and licensed people of the place."
)
SIGN = ("inspector, date", "seller, date")
CLAIM = ("Advertised as", "Titled as", "Model year", "Build date", "First registration", "Year on the title",
         "Place, date, light", "Inspector, interest", "Seller")  # fmt: skip


def short_blocks(profile: Profile, year: int | None) -> tuple[Block, ...]:
    """Claim, cautions and numbers first, then every item of the year in walking order, then what is signed."""
    record = _nothing_seen(profile, year)
    return (
        blank_head(profile, year),
        BlanksBlock(tr("The claim"), tuple(tr(b) for b in CLAIM), across=3),
        _before(profile),
        _numbers(profile),
        *_tables(profile, record),
        _shots(profile),
        BlanksBlock(tr("Said by the seller, and signed"), ("", "", *(tr(who) for who in SIGN)), across=2),
    )


def blank_head(profile: Profile, year: int | None) -> Head:
    """The machine's name and the year for which what is expected is told."""
    said = tr("Expected as for a {year} model.", year=year) if year else tr("Expected for every model year.")
    example = tr("This is an invented example: no such machine and no such people.") if profile.invented else ""
    return Head(profile.title, Phrase(said), tuple(line for line in (example,) if line))


def _nothing_seen(profile: Profile, year: int | None) -> Record:
    """A record of which only the year is claimed: it asks for the walk as the window would give it."""
    ref = ProfileRef(id=profile.id, version=profile.version, title=profile.title)
    return new_record("blank", "", ref).model_copy(update={"claim": Claim(model_year=year)})


def _before(profile: Profile) -> WideBlock:
    """How a line is filled in, and the cautions of machine and walk."""
    rows = (
        Row("", Phrase("", tr("p pass, d doubt, f fail, n not seen, c cannot be seen, o not fitted."))),
        Row("", Phrase("", tr("An item left empty was not checked. What was not seen is never right."))),
        Row("", Phrase("•", tr("stands at the items to look at first, if there are only ten minutes."))),
        *(Row("", Phrase(tr("Cautions:") if not at else "", one)) for at, one in enumerate(_cautions(profile))),
    )
    return WideBlock(tr("To fill it in"), rows, running=True)


def _cautions(profile: Profile) -> tuple[str, ...]:
    """The cautions in whole; what the foot of every page says already is not said again."""
    said = [one for row in cautions_block(profile).rows if (one := str(row.said)) != tr(DECIDED)]
    return tuple(said) if any(NO_RIDE in one for one in said) else (tr(NO_RIDE), *said)


def _numbers(profile: Profile) -> BlanksBlock:
    """The places with room for figures; a caution that several share is said once, above them."""
    shared = [one for one, count in Counter(p.caution for p in profile.places).items() if one and count > 1]
    names = tuple(
        listed((f"{p.name}:", sentence(p.where), "" if p.caution in shared else p.caution), " ")
        for p in profile.places
    )
    figures = tr("One figure a place. ? is unreadable; write both where two are possible.")
    return BlanksBlock(tr("Numbers"), names, True, listed((*shared, figures), " "), across=2)


def _tables(profile: Profile, record: Record) -> Iterator[TableBlock]:
    walk, first = order(profile, record), frozenset(first_ten(profile, record))
    number = {item: at for at, item in enumerate(walk, 1)}
    year = record.claim.model_year
    for station in dict.fromkeys(profile.station_of[item].id for item in walk):
        items = [profile.item_by_id[i] for i in walk if profile.station_of[i].id == station]
        yield _table(profile.station_of[items[0].id], year, tuple(
            TableItem(number[i.id], i.name, _expected(profile, i, year), i.caution, i.id in first) for i in items
        ))  # fmt: skip


def _table(station: Station, year: int | None, items: tuple[TableItem, ...]) -> TableBlock:
    expected = tr("expected, {year}", year=year) if year else tr("expected")
    return TableBlock(station.name, station.say_first, (expected, tr("mark"), tr("in a word")), items)


def _expected(profile: Profile, item: Item, year: int | None) -> str:
    """The forms that may be right and what they measure, in few words; the question where neither is known."""
    lines = expected_lines(profile, item, year)
    forms = {line.variant for line in lines}
    sizes = (said for measure in item.measures if (said := _size(measure, year, forms)))
    return listed((tr(" or ").join(line.name for line in lines), *sizes), "; ") or item.question


def _size(measure: Measure, year: int | None, forms: set[str]) -> str:
    """What the measure reads at the forms that may be right; what is allowed either way stands behind it."""
    fit = [n for n in measure.nominals if (year is None or n.years.holds(year)) and n.variant in {None, *forms}]
    should = dict.fromkeys(_nominal(n) for n in fit)
    unit = tr(measure.unit.value)
    return f"{measure.name}: {tr(' or ').join(should)}\u00a0{unit}" if should else ""


def _nominal(nominal: Nominal) -> str:
    low, high = f"{nominal.value - nominal.minus:g}", f"{nominal.value + nominal.plus:g}"
    if nominal.minus == nominal.plus:
        return f"{nominal.value:g}" + (f"\u00a0±\u00a0{nominal.plus:g}" if nominal.plus else "")
    return tr("{value} ({low} to {high})", value=f"{nominal.value:g}", low=low, high=high)


def _shots(profile: Profile) -> WideBlock:
    last = len(profile.shots)
    said = (f"{at} {shot.name}" + (";" if at < last else ".") for at, shot in enumerate(profile.shots, 1))
    rows = tuple(Row("", Phrase("", words)) for words in said)
    none = (Row("", Phrase("", tr("None is listed."))),)
    return WideBlock(tr("Photographs to bring home"), rows or none, running=True)
