"""The major components of a machine with the years that their own parts show, and the youngest of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.judgement.wording import joined, lower_first
from inspector.judgement.year_words import listed, years_words
from inspector.profile.words import Assembly
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inspector.judgement.evidence import DatedPart
    from inspector.judgement.years import Years

# Common practice, no source: what is asked for where a machine is to be dated by its youngest component.
MAJOR = {
    Assembly.FRAME: say("frame"),
    Assembly.ENGINE: say("engine"),
    Assembly.GEARBOX: say("gearbox"),
    Assembly.FRONT_END: say("forks"),
    Assembly.WHEELS: say("wheels and brakes"),
}
NONE_SHOWN = say("No major component shows a year firmly, so the youngest cannot be told.")
HOW = say(
    "A component is as young as its youngest firmly dated part, of the first year which that part allows; what shows "
    "only an era, or was not seen, dates nothing."
)


@dataclass(frozen=True, slots=True)
class Component:
    """One major component: the years that all its firmly dated parts allow, and its earliest year as it stands.

    ``not_before`` is the latest first year among those ``parts``, None where none is firm; ``years`` may be empty
    where the parts contradict each other.
    """

    assembly: Assembly
    name: Say
    years: tuple[int, ...]
    not_before: int | None
    parts: tuple[DatedPart, ...]
    sentence: Say

    @property
    def youngest_parts(self) -> tuple[DatedPart, ...]:
        """The parts whose first year is the latest."""
        return tuple(part for part in self.parts if part.years[0] == self.not_before)


@dataclass(frozen=True, slots=True)
class Components:
    """All major components, those of them that are the youngest, and in sentences what that rests on."""

    rows: tuple[Component, ...]
    youngest: tuple[Component, ...]
    sentence: Say
    reasons: tuple[Say, ...]


def components(years: Years) -> Components:
    """The major components by what was found; the youngest among those that show a year."""
    rows = tuple(_component(assembly, years) for assembly in MAJOR)
    latest = max((row.not_before for row in rows if row.not_before is not None), default=None)
    youngest = tuple(row for row in rows if latest is not None and row.not_before == latest)
    silent = [row for row in rows if row.not_before is None]
    reasons = [HOW, years.assumption]
    if silent and youngest:
        names = joined([row.name for row in silent])
        reasons.insert(0, say("Nothing dates these firmly, and they may be younger: {names}.", names=names))
    return Components(rows, youngest, _youngest_words(youngest), tuple(reasons))


def _component(assembly: Assembly, years: Years) -> Component:
    parts = tuple(part for part in years.parts if part.firm and part.assembly is assembly)
    allowed = next((own.years for own in years.by_assembly if own.assembly is assembly), ())
    not_before = max((part.years[0] for part in parts), default=None)
    return Component(assembly, MAJOR[assembly], allowed, not_before, parts, _sentence(parts, allowed))


def _sentence(parts: Sequence[DatedPart], allowed: tuple[int, ...]) -> Say:
    if not parts:
        return say("nothing shows a year firmly")
    if not allowed:
        return say("no year that all its parts allow")
    return say("{years}", years=years_words(allowed))


def _youngest_words(youngest: Sequence[Component]) -> Say:
    if not youngest:
        return NONE_SHOWN
    year, parts = youngest[0].not_before, listed(_names(youngest))
    if len(youngest) == 1:
        return say("Youngest major component by what was found: {name}, of {year} at the earliest, by {parts}.",
                   name=youngest[0].name, year=year, parts=parts)  # fmt: skip
    names = listed([one.name for one in youngest])
    return say("Youngest major components by what was found: {names}, each of {year} at the earliest, by {parts}.",
               names=names, year=year, parts=parts)  # fmt: skip


def _names(youngest: Sequence[Component]) -> list[str]:
    """The parts that make them so young, each once: a number and the item that holds it often carry one name."""
    return list(dict.fromkeys(lower_first(part.name) for one in youngest for part in one.youngest_parts))
