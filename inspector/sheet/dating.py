"""A pack for an application to have a machine dated: photographs, numbers, component ages. No money, no place."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from inspector.judgement.components import components
from inspector.record.versions import without_money
from inspector.record.words import Role
from inspector.sheet import people
from inspector.sheet.blocks import Block, Head, ListBlock, Phrase, Row, Sheet
from inspector.sheet.figure_blocks import FigureRow, FiguresBlock, ViewsBlock
from inspector.sheet.photos import pictures_of
from inspector.sheet.reading import numbers_block
from inspector.sheet.seen import sources_block
from inspector.sheet.standing import beside_blocks, seventeen_blocks
from inspector.sheet.words import moment, sentence, year_of
from inspector.sheet.year_evidence import evidence_row
from inspector.sheet.years import years_block
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.judgement.components import Component, Components
    from inspector.judgement.judge import Judgement
    from inspector.profile.model import Profile
    from inspector.record.model import Record

FOOT = "Says what one inspection found. No authority is bound by it; who dates a machine decides by their own rules."


def dating_sheet(
    profile: Profile, record: Record, judgement: Judgement, pictures: Mapping[str, bytes], made_at: str, version: int
) -> Sheet:
    """The pack as composed text, from the record without its money."""
    record = without_money(record)
    return Sheet(
        title=tr("For an application to date a machine"), kind="dating", record_id=record.id, version=version,
        made_at=made_at, machine=people.machine_name(record), author=people.names_as(record, Role.INSPECTOR),
        foot=tr(FOOT),
        stamp=(tr("Record {record}, version {version}", record=record.id, version=version), moment(made_at)),
        blocks=tuple(_blocks(profile, record, judgement, pictures, made_at)),
    )  # fmt: skip


def plain_head(record: Record, profile: Profile) -> Head:
    """The machine and its claim, by whom and on which day it was looked at; not where."""
    inspector = people.names_as(record, Role.INSPECTOR) or tr("nobody named")
    when = moment(record.claim.date) or tr("a day not noted")
    example = (tr("This is an invented example: no such machine and no such people."),)
    return Head(
        people.machine_name(record), Phrase(tr("Claimed: {year}.", year=year_of(record)),
                                            sentence(tr("Looked at on {when} by {who}", when=when, who=inspector))),
        example if record.invented or profile.invented else (),
    )  # fmt: skip


def _blocks(
    profile: Profile, record: Record, judgement: Judgement, pictures: Mapping[str, bytes], made_at: str
) -> Iterator[Block]:
    found = components(judgement.years)
    yield plain_head(record, profile)
    yield _youngest_block(found)
    yield _ages_block(profile, found, made_at)
    yield numbers_block(profile, record, judgement)
    yield from beside_blocks(record, judgement)
    yield from seventeen_blocks(judgement)
    codes = tuple(Row("", Phrase("", tr(one.sentence))) for one in judgement.dates)
    if codes:
        yield ListBlock(tr("Date codes of parts"), codes)
    yield years_block(profile, judgement)
    yield people.claim_block(record)
    yield sources_block()
    yield from _photographs(profile, record, pictures)


def _youngest_block(found: Components) -> ListBlock:
    rows = [Row("", Phrase(tr(found.sentence)))]
    rows += [Row("", Phrase("", tr(one))) for one in found.reasons]
    rows.append(Row("", Phrase("", tr("This is what was found on one day; no authority is bound by it."))))
    return ListBlock(tr("Youngest major component"), tuple(rows))


def _ages_block(profile: Profile, found: Components, made_at: str) -> FiguresBlock:
    rows = [row for one in found.rows for row in _component(profile, one, made_at)]
    return FiguresBlock(tr("Ages of the major components"), (tr("years"), tr("about, years old")), tuple(rows),
                        column=30.0)  # fmt: skip


def _component(profile: Profile, one: Component, made_at: str) -> Iterator[FigureRow]:
    """The component with its years and age, then each part that shows them."""
    name = tr(one.name)
    name = name[:1].upper() + name[1:]
    yield FigureRow(name, (tr(one.sentence) if one.years else "–", _age(one, made_at)),
                    "" if one.years else sentence(tr(one.sentence)), strong=True)  # fmt: skip
    for part in one.parts:
        told = evidence_row(profile, part)
        yield FigureRow(told.name, (told.cells[0], ""), told.said, level=1)


def _age(one: Component, made_at: str) -> str:
    """Full years from the last and the first allowed year to the year in which the pack was made."""
    try:
        now = datetime.fromisoformat(made_at).year
    except ValueError:
        return ""
    if not one.years:
        return tr("not shown") if one.not_before is None else tr("{age} at most", age=now - one.not_before)
    least, most = now - max(one.years), now - min(one.years)
    return str(least) if least == most else tr("{least} to {most}", least=least, most=most)


def _photographs(profile: Profile, record: Record, store: Mapping[str, bytes]) -> Iterator[ViewsBlock]:
    """Photographs of each number, of each component's items, then all others; no photograph twice."""
    pictures, told = pictures_of(record, store), set[str]()
    places = {place.id: place.name for place in profile.places}
    assemblies = {item.id: tr(item.assembly.value) for item in profile.items()}
    groups = (
        (tr("Numbers"), [p.id for p in record.photographs if p.place in places]),
        *((name[:1].upper() + name[1:], [p.id for p in record.photographs if assemblies.get(p.item) == name])
          for name in dict.fromkeys(assemblies.values())),
        (tr("Other photographs"), [p.id for p in record.photographs]),
    )  # fmt: skip
    for title, ids in groups:
        new = [one for one in ids if one not in told]
        told.update(new)
        if new:
            yield ViewsBlock(tr("Photographs: {of}", of=title), tuple(pictures[one] for one in new))
    if not record.photographs:
        yield ViewsBlock(tr("Photographs"), (), tr("No photograph is kept with this record."))
