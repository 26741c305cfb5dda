"""Figures of numbers that were not clear, each as a question."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.wording import lower_first
from inspector.record.reading import numbered
from inspector.record.words import Clarity
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.profile.model import Profile
    from inspector.record.model import Record
    from inspector.record.reading import Figure


def open_figures(profile: Profile, record: Record) -> tuple[tuple[str, Say], ...]:
    """Place and question for each figure that is probable or unreadable, by reading and position; none twice."""
    asked = ((r.place, text) for r in record.readings for text in _of_figures(profile, r.place, r.figures))
    return tuple({str(text): (place, text) for place, text in asked}.values())


def _of_figures(profile: Profile, place: str, figures: tuple[Figure, ...]) -> Iterable[Say]:
    known = profile.place_by_id.get(place)
    name = lower_first(known.name) if known else place
    for number, figure in numbered(figures):
        if figure.clarity is not Clarity.CLEAR:
            yield _ask(number, name, figure)


def _ask(number: int, place: str, figure: Figure) -> Say:
    if figure.clarity is Clarity.UNREADABLE:
        return say("What is figure {number} of the {place}? It could not be read.", number=number, place=place)
    if len(figure.could_be) == 1:
        one = figure.could_be[0]
        return say("Is figure {number} of the {place} {one}? It is not clear.", number=number, place=place, one=one)
    *first, last = figure.could_be
    return say(
        "Is figure {number} of the {place} {first} or {last}?",
        number=number,
        place=place,
        first=", ".join(first),
        last=last,
    )
