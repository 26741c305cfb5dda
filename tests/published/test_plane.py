"""Plane geometry of a photograph.

Checked against OpenCV (getPerspectiveTransform) and scikit-image (projective transform) as general-purpose libraries;
a square worked by hand; linear propagation against the `uncertainties` package, on figures of our own. Formula of the
photograph scale: (u/L)^2 = (u_D/D)^2 + (u_o/p_o)^2 + (u_r/p_r)^2 (JCGM 100:2008, 5.1.6, product of powers).
"""

import cv2
import numpy as np
import pytest
from skimage import transform
from uncertainties import ufloat

from inspector.photo.plane import Rectangle, TooWeak, View, angle, distance, homography, project, to_plane

CORNERS = ((102.0, 88.0), (1180.0, 140.0), (1105.0, 760.0), (60.0, 690.0))
CARD = Rectangle(85.60, 53.98, 0.06, 0.03)
MM = np.array([(0, 0), (85.60, 0), (85.60, 53.98), (0, 53.98)], float)


def test_a_square_by_hand():
    square = np.array([(0, 0), (1, 0), (1, 1), (0, 1)], float)
    target = np.array([(0, 0), (2, 0), (1.5, 1), (0.5, 1)], float)
    assert homography(square, target) == pytest.approx(np.array([[2, 1, 0], [0, 2, 0], [0, 1, 1]]), abs=1e-12)


def test_the_same_as_opencv_and_scikit_image():
    ours = homography(np.array(CORNERS), MM)
    theirs = cv2.getPerspectiveTransform(np.array(CORNERS, np.float32), MM.astype(np.float32))
    assert ours == pytest.approx(theirs, rel=1e-4, abs=1e-6)
    other = transform.estimate_transform("projective", np.array(CORNERS), MM).params
    assert ours == pytest.approx(other / other[2, 2], rel=1e-6, abs=1e-9)


def test_two_points_of_the_worked_view():
    found = project(to_plane(View(CARD, CORNERS)), np.array([(600.0, 400.0), (700.0, 420.0)]))
    assert found == pytest.approx(np.array([(42.402707, 24.941653), (50.552608, 26.192879)]), abs=1e-5)
    told = distance(View(CARD, CORNERS), (600, 400), (700, 420))
    assert told.value == pytest.approx(8.245390, abs=1e-5)


def solved(rows, right):
    """The solution of linear equations whose entries carry uncertainties, by elimination."""
    rows = [[*row, value] for row, value in zip(rows, right, strict=True)]
    for at in range(len(rows)):
        best = max(range(at, len(rows)), key=lambda r: abs(getattr(rows[r][at], "n", rows[r][at])))
        rows[at], rows[best] = rows[best], rows[at]
        rows[at] = [value / rows[at][at] for value in rows[at]]
        for other in range(len(rows)):
            if other != at:
                factor = rows[other][at]
                rows[other] = [a - factor * b for a, b in zip(rows[other], rows[at], strict=True)]
    return [row[-1] for row in rows]


def test_linear_propagation_is_that_of_the_uncertainties_package():
    told = distance(View(CARD, CORNERS, pointing=1.5), (600, 400), (700, 420))
    w, h = ufloat(85.60, 0.06), ufloat(53.98, 0.03)
    rows, right = [], []
    for (cx, cy), (a, b) in zip(CORNERS, [(0, 0), (w, 0), (w, h), (0, h)], strict=True):
        x, y = ufloat(cx, 1.5), ufloat(cy, 1.5)
        rows += [[x, y, 1, 0, 0, 0, -a * x, -a * y], [0, 0, 0, x, y, 1, -b * x, -b * y]]
        right += [a, b]
    eight = solved(rows, right)

    def plane(px, py):
        x, y = ufloat(px, 1.5), ufloat(py, 1.5)
        below = eight[6] * x + eight[7] * y + 1
        return (eight[0] * x + eight[1] * y + eight[2]) / below, (eight[3] * x + eight[4] * y + eight[5]) / below

    (x1, y1), (x2, y2) = plane(600, 400), plane(700, 420)
    expected = ((x1 - x2) ** 2 + (y1 - y2) ** 2) ** 0.5
    assert told.value == pytest.approx(expected.n, rel=1e-9)
    assert told.linear == pytest.approx(expected.s, rel=1e-3)
    assert told.uncertainty == pytest.approx(told.linear, rel=0.05)
    assert sum(told.shares.values()) == pytest.approx(1)


def test_a_flat_scale_is_the_product_rule():
    reference = Rectangle(24.26, 24.26, 0.05, 0.0)
    side = 410.0
    view = View(reference, ((0, 0), (side, 0), (side, side), (0, side)), pointing=0.0)
    told = distance(view, (0, 200), (640, 200))
    assert told.value == pytest.approx(37.869268, abs=1e-6)
    assert told.linear == pytest.approx(0.078049, abs=1e-5)  # the reference's part alone


def test_a_right_angle_is_one():
    told = angle(View(CARD, CORNERS), CORNERS[0], CORNERS[1], CORNERS[3])
    assert told.value == pytest.approx(90, abs=1e-9)
    assert told.low < 90 < told.high


def test_points_off_the_plane_widen_what_is_told():
    plain = distance(View(CARD, CORNERS), (600, 400), (700, 420))
    wide = distance(View(CARD, CORNERS), (600, 400), (700, 420), off_plane=0.03)
    assert wide.uncertainty > plain.uncertainty
    assert wide.shares["out of the plane"] > 0


@pytest.mark.parametrize(
    ("corners", "words"),
    [
        (((0, 0), (10, 0), (10, 10), (0, 10)), "too small"),
        (((0, 0), (500, 500), (500, 0), (0, 500)), "cross"),
        (((0, 0), (900, 0), (500, 50), (450, 50)), "along the plane"),
        (((0, 0), (500, 0), (1000, 0), (0, 300)), "cross"),
    ],
)
def test_a_weak_view_is_refused_in_words(corners, words):
    with pytest.raises(TooWeak, match=words):
        distance(View(CARD, corners), (1, 1), (50, 50))


def test_a_point_far_from_the_reference_is_refused():
    with pytest.raises(TooWeak, match="too far"):
        distance(View(CARD, CORNERS), (600, 400), (60000, 400))
