"""Jawa 50 Pionyr, type 550: ranges worked out from the output of each year.

Typed from "Output and numbers", jawa-50.cz (t13): first number 10 001, July 1955; last 116 111, about July 1958;
106,111 built; output by year, which its author calls inexact. The postage-stamp text of pofis.sk (t14) has the start in
April 1955. A machine with 92402 is described as of early 1958 (jawa-50.cz, topic jawa-550, t15).
"""

from itertools import accumulate

import pytest

from inspector.judgement.decode import Outcome
from tests.published.small import machine, row, rule, said, serial

FIRST, LAST, BUILT = 10001, 116111, 106111
OUTPUT = {1955: 3556, 1956: 30456, 1957: 47016}  # the 63,304 of 1958 are of two types
MONTHS = {1955: {"built_from": "1955-07", "built_to": "1955-12"}, 1958: {"built_from": "1958-01",
                                                                        "built_to": "1958-07"}}  # fmt: skip
# First and last number of each year, worked out by hand from the above.
RANGES = {1955: (10001, 13556), 1956: (13557, 44012), 1957: (44013, 91028), 1958: (91029, 116111)}

PIONYR = machine(
    (1955, 1958),
    sources=["t13", "t14"],
    frame=[rule("550", [serial(min_width=5, max_width=6)], [
        row(first, last, "t13", model="550", model_year=year, inferred=True, **MONTHS.get(year, {}))
        for year, (first, last) in RANGES.items()
    ])],
)  # fmt: skip


def read(number):
    return said(PIONYR, "frame", str(number))


def test_first_number_output_and_last_number_close():
    """So the numbers were used without gaps: 10,001 and 106,111 less 1 is 116,111."""
    assert FIRST + BUILT - 1 == LAST


def test_the_ranges_are_the_output_added_up():
    ends = [FIRST - 1 + total for total in accumulate(OUTPUT.values())]
    assert [last for _, last in RANGES.values()] == [*ends, LAST]
    assert [first for first, _ in RANGES.values()] == [FIRST, *(end + 1 for end in ends)]


@pytest.mark.parametrize(("year", "ends"), RANGES.items())
def test_at_both_ends_of_a_year_its_year_is_given_and_told_as_worked_out(year, ends):
    for number in ends:
        (hit,) = read(number).hits
        assert (hit.years, hit.inferred, hit.sources) == ((year,), True, ("t13",))
        assert "worked out" in " ".join(map(str, read(number).reasons))


@pytest.mark.parametrize("year", [1956, 1957, 1958])
def test_one_below_is_of_the_year_before(year):
    assert read(RANGES[year][0] - 1).years == (year - 1,)


@pytest.mark.parametrize(("number", "near"), [(10000, "below"), (116112, "above")])
def test_below_the_first_and_above_the_last_nothing_is_told(number, near):
    answer = read(number)
    assert (answer.outcome, answer.years) == (Outcome.OUTSIDE, ())
    assert near in str(answer.nearest.sentence)


def test_a_dated_machine_falls_just_inside_its_year():
    """t15: 92402, early 1958, still with the old carburettor; 1,374 after the first of the year."""
    (hit,) = read(92402).hits
    assert (hit.years, hit.built) == ((1958,), (("1958-01", "1958-07"),))
    assert 92402 - RANGES[1958][0] < 2000


def test_the_two_dates_of_the_start_differ_by_a_quarter():
    """t13 July 1955, t14 April 1955: t14 prints no number, so the row has the month of t13."""
    (hit,) = read(FIRST).hits
    assert hit.built == (("1955-07", "1955-12"),)


@pytest.mark.parametrize(("typed", "years", "count"), [("1355?", (1955, 1956), 10), ("9102[89]", (1957, 1958), 2),
                                                       ("11611?", (1958,), 2)])  # fmt: skip
def test_a_doubtful_figure_leaves_each_year_that_it_allows(typed, years, count):
    """The last figure of 11611? can be 0 or 1 only: above 116111 nothing was built."""
    answer = read(typed)
    assert (answer.years, answer.serials) == (years, count)
