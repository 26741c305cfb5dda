"""The profile of the CB750 four against the pages that it is compiled from.

Copied from these pages, not from the profile: "CB750 K0 history", kb-style.fr (s62); the owners' register
cb750sandcastonly.com: "The so called K0" (s64), "Number spread" (s71, s72), "91 production distinctions" (s74),
"Interpret my engine number" (s83), "Build dates" (t41); "CB750 K1 of 1971", kb-style.fr (s65); "CB750 K2" and "CB750
K7", motorcyclespecs.co.za (s66, s67); "CB750F series", a Portuguese magazine (t37). Others are named beside.
"""

import pytest

from inspector.profile.expected import expected
from inspector.profile.words import RelationKind
from tests.profile import compiled


@pytest.fixture(scope="module")
def got():
    return compiled.read("honda-cb750")


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


# s74, frame numbers without their million: the last of the early kind, the first of the later one.
CHANGES = {
    "clamp-nuts": (2157, 2158), "hose-fittings": (2157, 2158), "hose-plate": (3950, 3951), "top-yoke": (3433, 3434),
    "kill-knob": (441, 442), "horn-mount": (3949, 3950), "choke-arm": (1120, 1121), "carburettor-vents": (302, 303),
    "caliper": (1256, 1257), "fuel-tap": (1937, 1938),
}  # fmt: skip


@pytest.mark.parametrize(("item", "ends"), CHANGES.items())
def test_changes_of_the_first_run_are_bound_to_frame_numbers(profile, item, ends):
    (early,), (late,) = form_of(profile, item, "early").serials, form_of(profile, item, "late").serials
    assert {early.place, late.place} == {"frame"}
    assert (early.last, late.first) == tuple(1_000_000 + end for end in ends)
    assert "s74" in form_of(profile, item, "early").sources


@pytest.mark.parametrize(
    ("item", "form", "place", "first", "last"),
    [
        ("gearbox-sprocket", "early", "engine", None, 1003527),  # s74: by the engine number
        ("exhaust", "early", "frame", None, 1004148),
        ("fuel-tank", "nineteen", "frame", None, 1000448),
        ("master-cylinder", "no-ring", "frame", None, 1002435),
        ("kill-switch", "no-words", "frame", None, 1000800),  # about
        ("seat", "ten", "frame", None, 1001081),  # seen to 1081, and 17 holes on some from 883
        ("seat", "seventeen", "frame", 1000883, None),
        ("crankcase", "early", "frame", 1000001, 1007414),  # s62, s63, s61
        ("crankcase", "die-cast", "frame", 1007415, None),  # s62, s64
    ],
)
def test_the_other_changes_of_the_first_run(profile, item, form, place, first, last):
    (span,) = form_of(profile, item, form).serials
    assert (span.place, span.first, span.last) == (place, first, last)


@pytest.mark.parametrize(
    ("item", "form", "value"),
    [("top-yoke", "early", 20.4), ("top-yoke", "late", 22.4), ("choke-arm", "early", 66), ("choke-arm", "late", 52)],
)
def test_what_the_register_measured_can_be_measured(profile, item, form, value):
    """s74, in millimetres."""
    (measure,) = profile.item_by_id[item].measures
    assert {n.variant: n.value for n in measure.nominals}[form] == value
    assert measure.unit.value == "mm"


def test_frame_and_engine_were_paired_at_random_and_two_hundred_is_usual(profile):
    """s71, s72; the limit of 300 has no known basis."""
    (close,) = profile.relations
    assert (close.kind, close.usual_gap, close.sources) == (RelationKind.CLOSE, 200, ("s71", "s72"))
    assert "no known basis" in close.note
    assert not close.years.holds(1972)


def test_starts_that_nobody_prints_are_not_given(profile):
    """K3 to K6 and K8: not found. K2 (s66) and K7 (s67): single source each."""
    rows = profile.place_by_id["frame"].rules[0].ranges
    assert sorted({row.first for row in rows}) == [1000001, 1007415, 1044650, 1053449, 2000001, 2700009]
    assert all(row.inferred for row in rows if row.first >= 2000001)
    assert any("K3, K4, K5, K6 and K8" in one for one in profile.open_questions)


@pytest.mark.parametrize(
    ("item", "year", "forms"),
    [
        ("fork-covers", 1970, ["colour"]),  # the007world.com; mc-web.jp; kb-style.co.uk
        ("fork-covers", 1972, ["chrome"]),  # s66; justbikes.com.au, K2
        ("front-mudguard", 1969, ["cut"]),  # the same three as of the fork covers
        ("front-mudguard", 1971, ["rolled"]),  # s65
        ("air-box", 1971, ["plastic"]),  # s65
        ("oil-filter", 1970, ["plain"]),  # s65: finned on the K1
        ("oil-filter", 1971, ["finned"]),
        ("cylinder-head", 1973, ["four-pillars"]),  # K3, motorcyclespecs.co.za; justbikes.com.au
        ("cylinder-head", 1974, ["one-pillar"]),  # K4, justbikes.com.au
        ("carburettors", 1970, ["four-cables"]),  # the007world.com
        ("tank-colour", 1971, ["k1"]),  # "CB750 K1 restored", kb-style.fr
        ("tank-colour", 1973, ["k3"]),  # K3, motorcyclespecs.co.za
        ("tank-colour", 1976, ["f1"]),  # t37; the K6 was not found
        ("tank-colour", 1977, ["f2", "k7"]),  # t37, s67
        ("left-cover", 1971, ["k1"]),  # s65
        ("left-cover", 1974, ["k4"]),  # "CB750 K4", motorcyclespecs.co.za
    ],
)
def test_what_is_expected_of_a_year_follows_the_pages(profile, item, year, forms):
    assert [form.id for form in expected(profile.item_by_id[item], year)] == forms


@pytest.mark.parametrize(
    ("item", "year"), [("rear-tyre", 1977), ("rear-brake", 1971), ("front-brake", 1975), ("instruments", 1969)]
)
def test_a_page_of_one_model_dates_nothing_for_the_others(profile, item, year):
    assert expected(profile.item_by_id[item], year) == ()


def test_the_olive_k3_is_told_as_of_the_usa_only(profile):
    """motorcyclespecs.co.za; justbikes.com.au, K4 review."""
    assert form_of(profile, "tank-colour", "k3").markets == ("US",)


@pytest.mark.parametrize(
    ("trap", "sources", "words"),
    [
        ("warranty-cases", ("s82",), "unnumbered die-cast case"),  # Motorcycle Classics, September/October 2017
        ("early-case-later", ("s62", "t43"), "around frame 17000"),  # s62; nippon-classic.de on frame 1010101
        ("k0-word", ("s64",), "did not use K0"),
        ("date-of-sale", ("t40", "t39"), "1041181"),  # Moto Revue Classic, 7 March 2019
        ("three-hundred", ("s71", "s72"), "no known basis"),
        ("engine-titles", ("s83",), "titled machines by the engine number"),
        ("faint-figures", ("s83",), "faint 9"),
        ("double-emblem", ("s84",), "no second wing emblem"),  # forums.sohc4.net, topic 7385
        ("no-plate", ("t41",), "from August 1969"),
        ("prototype-marks", ("t46",), "HM300"),  # motorcyclespecs.co.za, prototype
    ],
)
def test_what_has_misled_people_is_told(profile, trap, sources, words):
    (found,) = [one for one in profile.traps if one.id == trap]
    assert found.sources == sources
    assert words in found.text


def test_honda_codes_have_no_usual_lag(profile):
    """cb750sandcastonly.com, topic 1748: many codes are not understood."""
    coded = [place for place in profile.places if place.dates_part]
    assert {place.id for place in coded} == {"frame-plate", "cam-cover", "rear-unit"}
    assert {place.usual_lag_months for place in coded} == {None}


def test_threads_and_bolt_heads_are_told_and_not_judged(profile):
    """Honda's bulletin 27 of 1967; cb750sandcastonly.com, topic 765."""
    note = profile.item_by_id["fasteners"].note
    assert {"t144", "t145", "t146"} <= set(profile.item_by_id["fasteners"].sources)
    assert "8 mm 14 and 12" in note
    assert "do not judge" in note


def test_pages_on_this_machine_are_not_called_those_of_another_maker(profile):
    """s59 is the owners' register of the CB750, s112 the maker's American importer."""
    assert "another maker" not in " ".join(profile.source_by_id[one].note.lower() for one in ("s59", "s112"))
