"""The 34 pairs of the published test table of CIEDE2000.

Source: Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and
mathematical observations", Color Res. Appl. 30 (2005) 21-30, Table 1 (DOI 10.1002/col.20070).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.photo.colour import Lab, difference, lab_of

PAIRS = (
    (50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425),
    (50, 2.5, 0, 73, 25, -18, 27.1492),
    (50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615),
    (50, 2.5, 0, 61, -5, 29, 22.8977),
    (50, 2.8361, -74.0200, 50, 0, -82.7485, 3.4412),
    (50, 2.5, 0, 56, -27, -3, 31.9030),
    (50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0000),
    (50, 2.5, 0, 58, 24, 15, 19.4535),
    (50, -1.1848, -84.8006, 50, 0, -82.7485, 1.0000),
    (50, 2.5, 0, 50, 3.1736, 0.5854, 1.0000),
    (50, -0.9009, -85.5211, 50, 0, -82.7485, 1.0000),
    (50, 2.5, 0, 50, 3.2972, 0, 1.0000),
    (50, 0, 0, 50, -1, 2, 2.3669),
    (50, 2.5, 0, 50, 1.8634, 0.5757, 1.0000),
    (50, -1, 2, 50, 0, 0, 2.3669),
    (50, 2.5, 0, 50, 3.2592, 0.3350, 1.0000),
    (50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792),
    (60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644),
    (50, 2.49, -0.001, 50, -2.49, 0.0010, 7.1792),
    (63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630),
    (50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195),
    (61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731),
    (50, 2.49, -0.001, 50, -2.49, 0.0012, 7.2195),
    (35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645),
    (50, -0.001, 2.49, 50, 0.0009, -2.49, 4.8045),
    (22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373),
    (50, -0.001, 2.49, 50, 0.0010, -2.49, 4.8045),
    (36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146),
    (50, -0.001, 2.49, 50, 0.0011, -2.49, 4.7461),
    (90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441),
    (50, 2.5, 0, 50, 0, -2.5, 4.3065),
    (90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381),
    (6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377),
    (2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082),
)


@pytest.mark.parametrize("row", PAIRS, ids=str)
def test_published_pairs(row):
    first, second = Lab(*row[:3]), Lab(*row[3:6])
    assert difference(first, second) == pytest.approx(row[6], abs=1e-4)
    assert difference(second, first) == pytest.approx(row[6], abs=1e-4)


channel = st.floats(0, 255)
labs = st.builds(lab_of, channel, channel, channel)


@given(labs, labs)
def test_it_is_a_difference(first, second):
    assert difference(first, first) == pytest.approx(0, abs=1e-9)
    assert difference(first, second) == pytest.approx(difference(second, first))
    assert difference(first, second) >= 0


def test_white_black_and_grey_have_no_hue():
    assert lab_of(255, 255, 255) == pytest.approx((100, 0, 0), abs=1e-9)
    assert lab_of(0, 0, 0) == pytest.approx((0, 0, 0), abs=1e-9)
    assert lab_of(119, 119, 119)[1:] == pytest.approx((0, 0), abs=1e-9)
