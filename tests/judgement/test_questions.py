from pathlib import Path

import pytest

from inspector.judgement.judge import judge
from inspector.judgement.questions import NO_NEXT_STEP, questions
from inspector.judgement.score_reasons import evidence_note
from inspector.profile.read import read_profile
from inspector.record.begin import new_record
from inspector.record.finding import Concluded, Question
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Conclusion, Seen, Sureness
from tests.judgement.make import found, profile, record


def asked(*findings, **more):
    return questions(profile(), record(*findings, **more))


def texts(*findings, **more):
    return [str(q.text) for q in asked(*findings, **more)]


def test_a_doubt_is_open_with_its_next_step():
    (question,) = asked(found("tank", "doubt", next_step="Spares list, page 62", note="Odd seam. Two bolts."))
    assert str(question.text) == "Tank: doubt, Odd seam."
    assert (question.next_step, question.item, question.needs_next_step) == ("Spares list, page 62", "tank", False)
    assert str(question.short) == "Tank: doubt."


def test_without_a_next_step_it_says_so():
    (question,) = asked(found("tank", "doubt"))
    assert (question.next_step, question.needs_next_step) == (NO_NEXT_STEP, True)


@pytest.mark.parametrize("why", ["not identified", "needs a book", "right type but year not shown"])
def test_an_unsettled_conclusion_is_open_even_on_a_pass(why):
    assert texts(found("tank", "pass", why=[why])) == [f"Tank: pass, {why}."]


@pytest.mark.parametrize("sureness", [Sureness.LIKELY, Sureness.POSSIBLE])
def test_a_conclusion_less_than_sure_is_open_and_several_are_all_kept(sureness):
    why = [
        Concluded(what=c, sureness=sureness) for c in (Conclusion.WRONG_YEAR, Conclusion.PATTERN, Conclusion.MODIFIED)
    ]
    (text,) = texts(found("tank", "fail", why=why))
    assert text == f"Tank: fail, wrong year ({sureness}), pattern part ({sureness}), modified ({sureness})."


def test_a_sure_pass_and_a_sure_fail_leave_nothing_open():
    assert texts(found("tank", "pass", why=["right for the year"]), found("seat", "fail", why=["wrong year"])) == []


def test_a_standard_item_said_not_fitted_is_asked_and_an_optional_one_is_not():
    (text,) = texts(found("tank", seen=Seen.NOT_FITTED), found("seat", seen=Seen.NOT_FITTED))
    assert text.startswith("Tank: said not to be fitted")


def test_something_found_that_the_year_did_not_have_is_asked():
    assert texts(found("later-lamp", "pass")) == [
        "Later lamp: something was found, but machines of 1953 did not have it."
    ]


def test_two_people_dating_one_part_apart_are_listed_with_both_names():
    one = found("carburettor", "pass", fitted="twin", why=["right for the year"])
    other = found("carburettor", "fail", by="ben", fitted="late", why=["wrong year"])
    (text,) = texts(one, other)
    assert "Ann Invented says pass, right for the year, twin-float, 1951–1954" in text
    assert "ben says fail, wrong year, monobloc, 1955–1958" in text


def test_a_disputed_form_that_is_fitted_is_asked_and_one_that_is_not_is_silent():
    assert texts(found("carburettor", "pass", fitted="twin")) == []
    (text,) = texts(found("carburettor", "pass", fitted="argued"))
    assert text == "Carburettor: the sources disagree on long inlet. The list says 1952, the register 1953."


def test_figures_that_were_not_clear_are_asked():
    reading = Reading(id="a", place="frame", figures=figures_of("G[83]?[7]"))
    assert texts(readings=(reading, reading.model_copy(update={"id": "b"}))) == [
        "Is figure 2 of the frame number 8 or 3?",
        "What is figure 3 of the frame number? It could not be read.",
        "Is figure 4 of the frame number 7? It is not clear.",
    ]
    three = Reading(id="a", place="frame", figures=figures_of("[147]"))
    assert texts(readings=(three,)) == ["Is figure 1 of the frame number 1, 4 or 7?"]


def test_what_was_written_by_hand_stays_until_it_is_closed():
    kept = Question(id="q1", text="Who rebuilt it {when}?", next_step="Ask the widow", item="tank")
    closed = Question(id="q2", text="Done?", closed="yes")
    (question,) = asked(questions=(kept, closed))
    assert (str(question.text), question.next_step, question.item) == (
        "Who rebuilt it {when}?",
        "Ask the widow",
        "tank",
    )


def test_a_conclusion_without_evidence_is_said_so():
    assert str(evidence_note(found("tank", "fail", why=["wrong year"]))) == "no evidence recorded"
    assert evidence_note(found("tank", "fail", why=["wrong year"], evidence=["shape"])) is None
    assert evidence_note(found("tank", "fail")) is None


def test_numbers_that_raise_a_question_are_on_the_list_with_a_next_step():
    heron = read_profile(Path("sample_profiles/brackwater-heron")).profile
    numbers = {"frame": "6H 15842", "engine": "6HE 15843"}
    readings = tuple(Reading(id=place, place=place, figures=figures_of(typed)) for place, typed in numbers.items())
    begun = new_record("R", "2026-05-16", ProfileRef(id=heron.id, version="1"))
    claim = begun.claim.model_copy(update={"model_year": 1953})
    judged = judge(heron, begun.model_copy(update={"readings": readings, "claim": claim}))
    (one,) = (question for question in judged.questions if question.place)
    assert str(one.text).startswith("Frame number and engine number: disagree as read")
    assert one.place == "frame"
    assert "lamp from the other side" in one.next_step
