"""Triumph twins: every row of the published lists, at its ends and beside them.

Each list was typed here from the page named with it, not from the profiles:

s1  "Dating Your Triumph", triumph-tiger-90.com/dating-your-triumph
s2  "What year is your Triumph?", tonup-nc.blogspot.com, April 2015
s3  "Triumph Frame Numbers", tomcc.org/Triumph/FrameNumbers (with months of building; the part seen ends with 1962)
s8  "Triumph engine and frame serial numbers", lowbrowcustoms.com
s9  "No.10 model years: Triumph", cafe-british-bike.jp
s37 "T120RT profile", tomcc.org
"""

from itertools import product

import pytest

from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from inspector.profile.words import RelationKind
from tests.published.lists import Row, build_months, by_the_lists, edges, said, standings, told, years

PRE, UNIT, SMALL = "triumph-pre-unit", "triumph-unit-650", "triumph-unit-500"
PLACES = ("frame", "engine")

# s3 alone: 1950 with N behind the number, 1951 and 1952 with NA. The end month of the last is a misprint there.
N = [Row("s3", 1001, 16085, 1950, ("1949-11", "1950-10"))]
NA = [Row("s3", 101, 15808, 1951, ("1950-11", "1951-10")), Row("s3", 15809, 29505, 1952)]

PLAIN = [
    Row("s1", 25001, 32302, 1952),
    Row("s1", 32303, 44134, 1953),
    Row("s1", 44135, 56699, 1954),
    Row("s1", 56700, 70929, 1955),
    Row("s1", 70930, 82800, 1956),
    Row("s3", 25001, 32302, 1952, ("1952-02", "1952-08")),
    Row("s3", 32303, 44134, 1953, ("1952-09", "1953-08")),
    Row("s3", 44135, 56697, 1954, ("1953-09", "1954-08")),
    Row("s3", 56700, 70929, 1955, ("1954-09", "1955-07")),
    Row("s3", 70930, 82799, 1956, ("1955-08", "1956-08")),
]
ZERO = [
    Row("s1", 101, 944, 1956),
    Row("s1", 945, 11115, 1957),
    Row("s1", 11116, 20075, 1958),
    Row("s1", 20076, 29363, 1959),
    Row("s1", 29364, 30424, 1960),
    Row("s3", 101, 944, 1956, ("1956-07", "1956-08")),
    Row("s3", 945, 11115, 1957, ("1956-09", "1957-08")),
    Row("s3", 11116, 20075, 1958, ("1957-09", "1958-08")),
    Row("s3", 20076, 29363, 1959, ("1958-09", "1959-08")),
    Row("s3", 29364, 30419, 1960, ("1959-09", "1959-09")),
]
DUPLEX = [
    Row("s1", 101, 7726, 1960),
    Row("s1", 7727, 15788, 1961),
    Row("s1", 15789, 20314, 1962),
    Row("s3", 102, 7726, 1960, ("1959-10", "1960-08")),
    Row("s3", 7727, 15759, 1961, ("1960-09", "1961-08")),
    Row("s3", 15789, 20308, 1962, ("1961-09", "1962-07")),
]
DU = [
    Row("s1", 101, 5824, 1963),
    Row("s1", 5825, 13374, 1964),
    Row("s1", 13375, 24874, 1965),
    Row("s1", 24876, 44393, 1966),
    Row("s1", 44394, 66245, 1967),
    Row("s1", 66246, 85903, 1968),
    Row("s1", 85904, 90282, 1969),
    Row("s2", 101, 5824, 1963),
    Row("s2", 5825, 13374, 1964),
    Row("s2", 13375, 24874, 1965),
    Row("s2", 24875, 44393, 1966),
    Row("s2", 44394, 66245, 1967),
    Row("s2", 66246, 90282, 1968),
]
H = [
    Row("s2", 101, 760, 1957),
    Row("s2", 761, 5484, 1958),
    Row("s2", 5485, 11511, 1959),
    Row("s2", 11512, 18611, 1960),
    Row("s2", 18612, 25251, 1961),
    Row("s2", 25252, 29732, 1962),
    Row("s2", 29733, 32464, 1963),
    Row("s2", 32465, 35986, 1964),
    Row("s2", 35987, 40527, 1965),
    Row("s2", 40528, 49832, 1966),
    Row("s2", 49833, 57082, 1967),
    Row("s2", 57083, 67331, 1968),
    Row("s3", 1, 760, 1957, ("1957-02", "1957-08")),
    Row("s3", 761, 5484, 1958, ("1957-09", "1958-08")),
    Row("s3", 5485, 11511, 1959, ("1958-09", "1959-08")),
    Row("s3", 11512, 18611, 1960, ("1959-09", "1960-08")),
    Row("s3", 18612, 25251, 1961, ("1960-09", "1961-08")),
    Row("s3", 25252, 29732, 1962, ("1961-09", "1962-08")),
]
SERIES = {
    "{}N": (PRE, N),
    "{}NA": (PRE, NA),
    "{}": (PRE, PLAIN),
    "0{:03}": (PRE, ZERO),
    "D{}": (PRE, DUPLEX),
    "DU{}": (UNIT, DU),
    "H{}": (SMALL, H),
}
ROWS = [(form, row) for form, (_, rows) in SERIES.items() for row in rows]
DATED = [(form, row) for form, (_, rows) in SERIES.items() for row in rows if row.built]


@pytest.mark.parametrize(("form", "row"), ROWS)
def test_each_list_gives_its_year_from_first_to_last_number_and_nothing_beside(form, row):
    """s1, s2 and s3, each with its own ends; where they differ every year is kept."""
    name, rows = SERIES[form]
    for number, place in product(edges(row), PLACES):
        expected = by_the_lists(rows, number)
        assert told(name, place, form.format(number)) == expected
        assert years(name, place, form.format(number)) == tuple(sorted({year for _, year in expected}))


@pytest.mark.parametrize(("form", "row"), DATED)
def test_the_months_of_building_are_those_that_s3_prints(form, row):
    name, _ = SERIES[form]
    for number in (row.first, row.last):
        assert build_months(name, "engine", form.format(number), row.source) == {row.built}


def test_the_misprinted_end_month_of_s3_is_not_given():
    """s3 prints 1964 as the end of a block of 1952; only the begin, November 1951, is used."""
    ((first, last),) = build_months(PRE, "engine", "15809NA", "s3")
    assert first == "1951-11"
    assert last < "1953"


@pytest.mark.parametrize(
    ("typed", "left_out"),
    [
        ("56698", "s3"),  # s3 ends 1954 at 56697, s1 at 56699
        ("56699", "s3"),
        ("82800", "s3"),  # s3 ends 1956 at 82799, s1 at 82800
        ("030420", "s3"),  # s3 ends the 0 numbers at 030419, s1 at 30424
        ("D101", "s3"),  # s3 begins at D102, s1 at D101
        ("D15760", "s3"),  # the gap of s3; s1 is without one
        ("D15788", "s3"),
        ("D20309", "s3"),  # s3 ends 1962 at D20308, s1 at D20314
    ],
)
def test_a_number_that_one_list_leaves_out_is_dated_by_the_other_alone(typed, left_out):
    (source,) = {source for source, _ in told(PRE, "engine", typed)}
    assert source == "s1" != left_out


@pytest.mark.parametrize(
    ("name", "typed", "year"),
    [
        (UNIT, "DU5824", 1963),  # s1, s2
        (UNIT, "DU5825", 1964),  # s1, s2
        (UNIT, "DU13374", 1964),  # s1, s2
        (UNIT, "DU13375", 1965),  # s1, s2
        (UNIT, "DU66245", 1967),  # s1, s2
        (UNIT, "DU66246", 1968),  # s1, s2
        (SMALL, "H11511", 1959),  # s2, s3
        (SMALL, "H11512", 1960),  # s2, s3
        (PRE, "D7726", 1960),  # s1, s3
        (PRE, "D7727", 1961),  # s1, s3
    ],
)
def test_the_boundaries_that_two_lists_share(name, typed, year):
    assert years(name, "engine", typed) == years(name, "frame", typed) == (year,)


@pytest.mark.parametrize("number", [85904, 88000, 90282])
def test_the_last_du_numbers_are_1968_by_s2_and_1969_by_s1(number):
    answer = said(UNIT, "engine", f"DU{number}")
    assert answer.years == (1968, 1969)
    assert answer.disagreement is not None


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        (UNIT, "DU90283"),  # s1 and s2 end at DU90282
        (UNIT, "DU100"),  # both begin at DU101
        (SMALL, "H67332"),  # s2 ends at H67331
        (PRE, "D20315"),  # s1 ends at D20314
        (PRE, "82801"),  # s1 ends at 82800
        (PRE, "25000"),  # s1 and s3 begin at 25001
        (PRE, "030425"),  # s1 ends at 30424
    ],
)
def test_a_number_beyond_the_lists_has_no_year(name, typed):
    answer = said(name, "engine", typed)
    assert answer.outcome is Outcome.OUTSIDE
    assert answer.years == ()
    assert answer.nearest is not None


@pytest.mark.parametrize(
    ("typed", "year"),
    [
        ("5T 32302", 1952),  # s1, s3
        ("6T 15809NA", 1952),  # s3
        ("T100 0945", 1957),  # s1, s3
        ("T110 11116", None),  # the 0 is missing: not a number of these lists
        ("T120 029364", 1960),  # s1, s3
        ("TR6 D7727", 1961),  # s1, s3
        ("29364", 1952),  # without its 0 it reads as a number of 1952: s1, s3
    ],
)
def test_the_model_code_stands_before_and_a_missing_0_gives_another_year(typed, year):
    assert years(PRE, "frame", typed) == (() if year is None else (year,))


def test_an_engine_of_1937_to_1949_begins_with_its_year():
    """s3: the year first, then the model, as 8-T-1234. The decade is not stamped."""
    assert years(PRE, "engine", "8-T-1234") == (1938, 1948)
    assert years(PRE, "engine", "2-T-1234") == (1942,)
    assert years(PRE, "frame", "8-T-1234") == ()


@pytest.mark.parametrize("letters", ["TC", "TF", "S"])
def test_frame_letters_are_read_and_give_no_year(letters):
    """s2 names them with the kind of frame and without years."""
    answer = said(PRE, "frame", f"{letters}1234")
    assert (answer.outcome, answer.years) == (Outcome.DECODED, ())
    assert "s2" in answer.sources
    assert said(PRE, "engine", f"{letters}1234").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(
    ("name", "typed", "ways"),
    [
        (SMALL, "H1151[12]", {(6, "1"): 1959, (6, "2"): 1960}),  # s2, s3: 1960 begins at H11512
        (UNIT, "DU1337[45]", {(7, "4"): 1964, (7, "5"): 1965}),  # s1, s2: 1965 begins at DU13375
        (PRE, "D772[67]", {(5, "6"): 1960, (5, "7"): 1961}),  # s1, s3: 1961 begins at D7727
        (PRE, "[0O]29364", {(1, "0"): 1960}),  # s1, s3: a 0 in front; the letter O is in no list
    ],
)
def test_a_figure_that_could_be_two_gives_each_year_with_its_condition(name, typed, ways):
    hits = said(name, "engine", typed).hits
    assert {(figure, hit.years) for hit in hits for figure in hit.if_figures} == {
        (figure, (year,)) for figure, year in ways.items()
    }


@pytest.mark.parametrize(
    ("name", "typed", "left", "found"),
    [
        # s1: 85900 to 85903 are 1968, 85904 to 85909 are 1969; s2: all ten are 1968
        (UNIT, "DU8590?", 10, {("s1", 1968, 4), ("s1", 1969, 6), ("s2", 1968, 10)}),
        # s2, s3: H11510 and H11511 are 1959, the other eight 1960
        (SMALL, "H1151?", 10, {(s, y, n) for s in ("s2", "s3") for y, n in ((1959, 2), (1960, 8))}),
        # s1: D15780 to D15788 are 1961, D15789 is 1962; s3 has the last alone
        (PRE, "D1578?", 10, {("s1", 1961, 9), ("s1", 1962, 1), ("s3", 1962, 1)}),
        # s1 and s2 end at DU90282: three of the ten
        (UNIT, "DU9028?", 3, {("s1", 1969, 3), ("s2", 1968, 3)}),
    ],
)
def test_an_unreadable_figure_leaves_so_many_numbers_to_each_year(name, typed, left, found):
    answer = said(name, "frame", typed)
    assert answer.serials == left
    assert {(source, *hit.years, hit.serials) for hit in answer.hits for source in hit.sources} == found


def test_an_extra_t_of_1970_is_read_on_the_engine_and_not_on_the_frame():
    """s37: stamped on the engine only."""
    assert said(UNIT, "engine", "T120RT ND00123").years == (1970,)
    assert said(UNIT, "frame", "T120RT ND00123").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(
    ("name", "year", "number"), [(PRE, 1950, "6T 1001N"), (PRE, 1961, "T120 D8000"), (SMALL, 1959, "H6000"),
                                 (UNIT, 1966, "T120 DU30000"), (UNIT, 1970, "T120R ND00123")]
)  # fmt: skip
def test_from_1950_frame_and_engine_left_equal_and_s9_doubts_it(name, year, number):
    """s1, s3 and s8: the same number; s9: several books state that the two do not always agree."""
    (equal,) = standings(name, year, {"frame": number, "engine": number})
    assert (equal.kind, equal.stand, equal.raises) == (RelationKind.SAME, Stand.AGREE, False)
    assert set(equal.sources) == {"s1", "s3", "s8"}
    assert "several of them state that the two numbers do not always agree" in str(equal.detail)
    other = f"{number[:-1]}{9 if number[-1] != '9' else 8}" if number[-1].isdigit() else number.replace("1001", "1002")
    (unequal,) = standings(name, year, {"frame": number, "engine": other})
    assert (unequal.stand, unequal.raises) == (Stand.DISAGREE, True)


def test_before_1950_equal_is_the_question():
    """s3: 1937 to 1949 the two do not match."""
    (equal,) = standings(PRE, 1948, {"frame": "TF1234", "engine": "8-T-1234"})
    assert (equal.kind, equal.raises, equal.sources) == (RelationKind.NEVER_EQUAL, True, ("s3",))
    (unequal,) = standings(PRE, 1948, {"frame": "TF4321", "engine": "8-T-1234"})
    assert (unequal.stand, unequal.raises) == (Stand.DIFFER, False)
