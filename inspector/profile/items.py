"""Stations, the items to judge there, the forms that may be found fitted, and what can be measured."""

from __future__ import annotations

from decimal import Decimal
from functools import cached_property
from typing import Annotated

from pydantic import ConfigDict, Field, model_validator

from inspector.profile.base import Cited, Id, Part, Span, Text, Year
from inspector.profile.words import Assembly, Need, Origin, PartKind, Safety, Unit, View

Share = Annotated[float, Field(ge=0, le=1)]
Amount = Annotated[Decimal, Field(ge=0, le=10_000_000)]


class SerialSpan(Part):
    """Serials of a place from first to last, both included: a running change inside a year."""

    place: Id
    first: int | None = Field(None, alias="from", ge=0)
    last: int | None = Field(None, alias="to", ge=0)

    @model_validator(mode="after")
    def _in_order(self) -> SerialSpan:
        if self.first is not None and self.last is not None and self.first > self.last:
            raise ValueError(f"the serials run backwards: {self.first} to {self.last}")
        return self


class OtherYears(Cited):
    """Years of use by a source that disagrees; both are kept, and what follows from the form widens."""

    years: Span


class Variant(Cited):
    """One form of a part, with its years of use and how to tell it."""

    id: Id
    name: Text
    tell: str = Field("", description="how to tell it from the others, by eye, touch or rule")
    detail: str = ""
    years: Span | None = Field(None, description="years of use as built; none for pattern and other makers' parts")
    serials: tuple[SerialSpan, ...] = ()
    markets: tuple[str, ...] = ()
    origin: Origin = Origin.FACTORY
    share: Share | None = Field(None, description="share of machines so fitted, where several were")
    picture: str = ""
    disputed: bool = Field(False, description="sources disagree on the years; the note says how")
    other_years: tuple[OtherYears, ...] = Field((), description="the years by sources that disagree")


class Nominal(Cited):
    """What a measure should read, by variant or year; tolerances are distances from the nominal."""

    variant: Id | None = None
    years: Span = Span()
    value: float
    minus: float = Field(0, ge=0)
    plus: float = Field(0, ge=0)


class Measure(Part):
    """A length or count: from where to where, in which unit, and what it should be."""

    id: Id
    name: Text
    start: str = Field("", alias="from_where")
    end: str = Field("", alias="to_where")
    unit: Unit
    screen_only: bool = Field(False, description="a straightness or left/right screen, never a verdict")
    nominals: tuple[Nominal, ...] = Field((), alias="nominal")


class Cost(Cited):
    """One way to put an item right, with prices and hours as low, likely, high; hours may be unknown."""

    id: Id
    kind: PartKind
    need: Need = Need.CLAIM
    name: Text
    parts: tuple[Amount, Amount, Amount] | None = None
    hours: tuple[Amount, Amount, Amount] | None = None
    currency: str = Field("", max_length=3)
    priced_on: str = ""
    lead_weeks: tuple[float, float] | None = None
    job: Id | None = Field(None, description="the strip-down it needs, paid once")
    after: tuple[Id, ...] = Field((), description="remedies to be decided first")
    excludes: tuple[Id, ...] = ()

    @model_validator(mode="after")
    def _in_order(self) -> Cost:
        for name, three in (("parts", self.parts), ("hours", self.hours)):
            if three and not three[0] <= three[1] <= three[2]:
                raise ValueError(
                    f"{name} must rise from low over likely to high, not {three[0]}, {three[1]}, {three[2]}"
                )
        return self


class Job(Part):
    """A strip-down that several remedies share; its hours are paid once."""

    id: Id
    name: Text
    hours: tuple[Amount, Amount, Amount] | None = None
    needs: tuple[Id, ...] = ()


class Spot(Part):
    """Where an item lies on an outline drawing, in its viewBox units."""

    view: View = View.LEFT
    x: float
    y: float


class Item(Cited):
    """One thing to judge."""

    model_config = ConfigDict(ignored_types=(cached_property,))

    id: Id
    name: Text
    question: Text
    how: Text
    bring: tuple[str, ...] = ()
    minutes: float = Field(0.5, gt=0, le=60)
    weight: float = Field(1, ge=0, le=100)
    assembly: Assembly
    identity: bool = False
    safety: Safety | None = None
    money: int = Field(1, ge=0, le=3, description="how much of the worth hangs on it, 0 to 3")
    caution: str = ""
    spot: Spot | None = None
    swap_rate: Share | None = Field(None, description="how often such a part is found replaced")
    optional: bool = Field(False, description="not every machine had one")
    years: Span = Span()
    place: Id | None = Field(None, description="the numbered place looked at here")
    heading: Id | None = None
    variants: tuple[Variant, ...] = Field((), alias="variant")
    measures: tuple[Measure, ...] = Field((), alias="measure")
    costs: tuple[Cost, ...] = Field((), alias="cost")

    @cached_property
    def form_by_id(self) -> dict[str, Variant]:
        """Forms by their id."""
        return {form.id: form for form in self.variants}


class Station(Part):
    """Where one stands on the walk round."""

    id: Id
    name: Text
    short: str = ""
    view: View = View.LEFT
    say_first: str = Field("", description="caution or courtesy before anything is touched here")
    items: tuple[Item, ...] = Field((), alias="item", min_length=1)


class Shot(Part):
    """A photograph to bring home."""

    id: Id
    name: Text
    how: str = ""
    item: Id | None = None
    place: Id | None = None


class Trap(Cited):
    """Something that has misled people about this model."""

    id: Id
    title: Text
    text: Text
    items: tuple[Id, ...] = ()
    places: tuple[Id, ...] = ()
    years: Span = Span()


class Heading(Part):
    """A heading of a points scheme: points to lose, and the most an incorrect part may cost."""

    id: Id
    name: Text
    points: Decimal = Field(ge=0, le=1000, max_digits=12)
    most_lost: Decimal | None = Field(None, ge=0, le=1000, max_digits=12)


class Threshold(Part):
    """A total from which a word of the scheme's author applies."""

    points: Decimal = Field(max_digits=12)
    word: Text


class PointsScheme(Cited):
    """A points scheme: headings, the step of a deduction, and thresholds."""

    name: Text
    step: Decimal = Field(Decimal("0.25"), ge=Decimal("0.01"), le=1000)
    headings: tuple[Heading, ...] = Field(alias="heading", min_length=1)
    thresholds: tuple[Threshold, ...] = Field((), alias="threshold")

    @model_validator(mode="after")
    def _in_steps(self) -> PointsScheme:
        for one in self.headings:
            for points in (one.points, one.most_lost):
                if points is not None and points % self.step:
                    raise ValueError(f'heading "{one.id}" has {points} points, which is not in steps of {self.step}')
        return self


class YearNote(Cited):
    """A change that came with a model year."""

    year: Year
    text: Text
