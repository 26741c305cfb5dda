"""The profile of the 650 and 750 unit twins against the pages that it is compiled from.

The figures were copied from these pages, not from the profile:
"Dating Your Triumph", triumph-tiger-90.com (here s1); "What year is your Triumph?",
tonup-nc.blogspot.com, April 2015 (s2); Dating page, triplesonline.com (s4); B50 engine number code,
classicmotorcycles.org.uk (s10).
"""

import pytest

from inspector.judgement.proposal import propose
from inspector.profile.expected import expected
from inspector.profile.read import read_profile
from inspector.profile.words import Gives, RelationKind
from inspector.record.words import Mark
from inspector.resource import sample_profiles

NUMBERED = ("frame", "engine")
AGREED = [(1963, 101, 5824), (1964, 5825, 13374), (1965, 13375, 24874), (1967, 44394, 66245)]
MONTHS = dict(zip("ABCDEGHJKNPX", range(1, 13), strict=True))
YEARS = {"C": 1969, "D": 1970, "E": 1971, "G": 1972, "H": 1973, "J": 1974, "K": 1975, "N": 1976,
         "P": 1977, "X": 1978, "A": 1979, "B": 1980}  # fmt: skip


@pytest.fixture(scope="module")
def got():
    return read_profile(sample_profiles() / "triumph-unit-650")


@pytest.fixture(scope="module")
def profile(got):
    assert got.profile is not None, [str(p) for p in got.problems]
    return got.profile


def rule(profile, place, name):
    (found,) = [one for one in profile.place_by_id[place].rules if one.id == name]
    return found


def rows(profile, place):
    return [(r.model_year, r.first, r.last, set(r.sources)) for r in rule(profile, place, "du").ranges]


def codes(profile, place, gives):
    (table,) = [s for s in rule(profile, place, "month-year").segments if s.gives is gives]
    return table.codes


@pytest.mark.parametrize("place", NUMBERED)
@pytest.mark.parametrize(("year", "first", "last"), AGREED)
def test_each_agreed_block_has_the_first_and_last_number_of_s1_and_s2(profile, place, year, first, last):
    assert (year, first, last, {"s1"}) in rows(profile, place)
    assert (year, first, last, {"s2"}) in rows(profile, place)


@pytest.mark.parametrize("place", NUMBERED)
@pytest.mark.parametrize(
    "row",
    [
        (1966, 24876, 44393, {"s1"}),  # s1 prints the start one higher
        (1966, 24875, 44393, {"s2"}),
        (1968, 66246, 85903, {"s1"}),  # s1 ends the 1968 block here
        (1968, 66246, 90282, {"s2"}),  # s2 runs it on to the last DU number
        (1969, 85904, 90282, {"s1"}),  # s1 alone gives the rest to 1969
    ],
)
def test_where_the_lists_differ_each_keeps_its_own_ends(profile, place, row):
    assert row in rows(profile, place)


@pytest.mark.parametrize("place", NUMBERED)
def test_there_are_no_blocks_beyond_those_of_the_sources(profile, place):
    assert len(rows(profile, place)) == 2 * len(AGREED) + 5
    assert {r.prefix for r in rule(profile, place, "du").ranges} == {"DU"}


@pytest.mark.parametrize("place", NUMBERED)
def test_the_month_letters_are_those_of_s4_and_s10(profile, place):
    found = codes(profile, place, Gives.MONTH)
    assert {code.code: code.month for code in found} == MONTHS
    assert all({"s2", "s4", "s6", "s10"} <= set(code.sources) for code in found)


@pytest.mark.parametrize("place", NUMBERED)
def test_the_year_letters_are_those_of_s2_and_s4_to_the_end_of_the_scheme(profile, place):
    found = codes(profile, place, Gives.MODEL_YEAR)
    assert {code.code: code.model_year for code in found} == YEARS
    assert all({"s2", "s4", "s6"} <= set(code.sources) for code in found)
    assert max(YEARS.values()) == profile.model_years[1]


@pytest.mark.parametrize("place", NUMBERED)
def test_letters_outside_the_table_are_named_as_never_used(profile, place):
    """All other letters of the alphabet: inferred from the whole table that s2, s4 and s6 print."""
    scheme = rule(profile, place, "month-year")
    assert set(scheme.never_used) == set("ABCDEFGHIJKLMNOPQRSTUVWXYZ") - set(MONTHS)
    assert scheme.month_before_season  # s4, s5, s10: August to December lie in the year before
    assert profile.season_starts == 8


@pytest.mark.parametrize("place", NUMBERED)
@pytest.mark.parametrize("name", ["du", "month-year"])
def test_the_model_code_is_read_before_and_after_the_number(profile, place, name):
    """s4 prints "T160 KK06100", s2 "NC00100 T120R"."""
    orders = rule(profile, place, name).orders
    assert {order.index("model") for order in orders} == {0, len(orders[0]) - 1}


def test_the_extra_t_of_1970_is_known_on_the_engine_only(profile):
    """T120RT profile, tomcc.org: stamped on the engine, never on the frame."""
    known = {place: {code.code for code in rule(profile, place, "month-year").segments[0].codes} for place in NUMBERED}
    assert known["engine"] - known["frame"] == {"T120RT"}
    assert known["frame"] < known["engine"]


def test_frame_and_engine_left_equal_and_the_other_opinion_is_told(profile):
    same, doubt = profile.relations
    assert (same.kind, set(same.sources)) == (RelationKind.SAME, {"s1", "s3", "s8"})
    assert (doubt.kind, set(doubt.sources)) == (RelationKind.UNKNOWN, {"s9"})
    assert "do not always agree" in doubt.note


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("carburettors", 1963, ["monobloc"]),  # fedrotriple.it: Monobloc on the unit engine of 1963
        ("carburettors", 1968, ["concentric"]),  # an advertisement of a 1968 machine
        ("carburettors", 1970, ["concentric-plugs"]),  # easternstatesspeedway.co.nz: drain plugs
        ("front-brake", 1966, ["single-leading"]),  # motorcyclespecs.co.za, data of 1966
        ("front-brake", 1968, ["twin-leading"]),  # the same advertisement
        ("engine-plates", 1970, ["triangular"]),  # easternstatesspeedway.co.nz
        ("breather", 1969, ["timed"]),  # the same page: gone in 1970
        ("front-brake", 1972, ["conical"]),  # "1971" and "1973 Bonneville", classicbritishmotorcycles.net
        ("front-brake", 1973, ["conical", "disc"]),  # "1973 Bonneville"; an encyclopaedia has drums on the first
        ("front-brake", 1974, ["disc"]),
        ("rear-brake", 1976, ["disc"]),  # "1976 Bonneville"; an encyclopaedia has it in 1975
        ("rear-brake", 1975, ["conical", "disc"]),  # so both stand in 1975
        ("gear-side", 1976, ["left"]),  # the same two
        ("gear-lever", 1973, ["five"]),  # "1973 Bonneville": standard
        ("gear-lever", 1971, ["four", "five"]),  # "1971 Bonneville": five optional late in the season
        ("frame-type", 1970, ["separate-oil"]),  # "1971 Bonneville": oil-bearing frame new
        ("frame-type", 1971, ["oil-bearing"]),
        (
            "instruments",
            1963,
            ["magnetic", "chronometric"],
        ),  # t152: from the end of that season
        ("instruments", 1964, ["magnetic"]),
        ("front-tyre", 1966, []),  # named for one year, which dates no part
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize(
    ("item", "form", "first", "last"),
    [
        ("gear-side", "left", 1975, None),  # an encyclopaedia: left change and rear disc in 1975
        ("gear-side", "right", None, 1974),
        ("rear-brake", "disc", 1975, None),
        ("rear-brake", "conical", 1971, 1974),
        ("front-brake", "conical", 1971, 1973),  # the same: drums on the first 724 cc machines of 1973
    ],
)
def test_the_years_of_the_source_that_differs_are_kept(profile, item, form, first, last):
    (found,) = [one for one in profile.item_by_id[item].variants if one.id == form]
    (other,) = found.other_years
    assert (other.years.first, other.years.last) == (first, last)


def test_july_can_open_the_season_from_1976(profile):
    """thebonnevilleshop.com: the 1978 season opens with HX00100, and H is July."""
    for place in NUMBERED:
        scheme = rule(profile, place, "month-year")
        assert (scheme.double_months, scheme.double_months_from) == ((7,), 1976)


def test_the_limits_of_what_is_known_are_said(profile):
    told = " ".join(profile.open_questions)
    assert "Numbers after 1980: not found" in told
    assert "DU85904 to DU90282" in told


@pytest.mark.parametrize(
    ("year", "mark"),
    [
        (1974, Mark.FAIL),  # neither source has a disc at the rear so early
        (1975, Mark.DOUBT),  # an encyclopaedia has it, "1976 Bonneville" does not
        (1976, Mark.PASS),  # both have it
    ],
)
def test_a_form_is_doubtful_only_in_the_years_on_which_its_sources_differ(profile, year, mark):
    offered = propose(profile, "rear-brake", "disc", year)
    assert offered is not None
    assert offered.mark is mark
