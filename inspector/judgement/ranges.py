"""Which numbers fit figures that are partly known: counted and bounded digit by digit, never listed.

``sets`` holds, for each figure of a number, the digits that it can be, rising. All numbers have ``len(sets)`` figures.
"""

from __future__ import annotations

from itertools import accumulate
from operator import mul
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

Sets = tuple[str, ...]
_ANY = "0123456789"
Cube = tuple[tuple[int, str], ...]


def all_of(sets: Sequence[str]) -> int:
    """How many numbers the figures can make."""
    product = 1
    for digits in sets:
        product *= len(digits)
    return product


def how_many(sets: Sets, low: int, high: int) -> int:
    """How many of the numbers lie from low to high, both included."""
    return max(0, _up_to(sets, high) - _up_to(sets, low - 1)) if low <= high else 0


def _up_to(sets: Sets, bound: int) -> int:
    """How many of the numbers are at most the bound."""
    if bound < 0:
        return 0
    size = len(sets)
    if bound >= 10**size:
        return all_of(sets)
    if all(len(digits) == len(_ANY) for digits in sets):
        return bound + 1
    after = [*accumulate((len(digits) for digits in reversed(sets)), mul, initial=1)]
    found = 0
    for at, edge in enumerate(str(bound).zfill(size) if size else ""):
        found += sum(digit < edge for digit in sets[at]) * after[size - at - 1]
        if edge not in sets[at]:
            return found
    return found + 1


def smallest(sets: Sets, low: int, high: int) -> int | None:
    """The smallest of the numbers from low to high, or None."""
    found = _next(sets, max(low, 0), rising=True)
    return found if found is not None and found <= high else None


def largest(sets: Sets, low: int, high: int) -> int | None:
    """The largest of the numbers from low to high, or None."""
    found = _next(sets, min(high, 10 ** len(sets) - 1), rising=False)
    return found if found is not None and found >= low else None


def _next(sets: Sets, bound: int, *, rising: bool) -> int | None:
    """The number nearest to the bound on its far side: the bound itself, else it leaves the bound as late as it can."""
    size = len(sets)
    if bound < 0 or bound >= 10**size or not all(sets):
        return None
    edge = str(bound).zfill(size) if size else ""
    same = next((at for at in range(size) if edge[at] not in sets[at]), size)
    if same == size:
        return bound
    for at in range(same, -1, -1):
        onward = [digit for digit in sets[at] if (digit > edge[at] if rising else digit < edge[at])]
        if onward:
            turn = onward[0] if rising else onward[-1]
            rest = "".join(digits[0 if rising else -1] for digits in sets[at + 1 :])
            return int(edge[:at] + turn + rest)
    return None


_Bounds = frozenset[tuple[bool, bool]]  # whether the figures so far equal those of the lower, and the upper, bound
_INSIDE = (False, False)


def cubes(sets: Sets, branching: Collection[int], limited: Collection[int], low: int, high: int) -> tuple[Cube, ...]:
    """Which alternatives of the branching figures leave a number from low to high.

    Each cube is figures (position, digit) that have to be so, the branching figures it does not name being free; no
    two overlap. ``limited`` are positions one of whose alternatives is no digit, so that none of them is ever free.
    """
    size = len(sets)
    if low > high or low >= 10**size or high < 0 or not all(sets):
        return ()
    ends = (str(max(low, 0)).zfill(size), str(min(high, 10**size - 1)).zfill(size))
    last_limited = max(limited, default=-1)
    known: dict[tuple[int, _Bounds], tuple[Cube, ...]] = {}

    def onward(at: int, bounds: _Bounds) -> tuple[Cube, ...]:
        if not bounds:
            return ()
        if at == size or (_INSIDE in bounds and at > last_limited):
            return ((),)
        key = (at, bounds)
        if key not in known:
            known[key] = branch(at, bounds) if at in branching else onward(at + 1, _step(sets[at], at, bounds, ends))
        return known[key]

    def branch(at: int, bounds: _Bounds) -> tuple[Cube, ...]:
        ways = {digit: onward(at + 1, _step(digit, at, bounds, ends)) for digit in sets[at]}
        if at not in limited and len(set(ways.values())) == 1:
            return next(iter(ways.values()))
        return tuple(((at, digit), *cube) for digit, found in ways.items() for cube in found)

    return onward(0, frozenset({(True, True)}))


def _step(digits: str, at: int, bounds: _Bounds, ends: tuple[str, str]) -> _Bounds:
    """How the number can stand to its bounds after any of these digits; empty when it has left them."""
    low, high = ends[0][at], ends[1][at]
    return frozenset(
        (on_low and digit == low, on_high and digit == high)
        for on_low, on_high in bounds
        for digit in digits
        if not (on_low and digit < low) and not (on_high and digit > high)
    )
