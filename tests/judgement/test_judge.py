import json
from dataclasses import fields
from pathlib import Path

import pytest

from inspector.judgement.judge import judge, to_json
from inspector.profile.read import read_profile
from inspector.record.begin import new_record
from inspector.record.claim import Statement
from inspector.record.finding import Finding
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.record.words import HowRead, Mark, Seen
from inspector.resource import sample_profiles
from tests.judgement.make import found, profile, record

WALKED = (
    found("tank", "pass", conditions=("sound",)),
    found("front-wheel", "fail", conditions=("damaged", "repaired")),
    found("seat", "doubt"),
    found("carburettor", seen=Seen.CANNOT_BE_SEEN),
)


def test_items_are_counted_by_their_sign():
    counts = judge(profile(), record(*WALKED)).counts
    assert counts == {
        "pass": 1, "doubt": 1, "fail": 1, "examined": 0, "not checked": 3, "not seen": 0, "cannot be seen": 1,
        "not fitted to this version": 1,
    }  # fmt: skip


def test_condition_stands_apart_from_correctness():
    judgement = judge(profile(), record(*WALKED))
    assert [str(c) for c in judgement.condition] == ["Front wheel: damaged, repaired.", "Found sound: 1."]
    bare = tuple(f.model_copy(update={"conditions": ()}) for f in WALKED)
    without = judge(profile(), record(*bare))
    assert (without.score.value, without.score.low) == (judgement.score.value, judgement.score.low)
    assert [str(c) for c in without.condition] == ["No condition recorded."]


@pytest.mark.parametrize("how", HowRead)
def test_a_number_is_shown_as_read_with_how_it_was_read(how):
    readings = (Reading(id="1", place="frame", figures=figures_of("G52?[19]"), how_read=how),)
    (line,) = judge(profile(), record(readings=readings)).numbers
    assert (line.place, line.name, line.typed, line.how_read) == ("frame", "Frame number", "G52?[19]", how)
    said = "not said how it was read" if how is HowRead.NOT_SAID else f"read {how.value}"
    assert str(line.sentence) == f"Frame number: G52?[19], {said}."


def test_a_number_never_read_is_not_filled_in():
    (line,) = judge(profile(), record(readings=(Reading(id="1", place="box"),))).numbers
    assert (line.typed, str(line.sentence)) == ("", "box: nothing read.")


def test_what_was_said_is_shown_as_unverified_with_who_and_how():
    said = Statement(id="s", text="Rebuilt in {1990}", by="inspector", medium="by letter")
    (line,) = judge(profile(), record(statements=(said,))).unlinked_statements
    assert str(line.sentence) == "Unverified: “Rebuilt in {1990}” (Ann Invented, by letter)."


def test_the_judgement_as_json_is_plain_and_whole():
    judgement = judge(profile(), record(*WALKED, points=True))
    made = json.loads(json.dumps(to_json(judgement)))
    assert list(made) == [field.name for field in fields(judgement)]
    assert made["states"]["tank"]["findings"] == ["tank/inspector"]
    assert made["score"]["value"] == pytest.approx(judgement.score.value)
    assert made["points"]["full"] == "100"


def test_judging_changes_nothing_it_is_given_and_says_the_same_twice():
    given = record(*WALKED, points=True)
    before = given.model_dump_json()
    assert judge(profile(), given) == judge(profile(), given)
    assert given.model_dump_json() == before


def heron():
    folder = sample_profiles() / "brackwater-heron"
    read = read_profile(Path(folder))
    assert read.profile is not None, read.problems
    return read.profile


def test_a_whole_walk_of_the_sample_machine_is_judged():
    made = heron()
    year = made.years[len(made.years) // 2]
    blank = new_record("r", "2020-01-01", ProfileRef(id=made.id, version=made.version))
    blank = blank.model_copy(update={"claim": blank.claim.model_copy(update={"model_year": year})})
    walk = [i for i, s in judge(made, blank).states.items() if s.in_sum]
    passes = tuple(Finding(item=i, by="inspector", mark=Mark.PASS) for i in walk)
    whole = judge(made, blank.model_copy(update={"findings": passes}))
    assert (whole.score.seen_percent, whole.score.value, whole.score.low, whole.score.high) == (100, 100, 100, 100)
    assert whole.safety.findings == whole.safety.not_seen == ()
    fails = tuple(f.model_copy(update={"mark": Mark.FAIL}) for f in passes)
    worst = judge(made, blank.model_copy(update={"findings": fails}))
    assert (worst.score.value, worst.score.high) == (0, 0)
    assert len(worst.safety.findings) == sum(made.item_by_id[i].safety is not None for i in walk)
