"""What the check of a 17-character number found, in sentences."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from inspector.judgement.check_digit import CHECK, agrees, same_value
from inspector.judgement.comparing import either
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    Choices = tuple[tuple[str, ...], ...]

NOT_REQUIRED = say("Outside North America no check digit is required: this is no fault.")
IF_REQUIRED = say("That counts only if the machine was made for North America; elsewhere no check digit is required.")
SHOWN = 12  # candidates that are named in a sentence
STAMPED_ALIKE = "1JS2VNDU"  # pairs that look alike when stamped and count the same: common practice, no source
FEW = 5  # characters that are named for one position


def check_reasons(number: str, expected: str, valid: bool | None, north_america: bool | None) -> tuple[Say, ...]:
    """What the check digit of a clear number says."""
    found = number[CHECK - 1]
    if valid:
        return (
            say("The check digit agrees: position 9 is {found}.", found=found),
            say("One wrong number in eleven would agree as well."),
        )
    differs = say("The check digit would be {expected}; position 9 is read as {found}.", expected=expected, found=found)
    if north_america is False:
        return (differs, NOT_REQUIRED)
    look = say("Read the number again, figure by figure, before anything is made of it.")
    return (differs, look) if north_america else (differs, look, IF_REQUIRED)


def doubt_reasons(
    choices: Choices,
    typed: tuple[str, ...],
    agreeing: int,
    count: int,
    candidates: tuple[str, ...],
    north_america: bool | None,
) -> tuple[Say, ...]:
    """What the check digit leaves of a number with doubtful figures."""
    if north_america is False:
        return (
            say("Outside North America no check digit is required: it rules out none of {count} numbers.", count=count),
        )
    told = say(
        "Of {count} numbers that it could be, the check digit allows {agreeing}.", count=count, agreeing=agreeing
    )
    allowed = tuple(_allowed(choices, candidates)) if len(candidates) == agreeing else ()
    named = (
        (say("It allows: {numbers}.", numbers=", ".join(candidates)),) if 0 < agreeing <= SHOWN and candidates else ()
    )
    return (told, *allowed, *named, *(() if north_america else (IF_REQUIRED,)))


def _allowed(choices: Choices, candidates: tuple[str, ...]) -> Iterable[Say]:
    """For each doubtful position where something falls away: what is left there."""
    for at, choice in enumerate(choices):
        left = [c for c in choice if any(number[at] == c for number in candidates)]
        if 0 < len(left) < len(choice) and len(left) <= FEW:
            yield say("Position {position} can only be {left}.", position=at + 1, left=either(left))


def year_reasons(
    typed: str, years: tuple[int, ...], claimed: int | None, north_america: bool | None
) -> tuple[Say, ...]:
    """What position 10 says of the model year, and whether the claim is among it."""
    elsewhere = () if north_america else (say("Outside North America position 10 need not be a year."),)
    if typed == "?":
        return (say("Position 10 was not read, and tells no year."), *elsewhere)
    if not years:
        return (say("Position 10 is {typed}, which is no year code.", typed=typed), *elsewhere)
    told = say(
        "Position 10 is {typed}: model year {years}; on a motorcycle the number does not tell which.",
        typed=typed,
        years=either([str(year) for year in years]),
    )
    if claimed is None or claimed in years or north_america is False:
        return (told, *elsewhere)
    return (told, say("Claimed is {year}.", year=claimed), *elsewhere)


def blind_to(choices: Choices) -> tuple[Say, ...]:
    """Single errors in this very number that the check digit cannot show: stamped look-alikes first."""
    clear = [(p, c[0]) for p, c in enumerate(choices, start=1) if len(c) == 1 and p != CHECK and same_value(c[0])]
    ranked = sorted(clear, key=lambda at: at[1] not in STAMPED_ALIKE)
    single = tuple(
        say("Position {position}: if {others} were read as {character}, the check digit would not show it.",
            position=position, others=either(same_value(character)), character=character)
        for position, character in ranked
    )  # fmt: skip
    return (*single, *_swaps(choices))


def _swaps(choices: Choices) -> Iterable[Say]:
    """Neighbours of a clear number that could be changed over unseen."""
    if any(len(choice) != 1 for choice in choices):
        return
    number = "".join(choice[0] for choice in choices)
    for at, (one, other) in enumerate(pairwise(number)):
        swapped = number[:at] + other + one + number[at + 2 :]
        if one != other and agrees(swapped) == agrees(number):
            yield say("Positions {first} and {second}, changed over, would not show.", first=at + 1, second=at + 2)
