"""Two steps that are one thing to undo do together what they do in turn."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.record.edits import Part, apply
from inspector.record.verbs import drop_entry, set_note
from inspector.storage.formats import text_of
from inspector.storage.history import StepPair, merged, replayed, stacks
from inspector.storage.lines import Row
from tests.record.steps import AT, blank, steps
from tests.storage.shelf import said

FEW = (Part.CLAIM, Part.STATEMENTS, Part.FINDINGS)


def pair(record, step, at=AT):
    after, inverse = apply(record, step)
    return after, StepPair(step, inverse, at, "inspector")


def put_at(index, key, text):
    """The step that puts a statement in that place."""
    step = said(key, text)
    return step.model_copy(update={"puts": (step.puts[0].model_copy(update={"index": index}),)})


@settings(max_examples=80, deadline=None)
@given(st.lists(steps(FEW), max_size=4), st.lists(steps(FEW), min_size=2, max_size=4))
def test_joined_steps_do_and_undo_as_they_would_in_turn(before, joined):
    start = blank()
    for step in before:
        start = apply(start, step).record
    record, one = pair(start, joined[0])
    for step in joined[1:]:
        record, then = pair(record, step)
        one = merged(one, then)
    assert apply(start, one.step).record == record
    assert apply(record, one.inverse).record == start


@pytest.mark.parametrize(
    "joined",
    [
        [put_at(0, "new", "first"), said("new", "then")],
        [drop_entry(Part.STATEMENTS, "x", label="Drop"), said("x", "back at the end")],
        [said("new"), drop_entry(Part.STATEMENTS, "new", label="Drop")],
    ],
)
def test_joined_steps_leave_each_entry_where_it_stood(joined):
    start = apply(apply(blank(), said("x")).record, said("y")).record
    record, one = pair(start, joined[0])
    record, then = pair(record, joined[1])
    one = merged(one, then)
    assert apply(start, one.step).record == record
    assert apply(record, one.inverse).record == start


def test_typing_does_not_pile_up():
    start = blank()
    record, one = pair(start, set_note(start, "tank", "inspector", AT, "a"))
    for length in range(2, 50):
        record, then = pair(
            record, set_note(record, "tank", "inspector", f"{AT}{length}", "a" * length), f"{AT}{length}"
        )
        one = merged(one, then)
    assert (len(one.step.puts), len(one.inverse.puts), one.at) == (1, 1, f"{AT}49")
    assert apply(record, one.inverse).record == start


def row(seq, kind, step, joined=False, format_=1):
    return Row(seq, kind, joined, AT, "inspector", format_, text_of(step), text_of(step))


def test_a_new_edit_clears_what_could_be_redone():
    found = stacks([row(1, "do", said("a")), row(2, "undo", said("a")), row(3, "do", said("b"))])
    assert ([p.step for p in found.undo], found.redo) == ([said("b")], ())


def test_undone_and_done_again_stands_where_it_stood():
    kinds = ["do", "do", "undo", "undo", "redo"]
    found = stacks([row(n, kind, said(str(n))) for n, kind in enumerate(kinds)])
    assert [p.step for p in found.undo] == [said("0")]
    assert [p.step for p in found.redo] == [said("1")]


@pytest.mark.parametrize("kind", ["undo", "redo"])
def test_a_history_that_undoes_nothing_is_no_history(kind):
    with pytest.raises(IndexError):
        stacks([row(1, kind, said("a"))])


def test_an_edit_that_cannot_be_made_is_not_passed_over():
    step = said("a")
    bad = step.model_copy(update={"puts": (step.puts[0].model_copy(update={"value": {"id": "b"}}),)})
    with pytest.raises(ValueError, match="Text is missing"):
        replayed(blank(), [row(1, "do", bad)])
    assert replayed(blank(), [row(1, "do", bad, format_=2)]) == blank()
