"""Numbers of 17 characters: check digit, year code, maker, forbidden letters, and what the check cannot see.

Rules: 49 CFR 565 (contents, check digit, year codes, makers of few machines) and the final rule 73 FR 23367 of
30 April 2008, by which position 7 says nothing of the year on a motorcycle. Elsewhere no check digit is required.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import islice, product
from math import prod
from typing import TYPE_CHECKING

from inspector.judgement.check_digit import CHECK, LENGTH, NEVER, VALUES, agrees, check_digit, count_agreeing
from inspector.judgement.comparing import either
from inspector.judgement.lookalikes import suggestions
from inspector.judgement.seventeen_words import blind_to, check_reasons, doubt_reasons, year_reasons
from inspector.record.words import Clarity
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.record.reading import Figure

FIRST_YEAR = 1980  # duty for motorcycles from 1 September 1980 or the change of model: NHTSA interpretation aiam3325
YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789"  # A is 1980 and 2010; I, O, Q, U, Z and 0 are no year codes
SEPARATORS = " -./*"
LISTED = 200  # candidates that are written out; beyond, they are counted
SOURCES = (
    say("49 CFR 565.15: contents, values, weights and check digit"),
    say("73 FR 23367, 30 April 2008: position 7 does not tell the year of motorcycles"),
    say("NHTSA interpretations aiam3325 (1980) and 9753a: duty from model year 1981, year codes of motorcycles"),
)

Choices = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Seventeen:
    """What a number of 17 characters says of itself.

    ``valid``: the check digit agrees, or None where that is open. ``fault`` only where it had to agree and a machine
    for North America is known. ``expected`` is the one character that position 9 should hold, or "". ``years`` are
    model years of both cycles of the year code. ``candidates`` are the numbers a doubtful reading leaves, all of
    them counted in ``candidate_count``. ``forbidden`` are positions from 1.
    """

    applies: bool
    length: int = LENGTH
    valid: bool | None = None
    fault: bool = False
    expected: str = ""
    years: tuple[int, ...] = ()
    low_volume: bool = False
    maker: str = ""
    serial: str = ""
    forbidden: tuple[int, ...] = ()
    candidates: tuple[str, ...] = ()
    candidate_count: int = 0
    blind: tuple[Say, ...] = ()
    reasons: tuple[Say, ...] = ()
    sources: tuple[Say, ...] = SOURCES


def check_seventeen(
    figures: tuple[Figure, ...], claimed_year: int | None, *, north_america: bool | None = None
) -> Seventeen:
    """What the number says of itself; "not applicable" where it has not 17 characters or is too old for the rule.

    ``north_america``: whether the machine was made for a market that requires the check digit; None is not known.
    """
    shown = tuple(f for f in figures if f.clarity is not Clarity.CLEAR or f.could_be[0] not in SEPARATORS)
    why_not = _not_applicable(len(shown), claimed_year)
    if why_not is not None:
        return Seventeen(applies=False, length=len(shown), reasons=(why_not,))
    choices = tuple(_choices(figure) for figure in shown)
    forbidden = tuple(p for p, choice in enumerate(choices, start=1) if not choice)
    low_volume = choices[2] == ("9",)
    typed = tuple(figure.typed().upper() for figure in shown)
    years = () if shown[9].clarity is Clarity.UNREADABLE else years_of(choices[9])
    maker, serial = _maker(typed, low_volume=low_volume)
    reasons = (
        *_beginnings(claimed_year),
        *_letter_reasons(typed, choices),
        *_maker_reasons(choices, maker, serial),
    )
    told = year_reasons(typed[9], years, claimed_year, north_america)
    base = Seventeen(
        applies=True, years=years, low_volume=low_volume, maker=maker, serial=serial, forbidden=forbidden,
        reasons=(*reasons, *told),
    )  # fmt: skip
    return _checked(base, choices, typed, north_america)


def years_of(choice: tuple[str, ...]) -> tuple[int, ...]:
    """The model years that these characters in position 10 can mean, of both cycles: B is 1981 and 2011."""
    at = [YEAR_CODES.index(c) for c in choice if c in YEAR_CODES]
    return tuple(sorted(first + n for n in at for first in (1980, 2010)))


def _not_applicable(length: int, claimed_year: int | None) -> Say | None:
    if length != LENGTH:
        return say("Not applicable: {count} characters, and the rules are for 17.", count=length)
    if claimed_year is not None and claimed_year < FIRST_YEAR:
        return say(
            "Not applicable: machines of {year} had no number of this kind; the duty began about 1981.",
            year=claimed_year,
        )
    return None


def _choices(figure: Figure) -> tuple[str, ...]:
    """What the figure can be in such a number: nothing where only a forbidden character was seen."""
    if figure.clarity is Clarity.UNREADABLE:
        return tuple(VALUES)
    return tuple(dict.fromkeys(c.upper() for c in figure.could_be if c.upper() in VALUES))


def _maker(typed: tuple[str, ...], *, low_volume: bool) -> tuple[str, str]:
    """Maker's mark and serial: 9 in the third position takes positions 12 to 14 to the maker."""
    first = "".join(typed[:3])
    if low_volume:
        return first + "".join(typed[11:14]), "".join(typed[14:])
    return first, "".join(typed[11:])


def _beginnings(claimed_year: int | None) -> tuple[Say, ...]:
    if claimed_year != FIRST_YEAR:
        return ()
    begun = "The duty began on 1 September 1980 or with the change of model: not every machine of 1980 came under it."
    return (say(begun),)


def _letter_reasons(typed: tuple[str, ...], choices: Choices) -> Iterable[Say]:
    """Where a letter was read, or was among the possible ones, that such numbers never hold."""
    for position, (shown, choice) in enumerate(zip(typed, choices, strict=True), start=1):
        out = [c for c in shown if c in NEVER]
        if not choice:
            yield _forbidden(position, shown, choices)
        elif out:
            yield say(
                "Position {position} cannot be {out}: I, O and Q are never used there.",
                position=position,
                out=either(out),
            )


def _forbidden(position: int, shown: str, choices: Choices) -> Say:
    never = say("Position {position} is read as {shown}, which such numbers never use.", position=position, shown=shown)
    usable = [c for c in suggestions(shown) if c in VALUES]
    if not usable:
        return never
    looks = say("{never} {other} looks like it.", never=never, other=usable[0])
    others = (*choices[: position - 1], (usable[0],), *choices[position:])
    if all(len(choice) == 1 for choice in others) and agrees("".join(choice[0] for choice in others)):
        return say("{looks} With {other} there the check digit would agree.", looks=looks, other=usable[0])
    return looks


def _maker_reasons(choices: Choices, maker: str, serial: str) -> tuple[Say, ...]:
    if choices[2] == ("9",):
        few = say(
            "Position 3 is 9: a maker of few machines, named by positions 1 to 3 and 12 to 14 ({maker}). Its serial is"
            " {serial}.",
            maker=maker,
            serial=serial,
        )
        return (few,)
    if "9" in choices[2]:
        return (say("If position 3 is 9, it is a maker of few machines, named by positions 12 to 14 as well."),)
    return ()


def _checked(base: Seventeen, choices: Choices, typed: tuple[str, ...], north_america: bool | None) -> Seventeen:
    if base.forbidden:
        fault = north_america is True
        return replace(base, valid=False, fault=fault)
    count = prod(len(choice) for choice in choices)
    agreeing = count_agreeing(choices)
    valid = True if agreeing == count else False if not agreeing else None
    expected = _expected(choices)
    candidates = () if count == 1 else _candidates(choices, count, bound=north_america is not False)
    number = "".join(c[0] for c in choices) if count == 1 else ""
    reasons = (
        check_reasons(number, expected, valid, north_america)
        if count == 1
        else doubt_reasons(choices, typed, agreeing, count, candidates, north_america)
    )
    return replace(
        base, valid=valid, expected=expected, candidates=candidates,
        fault=valid is False and north_america is True,
        candidate_count=0 if count == 1 else agreeing if north_america is not False else count,
        blind=blind_to(choices), reasons=(*base.reasons, *reasons),
    )  # fmt: skip


def _expected(choices: Choices) -> str:
    """The one check digit that every reading of the other sixteen leads to, or nothing."""
    others = (*choices[: CHECK - 1], ("0",), *choices[CHECK:])
    if prod(len(choice) for choice in others) > LISTED:
        return ""
    found = {check_digit("".join(number)) for number in product(*others)}
    return found.pop() if len(found) == 1 else ""


def _candidates(choices: Choices, count: int, *, bound: bool) -> tuple[str, ...]:
    """The numbers that the reading leaves, those with their check digit where it binds; the first 200."""
    if count > LISTED * 100:
        return ()
    numbers = ("".join(number) for number in product(*choices))
    return tuple(islice((n for n in numbers if not bound or agrees(n)), LISTED))
