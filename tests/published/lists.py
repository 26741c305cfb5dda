"""Published lists of numbers, and what a shipped profile makes of numbers at and beside their ends."""

from functools import cache
from typing import NamedTuple

from inspector.judgement.decode import decode
from inspector.judgement.number_evidence import number_parts
from inspector.judgement.relations import relations
from inspector.profile.read import read_profile
from inspector.record.begin import new_record
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.resource import sample_profiles


class Row(NamedTuple):
    """One line of one list: first and last number of a block, its model year, months of building where printed."""

    source: str
    first: int
    last: int
    year: int
    built: tuple[str, str] | None = None


@cache
def profile_of(name):
    got = read_profile(sample_profiles() / name)
    assert got.profile is not None, [str(problem) for problem in got.problems]
    return got.profile


@cache
def said(name, place, typed, year=None):
    profile = profile_of(name)
    return decode(profile, profile.place_by_id[place], figures_of(typed), year)


def years(name, place, typed):
    return said(name, place, typed).years


def told(name, place, typed):
    """Who gives which model year: {(source, year)}."""
    hits = said(name, place, typed).hits
    return {(source, year) for hit in hits for source in hit.sources for year in hit.years}


def by_the_lists(rows, number):
    """The same, as the lists print it."""
    return {(row.source, row.year) for row in rows if row.first <= number <= row.last}


def edges(row):
    """The first and last number of the row, and the one on each side of them."""
    return sorted({end + step for end in (row.first, row.last) for step in (-1, 0, 1)})


def build_months(name, place, typed, source):
    return {built for hit in said(name, place, typed).hits if hit.sources == (source,) for built in hit.built}


def recorded(name, year, numbers):
    """A record that claims the model year, with the numbers as read, by place, and each as decoded."""
    readings = tuple(Reading(id=place, place=place, figures=figures_of(typed)) for place, typed in numbers.items())
    blank = new_record("r1", "2020-01-01", ProfileRef(id=name, version=profile_of(name).version))
    claim = blank.claim.model_copy(update={"model_year": year})
    decoded = {one.id: said(name, one.place, one.typed()) for one in readings}
    return blank.model_copy(update={"claim": claim, "readings": readings}), decoded


def standings(name, year, numbers):
    """How the places whose numbers are given, by place, stand to each other in that model year."""
    return relations(profile_of(name), *recorded(name, year, numbers))


def evidence(name, year, place, typed):
    """What one number says of the year as evidence."""
    (part,) = number_parts(profile_of(name), *recorded(name, year, {place: typed}))
    return part
