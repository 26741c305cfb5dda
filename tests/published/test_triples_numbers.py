"""BSA and Triumph triples: how frame and engine stand, and what their parts say of the year.

Typed from these pages, not from the profile:

s4   Dating page, triplesonline.com
s10  "B50 engine number code", classicmotorcycles.org.uk
s42  "Machine identification", bsaownersclub.co.uk
s44  Rocket 3 and Trident, an encyclopaedia: drum to 1971, disc in front 1972 to 1975
t161 T160 model page, tr3oc.com: built November 1974 to April 1976
t164 "1975 Trident", webbikeworld.com
t165 "1974 Trident", classicbritishmotorcycles.net
t166 "Late T150", Real Classic, 30 September 2017
The letters themselves are checked with those of the twins.
"""

import pytest

from inspector.judgement.proposal import propose
from inspector.judgement.relations import Stand
from inspector.profile.expected import expected
from inspector.profile.words import RelationKind
from inspector.record.words import Mark
from tests.published.lists import profile_of, said, standings

TRIPLES = "bsa-triumph-triples"
BSA_YEARS = {"C": 1969, "D": 1970, "E": 1971, "G": 1972, "H": 1973, "J": 1974}  # s10
# s10: model and the seasons in which it was made.
SINGLES = {"B25SS": (1971, 1971), "B25T": (1971, 1971), "B50SS": (1971, 1972), "B50T": (1971, 1972),
           "B50MX": (1971, 1973)}  # fmt: skip


@pytest.mark.parametrize(("letter", "year"), BSA_YEARS.items())
def test_the_year_letters_of_the_bsa_page(letter, year):
    answer = said(TRIPLES, "engine", f"A75R A{letter}00500")  # serial made up
    assert answer.years == (year,)
    assert "s10" in answer.sources


@pytest.mark.parametrize(("model", "seasons"), SINGLES.items())
def test_the_singles_of_the_bsa_page_are_known_in_their_seasons(model, seasons):
    letters = {year: letter for letter, year in BSA_YEARS.items()}
    for year in range(seasons[0], seasons[1] + 1):
        answer = said(TRIPLES, "frame", f"{model} A{letters[year]}00500")  # serial made up
        assert answer.years == (year,)
        assert {hit.models for hit in answer.hits} == {(model,)}


def test_a_season_of_the_bsa_page_runs_from_august_to_july():
    """s10 and s42: the 1971 model was built from August 1970 to July 1971."""
    first, last = (said(TRIPLES, "engine", f"{month}E00500").hits[0].built for month in "JH")
    assert (first, last) == ((("1970-08", "1970-08"),), (("1971-07", "1971-07"),))


def test_before_the_1969_season_equal_numbers_are_the_question():
    """s42: rarely equal; a pair of 1946 quoted as right, XB32-101 with XB31-101, differs in its prefix (s43)."""
    (found,) = standings(TRIPLES, 1968, {"frame": "XB31-101", "engine": "XB31-101"})
    assert (found.kind, found.stand, found.raises) == (RelationKind.NEVER_EQUAL, Stand.AGREE, True)
    assert found.sources == ("s42",)


def test_from_the_1969_season_engine_and_frame_are_stamped_alike():
    """s10 and s4."""
    (alike,) = standings(TRIPLES, 1971, {"frame": "A75R AE01234", "engine": "A75R AE01234"})
    assert (alike.kind, alike.stand, alike.raises) == (RelationKind.SAME, Stand.AGREE, False)
    assert set(alike.sources) == {"s10", "s4"}
    (unlike,) = standings(TRIPLES, 1971, {"frame": "A75R AE01234", "engine": "A75R AE01235"})
    assert (unlike.stand, unlike.raises) == (Stand.DISAGREE, True)


def test_the_pages_warning_about_its_own_letters_is_told():
    """s10 calls the letters only a rough guide."""
    (rule,) = profile_of(TRIPLES).place_by_id["engine"].rules
    assert "only a rough guide" in rule.note


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("front-brake", 1971, {"twin-leading"}),  # s44: 1968 to 1971
        ("front-brake", 1972, {"disc"}),  # s44: from 1972
        ("rear-brake", 1971, {"conical"}),  # t164: from 1971
        ("rear-brake", 1976, {"disc"}),  # t161, t164: T160
        ("gear-side", 1974, {"right"}),  # t165: the last with the right
        ("gear-side", 1976, {"left"}),  # t161, t164
        ("electric-starter", 1974, {"none"}),  # t165
        ("electric-starter", 1976, {"electric"}),  # t161, t164
        ("gear-side", 1975, {"right", "left"}),  # t166: a T150 built in October 1974; t161: T160 from November
    ],
)
def test_what_the_pages_have_for_a_year(item, year, forms):
    profile = profile_of(TRIPLES)
    assert {form.id for form in expected(profile.item_by_id[item], year)} == forms


@pytest.mark.parametrize(
    ("item", "form"), [("rear-brake", "disc"), ("gear-side", "left"), ("electric-starter", "electric")]
)
def test_parts_of_the_t160_contradict_a_machine_dated_1973(item, form):
    """t161 and t164: no T160 before November 1974."""
    offered = propose(profile_of(TRIPLES), item, form, 1973)
    assert offered is not None
    assert offered.mark is not Mark.PASS


def test_a_t150_of_october_1974_may_carry_parts_of_the_t160():
    """t166: kick-starter and clutch outer of the T160; allowed, and told."""
    (trap,) = [one for one in profile_of(TRIPLES).traps if "t166" in one.sources]
    assert "kick-start" in trap.items
    assert trap.years.holds(1975)
    assert "no proof" in trap.text
    assert said(TRIPLES, "frame", "T150V NK00500").hits[0].built == (("1974-10", "1974-10"),)  # serial made up


@pytest.mark.parametrize(("form", "sources"), [("upright", {"s44"}), ("leaning", {"s44", "t161"})])
def test_the_lean_is_told_without_an_angle_as_the_sources_differ(form, sources):
    """s44 says 15 degrees, t161 12."""
    (lean,) = [one for one in profile_of(TRIPLES).item_by_id["cylinders"].variants if one.id == form]
    assert sources <= set(lean.sources)
    assert "degree" not in f"{lean.name} {lean.tell}"
