"""The same number in another record is noticed, also where figures are open; which machine is which is not said."""

import json
from time import perf_counter

import pytest

from inspector.record.edits import Part
from inspector.record.reading import Reading, figures_of
from inspector.record.verbs import put_entry
from inspector.storage import rows
from inspector.storage.library import Library
from tests.record.steps import blank
from tests.storage.shelf import Clock, opened, profile, sql


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def library(tmp_path, clock):
    with Library.open(tmp_path / "library", clock) as library:
        yield library


def stored(library, tmp_path, record_id, **numbers):
    readings = tuple(Reading(id=place, place=place, figures=figures_of(typed)) for place, typed in numbers.items())
    record = blank(record_id).model_copy(update={"readings": readings})
    library.create(record, profile(tmp_path))


def found(library, record_id="A", places=None):
    return [(s.record_id, s.place, s.number, s.sure, s.own_place) for s in library.same_numbers(record_id, places)]


def test_two_files_with_one_number_are_noticed_from_both_sides(library, tmp_path):
    stored(library, tmp_path, "A", frame="6H 15842", engine="6HE 15842")
    stored(library, tmp_path, "B", frame="6H-15842", engine="6HE 16001")
    assert found(library) == [("B", "frame", "6H-15842", True, "frame")]
    assert found(library, "B") == [("A", "frame", "6H 15842", True, "frame")]
    (notice,) = library.same_numbers("A")
    assert notice.title == "Tern 250 (invented)"


def test_a_number_is_noticed_at_another_place_too(library, tmp_path):
    stored(library, tmp_path, "A", frame="DU24875")
    stored(library, tmp_path, "B", engine="DU 24875")
    assert found(library) == [("B", "engine", "DU 24875", True, "frame")]


@pytest.mark.parametrize(
    ("mine", "theirs"),
    [
        ("6H 15[83]42", "6H 15842"),
        ("6H 15842", "6H 15?42"),
        ("6H 15[83]42", "6H 1[53]342"),
        ("6H ??842", "6H 15842"),
        ("15842", "6H 15842"),
        ("6H 15842", "15842"),
    ],
)
def test_what_is_open_or_left_out_may_be_the_same(library, tmp_path, mine, theirs):
    stored(library, tmp_path, "A", frame=mine)
    stored(library, tmp_path, "B", frame=theirs)
    assert found(library) == [("B", "frame", theirs, False, "frame")]


@pytest.mark.parametrize(
    ("mine", "theirs"),
    [
        ("6H 15842", "6H 15843"),
        ("6H 15842", "6H 1584"),
        ("6H 15[83]42", "6H 15142"),
        ("6H 15?42", "6H 1584"),
        ("6H ????2", "6H 15842"),
        ("?????", "15842"),
        ("12", "12"),
        ("FORK", "FORK"),
    ],
)
def test_other_numbers_and_those_hardly_read_are_not_noticed(library, tmp_path, mine, theirs):
    stored(library, tmp_path, "A", frame=mine)
    stored(library, tmp_path, "B", frame=theirs)
    assert found(library) == []


def test_sure_ones_come_first_and_places_can_be_kept_to(library, tmp_path):
    stored(library, tmp_path, "A", frame="6H 15842", engine="6HE 15842", magneto="11 53")
    stored(library, tmp_path, "B", frame="6H 15842")
    stored(library, tmp_path, "C", engine="6HE 158?2", magneto="11 53")
    assert [(r, p, sure) for r, p, _, sure, _ in found(library, places=("frame", "engine"))] == [
        ("B", "frame", True), ("C", "engine", False),
    ]  # fmt: skip


def test_a_record_taken_out_is_not_noticed_until_it_is_back(library, tmp_path):
    stored(library, tmp_path, "A", frame="6H 15842")
    stored(library, tmp_path, "B", frame="6H 15842")
    library.remove("B")
    assert found(library) == []
    assert [r for r, *_ in found(library, "B")] == ["A"]
    library.restore("B")
    assert [r for r, *_ in found(library)] == ["B"]


def test_a_reading_changed_by_an_edit_counts_as_it_is_now(library, tmp_path, clock):
    stored(library, tmp_path, "A", frame="6H 15842")
    stored(library, tmp_path, "B", frame="6H 99999")
    reading = Reading(id="frame", place="frame", figures=figures_of("6H 15842"))
    session = opened(library, clock, "B")
    session.do(put_entry(Part.READINGS, reading, label="Read"))
    assert [r for r, *_ in found(library)] == ["B"]
    session.undo()
    assert found(library) == []


def test_a_line_written_without_readings_is_read_from_its_record(library, tmp_path, clock):
    stored(library, tmp_path, "A", frame="6H 15842")
    stored(library, tmp_path, "B", frame="6H 15842")
    stored(library, tmp_path, "C", frame="6H 1?842")
    stored(library, tmp_path, "D", frame="6H 70000")
    for record_id in "ABCD":
        with library._writing() as db:
            (text,) = db.execute("SELECT summary FROM records WHERE id = ?", (record_id,)).fetchone()
            line = json.loads(text)
            del line["readings"]
            db.execute("UPDATE records SET summary = ? WHERE id = ?", (json.dumps(line), record_id))
    assert [(r, sure) for r, _, _, sure, _ in found(library)] == [("B", True), ("C", False)]
    assert {m.summary.readings for m in library.machines()} == {()}


def test_an_older_record_that_cannot_be_read_is_passed_over(library, tmp_path):
    stored(library, tmp_path, "A", frame="6H 15842")
    stored(library, tmp_path, "B", frame="6H 15842")
    sql(
        library.folder,
        """UPDATE records SET summary = json_remove(summary, '$.readings') WHERE id = 'B'""",
        "UPDATE snapshots SET body = 'spoilt' WHERE record = 'B'",
    )
    assert found(library) == []


def test_a_record_nobody_knows_has_no_same_numbers(library):
    assert library.same_numbers("nobody") == ()


def test_a_thousand_records_are_looked_through_in_no_time(library, tmp_path):
    stored(library, tmp_path, "A", frame="6H 15[83]42", engine="6HE 15842", gearbox="G 16077", fork="F?12")
    with library._writing() as db:
        for n in range(1000):
            readings = tuple(
                Reading(id=p, place=p, figures=figures_of(f"{letters} {10_000 + 37 * n + more}"))
                for more, (p, letters) in enumerate(
                    (("frame", "6H"), ("engine", "6HE"), ("gearbox", "G"), ("fork", "F"))
                )
            )
            rows.add_record(db, blank(f"R{n}").model_copy(update={"readings": readings}), "x")
    start = perf_counter()
    same = library.same_numbers("A")
    took = perf_counter() - start
    assert took < 1, f"{took:.3f} s"  # some hundredths as a rule; a second would be felt
    assert {s.number for s in same} <= {"6H 15842", "6H 15342", "6HE 15842", "G 16077"}
