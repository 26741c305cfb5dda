"""What is taken out can come back for 30 days; then it goes with the photographs that nothing else names."""

import shutil
import signal
import subprocess
import sys
from datetime import timedelta

import pytest

from inspector.record.edits import Part
from inspector.record.finding import Photograph
from inspector.record.model import Record
from inspector.record.verbs import add_photographs, drop_entry
from inspector.record.versions import canonical, keep_version, version_of
from inspector.storage import backups
from inspector.storage.library import Library
from inspector.storage.photographs import State
from tests.house.project import ROOT
from tests.photo.pictures import plain, saved
from tests.storage.shelf import Clock, filled, opened, said, sql

OWN, SHARED, UNDONE, LOOSE = (saved(plain((8 + n, 8)), "JPEG") for n in range(4))


@pytest.fixture
def clock():
    return Clock()


def photograph(library, clock, record_id, data):
    """The photograph is kept and named by the record; gives its SHA-256."""
    sha256 = library.photographs.keep(data).sha256
    named = Photograph(
        id=sha256[:12], sha256=sha256, name="p.jpg", media="image/jpeg", width=8, height=8, size=len(data)
    )
    opened(library, clock, record_id).do(add_photographs((named,)))
    return sha256


@pytest.fixture
def shelf(tmp_path, clock):
    """Two records, "A" taken out: its own photograph, one shared, one that "B" had and let go, one nobody named."""
    folder = filled(tmp_path, clock, "A", "B")
    with Library.open(folder, clock) as library:
        names = {
            "own": photograph(library, clock, "A", OWN),
            "shared": photograph(library, clock, "A", SHARED),
            "undone": photograph(library, clock, "A", UNDONE),
            "loose": library.photographs.keep(LOOSE).sha256,
        }
        photograph(library, clock, "B", SHARED)
        photograph(library, clock, "B", UNDONE)
        opened(library, clock, "B").do(drop_entry(Part.PHOTOGRAPHS, names["undone"][:12], label="Take out"))
        for sha256 in names.values():
            assert library.thumbs.get(sha256, 4)
        library.remove("A")
    return folder, names


def kept(folder, names):
    """Which of the photographs have a file."""
    return {word for word, sha256 in names.items() if (folder / "photographs" / sha256).exists()}


def sessions(folder, clock, count):
    """So many openings in each of which something changes, so that older backups make room."""
    for number in range(count):
        with Library.open(folder, clock) as library:
            opened(library, clock, "B").do(said(f"session {clock.now} {number}"))


def test_those_taken_out_are_listed_with_their_last_day(tmp_path, clock):
    folder = filled(tmp_path, clock, "A", "B", "C")
    with Library.open(folder, clock) as library:
        assert library.taken_out() == ()
        first = library.remove("A")
        library.remove("C")
        assert [t.summary.id for t in library.taken_out()] == ["C", "A"]
        assert library.taken_out()[1].until == first == (clock.now + timedelta(days=30)).date()
        library.restore("A")
        assert [t.summary.id for t in library.taken_out()] == ["C"]
        assert [m.summary.id for m in library.machines()] == ["A", "B"]


@pytest.mark.parametrize(("hours", "there"), [(30 * 24 + 13, True), (30 * 24 + 15, False)])
def test_the_last_day_counts_to_its_end(tmp_path, clock, hours, there):
    folder = filled(tmp_path, clock, "A")  # taken out at ten in the morning
    with Library.open(folder, clock) as library:
        library.remove("A")
    clock.now += timedelta(hours=hours)
    with Library.open(folder, clock) as library:
        assert bool(library.taken_out()) is there


def test_a_clock_that_was_set_back_when_it_was_taken_out_shortens_nothing(tmp_path, clock):
    folder, right = filled(tmp_path, clock, "A"), clock.now
    clock.now = right.replace(year=2000)  # as a computer says whose battery ran down
    with Library.open(folder, clock) as library:
        until = library.remove("A")
    clock.now = right + timedelta(days=29)
    with Library.open(folder, clock) as library:
        assert [t.until for t in library.taken_out()] == [until]
        assert until >= (right + timedelta(days=29)).date()
        library.restore("A")


@pytest.mark.parametrize("garble", ["", "yesterday", "9999-12-31T10:00:00+00:00"])
def test_a_damaged_day_deletes_nothing_and_hinders_nothing(tmp_path, clock, garble):
    folder = filled(tmp_path, clock, "A", "B")
    sql(folder, f"UPDATE records SET removed = '{garble}' WHERE id = 'A'")
    with Library.open(folder, clock) as library:
        (taken,) = library.taken_out()
        assert (taken.summary.id, taken.until.year) == ("A", 9999)
        library.restore("A")
        assert len(library.machines()) == 2


def test_a_record_brought_back_has_all_that_it_had(shelf, clock):
    folder, _ = shelf
    clock.now += timedelta(days=29)
    with Library.open(folder, clock) as library:
        library.restore("A")
    clock.now += timedelta(days=29)
    with Library.open(folder, clock) as library:
        record = library.load("A").record
        assert [library.photographs.check(p.sha256) for p in record.photographs] == [State.OK] * 3
        assert len(library.history("A")) == 6


def test_photographs_stay_while_a_backup_would_bring_their_record_back(shelf, clock):
    folder, names = shelf
    clock.now += timedelta(days=31)
    with Library.open(folder, clock) as library:
        assert (library.taken_out(), len(library.history("A"))) == ((), 0)
        assert kept(folder, names) == set(names)
    before = clock.now
    old = backups.listing(folder)[-1]
    with Library.open(folder, clock):
        pass
    backups.restore(folder, old, clock())
    clock.now = before - timedelta(days=20)
    with Library.open(folder, clock) as library:
        record = library.load("A").record
        assert {library.photographs.check(p.sha256) for p in record.photographs} <= {State.OK}


def test_only_photographs_that_no_other_record_names_go_when_the_backups_have(shelf, clock):
    folder, names = shelf
    clock.now += timedelta(days=31)
    sessions(folder, clock, backups.KEPT - 1)  # the first of them made two: one without the record, one at its end
    assert kept(folder, names) == set(names)
    sessions(folder, clock, 1)
    assert kept(folder, names) == {"shared", "undone", "loose"}
    assert list((folder / "photographs" / "copies").glob(f"{names['own']}*")) == []
    assert list((folder / "thumbnails").glob(f"{names['own']}*")) == []
    with Library.open(folder, clock) as library:
        assert library.photographs.check(names["shared"]) is State.OK
        assert library.photographs.check(names["undone"]) is State.OK


def test_what_a_sealed_version_of_another_record_shows_stays_with_it(shelf, clock):
    folder, names = shelf
    with Library.open(folder, clock) as library:
        photograph(library, clock, "B", OWN)
        session = opened(library, clock, "B")
        sheet = library.frozen.keep(b"%PDF-1.7 sealed")
        whole = library.frozen.keep(canonical(session.record))
        session.do(keep_version(version_of(session.record, clock(), b"%PDF-1.7 sealed", "ab" * 32)))
        session.do(drop_entry(Part.PHOTOGRAPHS, names["own"][:12], label="Take out"))
    shutil.rmtree(folder / "backups")
    clock.now += timedelta(days=31)
    with Library.open(folder, clock) as library:
        assert (library.taken_out(), len(library.history("A"))) == ((), 0)
        frozen = Record.model_validate_json(library.frozen.read(whole))
        assert {library.photographs.check(p.sha256) for p in frozen.photographs} == {State.OK}
        assert names["own"] in {p.sha256 for p in frozen.photographs}
        assert library.frozen.read(sheet)


def test_without_any_backup_they_go_at_once(shelf, clock):
    folder, names = shelf
    shutil.rmtree(folder / "backups")
    clock.now += timedelta(days=31)
    with Library.open(folder, clock):
        assert kept(folder, names) == {"shared", "undone", "loose"}


def test_a_photograph_taken_in_again_while_it_was_leaving_stays(shelf, clock):
    folder, names = shelf
    clock.now += timedelta(days=31)
    with Library.open(folder, clock) as library:
        photograph(library, clock, "B", OWN)
    sessions(folder, clock, backups.KEPT + 1)
    assert kept(folder, names) == set(names)
    with Library.open(folder, clock) as library, library._reading() as db:
        assert db.execute("SELECT count(*) FROM notes WHERE record = ''").fetchone() == (0,)


def test_a_file_that_cannot_be_let_go_is_tried_again(shelf, clock, monkeypatch):
    folder, names = shelf
    shutil.rmtree(folder / "backups")
    clock.now += timedelta(days=31)
    with monkeypatch.context() as patch:
        patch.setattr("inspector.storage.photographs.discard", lambda _: None)
        with Library.open(folder, clock):
            assert "own" in kept(folder, names)
    shutil.rmtree(folder / "backups")
    with Library.open(folder, clock):
        assert "own" not in kept(folder, names)


@pytest.fixture(scope="module")
def purger():
    command = [sys.executable, "-m", "tests.storage.purger"]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as process:

        def killed(folder, now, moment):
            """The code with which the program ended that was to die at that moment."""
            process.stdin.write(f"{folder} {now} {moment}\n")
            process.stdin.flush()
            return int(process.stdout.readline())

        yield killed
        process.stdin.close()
        process.wait(timeout=30)


def test_dying_at_any_moment_of_it_leaves_a_sound_library(shelf, clock, purger, tmp_path):
    folder, names = shelf
    shutil.rmtree(folder / "backups")
    clock.now += timedelta(days=31)
    now, moment, ends = clock(), 0, []
    while not ends or ends[-1] != 0:
        moment += 1
        here = tmp_path / f"moment {moment}".replace(" ", "-")
        shutil.copytree(folder, here)
        ends.append(purger(here, now, moment))
        sound_and_finished(here, names, clock)
        shutil.rmtree(here)
    assert ends[:-1] == [-signal.SIGKILL] * (moment - 1)
    assert moment > 20


def sound_and_finished(folder, names, clock):
    """What the dead program left is a library without fault, and opening it ends what was begun."""
    for path in (folder / "backups").glob("library-*"):
        path.unlink()
    with Library.open(folder, clock) as library:
        assert library.taken_out() == ()
        assert [m.summary.id for m in library.machines()] == ["B"]
        shared = library.load("B").record.photographs
        assert [(p.sha256, library.photographs.check(p.sha256)) for p in shared] == [(names["shared"], State.OK)]
    assert kept(folder, names) == {"shared", "undone", "loose"}
