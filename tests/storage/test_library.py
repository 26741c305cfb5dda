"""Records are kept, listed, found, loaded as they were left, and taken out for a while."""

import shutil
import sqlite3
from datetime import timedelta

import pytest

from inspector.record import verbs
from inspector.record.claim import Person
from inspector.record.edits import Part, apply
from inspector.record.finding import Photograph
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Mark, Role
from inspector.storage import formats, rows
from inspector.storage.library import Library
from inspector.storage.trouble import Damaged, StorageTrouble
from tests.record.steps import AT, blank
from tests.storage.shelf import ID, Clock, filled, opened, profile, said, sql


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def library(tmp_path, clock):
    with Library.open(tmp_path / "library", clock) as library:
        yield library


def told(record, *steps):
    for step in steps:
        record = apply(record, step).record
    return record


def photograph(sha256, key="p"):
    return Photograph(id=key, sha256=sha256, name="p.jpg", media="image/jpeg", width=4, height=3, size=5)


def test_a_new_record_is_listed_and_loaded(library, tmp_path):
    library.create(blank(), profile(tmp_path))
    (machine,) = library.machines()
    assert (machine.summary.id, machine.summary.title, machine.updated) == (ID, "Tern 250 (invented)", AT)
    loaded = library.load(ID)
    assert (loaded.record, loaded.undo, loaded.redo, loaded.read_only) == (blank(), (), (), False)


def test_a_commit_is_in_the_file_when_it_returns(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    opened(library, clock).do(said("one"))
    with Library.open(library.folder, clock, look_only=True) as other:
        assert [s.id for s in other.load(ID).record.statements] == ["one"]
        assert other.machines() == library.machines()
        assert other.history(ID) == library.history(ID)


@pytest.mark.parametrize("name", ["Träger 50% & more", "what? #1", "a'b;c"])
def test_a_folder_may_have_any_name(tmp_path, clock, name):
    (tmp_path / name).mkdir()
    folder = filled(tmp_path / name, clock)
    with Library.open(folder, clock), Library.open(folder, clock, look_only=True) as other:
        assert len(other.load(ID).record.statements) == 3
    assert len(list((folder / "backups").iterdir())) == 1


def test_every_commit_waits_for_the_disk(library):
    with library._reading() as db:
        assert db.execute("PRAGMA journal_mode").fetchone() == ("wal",)
        assert db.execute("PRAGMA synchronous").fetchone() == (2,)  # FULL, sqlite.org/pragma.html


def test_the_list_shows_the_record_as_it_is_now(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    session = opened(library, clock)
    session.do(verbs.mark(session.record, "tank", "inspector", AT, Mark.DOUBT))
    session.do(verbs.set_claim("model", "Tern Special (invented)"))
    (machine,) = library.machines()
    assert (machine.summary.title, machine.summary.doubts) == ("Tern Special (invented)", 1)
    assert machine.updated == session.kept_at
    session.undo()
    assert library.machines()[0].summary.title == "Tern 250 (invented)"


def test_the_last_changed_comes_first(library, tmp_path, clock):
    for record_id in ("A", "B", "C"):
        library.create(blank(record_id), profile(tmp_path))
    assert [m.summary.id for m in library.machines()] == ["C", "B", "A"]
    opened(library, clock, "A").do(said("one"))
    assert [m.summary.id for m in library.machines()] == ["A", "C", "B"]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("", True), ("tern", True), ("TERN special", True), ("1952", True), ("ruritania", True), ("zurich", True),
        ("Zürich", True), ("fenn seller", True), ("AB-12", True), ("ab12345", True), ("B12?", False),
        ("12345", True), ("1953", False), ("tern 1953", False), ("%", False), ("_", False), ("'", False),
    ],
)  # fmt: skip
def test_a_search_looks_at_title_numbers_place_seller_and_year(library, tmp_path, words, found):
    record = told(
        blank(),
        verbs.set_claim("model", "Tern Special (invented)"),
        verbs.set_claim("model_year", 1952),
        verbs.set_claim("place", "Zürich, Ruritania"),
        verbs.put_entry(
            Part.PEOPLE, Person(id="seller", name="Bo Fenn, seller (invented)", role=Role.SELLER), label="Seller"
        ),
        verbs.put_entry(Part.READINGS, Reading(id="r", place="frame", figures=figures_of("AB-12345")), label="Reading"),
    )
    library.create(record, profile(tmp_path))
    library.create(blank("OTHER"), profile(tmp_path))
    assert (ID in [m.summary.id for m in library.machines(words)]) is found


def test_a_thousand_records_are_listed_without_reading_them(library, tmp_path, monkeypatch):
    for number in range(1000):
        with library._writing() as db:
            rows.add_record(db, told(blank(f"R{number}"), verbs.set_claim("place", f"town {number}")), "x")
    monkeypatch.setattr(formats, "record_of", None)
    assert len(library.machines()) == 1000
    assert [m.summary.id for m in library.machines("town 777")] == ["R777"]


def test_the_very_profile_is_kept_once(library, tmp_path):
    source = profile(tmp_path)
    library.create(blank("A"), source)
    library.create(blank("B"), source)
    folder = library.load("A").profile_folder
    assert folder == library.load("B").profile_folder
    assert {p.name: p.read_bytes() for p in folder.iterdir()} == {
        "profile.toml": b'id = "tern-250"\n',
        "tank.svg": b"<svg/>",
    }
    assert [p.name for p in folder.parent.iterdir()] == [folder.name]


@pytest.mark.parametrize("name", ["profile.toml", "tank.svg"])
def test_a_profile_that_changed_leaves_the_kept_one_alone(library, tmp_path, name):
    source = profile(tmp_path)
    library.create(blank("A"), source)
    before = (source / name).read_bytes()
    (source / name).write_text("other")
    library.create(blank("B"), source)
    old, new = library.load("A").profile_folder, library.load("B").profile_folder
    assert ((old / name).read_bytes(), (new / name).read_bytes()) == (before, b"other")


def test_a_profile_that_cannot_be_read_leaves_no_record(library, tmp_path, monkeypatch):
    source = profile(tmp_path)

    def broken(*_):
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(type(source), "read_bytes", broken)
    with pytest.raises(Damaged, match="cannot be read"):
        library.create(blank(), source)
    assert library.machines() == ()


def test_a_record_is_created_once(library, tmp_path):
    library.create(blank(), profile(tmp_path))
    with pytest.raises(StorageTrouble, match=f"A record {ID} is in this library already"):
        library.create(blank(), profile(tmp_path))


def test_a_record_that_is_not_there_is_named(library):
    with pytest.raises(StorageTrouble, match="There is no record NONE in"):
        library.load("NONE")


def test_a_photograph_is_kept_before_it_is_named(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    session = opened(library, clock)
    step = verbs.add_photographs((photograph("ab" * 32),))
    with pytest.raises(StorageTrouble, match="photograph abababababab is not where it was kept"):
        session.do(step)
    assert session.record == library.load(ID).record == blank()
    kept = library.photographs.keep(b"bytes")
    session.do(verbs.add_photographs((photograph(kept.sha256),)))
    assert library.load(ID).record.photographs[0].sha256 == kept.sha256


def test_a_record_whose_photograph_got_lost_can_still_be_read_and_changed(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    session = opened(library, clock)
    kept = library.photographs.keep(b"bytes")
    session.do(verbs.add_photographs((photograph(kept.sha256),)))
    library.photographs.path(kept.sha256).unlink()
    captioned = photograph(kept.sha256).model_copy(update={"caption": "the tank"})
    session.do(verbs.put_entry(Part.PHOTOGRAPHS, captioned, label="Caption"))
    session.do(verbs.drop_entry(Part.PHOTOGRAPHS, "p", label="Drop"))
    session.undo()
    assert library.load(ID).record.photographs == (captioned,)
    assert library.photographs.path(kept.sha256).said.values["short"] == kept.sha256[:12]


def test_a_desk_note_is_no_part_of_the_record(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    assert library.recall(ID, "item") is None
    library.remember(ID, "item", "fork")
    library.remember(ID, "item", "tank")
    assert (library.recall(ID, "item"), library.recall("OTHER", "item")) == ("tank", None)
    assert (library.load(ID).record, library.history(ID)) == (blank(), ())


def test_the_history_tells_every_change(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    session = opened(library, clock)
    session.do(said("one"))
    session.by = "witness"
    session.undo()
    session.redo()
    told = [(line.kind, line.by, line.label) for line in library.history(ID)]
    assert told == [("do", "inspector", "Said one"), ("undo", "witness", "Said one"), ("redo", "witness", "Said one")]
    assert [line.at for line in library.history(ID)] == sorted({line.at for line in library.history(ID)})


@pytest.mark.parametrize("statement", ["UPDATE edits SET label = ''", "DELETE FROM edits", "DELETE FROM records"])
def test_an_edit_is_never_changed_or_lost(tmp_path, clock, statement):
    folder = filled(tmp_path, clock)
    with pytest.raises(sqlite3.IntegrityError):
        sql(folder, statement)


def test_a_removed_record_is_out_of_the_list_and_can_come_back(library, tmp_path, clock):
    library.create(blank(), profile(tmp_path))
    library.remove(ID)
    assert library.machines() == ()
    library.restore(ID)
    assert [m.summary.id for m in library.machines()] == [ID]


@pytest.mark.parametrize(("days", "there"), [(29, True), (31, False)])
def test_a_removed_record_is_kept_for_thirty_days(tmp_path, clock, days, there):
    folder = filled(tmp_path, clock, "A", "B")
    with Library.open(folder, clock) as library:
        library.remove("A")
    clock.now += timedelta(days=days)
    with Library.open(folder, clock) as library:
        library.restore("A")
        assert {m.summary.id for m in library.machines()} == ({"A", "B"} if there else {"B"})
        assert len(library.history("B")) == 3


def test_snapshots_are_made_every_fifty_edits_and_at_the_end(tmp_path, clock):
    folder = filled(tmp_path, clock, edits=120)
    with Library.open(folder, clock) as library, library._reading() as db:
        found = [seq for (seq,) in db.execute("SELECT seq FROM snapshots ORDER BY seq")]
        assert found == [0, 100, 120]
        assert len(library.load(ID).record.statements) == 120


def test_the_count_to_the_next_snapshot_goes_on_after_a_crash(tmp_path, clock):
    folder = filled(tmp_path, clock, edits=40)
    sql(folder, "DELETE FROM snapshots WHERE seq > 0")
    with Library.open(folder, clock) as library:
        record = library.load(ID).record
        library._latest.clear()
        for number in range(10):
            step = said(f"more {number}")
            record, inverse = apply(record, step)
            library.commit(record, "do", step, inverse, AT, "inspector")
        with library._reading() as db:
            assert rows.snapshot_before(db, ID, 51)[0] == 50


def test_a_record_that_makes_no_sense_is_named_and_the_others_are_read(tmp_path, clock):
    folder = filled(tmp_path, clock, "A", "B")
    sql(folder, "UPDATE snapshots SET body = '{\"id\": 7}' WHERE record = 'A'")
    with Library.open(folder, clock) as library:
        with pytest.raises(Damaged, match=r"record A cannot be read .*backups"):
            library.load("A")
        assert len(library.load("B").record.statements) == 3


@pytest.mark.parametrize("spoilt", ["not JSON", "[]", '{"id": 7}', "null", '{"format": 1}'])
def test_a_damaged_snapshot_is_passed_over_for_the_one_before(tmp_path, clock, spoilt):
    folder = filled(tmp_path, clock, edits=60)
    with Library.open(folder, clock) as library:
        before = library.load(ID)
    for seq in (60, 50):
        sql(folder, f"UPDATE snapshots SET body = '{spoilt}' WHERE seq = {seq}")
        with Library.open(folder, clock) as library:
            assert library.load(ID) == before, seq
            library._latest.clear()  # so that closing mends nothing


def test_without_any_snapshot_a_record_is_named(tmp_path, clock):
    folder = filled(tmp_path, clock, "A", "B")
    sql(folder, "DELETE FROM snapshots WHERE record = 'A'")
    with Library.open(folder, clock) as library:
        with pytest.raises(Damaged, match="record A cannot be read"):
            library.load("A")
        with pytest.raises(StorageTrouble, match="record A cannot be read"):
            library.whole("A")
        assert len(library.load("B").record.statements) == 3


@pytest.mark.parametrize("spoilt", ["not JSON", "[]", "{}", '{"id": 7, "readings": 3}', "null"])
def test_a_damaged_line_of_the_list_is_named_and_its_record_opens(tmp_path, clock, spoilt):
    folder = filled(tmp_path, clock, "A", "B")
    sql(folder, f"UPDATE records SET summary = '{spoilt}' WHERE id = 'A'")
    with Library.open(folder, clock) as library:
        lines = {m.summary.id: m.summary.title for m in library.machines()}
        assert set(lines) == {"A", "B"}
        assert "Record A, whose line" in lines["A"]
        assert library.same_numbers("A") == library.same_numbers("B") == ()
        opened(library, clock, "A").do(said("mended"))
        assert {m.summary.title for m in library.machines()} == {"Tern 250 (invented)"}
        library.remove("A")
        assert [t.summary.id for t in library.taken_out()] == ["A"]


def test_a_damaged_edit_takes_what_could_be_undone_and_nothing_of_the_record(tmp_path, clock):
    folder = filled(tmp_path, clock)
    with Library.open(folder, clock) as library:
        record = library.load(ID).record
    sql(folder, "DROP TRIGGER edits_stay", "UPDATE edits SET inverse = 'garble' WHERE seq = 2")
    with Library.open(folder, clock) as library:
        loaded = library.load(ID)
        assert (loaded.record, loaded.undo, loaded.redo) == (record, (), ())
        opened(library, clock).do(said("goes on"))
        assert len(library.load(ID).record.statements) == 4


def test_what_is_entered_while_another_thread_reads_the_record_is_in_the_snapshot_at_the_end(
    tmp_path, clock, monkeypatch
):  # fmt: skip
    from inspector.storage import replaying

    folder, plain = filled(tmp_path, clock), replaying.replayed
    with Library.open(folder, clock) as library:
        session = opened(library, clock)

        def slow(edits, before):
            found = plain(edits, before)
            session.do(said("meanwhile"))  # as the window does while a bag is being packed
            return found

        with monkeypatch.context() as patch:
            patch.setattr(replaying, "replayed", slow)
            library.load(ID)
    with Library.open(folder, clock) as library:
        assert library.load(ID).record == session.record


def test_a_kept_profile_that_was_changed_is_mended_by_the_next_record_of_it(tmp_path, clock):
    folder = filled(tmp_path, clock, "A")
    with Library.open(folder, clock) as library:
        kept = library.load("A").profile_folder
        (kept / "profile.toml").write_text("spoilt")
        (kept / "tank.svg").unlink()
        library.create(blank("B"), profile(tmp_path))
        assert library.load("B").profile_folder == kept
    assert (kept / "profile.toml").read_text() == 'id = "tern-250"\n'
    assert (kept / "tank.svg").read_text() == "<svg/>"


def test_what_fails_half_way_leaves_no_trace(library, tmp_path):
    def half_way():
        with library._writing() as db:
            rows.add_record(db, blank(), "x")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        half_way()
    assert library.machines() == ()
    library.create(blank(), profile(tmp_path))
    assert [m.summary.id for m in library.machines()] == [ID]


def test_a_library_whose_maker_died_half_way_is_made_again(tmp_path, clock):
    (tmp_path / "library").mkdir()
    db = sqlite3.connect(tmp_path / "half.sqlite", isolation_level=None)
    db.execute("PRAGMA cache_size = 2")  # so that pages reach the file before the commit, their journal before them
    db.execute("BEGIN")
    db.execute("CREATE TABLE records (id TEXT)")
    db.executemany("INSERT INTO records VALUES (?)", [("x" * 2000,)] * 100)
    for beside in ("", "-journal"):
        shutil.copyfile(tmp_path / f"half.sqlite{beside}", tmp_path / "library" / f"library.sqlite{beside}")
    db.close()
    address = f"{(tmp_path / 'library' / 'library.sqlite').as_uri()}?mode=ro"
    with pytest.raises(sqlite3.OperationalError) as refused:
        sqlite3.connect(address, uri=True).execute("PRAGMA user_version")
    assert refused.value.sqlite_errorname == "SQLITE_READONLY_ROLLBACK"
    with Library.open(tmp_path / "library", clock) as library:
        assert library.machines() == ()
    assert not (tmp_path / "library" / "library.sqlite-journal").exists()


def test_a_bug_is_not_taken_for_trouble_with_the_disk(library):
    with pytest.raises(sqlite3.OperationalError, match="no such table"), library._writing() as db:
        db.execute("SELECT * FROM nowhere")
