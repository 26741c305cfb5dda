"""What all parts of a profile share: frozen models that refuse unknown keys, and facts with sources."""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, model_validator

Id = Annotated[str, Field(pattern=r"^[a-z0-9][a-z0-9._-]*$", max_length=80)]
Text = Annotated[str, Field(min_length=1, max_length=4000)]
Year = Annotated[int, Field(ge=1880, le=2100)]
YearMonth = Annotated[str, Field(pattern=r"^\d{4}-(0[1-9]|1[0-2])$")]


class Part(BaseModel):
    """A frozen piece of a profile; unknown keys are errors, so that a typing slip is found."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", defer_build=True, str_strip_whitespace=True, allow_inf_nan=False
    )


class Cited(Part):
    """A fact. ``sources`` name who says so; with none it is shown as having no source."""

    sources: tuple[Id, ...] = ()
    at: str = Field("", max_length=200, description="page or place in the source, as printed")
    note: str = Field("", max_length=2000)


class Span(Part):
    """Model years from first to last, both included; an open end is left out."""

    first: Year | None = Field(None, alias="from")
    last: Year | None = Field(None, alias="to")

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True, populate_by_name=True)

    @model_validator(mode="after")
    def _in_order(self) -> Span:
        if self.first is not None and self.last is not None and self.first > self.last:
            raise ValueError(f"the years run backwards: from {self.first} to {self.last}")
        return self

    def holds(self, year: int) -> bool:
        """True when the year lies within the span."""
        after = self.first is None or year >= self.first
        return after and (self.last is None or year <= self.last)

    def within(self, first: int, last: int) -> tuple[int, int]:
        """The span with open ends closed at the given years."""
        return (
            self.first if self.first is not None else first,
            self.last if self.last is not None else last,
        )
