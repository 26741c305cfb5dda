"""The list of photographs to bring home: what is missing, and why it is wanted."""

import pytest

from inspector.judgement.shots import shots
from inspector.profile.read import read_profile
from inspector.record.finding import Finding, Photograph
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Mark
from inspector.resource import sample_profiles
from tests.judgement.make import item, profile, record


def photograph(key="p", **more):
    return Photograph(
        id=key, sha256="0" * 64, name="a.jpg", media="image/jpeg", width=4, height=3, size=9, **more
    )  # fmt: skip


@pytest.fixture
def heron():
    return read_profile(sample_profiles() / "brackwater-heron").profile


def with_photographs(*photographs, findings=(), readings=()):
    return record(*findings).model_copy(update={"photographs": photographs, "readings": readings})


def missing(machine, *photographs, **more):
    return {line.id for line in shots(machine, with_photographs(*photographs, **more)).missing}


def test_numbers_all_sides_and_the_profiles_shots_are_on_it(heron):
    found = missing(heron)
    assert {"left-side", "right-side", "front-view", "rear-view", "frame-pad", "engine-pad", "clock"} <= found
    listed = {shot.place for shot in heron.shots}
    assert {f"number-{place.id}" for place in heron.places if place.id not in listed} <= found


def test_the_list_says_that_it_is_not_complete_and_no_evidence(heron):
    caution = str(shots(heron, with_photographs()).caution)
    assert "not complete" in caution
    assert "no evidence" in caution


def test_a_profile_without_a_list_still_wants_all_sides():
    machine = profile(station=[{"id": "s", "name": "Station", "item": [item("tank")]}])
    names = [str(line.name) for line in shots(machine, with_photographs()).lines]
    assert names[:5] == [
        "Left side, square on", "Right side, square on", "Front, square on", "Rear, square on",
        "Engine, square on from both sides",
    ]  # fmt: skip


def test_a_photograph_answers_by_what_it_is_tied_to_or_by_the_shot_named(heron):
    assert "engine-pad" not in missing(heron, photograph(place="engine"))
    assert "carb-flange" not in missing(heron, photograph(item="carburettor"))
    assert "right-side" not in missing(heron, photograph(shot="right-side"))


def test_one_photograph_of_a_place_answers_one_of_its_shots(heron):
    found = missing(heron, photograph(place="frame"))
    assert "frame-pad" not in found
    assert "frame-pad-wide" in found
    assert "frame-pad-wide" not in missing(heron, photograph(place="frame", shot="frame-pad-wide"))


@pytest.mark.parametrize(("mark", "wanted"), [(Mark.DOUBT, True), (Mark.FAIL, True), (Mark.PASS, False), (None, False)])
def test_each_doubtful_or_failed_item_is_wanted(heron, mark, wanted):
    free = next(i for i in heron.items() if not any(s.item == i.id for s in heron.shots))
    finding = Finding(item=free.id, by="inspector", mark=mark)
    assert (f"item-{free.id}" in missing(heron, findings=(finding,))) is wanted
    assert f"item-{free.id}" not in missing(heron, photograph(item=free.id), findings=(finding,))


def test_an_item_with_a_shot_of_its_own_is_not_asked_for_twice(heron):
    finding = Finding(item="fuel-tank", by="inspector", mark=Mark.FAIL)
    found = missing(heron, findings=(finding,))
    assert "tank-below" in found
    assert "item-fuel-tank" not in found


def test_a_cleaned_number_wants_both_halves_of_its_pair(heron):
    reading = Reading(id="r", place="frame", by="inspector", figures=figures_of("6H 15842"), cleaned=True)
    assert {"before-frame", "after-frame"} <= missing(heron, readings=(reading,))
    after = photograph(place="frame", cleaned="after cleaning")
    found = missing(heron, after)
    assert "before-frame" in found
    assert "after-frame" not in found
    assert "before-frame" not in missing(heron, photograph(place="frame"))


def test_what_the_claimed_year_does_not_have_is_not_wanted():
    items = [item("tank"), item("horn", years={"from": 1955})]
    machine = profile(
        station=[{"id": "s", "name": "Station", "item": items}], shot=[{"id": "h", "name": "Horn", "item": "horn"}]
    )
    early = record().model_copy(update={"claim": record().claim.model_copy(update={"model_year": 1953})})
    late = early.model_copy(update={"claim": early.claim.model_copy(update={"model_year": 1956})})
    assert "h" not in {line.id for line in shots(machine, early).lines}
    assert "h" in {line.id for line in shots(machine, late).lines}
