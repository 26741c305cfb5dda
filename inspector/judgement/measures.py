"""What a measured value says of a form or a year: the conformance probability of JCGM 106, and three words."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import erf, inf, sqrt
from typing import TYPE_CHECKING

from inspector.judgement.lengths import (
    Instrument,
    NotALength,
    Typed,
    decimals_of,
    in_unit,
    instrument_of,
    shown_as,
    typed_length,
)
from inspector.profile.expected import expected
from inspector.profile.words import Unit
from inspector.record.words import Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.profile.items import Item, Measure, Nominal
    from inspector.record.finding import Measured

PASS_FROM, FAIL_TO = 0.95, 0.05
NEARLY, BARELY = 0.99, 0.01
COUNTED = frozenset({Unit.TOOTH})
SCREEN = say("A screen only: it shows where to look again, and is no verdict on straightness.")


def conformance(value: float, uncertainty: float, low: float = -inf, high: float = inf) -> float:
    """The probability, 0 to 1, that the true value lies from low to high, the result being normal about ``value``.

    Source of the formula: JCGM 106:2012, 7.3 and 7.4. Without uncertainty it is 1 inside, limits included, else 0.
    """
    if uncertainty <= 0:
        return 1.0 if low <= value <= high else 0.0
    return _below((high - value) / uncertainty) - _below((low - value) / uncertainty)


def _below(z: float) -> float:
    return 0.5 * (1 + erf(z / sqrt(2)))


def verdict(probability: float) -> Mark:
    """At least 0.95 pass, at most 0.05 fail, between them doubt."""
    if probability >= PASS_FROM:
        return Mark.PASS
    return Mark.FAIL if probability <= FAIL_TO else Mark.DOUBT


@dataclass(frozen=True, slots=True)
class Fit:
    """One published value with its tolerance, in the measure's unit, and how the reading stands to it."""

    nominal: Nominal
    low: float
    high: float
    probability: float
    mark: Mark

    @property
    def candidate(self) -> bool:
        """True when the reading does not rule it out."""
        return self.mark is not Mark.FAIL


@dataclass(frozen=True, slots=True)
class MeasureResult:
    """What up to three readings of one measure give, in the measure's unit.

    ``value`` is their mean, ``uncertainty`` its standard uncertainty, ``spread`` highest less lowest; ``shown`` and
    ``spread_shown`` have no more figures than the instrument. ``fit`` is the part of the sentence that says what it
    fits. ``mark`` is None where the measure is a screen or has no published value.
    """

    measure: Measure
    value: Fraction
    uncertainty: float
    spread: Fraction
    shown: str
    spread_shown: str
    fits: tuple[Fit, ...]
    mark: Mark | None
    fit: Say
    sentence: Say
    reasons: tuple[Say, ...]


@dataclass(frozen=True, slots=True)
class _Read:
    """Readings in the measure's unit, and how finely they were read."""

    values: tuple[Fraction, ...]
    step: Fraction
    fraction: bool
    coarse: bool
    error: Fraction

    @property
    def spread(self) -> Fraction:
        return max(self.values) - min(self.values)

    def shown(self, value: Fraction) -> str:
        return shown_as(value, self.step, fraction=self.fraction)

    def spread_shown(self) -> str:
        """No less than it is: a spread below the last figure shown is not none."""
        last = self.step if self.fraction else Fraction(1, 10 ** decimals_of(self.step))
        return self.shown(-(-self.spread // last) * last)


def measured_result(
    item: Item, measured: Measured, year: int | None = None, *, variant: str = ""
) -> MeasureResult | None:
    """What the readings of one measure say, against the values of the claimed year or of the fitted form.

    None where the profile has no such measure or nothing was read. Raises NotALength where a reading is no length.
    """
    measure = next((m for m in item.measures if m.id == measured.measure), None)
    texts = [text for text in measured.readings if text.strip()]
    if measure is None or not texts:
        return None
    read = _read(texts, measured, measure.unit)
    value = sum(read.values, Fraction(0)) / len(read.values)
    counted = measure.unit in COUNTED
    uncertainty = standard_uncertainty(list(read.values), read.step, counted=counted, error=read.error)
    fits = tuple(_fit(n, value, uncertainty) for n in measure.nominals if _bears(n, year, variant))
    shown, fit = read.shown(value), _fitting(item, measure, fits)
    open_forms = unpublished(item, measure, year)
    mark = _mark(item, measure, fits, year)
    if mark is Mark.FAIL and open_forms:
        mark = Mark.DOUBT
    reasons = (*_reasons(read, uncertainty, item, measure, fits), *_left_open(open_forms))
    return MeasureResult(
        measure, value, uncertainty, read.spread, shown, read.spread_shown(), fits, mark, fit,
        _sentence(measure, bool(fits), shown, fit), reasons,
    )  # fmt: skip


def unpublished(item: Item, measure: Measure, year: int | None) -> tuple[str, ...]:
    """The names of the forms that the year allows and for which no value of this measure is published."""
    if any(n.variant is None and (year is None or n.years.holds(year)) for n in measure.nominals):
        return ()
    known = {n.variant for n in measure.nominals}
    return tuple(v.name for v in expected(item, year) if v.id not in known) if measure.nominals else ()


def _left_open(names: tuple[str, ...]) -> tuple[Say, ...]:
    if not names:
        return ()
    return (say("No value is published for {names}: it is not ruled out.", names="; ".join(names)),)


def _read(texts: list[str], measured: Measured, unit: Unit) -> _Read:
    """Each reading in the measure's unit, and the coarsest step among instrument and figures."""
    said = next((u for u in Unit if u.value == measured.unit), unit)
    typed = [typed_length(text, said) for text in texts]
    instrument = instrument_of(measured.instrument, said)
    own = _told(instrument.step, instrument, unit) if instrument else Fraction(0)
    error = _told(instrument.error or Fraction(0), instrument, unit) if instrument else Fraction(0)
    figures = max(
        (in_unit(t.step, t.unit, unit) for t in typed if not own or not _shortened(t, instrument)), default=own
    )
    fraction = unit is Unit.INCH and any(t.fraction for t in typed) and all(t.fraction or t.step == 1 for t in typed)
    values = tuple(in_unit(t.value, t.unit, unit) for t in typed)
    return _Read(values, max(figures, own), fraction, bool(own) and figures > own, error)


def _shortened(typed: Typed, instrument: Instrument | None) -> bool:
    """Whether the figures say nothing of how finely it was read: 1 5/8 may have been read to 1/64.

    So it is with an instrument that is graduated in fractions; one of decimals shows no 1/32.
    """
    by_fractions = instrument is not None and instrument.step.denominator % 5 != 0 and instrument.step < 1
    return by_fractions and (typed.fraction or typed.step == 1)


def _told(value: Fraction, of: Instrument, unit: Unit) -> Fraction:
    """The instrument's step or error in the measure's unit; nothing where it measures something else."""
    try:
        return in_unit(value, of.unit, unit)
    except NotALength:
        return Fraction(0)


def standard_uncertainty(
    values: list[Fraction], step: Fraction, *, counted: bool = False, error: Fraction = Fraction(0)
) -> float:
    """The standard uncertainty of the mean, in the unit of the values; a count has none.

    A reading to the nearest ``step`` is rectangular, step / sqrt 12 (JCGM 100:2008, F.2.2.1); two or three readings
    add half their range over sqrt 3, since so few give no standard deviation worth the name; an instrument that may
    be wrong by ``error`` adds error / sqrt 3 (JCGM 100:2008, 4.3.7).
    """
    if counted:
        return 0.0
    rounding = float(step) / sqrt(12)
    scatter = float(max(values) - min(values)) / 2 / sqrt(3)
    return sqrt(rounding**2 + scatter**2 + float(error) ** 2 / 3)


def _bears(nominal: Nominal, year: int | None, variant: str) -> bool:
    if variant:
        return nominal.variant in (None, variant) and (year is None or nominal.years.holds(year))
    return True


def _fit(nominal: Nominal, value: Fraction, uncertainty: float) -> Fit:
    low, high = nominal.value - nominal.minus, nominal.value + nominal.plus
    probability = conformance(float(value), uncertainty, low, high)
    return Fit(nominal, low, high, probability, verdict(probability))


def _mark(item: Item, measure: Measure, fits: tuple[Fit, ...], year: int | None) -> Mark | None:
    """The mark against the values that a machine of the claimed year may have; None where none is published."""
    right = [f for f in fits if year is None or _of_year(item, f.nominal, year)]
    if measure.screen_only or not right:
        return None
    return max(right, key=lambda f: f.probability).mark


def _of_year(item: Item, nominal: Nominal, year: int) -> bool:
    form = next((v for v in item.variants if v.id == nominal.variant), None)
    return nominal.years.holds(year) and (form is None or (form.years is not None and form.years.holds(year)))


def _sentence(measure: Measure, published: bool, shown: str, fit: Say) -> Say:
    unit = say(measure.unit.value)
    if not published:
        return say("{name}: {shown} {unit}; {fit}.", name=measure.name, shown=shown, unit=unit, fit=fit)
    return say("{name}: {shown} {unit} {fit}.", name=measure.name, shown=shown, unit=unit, fit=fit)


def _fitting(item: Item, measure: Measure, fits: tuple[Fit, ...]) -> Say:
    if not fits:
        return say("the profile gives no value")
    left = [f for f in fits if f.candidate]
    if measure.screen_only:
        return _screened(left)
    if not left:
        return say("fits none in the profile")
    several = list({str(name): name for name in (_named(item, f.nominal) for f in left)}.values())
    if len(several) == 1:
        return say("fits {which}", which=several[0])
    return say(
        "cannot separate {first} and {last} at this accuracy", first=_listed(several[:-1]), last=several[-1],
    )  # fmt: skip


def _screened(left: list[Fit]) -> Say:
    """How a screen stands to its limits, which is no verdict."""
    if not left:
        return say("lies outside the limits of the profile")
    if any(f.mark is Mark.PASS for f in left):
        return say("lies within the limits of the profile")
    return say("lies at the edge of the limits of the profile")


def _named(item: Item, nominal: Nominal) -> Say:
    """The form, or the years, that the value belongs to."""
    form = next((v for v in item.variants if v.id == nominal.variant), None)
    if form is not None:
        return say("“{form}”", form=form.name)
    first, last = nominal.years.first, nominal.years.last
    if first is None and last is None:
        return say("the published value")
    if first == last:
        return say("{year}", year=first)
    return say("{first} to {last}", first=first or say("the first"), last=last or say("the last"))


def _count(read: _Read, unit: Say) -> Say:
    """How many readings, and how far several lie apart: one alone says nothing of that."""
    if len(read.values) == 1:
        return say("One reading")
    return say("{n} readings, spread {spread} {unit}", n=len(read.values), spread=read.spread_shown(), unit=unit)


def _probability(p: float) -> Say:
    """In two figures; neither end is claimed to be reached."""
    if p > NEARLY:
        return say("more than {p}", p=NEARLY)
    return say("less than {p}", p=BARELY) if p < BARELY else say("{p}", p=f"{p:.2f}")


def _listed(names: list[Say]) -> Say:
    slots = {f"n{at}": name for at, name in enumerate(names)}
    return Say(", ".join(f"{{{slot}}}" for slot in slots), slots)


def _reasons(
    read: _Read, uncertainty: float, item: Item, measure: Measure, fits: tuple[Fit, ...]
) -> tuple[Say, ...]:  # fmt: skip
    unit = say(measure.unit.value)
    reasons = [
        say("{count}; read to {step:.2g} {unit}: standard uncertainty {u:.2g} {unit}.",
            count=_count(read, unit), step=float(read.step), u=uncertainty, unit=unit)
    ]  # fmt: skip
    if read.coarse:
        reasons.append(say("The instrument reads finer than what was typed: type all its figures."))
    reasons += [
        say(
            "Against {which}, {low:g} to {high:g} {unit}: it conforms with a probability of {p}.",
            which=_named(item, f.nominal), low=f.low, high=f.high, unit=unit, p=_probability(f.probability),
        )
        for f in fits
        if not measure.screen_only
    ]  # fmt: skip
    return (*reasons, SCREEN) if measure.screen_only else tuple(reasons)
