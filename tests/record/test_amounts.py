"""Amounts and days as people type them."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.amounts import amount_of
from inspector.record.days import day_of, two_ways
from inspector.record.edits import EditRefused

D = Decimal


@pytest.mark.parametrize(
    ("typed", "amount"),
    [("7400", "7400"), (" 7 400,50 ", "7400.5"), ("£7,400", "7400"), ("7.400", "7400"), ("15 %", "15"), ("1.5", "1.5"),
     ("0", "0"), ("+5", "5")],
)  # fmt: skip
def test_an_amount_is_read_as_it_is_typed(typed, amount):
    assert amount_of(typed) == D(amount)


def test_nothing_typed_is_not_entered():
    assert [amount_of(text) for text in ("", "  ", "£")] == [None] * 3


def test_below_nought_only_where_it_can_be():
    assert amount_of("−250", signed=True) == D(-250)
    with pytest.raises(EditRefused, match="is below nought"):
        amount_of("-250")


def test_a_point_before_three_figures_is_a_decimal_one_where_there_are_no_thousands():
    assert amount_of("1.125", thousands=False) == D("1.125")


@pytest.mark.parametrize("typed", ["forty", "7O0", "1e5", "nan", "inf", "--5", "+-5", "5-", "1,2,3", "9" * 30])
def test_what_is_no_amount_is_one_sentence(typed):
    with pytest.raises(EditRefused, match="is not an amount") as refused:
        amount_of(typed)
    assert str(refused.value.sentence).endswith("Nothing was changed.")


@given(st.integers(0, 10**12), st.integers(0, 99))
def test_figures_with_point_or_comma_are_the_same(whole, hundredths):
    for sign in ".,":
        assert amount_of(f"{whole}{sign}{hundredths:02d}") == D(whole) + D(hundredths) / 100


@given(st.dates(min_value=date(1880, 1, 1), max_value=date(2100, 12, 31)))
def test_every_day_written_by_the_standard_is_that_day(day):
    assert day_of(day.isoformat()).day == day
    assert day_of(day.isoformat()).written == day.isoformat()


def test_a_month_or_year_is_kept_no_finer():
    assert [day_of(text).written for text in ("2025-05", "May 2025", "2025")] == ["2025-05", "2025-05", "2025"]
    assert [day_of(text).exact for text in ("2025-05", "2025")] == ["month", "year"]


@pytest.mark.parametrize("text", ["05/06/2025", "5-6-2025"])
def test_what_can_be_two_days_is_none(text):
    assert two_ways(text)
    assert day_of(text) is None


@pytest.mark.parametrize("text", ["31.2.2025", "2025-02-30", "soon", "1066", "13/13/2025", "Mayday 2025 x", ""])
def test_what_is_no_day_is_none(text):
    assert day_of(text) is None
