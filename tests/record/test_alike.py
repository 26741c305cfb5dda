"""What is told before two records are taken to be of one machine."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.alike import may_agree, warnings
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead
from tests.record.steps import blank

PLACES = {"frame": "Frame number", "engine": "Engine number"}


def read(typed, place="frame", **told):
    return Reading(id=f"{place}-{typed}"[:100], place=place, figures=figures_of(typed), **told)


def record(record_id, *readings, **claim):
    made = blank(record_id)
    return made.model_copy(update={"readings": readings, "claim": made.claim.model_copy(update=claim)})


def told(here, other):
    return [str(line) for line in warnings(here, other, PLACES)]


@pytest.mark.parametrize(
    ("one", "other", "can_be"),
    [
        ("15842", "15842", True),
        ("158 42", "15842", True),
        ("ab-158.42", "AB 158/42", True),
        ("15842", "15843", False),
        ("1584?", "15842", True),
        ("158[42]2", "15842", True),
        ("158[43]2", "158[57]2", False),
        ("15842", "158422", False),
        ("?????", "15842", True),
    ],
)
def test_readings_that_can_be_one_number(one, other, can_be):
    assert may_agree(read(one), read(other)) is can_be
    assert may_agree(read(other), read(one)) is can_be


@given(typed=st.text("0123456789AB?-. ", min_size=1, max_size=12).filter(lambda t: t.strip()))
def test_every_reading_can_be_what_it_is(typed):
    assert may_agree(read(typed), read(typed))


def test_a_number_read_otherwise_is_told_with_its_place_and_how_it_was_read():
    (line,) = told(record("A", read("15842")), record("B", read("15342", how_read=HowRead.PAPER)))
    for part in ("Frame number", "15842", "15342", "record A", "record B", HowRead.PAPER.value, HowRead.METAL.value):
        assert part in line


def test_one_of_several_readings_that_agrees_is_enough():
    assert told(record("A", read("15842"), read("15342")), record("B", read("15342"))) == []


def test_without_a_number_read_in_both_that_is_told():
    for other in (record("B"), record("B", read("77", "engine"))):
        assert ["no number shows" in line for line in told(record("A", read("15842")), other)] == [True]


def test_another_claimed_year_and_another_day_are_told():
    here, other = record("A", read("1"), model_year=1953, date="2026-05-01"), record("B", read("1"), model_year=1954)
    lines = told(here, other)
    assert any("1953" in line and "1954" in line for line in lines)
    assert any("two days" in line and "2026-05-01" in line for line in lines)
