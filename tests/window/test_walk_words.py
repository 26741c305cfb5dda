"""Words that a full disk refuses wait at their item, and Return presses what has the ring."""

import pytest
from PySide6.QtCore import Qt

from inspector.storage.trouble import DiskFull
from inspector.texts import say
from tests.window.walked import begin

FULL = "There is no room left on the disk."
WELD, RUST = "Weld below the lug", "Rust under the paint"


@pytest.fixture
def walking(house):
    """The walk of a new machine, and the word of what its disk does."""
    house.build()
    begin(house)
    house.page("walk")
    return house


def full(*_, **__):
    raise DiskFull(say(FULL))


def note(house):
    return house.walk.item.drawers.fields["note"]


def refused(house, patch, words):
    """These words are written in the note of the open item while the disk is full."""
    house.key(Qt.Key.Key_N)
    patch.setattr(house.desk.library, "commit", full)
    house.type(note(house), words)
    assert house.says() == FULL


def test_refused_words_wait_at_their_item_and_are_there_when_one_comes_back(walking, monkeypatch):
    first = walking.desk.item
    with monkeypatch.context() as patch:
        refused(walking, patch, WELD)
        assert "Not kept yet" in note(walking).note.words
        walking.press(walking.walk.item.next)
        name = walking.desk.profile.item_by_id[first].name
        assert walking.says() == f"{FULL} What you wrote at {name} waits there in its field."
        assert note(walking).value() == ""
        assert note(walking).note.words == ""
    walking.press(walking.walk.item.back)
    assert walking.desk.item == first
    assert note(walking).value() == WELD
    assert "not kept yet" in walking.says()
    assert walking.walk.item.drawers.keys["note"].title == "not kept yet"
    walking.key(Qt.Key.Key_N)
    walking.reach(note(walking))
    walking.qtbot.mouseClick(note(walking).control, Qt.MouseButton.LeftButton)
    walking.key(Qt.Key.Key_Tab)
    assert walking.finding().note == WELD
    assert note(walking).note.words == ""
    assert walking.walk.item.drawers.keys["note"].title == WELD


def test_words_being_written_when_one_moves_on_wait_too(walking, monkeypatch):
    with monkeypatch.context() as patch:
        refused(walking, patch, WELD)
        walking.reach(note(walking))
        walking.qtbot.mouseClick(note(walking).control, Qt.MouseButton.LeftButton)
        walking.qtbot.keyClick(note(walking).control, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
        walking.qtbot.keyClicks(note(walking).control, RUST)
        walking.press(walking.walk.item.next)
        walking.press(walking.walk.item.back)
    assert note(walking).value() == RUST
    assert walking.record.findings == ()


def test_words_that_wait_and_are_cleared_are_gone(walking, monkeypatch):
    with monkeypatch.context() as patch:
        refused(walking, patch, WELD)
        walking.type(note(walking), "")
        walking.press(walking.walk.item.next)
        walking.window.told.hide()
        walking.press(walking.walk.item.back)
    assert note(walking).value() == ""
    assert walking.says() == ""


def test_words_that_wait_are_not_put_in_another_persons_mouth(walking, monkeypatch):
    others = [p.id for p in walking.record.people if p.id != walking.desk.here.by]
    with monkeypatch.context() as patch:
        refused(walking, patch, WELD)
        walking.press(walking.walk.item.drawers.people.key(others[0]))
        assert note(walking).value() == ""
        walking.press(walking.walk.item.drawers.people.key("inspector"))
        assert note(walking).value() == WELD


def test_return_presses_the_key_that_has_the_ring(walking):
    item, passed = walking.desk.item, walking.walk.item.marks.key("pass")
    passed.setFocus(Qt.FocusReason.TabFocusReason)
    walking.key(Qt.Key.Key_Return)
    assert walking.desk.item == item
    assert walking.finding().mark.value == "pass"


def test_return_opens_the_row_that_has_the_ring(walking):
    from inspector.window.look.facts import FactRow

    def rows():
        return [r for r in walking.walk.item.findChildren(FactRow) if r.isVisible() and r.opens]

    for _ in walking.desk.walk:
        if rows():
            break
        walking.desk.next_item()
    item, row = walking.desk.item, rows()[0]
    row.setFocus(Qt.FocusReason.TabFocusReason)
    walking.key(Qt.Key.Key_Return)
    assert walking.desk.item == item
    assert walking.says().startswith(f"{row.title}.")


def test_return_is_next_where_nothing_has_the_ring(walking):
    first = walking.desk.item
    walking.press(walking.walk.item.marks.key("pass"))  # a touch leaves the focus there, but no ring
    walking.key(Qt.Key.Key_Return)
    assert walking.desk.item != first
    assert walking.finding(first).mark.value == "pass"
