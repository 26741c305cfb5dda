"""Laws that hold for every record, however it was entered."""

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.judge import judge, to_json
from inspector.judgement.score import score
from inspector.judgement.state import states
from inspector.record.claim import Statement
from inspector.record.finding import Concluded, Finding
from inspector.record.words import Conclusion, Condition, Mark, PatternPolicy, Seen, Sureness
from tests.judgement.make import CARBURETTOR, profile, record

PROFILE = profile()
ITEMS = tuple(PROFILE.item_by_id)
UNSEEN = (Seen.NOT_CHECKED, Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN)
SMALL = 1e-9

conclusions = st.lists(
    st.builds(Concluded, what=st.sampled_from(Conclusion), sureness=st.sampled_from(Sureness)), max_size=2
).map(tuple)


def findings_of(item, by):
    return st.builds(
        Finding,
        item=st.just(item),
        by=st.just(by),
        mark=st.none() | st.sampled_from(Mark),
        seen=st.just(Seen.EXAMINED) | st.sampled_from(Seen),
        fitted=st.sampled_from(["", *(v["id"] for v in CARBURETTOR)]),
        conclusions=conclusions,
        conditions=st.lists(st.sampled_from(Condition), max_size=1).map(tuple),
        unsafe=st.booleans(),
        note=st.sampled_from(["", "works", "Cracked. Badly."]),
    )


def all_findings(items=ITEMS):
    each = [st.none() | findings_of(i, by) for i in items for by in ("inspector", "ben")]
    return st.tuples(*each).map(lambda found: tuple(f for f in found if f is not None))


policies = st.sampled_from(PatternPolicy)
years = st.none() | st.integers(1950, 1960)


@settings(max_examples=60)
@given(all_findings(), policies, years)
def test_the_value_lies_in_its_range_and_the_range_between_0_and_100(findings, policy, year):
    result = score(PROFILE, record(*findings, policy=policy, year=year))
    for part in (result, *result.by_station, *result.by_assembly):
        assert 0 <= part.low <= part.high <= 100
        assert part.value is None or part.low <= part.value <= part.high
    assert result.seen_percent + result.left_percent == 100


@settings(max_examples=60)
@given(all_findings(ITEMS[1:]), findings_of(ITEMS[0], "inspector"), st.sampled_from(Mark), policies)
def test_marking_one_more_item_never_widens_the_range(findings, more, mark, policy):
    before = score(PROFILE, record(*findings, policy=policy))
    marked = more.model_copy(update={"mark": mark, "seen": Seen.EXAMINED})
    after = score(PROFILE, record(*findings, marked, policy=policy))
    assert after.high - after.low <= before.high - before.low + SMALL


@settings(max_examples=60)
@given(all_findings(), st.randoms(use_true_random=False), policies)
def test_the_order_of_entry_changes_nothing(findings, random, policy):
    shuffled = list(findings)
    random.shuffle(shuffled)
    one, other = (to_json(judge(PROFILE, record(*f, policy=policy, points=True))) for f in (findings, shuffled))
    assert one == other


@settings(max_examples=60)
@given(all_findings(ITEMS[1:]), findings_of(ITEMS[0], "inspector"), st.sampled_from(UNSEEN), policies)
def test_what_is_said_to_be_unseen_changes_neither_value_nor_range(findings, more, seen, policy):
    before = score(PROFILE, record(*findings, policy=policy))
    unseen = more.model_copy(update={"seen": seen})
    after = score(PROFILE, record(*findings, unseen, policy=policy))
    assert (before.value, before.low, before.high) == (after.value, after.low, after.high)


@settings(max_examples=60)
@given(all_findings(ITEMS[1:]), st.sampled_from(Mark), st.sampled_from(UNSEEN))
def test_unseen_is_never_better_than_any_mark_at_the_low_end(findings, mark, seen):
    base = Finding(item=ITEMS[0], by="inspector")
    marked = score(PROFILE, record(*findings, base.model_copy(update={"mark": mark})))
    unseen = score(PROFILE, record(*findings, base.model_copy(update={"seen": seen})))
    assert unseen.low <= marked.low + SMALL


@settings(max_examples=60)
@given(all_findings())
def test_pattern_parts_penalised_never_score_above_accepted_and_neutral_ones_are_out(findings):
    by_policy = {p: states(PROFILE, record(*findings, policy=p)) for p in PatternPolicy}
    for item in ITEMS:
        accepted, penalised, neutral = (
            by_policy[p][item] for p in (PatternPolicy.ACCEPTED, PatternPolicy.PENALISED, PatternPolicy.NEUTRAL)
        )
        assert penalised.low <= accepted.low
        if accepted.credit is not None and penalised.credit is not None:
            assert penalised.credit <= accepted.credit
        if accepted.in_sum and not neutral.in_sum:
            assert neutral.credit is None
            assert penalised.credit is None or penalised.credit <= 0.5


@settings(max_examples=60)
@given(all_findings(), st.lists(st.text(max_size=30), min_size=1, max_size=4))
def test_nothing_said_changes_anything_but_the_list_of_what_was_said(findings, told):
    statements = tuple(Statement(id=f"s{n}", text=t, by="seller") for n, t in enumerate(told))
    before = to_json(judge(PROFILE, record(*findings)))
    after = to_json(judge(PROFILE, record(*findings, statements=statements)))
    assert len(after.pop("unlinked_statements")) == len(told)
    assert before.pop("unlinked_statements") == []
    assert before == after


@settings(max_examples=60)
@given(all_findings(), st.sampled_from(Mark))
def test_the_form_chosen_between_two_factory_options_moves_no_score(findings, mark):
    others = tuple(f for f in findings if f.item != "carburettor")
    chosen = (Finding(item="carburettor", by="inspector", mark=mark, fitted=form) for form in ("twin", "single"))
    one, other = (score(PROFILE, record(*others, f)) for f in chosen)
    assert (one.value, one.low, one.high) == (other.value, other.low, other.high)


@settings(max_examples=60)
@given(all_findings(), st.sampled_from([Conclusion.RIGHT_ERA, Conclusion.YEAR_NOT_SHOWN]))
def test_era_and_right_type_narrow_nothing(findings, what):
    plain = Finding(item=ITEMS[0], by="inspector")
    others = tuple(f for f in findings if f.item != ITEMS[0])
    said = plain.model_copy(update={"conclusions": (Concluded(what=what),)})
    one, other = (score(PROFILE, record(*others, f)) for f in (plain, said))
    assert (one.value, one.low, one.high) == (other.value, other.low, other.high)
