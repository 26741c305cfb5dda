"""Amounts are written as the place writes them, and never through a float."""

from decimal import Decimal

import pytest

from inspector.amounts import Amounts
from inspector.texts import say

D = Decimal
GERMAN = Amounts(".", ",")


@pytest.mark.parametrize(
    ("amount", "plain", "german"),
    [
        ("0", "0", "0"),
        ("7400", "7,400", "7.400"),
        ("7400.5", "7,400.50", "7.400,50"),
        ("0.005", "0.01", "0,01"),
        ("-900", "−900", "−900"),
        ("12345678.9", "12,345,678.90", "12.345.678,90"),
        ("9999999999999999.99", "9,999,999,999,999,999.99", "9.999.999.999.999.999,99"),
    ],
)
def test_an_amount_is_written_to_the_hundredth(amount, plain, german):
    assert Amounts(",").told(D(amount)) == plain
    assert GERMAN.told(D(amount)) == german


def test_a_figure_that_was_entered_keeps_all_that_was_entered():
    assert Amounts(",").exact(D("0.85671")) == "0.85671"
    assert GERMAN.exact(D("7400.00")) == "7.400"
    assert Amounts().exact(D("1234567.05")) == "1\u00a0234\u00a0567.05"


def test_amounts_deep_in_a_sentence_are_written_so():
    inner = say("keep {amount}", amount=D("1500.5"))
    assert GERMAN.sentence(say("You would {what} of {all}.", what=inner, all=D(7400))) == (
        "You would keep 1.500,50 of 7.400."
    )
    assert GERMAN.sentence(say("1 EUR is {rate}, of {year}.", rate=D("0.8567"), year=1953)) == (
        "1 EUR is 0,8567, of 1953."
    )


def test_hours_percentages_scores_and_indices_are_told_as_they_were_entered():
    told = Amounts(",").sentence
    assert told(say("{hours} hours ({least} to {most})", hours=D("1.5"), least=D("0.5"), most=D(2))) == (
        "1.5 hours (0.5 to 2)"
    )
    assert told(say("{percent} %, score {score}, index {then} to {now}", percent=D("12.5"), score=D("60.5"),
                    then=D("24.1"), now=D("313.689"))) == "12.5 %, score 60.5, index 24.1 to 313.689"  # fmt: skip


def test_from_low_to_high_is_one_amount_where_both_are_the_same():
    assert Amounts(",").span(D(1150), D(2400)) == "1,150 to 2,400"
    assert Amounts(",").span(D(90), D(90)) == "90"


def test_about_so_much_is_told_in_whole_units_and_a_change_with_its_sign():
    assert Amounts(",").whole(D("10200.5")) == "10,201"
    assert Amounts(",").signed(D(45)) == "+45"
    assert Amounts(",").signed(D(-45)) == "−45"
