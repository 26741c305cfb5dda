"""A machine goes out of the list and comes back, in the real window: nothing of it is lost, nothing asks twice."""

from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from inspector.storage.trouble import DiskFull
from inspector.texts import say
from inspector.window.look.rows import Row
from tests.journeys.drive import page_name, picture

CTRL = Qt.KeyboardModifier.ControlModifier
FULL = "There is no room left on the disk."


@pytest.fixture
def shelf(house):
    """Three machines, of 1952, 1953 and 1954; the last is open, and the list is shown."""
    house.build()
    house.start(1954)
    for year in (1952, 1953):
        claim = house.record.claim.model_copy(update={"model_year": year})
        copy = house.record.model_copy(update={"id": f"OF{year}", "claim": claim})
        house.desk.library.create(copy, house.desk.folder)
    house.desk.undo()
    house.desk.redo()  # what was changed last is listed first
    house.page("machines")
    assert years(house) == [1954, 1953, 1952]
    return house


def machines(house):
    return house.window.pages["machines"].machines


def rows(house):
    return [w for w in machines(house).rows.widgets() if isinstance(w, Row)]


def years(house):
    """The claimed years in the list, from the top."""
    return [int(row.second.split(" ")[1].strip(",")) for row in rows(house)]


def gone(house):
    return [w for w in machines(house).gone.widgets() if isinstance(w, Row)]


def pages_open(house):
    return [w.page for w in house.window.frame.bar.names if not w.off]


def test_a_machine_is_taken_out_with_two_touches_and_is_told_until_when_it_is_kept(shelf):
    listed = machines(shelf)
    assert not listed.out.isVisible()
    shelf.touches = 0
    shelf.press(listed.take_key)
    assert listed.which.isVisible()
    assert {row.aside for row in rows(shelf)} == {"take out"}
    shelf.press(rows(shelf)[1])
    assert shelf.touches == 2
    assert years(shelf) == [1954, 1952]
    last = (shelf.clock.at + timedelta(days=30)).date().isoformat()
    assert "claimed 1953" in shelf.says()
    assert f"until {last}" in shelf.says()
    assert not listed.which.isVisible()
    assert listed.out.title == "1 machine taken out"
    assert shelf.record.claim.model_year == 1954


def test_delete_takes_out_the_machine_at_which_the_keyboard_is_and_the_next_one_is_reached(shelf):
    rows(shelf)[0].setFocus(Qt.FocusReason.TabFocusReason)
    shelf.key(Qt.Key.Key_Down)
    assert QApplication.focusWidget() is rows(shelf)[1]
    shelf.key(Qt.Key.Key_Delete)
    assert years(shelf) == [1954, 1952]
    assert QApplication.focusWidget() is rows(shelf)[1]
    shelf.key(Qt.Key.Key_Delete)
    assert years(shelf) == [1954]
    assert QApplication.focusWidget() is rows(shelf)[0]


def test_delete_elsewhere_asks_which_and_escape_takes_none(shelf):
    machines(shelf).take_key.setFocus(Qt.FocusReason.TabFocusReason)
    shelf.key(Qt.Key.Key_Delete)
    assert machines(shelf).which.isVisible()
    assert QApplication.focusWidget() is rows(shelf)[0]
    shelf.key(Qt.Key.Key_Escape)
    assert not machines(shelf).which.isVisible()
    assert {row.aside for row in rows(shelf)} == {"0 marks"}
    shelf.press(machines(shelf).take_key)
    shelf.press(machines(shelf).none)
    assert years(shelf) == [1954, 1953, 1952]
    shelf.press(rows(shelf)[2])
    assert shelf.record.claim.model_year == 1952


def test_delete_in_the_search_only_changes_the_search(shelf):
    search = machines(shelf).search
    shelf.type(search, "1953")
    assert years(shelf) == [1953]
    shelf.qtbot.mouseClick(search.control, Qt.MouseButton.LeftButton)
    shelf.key(Qt.Key.Key_A, CTRL)
    shelf.key(Qt.Key.Key_Delete)
    shelf.key(Qt.Key.Key_Delete)
    assert years(shelf) == [1954, 1953, 1952]
    assert not machines(shelf).which.isVisible()


def test_the_key_beside_the_sentence_brings_it_back(shelf):
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[1])
    shelf.press(shelf.window.told.act)
    assert sorted(years(shelf)) == [1952, 1953, 1954]
    assert shelf.says() == "Brackwater Heron 600 (claimed 1953) is in the list again."
    assert not shelf.window.told.act.isVisible()
    assert not machines(shelf).out.isVisible()


def test_undo_and_redo_on_the_page_are_those_of_the_list(shelf):
    shelf.key(Qt.Key.Key_Z, CTRL)  # the claimed year, the last thing done to the open machine
    assert shelf.record.claim.model_year is None
    shelf.key(Qt.Key.Key_Z, CTRL | Qt.KeyboardModifier.ShiftModifier)
    before = shelf.record
    for _ in range(2):
        shelf.press(machines(shelf).take_key)
        shelf.press(rows(shelf)[-1])
    assert years(shelf) == [1954]
    assert shelf.window.frame.undo.name == "undo: Take Brackwater Heron 600 (claimed 1953) out"
    shelf.key(Qt.Key.Key_Z, CTRL)
    shelf.press(shelf.window.frame.undo)
    assert sorted(years(shelf)) == [1952, 1953, 1954]
    shelf.key(Qt.Key.Key_Z, CTRL | Qt.KeyboardModifier.ShiftModifier)
    assert sorted(years(shelf)) == [1953, 1954]
    assert shelf.record is before
    shelf.page("claim")
    shelf.key(Qt.Key.Key_Z, CTRL)
    assert shelf.record.claim.model_year is None
    assert len(shelf.desk.library.machines()) == 2


def test_the_open_machine_taken_out_leaves_no_machine_to_the_other_pages(shelf):
    shelf.page("walk")
    shelf.ask.pictures = [picture(shelf.folder / "a.jpg", 1)]
    shelf.press(shelf.walk.item.photographs.plus)
    shelf.qtbot.waitUntil(lambda: len(shelf.record.photographs) == 1)
    shelf.settle()
    shelf.key(Qt.Key.Key_1)
    record = shelf.record
    shelf.page("machines")
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[0])
    assert shelf.desk.session is None
    assert pages_open(shelf) == ["machines"]
    shelf.press(page_name(shelf.window, "walk"))
    shelf.key(Qt.Key.Key_3, CTRL)
    assert shelf.window.stack.currentWidget() is shelf.window.pages["machines"]
    assert shelf.window.windowTitle() == "Inspector"
    shelf.key(Qt.Key.Key_Z, CTRL)
    assert shelf.record == record
    assert pages_open(shelf) == list(shelf.window.pages)
    assert shelf.window.stack.currentWidget() is shelf.window.pages["machines"]
    shelf.page("walk")
    shelf.settle()
    assert shelf.finding().mark.value == "pass"
    assert shelf.walk.item.photographs.row.keys[0].photograph.sha256 == record.photographs[0].sha256


def test_those_taken_out_are_listed_with_their_day_and_come_back_after_a_restart(shelf):
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[1])
    day = shelf.clock.at.date()
    shelf.close()
    shelf.clock.at += timedelta(days=20)
    shelf.build()
    assert years(shelf) == [1954, 1952]
    assert shelf.window.frame.undo.off
    shelf.press(machines(shelf).out)
    (row,) = gone(shelf)
    assert row.label == f"taken out {day}, kept until {day + timedelta(days=30)}"
    assert row.second.startswith("claimed 1953")
    shelf.press(row)
    assert years(shelf) == [1953, 1954, 1952]
    assert gone(shelf) == []
    shelf.key(Qt.Key.Key_Z, CTRL)
    assert years(shelf) == [1954, 1952]
    assert len(gone(shelf)) == 1 or machines(shelf).out.isVisible()


def test_after_its_days_it_is_gone_for_good(shelf):
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[1])
    shelf.close()
    shelf.clock.at += timedelta(days=31)
    shelf.build()
    assert years(shelf) == [1954, 1952]
    assert not machines(shelf).out.isVisible()


def test_the_only_machine_taken_out_is_still_offered(house):
    house.build()
    house.start()
    house.page("machines")
    house.press(machines(house).take_key)
    house.press(rows(house)[0])
    page = house.window.pages["machines"]
    assert not page.outline.isVisible()
    assert machines(house).rows.widgets()[0].words == "No machine is in the list."
    house.press(machines(house).out)
    house.press(gone(house)[0])
    assert years(house) == [1953]


def test_what_the_disk_refuses_leaves_the_list_and_the_open_machine(shelf, monkeypatch):
    def full(*_):
        raise DiskFull(say(FULL))

    before = shelf.record
    monkeypatch.setattr(shelf.desk.library, "remove", full)
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[0])
    assert shelf.says() == FULL
    assert years(shelf) == [1954, 1953, 1952]
    assert shelf.record is before
    assert not machines(shelf).picking


def test_words_still_being_typed_are_kept_before_their_machine_goes(shelf):
    shelf.page("walk")
    shelf.key(Qt.Key.Key_N)
    note = shelf.walk.item.drawers.fields["note"]
    shelf.reach(note)
    shelf.qtbot.mouseClick(note.control, Qt.MouseButton.LeftButton)
    shelf.qtbot.keyClicks(note.control, "Weld below the lug")
    shelf.page("machines")
    shelf.press(machines(shelf).take_key)
    shelf.press(rows(shelf)[0])
    shelf.press(shelf.window.told.act)
    assert shelf.finding().note == "Weld below the lug"


def test_a_long_list_is_asked_from_its_top(house):
    house.build()
    house.start(None)
    record = house.record
    for number in range(45):
        copy = record.model_copy(update={"id": f"COPY{number:04}"})
        house.desk.library.create(copy, house.desk.folder)
    house.page("machines")
    for _ in range(2):
        house.settle()
        house.press(machines(house).more)
    house.settle()
    assert len(rows(house)) == 46
    house.press(machines(house).take_key)
    house.settle()
    assert not machines(house).which.visibleRegion().isEmpty()
    house.press(rows(house)[45])
    assert len(rows(house)) == 45
