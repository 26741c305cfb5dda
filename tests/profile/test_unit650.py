"""The profile of the 650 unit twins against the pages that it is compiled from.

The figures were copied from these pages, not from the profile:
"Dating Your Triumph", triumph-tiger-90.com (here s1); "What year is your Triumph?",
tonup-nc.blogspot.com, April 2015 (s2); Dating page, triplesonline.com (s4); B50 engine number code,
classicmotorcycles.org.uk (s10).
"""

import pytest

from inspector.profile.expected import expected
from inspector.profile.read import read_profile
from inspector.profile.words import Gives, RelationKind, SourceKind
from inspector.resource import sample_profiles

NUMBERED = ("frame", "engine")
AGREED = [(1963, 101, 5824), (1964, 5825, 13374), (1965, 13375, 24874), (1966, 24875, 44393), (1967, 44394, 66245)]
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


def test_nothing_stops_its_use(got):
    assert [str(p) for p in got.problems if p.stops] == []


@pytest.mark.parametrize("place", NUMBERED)
@pytest.mark.parametrize(("year", "first", "last"), AGREED)
def test_each_agreed_block_has_the_first_and_last_number_of_s1_and_s2(profile, place, year, first, last):
    assert (year, first, last, {"s1", "s2"}) in rows(profile, place)


@pytest.mark.parametrize("place", NUMBERED)
@pytest.mark.parametrize(
    "row",
    [
        (1968, 66246, 85903, {"s1"}),  # s1 ends the 1968 block here
        (1968, 66246, 90282, {"s2"}),  # s2 runs it on to the last DU number
        (1969, 85904, 90282, {"s1"}),  # s1 alone gives the rest to 1969
    ],
)
def test_the_two_ends_of_1968_are_both_kept(profile, place, row):
    assert row in rows(profile, place)


@pytest.mark.parametrize("place", NUMBERED)
def test_there_are_no_blocks_beyond_those_of_the_sources(profile, place):
    assert len(rows(profile, place)) == len(AGREED) + 3
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
    beyond = [code for code in found if code.model_year > profile.model_years[1]]
    assert all("after this profile" in code.means for code in beyond)


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
    (relation,) = profile.relations
    assert relation.kind is RelationKind.SAME
    assert set(relation.sources) == {"s1", "s3", "s8"}
    assert "s9" in relation.note


def test_every_source_has_an_address_and_none_is_memory(profile):
    assert all(source.address for source in profile.sources)
    assert SourceKind.MEMORY not in {source.kind for source in profile.sources}


def test_every_form_with_years_says_who_says_so(profile):
    dated = [form for item in profile.items() for form in item.variants if form.years]
    assert len(dated) > 20
    assert [form.id for form in dated if not form.sources] == []


def test_a_form_that_nobody_documents_dates_nothing(profile):
    bare = [form for item in profile.items() for form in item.variants if not form.sources]
    assert bare
    assert {form.name for form in bare} == {"Standard fitting, form not documented here"}


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
        ("rear-brake", 1966, []),  # named for one year, which dates no part
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize("wheel", ["front-rim", "rear-rim"])
def test_rim_limits_are_the_official_ones_and_the_looser_guide_is_told(profile, wheel):
    """gov.uk, inspection manual for motorcycles, 5: 4 mm for steel, 2 mm for alloy rims."""
    item = profile.item_by_id[wheel]
    (measure,) = item.measures
    assert {n.variant: (n.value, n.plus) for n in measure.nominals} == {"steel": (0, 4), "alloy": (0, 2)}
    assert all("s111" in n.sources for n in measure.nominals)
    assert "under 5 mm" in item.note


def test_the_walk_fits_the_visit(profile):
    """Twenty to forty minutes with a seller present is common practice, no source."""
    items = list(profile.items())
    assert 40 <= len(items) <= 60
    assert 20 <= sum(item.minutes for item in items) <= 40


def test_every_spot_lies_on_the_drawing(profile):
    spots = [item.spot for item in profile.items()]
    assert all(spot and 10 <= spot.x <= 2230 and 70 <= spot.y <= 1120 for spot in spots)
    assert len({(spot.x, spot.y) for spot in spots}) == len(spots)
