"""A reading as what each of its figures can be, with the figures numbered as people count them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inspector.record.reading import numbered
from inspector.record.words import Clarity

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from inspector.record.reading import Figure

DIGITS = frozenset("0123456789")


@dataclass(frozen=True, slots=True)
class Pattern:
    """The figures of a reading without separators.

    ``figures`` holds what each can be, in capitals, or None for unreadable; ``numbers`` how people count each,
    from 1; ``doubtful`` the positions, from 0, with more than one alternative.
    """

    figures: tuple[frozenset[str] | None, ...]
    numbers: tuple[int, ...]
    doubtful: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.figures)

    def fits(self, text: str, start: int) -> bool:
        """True when the text can stand from that position on."""
        if start + len(text) > len(self.figures):
            return False
        return all(can is None or sign in can for sign, can in zip(text, self.figures[start:], strict=False))

    def digits(self, start: int, end: int) -> tuple[str, ...]:
        """The digits, rising, that each figure of the stretch can be; an empty text where it is none."""
        return tuple("0123456789" if can is None else "".join(sorted(can & DIGITS)) for can in self.figures[start:end])

    def conditions(self, text: str, start: int) -> tuple[tuple[int, str], ...]:
        """What the doubtful figures are when the text stands from that position on: their number and the figure."""
        return tuple((self.numbers[at], text[at - start]) for at in self.doubtful if start <= at < start + len(text))

    def typed(self, start: int, end: int, given: Mapping[int, str] | None = None) -> str:
        """The stretch as one types it, ``?`` unreadable, ``[19]`` 1 or 9; ``given`` settles figures by number."""
        settled = given or {}
        return "".join(settled.get(self.numbers[at]) or _typed(self.figures[at]) for at in range(start, end))


def _typed(can: frozenset[str] | None) -> str:
    if can is None:
        return "?"
    return next(iter(can)) if len(can) == 1 else f"[{''.join(sorted(can))}]"


def capital(sign: str) -> str:
    """The capital of a letter where that is one letter too; anything else as it is."""
    big = sign.upper()
    return big if len(big) == 1 else sign


def plain(text: str, separators: str) -> str:
    """The text in capitals, without separators and spaces."""
    return "".join(capital(sign) for sign in text if sign not in separators and not sign.isspace())


def pattern_of(figures: Sequence[Figure], separators: str) -> Pattern:
    """The figures that count, a separator being none; one that is a separator or a figure is the figure."""
    kept = list(_kept(figures, separators))
    sets = tuple(can for _, can in kept)
    doubtful = tuple(at for at, can in enumerate(sets) if can is not None and len(can) > 1)
    return Pattern(sets, tuple(number for number, _ in kept), doubtful)


def _kept(figures: Sequence[Figure], separators: str) -> Iterable[tuple[int, frozenset[str] | None]]:
    for number, figure in numbered(tuple(figures)):
        if figure.clarity is Clarity.UNREADABLE:
            yield number, None
            continue
        can = frozenset(capital(sign) for sign in figure.could_be if sign not in separators and not sign.isspace())
        if can:
            yield number, can
