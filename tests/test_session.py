"""The open record changes only after the change is on the disk, and goes back the way it came."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.record.edits import Changed, Part, Put, Step, apply
from inspector.record.refusing import EditRefused
from inspector.record.verbs import drop_entry, mark, set_claim, set_note
from inspector.record.words import Mark
from inspector.storage import library as module
from inspector.storage.library import Library
from inspector.storage.trouble import DiskFull
from inspector.texts import say
from tests.record.steps import AT, blank, steps
from tests.storage.shelf import ID, Clock, opened, profile, said

PARTS = tuple(p for p in Part if p not in (Part.PHOTOGRAPHS, Part.VERSIONS))  # need a kept file; are not taken back
ACTIONS = st.one_of(steps(PARTS), steps(PARTS), st.sampled_from(["undo", "undo", "redo", "end visit", "reopen"]))


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def library(tmp_path, clock):
    with Library.open(tmp_path / "library", clock) as library:
        library.create(blank(), profile(tmp_path))
        yield library


@pytest.fixture
def session(library, clock):
    return opened(library, clock)


class Expected:
    """What undo and redo should give, kept as whole records."""

    def __init__(self, record):
        self.past, self.record, self.future, self.joining = [], record, [], ""

    def do(self, step):
        after = apply(self.record, step).record
        if after == self.record:
            return
        if not (step.joins and step.joins == self.joining):
            self.past.append(self.record)
        self.record, self.future, self.joining = after, [], step.joins

    def undo(self):
        if self.past:
            self.future.append(self.record)
            self.record, self.joining = self.past.pop(), ""

    def redo(self):
        if self.future:
            self.past.append(self.record)
            self.record, self.joining = self.future.pop(), ""


def agree(session, expected, library):
    """The live record, the record as kept, and both ways back are what they should be."""
    loaded = library.load(ID)
    assert session.record == loaded.record == expected.record
    assert session.record.model_dump_json() == loaded.record.model_dump_json()
    assert (session._undo, session._redo) == (list(loaded.undo), list(loaded.redo))
    assert (len(session._undo), len(session._redo)) == (len(expected.past), len(expected.future))


@settings(max_examples=60, deadline=None)
@given(st.lists(ACTIONS, max_size=25))
def test_after_every_step_the_record_and_its_way_back_are_kept(actions):
    clock = Clock()
    with tempfile.TemporaryDirectory() as name, pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, "SNAPSHOT_EVERY", 4)
        folder = Path(name)
        library = Library.open(folder / "library", clock)
        library.create(blank(), profile(folder))
        session, expected = opened(library, clock), Expected(blank())
        for action in actions:
            if action == "reopen":
                library.close()
                library = Library.open(folder / "library", clock)
                session, expected.joining = opened(library, clock), ""
            elif action == "end visit":
                session.end_visit()
                expected.joining = ""
            elif isinstance(action, Step):
                session.do(action)
                expected.do(action)
            else:
                getattr(session, action)()
                getattr(expected, action)()
            with Library.open(folder / "library", clock, look_only=True) as other:
                agree(session, expected, other)
        while session.undo():
            expected.undo()
            assert session.record == expected.record
        assert session.record == blank()
        library.close()


def test_what_is_done_is_kept_before_anybody_hears_of_it(session, library):
    heard = []
    session.listen(lambda changed: heard.append((changed, library.load(ID).record)))
    changed = session.do(mark(session.record, "tank", "inspector", AT, Mark.PASS))
    assert changed == Changed(frozenset({Part.FINDINGS}), frozenset({"tank"}))
    assert heard == [(changed, session.record)]
    assert session.record.finding("tank", "inspector").mark is Mark.PASS
    assert session.kept_at == library.load(ID).at


def test_undo_and_redo_are_named_and_announced(session):
    assert (session.undo_label, session.redo_label, session.undo(), session.redo()) == ("", "", None, None)
    heard = []
    session.listen(heard.append)
    session.do(said("one"))
    assert (session.undo_label, session.redo_label) == ("Said one", "")
    assert session.undo().parts == {Part.STATEMENTS}
    assert (session.undo_label, session.redo_label) == ("", "Said one")
    assert session.redo().parts == {Part.STATEMENTS}
    assert [changed.parts for changed in heard] == [{Part.STATEMENTS}] * 3


def test_typing_in_one_visit_undoes_as_one_and_each_letter_is_kept(session, library):
    for text in ("d", "de", "den", "dent"):
        session.do(set_note(session.record, "tank", "inspector", AT, text))
        assert library.load(ID).record.finding("tank", "inspector").note == text
    assert len(library.history(ID)) == 4
    session.undo()
    assert session.record == blank()
    session.redo()
    assert session.record.finding("tank", "inspector").note == "dent"


def another_item(session):
    session.do(set_note(session.record, "fork", "inspector", AT, "bent"))


def undone_and_redone(session):
    session.undo()
    session.redo()


def another_person(session):
    session.by = "seller"


@pytest.mark.parametrize("between", [type(None), another_item, undone_and_redone, another_person, "end_visit"])
def test_what_comes_between_parts_the_typing(session, between):
    session.do(set_note(session.record, "tank", "inspector", AT, "d"))
    if between == "end_visit":
        session.end_visit()
    elif between is not type(None):
        between(session)
    session.do(set_note(session.record, "tank", "inspector", AT, "de"))
    session.undo()
    finding = session.record.finding("tank", "inspector")
    assert (finding.note if finding else None) == (None if between is type(None) else "d")


def test_a_new_step_clears_what_could_be_redone(session):
    session.do(said("one"))
    session.undo()
    session.do(said("two"))
    assert (session.redo_label, session.redo()) == ("", None)


def test_a_step_that_changes_nothing_is_let_go(session, library):
    heard = []
    session.do(set_claim("model", "Tern"))
    session.listen(heard.append)
    assert session.do(set_claim("model", "Tern")) == Changed(frozenset(), frozenset())
    assert (heard, len(library.history(ID)), session.undo_label) == ([], 1, "Claim: model")


def test_a_refused_step_leaves_everything_as_it_was(session, library):
    session.do(said("one"))
    before = session.record
    bad = Step(label="Bad", puts=(said("two").puts[0], Put(part=Part.CLAIM, key="model_year", value=3)))
    with pytest.raises(EditRefused, match="Model year cannot be 3"):
        session.do(bad)
    assert session.record == library.load(ID).record == before
    assert session.undo_label == "Said one"


@pytest.mark.parametrize("action", ["do", "undo", "redo"])
def test_what_cannot_be_kept_is_not_done(session, library, monkeypatch, action):
    heard = []
    session.do(said("one"))
    session.do(said("two"))
    session.undo()
    before = (session.record, session.undo_label, session.redo_label, session.kept_at)
    session.listen(heard.append)

    def full(*_, **__):
        raise DiskFull(say("There is no room left."))

    with monkeypatch.context() as broken:
        broken.setattr(library, "commit", full)
        with pytest.raises(DiskFull):
            session.do(said("three")) if action == "do" else getattr(session, action)()
    assert (session.record, session.undo_label, session.redo_label, session.kept_at) == before
    assert heard == []
    session.redo()
    assert [s.id for s in session.record.statements] == ["one", "two"]


def test_a_failing_listener_stops_neither_the_others_nor_the_change(session, library, caplog):
    heard = []

    def broken(_):
        raise RuntimeError("cannot draw")

    session.listen(broken)
    session.listen(heard.append)
    session.do(said("one"))
    assert len(heard) == 1
    assert library.load(ID).record == session.record
    assert "cannot draw" in caplog.text


def test_a_listener_that_left_hears_no_more(session):
    heard = []
    leave = session.listen(heard.append)
    session.do(said("one"))
    leave()
    leave()
    session.do(said("two"))
    assert len(heard) == 1


def test_a_listener_may_leave_while_it_hears(session):
    heard = []
    leave = session.listen(lambda changed: (heard.append(changed), leave()))
    session.listen(heard.append)
    session.do(said("one"))
    assert len(heard) == 2


def test_taking_an_entry_away_tells_the_item_it_belonged_to(session, library):
    from inspector.record.finding import Question

    value = Question(id="q", text="which year?", item="tank").model_dump(mode="json")
    session.do(Step(label="Ask", puts=(Put(part=Part.QUESTIONS, key="q", value=value),)))
    assert session.do(drop_entry(Part.QUESTIONS, "q", label="Drop")).items == {"tank"}
    assert session.undo().items == {"tank"}


def test_each_edit_bears_the_name_of_who_made_it(session, library):
    session.do(said("one"))
    session.by = "seller"
    session.do(said("two"))
    assert [line.by for line in library.history(ID)] == ["inspector", "seller"]
    assert [pair.by for pair in library.load(ID).undo] == ["inspector", "seller"]
