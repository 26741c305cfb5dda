"""Conformance probabilities and the standard normal distribution.

Sources: JCGM 106:2012, 7.4, the two-sided viscosity example (inputs read at metrologyrules.com, 2022/03; y 13.6, u 1.8,
limits 12.5 and 16.3; about 0.66). Table 1's one-sided factors, recomputed with scipy.stats.norm. The single-limit
examples 7.3.3 Ex 1 (Zener diode, -5.47 V) and Ex 2 (container, 509.7 kPa): their inputs are from memory, not read;
the results are arithmetic on them, recomputed with scipy.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from inspector.judgement.measures import conformance, verdict
from inspector.record.words import Mark


def test_two_limits_of_the_viscosity_example():
    p = conformance(13.6, 1.8, 12.5, 16.3)
    assert p == pytest.approx(0.662630, abs=1e-6)
    assert verdict(p) is Mark.DOUBT


def test_one_upper_limit_inputs_from_memory():
    p = conformance(-5.47, 0.05, high=-5.40)
    assert p == pytest.approx(0.919243, abs=1e-6)
    assert verdict(p) is Mark.DOUBT


def test_one_lower_limit_inputs_from_memory():
    p = conformance(509.7, 8.6, low=490)
    assert p == pytest.approx(0.989010, abs=1e-6)
    assert verdict(p) is Mark.PASS


@pytest.mark.parametrize(
    ("p", "z"), [(0.80, 0.8416), (0.90, 1.2816), (0.95, 1.6449), (0.975, 1.9600), (0.99, 2.3263), (0.999, 3.0902)]
)
def test_one_sided_factors(p, z):
    assert conformance(0.0, 1.0, high=z) == pytest.approx(p, abs=2e-5)


@given(st.floats(-50, 50), st.floats(0.01, 20), st.floats(-50, 50), st.floats(0, 50))
def test_the_same_as_scipy(value, u, low, wide):
    high = low + wide
    ours = conformance(value, u, low, high)
    assert ours == pytest.approx(norm.cdf((high - value) / u) - norm.cdf((low - value) / u), abs=1e-12)
