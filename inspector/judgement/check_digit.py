"""The arithmetic of the check digit in numbers of 17 characters.

Values and weights: 49 CFR 565.15(c), Table III and the weights by position. The sum is divided by 11 as whole
numbers; the table of decimal remainders printed beside the rule is rounded and is not used.
"""

from __future__ import annotations

from functools import lru_cache

LENGTH = 17
CHECK = 9  # the position of the check digit, counted from 1
WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
_LETTERS = dict(zip("ABCDEFGHJKLMNPRSTUVWXYZ", map(int, "12345678123457923456789"), strict=True))
VALUES = {**{str(n): n for n in range(10)}, **_LETTERS}
REMAINDERS = "0123456789X"
NEVER = "IOQ"


def contribution(position: int, character: str) -> int:
    """What the character adds to the sum, as a remainder of 11; ``position`` counts from 1."""
    return WEIGHTS[position - 1] * VALUES[character] % 11


def check_digit(number: str) -> str:
    """The character that belongs in position 9 of 17 usable characters, whatever stands there."""
    total = sum(contribution(p, c) for p, c in enumerate(number, start=1) if p != CHECK)
    return REMAINDERS[total % 11]


def agrees(number: str) -> bool:
    """True when position 9 holds the check digit of the other sixteen."""
    return number[CHECK - 1] == check_digit(number)


@lru_cache(maxsize=64)
def same_value(character: str) -> tuple[str, ...]:
    """The other characters that count as much: the check digit cannot tell them apart."""
    worth = VALUES[character]
    return tuple(other for other, value in VALUES.items() if value == worth and other != character)


def count_agreeing(choices: tuple[tuple[str, ...], ...]) -> int:
    """How many of the numbers made of one choice in each of the 17 positions carry their check digit.

    Counted by remainder, never listed.
    """
    ways = [1] + [0] * 10
    for position, choice in enumerate(choices, start=1):
        if position != CHECK:
            ways = _one_more(ways, position, choice)
    return sum(ways[REMAINDERS.index(c)] for c in choices[CHECK - 1] if c in REMAINDERS)


def _one_more(ways: list[int], position: int, choice: tuple[str, ...]) -> list[int]:
    after = [0] * 11
    for character in choice:
        step = contribution(position, character)
        for remainder, count in enumerate(ways):
            after[(remainder + step) % 11] += count
    return after
