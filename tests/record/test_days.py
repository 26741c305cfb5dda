"""A day, month or year as people write it."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.days import day_of, two_ways


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


@pytest.mark.parametrize(
    "text",
    ["31.2.2025", "2025-02-30", "soon", "1066", "13/13/2025", "Mayday 2025 x", "", "Decade 1950", "Marque 1953"],
)
def test_what_is_no_day_is_none(text):
    assert day_of(text) is None


@pytest.mark.parametrize("text", ["3 Sept 2025", "3. September 2025", "Sep. 3, 2025", "3 SEP 2025"])
def test_a_month_may_be_cut_short(text):
    assert day_of(text).written == "2025-09-03"
