import pytest

from inspector.judgement.safety import safety
from inspector.record.words import Seen
from tests.judgement.make import found, profile, record

FORBIDDEN = ("safe to ride", "authentic", "genuine", "certified")


def judged(*findings, **more):
    return safety(profile(), record(*findings, **more))


def sentences(*findings):
    return [str(f.sentence) for f in judged(*findings).findings]


def test_a_cracked_rim_is_said_in_words():
    note = "Rim cracked at a spoke hole. Asked the seller."
    assert sentences(found("front-wheel", "fail", note=note)) == ["Front wheel: rim cracked at a spoke hole."]


def test_an_altered_brake_noted_as_works_still_shows():
    assert sentences(found("front-brake", "pass", why=["modified"], note="Works")) == ["Front brake: works (modified)."]


@pytest.mark.parametrize(
    "why", ["modified", "wrong part adapted", "wrong side or end", "missing", "other model", "other maker", "added"]
)
@pytest.mark.parametrize("mark", ["pass", None])
def test_a_hard_conclusion_shows_whatever_the_mark(why, mark):
    assert sentences(found("front-brake", mark, why=[why])) == [f"Front brake: {why}."]


def test_wear_that_was_passed_is_no_finding_and_wear_that_was_not_is_one():
    worn = {"conditions": ("worn",)}
    assert sentences(found("front-brake", "pass", **worn)) == []
    assert sentences(found("front-brake", None, **worn)) == ["Front brake: worn."]


@pytest.mark.parametrize("condition", ["damaged", "repaired", "not working"])
def test_a_bad_condition_shows_whatever_the_mark(condition):
    assert sentences(found("front-brake", "pass", conditions=(condition,))) == [f"Front brake: {condition}."]


def test_wrong_end_modified_and_unsafe_at_once_are_all_kept():
    both = found("front-brake", "fail", why=["wrong side or end", "modified"], unsafe=True)
    assert sentences(both) == ["Front brake: wrong side or end, modified."]


def test_unsafe_shows_on_any_item_even_one_the_profile_does_not_know():
    shown = sentences(found("seat", "pass", unsafe=True), found("side-stand", unsafe=True))
    assert shown == ["Seat: flagged unsafe.", "side-stand: flagged unsafe."]


def test_a_mark_alone_is_said_as_a_mark():
    assert sentences(found("front-brake", "doubt")) == ["Front brake: marked doubt."]


def test_a_sound_pass_and_a_wrong_seat_are_not_safety_findings():
    assert sentences(found("front-brake", "pass", conditions=("sound",)), found("seat", "fail", why=["modified"])) == []


def test_a_sound_part_of_another_year_is_a_question_of_the_year():
    sound = {"why": ["wrong year"], "conditions": ("sound",)}
    assert sentences(found("front-brake", "fail", **sound)) == []
    assert sentences(found("front-brake", "fail", unsafe=True, **sound)) == ["Front brake: flagged unsafe."]


@pytest.mark.parametrize(
    "more",
    [
        {"why": ["wrong year"]},  # nobody said what state it is in
        {"why": ["wrong year"], "conditions": ("sound", "worn")},
        {"why": ["wrong year", "modified"], "conditions": ("sound",)},
        {"conditions": ("sound",)},  # failed, and not for its year
    ],
)
def test_any_other_fail_of_a_brake_is_told(more):
    assert len(sentences(found("front-brake", "fail", **more))) == 1


def test_unsafe_first_then_fails_then_doubts_then_the_rest():
    order = judged(
        found("front-wheel", "doubt"), found("front-brake", "pass", why=["added"]), found("tank", "fail", unsafe=True)
    )
    assert [f.item for f in order.findings] == ["tank", "front-wheel", "front-brake"]


def test_two_people_are_both_heard():
    shown = sentences(found("front-brake", "fail", note="Lining gone"), found("front-brake", "pass", by="ben"))
    assert shown == ["Front brake: lining gone."]
    both = found("front-brake", "fail", note="Lining gone"), found("front-brake", "doubt", by="ben", note="Thin")
    assert sentences(*both) == ["Front brake: thin; lining gone."]


def test_safety_items_nobody_examined_are_named():
    assert judged().not_seen == ("Front wheel", "Front brake")
    looked = judged(found("front-wheel", "pass"), found("front-brake", seen=Seen.CANNOT_BE_SEEN))
    assert looked.not_seen == ("Front brake",)


def test_the_caution_stands_even_when_everything_passed():
    text = str(judged(found("front-wheel", "pass"), found("front-brake", "pass")).caution)
    assert text == "No ride before a qualified person has passed brakes, steering, tyres, wheels and fuel."
    assert not any(word in text.lower() for word in FORBIDDEN)
