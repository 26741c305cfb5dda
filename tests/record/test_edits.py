"""Every change has an exact inverse, and one that cannot hold changes nothing."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.record.claim import Statement
from inspector.record.edits import LISTED, SINGLE, Changed, Part, Put, Step, apply, changed_by
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.refusing import EditRefused
from inspector.record.verbs import drop_entry, put_entry
from tests.record.steps import AT, ENTRIES, FIELDS, blank, steps


def letter(record):
    return record.model_dump_json()


def done(record, *made):
    for step in made:
        record = apply(record, step).record
    return record


def step(*puts, label="Change"):
    return Step(label=label, puts=puts)


@settings(max_examples=120, deadline=None)
@given(st.lists(steps(), max_size=8), steps())
def test_the_inverse_gives_the_old_record_back_to_the_letter(before, made):
    record = done(blank(), *before)
    after, inverse = apply(record, made)
    back, forth = apply(after, inverse)
    assert letter(back) == letter(record)
    assert letter(apply(back, forth).record) == letter(apply(back, made).record) == letter(after)


@settings(max_examples=40, deadline=None)
@given(st.lists(steps(), max_size=12))
def test_undoing_everything_leaves_the_record_as_it_began(made):
    record, inverses = blank(), []
    for one in made:
        record, inverse = apply(record, one)
        inverses.append(inverse)
    assert letter(done(record, *reversed(inverses))) == letter(blank())


@settings(max_examples=40, deadline=None)
@given(st.lists(steps(), max_size=12))
def test_a_changed_record_is_a_record_that_can_be_written_and_read(made):
    record = done(blank(), *made)
    again = Record.model_validate_json(letter(record))
    assert again == record
    assert letter(again) == letter(record)


@given(steps())
def test_a_step_is_the_same_when_it_is_read_again(made):
    assert Step.model_validate_json(made.model_dump_json()) == made


def test_every_part_of_a_record_can_be_changed():
    fixed = {"format", "id", "created", "invented", "profile", "earlier"}
    assert {part.value for part in Part} == Record.model_fields.keys() - fixed
    assert SINGLE.keys() | LISTED.keys() == set(Part) == ENTRIES.keys() | FIELDS.keys()


def test_an_entry_taken_from_the_middle_comes_back_to_the_middle():
    said = [put_entry(Part.STATEMENTS, Statement(id=i, text=i), label="Said") for i in "xyz"]
    record = done(blank(), *said)
    after, inverse = apply(record, drop_entry(Part.STATEMENTS, "y", label="Not said"))
    assert [s.id for s in after.statements] == ["x", "z"]
    assert [s.id for s in apply(after, inverse).record.statements] == ["x", "y", "z"]


def test_an_entry_put_again_stays_in_its_place():
    said = [put_entry(Part.STATEMENTS, Statement(id=i, text=i), label="Said") for i in "xyz"]
    record = done(blank(), *said, put_entry(Part.STATEMENTS, Statement(id="x", text="other"), label="Said"))
    assert [(s.id, s.text) for s in record.statements] == [("x", "other"), ("y", "y"), ("z", "z")]


def test_taking_away_what_is_not_there_changes_nothing():
    assert apply(blank(), drop_entry(Part.PAPERS, "none", label="Gone")).record == blank()


@pytest.mark.parametrize(
    ("put", "words"),
    [
        (Put(part=Part.CLAIM, key="colour", value="red"), '"colour" is not a part of the claim'),
        (Put(part=Part.CLAIM, key="model_year", value=1700), "Model year cannot be 1700: .* at least 1880. Nothing"),
        (Put(part=Part.CLAIM, key="model_year", value="soon"), 'Model year: "soon" is not a number. Nothing'),
        (Put(part=Part.STATEMENTS, key="x", value={"id": "y", "text": ""}), "does not carry the key"),
        (Put(part=Part.FINDINGS, key="a/b", value={"item": "a", "by": "b", "mark": "fine"}), "Mark: .*'pass'"),
        (Put(part=Part.FINDINGS, key="a/b", value={"item": "a", "by": "b", "colour": "red"}), "Colour: "),
        (Put(part=Part.MONEY, key="budget", value="much"), 'Budget: "much" is not a number'),
        (Put(part=Part.MONEY, key="budget", value="NaN"), 'Budget: "NaN" is not a number'),
        (Put(part=Part.SIGNATURES, key="s", value={"id": "s", "person": "p", "strokes": [[[0, "inf"]]]}), "not a num"),
        (Put(part=Part.PHOTOGRAPHS, key="p", value=7), "It: .*Nothing was changed"),
    ],
)
def test_a_value_that_cannot_hold_is_refused_in_one_sentence(put, words):
    record = blank()
    good = Put(part=Part.CLAIM, key="model", value="Tern")
    with pytest.raises(EditRefused, match=words) as caught:
        apply(record, step(good, put))
    assert "\n" not in str(caught.value.sentence)
    assert record == blank()


def test_who_redraws_learns_which_parts_and_items_changed():
    finding = Finding(item="tank", by="inspector", at=AT)
    made = step(
        Put(part=Part.FINDINGS, key=finding.key, value=finding.model_dump(mode="json")),
        Put(part=Part.PHOTOGRAPHS, key="p", value={"item": "fork"}),
        Put(part=Part.CLAIM, key="model", value="Tern"),
    )
    expected = Changed(frozenset({Part.FINDINGS, Part.PHOTOGRAPHS, Part.CLAIM}), frozenset({"tank", "fork"}))
    assert changed_by(made) == expected
    assert changed_by(drop_entry(Part.FINDINGS, "tank/inspector", label="Gone")).items == {"tank"}
