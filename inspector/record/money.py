"""Money: private to the user, never on the seller's copy."""

from __future__ import annotations

from decimal import Decimal

from pydantic import Field

from inspector.record.base import Key, Line, Piece, Words
from inspector.record.words import PriceKind


class Comparable(Piece):
    """Another machine's price, and whether and why it is left out."""

    id: Key
    kind: PriceKind
    price: Decimal = Field(ge=0)
    currency: str = Field(max_length=3)
    fees_in: bool = False
    date: Line = ""
    place: Line = ""
    condition: Line = ""
    numbers_agree: Line = ""
    how_like: Line = ""
    excluded_because: Words = ""


class Amount(Piece):
    """A named figure the user entered: a fee, a rate, a limit."""

    id: Key
    value: Decimal
    currency: str = Field("", max_length=3)
    note: Words = ""


class Remedy(Piece):
    """The remedy chosen for an item."""

    item: Key
    cost: Key


class Signature(Piece):
    """A drawn or refused signature; no proof of who drew it."""

    id: Key
    person: Key
    at: str = ""
    strokes: tuple[tuple[tuple[float, float], ...], ...] = ()
    refused: bool = False
    statement: Words = ""


class Version(Piece):
    """A frozen version of the record."""

    number: int = Field(ge=1)
    at: str = ""
    sha256: str = ""
    differences: tuple[str, ...] = ()
