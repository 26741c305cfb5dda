"""What is typed is read by the ways people write figures, and written back as this computer's place does."""

from decimal import Decimal

import pytest
from PySide6.QtCore import QLocale

from inspector.record.refusing import EditRefused
from inspector.window.money.written import amounts_of, currency_name, figure, when

D = Decimal


@pytest.mark.parametrize(
    ("text", "thousands", "value"),
    [
        ("", True, None),
        ("7400", True, "7400"),
        ("7,400", True, "7400"),
        ("7.400", True, "7400"),
        ("7 400,50", True, "7400.50"),
        ("7\u202f400", True, "7400"),
        ("1.250", False, "1.250"),
        ("12,5", False, "12.5"),
        ("-5", True, "-5"),
        ("−900", True, "-900"),
    ],
)
def test_a_figure_is_read_as_people_write_it(text, thousands, value):
    assert figure(text, thousands=thousands) == (None if value is None else D(value))


@pytest.mark.parametrize("text", ["seven", "7..4", "1e5", "nan", "inf", "7400 pounds", "9" * 40])
def test_what_is_no_figure_is_refused_in_a_sentence(text):
    with pytest.raises(EditRefused) as refused:
        figure(text)
    assert "is not a number" in str(refused.value.sentence)


@pytest.mark.parametrize("text", ["7,4000", "7.4000", "74,00000", "0.0050"])
def test_an_amount_with_a_sign_in_the_wrong_place_is_not_taken_for_a_small_one(text):
    with pytest.raises(EditRefused) as refused:
        figure(text)
    assert "more than two decimals" in str(refused.value.sentence)


# How these places write amounts: Unicode CLDR, as Qt carries it.
@pytest.mark.parametrize(
    ("place", "written"),
    [("en_GB", "7,400.50"), ("de_DE", "7.400,50"), ("fr_FR", "7\u00a0400,50"), ("nb_NO", "7\u00a0400,50")],
)
def test_amounts_are_written_as_the_place_writes_them(place, written):
    assert amounts_of(QLocale(place)).told(D("7400.5")) == written


def test_what_is_written_is_read_back_the_same():
    for place in ("en_GB", "de_DE", "fr_FR", "de_CH", "en_IN"):
        for value in (D(7400), D("7400.5"), D("1234567.25")):
            assert figure(amounts_of(QLocale(place)).told(value)) == value


def test_currencies_and_days_are_told_in_words():
    assert currency_name("EUR").startswith("Euro")
    assert currency_name("XYZ") == "XYZ"
    assert when("2025-03") == "March 2025"
    assert when("2025-05-17") == "17 May 2025"
    assert when("1953") == "1953"
    assert when("some day") == "some day"
