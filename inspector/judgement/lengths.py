"""Lengths and counts as typed at the machine, exact: ``7 1/32``, ``31.5``, ``31,5``; 1 inch is 25.4 mm exactly."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from inspector.profile.words import Unit
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Mapping

MM_PER_INCH = Fraction(254, 10)  # international inch, exact since 1959 (ISO 31-1; also NIST SP 811, B.6)
LONGEST = 100_000  # in any unit; more is a slip of the finger

_SIGN = {Unit.MM: ("mm",), Unit.INCH: ('"', "in", "inch", "inches", "”", "″")}
_WHOLE_AND_PART = re.compile(r"(?:([0-9]+)[ -]+)?([0-9]+)/([0-9]+)")
_DECIMAL = re.compile(r"[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+")


class NotALength(ValueError):
    """What was typed is no length; ``said`` tells what to type."""

    def __init__(self, said: Say) -> None:
        super().__init__(str(said))
        self.said = said


@dataclass(frozen=True, slots=True)
class Typed:
    """A value as typed: exact, in the unit it was typed in, and the smallest step that its figures show."""

    value: Fraction
    unit: Unit
    step: Fraction
    fraction: bool = False


def typed_length(text: str, unit: Unit) -> Typed:
    """The value typed, in ``unit`` unless a sign behind it names millimetres or inches.

    Raises NotALength with one sentence where it is no number, is negative or is beyond anything on a machine.
    """
    words, stated = _without_sign(text.strip().casefold(), unit)
    parts = _WHOLE_AND_PART.fullmatch(words)
    if parts:
        return _checked(_from_fraction(parts), stated, text)
    if not _DECIMAL.fullmatch(words):
        raise NotALength(
            say("“{text}” is not a measure. Type it as 31.5 or 7 1/32, with mm or in behind it.", text=text)
        )
    decimals = len(words.replace(",", ".").partition(".")[2])
    value = Fraction(words.replace(",", "."))
    return _checked((value, Fraction(1, 10**decimals), False), stated, text)


def _without_sign(text: str, unit: Unit) -> tuple[str, Unit]:
    for stated, signs in _SIGN.items():
        for sign in sorted(signs, key=len, reverse=True):
            if text.endswith(sign):
                return text[: -len(sign)].strip(), stated
    return text, unit


def _from_fraction(parts: re.Match[str]) -> tuple[Fraction, Fraction, bool]:
    whole, above, below = (int(p or 0) for p in parts.groups())
    if below == 0:
        raise NotALength(say("A fraction of an inch has a figure other than 0 below the stroke, such as 1/32."))
    return Fraction(whole) + Fraction(above, below), Fraction(1, below), True


def _checked(found: tuple[Fraction, Fraction, bool], unit: Unit, text: str) -> Typed:
    value, step, fraction = found
    if value > LONGEST:
        raise NotALength(say("“{text}” is longer than any machine; check the figures and the unit.", text=text))
    return Typed(value, unit, step, fraction)


def in_unit(value: Fraction, of: Unit, unit: Unit) -> Fraction:
    """The value of unit ``of`` told in ``unit``, exactly. Only lengths change; raises NotALength where they cannot."""
    if of is unit:
        return value
    if {of, unit} == {Unit.MM, Unit.INCH}:
        return value * MM_PER_INCH if unit is Unit.MM else value / MM_PER_INCH
    raise NotALength(say("{of} cannot be told in {unit}.", of=say(of.value), unit=say(unit.value)))


def decimals_of(step: Fraction) -> int:
    """How many figures behind the point a value read in such steps may show: the last is no finer than the step."""
    places = 0
    while step and Fraction(1, 10**places) > step and places < 4:
        places += 1
    return places


def shown_as(value: Fraction, step: Fraction, *, fraction: bool = False) -> str:
    """The value with no more figures than a reading in such steps has: ``31.75``, or ``7 1/32`` as a fraction.

    What lies just between two is rounded to the even figure (ISO 80000-1, annex B, rule A, from memory).
    """
    if not fraction or step.numerator != 1:
        places = decimals_of(step)
        return f"{Decimal(round(value * 10**places)).scaleb(-places):.{places}f}"
    whole, part = divmod(round(value / step) * step, 1)
    return " ".join(str(one) for one in (whole, part) if one) or "0"


@dataclass(frozen=True, slots=True)
class Instrument:
    """What was measured with: its smallest step, and the most it may be wrong by itself where that is known."""

    id: str
    name: Say
    step: Fraction
    unit: Unit
    error: Fraction | None = None


def _instrument(name: str, label: Say, step: str, unit: Unit) -> Instrument:
    return Instrument(name, label, Fraction(step), unit)


# Smallest steps as they are engraved; common practice, no source. How far an instrument itself may be wrong is
# known only of one's own, so it is the user's figure.
INSTRUMENTS: Mapping[str, Instrument] = {
    one.id: one
    for one in (
        _instrument("tape", say("tape, 1 mm"), "1", Unit.MM),
        _instrument("rule", say("steel rule, half millimetres"), "1/2", Unit.MM),
        _instrument("rule-inch", say("steel rule, 1/64 in"), "1/64", Unit.INCH),
        _instrument("rule-32", say("steel rule, 1/32 in"), "1/32", Unit.INCH),
        _instrument("calliper", say("calliper, 0.05 mm"), "1/20", Unit.MM),
        _instrument("calliper-digital", say("calliper, 0.01 mm"), "1/100", Unit.MM),
        _instrument("micrometer", say("micrometer, 0.01 mm"), "1/100", Unit.MM),
        _instrument("micrometer-inch", say("micrometer, 0.001 in"), "1/1000", Unit.INCH),
        _instrument("pitch-gauge", say("thread gauge, whole threads"), "1", Unit.TPI),
        _instrument("count", say("counted"), "1", Unit.TOOTH),
    )
}
OWN = "own ±"
PHOTOGRAPH = "photograph ±"


def own_instrument(error: str, unit: Unit) -> str:
    """The name under which a record keeps an instrument of one's own that may be wrong by so much, in ``unit``.

    Raises NotALength where ``error`` is no length or nothing.
    """
    typed = typed_length(error, unit)
    if not typed.value:
        raise NotALength(say("No instrument is never wrong. Type the most it may be wrong by, such as 0.02."))
    return f"{OWN} {error.strip()}" + ("" if typed.unit is not unit else f" {unit.value}")


def photograph_instrument(error: str, unit: Unit) -> str:
    """The name under which a record keeps that a length was measured in a photograph, to within ``error``."""
    return PHOTOGRAPH + own_instrument(error, unit).removeprefix(OWN)


def instrument_of(name: str, unit: Unit) -> Instrument | None:
    """The instrument that a record names: one of ``INSTRUMENTS``, one's own, or a photograph; None for other words."""
    prefix = next((p for p in (OWN, PHOTOGRAPH) if name.startswith(p)), "")
    if not prefix:
        return INSTRUMENTS.get(name)
    words = name.removeprefix(prefix).strip().removesuffix(unit.value)
    try:
        typed = typed_length(words, unit)
    except NotALength:
        return None
    error, told = _without_sign(words.strip().casefold(), unit)[0], say(typed.unit.value)
    label = (
        say("own, within {error} {unit}", error=error, unit=told)
        if prefix == OWN
        else say("photograph, within {error} {unit}", error=error, unit=told)
    )
    return Instrument(name, label, typed.step, typed.unit, typed.value)


def instruments_for(unit: Unit) -> tuple[Instrument, ...]:
    """The instruments that such a measure is taken with."""
    lengths = (Unit.MM, Unit.INCH)
    return tuple(i for i in INSTRUMENTS.values() if i.unit is unit or (unit in lengths and i.unit in lengths))
