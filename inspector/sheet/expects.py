"""What should be there, with its sources, as it stands on a sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.proposal import expected_lines
from inspector.profile.expected import sources_of
from inspector.sheet.blocks import Cited, Expectation
from inspector.sheet.words import listed
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.judgement.proposal import ExpectedLine
    from inspector.profile.items import Item, Measure, Nominal
    from inspector.profile.model import Profile


def expectations(profile: Profile, item: Item, year: int | None) -> tuple[Expectation, ...]:
    """The forms that may be right at the item for the year, each with every source."""
    lines = tuple(_form(line) for line in expected_lines(profile, item, year))
    return lines or (Expectation(tr("not described in the profile")),)


def _form(line: ExpectedLine) -> Expectation:
    sources = tuple(Cited(s.grade, listed((tr(s.kind), s.title, s.place))) for s in line.sources)
    note = listed((tr("the sources differ") if line.disputed else "", line.note), "; ")
    return Expectation(listed((line.name, tr(line.detail) if line.detail else "")), sources or (no_source(),), note)


def no_source() -> Cited:
    """What stands where a fact names no source."""
    return Cited(0, tr("no source"))


def sizes(
    profile: Profile, item: Item, year: int | None, fitted: Iterable[str], measured: Iterable[str]
) -> tuple[Expectation, ...]:
    """What the named measures should read in that year, or for the forms found fitted."""
    wanted, forms = set(measured), set(fitted)
    return tuple(
        _nominal(profile, measure, nominal)
        for measure in item.measures
        if measure.id in wanted
        for nominal in measure.nominals
        if (year is None or nominal.years.holds(year)) and (nominal.variant is None or nominal.variant in forms)
    )


def _nominal(profile: Profile, measure: Measure, nominal: Nominal) -> Expectation:
    found = sources_of(profile, nominal)
    cited = tuple(Cited(s.grade, listed((tr(s.kind.value), s.title, nominal.at))) for s in found)
    return Expectation(f"{measure.name}: {span(measure, nominal)}", cited or (no_source(),), nominal.note)


def span(measure: Measure, nominal: Nominal) -> str:
    """What a measure should read, with its lowest and highest where the profile gives them."""
    unit = tr(measure.unit.value)
    said = f"{nominal.value:g} {unit}"
    if not nominal.minus and not nominal.plus:
        return said
    low, high = f"{nominal.value - nominal.minus:g}", f"{nominal.value + nominal.plus:g}"
    return tr("{said}, from {low} to {high}", said=said, low=low, high=high)
