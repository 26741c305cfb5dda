from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.judgement.measures import conformance, measured_result, standard_uncertainty, verdict
from inspector.profile.items import Item
from inspector.record.finding import Measured
from inspector.record.words import Mark

ITEM = Item.model_validate(
    {
        "id": "tube", "name": "Fork tube", "question": "How thick?", "how": "Calliper.", "assembly": "front end",
        "variant": [
            {"id": "thin", "name": "Thin tube", "tell": "a", "years": {"from": 1950, "to": 1952}},
            {"id": "thick", "name": "Thick tube", "tell": "b", "years": {"from": 1953, "to": 1958}},
            {"id": "late", "name": "Late tube", "tell": "c", "years": {"from": 1957, "to": 1958}},
        ],
        "measure": [
            {"id": "od", "name": "Diameter", "unit": "mm", "nominal": [
                {"variant": "thin", "value": 31.75, "minus": 0.1, "plus": 0.1},
                {"variant": "thick", "value": 34.93, "minus": 0.1, "plus": 0.1},
                {"variant": "late", "value": 35.0, "minus": 0.1, "plus": 0.1},
            ]},
            {"id": "bend", "name": "Straightness", "unit": "mm", "screen_only": True,
             "nominal": [{"value": 0, "plus": 0.2}]},
            {"id": "slots", "name": "Slots", "unit": "teeth", "nominal": [{"value": 18}]},
        ],
    }
)  # fmt: skip


def result(*readings, measure="od", instrument="calliper", year=1953, unit="mm"):
    measured = Measured(measure=measure, readings=readings, unit=unit, instrument=instrument)
    return measured_result(ITEM, measured, year)


def test_one_candidate_is_named():
    got = result("31.75")
    assert str(got.sentence) == "Diameter: 31.75 mm fits “Thin tube”."
    assert got.mark is Mark.FAIL  # it is none of the forms of 1953


def test_what_lies_between_two_forms_is_not_separated():
    got = result("34.95")
    assert str(got.sentence) == "Diameter: 34.95 mm cannot separate “Thick tube” and “Late tube” at this accuracy."


def test_what_fits_none_says_so():
    assert str(result("33.00").sentence) == "Diameter: 33.00 mm fits none in the profile."


def test_a_coarse_instrument_shows_no_more_figures_than_it_has():
    got = result("34.93", instrument="tape")
    assert got.shown == "35"
    assert got.mark is Mark.DOUBT
    assert len([f for f in got.fits if f.candidate]) == 2


def test_an_inch_reading_of_a_millimetre_measure_is_exact():
    assert result("1 3/8", instrument="", unit="in").value == Fraction("34.925")


def test_up_to_three_readings_show_their_spread():
    got = result("34.90", "34.95", "35.00")
    assert got.spread == Fraction(1, 10)
    assert "spread 0.1" in str(got.reasons[0])


def test_a_screen_gives_no_verdict():
    got = result("0.5", measure="bend")
    assert got.mark is None
    assert "no verdict" in str(got.reasons[-1])


def test_a_count_has_no_uncertainty():
    assert result("18", measure="slots", instrument="count", unit="teeth").mark is Mark.PASS
    assert result("19", measure="slots", instrument="count", unit="teeth").mark is Mark.FAIL


def test_a_measure_the_profile_does_not_have_says_nothing():
    assert result("5", measure="unknown") is None
    assert result("  ") is None


def test_a_fraction_read_to_a_sixty_fourth_is_shown_as_one():
    got = measured_result(inches(), Measured(measure="od", readings=("1 5/8",), unit="in", instrument="rule-inch"))
    assert (got.shown, got.mark) == ("1 5/8", Mark.PASS)
    assert got.uncertainty == pytest.approx(1 / 64 / 12**0.5)


def test_a_fraction_is_no_reading_of_a_decimal_calliper():
    """A calliper of 0.05 mm shows no 1/32 in: whoever writes that has rounded to it."""
    got = measured_result(inches(), Measured(measure="od", readings=("1 21/32",), unit="in", instrument="calliper"))
    assert got.uncertainty == pytest.approx(1 / 32 / 12**0.5)
    assert "type all its figures" in str(got.reasons[1])


def test_a_mean_of_fractions_is_one_of_the_rule():
    read = Measured(measure="od", readings=("1 5/8", "1 21/32", "1 5/8"), unit="in", instrument="rule-32")
    got = measured_result(inches(), read)
    assert (got.shown, got.spread_shown) == ("1 5/8", "1/32")


def inches():
    pipe = {"id": "od", "name": "Diameter", "unit": "in", "nominal": [{"value": 1.625, "minus": 0.05, "plus": 0.05}]}
    about = ITEM.model_dump(include={"id", "name", "question", "how", "assembly"})
    return Item.model_validate({**about, "measure": [pipe]})


def test_figures_left_out_make_it_coarser_and_it_says_so():
    assert "type all its figures" in " ".join(map(str, result("31").reasons))
    assert "type all its figures" not in " ".join(map(str, result("31.05").reasons))


def test_an_inch_rule_gives_a_millimetre_measure_no_more_figures_than_it_has():
    assert result("1 1/4", instrument="rule-inch", unit="in").shown == "31.8"


def test_what_an_instrument_of_ones_own_may_be_wrong_by_counts():
    plain, own = result("34.93", instrument=""), result("34.93", instrument="own ± 0.2")
    assert own.uncertainty == pytest.approx((plain.uncertainty**2 * 100 + 0.2**2 / 3) ** 0.5, rel=1e-6)
    assert own.shown == "34.9"  # its error is known to a tenth
    assert own.mark is Mark.DOUBT


def test_a_spread_below_the_last_figure_is_not_none():
    assert result("34", "34.4", instrument="tape").spread_shown == "1"
    assert result("34", "34", instrument="tape").spread_shown == "0"


lengths = st.floats(-100, 100)


@given(lengths, st.floats(1e-3, 50), lengths, lengths)
def test_a_probability_lies_from_0_to_1_and_grows_with_the_tolerance(value, u, a, b):
    low, high = min(a, b), max(a, b)
    p = conformance(value, u, low, high)
    assert 0 <= p <= 1
    assert conformance(value, u, low - 1, high + 1) >= p


@given(lengths, st.floats(1e-3, 50), lengths)
def test_below_and_above_one_limit_are_one_together(value, u, limit):
    assert conformance(value, u, high=limit) + conformance(value, u, low=limit) == pytest.approx(1)


@given(st.lists(st.fractions(0, 100), min_size=1, max_size=3), st.fractions(Fraction(1, 100), 2))
def test_more_scatter_never_makes_it_surer(values, step):
    assert standard_uncertainty(values, step) >= standard_uncertainty(values[:1], step) - 1e-12


@pytest.mark.parametrize(
    ("p", "mark"), [(0.95, Mark.PASS), (0.9499, Mark.DOUBT), (0.0501, Mark.DOUBT), (0.05, Mark.FAIL)]
)
def test_the_three_words_begin_where_they_are_said_to(p, mark):
    assert verdict(p) is mark
