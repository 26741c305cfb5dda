"""The numbers as read, each with how it was read; nothing is filled in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.decoded_words import decoded_words
from inspector.record.words import HowRead
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.decode import Decoded
    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Reading


@dataclass(frozen=True, slots=True)
class NumberLine:
    """One reading: place id, its name, the number as typed (``?`` unreadable, ``[19]`` 1 or 9), how it was read.

    ``decoded`` is what the number says by the rules of its place, None where nothing was read.
    """

    place: str
    name: str
    typed: str
    how_read: HowRead
    sentence: Say
    decoded: Say | None = None


def numbers(profile: Profile, record: Record, decoded: Mapping[str, Decoded]) -> tuple[NumberLine, ...]:
    """Every reading in the profile's order of places, several of one place one after the other."""
    rank = {place.id: at for at, place in enumerate(profile.places)}
    readings = sorted(record.readings, key=lambda r: rank.get(r.place, len(rank)))
    return tuple(_line(profile, reading, decoded.get(reading.id)) for reading in readings)


def _line(profile: Profile, reading: Reading, decoded: Decoded | None) -> NumberLine:
    known = profile.place_by_id.get(reading.place)
    name = known.name if known else reading.place
    typed = reading.typed()
    if typed:
        sentence = say("{place}: {typed}, {how}.", place=name, typed=typed, how=how_words(reading.how_read))
    else:
        sentence = say("{place}: nothing read.", place=name)
    says = decoded_words(profile, decoded) if decoded is not None else None
    return NumberLine(reading.place, name, typed, reading.how_read, sentence, says)


def how_words(how: HowRead) -> Say:
    """How a number was read, or that nobody told."""
    if how is HowRead.NOT_SAID:
        return say("not said how it was read")
    return say("read {how}", how=say(how.value))
