"""Two visits compared: what was open is closed only by what is seen now."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.judgement.visits import Became, compare, was_words
from inspector.record.edits import apply
from inspector.record.finding import Concluded, Finding, Photograph, Question
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.record.second import second_visit, visit_before
from inspector.record.words import Conclusion, Mark, Role, Seen, Sureness
from inspector.sheet.text import as_text
from inspector.sheet.visits import visits_sheet
from tests.judgement import make

LATER = "2027-05-01T09:00:00+00:00"


def found(mark=None, **told):
    return Finding(item="tank", by="inspector", mark=mark, **told)


PASS, DOUBT, FAIL = found(Mark.PASS), found(Mark.DOUBT), found(Mark.FAIL)
UNSAFE = found(Mark.PASS, unsafe=True)
LIKELY = found(Mark.PASS, conclusions=(Concluded(what=Conclusion.RIGHT_YEAR, sureness=Sureness.LIKELY),))
HIDDEN, LOOKED, GONE = found(seen=Seen.CANNOT_BE_SEEN), found(), found(seen=Seen.NOT_FITTED)
ROUND, FLAT = found(Mark.PASS, fitted="round"), found(Mark.PASS, fitted="flat")


@pytest.fixture
def profile():
    return make.profile()


def records(*sides):
    """One record a side, with these findings and nothing else."""
    return [
        make.record().model_copy(update={"id": f"V{n}", "findings": tuple(f for f in side if f)})
        for n, side in enumerate(sides)
    ]


@pytest.mark.parametrize(
    ("was", "now", "became"),
    [
        (FAIL, PASS, Became.CLOSED),
        (DOUBT, PASS, Became.CLOSED),
        (UNSAFE, PASS, Became.CLOSED),
        (LIKELY, PASS, Became.CLOSED),
        (FAIL, GONE, Became.CLOSED),
        (FAIL, FAIL, Became.STILL_OPEN),
        (DOUBT, FAIL, Became.STILL_OPEN),
        (FAIL, UNSAFE, Became.STILL_OPEN),
        (FAIL, found(fitted="round"), Became.STILL_OPEN),
        (FAIL, None, Became.NOT_SEEN_AGAIN),
        (FAIL, HIDDEN, Became.NOT_SEEN_AGAIN),
        (FAIL, LOOKED, Became.NOT_SEEN_AGAIN),
        (DOUBT, found(seen=Seen.NOT_CHECKED), Became.NOT_SEEN_AGAIN),
        (PASS, FAIL, Became.NEW),
        (None, DOUBT, Became.NEW),
        (HIDDEN, FAIL, Became.NEW),
        (None, PASS, Became.FIRST_SEEN),
        (HIDDEN, PASS, Became.FIRST_SEEN),
        (PASS, None, Became.UNSEEN_NOW),
        (PASS, HIDDEN, Became.UNSEEN_NOW),
        (ROUND, FLAT, Became.CHANGED),
        (PASS, GONE, Became.CHANGED),
        (PASS, PASS, Became.AS_BEFORE),
        (ROUND, PASS, Became.AS_BEFORE),
        (HIDDEN, HIDDEN, Became.AS_BEFORE),
    ],
)
def test_what_became_of_an_item(profile, was, now, became):
    # Common practice, no source: a finding stays open until somebody looks again and settles it.
    (line,) = compare(profile, *records([was], [now])).lines
    assert line.became is became


MARKS = st.sampled_from([None, PASS, DOUBT, FAIL, UNSAFE, LIKELY, HIDDEN, LOOKED, GONE, ROUND, FLAT])


@given(was=MARKS, now=MARKS)
def test_nothing_is_closed_or_seen_by_the_visit_before(was, now):
    visits = compare(make.profile(), *records([was], [now]))
    looked = now is not None and now not in (HIDDEN, LOOKED)
    for line in visits.lines:
        if not looked:
            assert line.became in (Became.NOT_SEEN_AGAIN, Became.UNSEEN_NOW, Became.AS_BEFORE)
        if line.became is Became.CLOSED:
            assert now.mark is Mark.PASS or now.seen is Seen.NOT_FITTED
    assert sum(visits.counts.values()) == len(visits.lines) == bool(was or now)


@given(side=MARKS)
def test_a_visit_beside_itself_has_nothing_new_changed_or_closed(side):
    visits = compare(make.profile(), *records([side], [side]))
    assert not any(visits.counts[b.value] for b in (Became.NEW, Became.CHANGED, Became.CLOSED, Became.FIRST_SEEN))


def test_what_is_open_comes_before_what_is_not(profile):
    was = [FAIL, FAIL.model_copy(update={"item": "seat"}), PASS.model_copy(update={"item": "front-wheel"})]
    now = [PASS, FAIL.model_copy(update={"item": "seat"}), FAIL.model_copy(update={"item": "front-wheel"})]
    lines = compare(profile, *records(was, now)).lines
    assert [(line.item, line.became.value) for line in lines] == [
        ("seat", "still open"), ("front-wheel", "new"), ("tank", "closed")]  # fmt: skip


def test_two_people_who_differ_keep_it_open_and_both_are_named(profile):
    other = PASS.model_copy(update={"by": "seller"})
    (line,) = compare(profile, *records([FAIL], [FAIL, other])).lines
    assert line.became is Became.STILL_OPEN
    assert "seller: pass" in str(line.now.said)
    assert "Ann Invented: fail" in str(line.now.said)


def test_numbers_of_both_visits_stand_beside_each_other(profile):
    def read(typed):
        return (Reading(id="r", place="frame", figures=figures_of(typed)),)

    was, now = records([], [])
    was, now = (one.model_copy(update={"readings": read(typed)}) for one, typed in ((was, "15842"), (now, "158?2")))
    (number,) = compare(profile, was, now).numbers
    assert (number.was, number.now) == ("15842", "158?2")
    assert "not read the same" in str(number.sentence)
    assert "same on both" in str(compare(profile, was, was).numbers[0].sentence)
    assert "not read again" in str(compare(profile, was, records([])[0]).numbers[0].sentence)


# a second visit


@pytest.fixture
def old():
    """A finished visit with a doubt, a question, a photograph, a number, money and a place."""
    record = make.record()
    photograph = Photograph(id="p", sha256="a" * 64, name="p.jpg", media="image/jpeg", width=1, height=1, size=1,
                            item="tank")  # fmt: skip
    claim = record.claim.model_copy(update={"asking_price": "7000", "place": "A yard", "date": "2026-05-16"})
    people = tuple(p.model_copy(update={"interest": "none declared"}) for p in record.people)
    return record.model_copy(update={
        "id": "OLD1", "claim": claim, "people": people, "photographs": (photograph,),
        "findings": (found(Mark.FAIL, note="Dented. Filled."),),
        "readings": (Reading(id="r", place="frame", figures=figures_of("15842")),),
        "questions": (Question(id="q1", text="Whose stamp?"), Question(id="q2", text="Which year?", closed="told")),
    })  # fmt: skip


def second(old):
    return second_visit(old, "NEW1", LATER, ProfileRef(id=old.profile.id, version="2"))


def test_nothing_is_carried_over_as_seen(old):
    new = second(old)
    assert (new.findings, new.readings, new.photographs, new.papers, new.signatures) == ((), (), (), (), ())
    assert (new.claim.asking_price, new.claim.place, new.claim.date) == ("", "", "2027-05-01")
    assert {p.interest for p in new.people} == {""}
    assert new.people_as(Role.INSPECTOR)


def test_questions_still_open_are_open_again_and_settled_ones_are_not(old):
    more = (Question(id="q1", text="Open since 2026-05-16: tank?", item="tank"),)
    new = second_visit(old, "NEW1", LATER, old.profile, more)
    assert [(q.id, q.text) for q in new.questions] == [
        ("q1", "Whose stamp?"), ("q1-2", "Open since 2026-05-16: tank?")]  # fmt: skip


def test_the_visit_before_is_kept_whole_inside_and_comes_out_again(old):
    before = visit_before(second(old))
    assert (before.id, before.findings, before.readings, before.photographs) == (
        "OLD1", old.findings, old.readings, old.photographs)  # fmt: skip
    assert before.claim.asking_price == ""
    assert visit_before(old) is None


def test_each_item_says_what_was(old):
    profile, new = make.profile(), second(old)
    words = str(was_words(profile, new, profile.item_by_id["tank"]))
    assert words == "Was, on 2026-05-16: fail, Dented."
    assert was_words(profile, new, profile.item_by_id["seat"]) is None
    assert was_words(profile, old, profile.item_by_id["tank"]) is None


def test_a_part_that_was_replaced_is_closed_with_its_new_picture(old):
    new = second(old)
    photograph = old.photographs[0].model_copy(update={"id": "n", "sha256": "b" * 64})
    new = new.model_copy(update={"findings": (PASS,), "photographs": (photograph,)})
    (line,) = compare(make.profile(), visit_before(new), new).lines
    assert line.became is Became.CLOSED
    assert ([p.id for p in line.was.photographs], [p.id for p in line.now.photographs]) == (["p"], ["n"])


def test_the_comparison_as_a_sheet_says_what_was_and_what_is(old):
    new = second(old).model_copy(update={"findings": (PASS,)})
    visits = compare(make.profile(), old, new)
    text = as_text(visits_sheet(old, new, visits, LATER))
    assert "Closed\n  Tank: Now: pass.\n    Was: fail, Dented. (1 photograph)" in text
    assert "7000" not in text
    assert "A yard" not in text
    assert "Says what was seen on this day." in text


def test_another_version_of_the_profile_and_lost_items_are_said(old):
    new = second(old)
    odd = old.model_copy(update={"findings": (*old.findings, FAIL.model_copy(update={"item": "sidecar"}))})
    notes = " ".join(str(note) for note in compare(make.profile(), odd, new).notes)
    assert "version 1 of the profile, the second version 2" in notes
    assert "sidecar" in notes


def test_steps_on_the_second_visit_leave_the_first_as_it_was(old):
    from inspector.record.verbs import mark

    new = second(old)
    after = apply(new, mark(new, "tank", "inspector", LATER, Mark.PASS)).record
    assert after.earlier == new.earlier
