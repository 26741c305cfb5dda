"""Cells of figures, keys to touch, rows with a number, a picture and a table: large enough, told apart, never cut."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QImage

from inspector.window.look import Cell, FigureCells, FigurePad, NumberRow, Picture, Table
from inspector.window.look.figures import PROBABLE, UNREADABLE
from tests.window.look.conftest import PX_PER_MM, SCALES, apart, picture

FINGER = 12 * PX_PER_MM
NUMBER = (Cell("6"), Cell("H"), Cell("1", after_gap=True), Cell("5"), Cell("8", PROBABLE, ("3",)), Cell("4"), Cell("2"))
LONG = tuple(Cell(text) for text in "1HFPC4108GA000123")


def shown(cells):
    return [key for key in cells.keys if key.isVisible()]


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("width", [300, 545, 752])
@pytest.mark.parametrize("number", [(), NUMBER, LONG], ids=["empty", "seven", "seventeen"])
def test_every_cell_is_as_large_as_a_finger_and_lies_within(look, stage, number, width, scale):
    look.set_text_scale(scale)
    cells = FigureCells(look)
    cells.show_cells(number, len(number))
    stage(cells, width, cells.heightForWidth(width))
    keys = shown(cells)
    assert len(keys) == len(number) + 1
    for n, key in enumerate(keys):
        assert min(key.width(), key.height()) >= FINGER - 1
        assert cells.rect().contains(key.geometry())
        assert not any(key.geometry().intersects(other.geometry()) for other in keys[:n])


def test_what_stands_between_two_gaps_is_kept_on_one_line(look, stage):
    cells = FigureCells(look)
    cells.show_cells(NUMBER, 0)
    stage(cells, 440, cells.heightForWidth(440))
    tops = [key.y() for key in shown(cells)]
    assert tops[0] == tops[1] < tops[2]
    assert len(set(tops[2:])) == 1


def test_figures_are_large_where_the_number_fits_and_smaller_where_it_does_not(look, stage):
    cells = FigureCells(look)
    cells.show_cells(NUMBER, 0)
    stage(cells, 545, cells.heightForWidth(545))
    assert cells.face() == round(15 * PX_PER_MM)
    cells.show_cells(LONG, 0)
    assert 10 * PX_PER_MM < cells.face() < round(15 * PX_PER_MM)


def test_clear_probable_and_unreadable_are_told_apart_without_colour(look, stage):
    cells = FigureCells(look)
    cells.show_cells((Cell("8"), Cell("8", PROBABLE, ("3",)), Cell(kind=UNREADABLE), Cell("8")), 3)
    stage(cells, 545, cells.heightForWidth(545))
    clear, probable, unread, _ = (picture(key) for key in shown(cells))
    assert apart(clear, probable) > 0.004
    assert apart(clear, unread) > 0.03
    assert apart(probable, unread) > 0.03


def test_a_cell_says_its_figure_and_only_the_open_one_takes_tab(look, stage):
    cells = FigureCells(look)
    cells.show_cells(NUMBER, 4)
    stage(cells, 545, cells.heightForWidth(545))
    names = [key.accessibleName() for key in shown(cells)]
    assert names[0] == "Figure 1: 6"
    assert names[4] == "Figure 5: 8 or 3, probable"
    tab = [n for n, key in enumerate(shown(cells)) if key.focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert tab == [4]


def test_keys_tell_what_they_write_and_leave_the_rest_to_the_page(look, stage, qtbot):
    cells, told, commands = FigureCells(look), [], []
    cells.typed.connect(told.append)
    cells.commanded.connect(commands.append)
    cells.show_cells(NUMBER, 4)
    stage(cells, 545, cells.heightForWidth(545))
    cells.focus()
    qtbot.keyClicks(cells.current(), "8?, [")
    assert told == ["8", "?", ",", " ", "["]
    for key in (Qt.Key.Key_Left, Qt.Key.Key_End, Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Return):
        qtbot.keyClick(cells.current(), key)
    assert commands == ["left", "end", "delete", "back", "next"]
    qtbot.keyClick(cells.current(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(cells.current(), Qt.Key.Key_F8)
    assert len(told) == 5
    assert len(commands) == 5


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("width", [752, 1232])
def test_keys_to_touch_are_as_large_as_a_finger_at_any_size_of_type(look, stage, width, scale):
    look.set_text_scale(scale)
    pad = FigurePad(look)
    stage(pad, width, pad.heightForWidth(width))
    for key in pad.keys.values():
        assert min(key.width(), key.height()) >= FINGER - 1
        assert key.accessibleName()
    assert pad.height() < 400


def test_a_dimmed_letter_looks_off_and_is_written_all_the_same(look, stage, qtbot):
    pad, told = FigurePad(look), []
    pad.typed.connect(told.append)
    pad.dim("IO")
    stage(pad, 1232, pad.heightForWidth(1232))
    assert (pad.keys["I"].state, pad.keys["J"].state) == ("off", "rest")
    for word in ("I", "7", "gap", "or", "?"):
        qtbot.mouseClick(pad.keys[word], Qt.MouseButton.LeftButton)
    assert told == ["I", "7", " ", ",", "?"]


@pytest.mark.parametrize("scale", SCALES)
def test_a_row_with_a_number_is_named_by_it_and_high_enough(look, qtbot, scale):
    look.set_text_scale(scale)
    row = NumberRow(look)
    qtbot.addWidget(row)
    row.say("Frame number", "headstock, left", NUMBER, "8 or 3 at figure 5", said="6 H 1 5 8 or 3 4 2")
    assert row.accessibleName() == "Frame number, headstock, left, 6 H 1 5 8 or 3 4 2, 8 or 3 at figure 5"
    plain = NumberRow(look)
    qtbot.addWidget(plain)
    plain.say("Frame number", "headstock, left", (), "not read yet")
    assert row.heightForWidth(300) > plain.heightForWidth(300) >= FINGER


def strip():
    """A picture three times as wide as high, black at the left and white at the right."""
    image = QImage(600, 200, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    for x in range(300):
        for y in range(200):
            image.setPixelColor(x, y, QColor("black"))
    return image


def test_a_picture_fills_its_room_is_made_larger_and_pulled(look, stage, qtbot):
    view = Picture(look, 40)
    view.show_image(strip(), "pad")
    stage(view, 400, 188)
    filled = view.share
    assert view._target().height() == pytest.approx(188, abs=1)
    qtbot.keyClicks(view, "+")
    assert view.share == pytest.approx(filled * 1.5)
    before = view.middle.x()
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=QPoint(300, 90))
    qtbot.mouseMove(view, QPoint(200, 90))
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=QPoint(200, 90))
    assert view.middle.x() > before
    qtbot.keyClicks(view, "0")
    assert (view.share, view.middle) == (1.0, QPointF(0.5, 0.5))
    assert view._target().width() == pytest.approx(400, abs=1)


def test_a_picture_without_its_file_says_so(look, stage):
    view = Picture(look, 40)
    view.show_image(QImage(), "pad", "not in the store")
    empty = picture(stage(view, 400, 188))
    view.show_image(QImage(), "pad", "")
    assert apart(empty, picture(view)) > 0


@pytest.mark.parametrize("scale", SCALES)
def test_a_table_says_every_figure_and_keeps_within_its_room(look, qtbot, scale):
    look.set_text_scale(scale)
    table = Table(look)
    qtbot.addWidget(table)
    table.set_rows(("year", "as assumed", "half"), [("1953", "+20.5", "+24.0"), ("1954", "−2.6", "−6.0")], 0)
    assert table.accessibleName() == "year 1953; as assumed +20.5; half +24.0. year 1954; as assumed −2.6; half −6.0"
    wides = table._wides(640)
    assert sum(wides) + look.mm(3) * (len(wides) - 1) <= 641
    assert table.heightForWidth(640) > 2 * look.leading("text")
