"""What is claimed: by the advertisement, by the papers and by the seller, each kept apart."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from inspector.record.base import Key, Line, Moment, Piece, Words
from inspector.record.words import PaperState, Role

ClaimYear = Annotated[int, Field(ge=1880, le=2100)]


class Claim(Piece):
    """What the machine is said to be. The four kinds of year are never mixed; nothing here proves any."""

    model: Line = ""
    advertised: Words = ""
    titled: Words = ""
    model_year: ClaimYear | None = None
    build_date: Line = ""
    first_registration: Line = ""
    title_year: ClaimYear | None = None
    market: Line = ""
    asking_price: Line = ""
    place: Line = ""
    date: Line = ""
    conditions: Line = ""


class Person(Piece):
    """Somebody present, with their relation to the parties and their interest.

    ``interest`` left empty means not asked; "none declared" has to be said.
    """

    id: Key
    name: Line = ""
    role: Role
    interest: Words = ""


class Quoted(Piece):
    """A number as a paper writes it, typed as readings are, and the place it refers to (empty: it does not say)."""

    number: Line
    place: Line = Field("", description="id of the numbered place it refers to")


class Paper(Piece):
    """A title, book, bill or letter, and the numbers it quotes. Without a number it is not tied to this machine."""

    id: Key
    name: Line
    state: PaperState = PaperState.UNSAID
    quoted: tuple[Quoted, ...] = ()
    named: Line = ""
    dated: Line = ""
    note: Words = ""


class Inquiry(Piece):
    """A question put to a body outside: theft, lien. Nothing is asked by the program itself."""

    id: Key
    about: Line
    body: Line = ""
    sent: Line = ""
    date: Line = ""
    reply: Words = ""


class Statement(Piece):
    """Something said, by whom and how; unverified whatever it says."""

    id: Key
    text: Words
    by: Line = ""
    medium: Line = "told"
    at: Moment = ""
