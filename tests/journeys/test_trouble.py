"""Trouble in the real window: one sentence each, and nothing that was entered is lost."""

import shutil
import sqlite3

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox

from inspector import app
from inspector.storage.library import Library
from inspector.storage.trouble import DiskFull, Locked
from inspector.texts import say
from tests.journeys.drive import heron, picture

FULL = "There is no room left on the disk."


@pytest.fixture
def walking(house):
    """The walk of a new machine."""
    house.build()
    house.start()
    house.page("walk")
    return house


def full(*_, **__):
    raise DiskFull(say(FULL))


def test_a_full_disk_keeps_what_was_kept_and_tells_it(walking, monkeypatch):
    walking.key(Qt.Key.Key_1)
    before = walking.record
    with monkeypatch.context() as patch:
        patch.setattr(walking.desk.library, "commit", full)
        walking.press(walking.walk.item.marks.key("fail"))
        assert walking.says() == FULL
        assert walking.record is before
        assert walking.walk.item.marks.held() == ["pass"]
    walking.press(walking.walk.item.marks.key("fail"))
    assert walking.finding().mark.value == "fail"


def test_words_that_a_full_disk_would_not_keep_stay_in_their_field(walking, monkeypatch):
    walking.key(Qt.Key.Key_N)
    note = walking.walk.item.drawers.fields["note"]
    with monkeypatch.context() as patch:
        patch.setattr(walking.desk.library, "commit", full)
        walking.type(note, "Weld below the lug")
        assert walking.says() == FULL
        assert note.value() == "Weld below the lug"
        assert walking.record.findings == ()
    walking.reach(note)
    walking.qtbot.mouseClick(note.control, Qt.MouseButton.LeftButton)
    walking.key(Qt.Key.Key_Tab)
    assert walking.finding().note == "Weld below the lug"


def test_words_that_could_not_be_kept_do_not_wander_to_the_next_item(walking, monkeypatch):
    walking.key(Qt.Key.Key_N)
    note = walking.walk.item.drawers.fields["note"]
    with monkeypatch.context() as patch:
        patch.setattr(walking.desk.library, "commit", full)
        walking.type(note, "Weld below the lug")
        walking.press(walking.walk.item.next)
    assert note.value() == ""


def test_moving_on_with_a_full_disk_is_told_and_done(walking, monkeypatch):
    first = walking.desk.item
    monkeypatch.setattr(walking.desk.library, "remember", full)
    walking.press(walking.walk.item.next)
    assert walking.desk.item != first
    walking.qtbot.waitUntil(lambda: walking.says() == FULL)


def test_a_text_among_photographs_is_refused_and_the_others_are_taken(walking):
    text = walking.folder / "notes.jpg"
    text.write_text("This is no photograph.")
    files = [picture(walking.folder / "a.jpg", 1), text, picture(walking.folder / "b.jpg", 2)]
    walking.reach(walking.walk.item.photographs.plus)
    walking.drop(walking.walk.item.photographs, files)
    walking.qtbot.waitUntil(lambda: bool(walking.told))
    walking.settle()
    assert [p.name for p in walking.record.photographs] == ["a.jpg", "b.jpg"]
    assert len(walking.told) == 1
    assert "notes.jpg" in walking.says()


def test_nothing_to_paste_is_said(walking):
    walking.press(walking.walk.item.photographs.paste)
    assert walking.says() == "There is no photograph to paste. Copy a picture or a file first."


def test_a_photograph_gone_from_the_store_is_said_and_the_sheet_still_made(walking):
    walking.ask.pictures = [picture(walking.folder / "a.jpg", 1)]
    walking.press(walking.walk.item.photographs.plus)
    walking.qtbot.waitUntil(lambda: len(walking.record.photographs) == 1)
    walking.settle()
    record = walking.record.id
    walking.close()
    shutil.rmtree(walking.library / "photographs")
    shutil.rmtree(walking.library / "thumbnails")
    walking.build()
    assert walking.desk.open(record)
    walking.settle()
    thumb = walking.walk.item.photographs.row.keys[0]
    assert thumb._words == "not in the store"
    assert len(walking.record.photographs) == 1
    walking.page("sheet")
    sheet = walking.window.pages["sheet"]
    walking.qtbot.waitUntil(lambda: bool(sheet.pdf), timeout=20_000)
    walking.settle()
    assert sheet.pdf.startswith(b"%PDF-")


def test_a_sheet_is_not_written_over_a_folder_and_it_is_said(walking):
    walking.page("sheet")
    sheet = walking.window.pages["sheet"]
    walking.qtbot.waitUntil(lambda: bool(sheet.pdf), timeout=20_000)
    walking.settle()
    walking.ask.target = walking.folder / "nowhere" / "sheet.pdf"
    walking.press(sheet.save)
    assert str(walking.ask.target.parent) in walking.says()
    assert sheet.saved is None


def test_a_second_window_on_the_same_folder_is_told_who_has_it(walking, monkeypatch):
    with pytest.raises(Locked) as locked:
        Library.open(walking.library, walking.clock)
    shown = []
    monkeypatch.setattr(app, "data_folder", lambda: walking.library)
    monkeypatch.setattr(QMessageBox, "critical", lambda _, title, sentence: shown.append((title, sentence)))
    assert app.main([]) == 1
    assert [sentence.split(" ")[0] for _, sentence in shown] == [str(locked.value.said).split(" ")[0]]
    walking.key(Qt.Key.Key_1)
    assert walking.finding().mark.value == "pass"


def test_a_library_of_a_newer_program_is_shown_and_not_changed(walking):
    walking.key(Qt.Key.Key_1)
    record = walking.record
    walking.close()
    with sqlite3.connect(walking.library / "library.sqlite") as db:
        db.execute("PRAGMA user_version = 99")
    db.close()
    walking.build()
    notice = walking.says()
    assert notice
    assert walking.desk.open(record.id)
    assert walking.record == record
    walking.window.told.hide()
    walking.press(walking.walk.item.marks.key("fail"))
    assert walking.says() == notice
    assert walking.record == record
    assert walking.walk.item.marks.held() == ["pass"]
    walking.press(walking.walk.item.next)
    assert walking.desk.item != record.findings[0].item


def test_a_broken_profile_does_not_hide_the_others(house):
    mine = house.folder / "mine"
    (mine / "broken").mkdir(parents=True)
    (mine / "broken" / "profile.toml").write_text("format = \n")
    house.build(roots=(heron().parent, mine))
    machines = house.window.pages["machines"]
    house.press(machines.start)
    assert any("Heron" in w.accessibleName() for w in machines.profiles.widgets())
    assert len(house.told) == 1
    assert "profile.toml" in house.says()


def test_a_folder_without_a_profile_is_said(house):
    house.ask.folder = house.folder
    house.build()
    machines = house.window.pages["machines"]
    house.press(machines.start)
    house.press(machines.profiles.widgets()[-1])
    assert str(house.folder) in house.says()
    assert house.desk.session is None
    assert house.desk.library.machines() == ()
