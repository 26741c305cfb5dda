"""Tyre date codes and sizes.

Sources: 64 FR 36807 of 8 July 1999 (govinfo FR-1999-07-08, 99-17402), its worked codes 0301, 031 and 2501; an owner's
manual copy (auto.manualsonline.com) for "week 01 is the first full week" and 317; a classic motorcycle wiki's used
motorcycle evaluation for 2200 and 226; itstillruns.com for the 117 mm of a 130/90; wcpmx.com for sizes about the same.
"""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.judgement.tyres import (
    NotATyreCode,
    about_the_same,
    first_day,
    outer_diameter,
    tyre_age,
    tyre_date,
)


@pytest.mark.parametrize(
    ("code", "week", "years"),
    [
        ("0301", 3, (2001,)),
        ("031", 3, (1981, 1991)),
        ("317", 31, (1977, 1987, 1997)),
        ("2501", 25, (2001,)),
        ("2200", 22, (2000,)),
        ("226", 22, (1976, 1986, 1996)),
        ("DOT 4B9X ABCD 1408", 14, (2008,)),
    ],
)
def test_published_codes(code, week, years):
    made = tyre_date(code)
    assert (made.week, made.years) == (week, years)


@pytest.mark.parametrize("code", ["", "00", "0008", "5408", "99", "12345", "AB08", "٠٣٠١", "540"])
def test_what_is_no_date_code_is_refused_with_a_sentence(code):
    with pytest.raises(NotATyreCode) as refused:
        tyre_date(code)
    assert str(refused.value.said).endswith(".")


def test_three_figures_of_a_year_0_end_with_mid_2000():
    assert tyre_date("100").years == (1980, 1990, 2000)
    assert tyre_date("400").years == (1980, 1990)


def test_week_1_is_the_first_full_week():
    assert first_day(2000, 1) == date(2000, 1, 2)  # 1 January 2000 was a Saturday
    assert first_day(2006, 1) == date(2006, 1, 1)  # a Sunday


@given(st.integers(1, 52), st.integers(2000, 2099))
def test_every_week_begins_on_a_sunday_of_its_year(week, year):
    day = first_day(year, week)
    assert (day.weekday(), day.year) == (6, year)


def test_age_in_whole_years():
    age = tyre_age(tyre_date("1408"), date(2026, 5, 16))
    assert (age.least, age.greatest) == (18, 18)
    assert "replace at 10 years" in str(age.advice)


def test_an_ambiguous_decade_gives_two_ages():
    age = tyre_age(tyre_date("031"), date(2001, 2, 1))
    assert (age.least, age.greatest) == (10, 20)


def test_a_code_of_the_future_is_read_again():
    with pytest.raises(NotATyreCode):
        tyre_age(tyre_date("5030"), date(2026, 5, 16))


def test_height_and_diameter_by_the_marking():
    assert outer_diameter(130, 90, 0) / 2 == pytest.approx(117)
    assert outer_diameter(130, 90, 16) == pytest.approx(640.4)


@pytest.mark.parametrize(
    ("size", "end", "alphanumeric"),
    [("3.50", "front", "MM90"), ("100/90-19", "front", "MM90"), ("MT90-16", "rear", "MT90"), ("4.00", "rear", "MN90")],
)
def test_sizes_about_the_same(size, end, alphanumeric):
    assert about_the_same(size, end).alphanumeric == alphanumeric


def test_a_size_the_table_does_not_have_is_none():
    assert about_the_same("2.00", "front") is None
    assert about_the_same("what", "rear") is None
