"""Terrier and Tiger Cub: every row of the two lists.

Typed from these pages, not from the profile: s1 "Dating Your Triumph", triumph-tiger-90.com/dating-your-triumph
(first and last numbers); s9 "No.10 model years: Triumph", cafe-british-bike.jp, working from British books (starts
only).
"""

from itertools import product

import pytest

from inspector.judgement.decode import Outcome
from tests.published.lists import Row, by_the_lists, edges, evidence, said, told, years

CUB = "triumph-cub"
PLACES = ("frame", "engine")
S1 = [
    Row("s1", 101, 8517, 1954),
    Row("s1", 8518, 17388, 1955),
    Row("s1", 17389, 26275, 1956),
    Row("s1", 26276, 35846, 1957),
    Row("s1", 35847, 45311, 1958),
    Row("s1", 45312, 56359, 1959),
    Row("s1", 56360, 69516, 1960),
    Row("s1", 69517, 81889, 1961),
    Row("s1", 81890, 88346, 1962),
    Row("s1", 88347, 94599, 1963),
    Row("s1", 94600, 99719, 1964),
    Row("s1", 99720, 99999, 1965),  # past 99999 ...
    Row("s1", 0, 2718, 1965),  # ... and on to 2718
]
STARTS = {1954: 101, 1955: 8518, 1956: 17389, 1957: 26276, 1958: 35847, 1959: 45312, 1960: 56360, 1961: 69517,
          1962: 81890, 1963: 88347, 1964: 94600, 1965: 99733}  # fmt: skip
SECOND_START = 100013  # of 1965, by s9
NEXT = [*list(STARTS.values())[1:], SECOND_START]
S9 = [Row("s9", start, after - 1, year) for (year, start), after in zip(STARTS.items(), NEXT, strict=True)]
LISTS = [*S1, *S9]


@pytest.mark.parametrize("row", LISTS)
def test_each_list_gives_its_year_at_and_beside_the_ends_of_every_row(row):
    """A start of s9 runs to the next start."""
    numbers = [number for number in edges(row) if 1 <= number < SECOND_START]
    for number, place in product(numbers, PLACES):
        expected = by_the_lists(LISTS, number)
        assert told(CUB, place, str(number)) == expected
        assert years(CUB, place, str(number)) == tuple(sorted({year for _, year in expected}))


@pytest.mark.parametrize(
    ("typed", "year"),
    [
        ("T20 88346", 1962),  # s1, s9
        ("T20 88347", 1963),  # s1, s9
        ("T15 8517", 1954),  # s1
        ("T15 8518", 1955),  # s1, s9
        ("T20C 26276", 1957),  # s1, s9
    ],
)
def test_the_t_code_stands_before_the_number(typed, year):
    assert years(CUB, "engine", typed) == (year,)


@pytest.mark.parametrize("number", [101, 1500, 2718])
def test_low_numbers_are_1954_or_1965(number):
    """s1: the count of 1965 runs past 99999 and on to 2718."""
    assert years(CUB, "engine", str(number)) == (1954, 1965)


def test_the_wrap_ends_at_2718():
    assert years(CUB, "engine", "2719") == (1954,)  # s1


@pytest.mark.parametrize("number", [99720, 99732])
def test_between_the_two_starts_of_1965_both_years_stand(number):
    """s1 begins 1965 at 99720, s9 at 99733."""
    answer = said(CUB, "engine", str(number))
    assert answer.years == (1964, 1965)
    assert answer.disagreement is not None


def test_the_second_start_of_1965_is_that_of_s9_alone_and_has_no_known_end():
    assert told(CUB, "engine", str(SECOND_START)) == {("s9", 1965)}
    assert told(CUB, "engine", str(SECOND_START - 1)) == {("s9", 1965)}
    (open_one,) = [hit for hit in said(CUB, "engine", str(SECOND_START)).hits if hit.years]
    assert open_one.open_end


@pytest.mark.parametrize("typed", ["101", "10050", "T20 26276"])
def test_a_cub_of_1966_to_1970_has_no_year_by_its_number(typed):
    """s1: ranges unknown, restarts at 101 and 10050, one number on several engines; s9: the works had to be asked."""
    answer = said(CUB, "engine", typed, 1967)
    assert answer.outcome is Outcome.DECODED
    assert answer.years == ()
    assert {hit.rule for hit in answer.hits} == {"late"}


def test_letters_that_are_no_t_code_are_not_read():
    assert said(CUB, "engine", "DU5824").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(
    ("typed", "years_left"),
    [
        ("T20 12000", {1955, *range(1966, 1971)}),  # s1: 1955, and the later count can have reached it
        ("T20 1500", {1954, *range(1965, 1971)}),  # s1: 1954 and 1965 besides
    ],
)
def test_a_number_never_speaks_against_1966_to_1970(typed, years_left):
    """s1: the count began again, with unknown ranges; so a dated number leaves those years open."""
    part = evidence(CUB, 1967, "engine", typed)
    assert set(part.years) == years_left
    assert "1966" in str(part.reason)
