"""Uncertainties carried through a formula, by slopes and by draws.

Sources: NIST Technical Note 1900, example E3 (falling-ball viscometer) and E13 (thermal expansion): inputs and
published results as read in the tests of an open library of metrology (ex_viscometer.yaml, test_examples.py). A
course's ratio times length, read there too. JCGM 101:2008, 9.2.2, the sum of four normal inputs, likewise. The
`uncertainties` package is the second opinion on every one. The photograph scale L = D p_o / p_r is our own example.
"""

import numpy as np
import pytest
from uncertainties import ufloat

from inspector.photo.propagation import propagated

BALL = ((4.63, 0.0463), (61.0, 6.1), (36.6, 5.49), (2217.0, 0.5), (1180.0, 0.5), (810.0, 0.5))
BAR = ((1.4999, 0.0001), (1.5021, 0.0002), (288.15, 0.02), (373.10, 0.05))
SCALE = ((24.26, 0.05), (640.0, 1.5), (410.0, 1.5))
COURSE = ((0.1820, 0.00093), (0.1823, 0.00058), (0.6978, 0.0026))
FOUR = ((0.0, 1.0),) * 4


def ball(known, falls, known_falls, solid, fluid, known_fluid):
    return known * falls * (solid - fluid) / (known_falls * (solid - known_fluid))


def bar(cold, warm, low, high):
    return (warm - cold) / (cold * (high - low))


def scale(size, pixels, reference):
    return size * pixels / reference


def total(a, b, c, d):
    return a + b + c + d


def told(formula, inputs, draws=400_000):
    x, u = (np.array(column, float) for column in zip(*inputs, strict=True))
    return propagated(lambda rows: formula(*rows.T), x, u, seed=20261130, draws=draws)


@pytest.mark.parametrize(
    ("formula", "inputs", "value", "u"),
    [
        (ball, BALL, 5.687408, 1.026894),
        (bar, BAR, 1.72662e-5, 1.7555e-6),
        (scale, SCALE, 37.869268, 0.182111),
        (lambda a, b, y: a / b * y, COURSE, 0.696652, 0.004932),
        (total, FOUR, 0.0, 2.0),
    ],
    ids=["viscometer", "expansion", "scale", "ratio times length", "sum of four"],
)
def test_slopes_are_those_of_the_uncertainties_package_and_of_what_was_published(formula, inputs, value, u):
    found, second = told(formula, inputs, draws=10), formula(*(ufloat(*one) for one in inputs))
    assert found.value == pytest.approx(second.n, rel=1e-12, abs=1e-12)
    assert found.linear == pytest.approx(second.s, rel=1e-3)  # the slopes are differences, not derivatives
    assert (found.value, found.linear) == (pytest.approx(value, rel=1e-5), pytest.approx(u, rel=1e-3))


def test_what_each_input_adds_to_a_scale():
    assert np.sqrt(told(scale, SCALE, draws=10).parts) == pytest.approx([0.078049, 0.088756, 0.138546], abs=1e-5)


def test_draws_through_the_viscometer_are_those_published():
    """A quotient by 15 %: mean 5.82, u 1.11, 95 % from 4.05 to 8.39, where slopes alone say 3.67 to 7.70."""
    found = told(ball, BALL)
    assert found.uncertainty == pytest.approx(1.11, abs=0.03)
    assert (found.low, found.high) == (pytest.approx(4.05, abs=0.02), pytest.approx(8.39, abs=0.04))


def test_draws_through_a_sum_are_normal():
    """JCGM 101:2008, 9.2.2: 95 % within 3.92 of nought."""
    found = told(total, FOUR)
    assert found.uncertainty == pytest.approx(2.0, abs=0.01)
    assert (found.low, found.high) == (pytest.approx(-3.92, abs=0.03), pytest.approx(3.92, abs=0.03))
