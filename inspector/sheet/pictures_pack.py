"""A pack of dated photographs for an insurer: the views asked for, who says what they show, worth where it is said."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.views import asked_views
from inspector.record.versions import without_money
from inspector.record.words import Role
from inspector.sheet import people
from inspector.sheet.blocks import Block, ListBlock, Phrase, Row, Sheet, SignatureBlock, Signed
from inspector.sheet.dating import plain_head
from inspector.sheet.figure_blocks import ViewsBlock
from inspector.sheet.photos import pictures_of
from inspector.sheet.pieces import Picture
from inspector.sheet.reading import how_read
from inspector.sheet.words import listed, moment
from inspector.sheet.worth_blocks import range_words, worth_lines
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.amounts import Amounts
    from inspector.judgement.reckoned import Worth
    from inspector.judgement.views import AskedView
    from inspector.profile.model import Profile
    from inspector.record.finding import Photograph
    from inspector.record.model import Record
    from inspector.record.money import Money

FOOT = "Shows the machine as photographed on the days given. What a photograph does not show is not said here."


def pictures_sheet(
    profile: Profile,
    record: Record,
    pictures: Mapping[str, bytes],
    worth: Worth,
    amounts: Amounts,
    made_at: str,
    version: int,
) -> Sheet:
    """The pack as composed text; of money only a worth that has purpose, kind, day and name."""
    money, record = record.money, without_money(record)
    return Sheet(
        title=tr("Photographs for an insurer"), kind="pictures", record_id=record.id, version=version,
        made_at=made_at, machine=people.machine_name(record), author=people.names_as(record, Role.INSPECTOR),
        foot=tr(FOOT),
        stamp=(tr("Record {record}, version {version}", record=record.id, version=version), moment(made_at)),
        blocks=(plain_head(record, profile), *_blocks(profile, record, pictures, _worth_blocks(money, worth, amounts),
                                                      made_at)),
    )  # fmt: skip


def _blocks(
    profile: Profile, record: Record, store: Mapping[str, bytes], worth: tuple[Block, ...], made_at: str
) -> Iterator[Block]:
    views = asked_views(profile, record)
    yield _listing(views)
    yield _numbers_block(profile, record)
    yield from worth
    yield _signed_block(record, made_at)
    pictures, told = pictures_of(record, store), set[str]()
    dated = {p.id: _dated(p, pictures[p.id]) for p in record.photographs}
    for view in (view for view in views if not view.missing):
        new = tuple(dated[one] for one in view.photographs if one not in told)
        again = [tr("photograph {number}", number=pictures[one].number) for one in view.photographs if one in told]
        told.update(view.photographs)
        yield ViewsBlock(tr(view.name), new, tr("Shown above: {which}.", which=listed(again)) if again else "")


def _listing(views: tuple[AskedView, ...]) -> ListBlock:
    """The views that are there, and those that are missing, by name, first of all."""
    missing = [tr(view.name) for view in views if view.missing]
    there = [tr(view.name) for view in views if not view.missing]
    rows = (
        Row(tr("Shown"), Phrase("", listed(there, "; ") or tr("none"))),
        Row(tr("Missing"), Phrase(listed(missing, "; ") or tr("none")),
            tr("No photograph shows these, and none stands for them further on.") if missing else ""),
    )
    return ListBlock(tr("Views"), rows)


def _numbers_block(profile: Profile, record: Record) -> ListBlock:
    names = {place.id: place.name for place in profile.places}
    rows = tuple(Row(names.get(one.place, one.place), Phrase(one.typed(), how_read(one.how_read)))
                 for one in record.readings if one.figures)  # fmt: skip
    return ListBlock(tr("Numbers as read"), rows, note="" if rows else tr("No number was read."))


def _worth_blocks(money: Money, worth: Worth, amounts: Amounts) -> tuple[Block, ...]:
    """The range as it stands with what it is never told without; nothing where any of that is lacking."""
    if not worth.printable or worth.as_it_stands is None:
        return ()
    told = f"{range_words(worth.as_it_stands, amounts)} {tr('comparables')}"
    opinion = tr("An opinion from the comparables entered, for this purpose, on this day.")
    rows = [Row("", Phrase(told)), *(Row("", Phrase("", line)) for line in (*worth_lines(money), opinion))]
    return (ListBlock(tr("Worth as it stands, in {currency}", currency=worth.currency), tuple(rows)),)


def _signed_block(record: Record, made_at: str) -> SignatureBlock:
    """A line for the owner; what is signed for stands under it. A signature for another sheet is none here."""
    owners = [p.name for role in (Role.OWNER, Role.BUYER) for p in record.people_as(role) if p.name]
    who = listed((owners[0] if owners else "", tr("owner")))
    note = tr(
        "Who signs says: the photographs of this pack, as put together on {when}, show this machine on the days given"
        " beside them. A signature does not show who wrote it.",
        when=moment(made_at),
    )
    return SignatureBlock(tr("Statement"), (Signed(who, tr("not yet signed")),), note)


def _dated(photograph: Photograph, picture: Picture) -> Picture:
    """The picture with its day behind its caption; the camera's own, else when it was brought in."""
    if photograph.taken_at:
        day = tr("taken {when} by the camera’s clock", when=moment(photograph.taken_at))
    elif photograph.imported_at:
        day = tr("not dated by the camera; brought in {when}", when=moment(photograph.imported_at))
    else:
        day = tr("not dated")
    return Picture(picture.number, listed((picture.caption, day), "; "), picture.jpeg, picture.width, picture.height,
                   picture.missing)  # fmt: skip
