"""A damaged library at the start, and the backups of a sound one, in the real window."""

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QMessageBox

from inspector import app
from inspector.storage import backups, database
from inspector.window.look.look import Look
from inspector.window.look.rows import Row
from inspector.window.machines.recovery import Recovery
from tests.journeys.drive import LEFT, PX_PER_MM
from tests.storage.shelf import spoil

STEP = 10  # milliseconds between looks at whether the dialog is there


@pytest.fixture
def damaged(house):
    """A closed library with a machine in its first backup and two in its second; its file is spoilt."""
    house.build()
    house.start(1952)
    house.close()
    house.build()
    house.start(1953)
    house.close()
    house.backups = backups.listing(house.library)
    spoil(house.library / database.NAME)
    return house


def everything(folder):
    return {p.relative_to(folder): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def start(house, *presses):
    """The program started, the keys of its question pressed one after another; what it said before they were."""
    said, left = [], list(presses)

    def press():
        dialog = QApplication.activeModalWidget()
        if not isinstance(dialog, Recovery):
            QTimer.singleShot(STEP, press)
            return
        try:
            if not said:
                said.extend(w.words for w in dialog.column.widgets() if hasattr(w, "words"))
            touch(house, dialog, left.pop(0)(dialog))
        except BaseException:
            dialog.reject()  # what went wrong is told by the test, which would wait for the dialog for ever
            raise
        if left:
            QTimer.singleShot(STEP, press)
        elif dialog.isVisible():
            QTimer.singleShot(STEP, dialog.reject)

    QTimer.singleShot(0, press)
    look = Look("light", 1.0, PX_PER_MM)
    look.dress(QApplication.instance())
    house.window = app.open_window(house.library, look, house.settings)
    if house.window is not None:
        house.show()
    assert left == []
    return "\n".join(said)


def touch(house, dialog, wanted):
    """A key of the keyboard, or one touch of a widget in the dialog."""
    if isinstance(wanted, Qt.Key):
        house.qtbot.keyClick(dialog, wanted)
    else:
        house.reach(wanted)
        house.qtbot.mouseClick(wanted, LEFT)


def rows_of(dialog):
    return [w for w in dialog.rows.widgets() if isinstance(w, Row)]


def test_a_damaged_library_is_explained_and_its_newest_backup_brought_back(damaged):
    spoilt = (damaged.library / database.NAME).read_bytes()
    said = start(damaged, lambda dialog: dialog.back)
    (aside,) = damaged.library.glob("damaged-*")
    assert (aside / database.NAME).read_bytes() == spoilt
    for part in (str(damaged.library / database.NAME), str(aside), str(damaged.backups[0]), "It holds 2 machines."):
        assert part in said
    told = damaged.says()
    assert "The library is that of the backup made" in told
    assert str(aside) in told
    assert len(damaged.window.pages["machines"].machines.rows.widgets()) == 2


def test_a_library_that_was_emptied_is_brought_back_and_not_begun_anew(damaged):
    (damaged.library / database.NAME).write_bytes(b"")  # as a file system may leave it that lost its power
    said = start(damaged, lambda dialog: dialog.back)
    assert "there is nothing in it" in said
    assert len(damaged.window.pages["machines"].machines.rows.widgets()) == 2


def test_another_backup_can_be_chosen(damaged):
    start(damaged, lambda dialog: dialog.others, lambda dialog: rows_of(dialog)[1])
    (row,) = damaged.window.pages["machines"].machines.rows.widgets()
    assert "claimed 1952" in row.second
    assert len(backups.listing(damaged.library)) >= 2


@pytest.mark.parametrize("how", [lambda dialog: dialog.nothing, lambda _: Qt.Key.Key_Escape])
def test_opening_nothing_leaves_all_as_it_was(damaged, how):
    before = everything(damaged.library)
    start(damaged, how)
    assert damaged.window is None
    after = everything(damaged.library)
    after.pop(next(p for p in after if p.name == "library.lock"), None)
    before.pop(next(p for p in before if p.name == "library.lock"), None)
    assert after == before


def test_a_backup_that_is_damaged_too_is_passed_over_and_refused(damaged):
    spoil(damaged.backups[0])
    refused = []

    def bad(dialog):
        assert rows_of(dialog)[0].second == "damaged, cannot be used"
        rows_of(dialog)[0].refused.connect(refused.append)
        return rows_of(dialog)[0]

    said = start(damaged, lambda dialog: dialog.others, bad, lambda dialog: dialog.back)
    assert refused == ["This backup is damaged too. Choose another one."]
    assert str(damaged.backups[1]) in said
    assert len(damaged.window.pages["machines"].machines.rows.widgets()) == 1


def test_a_library_without_a_good_backup_can_be_begun_anew_beside_the_damaged_one(damaged):
    spoilt = (damaged.library / database.NAME).read_bytes()
    for backup in damaged.backups:
        spoil(backup)
    said = start(damaged, lambda dialog: dialog.empty)
    assert "No good backup was found." in said
    (aside,) = damaged.library.glob("damaged-*")
    assert (aside / database.NAME).read_bytes() == spoilt
    assert damaged.window.pages["machines"].machines.is_empty()
    assert damaged.says().startswith("An empty library is begun.")


def test_a_library_that_is_gone_comes_back_from_its_backup(damaged):
    (damaged.library / database.NAME).unlink()
    said = start(damaged, lambda dialog: dialog.back)
    assert "is gone, but its backups are there" in said
    assert "damaged" not in damaged.says()
    assert len(damaged.window.pages["machines"].machines.rows.widgets()) == 2


def test_what_cannot_be_brought_back_is_said_and_another_can_be_tried(damaged):
    seen = []

    def gone(dialog):
        damaged.backups[0].chmod(0o644)
        damaged.backups[0].unlink()
        return dialog.back

    def look(dialog):
        seen.append(dialog.trouble.words)
        return dialog.others

    start(damaged, gone, look, lambda dialog: rows_of(dialog)[1])
    assert str(damaged.backups[0]) in seen[0]
    assert len(damaged.window.pages["machines"].machines.rows.widgets()) == 1


def test_trouble_that_is_no_damage_is_said_in_one_sentence(house, monkeypatch):
    shown = []
    monkeypatch.setattr(QMessageBox, "critical", lambda _, title, sentence: shown.append(sentence))
    house.library.parent.mkdir(exist_ok=True)
    house.library.write_text("a file where the folder should be")
    assert app.open_window(house.library, Look("light", 1.0, PX_PER_MM), house.settings) is None
    assert len(shown) == 1
    assert str(house.library) in shown[0]


# the backups of a sound library


@pytest.fixture
def sound(house):
    house.build()
    house.start(1952)
    house.close()
    house.build()
    return house


def section(house):
    return house.window.pages["machines"].backups


def listed(house):
    """The backups in the list, once they were read."""
    house.settle()
    return [(w.title, w.second) for w in section(house).rows.widgets() if isinstance(w, Row)]


def test_the_backups_are_listed_with_day_and_count(sound):
    sound.press(section(sound).list)
    ((title, second),) = listed(sound)
    assert title.startswith(backups.described(backups.listing(sound.library)[0]).made.astimezone().strftime("%Y-%m-%d"))
    assert second == "1 machine; changed last: Brackwater Heron 600, 2026-05-09"
    where = section(sound).rows.widgets()[-1].words
    assert str(sound.library / "backups") in where
    assert f"copy all of {sound.library}, photographs included" in where
    sound.press(section(sound).list)
    assert not section(sound).rows.isVisible()


def test_a_backup_is_made_now_where_something_changed(sound):
    sound.press(section(sound).list)
    assert len(listed(sound)) == 1
    sound.press(section(sound).make)
    sound.settle()
    assert sound.says() == "Nothing has changed since the last backup was made, so that one stands."
    sound.window.told.hide()
    sound.start(1953)
    sound.page("machines")
    sound.press(section(sound).make)
    sound.settle()
    newest = backups.listing(sound.library)[0]
    assert sound.says() == f"A backup was made: {newest}"
    assert [second[:10] for _, second in listed(sound)] == ["2 machines", "1 machine;"]
    assert not section(sound).make.off


def test_the_folder_of_the_backups_is_shown_by_the_system(sound, monkeypatch):
    shown = []
    monkeypatch.setattr(sound.ask, "show_folder", shown.append, raising=False)
    sound.press(section(sound).show_folder)
    assert shown == [sound.library / "backups"]


def test_where_there_is_no_backup_yet_it_is_said(house, monkeypatch):
    monkeypatch.setattr(house.ask, "show_folder", None, raising=False)
    house.build()
    house.press(section(house).list)
    assert listed(house) == []
    assert section(house).rows.widgets()[0].words == "There is none yet. One is made when there is a machine."
    house.press(section(house).show_folder)
    assert house.says() == "There is no backup yet. One is made when there is a machine."
