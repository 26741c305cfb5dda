"""Invented machines whose parts were used in a span of years, and records in which they are found fitted."""

from inspector.judgement.decode import decode_reading
from inspector.judgement.evidence import DatedPart, Kind
from inspector.judgement.said import Strength
from inspector.judgement.years import years
from inspector.profile.words import Assembly
from inspector.record.reading import Reading, figures_of
from inspector.texts import say
from tests.judgement.make import found, item, profile, record

SOURCES = [
    {"id": "list", "kind": "factory list", "title": "Invented parts list"},
    {"id": "book", "kind": "club register", "title": "Invented register"},
    {"id": "recalled", "kind": "memory", "title": "Somebody's memory"},
]


def form(first, last, **more):
    """One form with its years by the list."""
    base = {"id": "built", "name": "as built", "years": {"from": first, "to": last}, "sources": ["list"]}
    return {**base, **more}


def part(item_id, first, last, assembly="frame", **more):
    """An item with one form used from first to last."""
    return item(item_id, assembly=assembly, variant=[form(first, last)], **more)


def machine(*items, **more):
    """A profile of these items at one station."""
    given = {"source": SOURCES, "station": [{"id": "all", "name": "All", "item": list(items)}], "points": None}
    return profile(**{**given, **more})


def fitted(item_id, variant="built", evidence=("shape",), **more):
    """Somebody examined the item and chose the form."""
    return found(item_id, "pass", fitted=variant, evidence=evidence, **more)


def read(place, typed, how="from metal by me", **more):
    """One reading of a place."""
    more = {"id": f"{place}-{typed}-{how}", **more}
    return Reading(place=place, figures=figures_of(typed), how_read=how, **more)


def decoded(made, given):
    """Every reading of the record as decoded."""
    return {reading.id: decode_reading(made, reading) for reading in given.readings}


def years_of(made, *findings, **more):
    """What the record of these findings says about the years."""
    given = record(*findings, **more)
    return years(made, given, decoded(made, given))


def all_fitted(made):
    """A finding for each item of the profile with its first form."""
    return tuple(fitted(i.id, i.variants[0].id) for i in made.items())


def dated_part(key, allowed, strength=Strength.FIRM, assembly=Assembly.FRAME):
    """A part made for itself, without a profile."""
    allowed = tuple(sorted(allowed))
    return DatedPart(
        key, key.capitalize(), assembly, Kind.MODEL_YEAR, allowed, strength, "", None, (), ("list",), 3, say("Seen.")
    )


NUMBERED = {
    "id": "frame", "name": "Frame number", "where": "head lug", "assembly": "frame",
    "rule": [{
        "id": "frame-rule", "title": "Serials by season", "serial": "serial", "sources": ["list"],
        "segment": [{"id": "serial", "kind": "digits", "width": 5}],
        "range": [
            {"from": 15000, "to": 15499, "model_year": 1952, "sources": ["list"]},
            {"from": 15500, "to": 15999, "model_year": 1953, "sources": ["list"]},
            {"from": 20000, "to": 20999, "model_year": 1954, "sources": ["recalled"]},
        ],
    }],
}  # fmt: skip

CODED = {
    "id": "rim", "name": "Rim code", "where": "beside the valve", "assembly": "wheels and brakes",
    "identity": False, "dates_part": True, "usual_lag_months": 12,
    "rule": [{
        "id": "month-year", "title": "Month and last figure of the year", "sources": ["list"],
        "segment": [
            {"id": "month", "kind": "digits", "width": 2, "gives": "month of build"},
            {"id": "year", "kind": "digits", "width": 1, "gives": "year of build", "plus": [1950]},
        ],
    }],
}  # fmt: skip
