"""Which item a photograph may belong to: offered with its reason, and never assigned."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.profile.model import Profile
    from inspector.record.finding import Photograph
    from inspector.record.model import Record

LAST_MINUTES = 45  # so long after the last sign of work an item still counts as open
NEAR_SECONDS = 15  # so near to another item's opening, that one is named too
FOUND_SECONDS = 180  # so near to a finding, where no opening is known


@dataclass(frozen=True, slots=True)
class Opened:
    """That an item was open from this moment (ISO 8601 with offset); no item where none was open any more."""

    at: str
    item: str


@dataclass(frozen=True, slots=True)
class Offer:
    """The item that a photograph may belong to, and why; a person takes it or does not."""

    photograph: str
    item: str
    name: str
    reason: Say


@dataclass(frozen=True, slots=True)
class _Sign:
    at: datetime
    item: str


def moment_of(record: Record, photograph: Photograph) -> datetime | None:
    """When it was taken, by its camera's clock put right; None where the camera told no time.

    A camera that told no zone is taken to be in the zone in which the photograph was brought in.
    """
    taken, brought = _moment(photograph.taken_at), _moment(photograph.imported_at)
    if taken is None:
        return None
    if taken.tzinfo is None:
        if brought is None or brought.tzinfo is None:
            return None
        taken = taken.replace(tzinfo=brought.tzinfo)
    return taken + timedelta(seconds=seconds_off(record, photograph.camera))


def seconds_off(record: Record, camera: str) -> int:
    """What is to be added to this camera's times, in seconds; 0 where nothing is known of its clock."""
    return next((clock.seconds for clock in record.choices.clocks if clock.camera == camera), 0)


def offers(profile: Profile, record: Record, opened: Sequence[Opened]) -> tuple[Offer, ...]:
    """For each photograph that is not assigned the item open when it was taken, where that is known."""
    signs = _signs(opened, profile)
    found = _findings(record, profile)
    made = (_offer(profile, record, one, signs, found) for one in record.photographs if not (one.item or one.place))
    return tuple(offer for offer in made if offer is not None)


def _offer(
    profile: Profile, record: Record, photograph: Photograph, signs: Sequence[_Sign], found: Sequence[_Sign]
) -> Offer | None:
    at = moment_of(record, photograph)
    if at is None:
        return None
    told = _by_opening(profile, signs, at) or _by_finding(profile, found, at)
    if told is None:
        return None
    item, why = told
    clock = _clock_words(record, photograph)
    reason = say("{why} {clock}", why=why, clock=clock)
    return Offer(photograph.id, item, profile.item_by_id[item].name, reason)


def _by_opening(profile: Profile, signs: Sequence[_Sign], at: datetime) -> tuple[str, Say] | None:
    n = bisect_right(signs, at, key=lambda sign: sign.at) - 1
    if n < 0 or not signs[n].item:
        return None
    here, after = signs[n], signs[n + 1] if n + 1 < len(signs) else None
    if after is None and at - here.at > timedelta(minutes=LAST_MINUTES):
        return None
    name = profile.item_by_id[here.item].name
    other = _neighbour(profile, signs, n, at)
    times = {"name": name, "since": _time(here.at), "taken": _time(at)}
    if after is None:
        why = say("{name} was open from {since}; taken at {taken}.", **times)
    else:
        why = say("{name} was open from {since} to {until}; taken at {taken}.", until=_time(after.at), **times)
    return here.item, say("{why} It may also be {other}.", why=why, other=other) if other else why


def _neighbour(profile: Profile, signs: Sequence[_Sign], n: int, at: datetime) -> str:
    """The name of the item opened so shortly after, or left so shortly before, that it may be meant."""
    near = timedelta(seconds=NEAR_SECONDS)
    after, before = signs[n + 1 : n + 2], signs[n - 1 : n] if n else []
    close = [s.item for s in after if s.at - at <= near] + [s.item for s in before if at - signs[n].at <= near]
    names = [profile.item_by_id[item].name for item in close if item and item != signs[n].item]
    return names[0] if names else ""


def _by_finding(profile: Profile, found: Sequence[_Sign], at: datetime) -> tuple[str, Say] | None:
    nearest = min(found, key=lambda sign: abs(sign.at - at), default=None)
    if nearest is None or abs(nearest.at - at) > timedelta(seconds=FOUND_SECONDS):
        return None
    name = profile.item_by_id[nearest.item].name
    return nearest.item, say(
        "What was found at {name} was entered at {entered}; taken at {taken}.",
        name=name, entered=_time(nearest.at), taken=_time(at),
    )  # fmt: skip


def _clock_words(record: Record, photograph: Photograph) -> Say:
    if any(clock.camera == photograph.camera for clock in record.choices.clocks):
        return say("The camera's clock was put right by a photograph of a clock.")
    return say("The camera's clock was not checked.")


def _signs(opened: Sequence[Opened], profile: Profile) -> list[_Sign]:
    """Openings in the order of time; of one item after itself only the first."""
    made: list[_Sign] = []
    for one in opened:
        at = _moment(one.at)
        if at is not None and at.tzinfo is not None and (not one.item or one.item in profile.item_by_id):
            made.append(_Sign(at, one.item))
    made.sort(key=lambda sign: sign.at)
    return [sign for n, sign in enumerate(made) if n == 0 or made[n - 1].item != sign.item]


def _findings(record: Record, profile: Profile) -> list[_Sign]:
    dated = ((_moment(f.at), f.item) for f in record.findings if f.item in profile.item_by_id)
    return [_Sign(at, item) for at, item in dated if at is not None and at.tzinfo is not None]


def _moment(text: str) -> datetime | None:
    try:
        return datetime.fromisoformat(text) if text else None
    except ValueError:
        return None


def _time(at: datetime) -> str:
    return at.strftime("%H:%M")
