"""The profile of the 350 and 500 unit twins against the pages that it is compiled from.

The figures were copied from these pages, not from the profile: "What year is your Triumph?", tonup-nc.blogspot.com
(here s2); "Triumph Frame Numbers", tomcc.org (s3); SSM and RSM instruments, velobanjogent.blogspot.com (t152).
"""

import pytest

from inspector.profile.expected import expected
from inspector.profile.read import read_profile
from inspector.resource import sample_profiles


@pytest.fixture(scope="module")
def profile():
    got = read_profile(sample_profiles() / "triumph-unit-500")
    assert got.profile is not None, [str(p) for p in got.problems]
    return got.profile


@pytest.mark.parametrize("place", ["frame", "engine"])
def test_there_are_twelve_rows_of_s2_and_six_of_s3(profile, place):
    """s2 runs from 1957 to 1968; s3 was seen from 1957 to 1962."""
    rows = profile.place_by_id[place].rules[0].ranges
    years = {source: [row.model_year for row in rows if row.sources == (source,)] for source in ("s2", "s3")}
    assert years == {"s2": list(range(1957, 1969)), "s3": list(range(1957, 1963))}
    assert {row.prefix for row in rows} == {"H"}


def test_where_one_list_stands_alone_it_says_so(profile):
    alone = [row for row in profile.place_by_id["engine"].rules[0].ranges if row.model_year >= 1963]
    assert len(alone) == 6
    assert {row.note for row in alone} == {"One list only."}
    assert any("1963 to 1968 rest on one list" in one for one in profile.open_questions)


def test_letters_of_later_seasons_are_read_and_told_as_later(profile):
    scheme = profile.place_by_id["engine"].rules[1]
    (table,) = [segment for segment in scheme.segments if segment.id == "year"]
    assert all(code.means.endswith("after this profile") for code in table.codes)


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("engine-unit", 1957, ["unit"]),  # s2, s3: heading of the H numbers
        (
            "instruments",
            1963,
            ["magnetic", "chronometric"],
        ),  # t152: from the end of that season
        ("instruments", 1964, ["magnetic"]),
        ("front-brake", 1964, []),  # nothing was found
        ("tank-colour", 1964, []),
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms
