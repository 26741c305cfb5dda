import pytest

from inspector.judgement.state import SIGNS, states
from inspector.profile.items import Item
from inspector.record.words import Mark, PatternPolicy, Seen
from tests.judgement.make import found, item, profile, record


def at(item_id, *findings, **more):
    return states(profile(), record(*findings, **more))[item_id]


@pytest.mark.parametrize(("mark", "credit", "band"), [("pass", 1, (1, 1)), ("doubt", 0.5, (0, 1)), ("fail", 0, (0, 0))])
def test_a_mark_counts_as_seen(mark, credit, band):
    state = at("tank", found("tank", mark))
    assert (state.sign, state.mark, state.credit, (state.low, state.high)) == (mark, Mark(mark), credit, band)
    assert state.in_sum


@pytest.mark.parametrize("seen", [Seen.EXAMINED, Seen.NOT_CHECKED, Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN])
def test_what_is_not_marked_stays_open_each_under_its_own_sign(seen):
    state = at("tank", found("tank", seen=seen))
    assert (state.sign, state.seen, state.credit, state.low, state.high) == (seen.value, seen, None, 0, 1)
    assert state.in_sum


def test_the_five_ways_of_not_marking_and_missing_print_differently():
    findings = [found("tank", seen=s) for s in Seen] + [found("tank", why=["missing"])]
    reasons = {str(at("tank", f).reason) for f in findings}
    assert len(reasons) == 6


def test_an_item_nobody_touched_is_not_checked():
    assert at("tank").sign == "not checked"
    assert at("tank").credit is None


def test_not_fitted_leaves_the_sum_and_a_standard_item_raises_a_reason():
    optional, standard = (at(i, found(i, seen=Seen.NOT_FITTED)) for i in ("seat", "tank"))
    assert not optional.in_sum
    assert not standard.in_sum
    assert not optional.standard_absent
    assert standard.standard_absent
    assert "standard" in str(standard.reason)


def test_an_item_of_other_years_is_out_even_when_something_was_found_there():
    state = at("later-lamp", found("later-lamp", "pass"))
    assert (state.sign, state.in_sum, state.credit) == ("not fitted to this version", False, None)
    assert "1953" in str(state.reason)
    assert at("later-lamp", found("later-lamp", "pass"), year=1956).credit == 1
    assert at("later-lamp", found("later-lamp", "pass"), year=None).credit == 1


def test_missing_counts_by_its_mark_and_may_be_wrong_without_one():
    assert at("tank", found("tank", "fail", why=["missing"])).credit == 0
    unmarked = at("tank", found("tank", why=["missing"]))
    assert (unmarked.credit, unmarked.low) == (None, 0)
    assert "Missing" in str(unmarked.reason)


def test_a_mark_beside_not_seen_is_not_counted():
    state = at("tank", found("tank", "pass", seen=Seen.NOT_SEEN))
    assert (state.sign, state.mark, state.credit) == ("not seen", None, None)


@pytest.mark.parametrize(("one", "other"), [("pass", "fail"), ("pass", "doubt"), ("doubt", "fail")])
def test_two_people_who_differ_are_never_averaged(one, other):
    state = at("tank", found("tank", one), found("tank", other, by="ben"))
    assert state.differs
    assert (state.mark, state.credit, state.low, state.high) == (None, None, 0, 1)
    assert len(state.findings) == 2


def test_two_people_of_one_mind_count_once():
    state = at("tank", found("tank", "pass"), found("tank", "pass", by="ben"))
    assert (state.differs, state.credit) == (False, 1)


def test_one_who_saw_settles_it_where_the_other_could_not_see():
    state = at("tank", found("tank", "fail"), found("tank", seen=Seen.CANNOT_BE_SEEN, by="ben"))
    assert (state.differs, state.sign, state.credit) == (False, "fail", 0)


def test_one_marks_what_the_other_says_was_never_fitted():
    state = at("tank", found("tank", "pass"), found("tank", seen=Seen.NOT_FITTED, by="ben"))
    assert (state.differs, state.in_sum, state.credit, state.low, state.high) == (True, True, None, 0, 1)


def test_same_mark_but_dated_twenty_years_apart_is_a_difference_and_the_mark_counts():
    one, other = found("tank", "fail", why=["wrong year"]), found("tank", "fail", by="ben", why=["right for the era"])
    state = at("tank", one, other)
    assert (state.differs, state.credit) == (True, 0)


def test_same_mark_but_only_one_says_pattern_part_is_not_counted():
    one, other = found("tank", "pass", why=["pattern part"]), found("tank", "pass", by="ben")
    state = at("tank", one, other)
    assert (state.differs, state.credit, state.low, state.high) == (True, None, 0.5, 1)


@pytest.mark.parametrize(
    ("policy", "credit", "in_sum"),
    [(PatternPolicy.PENALISED, 0.5, True), (PatternPolicy.NEUTRAL, None, False), (PatternPolicy.ACCEPTED, 1, True)],
)
@pytest.mark.parametrize("said", [{"fitted": "copy"}, {"why": ["pattern part"]}])
def test_a_pattern_part_counts_by_choice_with_the_reason_printed(policy, credit, in_sum, said):
    state = at("carburettor", found("carburettor", "pass", **said), policy=policy)
    assert (state.credit, state.in_sum) == (credit, in_sum)
    assert "Pattern part" in str(state.reason)
    assert policy.value in str(state.reason)


@pytest.mark.parametrize("mark", ["pass", "doubt", "fail"])
def test_switching_between_the_two_factory_options_changes_nothing_counted(mark):
    states_ = [at("carburettor", found("carburettor", mark, fitted=form)) for form in ("twin", "single")]
    assert states_[0].credit == states_[1].credit
    assert (states_[0].low, states_[0].high) == (states_[1].low, states_[1].high)


def test_a_form_of_the_profile_and_something_else_are_two_answers_to_one_question():
    one = found("carburettor", "pass", fitted="twin")
    for other in ({"fitted_other": "a racing carburettor"}, {"fitted": "single"}):
        assert at("carburettor", one, found("carburettor", "pass", by="ben", **other)).differs
    for alike in ({"fitted": "twin"}, {"fitted_other": " "}, {}):
        assert not at("carburettor", one, found("carburettor", "pass", by="ben", **alike)).differs
    # Two people's own words for one thing need not be the same.
    words = [
        found("tank", "pass", by=by, fitted_other=text) for by, text in (("ann", "tank of tin"), ("ben", "tin one"))
    ]
    assert not at("tank", *words).differs


def test_an_option_that_passes_counts_whole():
    assert (
        at("carburettor", found("carburettor", "pass", fitted="single", why=["factory option either way"])).credit == 1
    )


def test_every_sign_of_a_state_is_named():
    assert set(SIGNS) == {*(m.value for m in Mark), *(s.value for s in Seen)}


def test_the_made_item_is_a_real_one():
    assert Item.model_validate(item("tank")).weight == 1
