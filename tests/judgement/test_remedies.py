"""What each faulted item can be put right with, what is counted and what has to be decided first."""

import pytest

from inspector.judgement.cost import costs
from inspector.judgement.exchange import exchange
from inspector.judgement.remedies import LEFT, NO_WAY, ONLY_WAY, RULED_OUT, remedies
from inspector.judgement.state import states
from inspector.record.money import Figures, Remedy
from inspector.record.words import Conclusion
from tests.judgement.make import found, record
from tests.judgement.priced import amounts, failing, paid, shop, way


def seen(profile, given):
    return {f.item: f for f in remedies(profile, given, states(profile, given), exchange(profile, given))}


def counted(fault):
    return [w.cost for w in fault.counted]


def test_one_way_with_no_choice_to_make_is_counted():
    fault = seen(shop({"lamp": [way("lamp-find")]}), failing("lamp"))["lamp"]
    assert counted(fault) == ["lamp-find"]
    assert fault.reason is ONLY_WAY
    assert fault.to_decide is None


def test_a_choice_not_yet_made_is_listed_with_its_ways_and_never_counted():
    fault = seen(shop({"lamp": [way("lamp-find"), way("lamp-copy")]}), failing("lamp"))["lamp"]
    assert fault.counted == ()
    assert str(fault.to_decide) == "To be decided first: Lamp find; Lamp copy."


@pytest.mark.parametrize(
    ("entries", "taken"),
    [
        ({"lamp-find": True}, ["lamp-find"]),
        ({"lamp-find": False}, ["lamp-copy"]),
        ({"lamp-find": False, "lamp-copy": False}, []),
        ({"lamp-find": None}, []),
    ],
)
def test_the_users_decision_stands(entries, taken):
    chosen = tuple(Remedy(item="lamp", cost=cost, chosen=c) for cost, c in entries.items())
    fault = seen(shop({"lamp": [way("lamp-find"), way("lamp-copy")]}), failing("lamp", remedies=chosen))["lamp"]
    assert counted(fault) == taken


def test_what_was_declined_is_left_as_it_is_by_the_user():
    given = failing("lamp", remedies=(Remedy(item="lamp", cost="lamp-find", chosen=False),))
    assert seen(shop({"lamp": [way("lamp-find")]}), given)["lamp"].reason is LEFT


def test_what_is_right_or_not_seen_needs_nothing():
    profile = shop({"lamp": [way("a")], "seat": [way("b")], "tank": [way("c")]})
    assert list(seen(profile, record(found("lamp", "pass"), found("seat", "fail")))) == ["seat"]


def test_a_doubt_is_settled_first():
    fault = seen(shop({"lamp": [way("a")]}), record(found("lamp", "doubt")))["lamp"]
    assert fault.counted == ()
    assert "In doubt" in str(fault.to_decide)


def test_people_who_differ_leave_it_in_doubt():
    given = record(found("lamp", "fail"), found("lamp", "pass", by="ben"))
    assert "In doubt" in str(seen(shop({"lamp": [way("a")]}), given)["lamp"].to_decide)


def test_a_doubt_the_user_decided_about_is_counted():
    given = record(found("lamp", "doubt"), remedies=(Remedy(item="lamp", cost="a"),))
    assert counted(seen(shop({"lamp": [way("a")]}), given)["lamp"]) == ["a"]


def test_what_is_missing_is_put_right_like_what_failed():
    given = record(found("lamp", why=[Conclusion.MISSING]))
    assert counted(seen(shop({"lamp": [way("a")]}), given)["lamp"]) == ["a"]


def test_what_bears_on_safety_is_put_right_though_it_was_marked_pass():
    given = record(found("brake", "pass", why=[Conclusion.MODIFIED]))
    profile = shop({"brake": ([way("a", need="safety")], {"safety": "brake"})})
    assert counted(seen(profile, given)["brake"]) == ["a"]


def test_no_way_is_said():
    fault = seen(shop({"lamp": [way("a")], "seat": []}), failing("seat"))["seat"]
    assert fault.reason is NO_WAY
    assert fault.to_decide is None


def test_the_users_figures_stand_over_those_of_the_profile():
    figures = Figures(name="From the shelf", parts=amounts(1, 2, 3), currency="GBP")
    given = failing("lamp", remedies=(Remedy(item="lamp", cost="a", figures=figures),))
    (one,) = seen(shop({"lamp": [way("a", excludes=["b"], after=["b"])]}), given)["lamp"].counted
    assert (one.name, one.parts, one.hours, one.changed, one.own) == (
        "From the shelf", amounts("1.00", "2.00", "3.00"), None, True, False)  # fmt: skip
    assert (one.excludes, one.after) == (("b",), ("b",))


def test_figures_alone_decide_nothing():
    figures = Figures(name="Mine", parts=amounts(1, 2, 3))
    given = failing("lamp", remedies=(Remedy(item="lamp", cost="a", chosen=None, figures=figures),))
    fault = seen(shop({"lamp": [way("a"), way("b")]}), given)["lamp"]
    assert fault.counted == ()
    assert [w.changed for w in fault.ways] == [True, False]


def test_the_users_own_way_stands_besides_those_of_the_profile():
    own = Remedy(item="lamp", cost="own-1", figures=Figures(name="From a friend"))
    fault = seen(shop({"lamp": [way("a")]}), failing("lamp", remedies=(own,)))["lamp"]
    assert [w.name for w in fault.ways] == ["A", "From a friend"]
    assert [w.own for w in fault.counted] == [True]


def test_two_chosen_that_rule_each_other_out_are_both_undecided_whichever_says_so():
    profile = shop({"lamp": [way("a", excludes=["b"])], "seat": [way("b")]})
    given = failing("lamp", "seat", remedies=(Remedy(item="lamp", cost="a"), Remedy(item="seat", cost="b")))
    faults = seen(profile, given)
    assert [f.counted for f in faults.values()] == [(), ()]
    assert str(faults["seat"].to_decide) == "B and A rule each other out: decide for one."


def test_what_a_choice_elsewhere_rules_out_is_not_counted():
    profile = shop({"lamp": [way("a", excludes=["b"])], "seat": [way("b")]})
    faults = seen(profile, failing("lamp", "seat", remedies=(Remedy(item="lamp", cost="a"),)))
    assert counted(faults["lamp"]) == ["a"]
    assert faults["seat"].reason is RULED_OUT


WAITS = {"paint": [way("repaint"), way("clean", excludes=["repaint"])], "badge": [way("transfer", after=["repaint"])]}


@pytest.mark.parametrize(
    ("entries", "taken"),
    [({}, []), ({"repaint": True}, ["transfer"]), ({"clean": True}, ["transfer"]), ({"repaint": False}, ["transfer"])],
)
def test_a_way_that_depends_on_a_choice_is_not_priced_before_it(entries, taken):
    chosen = tuple(Remedy(item="paint", cost=cost, chosen=c) for cost, c in entries.items())
    badge = seen(shop(WAITS), failing("paint", "badge", remedies=chosen))["badge"]
    assert counted(badge) == taken
    assert (badge.to_decide is None) == bool(taken)
    if not taken:
        assert str(badge.to_decide) == "Transfer waits for a decision about: Repaint."


def test_a_decision_about_what_is_right_is_not_waited_for():
    badge = seen(shop(WAITS), failing("badge"))["badge"]
    assert counted(badge) == ["transfer"]


def test_a_strip_down_that_the_profile_does_not_have_is_named():
    figures = Figures(name="Mine", parts=amounts(1, 2, 3), job="wheel-out")
    given = failing("lamp", remedies=(Remedy(item="lamp", cost="own", figures=figures),), money=paid())
    (one,) = seen(shop({"lamp": []}), given)["lamp"].counted
    assert one.job == ""
    assert "wheel-out" in str(one.trouble)


def test_a_doubt_without_a_way_is_neither_to_be_chosen_nor_without_remedy():
    profile, given = shop({"number": [], "lamp": []}), record(found("number", "doubt"), found("lamp", "fail"))
    told = costs(profile, given)
    assert (told.in_doubt, told.no_way, told.to_decide) == (("Number",), ("Lamp",), ())
