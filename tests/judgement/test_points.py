from decimal import Decimal

import pytest

from inspector.judgement.points import points, threshold, total
from inspector.profile.items import PointsScheme
from inspector.record.words import PatternPolicy, Seen
from tests.judgement.make import STATIONS, found, points_scheme, profile, record

HEADED = ("tank", "seat", "frame-number", "carburettor")


def small_scheme():
    headings = [{"id": h, "name": h.capitalize(), "points": 4, "most_lost": 6} for h in ("paint", "frame")]
    headings.append({"id": "engine", "name": "Engine", "points": 4})
    return {"name": "Invented", "heading": headings, "threshold": [{"points": 6, "word": "good"}]}


def counted(*findings, scheme=None, **more):
    made = profile(points=scheme or small_scheme())
    return points(made, record(*findings, points=True, **more))


def passes(*but):
    return [found(i, "pass") for i in HEADED if i not in but]


def test_no_scheme_or_not_chosen_is_no_points():
    assert points(profile(points=None), record(points=True)) is None
    assert points(profile(), record(points=False)) is None


def test_all_passed_loses_nothing_and_has_the_word():
    result = counted(*passes())
    assert (result.total, result.full, result.lowest, result.threshold) == (12, 12, 12, "good")
    assert result.deductions == result.may_lose == ()


def test_a_fail_loses_the_most_of_its_heading_and_is_traced_to_the_item():
    result = counted(found("tank", "fail"), found("carburettor", "fail"), *passes("tank", "carburettor"))
    assert [(d.heading, d.item, d.lost) for d in result.deductions] == [
        ("paint", "tank", 6),
        ("engine", "carburettor", 4),
    ]
    assert str(result.deductions[0].reason) == "Tank: fail."
    assert (result.total, result.threshold) == (2, "")


def test_items_under_one_heading_share_its_most():
    result = counted(found("tank", "fail"), found("seat", "fail"), *passes("tank", "seat"))
    assert [d.lost for d in result.deductions] == [6, 0]
    assert "no more to lose" in str(result.deductions[1].reason)
    assert result.total == 6


def test_a_doubt_loses_nothing_but_may_and_the_word_waits_for_it():
    result = counted(found("tank", "doubt"), *passes("tank"))
    assert (result.total, result.lowest, result.deductions) == (12, 6, ())
    assert [(d.item, d.lost) for d in result.may_lose] == [("tank", 6)]
    tighter = small_scheme() | {"threshold": [{"points": 7, "word": "good"}]}
    assert counted(found("tank", "doubt"), *passes("tank"), scheme=tighter).threshold == ""


@pytest.mark.parametrize("seen", [Seen.NOT_CHECKED, Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN, Seen.EXAMINED])
def test_what_was_not_seen_has_not_earned_its_points(seen):
    result = counted(found("frame-number", seen=seen), *passes("frame-number"))
    assert (result.total, result.lowest) == (12, 6)


def test_what_is_not_fitted_can_lose_nothing():
    result = counted(found("seat", seen=Seen.NOT_FITTED), *passes("seat"))
    assert (result.total, result.may_lose) == (12, ())


def test_a_pattern_part_may_lose_only_while_penalised():
    part = found("tank", "pass", why=["pattern part"])
    assert [d.item for d in counted(part, *passes("tank")).may_lose] == ["tank"]
    accepted = counted(part, *passes("tank"), policy=PatternPolicy.ACCEPTED)
    assert accepted.may_lose == ()


def test_a_heading_without_items_was_never_looked_at():
    result = counted(*passes(), scheme=points_scheme())
    assert (result.total, result.lowest, result.threshold) == (100, 12, "")
    assert {d.item for d in result.may_lose} == {""}


def test_losses_go_in_exact_steps_and_never_above_the_most():
    headings = PointsScheme.model_validate(points_scheme()).headings
    assert total(headings, {"paint": Decimal("0.25"), "rest-1": Decimal("1.75")}) == Decimal("98.00")
    assert total(headings, {"paint": Decimal(9)}) == 94
    for losses in ({"paint": Decimal("0.1")}, {"paint": Decimal(-1)}, {"nowhere": Decimal(1)}):
        with pytest.raises(ValueError, match=r"steps of|no heading"):
            total(headings, losses)


def test_the_highest_word_reached_is_given():
    scheme = PointsScheme.model_validate(points_scheme())
    assert [threshold(scheme, Decimal(p)) for p in ("84.75", "85", "94.75", "95")] == ["", "third", "second", "first"]


def test_the_made_headings_are_those_the_items_name():
    named = {i.get("heading") for s in STATIONS for i in s["item"]} - {None}
    assert named == {"paint", "frame", "engine"}
