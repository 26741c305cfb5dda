"""A backup is whole, made when something changed, and never in place of a good one."""

import os
import shutil
import sqlite3
from contextlib import closing, suppress
from datetime import UTC, datetime

import pytest

from inspector.storage import backups, database
from inspector.storage.library import Library
from inspector.storage.trouble import Damaged, DiskFull, Locked, StorageTrouble
from inspector.texts import say
from tests.storage.shelf import ID, Clock, filled, opened, said, spoil


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def folder(tmp_path, clock):
    return filled(tmp_path, clock)


def change(folder, clock, key):
    with Library.open(folder, clock) as library:
        opened(library, clock).do(said(key))


def statements(path):
    with closing(database.open_to_read(path, still=True)) as db:
        return db.execute("SELECT count(*) FROM edits").fetchone()[0]


def test_a_library_that_changed_is_backed_up_when_it_is_closed(folder):
    (backup,) = backups.listing(folder)
    assert backup.name.startswith("library-000001-20260301T1000")
    assert statements(backup) == 3
    # Source: sqlite.org/fileformat.html, 1.3.3: 1 for a rollback journal, so that the file needs none beside it.
    assert backup.read_bytes()[18:20] == b"\x01\x01"


def test_a_library_that_did_not_change_is_not_backed_up_again(folder, clock):
    with Library.open(folder, clock) as library:
        assert library.backup() is None
        library.remember(ID, "item", "tank")
    assert len(backups.listing(folder)) == 1


def test_a_library_whose_program_died_is_backed_up_when_it_is_opened(folder, tmp_path, clock):
    left = tmp_path / "left"
    with Library.open(folder, clock) as library:
        opened(library, clock).do(said("late"))
        shutil.copytree(folder, left)  # as a program that dies leaves it
    assert statements(backups.listing(left)[0]) == 3
    with Library.open(left, clock):
        assert statements(backups.listing(left)[0]) == 4


def test_an_empty_library_makes_no_backup(tmp_path, clock):
    with Library.open(tmp_path, clock):
        pass
    assert backups.listing(tmp_path) == []


def test_the_newest_ten_are_kept(folder, clock):
    for number in range(12):
        change(folder, clock, f"more {number}")
    found = backups.listing(folder)
    assert [int(path.name.split("-")[1]) for path in found] == list(range(13, 3, -1))
    assert [statements(path) for path in found] == list(range(15, 5, -1))
    assert len(list((folder / "backups").iterdir())) == 10


def test_a_database_with_a_fault_is_not_backed_up(folder, clock):
    change(folder, clock, "more")
    before = {path: path.read_bytes() for path in backups.listing(folder)}
    spoil(folder / database.NAME)
    (newest, *_) = backups.listing(folder)
    newest.rename(newest.with_name("library-000009-x.sqlite"))  # so that it seems to have changed
    spoil(folder / "backups" / "library-000009-x.sqlite")
    made = None
    with closing(sqlite3.connect(folder / database.NAME)) as db, suppress(sqlite3.DatabaseError):
        made = backups.make(db, folder, clock())
    assert made is None
    left = backups.listing(folder)
    assert len(left) == len(before)
    assert left[-1].read_bytes() == before[left[-1]]
    assert not list((folder / "backups").glob(".*"))


def test_a_copy_with_a_fault_does_not_count(folder, clock, monkeypatch):
    with Library.open(folder, clock) as library:
        opened(library, clock).do(said("more"))
        monkeypatch.setattr(backups, "is_good", lambda _: False)
        with pytest.raises(Damaged, match="no backup was made"):
            library.backup()
    assert [p.name[:14] for p in (folder / "backups").iterdir()] == ["library-000001"]


def test_a_damaged_library_names_the_newest_good_backup(folder, clock):
    change(folder, clock, "more")
    newest, older = backups.listing(folder)
    spoil(folder / database.NAME)
    with pytest.raises(Damaged) as caught:
        Library.open(folder, clock)
    sentence = str(caught.value)
    assert str(newest) in sentence
    assert "copy the backup" in sentence
    spoil(newest)
    with pytest.raises(Damaged) as caught:
        Library.open(folder, clock)
    assert caught.value.said.values["backup"] == older


def test_a_damaged_library_without_backup_says_so(folder, clock):
    for backup in backups.listing(folder):
        spoil(backup)
    (folder / database.NAME).write_bytes(b"this is no database at all" * 400)
    with pytest.raises(Damaged, match="no good backup was found"):
        Library.open(folder, clock)


def test_damage_is_found_when_opening_and_nothing_is_written(folder, clock):
    spoil(folder / database.NAME)
    before = (folder / database.NAME).read_bytes()
    for look_only in (False, True):
        with pytest.raises(Damaged):
            Library.open(folder, clock, look_only=look_only)
    assert (folder / database.NAME).read_bytes() == before
    assert len(backups.listing(folder)) == 1


def test_a_restored_backup_is_the_library_and_the_damaged_file_is_put_aside(folder, clock):
    with Library.open(folder, clock) as library:
        good = library.load(ID).record
    spoil(folder / database.NAME)
    damaged = (folder / database.NAME).read_bytes()
    (folder / "library.sqlite-wal").write_bytes(b"left over")
    aside = backups.restore(folder, backups.newest_good(folder), clock())
    assert (aside / database.NAME).read_bytes() == damaged
    assert (aside / "library.sqlite-wal").read_bytes() == b"left over"
    with Library.open(folder, clock) as library:
        assert library.load(ID).record == good
        opened(library, clock).do(said("goes on"))


def test_nothing_is_restored_under_an_open_library(folder, clock):
    with Library.open(folder, clock) as library:
        with pytest.raises(Locked):
            backups.restore(folder, backups.newest_good(folder), clock())
        opened(library, clock).do(said("goes on"))


def test_a_library_that_is_gone_is_not_begun_anew_over_its_backups(folder, clock):
    (folder / database.NAME).unlink()
    with pytest.raises(Damaged, match=r"is not where it was.*copy it to") as caught:
        Library.open(folder, clock)
    assert not (folder / database.NAME).exists()
    backups.restore(folder, caught.value.said.values["backup"], clock())
    with Library.open(folder, clock) as library:
        assert len(library.load(ID).record.statements) == 3


def test_an_empty_file_in_the_place_of_the_library_is_not_begun_anew_over_its_backups(folder, clock):
    (folder / database.NAME).write_bytes(b"")  # as a file system may leave it that lost its power
    with pytest.raises(Damaged, match="there is nothing in it") as caught:
        Library.open(folder, clock)
    assert len(backups.listing(folder)) == 1
    with pytest.raises(StorageTrouble, match="nothing in the library"):
        Library.open(folder, clock, look_only=True)
    backups.restore(folder, caught.value.said.values["backup"], clock())
    with Library.open(folder, clock) as library:
        assert len(library.load(ID).record.statements) == 3


def test_a_restored_library_that_was_changed_as_often_as_the_one_before_is_backed_up(folder, clock):
    old = backups.newest_good(folder)
    change(folder, clock, "the first way")
    backups.restore(folder, old, clock())
    change(folder, clock, "the other way")
    with closing(database.open_to_read(backups.newest_good(folder), still=True)) as db:
        assert "the other way" in db.execute("SELECT label FROM edits ORDER BY seq DESC").fetchone()[0]


def test_a_backup_with_a_damaged_line_still_tells_how_many_it_holds(folder):
    (backup,) = backups.listing(folder)
    backup.chmod(0o644)
    with closing(sqlite3.connect(backup)) as db:
        db.execute("UPDATE records SET summary = 'garble'")
        db.commit()
    told = backups.described(backup)
    assert (told.sound, told.machines, told.last) == (True, 1, "")


def test_a_backup_that_cannot_be_made_stops_nobody(folder, clock, monkeypatch):
    def full(*_):
        raise DiskFull(say("There is no room left."))

    with Library.open(folder, clock) as library:
        opened(library, clock).do(said("more"))
        monkeypatch.setattr(backups, "make", full)
    with Library.open(folder, clock) as library:
        assert str(library.notice) == "No backup could be made. There is no room left."
        opened(library, clock).do(said("and more"))
        with pytest.raises(StorageTrouble):
            library.backup()
        assert len(library.load(ID).record.statements) == 5


@pytest.mark.parametrize("moment", ["", "yesterday at noon", "2026-03-01T10:00:00+01:00"])
def test_any_moment_makes_a_name_that_sorts(folder, clock, moment):
    with Library.open(folder, clock) as library:
        opened(library, clock).do(said("more"))
        library._clock = lambda: moment
        made = library.backup()
        assert backups.listing(folder)[0] == made
        library._clock = clock


def test_a_backup_tells_when_it_was_made_and_what_it_holds(tmp_path, clock):
    folder = filled(tmp_path, clock, "A", "B", "C")
    with Library.open(folder, clock) as library:
        library.remove("C")
        opened(library, clock, "A").do(said("last"))
        changed = library.machines()[0].updated
    told = backups.described(backups.listing(folder)[0])
    assert (told.sound, told.machines, told.last, told.changed) == (True, 2, "Tern 250 (invented)", changed)
    assert (clock.now - told.made).total_seconds() < 5


def test_a_backup_with_a_fault_tells_that_it_has_one(folder):
    (backup,) = backups.listing(folder)
    made = backups.described(backup).made
    spoil(backup)
    told = backups.described(backup)
    assert (told.sound, told.machines, told.made) == (False, 0, made)


def test_a_backup_whose_name_tells_no_time_has_that_of_its_file(folder):
    (backup,) = backups.listing(folder)
    renamed = backup.rename(backup.with_name("library-000002-undated.sqlite"))
    os.utime(renamed, (86_400, 86_400))
    assert backups.described(renamed).made == datetime(1970, 1, 2, tzinfo=UTC)


def test_a_backup_with_a_fault_is_not_put_in_the_place_of_anything(folder, clock):
    (backup,) = backups.listing(folder)
    spoil(backup)
    before = (folder / database.NAME).read_bytes()
    with pytest.raises(Damaged, match="is damaged too"):
        backups.restore(folder, backup, clock())
    assert (folder / database.NAME).read_bytes() == before
    assert not list(folder.glob("damaged-*"))


def test_what_was_put_aside_is_never_overwritten(folder, clock):
    moment, good = clock(), backups.newest_good(folder)
    bytes_aside = []
    for number in range(3):
        (folder / database.NAME).write_bytes(b"damaged %d" % number)
        bytes_aside.append((backups.restore(folder, good, moment) / database.NAME, b"damaged %d" % number))
    assert len({path for path, _ in bytes_aside}) == 3
    assert [path.read_bytes() for path, _ in bytes_aside] == [data for _, data in bytes_aside]


def test_a_library_put_aside_makes_room_for_an_empty_one(folder, clock):
    for backup in backups.listing(folder):
        spoil(backup)
    spoil(folder / database.NAME)
    damaged = (folder / database.NAME).read_bytes()
    where = backups.aside_folder(folder, moment := clock())
    assert backups.set_aside(folder, moment) == where
    assert (where / database.NAME).read_bytes() == damaged
    with Library.open(folder, clock) as library:
        assert library.machines() == ()


def test_nothing_is_put_aside_under_an_open_library(folder, clock):
    with Library.open(folder, clock), pytest.raises(Locked):
        backups.set_aside(folder, clock())
