"""A doubtful figure is looked at closely at home; beside the machine a fork tube is measured by a card."""

import hashlib

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from inspector.record.photographs import change_photograph
from inspector.record.words import Cleaning, Drawn
from inspector.sheet.photos import pictures_of
from inspector.window.bench.bench import Bench
from inspector.window.thumb import Large, Thumb
from tests.window.bench import scenes

LEFT = Qt.MouseButton.LeftButton


def pull(house, canvas, start, end):
    one, other = canvas.to_screen(start).toPoint(), canvas.to_screen(end).toPoint()
    house.qtbot.mousePress(canvas, LEFT, pos=one)
    house.qtbot.mouseMove(canvas, (one + other) / 2)
    house.qtbot.mouseMove(canvas, other)
    house.qtbot.mouseRelease(canvas, LEFT, pos=other)


def way(house, name):
    bench = house.window.stack.currentWidget()
    assert isinstance(bench, Bench)
    house.press(bench.ways.key(name))
    house.settle()
    return bench.panels[name]


def same_bytes(house):
    """Every kept file still has the name that its bytes give it."""
    kept = house.desk.library.photographs
    found = [hashlib.sha256(kept.path(name).read_bytes()).hexdigest() == name for name in kept.listing()]
    return all(found) and len(found)


def two_lamps(house, folder):
    """The pad of the frame, before and after it was wiped, is at the place on the page Numbers; the number is read."""
    house.page("numbers")
    numbers = house.window.pages["numbers"]
    house.ask.pictures = [scenes.pad(folder / "left.jpg", 160), scenes.pad(folder / "right.jpg", 20, 2)]
    house.press(numbers.place.photographs.strip.plus)
    house.settle()
    for one, cleaned in zip(house.record.photographs, (Cleaning.BEFORE, Cleaning.AFTER), strict=True):
        house.desk.do(change_photograph(one, label="Cleaned", cleaned=cleaned.value))
    numbers.begin()
    for figure in "15842":
        QTest.keyClicks(QApplication.focusWidget(), figure)
    house.settle()
    return numbers


def look_at_both(house, bench):
    """Relief, the light turned by hand, and the pair side by side moving as one."""
    light = bench.panels["light"]
    house.press(light.tools.key("relief"))
    house.press(light.tools.key("contrast"))
    house.settle()
    house.reach(light.dial)
    house.qtbot.mouseClick(light.dial, LEFT, pos=light.dial.rect().center() + QPoint(0, -20))
    house.settle()
    beside = way(house, "beside")
    house.press(beside.rows.widgets()[0])
    house.settle()
    assert bench.second.isVisible()
    QTest.keyClicks(bench.canvas, "++")
    assert bench.second.sight == bench.canvas.sight
    QTest.keyClicks(bench.canvas, "0")
    house.press(beside.rows.widgets()[0])


def ring_and_boxes(house, bench):
    """A ring round the doubtful figure, boxes round all of them, and what they say in the note of the reading."""
    marking = way(house, "mark")
    house.press(marking.kinds.key("ring"))
    pull(house, bench.canvas, (790, 680), (930, 680))
    figures = way(house, "figures")
    for n in range(5):
        drop = 8 if n == 2 else 0
        pull(house, bench.canvas, (215 + 248 * n, 570 + drop), (395 + 248 * n, 740 + drop))
    assert "Described, not judged" in " ".join(w.words for w in figures.widgets() if hasattr(w, "words"))
    house.settle()
    house.press(figures.note)


def test_a_doubtful_figure_with_the_lamp_from_two_sides(house, tmp_path):
    house.build()
    house.start()
    numbers = two_lamps(house, tmp_path)
    assert house.record.readings[0].typed() == "15842"
    house.press(numbers.place.photographs.closely)
    house.settle()
    bench = house.window.stack.currentWidget()
    look_at_both(house, bench)
    ring_and_boxes(house, bench)
    QTest.keyClick(bench.canvas, Qt.Key.Key_Escape)
    assert house.window.stack.currentWidget() is numbers
    house.settle()
    assert "figures" in house.record.readings[0].note
    shown = next(p for p in house.record.photographs if p.marks)
    assert shown.marks[0].kind is Drawn.RING
    store = {shown.id: house.desk.library.photographs.copy(shown.sha256)}
    bare = house.record.model_copy(update={"photographs": (shown.model_copy(update={"marks": ()}),)})
    assert pictures_of(house.record, store)[shown.id] != pictures_of(bare, store)[shown.id]
    assert same_bytes(house) == 2


@pytest.fixture
def finger():
    return QTest.createTouchDevice()


def touch(canvas, device, point):
    spot = canvas.to_screen(point).toPoint()
    QTest.touchEvent(canvas, device).press(0, spot, canvas).commit()
    QTest.touchEvent(canvas, device).release(0, spot, canvas).commit()


def spread(canvas, device, point, near, wide):
    """Two fingers, so many pixels beside a point of the picture, are moved apart."""
    middle = canvas.to_screen(point).toPoint()
    near, wide = QPoint(near, 0), QPoint(wide, 0)
    QTest.touchEvent(canvas, device).press(0, middle - near, canvas).press(1, middle + near, canvas).commit()
    QTest.touchEvent(canvas, device).move(0, middle - wide, canvas).move(1, middle + wide, canvas).commit()
    QTest.touchEvent(canvas, device).release(0, middle - wide, canvas).release(1, middle + wide, canvas).commit()


def bring_tube(house, folder):
    """A photograph of the tube lies at an item that has a length; its small picture opens the bench."""
    stations = house.desk.profile.stations
    item = next(i for s in stations for i in s.items if any(m.unit == "mm" for m in i.measures))
    house.page("walk")
    house.desk.go_to(item.id)
    house.drop(house.walk, [scenes.card_and_tube(folder / "tube.jpg")])
    house.settle()
    house.press(next(w for w in house.walk.item.photographs.findChildren(Thumb) if w.isVisible()))
    large = next(w for w in QApplication.topLevelWidgets() if isinstance(w, Large) and w.isVisible())
    house.qtbot.mouseClick(large.closely, LEFT)
    house.settle()
    return item


def test_a_fork_tube_beside_a_card_by_touch(house, tmp_path, finger):
    house.build(size=(800, 1280))
    house.start()
    item = bring_tube(house, tmp_path)
    panel, bench = way(house, "measure"), house.window.stack.currentWidget()
    house.press(panel.finder)
    house.settle()
    spread(bench.canvas, finger, (540, 1040), 40, 100)
    assert bench.canvas.sight.zoom > 2
    assert panel.points == []
    for end in scenes.tube_ends():
        touch(bench.canvas, finger, end)
    assert panel.answer.told.value == pytest.approx(scenes.TUBE, abs=0.3)
    house.press(panel.planes.key("in"))
    house.settle()
    house.press(panel.keep)
    panel.kept.over.picked.emit(panel.kept.measures()[0].id)
    assert house.finding(item.id).measured[0].instrument.startswith("photograph ±")
    house.press(bench.close_key)
    assert house.window.stack.currentWidget() is house.walk
    record = house.record.id
    house.close()
    house.build()
    house.desk.open(record)
    house.settle()
    assert house.record.photographs[0].measures[0].value == pytest.approx(scenes.TUBE, abs=0.3)
    assert same_bytes(house) == 1
