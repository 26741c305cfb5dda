"""A row of figures is described by its boxes; one figure astray is told and moves no line."""

import numpy as np
import pytest

from inspector.photo.plane import Rectangle, TooWeak, View
from inspector.photo.stamping import CAUTION, stamped_row


def box(x, y, wide=40.0, high=60.0, turn=0.0, about=(0.0, 0.0)):
    c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
    corners = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)]
    middle = np.array(about)
    return tuple(tuple(middle + np.array([[c, -s], [s, c]]) @ (np.array(p) - middle)) for p in corners)


EVEN = [box(100 + 50 * n, 200) for n in range(6)]
TEN_PX_A_MM = View(Rectangle(85.6, 53.98, 0.1, 0.1), ((0.0, 0.0), (856.0, 0.0), (856.0, 539.8), (0.0, 539.8)))


def test_an_even_row_in_mm():
    row = stamped_row(EVEN, TEN_PX_A_MM)
    assert (row.unit, row.height, row.spacing) == ("mm", pytest.approx(6.0), pytest.approx(5.0))
    assert row.slope == pytest.approx(0, abs=1e-9)
    assert not any(figure.apart for figure in row.figures)
    assert str(row.sentences[0]) == "6 figures, 6.00 to 6.00 mm high, the middle one 6.00."


def test_without_a_reference_lengths_are_shares_of_the_height():
    row = stamped_row(EVEN)
    assert row.unit == "heights"
    assert row.spacing == pytest.approx(50 / 60)
    assert "mm" not in " ".join(map(str, row.sentences))


def test_a_figure_below_the_line_is_told_and_moves_no_other():
    boxes = [*EVEN[:3], box(250, 210), *EVEN[4:]]
    row = stamped_row(boxes, TEN_PX_A_MM)
    assert [figure.apart for figure in row.figures] == [False, False, False, True, False, False]
    assert row.figures[3].above == pytest.approx(-1.0)
    assert "stands 1.00 mm below the line of the others" in str(row.figures[3].said)


def test_a_taller_figure_and_a_wider_gap_are_told():
    boxes = [*EVEN[:2], box(200, 190, high=70), *[box(120 + 50 * n, 200) for n in range(3, 6)]]
    row = stamped_row(boxes, TEN_PX_A_MM)
    assert "is 1.00 mm higher than the middle one" in str(row.figures[2].said)
    assert "further from the one before" in str(row.figures[3].said)


@pytest.mark.parametrize("turn", [-20, -3, 2, 45])
def test_the_slope_is_that_of_the_row(turn):
    row = stamped_row([box(100 + 50 * n, 200, turn=turn) for n in range(5)])
    assert row.slope == pytest.approx(turn, abs=1e-6)
    assert ("falls" if turn > 0 else "rises") in str(row.sentences[2])


def test_a_level_row_runs_along_the_edge():
    assert str(stamped_row(EVEN).sentences[2]) == "The row runs along the edge of the picture."


def test_boxes_may_be_drawn_in_any_order():
    assert stamped_row(EVEN[::-1]).spacing == pytest.approx(stamped_row(EVEN).spacing)


def test_less_than_the_hand_can_draw_is_not_told():
    rng = np.random.default_rng(3)
    shaken = [box(100 + 50 * n, 200 + rng.uniform(-1, 1)) for n in range(6)]
    assert not any(figure.apart for figure in stamped_row(shaken).figures)


def test_two_figures_are_no_row():
    with pytest.raises(TooWeak, match="three"):
        stamped_row(EVEN[:2])


def test_nothing_is_judged():
    words = " ".join(map(str, (*stamped_row(EVEN).sentences, CAUTION))).casefold()
    assert not any(word in words for word in ("wrong", "factory", "restamp", "tamper", "suspicious"))
