"""How often the 95 % interval holds the truth, in a scene whose camera, card and length are known."""

import numpy as np
import pytest

from inspector.photo.plane import Rectangle, TooWeak, View, distance

CARD = Rectangle(85.60, 53.98, 0.06, 0.03)
RUNS, POINTING, FOCAL = 500, 1.2, 3000.0


def camera(rng):
    """A pinhole camera about 400 mm from the card, tilted up to 45 degrees any way; mm to pixels."""
    tilt, about, roll = np.radians(rng.uniform(0, 45)), rng.uniform(0, 2 * np.pi), rng.uniform(0, 2 * np.pi)
    axis = np.array([np.cos(about), np.sin(about), 0])
    turn = rotation(axis, tilt) @ rotation(np.array([0.0, 0.0, 1.0]), roll)
    middle = np.array([42.8, 27.0, 0.0])

    def seen(points, height=0.0):
        space = np.column_stack([points, np.full(len(points), height)]) - middle
        at = space @ turn.T + np.array([0, 0, 400.0])
        return FOCAL * at[:, :2] / at[:, 2:] + np.array([2000.0, 1500.0])

    return seen


def rotation(axis, angle):
    x, y, z = axis
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross


def one_run(rng, height=0.0, off_plane=0.0):
    seen = camera(rng)
    width, high = CARD.width + CARD.u_width * rng.normal(), CARD.height + CARD.u_height * rng.normal()
    corners = seen(np.array([(0, 0), (width, 0), (width, high), (0, high)]))
    start = np.array([rng.uniform(-60, 120), rng.uniform(-60, 100)])
    way, length = rng.uniform(0, 2 * np.pi), rng.uniform(15, 90)
    ends = seen(np.array([start, start + length * np.array([np.cos(way), np.sin(way)])]), height)
    noisy = lambda points: points + POINTING * rng.normal(size=points.shape)  # noqa: E731
    view = View(CARD, tuple(map(tuple, noisy(corners))), POINTING)
    first, second = map(tuple, noisy(ends))
    return length, distance(view, first, second, off_plane=off_plane, seed=int(rng.integers(1 << 30)))


def share_held(seed, **scene):
    rng = np.random.default_rng(seed)
    runs = [one_run(rng, **scene) for _ in range(RUNS)]
    return sum(told.low <= length <= told.high for length, told in runs) / RUNS


def test_the_interval_holds_the_truth_about_as_often_as_it_says():
    assert 0.93 <= share_held(20261125) <= 0.97


def test_what_lies_above_the_plane_is_missed_unless_that_is_told():
    """A pad 6 mm nearer than the card: its share of the distance, 6 in 400, has to be given."""
    assert share_held(7, height=-6.0) < 0.7
    assert share_held(7, height=-6.0, off_plane=6 / 400) > 0.9


def test_linear_propagation_and_draws_agree_where_the_view_is_fair():
    rng = np.random.default_rng(3)
    for _ in range(50):
        _, told = one_run(rng)
        assert told.uncertainty == pytest.approx(told.linear, rel=0.15)


def test_a_camera_that_looks_along_the_plane_is_refused():
    corners = ((0.0, 0.0), (2000.0, 0.0), (1100.0, 60.0), (900.0, 60.0))
    with pytest.raises(TooWeak):
        distance(View(CARD, corners), (100.0, 5.0), (300.0, 5.0))
