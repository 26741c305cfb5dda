"""The weight of evidence for each year: its arithmetic, and what may not move it."""

from math import log10, prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.shares import shares_by_year
from inspector.judgement.weighing import LEAST_SWAP, USUAL_SWAP, combine, decibans, weigh
from tests.judgement.dated import all_fitted, fitted, form, machine, part, years_of
from tests.judgement.make import item

likely = st.floats(0.001, 1)
witnesses = st.integers(2, 5).flatmap(
    lambda n: st.lists(
        st.lists(likely, min_size=n, max_size=n).map(lambda row: dict(enumerate(row))), min_size=1, max_size=6
    )
)


@given(witnesses)
def test_shares_and_decibans_are_those_of_plain_multiplication(told):
    products = {key: prod(one[key] for one in told) for key in told[0]}
    total = sum(products.values())
    weights = decibans(told)
    for key, share in combine(told).items():
        assert share == pytest.approx(products[key] / total)
        # Added up without this one: taken away from the total, a small rest would lose its figures.
        rest = sum(product for other, product in products.items() if other != key) / (len(products) - 1)
        assert weights[key] == pytest.approx(10 * log10(products[key] / rest), abs=1e-6)


def test_what_cannot_be_weighs_nothing_and_none_left_is_an_error():
    assert combine([{"a": 0.5, "b": 0.0}]) == {"a": 1.0, "b": 0.0}
    with pytest.raises(ValueError, match="no possibility"):
        combine([{"a": 0.0}])


def test_a_possibility_alone_has_nothing_to_be_weighed_against():
    assert decibans([{"a": 0.3}]) == {"a": 0.0}


def weight_of(made, *findings):
    return years_of(made, *(findings or all_fitted(made))).weight


def test_one_part_weighs_as_worked_by_hand():
    made = machine(item("lamp", swap_rate=0.2, variant=[form(1950, 1954), form(1955, 1960, id="late", name="late")]))
    weight = weight_of(made, fitted("lamp"))
    inside, outside = 0.8 * 1 + 0.2 / 2, 0.2 / 2
    expected = 10 * log10(inside / ((4 * inside + 6 * outside) / 10))
    assert weight.decibans[1952] == pytest.approx(expected)
    assert weight.lead == pytest.approx(0)
    assert weight.ranking[:5] == (1950, 1951, 1952, 1953, 1954)


def test_halved_and_doubled_are_worked_out_with_half_and_twice_the_swap_rate():
    def made(rate):
        return machine(
            item("lamp", swap_rate=rate, variant=[form(1950, 1954), form(1955, 1960, id="late", name="late")])
        )

    weight = weight_of(made(0.2), fitted("lamp"))
    assert weight.halved == pytest.approx(weight_of(made(0.1), fitted("lamp")).decibans)
    assert weight.doubled == pytest.approx(weight_of(made(0.4), fitted("lamp")).decibans)


def test_a_part_that_is_always_replaced_says_nothing():
    made = machine(part("tyre", 1953, 1953, swap_rate=1.0))
    weight = weight_of(made)
    assert all(value == pytest.approx(0) for value in weight.decibans.values())
    assert str(weight.sentence) == "Weight of evidence: every year weighs the same."


def test_a_part_said_never_to_be_replaced_still_leaves_every_year_a_weight():
    made = machine(part("frame", 1953, 1953, swap_rate=0.0))
    weight = weight_of(made)
    least = LEAST_SWAP
    assert weight.lead == pytest.approx(10 * log10(1 / least))


def test_the_order_is_called_steady_only_where_it_holds():
    made = machine(part("frame", 1951, 1953, swap_rate=0.1), part("head", 1953, 1955, "engine", swap_rate=0.1))
    assert weight_of(made).steady
    many = [
        part(f"head-{n}", 1955, 1955, a, swap_rate=0.5)
        for n, a in enumerate(("engine", "gearbox", "controls", "finish"))
    ]
    weight = weight_of(machine(part("frame", 1953, 1953, swap_rate=0.02), *many))
    assert not weight.steady
    assert "does not hold" in " ".join(map(str, weight.reasons))


def test_parts_of_one_assembly_count_as_one_witness_unless_asked_one_by_one():
    alone = machine(part("case", 1953, 1953, "engine"))
    several = machine(*(part(f"case-{n}", 1953, 1953, "engine") for n in range(6)))
    apart = machine(*(part(f"case-{n}", 1953, 1953, a) for n, a in enumerate(("engine", "frame"))))
    assert weight_of(several).decibans == pytest.approx(weight_of(alone).decibans)
    assert weight_of(apart).lead == pytest.approx(2 * weight_of(alone).lead)
    answer = years_of(several, *all_fitted(several))
    one_by_one = weigh(several, answer.parts, one_by_one=True)
    assert one_by_one.lead == pytest.approx(6 * weight_of(alone).lead)
    assert (one_by_one.witnesses, answer.weight.witnesses) == (6, 1)


def test_the_assumption_is_printed_with_the_rate_taken_where_the_profile_gives_none():
    made = machine(part("frame", 1953, 1954), part("head", 1953, 1955, "engine", swap_rate=0.1))
    words = str(weight_of(made).assumption)
    assert f"(1 of 2) in {round(100 * USUAL_SWAP)} of 100 machines" in words
    assert "one witness" in words
    assert "one witness" not in str(weigh(made, years_of(made, *all_fitted(made)).parts, one_by_one=True).assumption)


def test_it_is_never_called_a_probability():
    made = machine(part("frame", 1953, 1954), part("head", 1953, 1955, "engine"))
    weight = weight_of(made)
    told = " ".join(map(str, (weight.sentence, weight.assumption, *weight.reasons))).lower()
    for word in ("probab", "chance", "likel", "certain"):
        assert word not in told


def test_a_form_found_on_few_machines_weighs_for_the_year_in_which_it_was_commoner():
    rare = form(1952, 1953, id="rare", name="rare", share=0.1)
    made = machine(
        item("lamp", variant=[rare, form(1952, 1952), form(1953, 1953, id="other", name="other", share=0.3)])
    )
    shares = dict(
        zip(made.years, shares_by_year(made, made.item_by_id["lamp"], made.item_by_id["lamp"].variants[0]), strict=True)
    )
    assert shares[1952] == pytest.approx(0.1)
    assert shares[1953] == pytest.approx(0.25)
    weight = weight_of(made, fitted("lamp", "rare"))
    assert weight.ranking[:2] == (1953, 1952)


forms = st.lists(
    st.tuples(st.integers(1950, 1960), st.integers(0, 5), st.none() | st.floats(0, 1)), min_size=1, max_size=5
)


@settings(max_examples=60)
@given(forms)
def test_the_shares_of_all_forms_of_a_year_are_one_together_or_none_was_in_use(drawn):
    variants = [form(a, min(a + n, 1960), id=f"v{k}", share=share) for k, (a, n, share) in enumerate(drawn)]
    made = machine(item("lamp", variant=variants))
    lamp = made.item_by_id["lamp"]
    columns = zip(*(shares_by_year(made, lamp, v) for v in lamp.variants), strict=True)
    for year, column in zip(made.years, columns, strict=True):
        used = any(v.years is not None and v.years.holds(year) for v in lamp.variants)
        assert sum(column) == pytest.approx(1 if used else 0)


@settings(max_examples=60)
@given(st.lists(st.tuples(st.integers(1950, 1960), st.integers(0, 5), st.floats(0, 1)), min_size=1, max_size=6))
def test_the_weights_are_those_of_bayes_rule_worked_out_from_the_likelihoods(drawn):
    groups = ("frame", "engine", "gearbox", "front end", "rear end", "tinware")
    made = machine(*(
        part(f"p{n}", a, min(a + k, 1960), groups[n], swap_rate=s) for n, (a, k, s) in enumerate(drawn)
    ))  # fmt: skip
    told = [
        {y: (1 - max(s, LEAST_SWAP)) * (a <= y <= a + k) + max(s, LEAST_SWAP) for y in made.years} for a, k, s in drawn
    ]
    assert weight_of(made).decibans == pytest.approx(decibans(told), abs=1e-6)


def test_nothing_fitted_is_nothing_to_weigh():
    weight = years_of(machine(part("frame", 1953, 1954))).weight
    assert set(weight.decibans.values()) == {0.0}
    assert str(weight.sentence) == "Weight of evidence: nothing to weigh yet."


def test_two_people_who_name_two_forms_are_weighed_as_the_mean_of_both():
    made = machine(item("lamp", swap_rate=0.2, variant=[form(1950, 1954), form(1955, 1960, id="late", name="late")]))
    weight = weight_of(made, fitted("lamp"), fitted("lamp", "late", by="ben"))
    assert all(value == pytest.approx(0) for value in weight.decibans.values())
