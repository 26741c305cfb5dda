"""What should be looked at before two records are taken to be of one machine."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.record.reading import numbered
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from inspector.record.model import Record
    from inspector.record.reading import Figure, Reading

PARTING = frozenset(" .-/")  # part figures and are none


def warnings(here: Record, other: Record, places: Mapping[str, str]) -> tuple[Say, ...]:
    """Where the two speak of two machines, numbers first; ``places`` are the names of numbered places by id."""
    return tuple((*_numbers(here, other, places), *_claims(here, other), *_visits(here, other)))


def may_agree(one: Reading, other: Reading) -> bool:
    """Whether one number can be behind both readings: as many figures, and none that both read and read otherwise."""
    mine, theirs = _figures(one), _figures(other)
    return len(mine) == len(theirs) and all(_may_be(a, b) for a, b in zip(mine, theirs, strict=True))


def _figures(reading: Reading) -> tuple[Figure, ...]:
    return tuple(f for _, f in numbered(reading.figures) if not (f.could_be and set(f.could_be) <= PARTING))


def _may_be(one: Figure, other: Figure) -> bool:
    mine, theirs = ({c.casefold() for c in figure.could_be} for figure in (one, other))
    return not mine or not theirs or bool(mine & theirs)


def _numbers(here: Record, other: Record, places: Mapping[str, str]) -> Iterator[Say]:
    known = list(dict.fromkeys(r.place for r in (*here.readings, *other.readings)))
    compared = False
    for place in known:
        mine, theirs = _read(here, place), _read(other, place)
        if not mine or not theirs:
            continue
        compared = True
        if not any(may_agree(one, another) for one in mine for another in theirs):
            yield say(
                "{place}: {mine} in record {here}, {theirs} in record {other}. Read it again, from the metal.",
                place=places.get(place, place), mine=_told(mine), theirs=_told(theirs), here=here.id, other=other.id,
            )  # fmt: skip
    if not compared:
        yield say("No number was read in both, so no number shows that they are of one machine.")


def _read(record: Record, place: str) -> list[Reading]:
    return [r for r in record.readings if r.place == place and r.figures]


def _told(readings: list[Reading]) -> Say | str:
    told = [say("{number} ({how})", number=r.typed(), how=say(r.how_read.value)) for r in readings]
    words: Say | str = told[0]
    for more in told[1:]:
        words = say("{first}; {then}", first=words, then=more)
    return words


def _claims(here: Record, other: Record) -> Iterator[Say]:
    mine, theirs = here.claim.model_year, other.claim.model_year
    if mine is not None and theirs is not None and mine != theirs:
        yield say("The model year claimed is {mine} in record {here} and {theirs} in record {other}.", mine=mine,
                  theirs=theirs, here=here.id, other=other.id)  # fmt: skip


def _visits(here: Record, other: Record) -> Iterator[Say]:
    days = [record.claim.date or record.created[:10] for record in (here, other)]
    if days[0] != days[1]:
        yield say(
            "They are of two days, {first} and {second}. Joined, what was seen on both stands side by side as if it"
            " were of one day; as two visits they stay apart and can be compared.",
            first=days[0], second=days[1],
        )  # fmt: skip
    if (here.profile.version, here.profile.sha256) != (other.profile.version, other.profile.sha256):
        yield say("They were made with two versions of the profile. The joined record goes by that of record {here}.",
                  here=here.id)  # fmt: skip
