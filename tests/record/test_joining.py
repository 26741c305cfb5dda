"""Two people's records of one machine joined: every difference stays, under a name."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from inspector.record.claim import Person, Statement
from inspector.record.edits import Part, apply
from inspector.record.finding import Finding, Photograph
from inspector.record.joining import join
from inspector.record.reading import Reading, figures_of
from inspector.record.refusing import EditRefused
from inspector.record.words import Mark, Role
from tests.record.steps import blank, steps

ADA, BEN = "Ada Fenn (invented)", "Ben Oake (invented)"
SHOWN = ("findings", "readings", "papers", "statements", "questions", "photographs", "inquiries")


def record(record_id, inspector, **parts):
    made = blank(record_id)
    people = (Person(id="inspector", name=inspector, role=Role.INSPECTOR), Person(id="seller", role=Role.SELLER))
    return made.model_copy(update={"people": people, **parts})


def tank(mark, by="inspector", **told):
    return Finding(item="tank", by=by, mark=mark, **told)


def read(typed):
    return Reading(id="frame", place="frame", by="inspector", figures=figures_of(typed))


def joined(here, other):
    return apply(here, join(here, other)).record


def test_findings_of_two_people_stand_side_by_side():
    here, other = record("A", ADA, findings=(tank(Mark.PASS),)), record("B", BEN, findings=(tank(Mark.FAIL),))
    both = joined(here, other)
    assert {(both.name_of(f.by), f.mark) for f in both.findings_at("tank")} == {(ADA, Mark.PASS), (BEN, Mark.FAIL)}


def test_readings_of_both_stay():
    both = joined(record("A", ADA, readings=(read("15842"),)), record("B", BEN, readings=(read("15342"),)))
    assert [(both.name_of(r.by), r.typed()) for r in both.readings] == [(ADA, "15842"), (BEN, "15342")]


def test_what_one_person_says_otherwise_of_one_item_is_kept_apart_and_the_rest_is_not_doubled():
    seat = Finding(item="seat", by="inspector", mark=Mark.PASS)
    here = record("A", ADA, findings=(tank(Mark.PASS), seat))
    both = joined(here, record("B", ADA, findings=(tank(Mark.FAIL), seat)))
    assert len(both.findings_at("seat")) == 1
    assert {both.name_of(f.by) for f in both.findings_at("tank")} == {ADA, f"{ADA} (record B)"}


def test_claims_that_differ_are_noted_as_said_there_and_the_own_claim_stays():
    here, other = record("A", ADA), record("B", BEN)
    here = here.model_copy(update={"claim": here.claim.model_copy(update={"model_year": 1953})})
    claim = other.claim.model_copy(update={"model_year": 1954, "asking_price": "900"})
    both = joined(here, other.model_copy(update={"claim": claim}))
    assert both.claim.model_year == 1953
    assert [(s.text, s.by) for s in both.statements] == [("Claim: model year: 1954", BEN)]


def test_money_and_signatures_of_the_other_are_not_brought():
    other = record("B", BEN, statements=(Statement(id="s", text="It runs"),))
    other = other.model_copy(update={"money": other.money.model_copy(update={"currency": "EUR"})})
    assert joined(record("A", ADA), other).money.currency == ""


def test_the_same_photograph_is_not_brought_twice_and_another_of_the_same_id_is():
    def photograph(sha):
        return Photograph(id="p", sha256=sha * 64, name="p.jpg", media="image/jpeg", width=1, height=1, size=1)

    here = record("A", ADA, photographs=(photograph("a"),))
    assert len(joined(here, record("B", BEN, photographs=(photograph("a"), photograph("b")))).photographs) == 2
    both = joined(here, record("B", BEN, photographs=(photograph("b"),)))
    assert [p.sha256[0] for p in both.photographs] == ["a", "b"]
    assert len({p.id for p in both.photographs}) == 2


def test_two_inspectors_without_a_name_are_two_people():
    both = joined(record("A", "", findings=(tank(Mark.PASS),)), record("B", "", findings=(tank(Mark.FAIL),)))
    assert len({both.name_of(f.by) for f in both.findings_at("tank")}) == 2


@pytest.mark.parametrize("other", [record("A", BEN), record("B", ADA)])
def test_where_there_is_nothing_to_bring_it_says_so(other):
    with pytest.raises(EditRefused, match=r"same record|nothing that is not here"):
        join(record("A", ADA), other)


def test_records_of_two_profiles_are_not_joined():
    other = record("B", BEN)
    other = other.model_copy(update={"profile": other.profile.model_copy(update={"id": "gull-350"})})
    with pytest.raises(EditRefused, match="Only records of one profile"):
        join(record("A", ADA), other)


ALL = tuple(part for part in Part if part not in (Part.PEOPLE, Part.VERSIONS))


@given(mine=st.lists(steps(ALL), max_size=5), theirs=st.lists(steps(ALL), max_size=5))
@settings(max_examples=60, deadline=None)
def test_joining_takes_nothing_away_brings_everything_and_does_it_once(mine, theirs):
    here, other = record("A", ADA), record("B", BEN)
    for step in mine:
        here = apply(here, step).record
    for step in theirs:
        other = apply(other, step).record
    try:
        step = join(here, other)
    except EditRefused:
        assume(False)
    both, back = apply(here, step)
    for part in SHOWN:
        own, got = getattr(here, part), getattr(both, part)
        assert all(entry in got for entry in own)
        assert len(got) >= max(len(own), len(getattr(other, part)) if part == "findings" else 0)
    assert apply(both, back).record == here
    with pytest.raises(EditRefused, match="nothing that is not here"):
        join(both, other)
