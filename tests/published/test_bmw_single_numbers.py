"""BMW singles: the number gives the model and no year; two changes of the R25/2 by engine number.

Typed from "BMW R27", de.knowledgr.com (t25): R26 1956 to 1960, 340001 to 370236; R27 1960 to 1966, 372001 to 387566,
and 15,364 built; and from a reader's report on the R25/2, cms.bmw-einzylinder.de, id 94 (t26): matt black head from
engine 263051, conical plug bush from 267301; earlier machines could be blackened afterwards.
"""

import pytest

from inspector.judgement.decode import Outcome
from tests.published.small import changed_at, machine, row, rule, running_change, said, serial

MODELS = {"R26": (340001, 370236, 1956, 1960), "R27": (372001, 387566, 1960, 1966)}
RULE = rule("singles", [serial(6)], [
    row(first, last, "t25", model=model, years={"from": begin, "to": end})
    for model, (first, last, begin, end) in MODELS.items()
])  # fmt: skip
SINGLES = machine((1956, 1966), sources=["t25"], frame=[RULE], engine=[RULE])
R25_2 = machine(
    (1951, 1953),
    sources=["t26"],
    engine=[rule("r25-2", [serial(6)])],
    items=[changed_at("head", "engine", 263050, 263051), changed_at("bush", "engine", 267300, 267301)],
)


@pytest.mark.parametrize("place", ["frame", "engine"])
@pytest.mark.parametrize(("model", "row_"), MODELS.items())
def test_at_both_ends_the_model_is_given_and_every_year_it_was_built(place, model, row_):
    first, last, begin, end = row_
    for number in (first, last):
        (hit,) = said(SINGLES, place, str(number)).hits
        assert (hit.models, hit.years) == ((model,), tuple(range(begin, end + 1)))


@pytest.mark.parametrize("number", [340000, 370237, 371000, 372000, 387567])
def test_beside_the_ranges_and_in_the_gap_nothing_is_told(number):
    answer = said(SINGLES, "engine", str(number))
    assert (answer.outcome, answer.years) == (Outcome.OUTSIDE, ())


@pytest.mark.parametrize("claimed", [1960, 1963, 1966])
def test_the_number_parts_no_year_of_the_r27_from_another(claimed):
    """No split by year is printed; some of 1966 were sold as 1967, too."""
    assert said(SINGLES, "engine", "380000", claimed).years == tuple(range(1960, 1967))


def test_a_range_holds_more_numbers_than_machines_were_built():
    """t25: 15,364 built. So the output never follows from the range: numbers were held in reserve."""
    first, last, *_ = MODELS["R27"]
    assert last - first + 1 == 15566
    assert last - first + 1 - 15364 == 202
    (hit,) = said(SINGLES, "engine", "3[78]????").hits[-1:]
    assert hit.serials == 15566


def test_where_the_r26_ends_the_next_number_is_near_and_not_of_it():
    answer = said(SINGLES, "engine", "370237")
    assert "370236" in str(answer.nearest.sentence).replace("\N{NO-BREAK SPACE}", "")


@pytest.mark.parametrize(
    ("item", "number", "form", "fits"),
    [
        ("head", 263050, "early", True),
        ("head", 263051, "early", False),
        ("head", 263050, "late", False),
        ("head", 263051, "late", True),
        ("bush", 267300, "early", True),
        ("bush", 267301, "late", True),
        ("bush", 267300, "late", False),
    ],
)
def test_a_form_of_the_r25_2_goes_with_its_engine_numbers(item, number, form, fits):
    """t26."""
    sentence = running_change(R25_2, "engine", str(number), item, form)
    assert ("is one of these" in sentence) is fits


def test_between_the_two_changes_the_head_is_black_and_the_bush_still_plain():
    assert "is one of these" in running_change(R25_2, "engine", "265000", "head", "late")
    assert "is one of these" in running_change(R25_2, "engine", "265000", "bush", "early")


def test_the_figure_that_decides_is_named():
    assert "if figure 6 is 1" in running_change(R25_2, "engine", "26305[01]", "head", "late")
