"""What it costs to put right: sums, strip-downs paid once, and what is not in the sum."""

import pytest

from inspector.judgement.cost import costs
from inspector.judgement.cost_words import NO_CONTINGENCY, NO_LEVEL, NO_RATE, triangle_words
from inspector.profile.words import Need
from inspector.record.money import Remedy
from inspector.record.words import Conclusion, PatternPolicy
from tests.judgement.make import found, record
from tests.judgement.priced import D, amounts, failing, job, paid, shop, way

TWO = {"lamp": [way("lamp-find", parts=(10, 20, 40), hours=(1, 2, 4))],
       "seat": [way("seat-find", parts=(1, 2, 3), hours=(1, 1, 1))]}  # fmt: skip


def test_lows_likely_and_highs_are_added_up_as_they_are():
    told = costs(shop(TWO), failing("lamp", "seat", money=paid()))
    assert told.parts == amounts(11, 22, 43)
    assert told.hours == amounts(2, 3, 5)
    assert told.labour == amounts(20, 30, 50)
    assert told.total == amounts(31, 52, 93)


def test_a_strip_down_shared_by_two_is_paid_once_and_names_both():
    items = {"a": [way("a1", job="wheel-out")], "b": [way("b1", job="wheel-out")]}
    profile = shop(items, [job("wheel-out", (1, 2, 3))])
    both, one = (costs(profile, failing(*ids, money=paid())) for ids in (("a", "b"), ("a",)))
    assert [(j.id, j.labour, j.serves) for j in both.jobs] == [("wheel-out", amounts(10, 20, 30), ("A1", "B1"))]
    assert both.labour[1] == one.labour[1] + D(20)


def test_a_strip_down_brings_those_it_needs_each_once():
    items = {"a": [way("a1", job="engine-out")], "b": [way("b1", job="tank-off")]}
    jobs = [job("tank-off"), job("primary-off"), job("engine-out", needs=["tank-off", "primary-off"])]
    told = costs(shop(items, jobs), failing("a", "b", money=paid()))
    assert [j.id for j in told.jobs] == ["tank-off", "primary-off", "engine-out"]
    assert [j.serves for j in told.jobs] == [("A1", "B1"), ("A1",), ("A1",)]


def test_missing_hours_are_labour_not_estimated_and_never_nought():
    items = {"a": [way("a1", hours=None, job="out")], "b": [way("b1")]}
    told = costs(shop(items, [job("out", hours=None)]), failing("a", "b", money=paid()))
    assert told.not_estimated == ("A1", "Out")
    assert [r.labour for r in told.rows] == [None, amounts(10, 20, 30)]
    assert str(told.rows[0].labour_words) == "labour not estimated"
    assert "Labour not estimated, and not in the sum: A1; Out." in str(told.labour_words)


def test_without_a_rate_hours_are_told_and_labour_is_not_in_the_sum():
    told = costs(shop(TWO), failing("lamp", "seat"))
    assert told.labour is None
    assert told.hours == amounts(2, 3, 5)
    assert told.total == told.parts
    assert told.labour_words is NO_RATE


def test_a_part_without_a_price_is_named():
    told = costs(shop({"a": [way("a1", parts=None)]}), failing("a", money=paid()))
    assert told.not_priced == ("A1",)
    assert told.total == amounts(10, 20, 30)


def test_no_contingency_is_added_unless_entered():
    profile = shop(TWO)
    without = costs(profile, failing("lamp", "seat", money=paid()))
    given = costs(profile, failing("lamp", "seat", money=paid(contingency_percent="10")))
    assert without.contingency is None
    assert without.contingency_words is NO_CONTINGENCY
    assert "none added" in str(without.contingency_words)
    assert given.contingency == amounts("3.10", "5.20", "9.30")
    assert given.total == amounts("34.10", "57.20", "102.30")
    assert given.simulated.p50 == pytest.approx(without.simulated.p50 * D("1.1"), abs=D("0.02"))


def test_the_price_level_moves_all_parts_and_no_labour():
    level = {"low": "0", "likely": "10", "high": "50"}
    told = costs(shop(TWO), failing("lamp", "seat", money=paid(price_level=level)))
    assert told.parts == amounts("11.00", "24.20", "64.50")
    assert told.labour == amounts(20, 30, 50)
    assert "likely 10 %" in str(told.level_words)
    assert costs(shop(TWO), failing("lamp", money=paid())).level_words is NO_LEVEL


def test_a_choice_not_made_is_in_no_sum_and_named():
    profile = shop({"a": [way("a1"), way("a2")], "b": [way("b1")]})
    told = costs(profile, failing("a", "b", money=paid()))
    assert [f.item for f in told.to_decide] == ["a"]
    assert [r.way.cost for r in told.rows] == ["b1"]
    chosen = costs(profile, failing("a", "b", money=paid(), remedies=(Remedy(item="a", cost="a2"),)))
    assert chosen.to_decide == ()
    assert chosen.total[1] == told.total[1] * 2


def test_safety_claim_and_taste_are_told_apart():
    items = {n: [way(n + "1", need=n)] for n in ("safety", "claim", "taste")}
    told = costs(shop(items), failing(*items, money=paid()))
    assert [(s.need, s.total) for s in told.by_need] == [(need, amounts(20, 40, 60)) for need in Need]


def test_the_simulation_stays_within_the_plain_sums_and_names_what_spreads_it():
    items = {"a": [way("a1", parts=(100, 200, 1000))], **TWO}
    told = costs(shop(items), failing("a", "lamp", "seat", money=paid()))
    spread = told.simulated
    assert told.total[0] <= spread.p10 <= spread.p50 <= spread.p80 <= spread.p90 <= told.total[2]
    assert str(spread.drivers[0].name) == "A, A1: parts"
    assert 0.9 < sum(d.share for d in spread.drivers) <= 1
    assert "not the short-cut" in str(spread.words)


def test_the_sum_of_likely_figures_lies_below_the_middle_of_the_published_example():
    # GAO Cost Estimating and Assessment Guide GAO-20-195G, Table 12, thousand dollars; likely sum 77,092.
    guide = {
        "airframe": (17955, 19645, 21785), "propulsion": (8500, 10553, 13000), "communications": (4000, 4306, 5100),
        "navigation": (4100, 4305, 4650), "computer": (550, 600, 650), "software": (32300, 35547, 52500),
        "integration": (1950, 2136, 2600),
    }  # fmt: skip
    profile = shop({name: [way(name + "-1", parts=three, hours=None)] for name, three in guide.items()})
    told = costs(profile, failing(*guide, money=paid()))
    assert told.total[1] == 77_092
    # Mean 79,668 and deviation 3,591.19 of the exact beta, worked out with scipy.stats.beta.
    assert float(told.simulated.mean) == pytest.approx(79_668, rel=0.002)
    assert float(told.simulated.deviation) == pytest.approx(3591.19, rel=0.03)
    assert told.total[1] < told.simulated.p50
    assert str(told.simulated.drivers[0].name) == "Software, Software 1: parts"


def test_nothing_to_put_right_costs_nothing_and_is_not_simulated():
    told = costs(shop(TWO), record(found("lamp", "pass")))
    assert told.total == amounts(0, 0, 0)
    assert told.simulated is None
    assert told.items == ()


@pytest.mark.parametrize(
    ("policy", "then"),
    [(PatternPolicy.PENALISED, 75), (PatternPolicy.NEUTRAL, 100), (PatternPolicy.ACCEPTED, 100)],
)
def test_the_score_put_right_follows_the_choice_about_pattern_parts(policy, then):
    profile = shop({"a": [way("a1", kind="pattern part")], "b": []})
    told = costs(profile, record(found("a", "fail"), found("b", "pass"), policy=policy, money=paid()))
    assert told.score_now == 50
    assert told.score_put_right == then


def test_a_repair_does_not_make_a_wrong_part_right_where_another_is_offered():
    profile = shop({"a": [way("find"), way("mend", kind="repair")]})
    chosen = (Remedy(item="a", cost="mend"),)
    wrong = record(found("a", "fail", why=[Conclusion.WRONG_YEAR]), remedies=chosen, money=paid())
    worn = record(found("a", "fail"), remedies=chosen, money=paid())
    assert costs(profile, wrong).score_put_right == 0
    assert costs(profile, worn).score_put_right == 100


def test_leaving_it_costs_and_gains_nothing():
    profile = shop({"a": [way("leave", kind="leave", parts=None, hours=None), way("find")]})
    told = costs(profile, failing("a", money=paid(), remedies=(Remedy(item="a", cost="leave"),)))
    assert told.total == amounts(0, 0, 0)
    assert (told.not_estimated, told.not_priced) == ((), ())
    assert told.score_put_right == told.score_now == 0


def test_a_remedy_the_profile_does_not_know_is_named_and_not_counted():
    given = failing("lamp", money=paid(), remedies=(Remedy(item="lamp", cost="gone"),))
    told = costs(shop(TWO), given)
    assert 'no remedy "gone"' in str(told.troubles[0])


def test_how_much_hangs_on_the_shape_supposed_is_said_in_the_same_amounts():
    told = costs(shop({"a": [way("a1", parts=(100, 200, 1000), hours=None)]}), failing("a", money=paid()))
    half, most = told.simulated.by_triangles
    # A figure with a long upper end lies higher as a triangle: its mean is a third of the ends and the likely, not a
    # sixth of the ends and four sixths of the likely (arithmetic).
    assert half > told.simulated.p50
    assert most > told.simulated.p90
    assert f"under {half} and nine in ten under {most}" in str(triangle_words(told.simulated))
