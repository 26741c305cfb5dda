"""An item of the walk that is a number shows what was read there, and opens the page that reads it."""

import pytest
from PySide6.QtCore import Qt

from inspector.profile.read import read_profile
from inspector.record.edits import Part
from inspector.record.reading import Reading, figures_of
from inspector.record.verbs import put_entry
from inspector.record.words import NumberState
from tests.journeys.drive import heron

TYPED = "DU 2487[35]"


@pytest.fixture
def walking(house):
    """The walk of a new machine, open at the item of its first numbered place."""
    house.build()
    assert house.desk.start(read_profile(heron().parent / "triumph-unit-650"), 1966)
    house.page("walk")
    return house


def number_item(house):
    return next(item for item in house.desk.profile.item_by_id.values() if item.place and not item.variants)


def read_there(house, place):
    reading = Reading(id=place, place=place, by="inspector", figures=figures_of(TYPED))
    assert house.desk.do(put_entry(Part.READINGS, reading, label="Number"))


def test_an_item_that_is_a_number_shows_the_number_as_read_and_how(walking):
    item, shown = number_item(walking), walking.walk.item.as_read
    walking.desk.go_to(item.id)
    assert shown.isVisible()
    assert shown.rows[0].title == "not read yet"
    assert not walking.walk.item.expected_head.isVisible()
    read_there(walking, item.place)
    assert shown.rows[0].title == TYPED
    assert "read from metal by me" in shown.rows[0].second
    assert "1966 model" in shown.rows[0].second


@pytest.mark.parametrize("state", [state for state in NumberState if state is not NumberState.READ])
def test_a_reading_without_figures_says_why_there_are_none(walking, state):
    item, shown = number_item(walking), walking.walk.item.as_read
    walking.desk.go_to(item.id)
    reading = Reading(id=item.place, place=item.place, by="inspector", state=state)
    assert walking.desk.do(put_entry(Part.READINGS, reading, label="Number"))
    assert shown.rows[0].title == state.value
    assert shown.rows[0].second == "touch here to read it figure by figure"


def test_a_touch_opens_the_page_numbers_at_that_place(walking):
    items = [item for item in walking.desk.profile.item_by_id.values() if item.place]
    for item in items:
        walking.page("walk")
        walking.desk.go_to(item.id)
        walking.press(walking.walk.item.as_read.rows[0])
        page = walking.window.stack.currentWidget()
        assert page.id == "numbers"
        assert page.shown.place == item.place


def test_other_items_show_no_number(walking):
    item = next(item for item in walking.desk.profile.item_by_id.values() if not item.place)
    walking.desk.go_to(number_item(walking).id)
    walking.desk.go_to(item.id)
    assert not walking.walk.item.as_read.isVisible()
    assert walking.walk.item.expected_head.isVisible()


def test_where_no_form_is_expected_it_is_said_whether_the_profile_lists_any(walking):
    bare = next(i for i in walking.desk.profile.item_by_id.values() if not i.place and not i.variants)
    walking.desk.go_to(bare.id)
    assert walking.walk.item.no_form.words == "The profile lists no forms of it. Say in a note what you see."


def test_an_item_without_forms_offers_none_to_choose_or_to_tell_apart(walking):
    bare = next(i for i in walking.desk.profile.item_by_id.values() if not i.place and not i.variants)
    walking.desk.go_to(bare.id)
    item = walking.walk.item
    assert not any(part.isVisible() for part in (item.fitted_head, item.fitted, item.drawers.keys["tell"]))
    walking.key(Qt.Key.Key_T)
    assert not item.drawers.bodies["tell"].isVisible()
    assert walking.says() == "The profile lists no forms of it here."
    item.drawers.open("note")
    walking.type(item.drawers.other, "a bush turned from bronze")
    walking.key(Qt.Key.Key_Tab)
    assert item.fitted.isVisible()
