"""The profile of the pre-unit twins against the pages that it is compiled from.

The figures were copied from these pages, not from the profile: "Triumph Frame Numbers", tomcc.org (here s3); "What
year is your Triumph?", tonup-nc.blogspot.com (s2); "1960 T120", justbikes.com.au (s19); Bonneville, an encyclopaedia
(s20); "1963 Bonneville unit", fedrotriple.it (s21); Amal, an encyclopaedia (t157).
"""

import pytest

from inspector.judgement.proposal import propose
from inspector.profile.expected import expected
from inspector.profile.read import read_profile
from inspector.profile.words import RelationKind
from inspector.record.words import Mark
from inspector.resource import sample_profiles


@pytest.fixture(scope="module")
def profile():
    got = read_profile(sample_profiles() / "triumph-pre-unit")
    assert got.profile is not None, [str(p) for p in got.problems]
    return got.profile


def rule(profile, place, name):
    (found,) = [one for one in profile.place_by_id[place].rules if one.id == name]
    return found


@pytest.mark.parametrize(("place", "own"), [("frame", "frame-letters"), ("engine", "year-first")])
def test_each_place_knows_the_four_lists_and_what_stands_there_alone(profile, place, own):
    """s2: letters on the frame only; s3: the year first on the engine of 1937 to 1949."""
    assert [one.id for one in profile.place_by_id[place].rules] == ["n-na", "plain", "zero", "d", own]


def test_the_misprinted_month_of_1964_is_left_out_and_told(profile):
    """s3 prints 1964 as the end of a block of 1952."""
    (row,) = [row for row in rule(profile, "frame", "n-na").ranges if row.first == 15809]
    assert (row.built_from, row.built_to) == ("1951-11", None)
    assert "misprint" in row.note


def test_a_start_that_could_not_be_seen_whole_is_told_and_no_row(profile):
    """s2 begins 1950 at "100..", the rest of which was not seen."""
    assert "at 100" in rule(profile, "frame", "n-na").note
    assert all(row.sources == ("s3",) for row in rule(profile, "frame", "n-na").ranges)


def test_the_years_of_the_relations_meet_without_overlap(profile):
    """s3: unequal 1937 to 1949; s1, s3, s8: equal from 1950; s9 doubts it."""
    found = [(one.kind, one.years.first, one.years.last, set(one.sources)) for one in profile.relations]
    assert found == [
        (RelationKind.NEVER_EQUAL, 1937, 1949, {"s3"}),
        (RelationKind.SAME, 1950, 1962, {"s1", "s3", "s8"}),
        (RelationKind.UNKNOWN, 1950, 1962, {"s9"}),
    ]


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("frame-type", 1960, ["duplex"]),  # s3, s19
        ("frame-type", 1959, ["not-duplex"]),
        ("front-mudguard", 1959, ["deep"]),  # s19: T120
        ("front-mudguard", 1960, ["slim-alloy"]),
        ("carburettors", 1959, ["twin-monobloc"]),  # s19, s20: 1 3/16 in
        ("carburettors", 1952, []),  # t157: type 276 to about 1955, said of the supplier and of no model
        ("carburettors", 1957, []),  # nothing was found
        ("engine-unit", 1962, ["separate"]),  # s21: the unit engine of 1963
        ("instruments", 1962, ["chronometric"]),  # velobanjogent.blogspot.com: magnetic for the 1964 season
        ("headlamp", 1959, []),  # named for one year, which dates no part
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize(
    ("item", "form"), [("engine-unit", "unit"), ("cylinder-head", "nine"), ("frame-type", "unit-frame")]
)
def test_parts_of_the_unit_twins_are_of_another_model(profile, item, form):
    """s21: they came in 1963."""
    offered = propose(profile, item, form, 1960)
    assert offered is not None
    assert offered.mark is Mark.FAIL


def test_letters_that_were_never_stamped_are_a_trap(profile):
    """ "1960 TR7 aka T120", showandgo.blogspot.com: all are stamped T120; A and B never."""
    (trap,) = [one for one in profile.traps if "s18" in one.sources]
    assert {"TR7/A", "TR7/B", "T120"} <= set(trap.text.replace(",", "").replace(".", "").split())
    known = {code.code for code in rule(profile, "frame", "d").segments[0].codes}
    assert "T120" in known
    assert not {code for code in known if code.startswith("TR7") or code.endswith(("A", "B"))}
