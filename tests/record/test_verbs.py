"""What a person does at an item gives the record that they mean, and takes nothing else along."""

import pytest

from inspector.record import verbs
from inspector.record.edits import Part, apply
from inspector.record.finding import Concluded, Measured, Photograph
from inspector.record.refusing import EditRefused
from inspector.record.words import Conclusion, Evidence, Mark, PatternPolicy, Seen, Sureness
from tests.record.steps import AT, blank

TANK, ME, OTHER = "tank", "inspector", "witness"


def after(record, verb, *given, **named):
    """The record after a verb of a person at the tank."""
    return apply(record, verb(record, TANK, ME, AT, *given, **named)).record


def mine(record):
    return record.finding(TANK, ME)


@pytest.mark.parametrize("mark", Mark)
def test_a_mark_says_that_the_item_was_examined(mark):
    found = mine(after(after(blank(), verbs.set_seen, Seen.NOT_SEEN), verbs.mark, mark))
    assert (found.mark, found.seen, found.at) == (mark, Seen.EXAMINED, AT)


def test_words_that_are_too_long_are_refused_in_a_sentence_when_the_step_is_done():
    step = verbs.choose_fitted(blank(), TANK, ME, AT, "", other="x" * 501)
    with pytest.raises(EditRefused, match=r"write at most 500 letters\. Nothing was changed"):
        apply(blank(), step)


def test_a_mark_is_taken_away_and_the_rest_stays():
    record = after(after(blank(), verbs.mark, Mark.FAIL), verbs.set_note, "a dent")
    found = mine(after(record, verbs.mark, None))
    assert (found.mark, found.note) == (None, "a dent")


@pytest.mark.parametrize("state", [s for s in Seen if s is not Seen.EXAMINED])
def test_what_was_not_examined_bears_no_mark(state):
    found = mine(after(after(blank(), verbs.mark, Mark.PASS), verbs.set_seen, state))
    assert (found.mark, found.seen) == (None, state)


def test_nothing_is_concluded_by_a_mark_or_a_fitted_variant():
    record = after(after(blank(), verbs.choose_fitted, "twin"), verbs.mark, Mark.PASS)
    assert (mine(record).fitted, mine(record).conclusions, mine(record).evidence) == ("twin", (), ())


def test_several_conclusions_stand_together_and_each_is_toggled_alone():
    record = after(blank(), verbs.toggle_conclusion, Conclusion.WRONG_YEAR)
    record = after(record, verbs.toggle_conclusion, Conclusion.MODIFIED, Sureness.LIKELY)
    assert [c.what for c in mine(record).conclusions] == [Conclusion.WRONG_YEAR, Conclusion.MODIFIED]
    record = after(record, verbs.toggle_conclusion, Conclusion.WRONG_YEAR)
    assert mine(record).conclusions == (Concluded(what=Conclusion.MODIFIED, sureness=Sureness.LIKELY),)


def test_another_sureness_changes_a_conclusion_and_does_not_take_it_away():
    record = after(blank(), verbs.toggle_conclusion, Conclusion.PATTERN)
    record = after(record, verbs.toggle_conclusion, Conclusion.PATTERN, Sureness.POSSIBLE)
    assert mine(record).conclusions == (Concluded(what=Conclusion.PATTERN, sureness=Sureness.POSSIBLE),)


def test_evidence_is_toggled():
    record = after(after(blank(), verbs.toggle_evidence, Evidence.CAST), verbs.toggle_evidence, Evidence.WEAR)
    assert mine(record).evidence == (Evidence.CAST, Evidence.WEAR)
    assert mine(after(record, verbs.toggle_evidence, Evidence.CAST)).evidence == (Evidence.WEAR,)


def test_two_observers_keep_a_finding_each():
    record = after(blank(), verbs.mark, Mark.PASS)
    record = apply(record, verbs.mark(record, TANK, OTHER, AT, Mark.FAIL)).record
    assert [(f.by, f.mark) for f in record.findings_at(TANK)] == [(ME, Mark.PASS), (OTHER, Mark.FAIL)]


def test_a_proposal_taken_keeps_what_was_concluded_before():
    record = after(after(blank(), verbs.toggle_conclusion, Conclusion.MODIFIED), verbs.toggle_evidence, Evidence.SHAPE)
    record = after(record, verbs.take_proposal, Mark.DOUBT, Conclusion.WRONG_YEAR, (Evidence.CAST, Evidence.SHAPE))
    found = mine(record)
    assert found.mark is Mark.DOUBT
    assert [c.what for c in found.conclusions] == [Conclusion.MODIFIED, Conclusion.WRONG_YEAR]
    assert found.evidence == (Evidence.SHAPE, Evidence.CAST)
    again = after(record, verbs.take_proposal, Mark.DOUBT, Conclusion.WRONG_YEAR, (Evidence.CAST,))
    assert mine(again) == found
    assert mine(after(record, verbs.take_proposal, Mark.PASS, None)).conclusions == found.conclusions


def test_photographs_come_as_one_thing_to_undo():
    photographs = tuple(
        Photograph(id=i, sha256=i * 64, name=i, media="image/jpeg", width=1, height=1, size=1) for i in "ab"
    )
    record, inverse = apply(blank(), verbs.add_photographs(photographs))
    assert record.photographs == photographs
    assert apply(record, inverse).record.photographs == ()


@pytest.mark.parametrize(
    ("step", "read", "value"),
    [
        (verbs.set_claim("model_year", 1952), lambda r: r.claim.model_year, 1952),
        (verbs.choose_pattern_policy(PatternPolicy.NEUTRAL), lambda r: r.choices.pattern_parts, PatternPolicy.NEUTRAL),
        (verbs.choose_points(True), lambda r: r.choices.points, True),
        (verbs.set_order(("b", "a")), lambda r: r.choices.order, ("b", "a")),
        (verbs.drop_entry(Part.PEOPLE, "seller", label="Gone"), lambda r: r.person("seller"), None),
    ],
)
def test_a_choice_changes_what_it_names_and_no_more(step, read, value):
    record, inverse = apply(blank(), step)
    assert read(record) == value != read(blank())
    assert apply(record, inverse).record == blank()


@pytest.mark.parametrize("field", ["note", "next_step", "reply", "book"])
def test_words_alone_do_not_say_that_the_item_was_looked_at(field):
    record = after(blank(), verbs.change_finding, label="Words", **{field: "ask for the lamp"})
    assert mine(record).seen is Seen.NOT_CHECKED
    assert mine(after(record, verbs.toggle_conclusion, Conclusion.MODIFIED)).seen is Seen.EXAMINED
    assert mine(after(record, verbs.toggle_evidence, Evidence.SHAPE)).seen is Seen.EXAMINED
    assert mine(after(record, verbs.mark, Mark.PASS)).seen is Seen.EXAMINED


def test_words_change_nothing_of_how_it_was_seen():
    for state in Seen:
        record = after(after(blank(), verbs.set_seen, state), verbs.set_note, "dark")
        assert mine(record).seen is state


def test_typing_joins_and_marking_does_not():
    record = blank()
    assert verbs.set_note(record, TANK, ME, AT, "a").joins == verbs.set_note(record, TANK, ME, AT, "ab").joins != ""
    assert verbs.set_note(record, "fork", ME, AT, "a").joins != verbs.set_note(record, TANK, ME, AT, "a").joins
    assert verbs.mark(record, TANK, ME, AT, Mark.PASS).joins == ""


def test_a_measure_replaces_the_one_of_the_same_name_and_goes_when_nothing_is_read():
    record = after(blank(), verbs.set_measured, Measured(measure="bore", readings=("26",), unit="mm"))
    record = after(record, verbs.set_measured, Measured(measure="depth", readings=("9",), unit="mm"))
    record = after(record, verbs.set_measured, Measured(measure="bore", readings=("26", "26.1"), unit="mm"))
    assert {m.measure: m.readings for m in mine(record).measured} == {"bore": ("26", "26.1"), "depth": ("9",)}
    record = after(record, verbs.set_measured, Measured(measure="bore", readings=("", " ")))
    assert [m.measure for m in mine(record).measured] == ["depth"]


def test_what_is_fitted_by_its_measure_says_so_and_bears_no_mark():
    found = mine(after(after(blank(), verbs.toggle_evidence, Evidence.SHAPE), verbs.fit_by_measure, "thin"))
    assert (found.fitted, found.evidence, found.mark) == ("thin", (Evidence.SHAPE, Evidence.MEASUREMENT), None)


def test_a_sentence_goes_into_the_note_once_below_what_stood_there():
    record = after(blank(), verbs.set_note, "a dent")
    for _ in range(2):
        record = after(record, verbs.add_to_note, "Tyre code 317.", (Evidence.DATE_CODE,))
    assert mine(record).note == "a dent\nTyre code 317."
    assert (mine(record).evidence, mine(record).mark) == ((Evidence.DATE_CODE,), None)
