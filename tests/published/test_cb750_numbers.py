"""CB750 four: every start and end of the pages, pairs of frame and engine, plates and ink stamps.

Typed from these pages, not from the profile: s62 "CB750 K0 history", kb-style.fr; s61 classicbikehub.uk; s60 and s63
Classic Motorcycle Mechanics, 19 March 2018 and 17 October 2016; s64 "The so called K0", s71 and s72 "Number spread",
s73 a reply there, t41 "Build dates", all cb750sandcastonly.com; s65 "CB750 K1 of 1971", kb-style.fr; s66 and s67 "CB750
K2" and "CB750 K7", motorcyclespecs.co.za; s69 kita-dream.sakura.ne.jp; t37 "CB750F series", a Portuguese magazine;
t40 Moto Revue Classic, 7 March 2019; t42 forums.sohc4.net, topic 145871.
"""

import pytest

from inspector.judgement.dates import dated
from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from inspector.judgement.running import running
from inspector.record.finding import Finding
from inspector.record.words import Seen
from tests.published.lists import evidence, profile_of, recorded, said, standings, years

CB = "honda-cb750"
EARLY, DIE_CAST = "early crankcase, cast in sand", "die-cast crankcase"
FIRST_MODEL = (1969, 1970)


def told(typed, place="frame"):
    return {(source, *hit.models, hit.says) for hit in said(CB, place, typed).hits for source in hit.sources}


@pytest.mark.parametrize("number", [1000001, 1000002, 1007413, 1007414])
def test_early_crankcases_run_to_7414(number):
    """s62, s63, s61."""
    assert told(f"CB750-{number}") == {(source, "K0", EARLY) for source in ("s62", "s63", "s61")}
    assert years(CB, "frame", f"CB750-{number}") == FIRST_MODEL


@pytest.mark.parametrize("number", [1007415, 1007416, 1044648, 1044649])
def test_die_cast_ones_run_to_44649(number):
    """s62, s64."""
    assert told(f"CB750-{number}") == {(source, "K0", DIE_CAST) for source in ("s62", "s64")}
    assert years(CB, "frame", f"CB750-{number}") == FIRST_MODEL


@pytest.mark.parametrize("number", [1044650, 1044651, 1053448, 1999999])
def test_the_k1_begins_at_44650(number):
    """s65, s64."""
    assert told(f"CB750-{number}") == {("s64", "K1", ""), ("s65", "K1", "")}
    assert years(CB, "frame", f"CB750-{number}") == (1971,)


def test_in_france_the_k1_begins_later():
    """s65: 1053449, November 1970."""
    markets = {n: {hit.markets for hit in said(CB, "frame", f"CB750-{n}").hits} for n in (1053448, 1053449)}
    assert markets == {1053448: {()}, 1053449: {(), ("France",)}}


def test_before_the_first_number_nothing_is_read():
    assert said(CB, "frame", "CB750-1000000").outcome is Outcome.OUTSIDE


def test_k2_and_k7_are_known_by_one_start_each():
    """s66: 2000001; s67: 2700009. K3 to K6 and K8 were not found, so the years between stay open."""
    assert years(CB, "frame", "CB750-2000001") == years(CB, "frame", "CB750-2700008") == tuple(range(1972, 1977))
    assert years(CB, "frame", "CB750-2700009") == (1977, 1978)
    assert said(CB, "frame", "CB750-2000001").sources == ("s66",)
    assert said(CB, "frame", "CB750-2700009").sources == ("s67",)
    assert all(hit.inferred for hit in said(CB, "frame", "CB750-2300000").hits)
    (open_one,) = said(CB, "frame", "CB750-2700009").hits
    assert open_one.open_end


@pytest.mark.parametrize(
    ("typed", "year", "model"),
    [
        ("CB750F-1000123", 1975, "F0"),  # begins with 100; the rest is made up
        ("CB750F-2000123", 1976, "F1"),
        ("CB750F-2100123", 1977, "F2"),
        ("CB750F-2200123", 1978, "F3"),
    ],
)
def test_the_f_series_is_known_by_how_its_numbers_begin(typed, year, model):
    """t37; the form with F in the letters is worked out from it."""
    (hit,) = said(CB, "frame", typed).hits
    assert (hit.years, hit.models, hit.sources, hit.inferred) == ((year,), (model,), ("t37",), True)


def test_the_f_stands_apart_from_the_k():
    """t37: K numbers stand behind CB750 without F."""
    assert years(CB, "frame", "CB750-2100123") != years(CB, "frame", "CB750F-2100123")


@pytest.mark.parametrize("number", [2110, 2113])
def test_four_engines_before_production_have_four_figures(number):
    """s60, s61: CB750E-2110 to 2113, of 1968."""
    answer = said(CB, "engine", f"CB750E-{number}")
    assert (answer.outcome, answer.years, set(answer.sources)) == (Outcome.DECODED, (), {"s60", "s61"})
    assert "1968" in answer.hits[0].says


@pytest.mark.parametrize("number", [2109, 2114])
def test_no_other_engine_has_four_figures(number):
    assert said(CB, "engine", f"CB750E-{number}").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(("number", "says"), [(1007414, EARLY), (1007415, DIE_CAST)])
def test_engines_are_die_cast_from_7415(number, says):
    """s63."""
    assert told(f"CB750E-{number}", "engine") == {("s63", "K0", says)}


def test_later_engines_give_no_year():
    """s69: an engine 11189xx in a K1; the last two figures are made up."""
    answer = said(CB, "engine", "CB750E-1118950")
    assert (answer.outcome, answer.years) == (Outcome.DECODED, ())


def test_a_first_model_sold_in_december_1970_is_one_by_its_number():
    """t40: 1041181, dated 22 December 1970 by its owner, when K1 production had begun; s64: below 1044650."""
    assert told("CB750-1041181") == {("s62", "K0", DIE_CAST), ("s64", "K0", DIE_CAST)}
    assert set(evidence(CB, 1970, "frame", "CB750-1041181").years) == set(FIRST_MODEL)


def test_the_case_of_1010101_is_looked_at_and_not_read():
    """nippon-classic.de calls it sand-cast, s62 ends the early cases at 7414 and has a batch near 17000 again."""
    assert told("CB750-1010101") == {("s62", "K0", DIE_CAST), ("s64", "K0", DIE_CAST)}
    (rule,) = [one for one in profile_of(CB).place_by_id["frame"].rules if one.id == "k"]
    assert "looked at, not read from the number" in rule.not_done


# s71, s72: pairs known from the works, without their million.
PAIRS = [(7, 90), (9, 97), (9, 98), (28, 132), (123, 247), (175, 263), (180, 302)]


@pytest.mark.parametrize(("frame", "engine"), PAIRS)
def test_pairs_known_from_the_works_are_close(frame, engine):
    numbers = {"frame": f"CB750-{1000000 + frame}", "engine": f"CB750E-{1000000 + engine}"}
    (found,) = standings(CB, 1969, numbers)
    assert (found.stand, found.gap, found.raises) == (Stand.CLOSE, engine - frame, False)


def test_a_pair_said_to_be_undisturbed_lies_further_apart_and_is_a_question_only():
    """s73: 1256 and 665; s71: 300 is no limit."""
    (found,) = standings(CB, 1969, {"frame": "CB750-1001256", "engine": "CB750E-1000665"})
    assert (found.stand, found.gap, found.raises) == (Stand.UNUSUAL, -591, True)
    assert "no limit" in str(found.detail)
    assert "three-hundred" in found.traps


def test_a_k1_printed_without_its_last_figures_lies_201_to_399_apart():
    """s69: frame 11192xx, engine 11189xx; up to about 200 is usual (s71, s72)."""
    (found,) = standings(CB, 1971, {"frame": "CB750-11192??", "engine": "CB750E-11189??"})
    assert (found.stand, found.raises) == (Stand.UNUSUAL, True)


def test_equal_numbers_are_chance():
    """s71: frame and engine differ, paired at random."""
    (found,) = standings(CB, 1970, {"frame": "CB750-1030000", "engine": "CB750E-1030000"})  # made up
    assert found.gap == 0
    assert "chance" in str(found.detail)


def test_from_the_k2_on_no_rule_is_known():
    found = standings(CB, 1972, {"frame": "CB750-2000100", "engine": "CB750E-2000100"})  # made up
    assert [one.stand for one in found] == [Stand.NO_RULE]


@pytest.mark.parametrize(
    ("place", "code", "month"),
    [
        ("frame-plate", "6/1970", "1970-06"),  # t42
        ("cam-cover", "4.3.44", "1969-03"),  # t41: 4 March 1969
        ("rear-unit", "6/45", "1970-06"),  # cb750sandcastonly.com, topic 1748: month and year; t41: 44 is 1969
    ],
)
def test_plates_and_stamps_give_their_month(place, code, month):
    hits = said(CB, place, code).hits
    assert {pair for hit in hits for pair in hit.built} == {(month, month)}


def test_the_day_of_the_ink_stamp_is_read_too():
    (hit,) = said(CB, "cam-cover", "4.3.44").hits
    assert {field.segment: field.means for field in hit.fields} == {"day": "4", "month": "3", "year": "1969"}


def test_a_plate_of_1970_is_later_than_a_machine_of_1969():
    (found,) = dated(profile_of(CB), *recorded(CB, 1969, {"frame-plate": "6/1970"}))
    assert found.later_than_claim


# s74 "91 production distinctions", cb750sandcastonly.com: item, form, a number that has it, the next that has not.
CHANGES = [
    ("clamp-nuts", "early", 2157, 2158),
    ("hose-fittings", "late", 2158, 2157),
    ("top-yoke", "late", 3434, 3433),
    ("horn-mount", "early", 3949, 3950),
    ("caliper", "late", 1257, 1256),
    ("fuel-tap", "early", 1937, 1938),
    ("kill-knob", "early", 441, 442),
    ("carburettor-vents", "early", 302, 303),
]


@pytest.mark.parametrize(("item", "form", "inside", "beside"), CHANGES)
def test_a_form_goes_with_the_numbers_that_the_register_gives_it(item, form, inside, beside):
    for number, word in ((inside, "is one of these"), (beside, "is not one of these")):
        record, decoded = recorded(CB, 1969, {"frame": f"CB750-{1000000 + number}"})
        seen = Finding(item=item, by="inspector", fitted=form, seen=Seen.EXAMINED)
        (sentence,) = running(profile_of(CB), record.model_copy(update={"findings": (seen,)}), decoded)
        assert word in str(sentence)


def test_a_figure_that_decides_a_change_is_named():
    """s74: 14 mm clamp nuts from 2158."""
    record, decoded = recorded(CB, 1969, {"frame": "CB750-100215[78]"})
    seen = Finding(item="clamp-nuts", by="inspector", fitted="late", seen=Seen.EXAMINED)
    (sentence,) = running(profile_of(CB), record.model_copy(update={"findings": (seen,)}), decoded)
    assert "if figure 13 is 8" in str(sentence)
