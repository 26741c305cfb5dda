"""A length beside a card, by hand, found and corrected; what cannot carry it is refused in words."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tests.window.bench import scenes

LEFT = Qt.MouseButton.LeftButton


def touch(qtbot, canvas, point):
    qtbot.mouseClick(canvas, LEFT, pos=canvas.to_screen(point).toPoint())


def found(bench):
    """The card is found by its key."""
    panel = bench.way("measure")
    bench.house.press(panel.finder)
    bench.house.settle()
    return panel


def measured(bench, qtbot):
    panel = found(bench)
    for end in scenes.tube_ends():
        touch(qtbot, bench.canvas, end)
    return panel


def test_the_card_is_found(card):
    panel = found(card)
    x, y = scenes.CARD_AT
    assert panel.corners[0] == pytest.approx((x, y), abs=1)
    assert panel.corners[2] == pytest.approx((x + 85.6 * scenes.FLAT, y + 53.98 * scenes.FLAT), abs=1)
    assert panel.status.words == "Touch an end of what is measured."


def test_a_length_has_its_interval_and_says_what_it_rests_on(card, qtbot):
    panel = measured(card, qtbot)
    told = panel.answer.told
    assert told.low < scenes.TUBE < told.high
    assert told.value == pytest.approx(scenes.TUBE, abs=0.4)
    assert "95 %" in panel.result.words
    assert "± 0.15 mm" in panel.rests.words
    assert "Nobody said" in panel.beware.words
    card.house.press(panel.planes.key("in"))
    assert panel.beware.words == ""


def test_out_of_the_plane_widens_the_interval_and_warns(card, qtbot):
    panel = measured(card, qtbot)
    narrow = panel.answer.told
    card.house.press(panel.planes.key("out"))
    card.house.type(panel.above, "6")
    card.house.type(panel.camera, "300")
    assert panel.answer.told.uncertainty > narrow.uncertainty
    assert "2.0 % of the figure" in panel.beware.words
    card.house.type(panel.above, "150")
    assert panel.answer is None
    assert "one plane" in panel.status.words


def test_kept_undone_and_put_back_into_the_picture(card, qtbot):
    panel = measured(card, qtbot)
    card.house.press(panel.keep)
    (kept,) = card.photograph.measures
    assert kept.value == pytest.approx(scenes.TUBE, abs=0.4)
    assert kept.low < kept.value < kept.high
    assert "bank card" in kept.note
    card.house.settle()
    panel.begin_points()
    assert panel.answer is None
    card.house.press(panel.kept.rows.widgets()[0])
    assert panel.answer.told.value == pytest.approx(kept.value, abs=1e-3)
    card.house.settle()
    card.house.press(panel.kept.out)
    assert card.photograph.measures == ()
    card.house.window.undo()
    assert card.photograph.measures == (kept,)
    card.house.settle()
    assert card.kept_bytes() == card.photograph.sha256


def test_what_was_said_of_plane_camera_and_pointing_comes_back_with_it(card, qtbot):
    panel = measured(card, qtbot)
    panel.planes.key("out").click()
    for field, text in ((panel.above, "2"), (panel.camera, "250")):
        field.edit.setText(text)
        field.commit()
    panel.pointing.key("3").click()
    words = panel.result.words
    card.house.press(panel.keep)
    (kept,) = card.photograph.measures
    assert (kept.above, kept.camera, kept.pointing) == (2.0, 250.0, 3.0)
    panel.planes.key("in").click()
    panel.camera.set_value("")
    panel.pointing.key("1").click()
    assert panel.result.words != words
    card.house.settle()
    card.house.press(panel.kept.rows.widgets()[0])
    assert panel.result.words == words
    assert kept.note.startswith(words)


def test_an_outline_found_for_another_reference_is_left(card):
    panel = card.way("measure")
    panel.look_for_it()
    panel.choice.set_value("euro-2")
    panel.choice.committed.emit("euro-2")
    card.house.settle()
    assert panel.corners == []
    assert "rim of the coin" in panel.status.words


def test_taken_over_to_the_measure_of_the_item(card, qtbot):
    panel = measured(card, qtbot)
    house = card.house
    measure = next(m for m in panel.kept.measures() if m.unit == "mm")
    panel.kept.take_over(measure.id)
    (taken,) = house.finding(card.photograph.item).measured
    assert taken.instrument.startswith("photograph ±")
    assert float(taken.readings[0]) == pytest.approx(scenes.TUBE, abs=0.4)
    panel.kept.take_over(measure.id)
    assert "has a reading already" in house.told[-1]
    assert len(house.finding(card.photograph.item).measured[0].readings) == 1


def test_the_uncertainty_goes_along(card, qtbot):
    """A limit e taken as rectangular has the standard uncertainty e over the root of 3 (JCGM 100:2008, 4.3.7)."""
    from inspector.judgement.measures import measured_result

    panel = measured(card, qtbot)
    measure = next(m for m in panel.kept.measures() if m.unit == "mm")
    panel.kept.take_over(measure.id)
    photograph = card.photograph
    item = card.house.desk.profile.item_by_id[photograph.item]
    result = measured_result(item, card.house.finding(photograph.item).measured[0])
    assert result.uncertainty == pytest.approx(panel.answer.told.uncertainty, rel=0.1)


def test_corners_by_hand_in_any_order_and_one_corrected_by_keys(card, qtbot):
    panel = card.way("measure")
    x, y = scenes.CARD_AT
    right, low = x + 85.6 * scenes.FLAT, y + 53.98 * scenes.FLAT
    for corner in ((right, low), (x, y), (right, y), (x, low)):
        touch(qtbot, card.canvas, corner)
    assert panel.corners[0] == pytest.approx((x, y), abs=2)
    assert panel.corners[1] == pytest.approx((right, y), abs=2)
    card.canvas.setFocus()
    QTest.keyClicks(card.canvas, ".")
    before = panel.corners[0]
    QTest.keyClick(card.canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert panel.corners[0][0] > before[0] + 4


def test_a_corner_is_pulled_under_the_magnifier(card, qtbot):
    panel = found(card)
    canvas, before = card.canvas, panel.corners[2]
    spot = canvas.to_screen(before).toPoint()
    qtbot.mousePress(canvas, LEFT, pos=spot)
    assert canvas.aim is not None
    card.house.window.grab()  # draws the magnifier
    for step in (8, 16, 24):
        qtbot.mouseMove(canvas, spot + canvas.rect().topLeft() + type(spot)(step, 0))
    qtbot.mouseRelease(canvas, LEFT, pos=spot + type(spot)(24, 0))
    assert panel.corners[2][0] > before[0] + 10


def test_crossed_corners_are_refused_in_words(card, qtbot):
    panel = measured(card, qtbot)
    panel.put_at(0, (1500.0, 1150.0), done=True)
    assert panel.answer is None
    assert "cross" in panel.status.words or "small" in panel.status.words
    assert panel.keep.off


def test_an_angle(card, qtbot):
    panel = found(card)
    card.house.press(panel.whats.key("angle"))
    for point in ((400, 1000), (700, 1000), (400, 700)):
        panel.put(tuple(map(float, point)))
    assert panel.answer.told.value == pytest.approx(90, abs=0.5)
    assert panel.result.words.startswith(("90", "89", "90.1"))


def test_a_rule_is_typed_and_pointed_at(card):
    panel = card.way("measure")
    panel.choice.key.picked.emit("rule")
    assert panel.finder.off
    card.house.type(panel.wide, "85.6")
    x, y = scenes.CARD_AT
    panel.put((x, y))
    panel.put((x + 85.6 * scenes.FLAT, y))
    for end in scenes.tube_ends():
        panel.put(end)
    assert panel.answer.told.value == pytest.approx(scenes.TUBE, abs=0.3)
    assert "square over the rule" in panel.rests.words


def test_the_plane_from_above_stands_beside(card, qtbot):
    panel = found(card)
    card.house.press(panel.above_view)
    card.house.settle()
    assert card.bench.second.isVisible()
    wide, high = card.bench.second_copy.size
    assert wide > high / 2
    card.house.press(panel.above_view)
    card.house.settle()
    assert not card.bench.second.isVisible()


def test_the_plane_from_above_goes_with_the_measuring(card):
    panel = found(card)
    card.house.press(panel.above_view)
    card.house.settle()
    card.way("mark")
    assert not card.bench.second.isVisible()
    card.way("measure")
    card.house.press(panel.above_view)
    card.house.settle()
    assert card.bench.second.isVisible()


def test_a_picture_that_comes_late_does_not_stand_for_the_one_wanted_after_it(card, tmp_path):
    panel = found(card)
    bench = card.bench
    bench.put_file_beside(scenes.pad(tmp_path / "other.jpg", 30, size=(800, 1200)))
    bench.second_copy.show_pixels((bench.subject.copy.base[1],))
    card.house.settle()
    assert bench.second_copy.size == bench.subject.copy.base[1].shape[1::-1]
    assert panel.corners
