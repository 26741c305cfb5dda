"""The profile of the Z1 and its followers against the pages that it is compiled from.

Copied from these pages, not from the profile: "Kawasaki Z models 1973-84", erdstall.net/Z (s47); "Kawasaki 900
Super 4", blog.kcg.ne.jp/kawasakiz, October 2009 (s46); the same blog on numbers (s51, s52, s57) and on the Z2 (t49);
"Lineage of Z1 and Z2", young-machine.com (s54); "900 Super4 details", autoby.jp (s56); "1976 KZ900",
motorcycleclassics.com (s58); "Z1 reviews", cyclechaos.com (s55); "Z900 A4" and "KZ900 A4 in brown", kb-style.fr
(t47, t48); "Date codes", freewebs.com/750rs (t52).
"""

import pytest

from inspector.judgement.proposal import propose
from inspector.profile.expected import expected
from inspector.profile.words import RelationKind
from inspector.record.words import Mark
from tests.profile import compiled


@pytest.fixture(scope="module")
def got():
    return compiled.read("kawasaki-z1")


@pytest.fixture(scope="module")
def profile(got):
    return got.profile


def form_of(profile, item, form):
    (found,) = [one for one in profile.item_by_id[item].variants if one.id == form]
    return found


@pytest.mark.parametrize("check", compiled.CHECKS)
def test_it_is_what_a_compiled_profile_has_to_be(profile, check):
    check(profile)


def test_its_sources_are_named_and_used_and_read_by_their_titles(got):
    compiled.sources_are_named_and_used(got)
    compiled.people_read_titles_and_no_ids(got)


@pytest.mark.parametrize("place", ["frame", "engine"])
def test_the_lists_of_the_900_give_starts_only(profile, place):
    """s47, and s48 with its wording; s46 has seen frames up to the 019000s."""
    rows = profile.place_by_id[place].rules[0].ranges
    starts = {(row.sources[0], row.model): (row.first, row.last) for row in rows}
    assert starts == {
        ("s47", "Z1"): (1, None), ("s46", "Z1"): (1, 19999), ("s47", "Z1-A"): (20001, None),
        ("s48", "Z1-A"): (20001, None), ("s47", "Z1-B"): (47500, None), ("s48", "Z1-B"): (47500, None),
    }  # fmt: skip
    assert all("single source" in row.note for row in rows if row.model in ("Z1-A", "Z1-B"))
    assert {row.model for row in rows if row.inferred} == {"Z1"}


def test_where_the_a4_begins_is_left_open(profile):
    (rule,) = [one for one in profile.place_by_id["frame"].rules if one.id == "z900-a4"]
    assert [row.model_year or row.years for row in rule.ranges] == [None]
    assert "085701" not in " ".join([rule.note, *profile.open_questions])
    assert any("1976" in one and "not found" in one for one in profile.open_questions)


def test_frame_and_engine_are_close_and_never_asked_to_be_equal(profile):
    """s51, s52: paired as they came, plus or minus; s51: an owner's pair 210 apart."""
    (close,) = profile.relations
    assert (close.kind, close.usual_gap) == (RelationKind.CLOSE, 210)
    assert set(close.sources) == {"s51", "s52", "s53"}
    assert "plus or minus" in close.note
    assert "nowhere printed" in close.note
    assert not close.years.holds(1976)


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("engine-finish", 1973, ["black"]),  # s54, s47: black only on the Z1
        ("engine-finish", 1974, ["silver"]),
        ("chain", 1974, ["oiler"]),  # s47, s54, s55: O-ring from the Z1-B
        ("chain", 1975, ["o-ring"]),
        ("tank-badge", 1973, ["small"]),  # s54, s47: larger in 1974
        ("tank-badge", 1974, ["large"]),
        ("left-cover", 1975, ["changed"]),  # s54, s47
        ("tachometer", 1974, ["late"]),  # s47, s56
        ("headlamp-ears", 1974, ["joint"]),  # s56
        ("speedometer-marks", 1975, ["twenties"]),  # s56, s47
        ("carburettors", 1975, ["twenty-eight"]),  # s58, s54
        ("carburettors", 1976, ["twenty-six"]),  # t47
        ("rear-sprocket", 1976, ["thirty-three"]),  # t47
        ("tail-lamp", 1976, ["rectangular"]),  # t47
        ("tank-colour", 1972, ["orange", "yellow"]),  # s47, s54
        ("tank-colour", 1975, ["red", "blue"]),  # s47, s54
        ("tank-colour", 1976, ["dark-green", "dark-brown"]),  # t47, t48
        ("front-brake", 1975, ["single"]),  # s58
        ("front-brake", 1976, ["single", "twin"]),  # s58, s55
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize(
    ("form", "figure", "market"),
    [("na", "147", "North America"), ("eu", "149", "Europe"), ("jp", "202", "Japan")],
)
def test_the_figure_on_the_carburettors_names_the_market(profile, form, figure, market):
    """s57."""
    found = form_of(profile, "carburettor-stamp", form)
    assert (found.markets, found.sources, figure in found.name) == ((market,), ("s57",), True)


@pytest.mark.parametrize(
    ("form", "first", "last"), [("none", None, 6000), ("small", 6001, 9000), ("suffix", 9001, None)]
)
def test_the_silencer_stamp_changes_by_frame_number(profile, form, first, last):
    """s57: none up to about 6000, small to about 9000, then 36S."""
    (span,) = form_of(profile, "silencer-stamp", form).serials
    assert (span.place, span.first, span.last) == ("frame", first, last)
    assert "bout frame" in form_of(profile, "silencer-stamp", form).note


@pytest.mark.parametrize(
    ("item", "form", "years", "who"),
    [
        ("tank-colour", "yellow", (1973, 1973), "t48"),  # from April 1973, where s47 and s54 have 1972-73
        ("front-brake", "single", (None, 1975), "s55"),  # a second disc on every A4, where s58 names markets
    ],
)
def test_where_pages_disagree_both_are_kept(profile, item, form, years, who):
    found = form_of(profile, item, form)
    (other,) = found.other_years
    assert ((other.years.first, other.years.last), other.sources) == (years, (who,))
    assert found.disputed


def test_a_black_engine_of_1975_is_of_the_wrong_year(profile):
    """s54, s47."""
    assert propose(profile, "engine-finish", "black", 1975).mark is Mark.FAIL
    assert propose(profile, "engine-finish", "black", 1973).mark is Mark.PASS


@pytest.mark.parametrize("place", ["swinging-arm", "torque-arm", "rear-unit", "brake-disc"])
def test_stamped_dates_date_the_part_and_lag_two_months_at_most(profile, place):
    """t52: normally 0 to 2 months older than the machine."""
    found = profile.place_by_id[place]
    assert (found.dates_part, found.identity, found.usual_lag_months) == (True, False, 2)


@pytest.mark.parametrize(
    ("trap", "source", "words"),
    [
        ("hyphen", "s46", "no hyphen"),
        ("five-figures", "s46", "five figures"),
        ("japan-stamp", "s51", "authority can be lawful"),
        ("restored", "s51", "hardly at all"),
        ("few-codes", "t52", "proves nothing"),
        ("z2b", "t49", "without firm basis"),
    ],
)
def test_what_has_misled_people_is_told(profile, trap, source, words):
    (found,) = [one for one in profile.traps if one.id == trap]
    assert found.sources == (source,)
    assert words in found.text


def test_each_page_is_graded_as_what_it_is(profile):
    """s47 is a specialist's page; s48, motorcyclespecs.co.za, has its wording and is a general one; s54 is press."""
    assert [profile.source_by_id[one].kind.value for one in ("s47", "s48", "s54")] == ["specialist", "general", "press"]


def test_figures_stamped_on_carburettors_date_nothing(profile):
    """s57 names 147, 149 and 202 by market, and no year."""
    forms = profile.item_by_id["carburettor-stamp"].variants
    assert {form.name[:3]: form.markets for form in forms} == {
        "147": ("North America",), "149": ("Europe",), "202": ("Japan",),
    }  # fmt: skip
    assert all(form.years is None for form in forms)


def test_no_part_is_told_of_that_only_another_makers_page_knows(profile):
    """The machine has wet-sump lubrication and no oil tank; the froth tower is that of a small Triumph (t68)."""
    assert {form.id for form in profile.item_by_id["oil-tank"].variants} == {"standard"}
