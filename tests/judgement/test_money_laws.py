"""What holds of costs, worth and deal whatever is entered."""

from decimal import Decimal
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judgement.money import money
from inspector.judgement.plain import plain
from inspector.record.money import Adjustment, Comparable, Figures, Money, Remedy
from inspector.record.words import Adjusts, PriceKind
from tests.house.project import loaded_after
from tests.judgement.make import found, record
from tests.judgement.priced import D, job, shop, way

KEYS = [("a", "a1"), ("b", "b1"), ("b", "b2"), ("c", "c1"), ("d", "own"), ("e", "own")]
NAMES = ("a", "b", "c", "d")
PROFILE = shop(
    {
        "a": [way("a1", job="out")],
        "b": [way("b1", hours=None, job="out"), way("b2", kind="pattern part", excludes=["b1"])],
        "c": ([way("c1", need="safety", after=["b1"])], {"safety": "brake", "weight": 3}),
        "d": [],
    },
    [job("out")],
)  # fmt: skip

cents = st.integers(0, 10_000_000).map(lambda n: D(n) / 100)
few = st.integers(-100, 1000).map(D)
dates = st.sampled_from(["", "1900", "2020-02", "2025-05-17", "soon"])
currencies = st.sampled_from(["", "GBP", "EUR", "XTS"])
perhaps = st.none() | cents
threes = st.none() | st.lists(cents, min_size=3, max_size=3).map(lambda three: tuple(sorted(three)))


@st.composite
def comparables(draw):
    rows = draw(st.lists(st.builds(
        Comparable, id=st.just("x"), kind=st.sampled_from(list(PriceKind)), price=cents, currency=currencies,
        fees_in=st.booleans(), premium_percent=st.none() | st.integers(0, 30).map(D), date=dates,
        score=st.none() | st.integers(0, 100).map(D), how_like=st.integers(1, 5),
        excluded_because=st.sampled_from(["", "", "too dear"]),
    ), max_size=12))  # fmt: skip
    return tuple(row.model_copy(update={"id": f"c{n}"}) for n, row in enumerate(rows))


@st.composite
def adjustments(draw):
    made = []
    for n in range(draw(st.integers(0, 6))):
        amount = draw(st.none() | few)
        percent = None if amount is not None else draw(few)
        made.append(Adjustment(id=f"a{n}", comparable=f"c{draw(st.integers(0, 13))}", amount=amount, percent=percent,
                               what=draw(st.sampled_from(list(Adjusts)))))  # fmt: skip
    return tuple(made)


@st.composite
def remedies(draw):
    keys = draw(st.lists(st.sampled_from(KEYS), unique=True))
    figures = st.none() | st.builds(Figures, name=st.just("Mine"), parts=threes, hours=threes.map(
        lambda three: three and tuple(one / 100 for one in three)), currency=currencies)  # fmt: skip
    choices = st.sampled_from([True, False, None])
    return tuple(Remedy(item=item, cost=cost, chosen=draw(choices), figures=draw(figures)) for item, cost in keys)


settings_of_money = st.builds(
    Money, currency=st.sampled_from(["", "GBP"]), labour_rate=perhaps, contingency_percent=st.none() | st.just(D(10)),
    price_level=st.none() | st.just({"low": D(-100), "likely": D(5), "high": D(1000)}),
    rates=st.sampled_from([(), ({"currency": "EUR", "per_one": D("0.86"), "date": "2025"},)]),
    margin=perhaps, price_asked=perhaps, premium_percent=st.none() | st.integers(0, 100).map(D),
    tax_percent=st.none() | st.integers(0, 100).map(D), transport=perhaps, limit_all_in=perhaps,
    effective_date=dates, percent_a_year=st.none() | few, percent_a_point=st.none() | st.integers(-20, 20).map(D),
    index=st.sampled_from([(), ({"year": 1900, "value": D("0.000001")}, {"year": 2025, "value": D(10) ** 9})]),
    also_count=st.sampled_from([(), ("asked",), ("asked", "bid")]),
    offers=st.sampled_from([(), ({"id": "o1", "part": "a/a1", "price": D(5)},), ({"id": "o1", "part": "gone/x"},),
                            ({"id": "o1", "name": "x", "price": D(5), "currency": "XTS", "expected": D(7)},)]),
)  # fmt: skip
marks = st.lists(st.sampled_from([None, "pass", "doubt", "fail"]), min_size=4, max_size=4)


def entered(marked, rows=(), changes=(), ways=(), money_set=None):
    findings = [found(name, mark) for name, mark in zip(NAMES, marked, strict=True) if mark]
    return record(*findings, comparables=rows, adjustments=changes, remedies=ways, money=money_set or Money())


everything = st.builds(entered, marks, comparables(), adjustments(), remedies(), settings_of_money)


@settings(max_examples=150, deadline=None)
@given(everything)
def test_whatever_is_entered_there_is_an_answer_that_holds_together(given_record):
    told = money(PROFILE, given_record)
    spent, valued, deal = told.costs, told.worth, told.deal
    for three in (spent.parts, spent.hours, spent.total, *(line.amount for line in deal.lines)):
        assert three[0] <= three[1] <= three[2]
    assert spent.total == tuple(map(sum, zip(spent.parts, spent.labour or (0, 0, 0), spent.contingency or (0, 0, 0),
                                             strict=True)))  # fmt: skip
    assert not {row.way.item for row in spent.rows} & {fault.item for fault in spent.to_decide}
    assert len(valued.rows) + len(valued.left_out) == len(given_record.comparables)
    assert all(row.why_not is not None for row in valued.left_out)
    for span in filter(None, (valued.as_it_stands, valued.put_right)):
        assert 0 < span.low <= span.half[0] <= span.middle <= span.half[1] <= span.high
    if deal.all_in is not None:
        assert deal.all_in == tuple(sum(line.amount[at] for line in deal.lines) for at in range(3))
    if deal.hammer is not None:
        assert deal.hammer.comes_to <= deal.hammer.limit
    assert len(told.offers) == len(given_record.money.offers)
    assert all(str(one.words).strip() for one in told.offers)
    assert plain(told)["currency"] == told.currency


def floats_in(value):
    """The names of money fields that hold a binary fraction."""
    if isinstance(value, dict):
        return [key for key, one in value.items() if isinstance(one, float) or floats_in(one)]
    return [one for part in value for one in floats_in(part)] if isinstance(value, list) else []


@settings(max_examples=40, deadline=None)
@given(everything)
def test_no_amount_is_a_binary_fraction(given_record):
    told = money(PROFILE, given_record)
    spent = told.costs
    amounts = [*spent.total, *(line.amount[1] for line in told.deal.lines), *(r.told for r in told.worth.rows)]
    assert all(isinstance(one, Decimal) for one in amounts)
    assert floats_in(plain(told.deal.lines)) == []
    assert floats_in(plain(told.worth.rows)) == []


@settings(max_examples=30, deadline=None)
@given(comparables(), settings_of_money)
def test_the_order_of_entry_and_what_is_excluded_change_no_range(rows, money_set):
    marked = ["fail", "pass", "pass", "pass"]
    first = money(PROFILE, entered(marked, rows, money_set=money_set)).worth
    kept = tuple(row for row in rows if not row.excluded_because)
    for some in (tuple(reversed(rows)), kept):
        again = money(PROFILE, entered(marked, some, money_set=money_set)).worth
        assert (again.as_it_stands, again.put_right) == (first.as_it_stands, first.put_right)


@pytest.mark.parametrize("module", ["money", "plan", "wants", "fit", "spread"])
def test_reckoning_loads_nothing_heavy_before_it_is_asked(module):
    loaded = loaded_after(f"inspector.judgement.{module}")
    assert {"numpy", "scipy"} & loaded == set()


def test_the_order_in_which_faults_were_entered_changes_no_cost():
    totals = set()
    for order in permutations(["a", "b", "c"]):
        told = money(PROFILE, record(*(found(name, "fail") for name in order), money=Money(labour_rate=D(45)))).costs
        totals.add((told.total, told.simulated.p50))
    assert len(totals) == 1
