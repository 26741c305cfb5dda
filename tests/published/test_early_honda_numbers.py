"""Early Honda twins: the year inside the number; the CB450 by its first figure.

Typed from "Dating 1960s Hondas", mrhonda.guru (t8): in the late 1950s the two middle figures are the year, C71 59 12345
is of 1959; from about 1960 to 1964 the first figure of the five-figure frame number and of the six-figure engine number
is the last of the year; not from 1965. "DOHC 450 family tree", fdocuments.net (t9): CB450 K0 of 1965 from 1000001, K1
of 1968 from 3000001; the K0 stayed in the US list to 1968 (livablelandscape.org, t10). "Matching numbers", dotheton.com
(t12): engine numbers usually 50 to 200 or more above the frame's, one CL72 with both the same.
"""

import pytest

from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from tests.published.small import machine, row, rule, said, serial, stands

# t8: C, CA, CE and CS "Dream", CB road sports, CL scrambler, CR racer; 72 is 250 cc, 77 is 305 cc.
LETTERS = ("C", "CA", "CE", "CS", "CB", "CL", "CR")
CODES = [{"code": f"{letters}{size}", "sources": ["t8"]} for letters in LETTERS for size in (71, 72, 76, 77)]
MODEL = {"id": "model", "kind": "table", "gives": "model", "codes": CODES}
LATE_FIFTIES = {"id": "year", "kind": "table", "gives": "year of build", "codes": [
    {"code": str(year % 100), "build_year": year, "sources": ["t8"]} for year in (1957, 1958, 1959)
]}  # fmt: skip
YEAR_DIGIT = {"id": "year", "kind": "table", "gives": "year of build", "codes": [
    {"code": str(digit), "build_year": 1960 + digit, "sources": ["t8"]} for digit in range(5)
]}  # fmt: skip


def inside(width):
    """The year in the middle, or as the first figure of a number of so many figures."""
    return [
        rule("late-fifties", [MODEL, LATE_FIFTIES, serial(5)], sources=["t8"]),
        rule("sixties", [MODEL, YEAR_DIGIT, serial(width - 1)], sources=["t8"]),
    ]


CLOSE = {"places": ["frame", "engine"], "kind": "close", "usual_gap": 200, "sources": ["t12"]}
TWINS = machine((1957, 1964), sources=["t8", "t12"], frame=inside(5), engine=inside(6), relation=[CLOSE])
CB450 = machine(
    (1965, 1968),
    sources=["t9", "t10"],
    frame=[rule("450", [{"id": "letters", "kind": "literal", "text": "CB450"}, serial(7)], [
        row(1000001, 2999999, "t9", "t10", model="K0", years={"from": 1965, "to": 1968}, inferred=True),
        row(3000001, None, "t9", model="K1", model_year=1968),
    ])],
)  # fmt: skip


def test_in_the_late_fifties_the_two_middle_figures_are_the_year():
    answer = said(TWINS, "frame", "C71 59 12345")
    assert answer.years == (1959,)
    assert {hit.models for hit in answer.hits} == {("C71",)}


@pytest.mark.parametrize("year", range(1957, 1960))
def test_each_year_of_the_late_fifties(year):
    assert said(TWINS, "frame", f"C71-{year % 100}-12345").years == (year,)  # t8 gives the form; serial as there


@pytest.mark.parametrize("digit", range(5))
def test_from_1960_to_1964_the_first_figure_is_the_year(digit):
    """CB72-1xxxx is of 1961."""
    frame, engine = said(TWINS, "frame", f"CB72-{digit}1123"), said(TWINS, "engine", f"CB72E-{digit}11234")
    assert frame.years == (1960 + digit,)
    assert engine.outcome is Outcome.OUTSIDE  # no E is told of the engine letters
    assert said(TWINS, "engine", f"CB72-{digit}11234").years == (1960 + digit,)


def test_the_number_that_is_quoted():
    assert said(TWINS, "frame", "CB72-11123").years == (1961,)


@pytest.mark.parametrize("digit", range(5, 10))
def test_from_1965_the_first_figure_says_nothing(digit):
    answer = said(TWINS, "frame", f"CB72-{digit}1123")
    assert (answer.outcome, answer.years) == (Outcome.OUTSIDE, ())


@pytest.mark.parametrize("typed", ["C71 61 12345", "CB72 64 12345"])
def test_two_middle_figures_of_the_sixties_are_not_taken_for_a_year(typed):
    assert said(TWINS, "frame", typed).outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(("place", "typed"), [("frame", "CB72-111234"), ("engine", "CB72-11123")])
def test_five_figures_are_the_frames_and_six_the_engines(place, typed):
    assert said(TWINS, place, typed).outcome is Outcome.OUTSIDE


def test_a_doubtful_first_figure_gives_each_year():
    answer = said(TWINS, "frame", "CB77-[14]1123")
    assert {(hit.years, hit.if_figures) for hit in answer.hits} == {((1961,), ((6, "1"),)), ((1964,), ((6, "4"),))}


def test_c77_with_a_year_in_front_is_not_taken_for_one_with_a_first_figure():
    """Seven figures have the year in the middle, five begin with it: no number is read both ways."""
    assert said(TWINS, "frame", "C77 58 12345").years == (1958,)
    assert said(TWINS, "frame", "C77 32345").years == (1963,)


@pytest.mark.parametrize(("frame", "engine"), [("CB72-11123", "CB72-101273"), ("CL72-21123", "CL72-201123")])
def test_the_serials_behind_the_year_are_those_that_are_compared(frame, engine):
    """t12: 50 to 200 above, made up; and one CL72 with both the same, figures made up."""
    assert stands(TWINS, frame, engine, 1961).stand is Stand.CLOSE


@pytest.mark.parametrize(
    ("typed", "years", "model"),
    [
        ("CB450-1000001", (1965, 1966, 1967, 1968), "K0"),  # t9; t10: in the US list to 1968
        ("CB450-3000001", (1968,), "K1"),  # t9
    ],
)
def test_the_cb450_begins_anew_with_each_model(typed, years, model):
    (hit,) = said(CB450, "frame", typed).hits
    assert (hit.years, hit.models) == (years, (model,))


@pytest.mark.parametrize("typed", ["CB450-1000000", "CB450-3000000"])
def test_one_below_a_start_of_the_cb450_is_not_of_it(typed):
    assert said(CB450, "frame", typed).outcome is Outcome.OUTSIDE
