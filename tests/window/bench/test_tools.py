"""Tools, what stands beside, marks and figures on the bench; the kept file is the same after all of it."""

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from inspector.photo.relief import Tools
from inspector.record.edits import Part
from inspector.record.photographs import take_out
from inspector.record.reading import Reading, figures_of
from inspector.record.verbs import put_entry
from inspector.record.words import Cleaning, Drawn
from inspector.window.bench import open_bench
from tests.window.bench import scenes

LEFT = Qt.MouseButton.LeftButton


def shown(canvas):
    """The grey of the picture as it is drawn now."""
    image = canvas.copy.images[min(canvas.copy.images)]
    data = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine())
    return data[:, ::4].astype(float)


def drag(qtbot, canvas, start, end):
    """A pull from one point of the picture to another."""
    one, other = canvas.to_screen(start).toPoint(), canvas.to_screen(end).toPoint()
    qtbot.mousePress(canvas, LEFT, pos=one)
    qtbot.mouseMove(canvas, (one + other) / 2)
    qtbot.mouseMove(canvas, other)
    qtbot.mouseRelease(canvas, LEFT, pos=other)


def test_it_says_that_it_is_a_copy_and_that_the_original_is_untouched(pad):
    assert "working copy" in pad.bench.head.words
    assert pad.photograph.sha256[:16] in pad.bench.original.words
    assert "untouched" in pad.bench.original.words


def test_every_tool_changes_the_copy_and_nothing_else(pad):
    before, plain = pad.kept_bytes(), shown(pad.canvas)
    panel = pad.bench.panels["light"]
    for tool in ("contrast", "grey", "invert", "relief"):
        pad.house.press(panel.tools.key(tool))
        pad.house.settle()
        assert np.abs(shown(pad.canvas) - plain).mean() > 0.5
        pad.house.press(panel.tools.key(tool))
        pad.house.settle()
        assert np.abs(shown(pad.canvas) - plain).max() == 0
    assert pad.kept_bytes() == before == pad.photograph.sha256


def test_the_light_is_turned_by_pulling_and_by_keys(pad, qtbot):
    panel = pad.bench.panels["light"]
    pad.house.press(panel.tools.key("relief"))
    pad.house.reach(panel.dial)
    middle = panel.dial.rect().center()
    qtbot.mousePress(panel.dial, LEFT, pos=middle + QPoint(30, 0))
    qtbot.mouseMove(panel.dial, middle + QPoint(0, -30))
    qtbot.mouseRelease(panel.dial, LEFT, pos=middle + QPoint(0, -30))
    pad.house.settle()
    assert panel.chosen() == Tools(relief=pytest.approx(90, abs=2))
    QTest.keyClick(panel.dial, Qt.Key.Key_Left)
    pad.house.settle()
    assert pad.canvas.copy.tools.relief == pytest.approx(105, abs=2)
    assert 0 in pad.canvas.copy.images  # the finest copy is there again


def test_before_and_after_cleaning_stand_first_and_move_as_one(made, tmp_path):
    first = made.bring(scenes.pad(tmp_path / "a.jpg", 150), place="frame", cleaned=Cleaning.BEFORE.value)
    made.bring(scenes.pad(tmp_path / "b.jpg", 20, 2), place="engine")
    after = made.bring(scenes.pad(tmp_path / "c.jpg", 30, 3), place="frame", cleaned=Cleaning.AFTER.value)
    made.open(first)
    panel = made.way("beside")
    assert "pair stands first" in panel.said.words
    made.house.press(panel.rows.widgets()[0])
    made.house.settle()
    assert panel.beside == after
    second = made.bench.second
    assert second.isVisible()
    made.canvas.zoom(3)
    made.house.settle()
    assert second.sight == made.canvas.sight
    second.zoom(0.5)
    assert made.canvas.sight == second.sight
    made.house.press(panel.linked.key("linked"))
    made.canvas.zoom(2)
    assert second.sight != made.canvas.sight
    made.house.press(panel.rows.widgets()[0])
    assert not second.isVisible()


def test_a_picture_from_a_file_stands_beside_and_is_not_kept(pad, tmp_path):
    house = pad.house
    panel = pad.way("beside")
    house.ask.pictures = [scenes.pad(tmp_path / "book.jpg", 40, 9)]
    house.press(panel.file)
    house.settle()
    second = pad.bench.second
    assert second.isVisible()
    assert second.copy.size == scenes.SIZE
    assert len(house.record.photographs) == 1
    pad.canvas.zoom(2)
    assert second.sight == pad.canvas.sight
    house.settle()
    house.press(panel.rows.widgets()[0])
    assert not second.isVisible()


@pytest.mark.parametrize("kind", [Drawn.ARROW, Drawn.RING])
def test_a_mark_is_drawn_kept_undone_and_done_again(pad, qtbot, kind):
    panel = pad.way("mark")
    pad.house.press(panel.kinds.key(kind.value))
    drag(qtbot, pad.canvas, (400, 300), (800, 600))
    (mark,) = pad.photograph.marks
    assert mark.kind is kind
    assert mark.points[0] == pytest.approx((0.25, 0.25), abs=0.002)
    assert mark.points[1] == pytest.approx((0.5, 0.5), abs=0.002)
    pad.house.window.undo()
    assert pad.photograph.marks == ()
    pad.house.window.redo()
    assert len(pad.photograph.marks) == 1
    pad.house.settle()
    assert pad.kept_bytes() == pad.photograph.sha256


def test_words_are_put_where_it_is_touched_and_taken_out_by_their_row(pad, qtbot):
    panel = pad.way("mark")
    pad.house.press(panel.kinds.key("words"))
    pad.house.type(panel.text, "figure 5")
    spot = pad.canvas.to_screen((800, 300)).toPoint()
    qtbot.mouseClick(pad.canvas, LEFT, pos=spot)
    (mark,) = pad.photograph.marks
    assert (mark.kind, mark.text) == (Drawn.WORDS, "figure 5")
    pad.house.settle()
    pad.house.press(panel.rows.widgets()[0])
    assert pad.photograph.marks == ()


def test_a_mark_by_keys_alone(pad):
    pad.way("mark")
    canvas = pad.canvas
    canvas.setFocus()
    QTest.keyClicks(canvas, "++")
    QTest.keyClick(canvas, Qt.Key.Key_Return)
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    QTest.keyClick(canvas, Qt.Key.Key_Return)
    (mark,) = pad.photograph.marks
    assert mark.points[1][0] > mark.points[0][0]
    QTest.keyClicks(canvas, ".")
    QTest.keyClick(canvas, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert pad.photograph.marks[0].points[0][0] < mark.points[0][0]
    QTest.keyClicks(canvas, ".")
    QTest.keyClick(canvas, Qt.Key.Key_Delete)
    assert pad.photograph.marks == ()


def test_boxes_round_figures_are_described_and_go_into_the_note(pad, qtbot):
    house = pad.house
    house.desk.do(put_entry(Part.READINGS, Reading(id="frame", place="frame", figures=figures_of("15842")), label="N"))
    panel = pad.way("figures")
    house.press(panel.keep)
    assert not pad.photograph.measures  # off: nothing is drawn yet
    for n in range(5):
        drag(qtbot, pad.canvas, (220 + 248 * n, 560 + 40 * (n == 2)), (400 + 248 * n, 740 + 40 * (n == 2)))
    assert [figure.apart for figure in panel.row.figures] == [False, False, True, False, False]
    assert "below the line of the others" in panel.words.words
    house.settle()
    house.press(panel.keep)
    (kept,) = pad.photograph.measures
    assert (kept.what, len(kept.points)) == ("row of figures", 20)
    house.press(panel.note)
    assert "below the line of the others" in house.record.readings[0].note
    house.window.undo()
    house.window.undo()
    assert pad.photograph.measures == ()


def test_the_bench_closes_by_key_by_page_and_with_its_photograph(pad):
    house, photo = pad.house, pad.photograph
    walk, claim = house.window.pages["walk"], house.window.pages["claim"]
    QTest.keyClick(pad.canvas, Qt.Key.Key_Escape)
    assert house.window.stack.currentWidget() is claim
    for leave in (lambda: house.page("result"), lambda: house.desk.do(take_out([photo]))):
        house.desk.wanted.emit("walk")
        bench = pad.open(photo.id)
        assert house.window.stack.currentWidget() is bench
        leave()
        house.settle()
        assert house.window.stack.indexOf(bench) < 0
    open_bench(house.desk, photo.id)
    assert house.window.stack.currentWidget() is walk
