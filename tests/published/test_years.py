"""Weight of evidence and date codes against figures and libraries from outside.

Sources stand beside each value. Where a value was worked out by arithmetic on published inputs, it says so.
"""

from math import log10

import numpy as np
import pytest
from sklearn.naive_bayes import CategoricalNB

from inspector.judgement.claimed_build import months_in
from inspector.judgement.dates import dated
from inspector.judgement.season import model_year_of, month_of
from inspector.judgement.weighing import combine, decibans
from inspector.record.claim import Claim
from tests.judgement.dated import all_fitted, decoded, machine, part, read, years_of
from tests.judgement.make import item, record

# General Report on Tunny (1945), page 39 (ellsbury.com/tunny/tunny-039.htm): a penny that may be double-headed,
# one in ten thousand beforehand (-40 decibans). Each head is a factor of 2, which the page rounds to 3 decibans;
# twenty heads are 60 decibans, and +20 decibans, 100 to 1 on, are left. Exactly, 10 log10 2 = 3.0103 a head.
HEAD = {"double-headed": 1.0, "fair": 0.5}
ODDS_BEFORE = {"double-headed": 1 / 10_001, "fair": 10_000 / 10_001}


def test_a_head_is_three_decibans_and_twenty_are_sixty():
    assert decibans([HEAD])["double-headed"] == pytest.approx(3.0103, abs=5e-5)
    assert decibans([HEAD])["double-headed"] == pytest.approx(3, abs=0.05)
    assert decibans([HEAD] * 20)["double-headed"] == pytest.approx(60.205999, abs=5e-7)
    assert decibans([HEAD] * 20)["double-headed"] == pytest.approx(60, abs=0.5)


def test_twenty_heads_leave_twenty_decibans_a_hundred_to_one_on():
    after = combine([HEAD] * 20, ODDS_BEFORE)
    odds = after["double-headed"] / after["fair"]
    assert 10 * log10(odds) == pytest.approx(20.205999, abs=5e-7)
    assert odds == pytest.approx(104.8576)
    assert decibans([HEAD] * 20)["double-headed"] - 40 == pytest.approx(10 * log10(odds))


# scikit-learn's CategoricalNB (BSD-3) with its default smoothing, on a table of six machines and two parts.
SEEN = np.array([[0, 0], [0, 1], [1, 0], [1, 1], [1, 1], [0, 0]])
SEASON = np.array([0, 0, 1, 1, 1, 0])


def by_library(seen, season, asked):
    return CategoricalNB(alpha=1.0).fit(seen, season).predict_proba([asked])[0]


def smoothed(seen, season, asked):
    """The likelihood of each part's form in each season by Laplace's rule, as CategoricalNB takes it."""
    for column, form in enumerate(asked):
        forms = int(seen[:, column].max()) + 1
        yield {
            int(s): (int(((seen[:, column] == form) & (season == s)).sum()) + 1) / (int((season == s).sum()) + forms)
            for s in np.unique(season)
        }


def prior(season):
    return {int(s): float((season == s).mean()) for s in np.unique(season)}


@pytest.mark.parametrize(("asked", "shares"), [((0, 1), (0.727273, 0.272727)), ((1, 1), (0.142857, 0.857143))])
def test_combining_gives_what_a_general_library_gives(asked, shares):
    ours = combine(smoothed(SEEN, SEASON, asked), prior(SEASON))
    assert list(ours.values()) == pytest.approx(by_library(SEEN, SEASON, asked))
    assert list(ours.values()) == pytest.approx(shares, abs=5e-7)


@pytest.mark.parametrize("seed", range(12))
def test_combining_gives_what_a_general_library_gives_on_drawn_tables(seed):
    draw = np.random.default_rng(seed)
    seasons, columns = int(draw.integers(2, 6)), int(draw.integers(1, 9))
    season = np.concatenate([np.arange(seasons), draw.integers(0, seasons, 40)])
    seen = draw.integers(0, 4, (len(season), columns))
    asked = tuple(int(form) for form in seen[-1])
    ours = combine(smoothed(seen, season, asked), prior(season))
    assert list(ours.values()) == pytest.approx(by_library(seen, season, asked))


# Five parts with their years of use, likelihood .95 inside and .05 outside, every year of 1965-75 alike beforehand.
# Not published: worked out by Bayes' rule from these inputs, apart from this program.
PARTS = {
    "frame": (1968, 1970), "engine": (1969, 1969), "tank": (1969, 1972), "forks": (1971, 1973),
    "carburettor": (1967, 1970),
}  # fmt: skip
SHARES = {
    1969: 0.942273, 1970: 0.049593, 1968: 0.002610, 1971: 0.002610, 1972: 0.002610, 1967: 0.000137, 1973: 0.000137,
}  # fmt: skip


def test_five_parts_give_the_shares_worked_out_for_them():
    told = [{y: 0.95 if a <= y <= b else 0.05 for y in range(1965, 1976)} for a, b in PARTS.values()]
    shares = combine(told)
    assert {y: shares[y] for y in SHARES} == pytest.approx(SHARES, abs=5e-7)
    first, second = sorted(shares.values(), reverse=True)[:2]
    assert 10 * log10(first / second) == pytest.approx(12.7875, abs=5e-5)
    assert 10 * log10(first / second) == pytest.approx(10 * log10(19))


def five_parts():
    assemblies = ("frame", "engine", "tinware", "front end", "gearbox")
    # With one form an item, a swap rate of 1/19 makes what is outside weigh 19 times less, as .05 to .95 does.
    return machine(
        *(part(key, *span, a, swap_rate=1 / 19) for (key, span), a in zip(PARTS.items(), assemblies, strict=True)),
        model_years=[1965, 1975],
    )


def test_the_same_five_parts_on_a_machine_weigh_the_same_and_the_forks_are_the_odd_ones():
    made = five_parts()
    answer = years_of(made, *all_fitted(made), year=1969)
    assert answer.weight.lead == pytest.approx(12.7875, abs=5e-5)
    assert answer.weight.ranking[:2] == (1969, 1970)
    assert answer.weight.decibans[1969] == pytest.approx(10 * log10(SHARES[1969] / ((1 - SHARES[1969]) / 10)), abs=1e-3)
    assert (answer.together.odd, answer.together.left) == ((("forks",),), ((1969,),))
    # Terminus post quem, as archaeology has it: no older than the youngest part that belongs to it.
    assert (answer.youngest.id, answer.youngest.years[0]) == ("forks", 1971)


# "Used motorcycle evaluation", cyclechaos.com: on a tyre 226 is week 22 of 1986 or of 1996, and 2200 is week 22 of
# 2000.
TYRE = {
    "id": "tyre", "name": "Tyre code", "where": "side wall", "assembly": "wheels and brakes", "dates_part": True,
    "rule": [
        {"id": "three", "title": "Three figures", "sources": ["list"], "segment": [
            {"id": "week", "kind": "digits", "width": 2, "gives": "week of build"},
            {"id": "year", "kind": "digits", "width": 1, "gives": "year of build", "plus": [1980, 1990]},
        ]},
        {"id": "four", "title": "Four figures", "sources": ["list"], "segment": [
            {"id": "week", "kind": "digits", "width": 2, "gives": "week of build"},
            {"id": "year", "kind": "digits", "width": 2, "gives": "year of build", "plus": [2000]},
        ]},
    ],
}  # fmt: skip


def tyre(code, build):
    made = machine(item("lamp"), place=[TYRE], model_years=[1970, 2005])
    given = record(readings=(read("tyre", code),), claim=Claim(build_date=build))
    (one,) = dated(made, given, decoded(made, given))
    return one


def test_three_figures_keep_both_decades_and_four_figures_name_the_year():
    assert [first[:4] for first, _ in tyre("226", "1990").built] == ["1986", "1996"]
    assert [first[:4] for first, _ in tyre("2200", "1990").built] == ["2000"]
    # Week 22 of 2000 by ISO 8601: from Monday 29 May.
    assert tyre("2200", "1990").built == (("2000-05", "2000-06"),)


@pytest.mark.parametrize(
    ("code", "build", "later", "depends"),
    [
        ("226", "1985", True, False),
        ("226", "1990", False, True),
        ("226", "1999", False, False),
        ("2200", "1999", True, False),
    ],
)
def test_a_tyre_later_than_the_build_cannot_have_come_with_it(code, build, later, depends):
    one = tyre(code, build)
    assert (one.later_than_claim, one.depends) == (later, depends)


def test_a_season_from_august_makes_an_october_build_the_next_years_model():
    # "Machine numbering system", a marque triple club's archive page: built October 1972, a 1973 model.
    made = machine(item("lamp"), season_starts=8)
    assert model_year_of(made, month_of("1972-10")) == 1973
    assert model_year_of(made, months_in("October 1972")[0]) == 1973
    assert model_year_of(made, month_of("1973-07")) == 1973
    assert model_year_of(made, month_of("1973-08")) == 1974
