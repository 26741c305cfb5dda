"""What can be reached by keys has a name, and Tab reaches all of it in reading order."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication

from inspector.window.look.ring import FocusRing
from tests.journeys.drive import page_name
from tests.window.walked import PAGES, SIZES, fill, named, scrolls_of, shown, takes_focus


@pytest.fixture(params=SIZES, ids=["wide", "tall"])
def walked(request, house):
    house.build(size=request.param)
    fill(house)
    return house


def test_whatever_takes_the_focus_has_a_name(walked):
    nameless = {}
    for page in PAGES:
        walked.window.show_page(page)
        walked.settle()
        holders = [w for w in shown(walked.window) if takes_focus(w)]
        assert len(holders) > 6
        nameless[page] = [named(w) for w in holders if not w.accessibleName().strip()]
    assert {page: names for page, names in nameless.items() if names} == {}


def tabbed(house):
    """What has the focus after each Tab, from the page's first until it comes round."""
    visited = []
    start = next(w for w in shown(house.window) if takes_focus(w))
    start.setFocus(Qt.FocusReason.TabFocusReason)
    while len(visited) < 500:
        here = QApplication.focusWidget()
        if here in visited:
            return visited
        visited.append(here)
        house.key(Qt.Key.Key_Tab)
    return visited


def test_tab_reaches_all_of_a_page_in_reading_order_and_comes_round(walked):
    missed, out_of_order = {}, {}
    for page in PAGES:
        walked.window.show_page(page)
        walked.settle()
        holders = {w for w in shown(walked.window) if takes_focus(w)}
        visited = tabbed(walked)
        assert len(visited) > 6
        missed[page] = [named(w) for w in holders - set(visited)]
        out_of_order[page] = jumps(visited)
    assert {page: names for page, names in missed.items() if names} == {}
    assert {page: names for page, names in out_of_order.items() if names} == {}


def test_tab_back_goes_the_same_way_back(walked):
    there = tabbed(walked)
    there[3].setFocus(Qt.FocusReason.TabFocusReason)
    for wanted in (there[2], there[1], there[0], there[-1]):
        walked.key(Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
        assert QApplication.focusWidget() is wanted


def jumps(visited):
    """Where Tab goes up within one column, or comes back to a column that it had left."""
    found, left, column = [], set(), None
    for before, here in zip([None, *visited], visited, strict=False):
        now = (scrolls_of(here) or [None])[0]
        if now is not column and column is not None:
            left.add(column)
        if now is not None and now in left:
            found.append(f"{named(here)} lies in a column that was left")
        if now is not None and now is column and above(here, before, now):
            found.append(f"{named(here)} stands above {named(before)}")
        column = now
    return found


def above(here, before, area):
    ground = area.widget()
    top = before.mapTo(ground, QPoint(0, 0)).y()
    return here.mapTo(ground, QPoint(0, here.height())).y() <= top


def test_pages_that_need_a_machine_say_so_and_do_not_open(house):
    house.build()
    stack = house.window.stack
    first = stack.currentWidget()
    for page in PAGES[1:]:
        name = page_name(house.window, page)
        with house.qtbot.waitSignal(name.refused) as refused:
            house.press(name)
        assert refused.args == ["Start or open a machine first."]
        assert name.accessibleDescription() == "Start or open a machine first."
        assert stack.currentWidget() is first
    assert not page_name(house.window, "machines").off


def test_the_type_grows_by_keys_and_is_remembered(house):
    house.build()
    assert house.desk.look.text_scale == 1.0
    house.key(Qt.Key.Key_Plus, Qt.KeyboardModifier.ControlModifier)
    assert house.desk.look.text_scale == 1.25
    house.key(Qt.Key.Key_F8)
    assert house.desk.look.scheme == "dark"
    house.settings.sync()
    assert float(house.settings.value("text_scale")) == 1.25
    assert house.settings.value("scheme") == "dark"


def test_a_machine_begun_with_the_mouse_shows_no_ring(house):
    house.build()
    page = house.window.pages["machines"]
    house.press(page.start)
    house.press(page.profiles.widgets()[0])
    assert house.window.stack.currentWidget().id == "claim"
    rings = [ring for ring in house.window.findChildren(FocusRing) if ring.isVisible()]
    assert [named(ring.target()) for ring in rings] == []
    assert not house.desk.look.by_keyboard


def test_a_window_that_has_no_room_on_the_screen_fills_it(house):
    house.build()
    room = house.window.screen().availableSize()
    house.window.resize(room.width() - 40, room.height() - 100)
    house.window.appear()
    assert not house.window.isMaximized()
    house.window.resize(room)
    house.window.appear()
    assert house.window.isMaximized()


def test_a_touch_that_came_while_a_page_was_made_touches_nothing_on_it(house):
    house.build()
    fill(house)
    house.page("walk")
    claim = house.window.pages["claim"]
    house.window.show_page("claim")
    places = [QPoint(x, y) for x in range(40, house.window.width(), 90) for y in range(120, 700, 60)]
    for place in places:
        under = house.window.childAt(place)
        assert under is not claim
        assert not claim.isAncestorOf(under)
        house.qtbot.mouseClick(house.window, Qt.MouseButton.LeftButton, pos=place)
    before = house.desk.record
    house.settle()
    assert house.desk.record == before
    assert any(claim.isAncestorOf(house.window.childAt(place)) for place in places)
