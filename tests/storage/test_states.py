"""A second program, a newer format, a locked folder, a full disk: one sentence each, and nothing is lost."""

import os
import shutil
import socket
import sqlite3
import subprocess
import sys
import tempfile
from contextlib import contextmanager
from pathlib import Path

import pytest

from inspector.storage import database, failing, lock
from inspector.storage.library import Library
from inspector.storage.trouble import DiskFull, Locked, NewerFormat, ReadOnly, StorageTrouble
from tests.house.project import ROOT
from tests.record.steps import blank
from tests.storage.shelf import ID, Clock, filled, opened, profile, said, sql

NOBODY = 65534
HOLDER = """
import sys
from pathlib import Path
from inspector.storage import lock
held = lock.take(Path(sys.argv[1]), "2026-03-01T09:00:00+00:00")
print("held", flush=True)
sys.stdin.read()
"""


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def folder(tmp_path, clock):
    return filled(tmp_path, clock)


@contextmanager
def holder(folder):
    command = [sys.executable, "-c", HOLDER, str(folder)]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout.readline() == "held\n"
        yield process
        process.kill()


def test_a_second_program_is_told_who_has_it_and_since_when(folder, clock):
    with holder(folder) as process:
        with pytest.raises(Locked) as caught:
            Library.open(folder, clock)
        sentence = str(caught.value)
        for part in (socket.gethostname(), "2026-03-01T09:00:00+00:00", str(process.pid), str(folder)):
            assert part in sentence
        with Library.open(folder, clock, look_only=True) as library:
            assert len(library.machines()) == 1


def test_a_killed_program_leaves_no_lock(folder, clock):
    with holder(folder) as process:
        process.kill()
        process.wait(timeout=10)
        with Library.open(folder, clock) as library:
            opened(library, clock).do(said("more"))


def test_a_closed_library_can_be_opened_again_in_the_same_program(folder, clock):
    with Library.open(folder, clock), pytest.raises(Locked, match=f"process {os.getpid()}"):
        Library.open(folder, clock)
    with Library.open(folder, clock) as library:
        assert not library.read_only


@pytest.mark.parametrize("text", ["", "garble", "[]", '{"pid": 4}'])
def test_a_lock_without_a_readable_name_still_holds(folder, clock, text):
    with Library.open(folder, clock):
        (folder / lock.NAME).write_text(text)
        with pytest.raises(Locked, match="is open in another program"):
            Library.open(folder, clock)


def test_a_library_that_does_not_open_lets_go_of_its_lock(folder, clock, monkeypatch):
    def broken(_):
        raise RuntimeError

    with monkeypatch.context() as patch:
        patch.setattr(Library, "_begin", broken)
        with pytest.raises(RuntimeError):
            Library.open(folder, clock)
    with Library.open(folder, clock) as library:
        assert not library.read_only


def newer(folder):
    """The library as a program of the next format might leave it."""
    sql(
        folder,
        "ALTER TABLE records ADD COLUMN colour TEXT",
        "UPDATE records SET summary = json_set(summary, '$.colour', 'red')",
        "UPDATE snapshots SET format = 2, body = json_set(body, '$.format', 2, '$.colour', 'red',"
        " '$.people[0].age', 7) WHERE seq > 0",
        "INSERT INTO edits (record, kind, at, who, label, format, step, inverse) SELECT record, kind, at, who,"
        " 'Paint', 2, json_set(step, '$.puts[0].part', 'colours'), inverse FROM edits WHERE seq = 1",
        "PRAGMA user_version = 2",
    )


def test_a_newer_format_is_read_and_not_written(folder, clock):
    with Library.open(folder, clock) as library:
        record = library.load(ID).record
    newer(folder)
    before = (folder / database.NAME).read_bytes()
    with Library.open(folder, clock) as library, Library.open(folder, clock) as other:
        assert library.read_only
        assert "newer version of this program (format 2; this one writes 1)" in str(library.notice)
        assert [m.summary.id for m in library.machines("tern")] == [ID]
        loaded = library.load(ID)
        assert (loaded.record, loaded.read_only, loaded.undo) == (record, True, ())
        assert [line.label for line in library.history(ID)] == ["Said 0", "Said 1", "Said 2", "Paint"]
        assert other.load(ID) == loaded
        refuses(library, clock, "newer version")
    assert (folder / database.NAME).read_bytes() == before


def test_a_newer_format_without_the_known_tables_is_one_sentence(folder, clock):
    newer(folder)
    sql(folder, "ALTER TABLE records RENAME TO machines")
    with pytest.raises(NewerFormat, match="Install the newer version"):
        Library.open(folder, clock)


def test_a_database_of_something_else_is_left_alone(tmp_path, clock):
    sql(tmp_path, "CREATE TABLE other (x)")
    with pytest.raises(StorageTrouble, match="is not a library of this program"):
        Library.open(tmp_path, clock)


def refuses(library, clock, words):
    """Nothing can be changed, and everything says so in the same words."""
    session = opened(library, clock)
    before = session.record
    assert session.read_only
    source = library.load(ID).profile_folder
    attempts = (
        lambda: session.do(said("too late")),
        lambda: library.create(blank("NEW"), source),
        lambda: library.remove(ID),
        library.backup,
    )
    for attempt in attempts:
        with pytest.raises(ReadOnly, match=words):
            attempt()
    library.remember(ID, "item", "tank")
    assert session.record == library.load(ID).record == before


@pytest.fixture
def open_ground():
    """A folder that everybody may look into, unlike those of the test run."""
    with tempfile.TemporaryDirectory() as name:
        ground = Path(name)
        ground.chmod(0o755)
        yield ground
        for path in [ground, *ground.rglob("*")]:
            path.chmod(0o755)


@contextmanager
def write_protected(folder):
    """The folder and all in it may be read and not written, not even by the superuser's programs."""
    for path in [*folder.rglob("*"), folder]:
        path.chmod(0o555 if path.is_dir() else 0o444)
    superuser = os.geteuid() == 0
    if superuser:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if superuser:
            os.seteuid(0)


def test_a_folder_that_cannot_be_written_is_read(open_ground, clock):
    folder = filled(open_ground, clock)
    with write_protected(folder), Library.open(folder, clock) as library:
        assert library.read_only
        assert f"{folder} cannot be written" in str(library.notice) or "library.sqlite cannot" in str(library.notice)
        assert len(library.load(ID).record.statements) == 3
        refuses(library, clock, "cannot be written")


def test_what_a_dead_program_left_in_the_log_is_read_where_nothing_can_be_written(open_ground, clock):
    folder, left = filled(open_ground, clock), open_ground / "left"
    with Library.open(folder, clock) as library:
        opened(library, clock).do(said("late"))
        shutil.copytree(folder, left)  # as a program that dies leaves it
    assert (left / "library.sqlite-wal").stat().st_size > 0
    (left / "library.sqlite-shm").unlink()
    with write_protected(left), Library.open(left, clock) as library:
        assert [s.id for s in library.load(ID).record.statements] == ["0", "1", "2", "late"]
        refuses(library, clock, "cannot be written")


def test_an_empty_folder_that_cannot_be_written_is_one_sentence(open_ground, clock):
    folder = open_ground / "empty"
    folder.mkdir()
    with write_protected(folder), pytest.raises(ReadOnly, match="cannot be written"):
        Library.open(folder, clock)


def test_a_file_in_the_place_of_the_folder_is_one_sentence(tmp_path, clock):
    (tmp_path / "library").write_text("in the way")
    with pytest.raises(StorageTrouble, match="cannot be written"):
        Library.open(tmp_path / "library", clock)


def test_looking_where_there_is_no_library_makes_none(tmp_path, clock):
    with pytest.raises(StorageTrouble, match="There is no library in"):
        Library.open(tmp_path / "none", clock, look_only=True)
    assert not (tmp_path / "none").exists()


def fill_up(library, session):
    """Steps until the disk is full, which here is soon; how many were kept."""
    with library._reading() as db:
        pages = db.execute("PRAGMA page_count").fetchone()[0]
        db.execute(f"PRAGMA max_page_count = {pages + 8}")
    for number in range(1000):
        try:
            session.do(said(f"more {number}", "x" * 2000))
        except DiskFull as trouble:
            return number, str(trouble)
    raise AssertionError("the disk never filled up")


def test_a_full_disk_is_one_sentence_and_the_record_is_unchanged(tmp_path, clock):
    with Library.open(tmp_path / "library", clock) as library:
        library.create(blank(), profile(tmp_path))
        session = opened(library, clock)
        kept, sentence = fill_up(library, session)
        assert kept > 0
        assert "There is no room left on the disk" in sentence
        assert "nothing kept before is lost" in sentence
        loaded = library.load(ID)
        assert loaded.record == session.record
        assert [s.id for s in loaded.record.statements] == [f"more {n}" for n in range(kept)]
        assert list(loaded.undo) == session._undo
        with pytest.raises(DiskFull):
            session.do(said("again", "x" * 9000))
        with library._reading() as db:
            db.execute("PRAGMA max_page_count = 1000000")
        session.do(said("again", "x" * 9000))
        assert library.load(ID).record == session.record


def test_a_library_closes_on_a_full_disk(tmp_path, clock):
    library = Library.open(tmp_path / "library", clock)
    library.create(blank(), profile(tmp_path))
    session = opened(library, clock)
    fill_up(library, session)
    library.close()
    with Library.open(tmp_path / "library", clock) as library:
        assert library.load(ID).record == session.record


@pytest.mark.parametrize(
    ("code", "kind"),
    [
        (sqlite3.SQLITE_FULL, DiskFull),
        (sqlite3.SQLITE_READONLY_DBMOVED, ReadOnly),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, Locked),
        (sqlite3.SQLITE_IOERR_FSYNC, StorageTrouble),
        (sqlite3.SQLITE_CONSTRAINT, sqlite3.Error),
        (sqlite3.SQLITE_MISUSE, sqlite3.Error),
    ],
)
def test_trouble_with_the_machine_and_a_bug_are_told_apart(tmp_path, code, kind):
    error = sqlite3.OperationalError("as SQLite says it")
    error.sqlite_errorcode = code
    with pytest.raises(kind) as caught, failing.environment(tmp_path):
        raise error
    assert type(caught.value) is (kind if issubclass(kind, StorageTrouble) else sqlite3.OperationalError)
