"""Lengths beside things of known size: what they rest on is said, and what cannot carry a figure is refused."""

import numpy as np
import pytest

from inspector.photo.plane import TooWeak
from inspector.photo.references import (
    REFERENCES,
    Setting,
    figures,
    in_words,
    inches,
    length,
    sized,
    turning,
)

CARD = REFERENCES["id-1"]
FLAT = ((100.0, 100.0), (956.0, 100.0), (956.0, 639.8), (100.0, 639.8))  # ten pixels to the mm
SETTING = Setting(CARD, FLAT, 1.0, above=0.0, camera=300.0)


def rim(x=500.0, y=500.0, longer=128.75, shorter=128.75):
    turns = np.radians(np.arange(0, 360, 60))
    return tuple((x + longer * np.cos(t), y + shorter * np.sin(t)) for t in turns)


@pytest.mark.parametrize(
    ("name", "width"),
    [
        ("id-1", 85.60),  # ISO/IEC 7810, as copied in encyclopaedias
        ("us-025", 24.26), ("us-001", 19.05),  # usmint.com, coin specifications
        ("euro-2", 25.75), ("euro-1", 23.25), ("euro-050", 24.25),  # Council Regulation (EC) No 975/98
        ("uk-1-round", 22.5),  # chards.co.uk
    ],
)  # fmt: skip
def test_published_sizes(name, width):
    assert REFERENCES[name].width == width


def test_a_length_beside_a_card():
    told = length(SETTING, (200.0, 700.0), (600.0, 1000.0)).told
    assert told.value == pytest.approx(50.0, abs=1e-6)
    assert told.low < 50 < told.high


def test_the_assumed_tolerance_is_printed_with_the_result():
    words = " ".join(str(said) for said in length(SETTING, (200.0, 700.0), (600.0, 1000.0)).rests_on)
    assert "± 0.15 mm" in words
    assert "no tolerance was read in a source" in words
    assert "within 1.0 pixels" in words


def test_height_above_the_plane_widens_by_similar_triangles():
    """6 mm of 300 mm is 2 % of the length; limits taken as rectangular, over the root of 3 (JCGM 100:2008, 4.3.7)."""
    plain = length(Setting(CARD, FLAT, 1.0, 0.0, 300.0), (200.0, 700.0), (600.0, 1000.0)).told
    above = length(Setting(CARD, FLAT, 1.0, 6.0, 300.0), (200.0, 700.0), (600.0, 1000.0)).told
    added = np.sqrt(above.uncertainty**2 - plain.uncertainty**2)
    assert added == pytest.approx(50 * 6 / 300 / np.sqrt(3), rel=1e-6)


def test_nobody_said_whether_it_lies_in_the_plane():
    answer = length(Setting(CARD, FLAT, 1.0, None), (200.0, 700.0), (600.0, 1000.0))
    assert "Nobody said" in str(answer.beware[0])
    assert length(SETTING, (200.0, 700.0), (600.0, 1000.0)).beware == ()


def test_far_out_of_the_plane_is_refused():
    with pytest.raises(TooWeak, match="one plane"):
        length(Setting(CARD, FLAT, 1.0, 80.0, 200.0), (200.0, 700.0), (600.0, 1000.0))


def test_an_angle_beside_a_card_and_none_beside_a_rule():
    told = turning(SETTING, (200.0, 800.0), (600.0, 800.0), (200.0, 400.0))
    assert told.told.value == pytest.approx(90, abs=1e-6)
    assert str(in_words(told)).startswith("90.0°")
    rule = Setting(sized(REFERENCES["rule"], 100.0), ((0.0, 0.0), (1000.0, 0.0)))
    with pytest.raises(TooWeak, match="along itself"):
        turning(rule, (0.0, 0.0), (10.0, 0.0), (0.0, 10.0))


def test_a_rule_by_two_strokes():
    rule = Setting(sized(REFERENCES["rule"], 100.0), ((100.0, 100.0), (1100.0, 100.0)), 1.0, 0.0, 300.0)
    answer = length(rule, (200.0, 150.0), (600.0, 150.0))
    assert answer.told.value == pytest.approx(40.0, abs=1e-6)
    assert any("square over the rule within 10 degrees" in str(said) for said in answer.rests_on)
    assert answer.told.uncertainty > 0.3  # a tilt that nobody sees


def test_something_of_ones_own_needs_its_size():
    with pytest.raises(TooWeak, match="Type the size"):
        length(Setting(REFERENCES["own"], FLAT), (0.0, 0.0), (10.0, 0.0))
    own = sized(REFERENCES["own"], 85.6, 53.98, 0.5)
    assert length(Setting(own, FLAT, 1.0, 0.0), (200.0, 700.0), (600.0, 1000.0)).told.value == pytest.approx(50)
    with pytest.raises(TooWeak):
        sized(REFERENCES["own"], float("nan"), 1.0)


def test_a_coin_from_above():
    coin = Setting(REFERENCES["euro-2"], rim(), 1.0, 0.0, 300.0)
    told = length(coin, (700.0, 500.0), (900.0, 500.0)).told
    assert told.value == pytest.approx(20.0, abs=0.01)


@pytest.mark.parametrize("squashed", [0.95, 0.8])
def test_a_coin_from_the_side_is_refused(squashed):
    with pytest.raises(TooWeak, match="straight above"):
        length(Setting(REFERENCES["euro-2"], rim(shorter=128.75 * squashed)), (700.0, 500.0), (900.0, 500.0))


def test_points_on_no_rim_are_refused():
    line = tuple((10.0 * n, 10.0 * n + (n % 2)) for n in range(6))
    with pytest.raises(TooWeak):
        length(Setting(REFERENCES["euro-2"], line), (700.0, 500.0), (900.0, 500.0))


def test_a_missing_reference_is_asked_for():
    with pytest.raises(TooWeak, match="Point at the reference"):
        length(Setting(CARD, FLAT[:2]), (0.0, 0.0), (1.0, 1.0))


@pytest.mark.parametrize(
    ("mm", "u", "words"),
    [(25.4, 0.1, "1"), (12.7, 0.1, "1/2"), (41.275, 0.2, "1 5/8"), (0.396875, 0.1, "1/64"), (41.0, 1.0, "1 5/8")],
)
def test_inches_are_no_finer_than_they_are_known(mm, u, words):
    """1 inch is 25.4 mm exactly."""
    assert inches(mm, u) == words


def test_no_more_figures_than_are_known():
    assert [figures(u) for u in (0.01, 0.2, 2.0)] == [2, 1, 0]
