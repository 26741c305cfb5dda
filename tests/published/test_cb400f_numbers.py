"""CB400F by market: first and last numbers of frame and engine, and a gap between them that changes sign.

Typed from "CB400F with serial numbers", sohc4.com (t1); the last English F, 1073399, and the footrests that moved
within the F are also in "CB400F 1976", motorcyclespecs.co.za (t2). The engines of the German F2 are printed as those of
the F, plainly a copy, and those of the French F2 were cut off: both are left out.
"""

from itertools import product

import pytest

from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from tests.published.small import changed_at, literal, machine, row, rule, running_change, said, serial, stands

# Model, market, first and last frame, first and last engine.
LIST = [
    ("F", "USA", 1000006, 1038492, 1000001, 1038563),
    ("F", "England", 1007709, 1073399, 1000001, 1069245),
    ("F", "Germany", 1003864, 1073209, 1000001, 1068984),
    ("F", "France", 1003859, 1071669, 1000001, 1067426),
    ("F", "Europe direct", 1003869, 1072669, 1000001, 1068486),
    ("F", "general export, km/h", 1000154, 1084349, 1000001, 1080155),
    ("F", "general export, mph", 1007394, 1047804, 1000001, 1044878),
    ("F", "Sweden", 1012968, 1033142, 1000001, 1033298),
    ("F", "Australia", 1007369, 1084404, 1000001, 1080210),
    ("F1", "USA", 2000001, 2008280, 2000001, 2100000),
    ("F1", "Canada", 2008281, 2009350, 2000001, 2100000),
    ("F2", "USA", 2100001, 2104166, 2100001, 2104125),
    ("F2", "Canada", 2103567, 2105061, 2103573, 2105072),
    ("F2", "England", 1073400, 1088559, 1069242, 1086660),
    ("F2", "Germany", 1074740, 1085944, None, None),
    ("F2", "France", 1075280, 1086459, None, None),
]
PLACES = {"frame": ("CB400F", 2), "engine": ("CB400FE", 4)}
# The gap, engine less frame, at the beginning and at the last number of each market's F.
GAPS = [[1000006, -5], [1033142, 156], [1038492, 71], [1071669, -4243], [1072669, -4183], [1073209, -4225],
        [1073399, -4154], [1084404, -4194]]  # fmt: skip
USUAL = 200  # no page prints one for this machine; that of the CB750, cb750sandcastonly.com


def numbers(place):
    letters, at = PLACES[place]
    rows = [row(one[at], one[at + 1], "t1", model=one[0], market=one[1]) for one in LIST if one[at] is not None]
    return rule("numbers", [literal(letters), serial(7)], rows)


def relation(**more):
    return {"places": ["frame", "engine"], "kind": "close", "usual_gap": USUAL, "sources": ["t1"], **more}


FOUR = machine(
    (1975, 1977),
    sources=["t1", "t2"],
    frame=[numbers("frame")],
    engine=[numbers("engine")],
    relation=[relation(gap_points=GAPS)],
    items=[changed_at("footrests", "frame", 1056883, 1056884)],
)


def told(place, number):
    return {(*hit.models, *hit.markets) for hit in said(FOUR, place, f"{PLACES[place][0]}-{number}").hits}


def by_the_list(place, number):
    at = PLACES[place][1]
    return {one[:2] for one in LIST if one[at] is not None and one[at] <= number <= one[at + 1]}


@pytest.mark.parametrize("line", LIST, ids=lambda line: f"{line[0]} {line[1]}")
def test_each_row_holds_from_its_first_number_to_its_last(line):
    for place, (_, at) in PLACES.items():
        if line[at] is None:
            continue
        for end, step in product(line[at : at + 2], (-1, 0, 1)):
            assert told(place, end + step) == by_the_list(place, end + step)
            assert (line[:2] in told(place, end + step)) is (line[at] <= end + step <= line[at + 1])


@pytest.mark.parametrize(
    ("number", "market", "model"),
    [
        (1073399, "England", "F"),  # t1, t2
        (1073400, "England", "F2"),  # t1
        (2008280, "USA", "F1"),
        (2008281, "Canada", "F1"),
        (2100001, "USA", "F2"),
    ],
)
def test_where_one_model_ends_and_the_next_begins(number, market, model):
    assert {one for one, where in told("frame", number) if where == market} == {model}


@pytest.mark.parametrize("number", [2103567, 2103600, 2104166])
def test_where_two_markets_overlap_both_are_told(number):
    assert told("frame", number) == {("F2", "USA"), ("F2", "Canada")}


@pytest.mark.parametrize("number", [2103566, 2104167])
def test_beside_the_overlap_one_is_left(number):
    assert len(told("frame", number)) == 1


@pytest.mark.parametrize("number", [1069242, 1069243, 1069245])
def test_three_english_engines_are_of_either_model(number):
    """The F2 begins three below the last F: the ranges overlap."""
    assert {model for model, market in told("engine", number) if market == "England"} == {"F", "F2"}


@pytest.mark.parametrize(("number", "model"), [(1069241, "F"), (1069246, "F2")])
def test_beside_them_one_model_is_left(number, model):
    assert {one for one, market in told("engine", number) if market == "England"} == {model}


def test_a_number_within_one_markets_range_may_be_anothers():
    """The markets share one running series, so a range has holes."""
    assert {market for _, market in told("frame", 1010000)} >= {"England", "Germany", "USA", "Australia"}


@pytest.mark.parametrize("typed", ["CB400F-1000005", "CB400F-1088560", "CB400F-1999999", "CB400F-2105062"])
def test_outside_every_row_nothing_is_told(typed):
    assert said(FOUR, "frame", typed).outcome is Outcome.OUTSIDE


def test_the_engine_is_not_read_by_the_letters_of_the_frame():
    assert said(FOUR, "engine", "CB400F-1010000").outcome is Outcome.OUTSIDE


def test_the_gap_grows_from_a_few_dozen_to_minus_four_thousand():
    """The differences of the last numbers, market by market."""
    ends = {one[1]: one[5] - one[3] for one in LIST if one[0] == "F"}
    published = {"USA": 71, "England": -4154, "Germany": -4225, "Europe direct": -4183, "France": -4243,
                 "Australia": -4194, "Sweden": 156}  # fmt: skip
    assert published.items() <= ends.items()


@pytest.mark.parametrize("line", [one for one in LIST if one[0] == "F" and "export" not in one[1]])
def test_the_last_pair_of_each_market_is_as_expected_at_that_point_of_the_run(line):
    frame, engine = line[3], line[5]
    found = stands(FOUR, f"CB400F-{frame}", f"CB400FE-{engine}")
    assert (found.stand, found.gap, found.expected_gap) == (Stand.CLOSE, engine - frame, engine - frame)


def test_between_two_points_the_gap_changes_sign():
    early = stands(FOUR, "CB400F-1036000", "CB400FE-1036100")  # made up: the engine above the frame
    late = stands(FOUR, "CB400F-1071700", "CB400FE-1067460")  # made up: the engine far below it
    assert (early.stand, late.stand) == (Stand.CLOSE, Stand.CLOSE)
    assert early.expected_gap > 0 > late.expected_gap


def test_late_numbers_as_close_as_early_ones_are_the_question():
    found = stands(FOUR, "CB400F-1073000", "CB400FE-1073050")  # made up
    assert (found.stand, found.raises, found.gap) == (Stand.UNUSUAL, True, 50)


@pytest.mark.parametrize("line", [one for one in LIST if one[0] == "F" and one[5] - one[3] < -4000])
def test_one_fixed_gap_for_all_would_call_late_machines_unusual(line):
    fixed = machine((1975, 1977), sources=["t1"], frame=[numbers("frame")], engine=[numbers("engine")],
                    relation=[relation()])  # fmt: skip
    assert stands(fixed, f"CB400F-{line[3]}", f"CB400FE-{line[5]}").stand is Stand.UNUSUAL


@pytest.mark.parametrize(
    ("number", "form", "fits"),
    [(1056883, "early", True), (1056884, "early", False), (1056883, "late", False), (1056884, "late", True)],
)
def test_pillion_footrests_leave_the_swinging_arm_after_1056883(number, form, fits):
    """t2: on the arm up to frame 1056883, on the frame after it; within the F."""
    assert told("frame", number) == by_the_list("frame", number)
    sentence = running_change(FOUR, "frame", f"CB400F-{number}", "footrests", form)
    assert ("is one of these" in sentence) is fits
