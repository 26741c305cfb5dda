"""Keys in every state, by finger, mouse and keyboard alone."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QWidget
from shiboken6 import delete

from inspector.window.look import ChoiceKeys, Column, Key, KeyRow, Option, Scroll
from inspector.window.look.ring import ring_on
from tests.window.look.conftest import PX_PER_MM, SCALES, apart, picture

FINGER = 12 * PX_PER_MM
REASON = "Choose a machine first."
KEYS = {
    "plain": {"title": "next"},
    "second": {"title": "single-float", "second": "1953–56, option"},
    "over": {"title": "right type but year not shown", "over": "Why"},
    "sign": {"title": "doubt", "sign": "doubt", "step": "key", "strong": True, "tall": 15.5},
    "alone": {"sign": "plus", "name": "add a photograph"},
    "arrow": {"title": "next", "arrow": "right", "step": "next"},
}


def in_state(look, state):
    key = Key(look, "twin-float")
    if state == "pressed":
        key.setDown(True)
    elif state == "off":
        key.turn_off(REASON)
    elif state != "rest":
        key.hold(state)
    key.resize(180, 58)
    return key


def test_every_state_is_told_apart_in_a_grey_copy(look, qtbot, scheme):
    look.set_scheme(scheme)
    keys = {state: in_state(look, state) for state in ("rest", "pressed", "kept", "chosen", "off")}
    for state, key in keys.items():
        qtbot.addWidget(key)
        assert key.state == state
    seen = {state: picture(key) for state, key in keys.items()}
    alike = [p for p in combinations(seen, 2) if apart(seen[p[0]], seen[p[1]], least=30) < 0.008]
    assert alike == []


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("how", KEYS.values(), ids=KEYS)
def test_a_key_is_never_smaller_than_a_finger(look, qtbot, how, scale):
    look.set_text_scale(scale)
    key = Key(look, **how)
    qtbot.addWidget(key)
    for size in (key.sizeHint(), key.minimumSizeHint()):
        assert size.width() >= FINGER
        assert size.height() >= FINGER
    assert key.heightForWidth(key.minimumSizeHint().width()) >= FINGER


@pytest.mark.parametrize("how", KEYS.values(), ids=KEYS)
def test_a_key_has_a_name_for_those_who_do_not_see_it(look, qtbot, how):
    key = Key(look, **how)
    qtbot.addWidget(key)
    for word in (how.get("title", ""), how.get("second", ""), how.get("over", ""), how.get("name", "")):
        assert word in key.accessibleName()
    assert key.accessibleName()


def test_text_wraps_and_is_never_cut(look, qtbot):
    key = Key(look, "richtiger Typ, aber das Baujahr ist nicht belegt", over="Begründung")
    qtbot.addWidget(key)
    wide = key.sizeHint().width()
    assert key.heightForWidth(wide // 3) > key.heightForWidth(wide)


@pytest.mark.parametrize("held", ["kept", "chosen"])
def test_holding_a_key_changes_neither_its_size_nor_its_wrapping(look, qtbot, held):
    key = Key(look, "single-float", second="1953–56, option")
    qtbot.addWidget(key)
    before = (key.sizeHint(), key.heightForWidth(110))
    key.hold(held)
    assert (key.sizeHint(), key.heightForWidth(110)) == before
    assert key.isChecked()
    key.hold("")
    assert not key.isChecked()


def test_only_three_ways_of_holding_are_known(look, qtbot):
    key = Key(look, "a")
    qtbot.addWidget(key)
    with pytest.raises(ValueError, match="'stuck'"):
        key.hold("stuck")


def test_a_press_does_not_hold_a_key_by_itself(look, qtbot):
    key = Key(look, "twin-float")
    qtbot.addWidget(key)
    key.hold("kept")
    key.click()
    assert key.held == "kept"


@pytest.mark.parametrize("press", [
    lambda key, bot: bot.mouseClick(key, Qt.MouseButton.LeftButton),
    lambda key, bot: bot.keyClick(key, Qt.Key.Key_Space),
    lambda key, bot: bot.keyClick(key, Qt.Key.Key_Return),
    lambda key, bot: key.click(),
], ids=["mouse", "space", "enter", "call"])  # fmt: skip
def test_an_off_key_says_why_and_does_nothing(look, qtbot, stage, press):
    key = stage(Key(look, "next"), 120, 60)
    clicks, told = [], []
    key.clicked.connect(lambda: clicks.append(1))
    key.refused.connect(told.append)
    key.turn_off(REASON)
    assert key.off
    assert key.accessibleDescription() == REASON
    press(key, qtbot)
    press(key, qtbot)
    assert (clicks, told) == ([], [REASON, REASON])
    key.turn_on()
    press(key, qtbot)
    assert (clicks, told) == ([1], [REASON, REASON])
    assert key.accessibleDescription() == ""


def test_the_ring_stands_outside_the_key_and_is_never_clipped(look, qtbot, stage):
    column = Column(look, edge=0, top=0)
    key = column.add(KeyRow(look, [Key(look, "a"), Key(look, "b")])).keys[0]
    stage(Scroll(look, column), 300, 200)
    key.clearFocus()
    key.setFocus(Qt.FocusReason.TabFocusReason)
    ring = ring_on(column)
    assert ring.isVisible()
    place = QRect(key.mapTo(column, QPoint(0, 0)), key.size())
    reach = look.px(1.2)
    wanted = place.adjusted(-reach, -reach, reach, reach).intersected(column.rect())
    assert ring.geometry() == wanted
    assert ring.geometry().right() > place.right()
    key.clearFocus()
    assert not ring.isVisible()


def test_the_ring_follows_what_it_stands_round(look, qtbot, stage):
    ground = stage(QWidget(), 400, 200)
    key = Key(look, "a", parent=ground)
    key.setGeometry(20, 20, 100, 60)
    key.show()
    key.setFocus(Qt.FocusReason.TabFocusReason)
    key.move(200, 100)
    assert ring_on(ground).geometry().contains(key.geometry())
    key.hide()
    assert not ring_on(ground).isVisible()


def test_a_finger_brings_no_ring_but_the_next_key_does(look, qtbot, stage):
    ground = stage(QWidget(), 200, 100)
    key = Key(look, "a", parent=ground)
    key.setGeometry(20, 20, 100, 60)
    key.show()
    key.setFocus(Qt.FocusReason.MouseFocusReason)
    assert ring_on(ground) is None
    qtbot.keyClick(key, Qt.Key.Key_Shift)  # held beside another, by itself it is none
    assert ring_on(ground) is None
    qtbot.keyClick(key, Qt.Key.Key_Home)
    assert ring_on(ground).target() is key


def test_the_ring_goes_on_when_what_it_stood_round_is_no_more(look, qtbot, stage):
    ground = stage(QWidget(), 300, 100)
    first, second = Key(look, "a", parent=ground), Key(look, "b", parent=ground)
    for n, key in enumerate((first, second)):
        key.setGeometry(20 + 120 * n, 20, 100, 60)
        key.show()
    first.setFocus(Qt.FocusReason.TabFocusReason)
    assert ring_on(ground).target() is first
    delete(first)
    look.set_text_scale(1.3)
    second.setFocus(Qt.FocusReason.TabFocusReason)
    assert ring_on(ground).target() is second


OPTIONS = [Option("twin", "twin-float", "1952–54"), Option("single", "single-float", "1953–56"),
           Option("pattern", "pattern part", "any year"), Option("other", "other", "describe it")]  # fmt: skip


def watched(keys):
    picked, changed = [], []
    keys.picked.connect(picked.append)
    keys.changed.connect(changed.append)
    return picked, changed


def test_arrows_move_space_and_enter_pick(look, qtbot, stage):
    keys = stage(ChoiceKeys(look, OPTIONS), 700, 80)
    picked, changed = watched(keys)
    keys.keys[0].setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClick(keys.keys[0], Qt.Key.Key_Right)
    assert keys.key("single").hasFocus()
    assert keys.held() == []
    qtbot.keyClick(keys.key("single"), Qt.Key.Key_Space)
    qtbot.keyClick(keys.key("single"), Qt.Key.Key_Down)
    qtbot.keyClick(keys.key("pattern"), Qt.Key.Key_Return)
    assert (picked, changed) == (["single", "pattern"], [["single"], ["pattern"]])
    assert keys.key("pattern").held == "chosen"
    assert keys.key("single").held == ""
    qtbot.keyClick(keys.key("pattern"), Qt.Key.Key_Right)
    qtbot.keyClick(keys.key("other"), Qt.Key.Key_Right)
    assert keys.key("twin").hasFocus()
    qtbot.keyClick(keys.key("twin"), Qt.Key.Key_Left)
    assert keys.key("other").hasFocus()


@pytest.mark.parametrize(("may_clear", "left"), [(False, ["twin"]), (True, [])])
def test_a_second_touch_clears_only_where_that_is_wanted(look, qtbot, may_clear, left):
    keys = ChoiceKeys(look, OPTIONS, may_clear=may_clear)
    qtbot.addWidget(keys)
    picked, changed = watched(keys)
    keys.key("twin").click()
    keys.key("twin").click()
    assert keys.held() == left
    assert picked == ["twin", "twin"]
    assert changed == [["twin"], left]


def test_several_are_kept_in_reading_order(look, qtbot):
    keys = ChoiceKeys(look, OPTIONS, many=True, held="kept")
    qtbot.addWidget(keys)
    _, changed = watched(keys)
    for option in ("other", "twin", "other", "single"):
        keys.key(option).click()
    assert changed == [["other"], ["twin", "other"], ["twin"], ["twin", "single"]]
    assert keys.key("twin").held == "kept"


def test_setting_from_outside_tells_nobody(look, qtbot):
    keys = ChoiceKeys(look, OPTIONS)
    qtbot.addWidget(keys)
    picked, changed = watched(keys)
    keys.set_held("twin", "gone")
    assert keys.held() == ["twin"]
    assert (picked, changed) == ([], [])


def test_an_option_that_is_off_cannot_be_picked(look, qtbot):
    keys = ChoiceKeys(look, [Option("a", "a"), Option("b", "b", reason=REASON)])
    qtbot.addWidget(keys)
    picked, _ = watched(keys)
    keys.key("b").click()
    assert picked == []
    assert keys.key("b").reason == REASON


def test_picking_may_replace_all_the_keys(look, qtbot):
    keys = ChoiceKeys(look, OPTIONS)
    qtbot.addWidget(keys)
    keys.picked.connect(lambda _: keys.set_options(OPTIONS[:2]))
    keys.key("other").click()
    assert len(keys.keys) == 2


@pytest.mark.parametrize("fit", ["even", "flow", "fill"])
@pytest.mark.parametrize("width", [160, 330, 560, 900])
def test_keys_stand_in_reading_order_without_touching(look, qtbot, stage, fit, width):
    row = KeyRow(look, [Key(look, o.word, second=o.second) for o in OPTIONS], fit=fit)
    stage(row, width, row.heightForWidth(width))
    places = [key.geometry() for key in row.keys]
    for place in places:
        assert row.rect().contains(place)
        assert place.height() >= FINGER
    for one, other in combinations(places, 2):
        assert not one.adjusted(-4, -4, 4, 4).intersects(other)
    assert places == sorted(places, key=lambda p: (p.y(), p.x()))
    if fit != "flow":
        assert max(place.right() for place in places) == width - 1


def test_even_keys_are_even_and_filling_keys_keep_their_need(look, qtbot, stage):
    even = KeyRow(look, [Key(look, "a"), Key(look, "b much longer")])
    stage(even, 400, 60)
    assert abs(even.keys[0].width() - even.keys[1].width()) <= 1
    fill = KeyRow(look, [Key(look, "a"), Key(look, "twenty letters and more of them")], fit="fill")
    stage(fill, 360, 60)
    need = fill.keys[1].sizeHint().width()
    assert fill.keys[0].width() < need <= fill.keys[1].width() <= need + 1


def test_tab_goes_in_reading_order(look, qtbot, stage):
    row = KeyRow(look, [Key(look, word) for word in ("a", "b", "c")])
    stage(row, 400, 60)
    row.keys[0].setFocus(Qt.FocusReason.TabFocusReason)
    order = []
    for _ in row.keys:
        order.append(row.window().focusWidget().title)
        row.window().focusNextChild()
    assert order == ["a", "b", "c"]


def test_a_key_that_grows_moves_its_neighbours(look, qtbot, stage):
    row = KeyRow(look, [Key(look, "a"), Key(look, "b")], fit="flow")
    stage(row, 500, 60)
    before = row.keys[1].x()
    row.keys[0].say("a word that takes much more room")
    qtbot.waitUntil(lambda: row.keys[1].x() > before, timeout=1000)


def test_a_way_to_fit_that_is_not_known_is_refused(look, qapp):
    with pytest.raises(ValueError, match="'tight'"):
        KeyRow(look, fit="tight")
