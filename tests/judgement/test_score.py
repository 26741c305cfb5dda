import pytest

from inspector.judgement.score import percent_seen, score
from inspector.record.words import PatternPolicy, Seen
from tests.judgement.make import found, item, profile, record


def scored(*findings, **more):
    return score(profile(), record(*findings, **more))


def test_nothing_seen_has_no_value_but_a_whole_range():
    result = scored()
    assert (result.seen_percent, result.left_percent, result.value, result.low, result.high) == (0, 100, None, 0, 100)
    assert result.movers == ()
    assert "Nothing seen yet." in [str(r) for r in result.reasons]


def test_the_sums_of_a_small_machine_worked_by_hand():
    # Weights: tank 4, seat 1, frame number 5, engine number 5, wheel 2, brake 3, carburettor 3 = 23; the lamp is later.
    result = scored(found("tank", "pass"), found("front-wheel", "fail"), found("carburettor", "doubt"))
    assert result.seen_percent == pytest.approx(100 * 9 / 23)
    assert result.left_percent == pytest.approx(100 * 14 / 23)
    assert result.value == pytest.approx(100 * 5.5 / 9)
    assert result.low == pytest.approx(100 * 4 / 23)
    assert result.high == pytest.approx(100 * 21 / 23)


def test_a_station_and_an_assembly_have_their_own_sums():
    result = scored(found("tank", "pass"), found("front-wheel", "fail"))
    station = {s.id: s for s in result.by_station}
    assert [s.id for s in result.by_station] == ["left", "numbers", "front"]
    assert (station["left"].name, station["left"].seen, station["left"].value) == ("Left side", 80, 100)
    assert station["left"].low == 80
    assert (station["numbers"].seen, station["numbers"].value) == (0, None)
    assembly = {a.id: a for a in result.by_assembly}
    assert (assembly["wheels and brakes"].seen, assembly["wheels and brakes"].value) == (40, 0)
    assert assembly["wheels and brakes"].high == 60
    assert "electrics" not in assembly


def test_what_is_not_fitted_counts_nowhere():
    everything = [
        found(i, "pass") for i in ("frame-number", "engine-number", "front-wheel", "front-brake", "carburettor")
    ]
    result = scored(*everything, found("tank", "pass"), found("seat", seen=Seen.NOT_FITTED))
    assert (result.seen_percent, result.value, result.low, result.high) == (100, 100, 100, 100)


def test_the_choice_about_pattern_parts_changes_the_score_and_says_why():
    by_policy = {
        p: scored(found("tank", "pass", why=["pattern part"]), found("seat", "fail"), policy=p) for p in PatternPolicy
    }
    assert by_policy[PatternPolicy.ACCEPTED].value == pytest.approx(80)
    assert by_policy[PatternPolicy.PENALISED].value == pytest.approx(40)
    assert by_policy[PatternPolicy.NEUTRAL].value == pytest.approx(0)
    for policy, result in by_policy.items():
        assert result.policy == policy.value
        assert any(str(r).startswith("Tank: Pattern part") for r in result.reasons)
    assert len({str(r.reasons) for r in by_policy.values()}) == 3


def test_a_conclusion_without_evidence_is_named_in_the_reasons():
    bare = scored(found("tank", "fail", why=["wrong year"]))
    shown = scored(found("tank", "fail", why=["wrong year"], evidence=["shape"]))
    line = "Tank: a conclusion stands with no evidence recorded."
    assert line in [str(r) for r in bare.reasons]
    assert line not in [str(r) for r in shown.reasons]


def test_movers_say_how_far_and_what_to_do():
    doubt = found("carburettor", "doubt", next_step="Ask the register. Then measure.")
    result = scored(found("front-brake", "pass"), found("front-wheel", "fail"), doubt)
    movers = {m.item: m for m in result.movers}
    # Counted 3 + 2 + 3 = 8 with 4.5 earned: 56.25.
    assert (movers["carburettor"].down, movers["carburettor"].up) == pytest.approx((18.75, 18.75))
    assert str(movers["carburettor"].advice) == "Next step: Ask the register."
    assert (movers["front-wheel"].down, movers["front-wheel"].up) == pytest.approx((0, 25))
    assert movers["frame-number"].up == pytest.approx(100 * 9.5 / 13 - 56.25)
    assert movers["frame-number"].down == pytest.approx(56.25 - 100 * 4.5 / 13)
    assert str(movers["frame-number"].advice) == "Look at Numbers: Use the lamp."
    assert "front-brake" not in movers
    swings = [m.down + m.up for m in result.movers]
    assert swings == sorted(swings, reverse=True)


def test_a_fail_is_advised_with_the_forms_right_for_the_year():
    result = scored(found("carburettor", "fail", fitted="late"))
    advice = next(str(m.advice) for m in result.movers if m.item == "carburettor")
    assert advice == "Right for 1953: twin-float; long inlet; short inlet; single-float."


def test_no_more_than_eight_movers():
    many = [item(f"part-{n}") for n in range(20)]
    large = profile(station=[{"id": "all", "name": "All", "item": many}])
    assert len(score(large, record(found("part-0", "pass"))).movers) == 8


SHARES = [(0.0, 0), (0.8, 0), (99.4, 99), (99.99, 99), (100.0, 100), (99.9999999999, 100)]


@pytest.mark.parametrize(("share", "said"), SHARES)
def test_no_part_of_what_was_seen_is_claimed_before_it_was(share, said):
    assert percent_seen(share) == said
