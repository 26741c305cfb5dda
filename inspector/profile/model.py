"""A profile: what is documented about a model family."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import Any, Literal

from pydantic import ConfigDict, Field, model_validator

from inspector.profile.base import Id, Part, Text, Year
from inspector.profile.items import Item, Job, PointsScheme, Shot, Station, Trap, YearNote
from inspector.profile.numbers import Place, Relation
from inspector.profile.words import GRADES, SourceKind, View

FORMAT = 1


class Source(Part):
    """Who says so: a list, a book, a register, a person's page."""

    id: Id
    kind: SourceKind
    title: Text
    by: str = ""
    address: str = ""
    date: str = ""
    note: str = ""

    @property
    def grade(self) -> int:
        """3 factory list or manual, 2 register, specialist or observed, 1 press or general, 0 memory."""
        return GRADES[self.kind]


class Author(Part):
    """Who wrote the profile."""

    name: Text
    role: str = ""


class Profile(Part):
    """Everything documented about one model family; frozen, checked, and with its sources."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", defer_build=True, str_strip_whitespace=True, ignored_types=(cached_property,)
    )

    format: Literal[1]
    id: Id
    version: Text
    title: Text
    maker: Text
    models: tuple[str, ...] = ()
    about: str = ""
    invented: bool = False
    authors: tuple[Author, ...] = Field(alias="author", min_length=1)
    model_years: tuple[Year, Year]
    season_starts: int = Field(1, ge=1, le=12, description="month; above 6 it lies in the year before the model year")
    markets: tuple[str, ...] = ()
    currency: str = Field("", max_length=3)
    outlines: dict[View, str] = Field(default_factory=dict)
    sources: tuple[Source, ...] = Field((), alias="source")
    places: tuple[Place, ...] = Field((), alias="place", max_length=100)
    relations: tuple[Relation, ...] = Field((), alias="relation", max_length=1000)
    stations: tuple[Station, ...] = Field(alias="station", min_length=1)
    jobs: tuple[Job, ...] = Field((), alias="job")
    points: PointsScheme | None = None
    shots: tuple[Shot, ...] = Field((), alias="shot")
    cautions: tuple[str, ...] = ()
    open_questions: tuple[str, ...] = ()
    traps: tuple[Trap, ...] = Field((), alias="trap")
    year_notes: tuple[YearNote, ...] = Field((), alias="year_note")
    books: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()

    @model_validator(mode="after")
    def _in_order(self) -> Profile:
        if self.model_years[0] > self.model_years[1]:
            raise ValueError(f"model_years run backwards: {self.model_years[0]} to {self.model_years[1]}")
        return self

    def items(self) -> Iterator[Item]:
        """Every item in the order of the walk."""
        for station in self.stations:
            yield from station.items

    @cached_property
    def years(self) -> tuple[int, ...]:
        """Every model year of the profile, first to last."""
        return tuple(range(self.model_years[0], self.model_years[1] + 1))

    @cached_property
    def item_by_id(self) -> dict[str, Item]:
        """Items by their id."""
        return {item.id: item for item in self.items()}

    @cached_property
    def station_of(self) -> dict[str, Station]:
        """The station at which an item stands, by item id."""
        return {item.id: station for station in self.stations for item in station.items}

    @cached_property
    def worked_out(self) -> dict[tuple[str, str, str], Any]:
        """What was worked out from this profile alone, by question, item and form: always the same, and so kept."""
        return {}

    @cached_property
    def source_by_id(self) -> dict[str, Source]:
        """Sources by their id."""
        return {source.id: source for source in self.sources}

    @cached_property
    def place_by_id(self) -> dict[str, Place]:
        """Numbered places by their id."""
        return {place.id: place for place in self.places}
