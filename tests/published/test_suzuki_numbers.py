"""Suzuki T500: a first series that is known and a second that is only about known.

Typed from the history of the T500-I, suzuki2-takt.se (t74): frames of the T500-I of 1968 from 10 000; the T500-II was
under way at 22 000, and began perhaps at about 20 000. The letters by year, en.wikipedia.org/wiki/Suzuki_T500 (t75):
1969 is the II.
"""

import pytest

from inspector.judgement.decode import Outcome
from tests.published.small import machine, row, rule, said, serial

ABOUT = "about: under way at 22 000, perhaps from about 20 000"
T500 = machine(
    (1968, 1969),
    sources=["t74", "t75"],
    frame=[rule("t500", [{"id": "letters", "kind": "literal", "text": "T500"}, serial(5)], [
        row(10000, 21999, "t74", model="T500-I", model_year=1968, inferred=True, note=ABOUT),
        row(20000, None, "t74", model="T500-II", model_year=1969, inferred=True, note=ABOUT),
    ])],
)  # fmt: skip


def read(number):
    return said(T500, "frame", f"T500-{number}")


@pytest.mark.parametrize(
    ("number", "models"),
    [
        (10000, {"T500-I"}),
        (10001, {"T500-I"}),
        (19999, {"T500-I"}),
        (20000, {"T500-I", "T500-II"}),
        (21999, {"T500-I", "T500-II"}),
        (22000, {"T500-II"}),
    ],
)
def test_between_perhaps_and_surely_both_series_are_told(number, models):
    assert {model for hit in read(number).hits for model in hit.models} == models


@pytest.mark.parametrize("number", [10001, 21000, 22000])
def test_what_is_only_about_known_says_so(number):
    assert all(hit.inferred and hit.note == ABOUT for hit in read(number).hits)


def test_the_overlap_is_told_as_that_and_is_no_disagreement_of_sources():
    answer = read(21000)
    assert answer.disagreement is None
    assert any("overlap" in str(reason) for reason in answer.reasons)


def test_below_10_000_nothing_is_told():
    """t74 holds that the maker's series start at 10 000."""
    assert said(T500, "frame", "T500-09999").outcome is Outcome.OUTSIDE
