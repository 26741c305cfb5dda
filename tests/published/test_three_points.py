"""PERT-beta and sums of three-point figures.

Sources: probsee.com/p/PERT_distribution (mean and shapes); pmknowledgecenter.be, PERT article, Table 1 (the small
network; longest path A-B-E-F of mean 15); GAO Cost Estimating and Assessment Guide GAO-20-195G, Table 12 (airframe to
integration, thousand dollars; likely values sum to about 77 million). Checked with scipy.stats.beta.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta, norm, triang

from inspector.judgement.three_points import (
    Term,
    mean,
    shapes,
    simulate,
    triangle_mean,
    triangle_variance,
    variance,
)

GUIDE = {
    "airframe": (17955, 19645, 21785), "propulsion": (8500, 10553, 13000), "communications": (4000, 4306, 5100),
    "navigation": (4100, 4305, 4650), "computer": (550, 600, 650), "software": (32300, 35547, 52500),
    "integration": (1950, 2136, 2600),
}  # fmt: skip
NETWORK = {"A": (2, 5, 8), "B": (1, 2, 9), "C": (0.25, 0.5, 3.75), "D": (1, 1, 7), "E": (1, 2, 9), "F": (1, 3, 11)}


@pytest.mark.parametrize(
    ("three", "alpha", "middle", "exact"),
    [((2, 5, 8), 3, 5, 1.285714), ((1, 2, 9), 1.5, 3, 1.714286), ((1, 3, 11), 1.8, 4, 3.0)],
)
def test_shapes_mean_and_exact_variance(three, alpha, middle, exact):
    assert shapes(three)[0] == pytest.approx(alpha)
    assert mean(three) == pytest.approx(middle)
    assert variance(three) == pytest.approx(exact, abs=1e-6)
    assert variance(three) != pytest.approx((three[2] - three[0]) ** 2 / 36)


@given(st.tuples(st.floats(0, 1e5), st.floats(0, 1e5), st.floats(0, 1e5)).map(sorted).map(tuple))
def test_the_same_as_scipy(three):
    if three[2] - three[0] < 1e-3:
        return
    a, b = shapes(three)
    theirs = beta(a, b, loc=three[0], scale=three[2] - three[0])
    assert mean(three) == pytest.approx(theirs.mean(), rel=1e-6, abs=1e-6)
    assert variance(three) == pytest.approx(theirs.var(), rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(
    ("level", "value"), [("p10", 1.899021), ("p50", 3.766723), ("p80", 5.502586), ("p90", 6.453341)]
)
def test_quantiles_of_one_figure(level, value):
    assert getattr(simulate([Term("x", (1, 3, 11))], draws=400_000), level) == pytest.approx(value, rel=0.005)


# Mean and variance of the triangle, checked with scipy.stats.triang.
@pytest.mark.parametrize(
    ("three", "middle", "exact"), [((2, 5, 8), 5, 1.5), ((1, 2, 9), 4, 3.166667), ((1, 3, 11), 5, 4.666667)]
)
def test_mean_and_variance_of_a_triangle(three, middle, exact):
    low, likely, high = three
    theirs = triang((likely - low) / (high - low), loc=low, scale=high - low)
    assert triangle_mean(three) == pytest.approx(middle) == pytest.approx(theirs.mean())
    assert triangle_variance(three) == pytest.approx(exact, abs=1e-6) == pytest.approx(theirs.var(), abs=1e-6)


@pytest.mark.parametrize(
    ("level", "value"), [("p10", 2.414214), ("p50", 4.675445), ("p80", 7.0), ("p90", 8.171573)]
)
def test_quantiles_of_one_triangle(level, value):
    told = simulate([Term("x", (1, 3, 11))], draws=400_000, triangles=True)
    assert getattr(told, level) == pytest.approx(value, rel=0.005)


def test_the_guides_table_by_triangles():
    told = simulate([Term(name, three) for name, three in GUIDE.items()], draws=200_000, triangles=True)
    # Two million draws of scipy.stats.triang: P50 81,600, P80 86,440, P90 88,910; mean and deviation by arithmetic.
    assert (told.mean, told.deviation) == (pytest.approx(82_244, abs=1), pytest.approx(4599.61, abs=0.1))
    for level, value in (("p50", 81_600), ("p80", 86_440), ("p90", 88_910)):
        assert getattr(told, level) == pytest.approx(value, rel=0.003)


@pytest.mark.parametrize("triangles", [False, True])
def test_mean_and_deviation_are_those_the_draws_come_near_also_with_a_common_level(triangles):
    import numpy as np

    from inspector.judgement.three_points import sums

    some = [Term("p", (90, 100, 150), levelled=True), Term("q", (10, 40, 60), 3.0), Term("r", (5, 6, 9), levelled=True)]
    how = {"level": (0.9, 1.0, 1.4), "factor": 1.1, "draws": 400_000, "triangles": triangles}
    told, drawn = simulate(some, **how), sums(some, **how)
    assert told.mean == pytest.approx(float(np.mean(drawn)), rel=0.001)
    assert told.deviation == pytest.approx(float(np.std(drawn)), rel=0.005)


def test_the_longest_path_of_the_small_network():
    path = [NETWORK[name] for name in "ABEF"]
    assert [mean(NETWORK[n]) for n in "ABCDEF"] == pytest.approx([5, 3, 1, 2, 3, 4])
    assert sum(map(mean, path)) == pytest.approx(15)
    short_cut = sum((high - low) ** 2 / 36 for low, _, high in path)
    assert short_cut == pytest.approx(7.333333, abs=1e-6)
    assert norm.cdf((17 - 15) / short_cut**0.5) == pytest.approx(0.769910, abs=1e-6)


def test_the_sum_of_likely_values_lies_far_below_the_middle():
    told = simulate([Term(name, three) for name, three in GUIDE.items()], draws=200_000)
    likely = sum(three[1] for three in GUIDE.values())
    assert likely == 77_092
    assert sum(map(mean, GUIDE.values())) == pytest.approx(79_668, abs=1)
    assert sum(map(variance, GUIDE.values())) ** 0.5 == pytest.approx(3591.19, abs=0.1)
    assert told.mean == pytest.approx(79_668, abs=1)
    assert told.deviation == pytest.approx(3591.19, abs=0.1)
    # By the normal curve about that mean, as by the guide's own table; the draws come near.
    for level, value in (("p50", 79_668), ("p80", 82_626.7), ("p90", 84_173.2)):
        assert getattr(told, level) == pytest.approx(value, rel=0.008)
    assert likely < told.p50 < told.p80 < told.p90
    assert told.drivers[0].key == "software"


terms = st.lists(
    st.tuples(st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0, 1e4)).map(sorted).map(tuple), min_size=1, max_size=6
).map(lambda threes: [Term(f"t{n}", three) for n, three in enumerate(threes)])


@given(terms)
def test_the_same_seed_gives_the_same_answer_within_low_and_high(some):
    first, second = simulate(some, draws=500), simulate(some, draws=500)
    assert first == second
    low, high = sum(t.three[0] for t in some), sum(t.three[2] for t in some)
    assert low - 1e-6 <= first.p10 <= first.p50 <= first.p80 <= first.p90 <= high + 1e-6


def test_the_middle_is_that_of_a_ten_times_larger_run():
    some = [Term(name, three) for name, three in GUIDE.items()]
    assert simulate(some).p50 == pytest.approx(simulate(some, draws=100_000).p50, rel=0.005)


def test_a_common_level_moves_all_parts_together():
    some = [Term(f"p{n}", (90, 100, 110), levelled=True) for n in range(20)]
    alone, common = simulate(some), simulate(some, level=(0.9, 1.0, 1.2))
    assert common.deviation > 3 * alone.deviation
    assert common.drivers[0].key == "price level"
