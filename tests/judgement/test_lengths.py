from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.judgement.lengths import (
    INSTRUMENTS,
    MM_PER_INCH,
    NotALength,
    decimals_of,
    in_unit,
    instrument_of,
    instruments_for,
    own_instrument,
    shown_as,
    typed_length,
)
from inspector.profile.words import Unit


@pytest.mark.parametrize(
    ("typed", "unit", "value", "stated", "step"),
    [
        ("31.5", Unit.MM, Fraction(63, 2), Unit.MM, Fraction(1, 10)),
        ("31,5", Unit.MM, Fraction(63, 2), Unit.MM, Fraction(1, 10)),
        ("7 1/32", Unit.INCH, Fraction(225, 32), Unit.INCH, Fraction(1, 32)),
        ("7-1/32 in", Unit.MM, Fraction(225, 32), Unit.INCH, Fraction(1, 32)),
        ('3/16"', Unit.MM, Fraction(3, 16), Unit.INCH, Fraction(1, 16)),
        ("19", Unit.MM, Fraction(19), Unit.MM, Fraction(1)),
        (" 25.40 MM ", Unit.INCH, Fraction(254, 10), Unit.MM, Fraction(1, 100)),
        (".25", Unit.INCH, Fraction(1, 4), Unit.INCH, Fraction(1, 100)),
    ],
)
def test_a_length_is_taken_exactly_as_typed(typed, unit, value, stated, step):
    length = typed_length(typed, unit)
    assert (length.value, length.unit, length.step) == (value, stated, step)


@pytest.mark.parametrize(
    "typed", ["", "about 7", "7 1/0", "-3", "1e9", "nan", "inf", "7 1 / 32", "1/2/3", "999999", "٣"]
)
def test_what_is_no_length_gets_one_sentence(typed):
    with pytest.raises(NotALength) as refused:
        typed_length(typed, Unit.MM)
    assert str(refused.value.said).endswith(".")


def test_an_inch_is_25_4_millimetres_to_the_last_figure():
    assert in_unit(Fraction(1), Unit.INCH, Unit.MM) == Fraction("25.4") == MM_PER_INCH
    assert in_unit(typed_length("7 1/32", Unit.INCH).value, Unit.INCH, Unit.MM) == Fraction("178.59375")


def test_teeth_are_no_length():
    with pytest.raises(NotALength):
        in_unit(Fraction(18), Unit.TOOTH, Unit.MM)


@given(st.fractions(min_value=0, max_value=1000))
def test_there_and_back_changes_nothing(value):
    assert in_unit(in_unit(value, Unit.MM, Unit.INCH), Unit.INCH, Unit.MM) == value


@pytest.mark.parametrize(
    ("step", "places"), [("1", 0), ("1/2", 1), ("1/20", 2), ("1/10", 1), ("1/64", 2), ("127/320", 1)]
)
def test_no_more_figures_than_the_step_has(step, places):
    assert decimals_of(Fraction(step)) == places


@pytest.mark.parametrize(
    ("value", "step", "shown"),
    [("225/32", "1/32", "7 1/32"), ("169/24", "1/32", "7 1/32"), ("7", "1/64", "7"), ("3/16", "1/64", "3/16"),
     ("0", "1/64", "0")],
)  # fmt: skip
def test_a_fraction_is_shown_in_steps_of_the_rule(value, step, shown):
    assert shown_as(Fraction(value), Fraction(step), fraction=True) == shown


@pytest.mark.parametrize(
    ("value", "shown"), [("6.05", "6.0"), ("6.15", "6.2"), ("6.35", "6.4"), ("-0.25", "-0.2")]
)
def test_half_a_figure_goes_to_the_even_one(value, shown):
    """ISO 80000-1:2009, annex B, rule A, from memory; as floating-point numbers some of these lie below the half."""
    assert shown_as(Fraction(value), Fraction(1, 10)) == shown


def test_a_mean_shows_no_more_figures_than_the_calliper():
    assert shown_as(Fraction("31.75") + Fraction(1, 60), Fraction(1, 20)) == "31.77"
    assert shown_as(Fraction("31.75"), INSTRUMENTS["rule-inch"].step * MM_PER_INCH) == "31.8"


@pytest.mark.parametrize(("typed", "error", "unit"), [("0.02", "1/50", Unit.MM), ("1/64 in", "1/64", Unit.INCH)])
def test_an_instrument_of_ones_own_is_found_again_by_its_name(typed, error, unit):
    own = instrument_of(own_instrument(typed, Unit.MM), Unit.MM)
    assert (own.error, own.unit) == (Fraction(error), unit)


def test_an_own_instrument_says_its_unit_so_that_another_unit_of_the_measure_changes_nothing():
    own = own_instrument("0.3", Unit.MM)
    assert instrument_of(own, Unit.INCH).unit is Unit.MM
    assert str(instrument_of(own, Unit.INCH).name) == str(instrument_of(own, Unit.MM).name) == "own, within 0.3 mm"
    assert instrument_of(own_instrument("0.5", Unit.TPI), Unit.TPI).error == Fraction(1, 2)


def test_words_are_no_known_instrument():
    assert instrument_of("vernier calliper", Unit.MM) is None
    assert instrument_of("own ± a hair", Unit.MM) is None


@pytest.mark.parametrize("typed", ["0", "", "little"])
def test_an_instrument_is_wrong_by_something(typed):
    with pytest.raises(NotALength):
        own_instrument(typed, Unit.MM)


def test_teeth_are_not_measured_with_a_calliper():
    assert [i.id for i in instruments_for(Unit.TOOTH)] == ["count"]
    assert {i.unit for i in instruments_for(Unit.INCH)} == {Unit.MM, Unit.INCH}
    assert instruments_for(Unit.VOLT) == ()
