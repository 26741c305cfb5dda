"""Z1, Z1-A and Z1-B: every start of the lists, how frame and engine stand, and the dates stamped on parts.

Typed from these pages, not from the profile: s47 "Kawasaki Z models 1973-84", erdstall.net/Z; s48 "Kawasaki Z1-A",
motorcyclespecs.co.za (the same wording); s46 "Kawasaki 900 Super 4", s51 and s52 on numbers and pairs, s49 and t49 on
the Z2, all blog.kcg.ne.jp/kawasakiz; s53 a dealer's report, bike-passion.net; s59 "Date coding",
cb750sandcastonly.com, topic 1748; t52 "Date codes", freewebs.com/750rs; t53 masaru4123.hatenablog.com; t41
cb750sandcastonly.com, topic 2174.
"""

import pytest

from inspector.judgement.dates import dated
from inspector.judgement.decode import Outcome
from inspector.judgement.relations import Stand
from inspector.profile.words import RelationKind
from tests.published.lists import evidence, profile_of, recorded, said, standings, years

Z1 = "kawasaki-z1"
LETTERS = {"frame": "Z1F", "engine": "Z1E"}
# s47, with the model and the years it names; a start runs to the next.
STARTS = {"Z1": (1, {1972, 1973}), "Z1-A": (20001, {1974}), "Z1-B": (47500, {1975})}
A4 = 1976  # where its numbers begin was not found


def model_of(number):
    return [model for model, (first, _) in STARTS.items() if first <= number][-1]


def by_source(place, typed):
    return {(hit.sources, *hit.models) for hit in said(Z1, place, typed).hits if hit.models}


@pytest.mark.parametrize("place", LETTERS)
@pytest.mark.parametrize("number", [1, 19999, 20000, 20001, 20002, 47499, 47500, 47501])
def test_at_and_beside_every_start_model_and_years_are_those_of_the_list(place, number):
    typed = f"{LETTERS[place]}-{number:06}"
    model = model_of(number)
    assert (("s47",), model) in by_source(place, typed)
    assert set(years(Z1, place, typed)) == STARTS[model][1]


@pytest.mark.parametrize("place", LETTERS)
def test_nothing_lies_below_the_first_number(place):
    assert said(Z1, place, f"{LETTERS[place]}-000000").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize(
    ("typed", "sources"),
    [
        ("Z1F-019999", {"s46", "s47"}),  # s46 has seen frames up to the 019000s
        ("Z1F-020000", {"s47"}),
        ("Z1F-020001", {"s47", "s48"}),  # one wording: no second opinion
        ("Z1F-047500", {"s47", "s48"}),
        ("Z1E000001", {"s46", "s47"}),
    ],
)
def test_who_says_so(typed, sources):
    place = "frame" if "F" in typed else "engine"
    assert set(said(Z1, place, typed).sources) == sources


@pytest.mark.parametrize("typed", ["Z1F-020001", "Z1F-047500"])
def test_the_single_source_is_said_in_the_note(typed):
    assert all("single source" in hit.note for hit in said(Z1, "frame", typed).hits if hit.years)


def test_five_figures_of_the_90000s_are_a_prototype_and_six_are_none():
    """s46: Z1F-90001 to about 900xx; the later 90000s have six figures."""
    assert by_source("frame", "Z1F-90001") == {(("s46",), "Z1 prototype")}
    assert years(Z1, "frame", "Z1F-90001") == (1972,)
    assert by_source("frame", "Z1F-090001") == {(("s47",), "Z1-B"), (("s48",), "Z1-B")}
    assert said(Z1, "frame", "Z1F-89999").outcome is Outcome.OUTSIDE
    assert said(Z1, "frame", "Z1F-90100").outcome is Outcome.OUTSIDE


@pytest.mark.parametrize("typed", ["Z1F-12345", "Z1E20001", "Z1F-0020001"])
def test_other_widths_are_not_this_machine(typed):
    assert said(Z1, "frame" if "F" in typed else "engine", typed).outcome is Outcome.OUTSIDE


@pytest.mark.parametrize("place", LETTERS)
@pytest.mark.parametrize("number", [47501, 60000, 90001, 200000])
def test_from_the_z1_b_on_a_number_never_speaks_against_1976(place, number):
    """The start of the A4 was not found, so the last start that is printed has no end."""
    typed = f"{LETTERS[place]}{number:06}"
    assert {1975, A4} <= set(evidence(Z1, A4, place, typed).years)
    assert {hit.open_end for hit in said(Z1, place, typed).hits} == {True}
    assert said(Z1, place, typed, A4).years == ()


@pytest.mark.parametrize(("typed", "years_left"), [("Z1F-019999", {1972, 1973}), ("Z1F-030000", {1974})])
def test_below_it_the_years_are_firm(typed, years_left):
    assert set(evidence(Z1, 1974, "frame", typed).years) == years_left


@pytest.mark.parametrize(
    ("typed", "years_told", "says"),
    [
        ("Z2F-00001", (1973,), "prototype of the Z2, not for sale"),  # s49: 00001 to 00025
        ("Z2F-00025", (1973,), "prototype of the Z2, not for sale"),
        ("Z2F-00026", (1973,), ""),  # s49: for sale from here
        ("Z2F-03699", (1973,), ""),  # s49: the last quoted for the first year
        ("Z2F-03700", (1974, 1975), ""),  # t49: the numbers simply continue
        ("Z2F-16499", (1974, 1975), ""),  # t49: an end that is claimed
    ],
)
def test_the_z2_of_japan(typed, years_told, says):
    hits = [hit for hit in said(Z1, "frame", typed).hits if hit.years]
    assert [(hit.years, hit.says, hit.markets) for hit in hits] == [(years_told, says, ("Japan",))]


def test_a_doubtful_figure_at_a_start_gives_each_year_with_its_condition():
    hits = [hit for hit in said(Z1, "frame", "Z1F-02000[01]").hits if "s47" in hit.sources]
    assert {(*hit.models, hit.if_figures) for hit in hits} == {("Z1", ((10, "0"),)), ("Z1-A", ((10, "1"),))}


PAIRS = [
    ("Z1F-018700", "Z1E018910", 210),  # s51: 187xx with 189xx, 210 apart; the last two figures are made up
    ("Z1F-030100", "Z1E030050", -50),  # s51, s52: the engine can be the lower; the numbers are made up
    ("Z1F-030100", "Z1E030100", 0),  # counted apart: equal is chance
]


@pytest.mark.parametrize(("frame", "engine", "gap"), PAIRS)
def test_frame_and_engine_are_close_with_either_the_higher(frame, engine, gap):
    year = 1973 if "0187" in frame else 1974
    (found,) = standings(Z1, year, {"frame": frame, "engine": engine})
    assert (found.kind, found.stand, found.gap, found.raises) == (RelationKind.CLOSE, Stand.CLOSE, gap, False)


def test_a_gap_larger_than_any_reported_is_a_question():
    (found,) = standings(Z1, 1974, {"frame": "Z1F-030100", "engine": "Z1E030400"})  # made up
    assert (found.stand, found.raises) == (Stand.UNUSUAL, True)
    assert "no limit" in str(found.detail)


def test_a_z1_b_with_other_figures_on_the_engine_left_the_works_so():
    """s53: the maker told a buyer so; the figures are not printed and made up here."""
    (found,) = standings(Z1, 1975, {"frame": "Z1F-050123", "engine": "Z1E050187"})
    assert (found.stand, found.raises) == (Stand.CLOSE, False)


def test_of_1976_no_rule_is_known():
    found = standings(Z1, A4, {"frame": "Z1F-090001", "engine": "Z1E090001"})
    assert [one.stand for one in found] == [Stand.NO_RULE]


def built(place, code):
    return {pair for hit in said(Z1, place, code).hits for pair in hit.built}


@pytest.mark.parametrize(
    ("place", "code", "month"),
    [
        ("swinging-arm", "4 11", "1974-11"),  # t52
        ("swinging-arm", "5 05", "1975-05"),  # t52
        ("swinging-arm", "406", "1974-06"),  # t53
        ("swinging-arm", "803", "1978-03"),  # t53
        ("torque-arm", "3 6", "1973-06"),  # t52: without a zero
        ("rear-unit", "6/73", "1973-06"),  # s59: month and year; the figures are made up
        ("rear-unit", "6/48", "1973-06"),  # t52, t41: 48 is 1973
    ],
)
def test_stamped_codes_give_their_month(place, code, month):
    assert built(place, code) == {(month, month)}


@pytest.mark.parametrize(
    ("code", "year"),
    [
        ("47", 1972),  # s59, t52
        ("48", 1973),  # s59, t52
        ("49", 1974),  # t52
        ("7", 1972),  # s59: the last figure
        ("8", 1973),
    ],
)
def test_the_disc_has_the_year_of_the_era(code, year):
    assert built("brake-disc", code) == {(f"{year}-01", f"{year}-12")}


@pytest.mark.parametrize(
    ("place", "code"), [("brake-disc", "9"), ("swinging-arm", "513"), ("swinging-arm", "5 5"), ("torque-arm", "3 06")]
)
def test_a_code_of_another_style_is_not_read(place, code):
    """s59 names 7 and 8 only; t52 has the month of the swinging arm in two figures, of the torque arm without zero."""
    assert built(place, code) == set()


def date_of(year, place, code):
    (found,) = dated(profile_of(Z1), *recorded(Z1, year, {place: code}))
    return found


def test_a_swinging_arm_of_may_1975_is_later_than_any_z1_a():
    """t52: 5 05 is May 1975."""
    assert date_of(1974, "swinging-arm", "5 05").later_than_claim
    assert not date_of(1975, "swinging-arm", "5 05").later_than_claim


@pytest.mark.parametrize(
    ("year", "code", "early"), [(1974, "3 10", False), (1974, "3 08", False), (1974, "3 07", True)]
)
def test_an_older_part_is_asked_about_from_the_third_month(year, code, early):
    """t52: 0 to 2 months; t48, kb-style.fr: the Z1-A had its second colour in October 1973. The codes are made up."""
    assert date_of(year, "swinging-arm", code).early is early
