"""What a measured value says of a form or a year: the conformance probability of JCGM 106, and three words."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import erf, inf, sqrt
from typing import TYPE_CHECKING

from inspector.judgement.lengths import INSTRUMENTS, Instrument, NotALength, decimals_of, in_unit, typed_length
from inspector.profile.words import Unit
from inspector.record.words import Mark
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.profile.items import Item, Measure, Nominal
    from inspector.record.finding import Measured

PASS_FROM, FAIL_TO = 0.95, 0.05
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

    ``value`` is their mean, ``uncertainty`` its standard uncertainty, ``spread`` highest less lowest; ``shown`` has no
    more figures than the instrument. ``mark`` is None where the measure is a screen or has no published value.
    """

    measure: Measure
    value: Fraction
    uncertainty: float
    spread: Fraction
    shown: str
    fits: tuple[Fit, ...]
    mark: Mark | None
    sentence: Say
    reasons: tuple[Say, ...]


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
    instrument = INSTRUMENTS.get(measured.instrument)
    values, step = _values(texts, measured.unit, measure.unit, instrument)
    value = sum(values, Fraction(0)) / len(values)
    uncertainty = standard_uncertainty(values, step, counted=measure.unit in COUNTED)
    fits = tuple(_fit(n, value, uncertainty) for n in measure.nominals if _bears(n, year, variant))
    shown = f"{float(value):.{decimals_of(step)}f}"
    mark = _mark(item, measure, fits, year)
    return MeasureResult(
        measure, value, uncertainty, max(values) - min(values), shown, fits, mark,
        _sentence(item, measure, fits, shown), _reasons(values, uncertainty, step, measure, fits),
    )  # fmt: skip


def _values(
    texts: list[str], typed_unit: str, unit: Unit, instrument: Instrument | None
) -> tuple[list[Fraction], Fraction]:
    """Each reading in the measure's unit, and the coarsest step among instrument and figures."""
    said = next((u for u in Unit if u.value == typed_unit), unit)
    typed = [typed_length(text, said) for text in texts]
    steps = [in_unit(t.step, t.unit, unit) for t in typed]
    if instrument is not None and (instrument.unit is unit or unit in (Unit.MM, Unit.INCH)):
        steps.append(_step_of(instrument, unit))
    return [in_unit(t.value, t.unit, unit) for t in typed], max(steps)


def _step_of(instrument: Instrument, unit: Unit) -> Fraction:
    try:
        return in_unit(instrument.step, instrument.unit, unit)
    except NotALength:
        return Fraction(0)


def standard_uncertainty(values: list[Fraction], step: Fraction, *, counted: bool = False) -> float:
    """The standard uncertainty of the mean, in the unit of the values; a count has none.

    A reading to the nearest ``step`` is rectangular, step / sqrt 12 (JCGM 100:2008, F.2.2.1); two or three readings
    add half their range over sqrt 3, since so few give no standard deviation worth the name.
    """
    if counted:
        return 0.0
    rounding = float(step) / sqrt(12)
    scatter = float(max(values) - min(values)) / 2 / sqrt(3)
    return sqrt(rounding**2 + scatter**2)


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


def _sentence(item: Item, measure: Measure, fits: tuple[Fit, ...], shown: str) -> Say:
    name, unit = measure.name, say(measure.unit.value)
    if not fits:
        return say("{name}: {shown} {unit}; the profile gives no value.", name=name, shown=shown, unit=unit)
    left = [f for f in fits if f.candidate]
    if not left:
        return say("{name}: {shown} {unit} fits none in the profile.", name=name, shown=shown, unit=unit)
    several = list({str(name): name for name in (_named(item, f.nominal) for f in left)}.values())
    if len(several) == 1:
        return say("{name}: {shown} {unit} fits {which}.", name=name, shown=shown, unit=unit, which=several[0])
    return say(
        "{name}: {shown} {unit} cannot separate {first} and {last} at this accuracy.",
        name=name, shown=shown, unit=unit, first=_listed(several[:-1]), last=several[-1],
    )  # fmt: skip


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


def _listed(names: list[Say]) -> Say:
    slots = {f"n{at}": name for at, name in enumerate(names)}
    return Say(", ".join(f"{{{slot}}}" for slot in slots), slots)


def _reasons(
    values: list[Fraction], uncertainty: float, step: Fraction, measure: Measure, fits: tuple[Fit, ...]
) -> tuple[Say, ...]:
    unit = say(measure.unit.value)
    count = say("one reading") if len(values) == 1 else say("{n} readings", n=len(values))
    spread = float(max(values) - min(values))
    reasons = [
        say(
            "{count}, spread {spread:g} {unit}; read to {step:g} {unit}: standard uncertainty {u:.3g} {unit}.",
            count=count,
            spread=spread,
            unit=unit,
            step=float(step),
            u=uncertainty,
        )
    ]
    reasons += [
        say(
            "{low:g} to {high:g} {unit}: it conforms with a probability of {p:.2f}.",
            low=f.low,
            high=f.high,
            unit=unit,
            p=f.probability,
        )
        for f in fits
    ]
    return (*reasons, SCREEN) if measure.screen_only else tuple(reasons)
