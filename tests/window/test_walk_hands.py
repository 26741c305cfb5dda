"""Keys of the walk, and what its keys on the screen show: never more than the record holds."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication

from inspector.window.look.ring import ground_of, ring_on
from inspector.window.walk.facts import unseen_safety
from tests.window.walked import PAGES, fill, named, scrolls_of

KEYPAD = Qt.KeyboardModifier.KeypadModifier


@pytest.fixture
def walked(house):
    house.build()
    fill(house)
    return house


def test_other_is_held_only_once_it_is_described(walked, qtbot):
    item, fitted = walked.walk.item, walked.finding().fitted
    walked.press(item.fitted.key("other"))
    assert item.fitted.held() == [fitted] == [walked.finding().fitted]
    other = item.drawers.other
    assert other.control.hasFocus()
    qtbot.keyClicks(other.control, "off a lorry")
    other.commit()
    assert walked.finding().fitted_other == "off a lorry"


def test_the_figures_and_enter_of_the_number_pad_mark_and_go_on(walked):
    desk, item = walked.desk, walked.desk.item
    marked = walked.finding().mark
    number = {"pass": Qt.Key.Key_2}.get(marked.value if marked else "", Qt.Key.Key_1)
    walked.key(number, KEYPAD)
    assert walked.finding(item).mark.value == ("doubt" if number == Qt.Key.Key_2 else "pass")
    walked.key(Qt.Key.Key_Enter, KEYPAD)
    assert desk.item == desk.walk[desk.walk.index(item) + 1]
    walked.key(Qt.Key.Key_Enter, KEYPAD | Qt.KeyboardModifier.ShiftModifier)
    assert desk.item == item


@pytest.mark.parametrize("held", [Qt.Key.Key_Control, Qt.Key.Key_Shift, Qt.Key.Key_Alt])
def test_after_a_touch_enter_goes_on_whatever_was_held_meanwhile(walked, held):
    """A key that was touched keeps the focus; whoever then writes a capital or takes a step back does not press it."""
    item, key = walked.desk.item, walked.walk.item.marks.key("doubt")
    walked.press(key)
    mark = walked.finding().mark
    assert key.hasFocus()
    walked.key(held)
    walked.key(Qt.Key.Key_Return)
    assert walked.desk.item == walked.desk.walk[walked.desk.walk.index(item) + 1]
    assert walked.finding(item).mark is mark


@pytest.mark.parametrize("size", [(1280, 800), (800, 600)])
def test_tab_brings_all_of_what_it_comes_to_into_sight(house, size):
    house.build(size=size)
    fill(house)
    for page in PAGES:
        house.window.show_page(page)
        house.settle()
        assert hidden_stops(house) == [], page


def hidden_stops(house):
    """What has the focus after a Tab and does not lie whole in what its area shows, once round the page."""
    found, visited = [], set()
    while True:
        house.key(Qt.Key.Key_Tab)
        here = QApplication.focusWidget()
        if here in visited:
            return found
        visited.add(here)
        found += hidden(here)


def hidden(widget):
    """The widget, by its name, for each area that does not show all of it though it could."""
    found = []
    for area in scrolls_of(widget):
        room = area.viewport()
        place = QRect(widget.mapTo(room, QPoint(0, 0)), widget.size())
        if not room.rect().contains(place) and widget.height() < room.height():
            found.append(named(widget))
    return found


def test_a_station_moved_earlier_keeps_the_key_under_the_finger(walked):
    order, desk = walked.walk.where.order, walked.desk
    walked.press(order.key)
    walked.settle()
    third = desk.profile.station_of[desk.walk[-1]]
    last = len(order.keys) - 1
    order.keys[last].setFocus(Qt.FocusReason.TabFocusReason)
    for moved in (1, 2):
        walked.key(Qt.Key.Key_Space)
        walked.settle()
        assert QApplication.focusWidget() is order.keys[last - moved]
        assert third.name in order.keys[last - moved].accessibleName()


@pytest.mark.parametrize("scale", [1.0, 1.75])
def test_the_list_of_keys_fits_the_window_and_is_scrolled_by_keys(house, scale):
    house.build(size=(800, 600), scale=scale)
    fill(house)
    dialog = house.window.list_keys()
    house.qtbot.waitUntil(lambda: dialog.isAncestorOf(QApplication.focusWidget() or house.window))
    assert dialog.width() <= house.window.width()
    assert dialog.height() <= house.window.height()
    bar, close = dialog.area.verticalScrollBar(), QApplication.focusWidget()
    house.qtbot.waitUntil(lambda: bar.maximum() > 0)
    house.key(Qt.Key.Key_Down)
    assert bar.value() > 0
    house.key(Qt.Key.Key_End)
    assert bar.value() == bar.maximum()
    house.key(Qt.Key.Key_Home)
    assert bar.value() == 0
    assert QApplication.focusWidget() is close
    house.key(Qt.Key.Key_Escape)
    house.qtbot.waitUntil(lambda: QApplication.focusWidget() is not close)


def test_a_profile_without_safety_items_is_not_said_to_have_had_them_looked_at(walked):
    desk = walked.desk
    told = SimpleNamespace(judgement=desk.judgement, profile=desk.profile)
    assert "safety item" in unseen_safety(told, short=True)
    every = replace(desk.judgement.safety, not_seen=())
    told.judgement = replace(desk.judgement, safety=every)
    assert unseen_safety(told) == "Every safety item was looked at."
    plain = [item.model_copy(update={"safety": False}) for item in desk.profile.items()]
    told.profile = SimpleNamespace(items=lambda: plain)
    assert unseen_safety(told) == "The profile names no item that bears on safety."


def test_escape_shuts_a_drawer_and_keeps_what_was_written_in_it(walked, qtbot):
    drawers = walked.walk.item.drawers
    walked.key(Qt.Key.Key_N)
    field = drawers.fields["note"]
    walked.reach(field)
    field.setFocus()
    qtbot.keyClicks(field.control, "behind the ")
    qtbot.keyClicks(field.control, "lamp. ")
    walked.key(Qt.Key.Key_Escape)
    assert not drawers.bodies["note"].isVisible()
    assert QApplication.focusWidget() is drawers.keys["note"]
    assert "behind the lamp." in walked.finding().note
    walked.key(Qt.Key.Key_Escape)
    assert QApplication.focusWidget() is drawers.keys["note"]


@pytest.mark.parametrize(("size", "scale"), [((1280, 800), 1.0), ((800, 1280), 1.0), ((1280, 800), 1.75)])
def test_after_the_key_of_the_note_one_writes_the_note_and_nothing_else(house, qtbot, size, scale):
    house.build(size=size, scale=scale)
    fill(house)
    house.desk.go_to(house.desk.walk[4])
    house.settle()
    before, field = house.finding(), house.walk.item.drawers.fields["note"]
    house.key(Qt.Key.Key_N)
    house.settle()
    assert hidden(field) == []
    ring = ring_on(ground_of(field))
    assert ring.isVisible()
    assert ring.geometry().contains(QRect(field.control.mapTo(ring.parentWidget(), QPoint(0, 0)), field.control.size()))
    qtbot.keyClicks(QApplication.focusWidget(), "A weld below the lug")
    house.key(Qt.Key.Key_Escape)
    now = house.finding()
    assert "A weld below the lug" in now.note
    assert (now.fitted, now.mark) == ((before.fitted, before.mark) if before else ("", None))


@pytest.mark.parametrize(("size", "lines"), [((1280, 800), 1), ((800, 1280), 2)])
@pytest.mark.parametrize("scale", [1.0, 1.75])
def test_the_marks_stand_on_one_line_where_their_words_have_room(house, size, scale, lines):
    house.build(size=size, scale=scale)
    fill(house)
    foot = house.walk.item.foot
    tops = {widget.y() for widget in (house.walk.item.back, house.walk.item.marks, house.walk.item.next)}
    assert len(tops) == lines
    for key in (house.walk.item.back, *house.walk.item.marks.keys, house.walk.item.unseen, house.walk.item.next):
        assert key.height() >= key.heightForWidth(key.width()) - 1
        assert key.width() >= key.minimumSizeHint().width()
    assert foot.minimumSizeHint().width() <= size[0]


def test_a_note_of_nothing_but_blanks_is_no_note(walked):
    drawers = walked.walk.item.drawers
    drawers.open("note")
    drawers.fields["note"].edit.setPlainText(" \n ")
    drawers.fields["note"].commit()
    assert drawers.keys["note"].title == "none yet"
    walked.desk.next_item()
    walked.desk.previous_item()
    assert drawers.keys["note"].title == "none yet"
