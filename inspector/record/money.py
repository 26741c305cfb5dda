"""Money: private to the user, never on the seller's copy. All amounts are Decimals as entered."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from pydantic import Field, model_validator

from inspector.profile.words import Need, PartKind
from inspector.record.base import Key, Line, Piece, Words
from inspector.record.finding import Photograph
from inspector.record.words import Adjusts, NumbersAgree, PriceKind

Price = Annotated[Decimal, Field(ge=0, le=100_000_000)]
Hours = Annotated[Decimal, Field(ge=0, le=10_000)]
Percent = Annotated[Decimal, Field(ge=-100, le=1000)]
Currency = Annotated[str, Field(pattern=r"^([A-Z]{3})?$")]
Weeks = Annotated[float, Field(ge=0, le=1000)]
YearNumber = Annotated[int, Field(ge=1880, le=2100)]


def _rising(name: str, three: tuple[Decimal, Decimal, Decimal] | None) -> None:
    if three is not None and not three[0] <= three[1] <= three[2]:
        low, likely, high = three
        raise ValueError(f"{name.capitalize()} must rise from low over likely to high, not {low}, {likely}, {high}")


class Comparable(Piece):
    """Another machine's price, how like it is, and whether and why it is left out."""

    id: Key
    kind: PriceKind
    price: Price
    currency: Currency = ""
    title: Line = ""
    fees_in: bool = False
    premium_percent: Annotated[Decimal, Field(ge=0, le=100)] | None = Field(
        None, description="buyer's fees of that sale with their tax, where they are not in the price"
    )
    date: Line = ""
    place: Line = ""
    source: Line = ""
    condition: int | None = Field(None, ge=1, le=5, description="1 for parts only to 5 as delivered")
    numbers: NumbersAgree = NumbersAgree.UNKNOWN
    score: Decimal | None = Field(None, ge=0, le=100)
    how_like: int = Field(3, ge=1, le=5, description="1 hardly to 5 the same model and year")
    photograph: Line = Field("", description="where a picture is to be found: a file or a page")
    pictures: tuple[Photograph, ...] = Field(
        (), description="kept pictures of that other machine; none of them is a photograph of this one"
    )
    excluded_because: Words = ""
    note: Words = ""


class Adjustment(Piece):
    """What the user adds to or takes off one comparable, and why: an amount, or a percentage of its price."""

    id: Key
    comparable: Key
    what: Adjusts
    amount: Annotated[Decimal, Field(ge=-100_000_000, le=100_000_000)] | None = None
    percent: Percent | None = None
    reason: Line = ""

    @model_validator(mode="after")
    def _one(self) -> Adjustment:
        if (self.amount is None) == (self.percent is None):
            raise ValueError("an adjustment is either an amount or a percentage")
        return self


class Figures(Piece):
    """The user's figures of a remedy: parts, hours and weeks it takes to come, rising; None is not estimated."""

    name: Line
    kind: PartKind = PartKind.REPAIR
    need: Need = Need.CLAIM
    parts: tuple[Price, Price, Price] | None = None
    hours: tuple[Hours, Hours, Hours] | None = None
    currency: Currency = ""
    priced_on: Line = ""
    source: Line = ""
    job: Line = Field("", description="id of the profile's strip-down job it needs")
    lead_weeks: tuple[Weeks, Weeks] | None = None
    note: Words = ""

    @model_validator(mode="after")
    def _in_order(self) -> Figures:
        _rising("parts", self.parts)
        _rising("hours", self.hours)
        if self.lead_weeks is not None and self.lead_weeks[0] > self.lead_weeks[1]:
            raise ValueError("Weeks must rise from the first to the second")
        return self


class Remedy(Piece):
    """A way to put an item right: the profile's, with the user's figures where changed, or the user's own."""

    item: Key
    cost: Key = Field(description="id of the profile's remedy, or of the user's own")
    chosen: bool | None = Field(True, description="True: to be done; False: not to be done; None: not decided yet")
    figures: Figures | None = Field(None, description="None: the profile's figures stand")

    @property
    def key(self) -> str:
        """The key under which a record keeps it: item and remedy."""
        return f"{self.item}/{self.cost}"


class Rate(Piece):
    """One unit of another currency in the currency told, on a date."""

    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")]
    per_one: Decimal = Field(gt=0, le=1_000_000)
    date: Line = ""


class Fee(Piece):
    """A named cost of buying."""

    name: Line
    amount: Price


class PartOffer(Piece):
    """A part that somebody would sell, as the user noted it: for how much, and what was expected."""

    id: Key
    part: Line = Field("", description="item and remedy of that part, as item/remedy; empty for any other part")
    name: Line = Field("", description="what it is, where it is none of the remedies")
    price: Price | None = None
    currency: Currency = ""
    expected: Price | None = Field(None, description="what the user expects to pay, in place of the remedy's figures")
    by: Line = ""
    date: Line = ""


class IndexRow(Piece):
    """One year of a price index as the user entered it."""

    year: YearNumber
    value: Decimal = Field(gt=0, le=1_000_000_000)


class PriceLevel(Piece):
    """A change common to all parts prices, in percent: low, likely, high."""

    low: Percent
    likely: Percent
    high: Percent

    @model_validator(mode="after")
    def _in_order(self) -> PriceLevel:
        _rising("the price level", (self.low, self.likely, self.high))
        return self


class Money(Piece):
    """What the user set about money. None is "not entered"; nothing here has a default of the program's own."""

    currency: Currency = ""
    rates: tuple[Rate, ...] = ()
    labour_rate: Price | None = None
    contingency_percent: Annotated[Decimal, Field(ge=0, le=200)] | None = None
    price_level: PriceLevel | None = None
    budget: Price | None = None
    margin: Price | None = None
    price_asked: Price | None = None
    premium_percent: Annotated[Decimal, Field(ge=0, le=100)] | None = None
    tax_percent: Annotated[Decimal, Field(ge=0, le=100)] | None = None
    transport: Price | None = None
    fees: tuple[Fee, ...] = ()
    limit_all_in: Price | None = None
    opening: Price | None = None
    target: Price | None = None
    walk_away: Price | None = None
    purpose: Line = ""
    kind_of_value: Line = ""
    effective_date: Line = ""
    in_the_name_of: Line = ""
    percent_a_year: Percent | None = None
    percent_a_point: Annotated[Decimal, Field(ge=-20, le=20)] | None = Field(
        None, description="what one point of the score is worth to the user, in percent of a price"
    )
    also_count: tuple[PriceKind, ...] = Field((), description="asked or bid, where the user counts them besides sold")
    index: tuple[IndexRow, ...] = ()
    offers: tuple[PartOffer, ...] = ()
    offered_for_parts: Words = ""


class Signature(Piece):
    """A signature drawn, or a name typed in its place, or a refusal; no proof of who drew or typed it."""

    id: Key
    person: Key
    at: str = ""
    strokes: tuple[tuple[tuple[float, float], ...], ...] = ()
    typed: Line = Field("", description="a name typed where nothing was drawn")
    refused: bool = False
    statement: Words = ""
    version: int = Field(1, ge=1, description="the version of the record that was signed")
    of: str = Field("", description="SHA-256 of what was signed, as it is handed over without signatures")


class Version(Piece):
    """A frozen version of the record."""

    number: int = Field(ge=1)
    at: str = ""
    sha256: str = Field("", description="of the record as it is attached to the sealed sheet")
    differences: tuple[str, ...] = ()
    sheet: str = Field("", description="SHA-256 of the sealed sheet")
    whole: str = Field("", description="SHA-256 of the whole record as frozen, money included; never handed over")
    key: str = Field("", description="fingerprint of the key that sealed it")
