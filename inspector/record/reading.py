"""A number as read, figure by figure."""

from __future__ import annotations

from pydantic import Field, model_validator

from inspector.record.base import Key, Line, Moment, Piece, Words
from inspector.record.words import Clarity, HowRead, NumberState, StampSight


class Figure(Piece):
    """One character as seen. A probable one lists what it could be, first guess first; an unreadable one nothing."""

    clarity: Clarity = Clarity.CLEAR
    could_be: tuple[str, ...] = ()

    @model_validator(mode="after")
    def _fits(self) -> Figure:
        if any(len(c) != 1 for c in self.could_be):
            raise ValueError("a figure is one character")
        if self.clarity is Clarity.CLEAR and len(self.could_be) != 1:
            raise ValueError("a clear figure is exactly one character")
        if self.clarity is Clarity.UNREADABLE and self.could_be:
            raise ValueError("an unreadable figure names no character")
        if self.clarity is Clarity.PROBABLE and not self.could_be:
            raise ValueError("a probable figure names what it could be")
        return self

    def typed(self) -> str:
        """The figure as it is typed: itself, ``[19]`` for "1 or 9", ``?`` for unreadable."""
        if self.clarity is Clarity.UNREADABLE:
            return "?"
        if self.clarity is Clarity.CLEAR:
            return self.could_be[0]
        return f"[{''.join(self.could_be)}]"


class Reading(Piece):
    """The number of one place as read on one occasion by one person; without figures, ``state`` says what was found."""

    id: Key
    place: Key
    state: NumberState = NumberState.READ
    figures: tuple[Figure, ...] = ()
    how_read: HowRead = HowRead.METAL
    by: Line = ""
    at: Moment = ""
    cleaned: bool = False
    leave_of: Line = Field("", description="with whose leave it was cleaned")
    stamping: dict[str, StampSight] = Field(default_factory=dict)
    note: Words = ""

    def typed(self) -> str:
        """The number as it would be typed again."""
        return "".join(figure.typed() for figure in self.figures)


def numbered(figures: tuple[Figure, ...]) -> tuple[tuple[int, Figure], ...]:
    """Each figure with its number as people count them: a space parts figures and is none."""
    return tuple(enumerate((f for f in figures if f.could_be != (" ",)), start=1))


def figures_of(typed: str) -> tuple[Figure, ...]:
    """The figures of a typed number; ``?`` is unreadable, ``[19]`` is "1 or 9", ``[7]`` is a probable 7.

    Raises ValueError with a sentence when a bracket is empty or left open.
    """
    figures: list[Figure] = []
    rest = typed.strip()
    while rest:
        head, rest = rest[0], rest[1:]
        if head == "[":
            inside, closed, rest = rest.partition("]")
            if not closed or not inside:
                raise ValueError('a bracket like [19] must hold at least one figure and be closed with "]"')
            figures.append(Figure(clarity=Clarity.PROBABLE, could_be=tuple(dict.fromkeys(inside))))
        elif head == "?":
            figures.append(Figure(clarity=Clarity.UNREADABLE))
        else:
            figures.append(Figure(could_be=(head,)))
    return tuple(figures)
