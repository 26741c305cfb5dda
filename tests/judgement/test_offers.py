"""A photograph is offered the item that was open when it was taken, with the reason, and never assigned."""

import pytest

from inspector.judgement.offers import Opened, moment_of, offers
from inspector.record.finding import Finding, Photograph
from inspector.record.model import CameraClock
from tests.judgement.make import item, profile, record

DAY, ZONE = "2026-05-09T", "+02:00"


def at(time):
    return f"{DAY}{time}{ZONE}"


def photograph(time, key="p", zone="", **more):
    taken = f"{DAY}{time}{zone}" if time else ""
    return Photograph(
        id=key, sha256="0" * 64, name=f"{key}.jpg", media="image/jpeg", width=4, height=3, size=9, taken_at=taken,
        imported_at=at("18:00:00"), camera="Nocam One", **more,
    )  # fmt: skip


@pytest.fixture
def machine():
    items = [item("tank", name="Tank"), item("carb", name="Carburettor"), item("wheel", name="Wheel")]
    return profile(station=[{"id": "s", "name": "Station", "item": items}])


LOG = (Opened(at("10:00:00"), "tank"), Opened(at("10:05:00"), "carb"), Opened(at("10:10:00"), ""))


def offered(machine, *photographs, log=LOG, clocks=(), findings=()):
    made = record(*findings).model_copy(update={"photographs": photographs})
    made = made.model_copy(update={"choices": made.choices.model_copy(update={"clocks": clocks})})
    found = offers(machine, made, log)
    assert made.photographs == photographs
    return found


def test_the_item_open_at_that_time_is_offered_with_the_reason(machine):
    (found,) = offered(machine, photograph("10:07:00"))
    assert (found.photograph, found.item, found.name) == ("p", "carb", "Carburettor")
    assert str(found.reason) == (
        "Carburettor was open from 10:05 to 10:10; taken at 10:07. The camera's clock was not checked."
    )


@pytest.mark.parametrize("time", ["09:59:59", "10:10:01", "23:00:00", ""])
def test_where_nothing_was_open_nothing_is_offered(machine, time):
    assert offered(machine, photograph(time)) == ()


def test_what_is_assigned_is_offered_nothing(machine):
    assert offered(machine, photograph("10:07:00", item="wheel"), photograph("10:07:00", "q", place="frame")) == ()


def test_the_clock_of_its_camera_puts_it_right(machine):
    clock = CameraClock(camera="Nocam One", seconds=3600, photograph="c", shows="10:00")
    (found,) = offered(machine, photograph("09:02:00"), clocks=(clock,))
    assert found.item == "tank"
    assert str(found.reason).endswith("taken at 10:02. The camera's clock was put right by a photograph of a clock.")
    other = clock.model_copy(update={"camera": "Another"})
    assert offered(machine, photograph("09:02:00"), clocks=(other,)) == ()


def test_a_zone_that_the_camera_tells_counts(machine):
    (found,) = offered(machine, photograph("08:07:00", zone="+00:00"))
    assert found.item == "carb"
    made = record().model_copy(update={"photographs": (photograph("10:07:00"),)})
    assert moment_of(made, made.photographs[0]).isoformat() == at("10:07:00")


@pytest.mark.parametrize(
    ("time", "first", "other"), [("10:05:04", "carb", "Tank"), ("10:04:50", "tank", "Carburettor")]
)
def test_at_the_turn_from_one_item_to_the_next_both_are_named(machine, time, first, other):
    (found,) = offered(machine, photograph(time))
    assert found.item == first
    assert f"It may also be {other}." in str(found.reason)


def test_the_last_item_counts_as_open_for_a_while(machine):
    log = LOG[:2]
    (found,) = offered(machine, photograph("10:40:00"), log=log)
    assert found.item == "carb"
    assert offered(machine, photograph("10:51:00"), log=log) == ()


def test_without_a_log_the_nearest_finding_tells(machine):
    findings = (Finding(item="wheel", by="inspector", at=at("10:20:00")),)
    (found,) = offered(machine, photograph("10:18:30"), log=(), findings=findings)
    assert found.item == "wheel"
    assert "What was found at Wheel was entered at 10:20; taken at 10:18." in str(found.reason)
    assert offered(machine, photograph("10:16:30"), log=(), findings=findings) == ()


def test_lines_of_the_log_that_make_no_sense_are_passed_over(machine):
    log = (Opened("yesterday", "tank"), Opened(at("10:00:00"), "none such"), Opened(f"{DAY}10:00:00", "tank"), *LOG[1:])
    (found,) = offered(machine, photograph("10:07:00"), log=log)
    assert found.item == "carb"
