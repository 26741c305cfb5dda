"""Characters that are taken for one another, and those that can be made from another by adding strokes.

They are offered to whoever reads a number, and explain how a paper can differ from the metal. Nothing is ever
replaced by them: old makers had punches of their own, and some used I and O.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

READER = "manual of an industrial character reader (5370-OCR2), page 2-8"
PLATES = "default groups of a number-plate reader, from its administrator's guide"
PAPER = "confused pairs listed in a paper on reading number plates, as quoted by a citation index"
LETTERING = "history of German number-plate lettering, en.wikipedia.org/wiki/FE-Schrift"
REASONED = "reasoned from the same list: strokes are added easily and hardly ever taken away"


@dataclass(frozen=True, slots=True)
class Alike:
    """Two characters that one may read for the other, in either direction, and who says so."""

    one: str
    other: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Made:
    """A character that can be made from another by adding strokes, and who says so."""

    was: str
    became: str
    source: str


def _pairs(text: str) -> tuple[frozenset[str], ...]:
    """Every two of each group: ``0OD 1I`` is 0 with O, 0 with D, O with D, and 1 with I."""
    return tuple(
        frozenset((one, other)) for group in text.split() for at, one in enumerate(group) for other in group[at + 1 :]
    )


# In the order in which they are offered: what most sources name comes first, and each list in its own order.
_LISTS = (
    (READER, _pairs("0O 1I 2Z 5S 8B")),
    (PLATES, _pairs("0ODQ 1I 2Z 5S 8B 6G")),
    (PAPER, _pairs("O0 PB Z2 S5 38 B8 PR DO 1I QO CG A4 KX FE 68 53 58 08 39 49 VW XY VU")),
)


def _gathered() -> tuple[Alike, ...]:
    found: dict[frozenset[str], list[str]] = {}
    for source, pairs in _LISTS:
        for pair in pairs:
            found.setdefault(pair, []).append(source)
    by_sources = sorted(found.items(), key=lambda entry: -len(entry[1]))
    return tuple(Alike(min(pair), max(pair), tuple(sources)) for pair, sources in by_sources)


ALIKE: tuple[Alike, ...] = _gathered()
MADE: tuple[Made, ...] = (
    *(Made(was, became, LETTERING) for was, became in ("PR", "PB", "38", "LE", "FE")),
    *(Made(was, became, REASONED) for was, became in ("14", "17", "68", "08", "98", "CG", "CO", "IL")),
)


@lru_cache(maxsize=256)
def suggestions(character: str) -> tuple[str, ...]:
    """What else the character could be, what most sources name first; capitals, itself left out, often nothing."""
    asked = character.upper()
    others = (pair.other if pair.one == asked else pair.one for pair in ALIKE if asked in (pair.one, pair.other))
    return tuple(dict.fromkeys(others))


def alterations(character: str) -> tuple[str, ...]:
    """What the character could have been made from by adding strokes; capitals, often nothing."""
    asked = character.upper()
    return tuple(made.was for made in MADE if made.became == asked)


def alike(one: str, other: str) -> bool:
    """True when a list names the two, whichever first, as taken for one another."""
    return other.upper() in suggestions(one)


def sources_of(one: str, other: str) -> tuple[str, ...]:
    """Who says that the two are taken for one another; nothing where nobody does."""
    asked = {one.upper(), other.upper()}
    return next((pair.sources for pair in ALIKE if {pair.one, pair.other} == asked), ())
