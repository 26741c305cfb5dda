"""On every view of Money words have room, targets are large, everything has a name and nothing scrolls sideways."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QWidget

from inspector.window.money.page import VIEWS
from tests.window.money.conftest import opened
from tests.window.money.hands import fill_whole
from tests.window.test_room import beyond, clipped, too_small, too_wide
from tests.window.walked import SIZES, named, shown

SETTINGS = [(size, scale) for size in SIZES for scale in (1.0, 1.75)]


@pytest.mark.parametrize(("size", "scale"), SETTINGS, ids=lambda p: str(p))
def test_words_have_room_and_targets_are_large(house, demo_library, size, scale):
    page = opened(house, demo_library[1], size=size, scale=scale)
    fill_whole(house)
    found = {}
    for view, _ in VIEWS:
        page.open(view)
        if view == "comparables":
            house.press(page.views[view].form.pictures.pick)
        house.settle()
        faults = clipped(page) + too_small(page) + too_wide(page) + beyond(page)
        if faults:
            found[view] = faults
    assert found == {}
    assert (house.window.width(), house.window.height()) == size


def test_everything_that_the_keyboard_reaches_has_a_name(house, money):
    fill_whole(house)
    unnamed = []
    for view, _ in VIEWS:
        money.open(view)
        house.settle()
        for widget in shown(money, QWidget):
            if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and widget.isEnabled():
                told = QAccessible.queryAccessibleInterface(widget)
                if not told or not told.text(QAccessible.Text.Name):
                    unnamed.append(f"{view}: {named(widget)} {widget.parentWidget()}")
    assert unnamed == []


def test_the_views_are_reached_by_keys_alone(house, money):
    for number, (view, _) in enumerate(VIEWS, 1):
        money.setFocus()
        house.key(getattr(Qt.Key, f"Key_{number}"), Qt.KeyboardModifier.AltModifier)
        house.settle()
        assert money.view == view


def test_with_large_type_the_views_are_behind_one_key(house, demo_library):
    page = opened(house, demo_library[1], scale=1.75)
    assert not page.nav.isVisible()
    house.press(page.menu)
    house.press(page.menu.list.rows[2])
    house.settle()
    assert page.view == VIEWS[2][0]
