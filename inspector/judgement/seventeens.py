"""The readings of a record that have 17 characters, each checked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.seventeen import FIRST_YEAR, check_seventeen

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.judgement.seventeen import Seventeen
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.model import Record
    from inspector.record.reading import Reading
    from inspector.record.words import HowRead

LENGTH = 17
# Words that people write into a claim for a market that requires the check digit, and for some that do not.
WITHIN = frozenset({"north america", "usa", "u.s.a.", "us", "u.s.", "united states", "america", "canada"})
OUTSIDE = frozenset(
    {"europe", "uk", "u.k.", "england", "great britain", "united kingdom", "germany", "france", "italy", "spain",
     "sweden", "japan", "australia", "new zealand"}
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class SeventeenLine:
    """One reading checked as a 17-character number: reading and place ids, name, number as typed, how it was read."""

    reading: str
    place: str
    name: str
    typed: str
    how_read: HowRead
    result: Seventeen


def seventeens(profile: Profile, record: Record) -> tuple[SeventeenLine, ...]:
    """Each reading of 17 characters, and of the frame where such numbers were due, in the profile's order of places."""
    rank = {place.id: at for at, place in enumerate(profile.places)}
    readings = sorted(record.readings, key=lambda r: rank.get(r.place, len(rank)))
    return tuple(_lines(profile, record, readings))


def in_north_america(market: str) -> bool | None:
    """Whether the market of a claim requires the check digit; None where the words do not tell."""
    plain = market.strip().casefold()
    return True if plain in WITHIN else False if plain in OUTSIDE else None


def _lines(profile: Profile, record: Record, readings: Iterable[Reading]) -> Iterable[SeventeenLine]:
    year, market = record.claim.model_year, in_north_america(record.claim.market)
    due = year is not None and year >= FIRST_YEAR
    for reading in readings:
        place = profile.place_by_id.get(reading.place)
        result = check_seventeen(reading.figures, year, north_america=market)
        if reading.figures and (result.length == LENGTH or (due and _is_frames(place))):
            name = place.name if place else reading.place
            yield SeventeenLine(reading.id, reading.place, name, reading.typed(), reading.how_read, result)


def _is_frames(place: Place | None) -> bool:
    return place is not None and place.assembly.value == "frame" and place.identity and not place.dates_part
