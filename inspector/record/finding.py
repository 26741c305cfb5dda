"""What was seen at an item, by one person."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from inspector.record.base import Key, Line, Moment, Piece, Words
from inspector.record.material import Material
from inspector.record.words import Conclusion, Condition, Covered, Drawn, Evidence, Mark, Seen, Sureness


class Concluded(Piece):
    """One conclusion and how sure the person is of it."""

    what: Conclusion
    sureness: Sureness = Sureness.SURE


class Measured(Piece):
    """Up to three readings of a named measure with one instrument, as typed (``7 1/32``) in its unit."""

    measure: Key
    readings: tuple[Line, ...] = Field((), max_length=3)
    unit: Line = ""
    instrument: Line = ""


class Finding(Piece):
    """What one person saw at one item. Without mark it is only a seen state, a note or a photograph."""

    item: Key
    by: Key = Field(description="id of the person who says so")
    at: Moment = ""
    mark: Mark | None = None
    seen: Seen = Seen.EXAMINED
    fitted: Line = Field("", description="id of the variant found, or empty")
    fitted_other: Line = Field("", description="the fitted thing in words when no variant is it")
    conclusions: tuple[Concluded, ...] = ()
    evidence: tuple[Evidence, ...] = ()
    book: Line = Field("", description="title and page where the evidence is a book")
    measured: tuple[Measured, ...] = ()
    material: Material = Field(Material(), description="what magnet, tap and underside told")
    conditions: tuple[Condition, ...] = ()
    unsafe: bool = False
    note: Words = ""
    next_step: Words = Field("", description="book, measurement or person that would settle it")
    reply: Words = Field("", description="the seller's reply to this finding")

    @property
    def key(self) -> str:
        """The key under which a record keeps it: item and person."""
        return f"{self.item}/{self.by}"


class Box(Piece):
    """A part of a photograph, as shares of the upright picture, to be covered on its sharing copies."""

    left: float = Field(ge=0, le=1)
    top: float = Field(ge=0, le=1)
    right: float = Field(ge=0, le=1)
    bottom: float = Field(ge=0, le=1)
    hides: Covered = Covered.OTHER

    @model_validator(mode="after")
    def _has_room(self) -> Box:
        if self.left >= self.right or self.top >= self.bottom:
            raise ValueError("a box ends right of and below where it begins")
        return self


Share = Annotated[float, Field(ge=0, le=1)]
Spot = tuple[Share, Share]


class PhotoMark(Piece):
    """Something drawn into copies of a photograph, at points that are shares of the upright picture.

    An arrow runs from the first point to the second, a ring has its middle and a point of its rim, words begin at one.
    """

    kind: Drawn
    points: tuple[Spot, ...] = Field(min_length=1, max_length=2)
    text: Line = ""


class PhotoMeasure(Piece):
    """Something measured in a photograph, so that it can be measured again: reference, points, value, what it rests on.

    ``corners`` are the points of the reference, ``points`` those measured, both as shares of the upright picture.
    """

    id: Key
    what: Line = Field(description="length, angle or row of figures")
    reference: Line = ""
    size: tuple[float, ...] = Field((), max_length=2, description="of a reference of one's own, in mm")
    corners: tuple[Spot, ...] = Field((), max_length=12)
    points: tuple[Spot, ...] = Field((), max_length=400)
    value: float | None = None
    low: float | None = Field(None, description="lower end of the 95 % interval")
    high: float | None = Field(None, description="upper end of the 95 % interval")
    uncertainty: float | None = Field(None, ge=0, description="standard uncertainty")
    unit: Line = ""
    pointing: float | None = Field(None, gt=0, description="pixels by which a point may be off, one deviation")
    above: float | None = Field(None, ge=0, description="mm by which it may lie off the plane; None where nobody said")
    camera: float | None = Field(None, gt=0, description="mm from the camera; None where nobody said")
    note: Words = Field("", description="the result in words, and what it rests on")


class Photograph(Piece):
    """A photograph kept untouched under its SHA-256, tied to an item or a reading."""

    id: Key
    sha256: str = Field(pattern=r"^[0-9a-f]{64}$")
    name: Line
    media: Line
    width: int = Field(ge=1)
    height: int = Field(ge=1)
    size: int = Field(ge=1)
    taken_at: Moment = ""
    imported_at: Moment = ""
    by: Line = ""
    has_place: bool = False
    item: Line = ""
    place: Line = Field("", description="numbered place whose reading it shows")
    caption: Line = ""
    light: Line = ""
    cleaned: Line = ""
    scale_present: bool = False
    camera: Line = Field("", description="the camera's name, as it wrote it into the file")
    shot: Line = Field("", description="id of the shot of the list that it answers")
    marks: tuple[PhotoMark, ...] = Field((), description="drawn into copies only, never into the kept file")
    measures: tuple[PhotoMeasure, ...] = ()
    masks: tuple[Box, ...] = Field((), description="covered on sharing copies, never in the kept file")


class Question(Piece):
    """An open question written by hand, with the step that would settle it."""

    id: Key
    text: Words
    next_step: Words = ""
    item: Line = ""
    closed: Words = Field("", description="how it was settled; empty while open")
