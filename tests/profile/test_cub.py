"""The profile of the Terrier and Cub against the pages that it is compiled from.

The figures were copied from these pages, not from the profile: "Dating Your Triumph", triumph-tiger-90.com (here s1);
"No.10 model years: Triumph", cafe-british-bike.jp (s9); "1956 Cub", smokeandthrottle.com (t69); "TR20 trials Cub",
gaukmotors.co.uk (t70); "Competition Cub T20C", tigercubandterrier.com (t68); "1960 T20S", motorcycleclassics.com (t71).
"""

import pytest

from inspector.profile.expected import expected
from inspector.profile.read import read_profile
from inspector.profile.words import RelationKind
from inspector.resource import sample_profiles


@pytest.fixture(scope="module")
def profile():
    got = read_profile(sample_profiles() / "triumph-cub")
    assert got.profile is not None, [str(p) for p in got.problems]
    return got.profile


@pytest.mark.parametrize("place", ["frame", "engine"])
def test_one_list_has_ends_and_the_other_starts_only(profile, place):
    rows = profile.place_by_id[place].rules[0].ranges
    assert all((row.last is None) is (row.sources == ("s9",)) for row in rows)
    assert [row.first for row in rows if row.sources == ("s9",) and row.model_year == 1965] == [99733, 100013]
    (round_again,) = [row for row in rows if row.wraps]
    assert (round_again.first, round_again.last, round_again.sources) == (99720, 2718, ("s1",))


def test_the_two_new_starts_of_1966_to_1970_date_nothing(profile):
    """s1: the count began again at 101 and at 10050; the ranges are unknown."""
    late = profile.place_by_id["engine"].rules[1]
    assert (late.years.first, late.years.last) == (1966, 1970)
    assert [(row.first, row.last, row.model_year, row.years) for row in late.ranges] == [
        (101, None, None, None),
        (10050, None, None, None),
    ]
    assert {row.says for row in late.ranges} == {"1966 to 1970: the number gives no year"}
    assert "more than one engine" in late.not_done
    assert "101 and at 10050" in late.note


def test_equal_numbers_are_told_up_to_1965_only(profile):
    kinds = {year: {one.kind for one in profile.relations if one.years.holds(year)} for year in (1960, 1968)}
    assert kinds == {1960: {RelationKind.SAME, RelationKind.UNKNOWN}, 1968: {RelationKind.UNKNOWN}}


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("frame-type", 1956, ["plunger"]),  # t69, t70: swinging arm from 1957
        ("frame-type", 1957, ["swinging-arm"]),
        ("crankcase", 1961, ["early"]),  # t70: bottom end redesigned for 1962
        ("crankcase", 1962, ["late"]),
        ("instruments", 1963, ["magnetic"]),  # velobanjogent.blogspot.com: 60 mm from 1963 to 250 cc
        ("headlamp", 1956, []),  # nacelle on early road models, its last year not found
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize(
    ("item", "form", "source"),
    [
        ("front-wheel", "nineteen", "t68"),
        ("rear-tyre", "eighteen", "t68"),
        ("fork", "long", "t68"),
        ("exhaust", "high", "t68"),
        ("undershield", "shield", "t68"),
        ("oil-tank", "froth-tower", "t68"),
        ("fuel-tank", "terrier", "t68"),
        ("points", "energy-transfer", "t71"),
        ("front-brake", "five-and-half", "t71"),
        ("front-tyre", "size-t20s", "t71"),
    ],
)
def test_marks_of_one_model_are_told_with_their_page_and_date_no_other(profile, item, form, source):
    (found,) = [one for one in profile.item_by_id[item].variants if one.id == form]
    assert source in found.sources
    assert found.years is None
    assert "T20" in found.note


def test_all_cubs_keep_the_inch_threads(profile):
    """ "Cub fasteners", bantamcub.co.uk."""
    assert "t73" in profile.item_by_id["fasteners"].sources
    assert "inch threads" in profile.item_by_id["fasteners"].note


def test_trials_cubs_of_a_dealer_are_a_trap(profile):
    """t70: sixty from Mountain models of 1967, nine known, confirmed only by the club."""
    (trap,) = [one for one in profile.traps if "t70" in one.sources]
    assert {"60", "1967;", "nine"} <= set(trap.text.split())
