"""Numbered places, how their numbers are built, and how two places stand to each other."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from inspector.profile.base import Cited, Id, Part, Span, Text, Year, YearMonth
from inspector.profile.words import Assembly, Gives, RelationKind, SegmentKind

Month = Annotated[int, Field(ge=1, le=12)]
Serial = Annotated[int, Field(ge=0, le=10**12)]
Offset = Annotated[int, Field(ge=-(10**12), le=10**12)]
MOST_SEGMENTS = 60  # far beyond any number that was stamped; what a rule can be made to match stays within reason


class Code(Cited):
    """One row of a code table: what is stamped, and what it says."""

    code: Text
    means: str = ""
    model_year: Year | None = None
    build_year: Year | None = Field(None, description="calendar year, where the code dates the making")
    month: Month | None = None
    model: str = ""


class Segment(Part):
    """One stretch of a number: fixed letters, a code from a table, or figures of a fixed or open width.

    Figures that give a year, month, week or day say it by their value; ``plus`` is added to it first, and
    several values of ``plus`` are several possibilities (a one-figure year whose decade is not stamped).
    Two codes with the same letters in one table are two possibilities as well.
    """

    id: Id
    kind: SegmentKind
    text: str = ""
    gives: Gives = Gives.OTHER
    codes: tuple[Code, ...] = Field((), max_length=5000)
    width: int | None = Field(None, ge=1, le=20)
    min_width: int = Field(1, ge=1, le=20)
    max_width: int = Field(12, ge=1, le=20)
    optional: bool = False
    plus: tuple[int, ...] = Field(
        (), max_length=30, description="added to the figures, one for each possibility: 1970 and 1980"
    )

    def widths(self) -> tuple[int, int]:
        """Fewest and most figures this stretch can have."""
        return (self.width, self.width) if self.width else (self.min_width, self.max_width)

    @model_validator(mode="after")
    def _complete(self) -> Segment:
        if self.kind is SegmentKind.LITERAL and not self.text:
            raise ValueError(f'segment "{self.id}" is literal but has no text')
        if self.kind is SegmentKind.TABLE and not self.codes:
            raise ValueError(f'segment "{self.id}" is a table but has no codes')
        if self.min_width > self.max_width:
            raise ValueError(f'segment "{self.id}" has min_width above max_width')
        return self


class NumberRange(Cited):
    """A block of serials and what it says.

    ``last`` left out: only the start is known, and the block runs to the next start. ``wraps`` marks a
    block that runs past the highest serial and on from zero. Blocks may overlap and may leave gaps; a list of
    another source is a row of its own. ``years`` stands where a block tells a span of model years and no
    single one; ``inferred`` marks a row that was worked out from other published figures.
    """

    prefix: str = ""
    suffix: str = Field("", description="letters directly after the serial")
    first: int = Field(alias="from", ge=0)
    last: int | None = Field(None, alias="to", ge=0)
    wraps: bool = False
    model_year: Year | None = None
    years: Span | None = None
    model: str = ""
    market: str = ""
    inferred: bool = False
    built_from: YearMonth | None = None
    built_to: YearMonth | None = None
    says: str = ""

    @model_validator(mode="after")
    def _in_order(self) -> NumberRange:
        if self.last is not None and self.last < self.first and not self.wraps:
            raise ValueError(
                f"the range runs backwards: {self.first} to {self.last}; set wraps = true if it wraps round"
            )
        if self.model_year is not None and self.years is not None:
            raise ValueError("a range gives one model_year or a span of years, not both")
        if self.built_from and self.built_to and self.built_to < self.built_from:
            raise ValueError(f"the build months run backwards: {self.built_from} to {self.built_to}")
        return self


class NumberRule(Cited):
    """How the numbers of one place and period are built.

    ``orders`` lists the sequences of segment ids that were stamped (model code before or after the
    serial); without it the segments stand in the order written. ``serial`` names the digits segment
    that the ranges count; a range's prefix is what the letters before the serial spell, all or the
    last of them. ``never_used`` speaks of one-letter codes, not of whole words as a model's code.
    """

    id: Id
    title: Text
    years: Span = Span()
    segments: tuple[Segment, ...] = Field(alias="segment", min_length=1, max_length=MOST_SEGMENTS)
    orders: tuple[Annotated[tuple[Id, ...], Field(max_length=MOST_SEGMENTS)], ...] = Field((), max_length=100)
    separators: str = " -./"
    never_used: str = ""
    serial: Id | None = None
    ranges: tuple[NumberRange, ...] = Field((), alias="range", max_length=1000)
    not_done: str = Field("", description="what the maker did not do")
    replacement: bool = Field(
        False, description="numbers of parts sold as spares: no number of another place was ever to go with them"
    )
    month_before_season: bool = Field(
        False,
        description="the season's first months belong to the calendar year before the model year",
    )
    double_months: tuple[Month, ...] = Field((), description="months that can mean the start or the end of a season")
    double_months_from: Year | None = Field(None, description="model year from which they can; all where left out")

    def sequences(self) -> tuple[tuple[Id, ...], ...]:
        """Every order in which the segments may stand."""
        return self.orders or (tuple(segment.id for segment in self.segments),)


class Place(Cited):
    """Where a number is stamped or cast, how to find it and how to read it."""

    id: Id
    name: Text
    where: Text
    how_to_read: str = ""
    caution: str = ""
    assembly: Assembly
    cast: bool = Field(False, description="raised on the casting, not stamped")
    identity: bool = Field(True, description="bears on what the machine is")
    dates_part: bool = Field(False, description="what stands there is a date code of the part, not a number")
    usual_lag_months: int | None = Field(
        None, ge=0, le=240, description="a part so dated is usually at most so many months older than the machine"
    )
    rules: tuple[NumberRule, ...] = Field((), alias="rule", max_length=60)


class Relation(Cited):
    """How the numbers of two places stood to each other as built, in these model years."""

    places: tuple[Id, Id]
    kind: RelationKind
    years: Span = Span()
    usual_gap: int | None = Field(None, ge=0, description="usual difference for close numbers; never a limit")
    gap_points: tuple[tuple[Serial, Offset], ...] = Field(
        (),
        max_length=500,
        description="serial of the first place, and the difference (second less first) expected there; between two "
        "points it is in proportion, outside them it is that of the nearest",
    )

    @model_validator(mode="after")
    def _rising(self) -> Relation:
        serials = [serial for serial, _ in self.gap_points]
        if serials != sorted(set(serials)):
            raise ValueError("gap_points must rise in serial, each serial once")
        return self
