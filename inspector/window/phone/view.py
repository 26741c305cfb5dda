"""What the phones show of the open machine, in words that are ready to be read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.phone.messages import View
from inspector.texts import tr, trn

if TYPE_CHECKING:
    from inspector.profile.items import Shot
    from inspector.window.desk import Desk


def view_of(desk: Desk) -> View:
    """The item that is open at the desk, as the phones show it."""
    item, station = desk.profile.item_by_id[desk.item], desk.profile.station_of[desk.item]
    walk, found = desk.walk, desk.finding
    at = walk.index(item.id) + 1 if item.id in walk else 0
    place = tr("item {n} of {all}", n=at, all=len(walk)) if at else ""
    have = len(desk.record.photographs_at(item.id))
    return View(
        record=desk.record.id, machine=desk.record.claim.model, item=item.id, name=item.name,
        where=", ".join(part for part in (station.name, place) if part), question=item.question,
        photograph=_to_photograph(desk), caution=item.caution,
        have=trn("{count} photograph is here", "{count} photographs are here", have) if have else "",
        mark=found.mark.value if found and found.mark else "",
        first=at <= 1, last=at == len(walk),
    )  # fmt: skip


def _to_photograph(desk: Desk) -> tuple[str, ...]:
    """What the profile wants photographed here, and otherwise what an eye far away would need."""
    shots = tuple(_said(shot) for shot in desk.profile.shots if shot.item == desk.item)
    return shots or (tr("The whole of it, then close to whatever decides your mark."),)


def _said(shot: Shot) -> str:
    return f"{shot.name}. {shot.how}." if shot.how else f"{shot.name}."
