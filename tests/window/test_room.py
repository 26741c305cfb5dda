"""Nothing is clipped, too small to touch or wider than its page, in both shapes and with the largest type."""

import pytest
from PySide6.QtWidgets import QLabel, QScrollArea

from inspector.window.look.press import Pressable
from tests.journeys.drive import PX_PER_MM
from tests.window.walked import PAGES, SIZES, fill, named, shown

TARGET = 12 * PX_PER_MM - 1  # pixels; one is lost to rounding
SETTINGS = [(size, scale) for size in SIZES for scale in (1.0, 1.75)]


@pytest.fixture(params=SETTINGS, ids=lambda p: f"{p[0][0]}x{p[0][1]}-{p[1]}")
def walked(request, house):
    size, scale = request.param
    house.build(size=size, scale=scale)
    fill(house)
    return house


def open_pages(house):
    """Each page as it stands when it is opened, and the walk with each of its drawers open."""
    for page in PAGES:
        house.window.show_page(page)
        house.settle()
        yield page, house.window.pages[page]
    house.window.show_page("walk")
    for name in house.walk.item.drawers.bodies:
        house.walk.item.drawers.open(name)
        house.settle()
        yield f"walk, {name}", house.walk
    house.window.show_page("machines")
    house.window.pages["machines"].toggle_profiles()
    house.settle()
    yield "machines, profiles", house.window.pages["machines"]


def clipped(page):
    """Widgets with words that have less room than their words need."""
    found = []
    for widget in shown(page):
        if not isinstance(widget, Pressable | QLabel) and not widget.hasHeightForWidth():
            continue
        high = widget.heightForWidth(widget.width()) if widget.hasHeightForWidth() else widget.sizeHint().height()
        if widget.height() < high - 1:
            found.append(f"{named(widget)} needs {high} in height")
        if widget.width() < widget.minimumSizeHint().width() - 1:
            found.append(f"{named(widget)} needs {widget.minimumSizeHint().width()} in width")
    return found


def too_small(page):
    return [named(w) for w in shown(page, Pressable) if min(w.width(), w.height()) < TARGET]


def too_wide(page):
    """Areas that would have to scroll sideways, and what reaches past their edge."""
    found = []
    for area in shown(page, QScrollArea):
        if area.horizontalScrollBar().maximum() > 0:
            found.append(f"{named(area)} scrolls sideways by {area.horizontalScrollBar().maximum()}")
        if area.widget().width() > area.viewport().width():
            found.append(f"{named(area.widget())} is wider than {area.viewport().width()}")
    return found


def beyond(page):
    """Widgets that reach past the widget in which they stand."""
    return [
        f"{named(w)} reaches past {named(w.parentWidget())}"
        for w in shown(page, Pressable)
        if w.geometry().right() > w.parentWidget().width() or w.geometry().left() < 0
    ]


def test_words_have_room_targets_are_large_and_nothing_scrolls_sideways(walked):
    found, seen = {}, 0
    assert walked.window.width() <= 1280
    for name, page in open_pages(walked):
        seen += len(shown(page, Pressable))
        found[name] = clipped(page) + too_small(page) + too_wide(page) + beyond(page)
    bar = walked.window.frame
    found["bar"] = [named(w) for w in shown(bar, Pressable) if min(w.width(), w.height()) < TARGET]
    assert seen > 100
    assert {name: faults for name, faults in found.items() if faults} == {}
    assert (walked.window.width(), walked.window.height()) in SIZES


def test_a_window_can_be_turned_upright_after_every_page(house):
    """A page laid out across must not hold the window wider than the screen is upright."""
    house.build(size=(1280, 800))
    fill(house)
    for page in PAGES:
        house.window.show_page(page)
        house.settle()
    house.window.resize(800, 1280)
    house.settle()
    assert house.window.width() == 800
