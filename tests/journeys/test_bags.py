"""The whole file packed on one computer and taken in on another, a second visit, and two visits compared."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from shiboken6 import isValid

from inspector.demo import DEMO_ID
from inspector.record.claim import Person
from inspector.record.reading import figures_of
from inspector.record.verbs import add_photographs, mark, set_note
from inspector.record.words import Mark, Role
from inspector.window.bringing import PhotographStrip
from inspector.window.look.rows import Row
from inspector.window.thumb import Thumb
from inspector.window.visits.bag import BagView, PackedView
from inspector.window.visits.compare import CompareView
from inspector.window.visits.joining import JoinView
from inspector.window.visits.was import WasLine
from tests.photo.pictures import camera_jpeg
from tests.storage.bagged import changed_at, files
from tests.window.walked import begin

WAIT = 20_000


@pytest.fixture
def demo(house):
    """The window with the demo machine open on the page Machines."""
    house.build()
    house.press(house.window.pages["machines"].demo)
    house.qtbot.waitUntil(lambda: house.desk.session is not None, timeout=WAIT)
    house.window.show_page("machines")
    return house


def whole_file(house):
    return house.window.pages["machines"].file


def view(house, kind):
    """The view that opens, once it is there."""
    file = whole_file(house)
    house.qtbot.waitUntil(lambda: isinstance(file.view, kind) and file.view.isVisible(), timeout=WAIT)
    return file.view


def shut(house, shown):
    shown.close()
    house.qtbot.waitUntil(lambda: not isValid(shown))


def packed(house, path, key="pack"):
    house.ask.where_to_pack = lambda name, answer: answer(path)
    house.settle()
    house.press(getattr(whole_file(house), key))
    shown = view(house, PackedView)
    words = [w.words for w in shown.column.widgets() if hasattr(w, "words")]
    shut(house, shown)
    return words


def looked_into(house, path):
    house.ask.a_bag = lambda answer: answer(path)
    house.settle()
    house.press(whole_file(house).take_key)
    return view(house, BagView)


def looked_into_later(house, folder):
    """The machine is packed, a note is written, and what was packed is looked into again."""
    packed(house, folder / "heron.zip")
    house.desk.do(note(house, "written later"))
    return looked_into(house, folder / "heron.zip")


def take_in(house, shown):
    touch(house, shown.take)
    house.qtbot.waitUntil(lambda: shown.taken is not None, timeout=WAIT)


def words_of(shown):
    found = [w for w in shown.column.widgets() if not w.isHidden()]
    return " ".join(str(getattr(w, "words", "") or getattr(w, "title", "")) for w in found)


def touch(house, key):
    """A key in a view of its own is pressed where it can be seen."""
    house.qtbot.waitUntil(key.isVisible)
    QTest.mouseClick(key, Qt.MouseButton.LeftButton, pos=key.rect().center())


def test_a_machine_goes_to_an_empty_computer_and_is_the_same_there(demo, tmp_path):
    before = demo.record
    words = packed(demo, tmp_path / "heron.zip")
    assert str(tmp_path / "heron.zip") in words
    demo.close()
    demo.folder = tmp_path / "another"
    demo.build()
    assert whole_file(demo).pack.off, "nothing can be packed while no machine is open"
    shown = looked_into(demo, tmp_path / "heron.zip")
    said = words_of(shown)
    assert "each as it was packed" in said
    assert "not in this library yet" in said
    assert "A. Teasel" in said
    take_in(demo, shown)
    assert not shown.taken.beside
    touch(demo, shown.go)
    demo.qtbot.waitUntil(lambda: demo.desk.session is not None)
    assert demo.record == before
    assert demo.desk.library.photographs.check(before.photographs[0].sha256).value == "ok"


def test_a_bag_of_a_machine_that_is_here_comes_in_beside_and_can_be_joined(demo, tmp_path):
    shown = looked_into_later(demo, tmp_path)
    before = demo.record
    assert "Changes made here since: 1." in words_of(shown)
    take_in(demo, shown)
    assert shown.taken.beside
    assert demo.record == before
    taken = demo.desk.library.load(shown.taken.record_id).record
    touch(demo, shown.join)
    (dialog,) = demo.window.findChildren(JoinView)
    touch(demo, dialog.join)
    demo.qtbot.waitUntil(lambda: demo.record.id not in (before.id, taken.id))
    names = {demo.record.name_of(f.by) for f in demo.record.findings_at(before.findings[0].item)}
    assert len(names) == 2
    assert demo.desk.library.load(before.id).record == before
    assert demo.desk.library.load(taken.id).record == taken


def test_a_bag_that_came_in_beside_can_be_compared(demo, tmp_path):
    shown = looked_into_later(demo, tmp_path)
    take_in(demo, shown)
    came = shown.taken.record_id
    touch(demo, shown.after)
    (dialog,) = demo.window.findChildren(CompareView)
    assert {dialog.visits.was_id, dialog.visits.now_id} == {came, DEMO_ID}
    shut(demo, dialog)
    again = looked_into(demo, tmp_path / "heron.zip")
    assert f"the same, as record {came}" in words_of(again)
    assert again.take.isHidden()
    shut(demo, again)


def second_inspector(house, number):
    """Another inspector's record of the same model; its frame number reads so."""
    first = house.record
    person = Person(id="inspector", name="B. Sorrel (invented)", role=Role.INSPECTOR)
    frame = first.readings[0]
    read = frame.model_copy(update={"figures": figures_of(number), "note": "read with a lamp"})
    told = first.model_copy(update={"id": "OTHER123", "people": (person,), "readings": (read,), "photographs": (),
                                    "papers": (), "statements": (), "questions": ()})  # fmt: skip
    house.desk.library.create(told, house.desk.folder)
    return told


def join_view(house, other):
    house.settle()
    house.press(whole_file(house).compare)
    shown = view(house, CompareView)
    assert shown.join.off
    shown.show_other(other.id)
    touch(house, shown.join)
    house.qtbot.waitUntil(lambda: not isValid(shown))
    (dialog,) = house.window.findChildren(JoinView)
    return dialog


def test_two_inspectors_records_of_one_machine_are_joined_into_a_third(demo):
    first, other = demo.record, second_inspector(demo, demo.record.readings[0].typed())
    demo.window.pages["machines"].show_machines()
    dialog = join_view(demo, other)
    assert "can be one and the same" in words_of(dialog)
    touch(demo, dialog.join)
    demo.qtbot.waitUntil(lambda: demo.record.id not in (first.id, other.id))
    joined = demo.record
    for item in {f.item for f in first.findings}:
        assert {joined.name_of(f.by) for f in joined.findings_at(item)} >= {"B. Sorrel (invented)"}
    assert any(f"record {other.id}" in s.text and first.id in s.text for s in joined.statements)
    assert f"Join record {other.id}" in demo.window.undo_action.text()
    demo.window.undo()
    assert demo.record.findings == first.findings
    demo.window.redo()
    assert demo.record == joined
    assert demo.desk.library.load(first.id).record == first
    assert demo.desk.library.load(other.id).record == other


def test_numbers_that_differ_are_told_before_two_records_are_joined(demo):
    other = second_inspector(demo, "H53-99999")
    dialog = join_view(demo, other)
    said = words_of(dialog)
    assert demo.record.readings[0].typed() in said
    assert "H53-99999" in said
    assert "Read it again, from the metal" in said
    touch(demo, dialog.close_key)
    demo.qtbot.waitUntil(lambda: not isValid(dialog))
    assert len(demo.desk.library.machines()) == 2


def test_closing_a_bag_that_is_being_taken_in_stops_it(demo, tmp_path, monkeypatch):
    shown = looked_into_later(demo, tmp_path)
    shown.take_in()
    shown.reject()
    assert shown.isVisible()
    demo.qtbot.waitUntil(lambda: shown.working.job is None, timeout=WAIT)
    assert "Stopped. Nothing was changed." in demo.told
    assert len(demo.desk.library.machines()) == 1
    shut(demo, shown)


def test_photographs_that_wait_behind_a_bag_are_not_forgotten(demo, tmp_path):
    shown = looked_into_later(demo, tmp_path)
    picture = tmp_path / "tank.jpg"
    picture.write_bytes(camera_jpeg((90, 60)))
    before = len(demo.record.photographs)
    shown.take_in()
    demo.window.show_page("walk")
    strip = demo.window.pages["walk"].findChildren(PhotographStrip)[0]
    strip.take_in([picture])
    demo.qtbot.waitUntil(lambda: shown.taken is not None, timeout=WAIT)
    demo.qtbot.waitUntil(lambda: len(demo.record.photographs) > before, timeout=WAIT)
    shut(demo, shown)


def test_records_that_look_the_same_in_the_list_are_told_apart_by_their_ids(demo, tmp_path):
    shown = looked_into_later(demo, tmp_path)
    take_in(demo, shown)
    came = shown.taken.record_id
    shut(demo, shown)
    machines = demo.window.pages["machines"]
    machines.show_machines()
    seconds = [row.second for row in machines.rows.widgets() if isinstance(row, Row)]
    assert all(any(f"record {key}" in second for second in seconds) for key in (came, DEMO_ID))


def note(house, text):
    item = house.record.findings[0].item
    return set_note(house.record, item, "inspector", house.clock(), text)


def test_a_changed_bag_is_shown_with_the_file_named_and_offers_no_taking_in(demo, tmp_path):
    packed(demo, tmp_path / "heron.zip")
    contents = files(tmp_path / "heron.zip")
    name = next(n for n in contents if n.endswith("summary.txt"))
    changed = changed_at(tmp_path / "changed.zip", contents, name, 5)
    shown = looked_into(demo, changed)
    assert "data/summary.txt: changed" in words_of(shown)
    assert shown.take.isHidden()
    shut(demo, shown)


def test_what_is_no_bag_is_said_in_one_sentence(demo, tmp_path):
    (tmp_path / "letter.zip").write_bytes(b"words")
    demo.ask.a_bag = lambda answer: answer(tmp_path / "letter.zip")
    demo.press(whole_file(demo).take_key)
    demo.qtbot.waitUntil(lambda: any("not opened" in line for line in demo.told))
    assert whole_file(demo).view is None


def test_a_shared_copy_says_what_is_not_in_it(demo, tmp_path):
    words = packed(demo, tmp_path / "shared.zip", "nameless")
    assert any("names of people" in line for line in words)
    assert b"Teasel" not in b"".join(files(tmp_path / "shared.zip").values())


def test_packing_can_be_stopped_and_leaves_nothing(demo, tmp_path):
    file = whole_file(demo)
    file.pack_to(tmp_path / "heron.zip")
    file.working.stop.click()
    demo.qtbot.waitUntil(lambda: file.working.job is None, timeout=WAIT)
    assert "Stopped. Nothing was changed." in demo.told
    assert list(tmp_path.glob("*.zip")) == []


def test_closing_the_window_stops_what_is_packed_and_leaves_nothing_half_done(demo, tmp_path):
    file = whole_file(demo)
    file.pack_to(tmp_path / "heron.zip")
    job = file.working.job
    demo.window.close()
    assert job._stop.is_set()
    assert list(tmp_path.glob("*.zip")) == []


def test_a_second_visit_shows_what_was_and_counts_nothing_as_seen(demo):
    first = demo.record
    demo.press(whole_file(demo).again)
    demo.qtbot.waitUntil(lambda: demo.record.id != DEMO_ID)
    assert demo.record.findings == ()
    assert demo.desk.judgement.score.value is None
    assert any("Open since 2026-05-16" in q.text for q in demo.record.questions)
    demo.window.show_page("walk")
    failed = next(f for f in first.findings if f.mark is Mark.FAIL)
    demo.desk.go_to(failed.item)
    (line,) = demo.window.findChildren(WasLine)
    assert line.isVisible()
    assert line.words.startswith("Was, on 2026-05-16: fail")


def test_a_replaced_part_is_closed_beside_its_pictures_and_a_row_leads_to_the_item(demo, tmp_path):
    first = demo.record
    demo.press(whole_file(demo).again)
    demo.qtbot.waitUntil(lambda: demo.record.id != DEMO_ID)
    pictured = next(f for f in first.findings if f.mark is Mark.FAIL and first.photographs_at(f.item))
    by = next(demo.record.people_as(Role.INSPECTOR)).id
    demo.desk.do(mark(demo.record, pictured.item, by, demo.clock(), Mark.PASS))
    new = first.photographs[-1].model_copy(update={"id": "new", "item": pictured.item})
    demo.desk.do(add_photographs((new,)))
    demo.window.show_page("machines")
    demo.press(whole_file(demo).compare)
    shown = view(demo, CompareView)
    name = demo.desk.profile.item_by_id[pictured.item].name
    (row,) = [w for w in shown.body.widgets() if isinstance(w, Row) and w.title == name]
    assert "Now: pass" in row.second
    assert row.second.startswith("Was: fail")
    assert shown.visits.counts["closed"] == 1
    assert {t.photograph.id for t in shown.findChildren(Thumb)} >= {"new", first.photographs_at(pictured.item)[0].id}
    demo.ask.target = tmp_path / "visits.pdf"
    touch(demo, shown.save)
    assert (tmp_path / "visits.pdf").read_bytes().startswith(b"%PDF")
    row.click()
    demo.qtbot.waitUntil(lambda: not isValid(shown))
    assert demo.desk.item == pictured.item


def test_any_other_record_can_be_compared_with(demo):
    demo.press(whole_file(demo).again)
    demo.qtbot.waitUntil(lambda: demo.record.id != DEMO_ID)
    second = demo.record.id
    demo.desk.open(DEMO_ID, "machines")
    demo.press(whole_file(demo).compare)
    shown = view(demo, CompareView)
    (row,) = [w for w in shown.choices.widgets() if isinstance(w, Row)]
    touch(demo, row)
    assert (shown.visits.was_id, shown.visits.now_id) == (DEMO_ID, second)
    assert shown.visits.counts["closed"] == 0
    shut(demo, shown)


def test_the_demo_does_not_take_the_place_of_a_machine_begun_meanwhile(house):
    house.build()
    machines = house.window.pages["machines"]
    house.press(machines.demo)
    assert machines.demo.off
    begin(house)
    begun = house.record.id
    house.qtbot.waitUntil(lambda: not machines.demo.off, timeout=WAIT)
    assert house.record.id == begun
    house.window.show_page("machines")
    assert len(machines.rows.widgets()) == 2
