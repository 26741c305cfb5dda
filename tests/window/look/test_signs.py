"""Signs are told apart by shape alone, stay in their box, and carry their word."""

from itertools import combinations

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from inspector.window.look import (
    GRADES,
    MARKS,
    RELATIONS,
    SEEN,
    SIGNS,
    SignLabel,
    paint_sign,
    sign_icon,
    sign_width,
)
from tests.window.look.conftest import apart, grey

BOX = 40


def drawn(look, name, colour="#000000", high=BOX - 8):
    image = QImage(64, BOX, QImage.Format.Format_RGB32)
    image.fill(QColor("#FFFFFF"))
    painter = QPainter(image)
    wide = sign_width(name, high)
    rect = QRectF((64 - wide) / 2, (BOX - high) / 2, wide, high)
    paint_sign(painter, rect, name, look.inks, QColor(colour) if colour else None)
    painter.end()
    return image


@pytest.mark.parametrize("group", [MARKS + SEEN, GRADES, RELATIONS], ids=["seen", "grade", "stand"])
def test_signs_of_one_kind_are_told_apart_in_one_ink(look, group):
    alike = [(a, b) for a, b in combinations(group, 2) if apart(drawn(look, a), drawn(look, b)) < 0.02]
    assert alike == []


def test_marks_are_told_apart_in_a_grey_copy(look, scheme):
    look.set_scheme(scheme)
    for one, other in combinations(MARKS, 2):
        assert apart(drawn(look, one, colour=None), drawn(look, other, colour=None)) > 0.05


@pytest.mark.parametrize("name", SIGNS)
def test_a_sign_draws_something_and_nothing_outside_its_box(look, name):
    image = drawn(look, name)
    values = grey(image)
    wide = sign_width(name, BOX - 8)
    # Half a pixel of a soft edge may lie outside.
    left, right = (64 - wide) / 2 - 1, (64 + wide) / 2 + 1
    inside = [v for n, v in enumerate(values) if left <= n % 64 <= right and 3 <= n // 64 < 37]
    outside = [v for n, v in enumerate(values) if not (left <= n % 64 <= right and 3 <= n // 64 < 37)]
    assert min(inside) < 128
    assert min(outside) > 200


def test_the_clear_line_of_a_pass_goes_right_through(look):
    values = grey(drawn(look, "pass"))
    assert min(values[y * 64 + 32] for y in range(BOX)) > 200


def test_the_clear_lines_of_a_fail_do_not_meet(look):
    values = grey(drawn(look, "fail"))
    clear = [[x for x in range(10, 54) if all(values[y * 64 + x] > 200 for y in rows)
              and any(v < 60 for v in values[rows[0] * 64 : rows[0] * 64 + x])
              and any(v < 60 for v in values[rows[0] * 64 + x : rows[0] * 64 + 64])]
             for rows in (range(10, 17), range(23, 30))]  # fmt: skip
    assert clear[0]
    assert clear[1]
    assert not set(clear[0]) & set(clear[1])


def test_a_fail_is_half_as_wide_again_as_it_is_high():
    assert sign_width("fail", 10.0) == pytest.approx(15.2)


def test_a_sign_that_is_not_there_is_refused():
    with pytest.raises(KeyError, match="perhaps"):
        sign_width("perhaps", 10)


@pytest.mark.parametrize("alone", [False, True])
def test_the_word_is_the_name_of_a_sign(look, qtbot, alone):
    label = SignLabel(look, "doubt", "zweifelhaft", alone=alone)
    qtbot.addWidget(label)
    assert label.accessibleName() == "zweifelhaft"
    assert label.toolTip() == ("zweifelhaft" if alone else "")


@pytest.mark.parametrize("name", SEEN)
def test_a_round_sign_is_never_smaller_than_it_can_be_seen(look, qtbot, name):
    label = SignLabel(look, name, name, alone=True, step="small")
    qtbot.addWidget(label)
    assert label.sizeHint().height() >= round(2.8 * 4.7)


def test_an_icon_is_as_large_as_asked(look):
    sizes = sign_icon("fail", look, 4.0).availableSizes()
    assert [(s.width(), s.height()) for s in sizes] == [(58, 38)]
