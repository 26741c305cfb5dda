"""Two patches of one picture compared: an indication of a difference in colour, never a name of a paint."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING

from inspector.photo.colour import difference, lab_of
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    Pixels = Sequence[tuple[int, int, int]]

DARK, BRIGHT = 6, 249  # of 255: beyond them a camera tells no colour; common practice, no source
UNEVEN = 12.0  # of 255, deviation of a channel beyond which a patch is not one colour; common practice, no source
SOURCE = say("Sharma, Wu and Dalal, The CIEDE2000 colour-difference formula, Color Res. Appl. 30 (2005) 21–30")
WARNING = say(
    "An indication only. A phone sets white and brightness by itself; light, gloss, age, dirt and polish change what "
    "it sees. Compare within this one picture, both patches in the same light, and look again in daylight."
)


@dataclass(frozen=True, slots=True)
class Patch:
    """The mean of a patch in sRGB, 0 to 255 each, and how well it can be taken for one colour."""

    red: float
    green: float
    blue: float
    uneven: bool
    beyond: bool


@dataclass(frozen=True, slots=True)
class Compared:
    """How far two patches are apart in CIEDE2000, in a sentence, and what makes it doubtful; no verdict."""

    difference: float
    sentence: Say
    warnings: tuple[Say, ...]


def patch_of(pixels: Pixels) -> Patch:
    """The patch that these pixels (red, green, blue, 0 to 255) are; raises ValueError where there is none."""
    if not pixels:
        raise ValueError("a patch has at least one pixel")
    means, uneven, beyond = [], False, False
    for channel in zip(*pixels, strict=True):
        mean = sum(channel) / len(channel)
        means.append(mean)
        uneven = uneven or sqrt(sum((value - mean) ** 2 for value in channel) / len(channel)) > UNEVEN
        beyond = beyond or mean >= BRIGHT
    red, green, blue = means
    return Patch(red, green, blue, uneven=uneven, beyond=beyond or max(means) <= DARK)


def compared(part: Patch, reference: Patch) -> Compared:
    """How far the part is from the reference, with what makes it doubtful."""
    labs = [lab_of(patch.red, patch.green, patch.blue) for patch in (part, reference)]
    apart = difference(*labs)
    warnings = []
    if part.uneven or reference.uneven:
        warnings.append(say("A patch is not one colour: put the spot where paint or card is even."))
    if part.beyond or reference.beyond:
        warnings.append(say("A patch is too bright or too dark in the picture to tell its colour."))
    return Compared(apart, _said(apart, labs[1].lightness - labs[0].lightness), (*warnings, WARNING))


def _said(apart: float, lighter: float) -> Say:
    how = say("the reference is lighter") if lighter > 1 else say("the reference is darker") if lighter < -1 else None
    words = say(
        "The two patches are {apart} apart (CIEDE2000; about 1 is just seen side by side).", apart=f"{apart:.1f}"
    )
    return say("{words} In this picture {how}.", words=words, how=how) if how else words
