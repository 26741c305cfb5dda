"""Two records joined into a third: both stay as they are, and the joining is one step that can be undone."""

import pytest

from inspector.packing.joined import join_as_new
from inspector.packing.pack import pack
from inspector.packing.take import take_in
from inspector.record.claim import Person
from inspector.record.edits import Part
from inspector.record.finding import Finding
from inspector.record.refusing import EditRefused
from inspector.record.verbs import put_entry, set_claim
from inspector.record.versions import keep_version, version_of
from inspector.record.words import Mark, Role
from inspector.storage.trouble import StorageTrouble
from tests.record.steps import blank
from tests.storage.bagged import AWAY, HERE, library_at, photograph, profile
from tests.storage.shelf import Clock, opened

AT = "2026-03-02T10:00:00+00:00"
BEN = "Ben Oake (invented)"


@pytest.fixture
def two(tmp_path):
    """A library with the records A and B, by two inspectors; A was sealed."""
    with library_at(tmp_path / HERE) as library:
        for key, name, mark in (("A", "Ada Fenn (invented)", Mark.PASS), ("B", BEN, Mark.FAIL)):
            library.create(blank(key), profile(tmp_path))
            session = opened(library, Clock(), key)
            person = Person(id="inspector", name=name, role=Role.INSPECTOR)
            session.do(put_entry(Part.PEOPLE, person, label="x"))
            session.do(set_claim("place", f"Lane {key}"))
            session.do(put_entry(Part.FINDINGS, Finding(item="tank", by="inspector", mark=mark), label="x"))
            session.do(put_entry(Part.PHOTOGRAPHS, photograph(library, ord(key) - 60), label="x"))
        session = opened(library, Clock(), "A")
        library.frozen.keep(b"%PDF-1.7")
        session.do(keep_version(version_of(session.record, AT, b"%PDF-1.7", "ab" * 32)))
        yield library


def test_the_third_has_what_both_say_and_the_two_are_as_they_were(two):
    before = {key: (two.load(key), two.history(key)) for key in ("A", "B")}
    new = join_as_new(two, "A", "B", AT, "inspector")
    assert {key: (two.load(key), two.history(key)) for key in ("A", "B")} == before
    record = two.load(new).record
    assert {(record.name_of(f.by), f.mark) for f in record.findings} == {
        ("Ada Fenn (invented)", Mark.PASS), (BEN, Mark.FAIL)}  # fmt: skip
    assert len(record.photographs) == 2
    assert record.claim.place == "Lane A"
    assert (record.versions, record.signatures) == ((), ())
    assert any("record A" in s.text and "record B" in s.text and BEN in s.text for s in record.statements)


def test_joining_is_one_step_with_its_name_and_undone_it_leaves_the_first(two):
    new = join_as_new(two, "A", "B", AT, "inspector")
    assert [(line.at, line.by, line.label) for line in two.history(new)] == [(AT, "inspector", "Join record B")]
    session = opened(two, Clock(), new)
    joined = session.record
    session.undo()
    assert session.record == two.load("A").record.model_copy(update={"id": new, "versions": ()})
    session.redo()
    assert session.record == joined == two.load(new).record


def test_what_brings_nothing_or_is_not_there_makes_no_third(two):
    for here, other, trouble in (("A", "A", EditRefused), ("A", "NONE", StorageTrouble), ("NONE", "A", StorageTrouble)):
        with pytest.raises(trouble):
            join_as_new(two, here, other, AT, "inspector")
    assert len(two.machines()) == 2


def test_joined_twice_both_joinings_are_told(two):
    first = join_as_new(two, "A", "B", AT, "inspector")
    session = opened(two, Clock(), "B")
    session.do(put_entry(Part.FINDINGS, Finding(item="seat", by="inspector", mark=Mark.FAIL), label="x"))
    record = two.load(join_as_new(two, first, "B", AT, "inspector")).record
    assert len([s for s in record.statements if "joins" in s.text]) == 2


def test_the_third_goes_to_another_computer_as_it_is(two, tmp_path):
    new = join_as_new(two, "A", "B", AT, "inspector")
    path = pack(two, new, tmp_path / "joined.zip").path
    with library_at(tmp_path / AWAY) as away:
        assert take_in(path, away).record_id == new
        assert away.load(new).record == two.load(new).record
        assert away.load(new).undo == two.load(new).undo
