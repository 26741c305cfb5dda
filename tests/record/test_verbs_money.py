"""What a person does about money: each step, its inverse, and refusals in one clear sentence."""

from decimal import Decimal

import pytest

from inspector.record import verbs_money as verbs
from inspector.record.edits import apply
from inspector.record.money import Comparable, Figures, Remedy
from inspector.record.refusing import EditRefused
from inspector.record.words import Adjusts, PriceKind
from tests.record.steps import blank

D = Decimal


def after(record, *steps):
    for step in steps:
        done = apply(record, step)
        assert apply(done.record, done.inverse).record == record
        record = done.record
    return record


def with_two():
    first = Comparable(id="c1", kind=PriceKind.SOLD, price=D(100))
    second = Comparable(id="c2", kind=PriceKind.BID, price=D(90))
    return after(blank(), verbs.add_comparables((first, second)))


def test_settings_are_set_and_taken_away():
    record = after(blank(), verbs.set_money("budget", D("1500.50")), verbs.set_money("purpose", "to keep"))
    assert (record.money.budget, record.money.purpose) == (D("1500.50"), "to keep")
    record = after(record, verbs.set_money("budget", None), verbs.set_money("purpose", None))
    assert record == blank()


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [
        ("budget", "-1", "Budget cannot be -1: enter at least 0. Nothing was changed."),
        ("labour_rate", "forty", 'Labour rate: "forty" is not a number. Nothing was changed.'),
        ("premium_percent", "101", "Premium percent cannot be 101: enter at most 100. Nothing was changed."),
        ("effective_date", "the other day", "is not a day, month or year from 1880 to 2100. Write it as 2025-06-05."),
        ("effective_date", "05/06/2025", "can be read two ways. Write it as 2025-06-05."),
        ("currency", "pounds", "Write three letters, such as GBP or EUR. Nothing was changed."),
        ("budget", "NaN", "Nothing was changed."),
        ("price_level", {"low": "9", "likely": "5", "high": "7"}, "level must rise from low over likely to high"),
        ("mileage", "1", "cannot be kept"),
    ],
)  # fmt: skip
def test_a_setting_that_cannot_hold_is_one_clear_sentence(field, value, says):
    with pytest.raises(EditRefused) as refused:
        verbs.set_money(field, value)
    assert says in str(refused.value.sentence)


def test_a_rate_is_one_for_each_currency_and_needs_its_day():
    record = after(blank(), verbs.set_rate(blank(), "EUR", D("0.86"), "2025-05-01"))
    record = after(record, verbs.set_rate(record, "EUR", D("0.85"), "2025-06-01"))
    assert [(r.currency, r.per_one, r.date) for r in record.money.rates] == [("EUR", D("0.85"), "2025-06-01")]
    assert after(record, verbs.set_rate(record, "EUR", None, "")) == blank()
    with pytest.raises(EditRefused, match="is not a day"):
        verbs.set_rate(record, "USD", D(1), "")
    with pytest.raises(EditRefused, match="cannot be 0"):
        verbs.set_rate(record, "USD", D(0), "2025")


def test_a_rate_that_is_changed_stays_where_it_stood_also_under_another_currency():
    record = blank()
    for currency in ("EUR", "USD", "CHF"):
        record = after(record, verbs.set_rate(record, currency, D(1), "2025"))
    record = after(record, verbs.set_rate(record, "EUR", D(2), "2025"))
    assert [r.currency for r in record.money.rates] == ["EUR", "USD", "CHF"]
    record = after(record, verbs.set_rate(record, "SEK", D(3), "2025", "USD"))
    assert [(r.currency, r.per_one) for r in record.money.rates] == [("EUR", 2), ("SEK", 3), ("CHF", 1)]
    record = after(record, verbs.set_rate(record, "EUR", D(4), "2025", "CHF"))
    assert [(r.currency, r.per_one) for r in record.money.rates] == [("SEK", 3), ("EUR", 4)]


def test_a_year_of_the_index_that_is_written_over_is_gone():
    record = after(blank(), verbs.set_index(blank(), 2020, D(7)))
    assert [row.year for row in after(record, verbs.set_index(record, 2021, D(7), 2020)).money.index] == [2021]


def test_an_offer_of_a_part_is_noted_changed_and_taken_away():
    record = after(blank(), verbs.new_offer(blank(), "lamp/find"))
    record = after(record, verbs.change_offer(record, "o1", price="40", by="stall 14"))
    assert [(o.id, o.part, o.price, o.by) for o in record.money.offers] == [("o1", "lamp/find", D(40), "stall 14")]
    with pytest.raises(EditRefused, match="cannot be -5: enter at least 0"):
        verbs.change_offer(record, "o1", price="-5")
    with pytest.raises(EditRefused, match="is not a day"):
        verbs.change_offer(record, "o1", date="2024-13-41")
    with pytest.raises(EditRefused, match="no longer there"):
        verbs.change_offer(record, "o7", price="5")
    assert after(record, verbs.drop_offer(record, "o1")) == blank()


def test_weeks_to_come_rise_and_are_never_below_nought():
    assert verbs.figures(name="A lamp", lead_weeks=("2", "6")).lead_weeks == (2, 6)
    with pytest.raises(EditRefused, match="Weeks must rise"):
        verbs.figures(name="A lamp", lead_weeks=("6", "2"))
    with pytest.raises(EditRefused, match="enter at least 0"):
        verbs.figures(name="A lamp", lead_weeks=("-1", "2"))


def test_the_index_keeps_its_years_in_order():
    record = blank()
    for year in (2020, 2025, 2010):
        record = after(record, verbs.set_index(record, year, D(year)))
    assert [row.year for row in record.money.index] == [2010, 2020, 2025]
    assert [row.year for row in after(record, verbs.set_index(record, 2020, None)).money.index] == [2010, 2025]


def test_asked_and_bid_count_only_as_chosen():
    record = after(blank(), verbs.count_also(blank(), PriceKind.ASKED, True))
    record = after(record, verbs.count_also(record, PriceKind.BID, True))
    assert record.money.also_count == (PriceKind.ASKED, PriceKind.BID)
    assert after(record, verbs.count_also(record, PriceKind.ASKED, False)).money.also_count == (PriceKind.BID,)


MINE = Figures(name="Mine", parts=(D(1), D(2), D(3)))


def test_a_way_is_chosen_declined_and_left_undecided_and_keeps_its_figures():
    record = after(blank(), verbs.choose_remedy(blank(), "tank", "find", True))
    assert record.remedies == (Remedy(item="tank", cost="find", chosen=True),)
    record = after(record, verbs.set_figures(record, "tank", "find", MINE))
    record = after(record, verbs.choose_remedy(record, "tank", "find", False))
    assert record.remedies == (Remedy(item="tank", cost="find", chosen=False, figures=MINE),)
    record = after(record, verbs.choose_remedy(record, "tank", "find", None))
    assert record.remedies == (Remedy(item="tank", cost="find", chosen=None, figures=MINE),)
    assert after(record, verbs.set_figures(record, "tank", "find", None)) == blank()


def test_figures_alone_decide_nothing():
    record = after(blank(), verbs.set_figures(blank(), "tank", "find", MINE))
    assert record.remedies[0].chosen is None


def test_low_above_high_is_one_clear_sentence():
    with pytest.raises(EditRefused, match="Parts must rise from low over likely to high, not 5, 4, 3"):
        verbs.figures(name="Mine", parts=("5", "4", "3"))
    with pytest.raises(EditRefused, match="Hours must rise"):
        verbs.figures(name="Mine", hours=("1", "9", "3"))
    assert verbs.figures(name="Mine", parts=("3", "4", "5")).parts == (D(3), D(4), D(5))


def test_a_comparable_by_hand_is_checked_as_one_from_a_table():
    made = verbs.comparable(id="c1", kind="sold", price="99.50", date="2025-05")
    assert (made.price, made.kind) == (D("99.50"), PriceKind.SOLD)
    with pytest.raises(EditRefused, match="Price cannot be -5: enter at least 0"):
        verbs.comparable(id="c1", kind="sold", price="-5")
    with pytest.raises(EditRefused, match="is not a day"):
        verbs.comparable(id="c1", kind="sold", price="5", date="2025-02-31")


def test_a_comparable_is_left_out_with_a_reason_and_counted_again():
    record = with_two()
    out = after(record, verbs.exclude(record, "c2", " a friend's bid "))
    assert out.comparables[1].excluded_because == "a friend's bid"
    assert after(out, verbs.exclude(out, "c2", "")) == record


def test_changing_what_is_not_there_is_refused():
    with pytest.raises(EditRefused, match="no longer there"):
        verbs.change_comparable(blank(), "c9", place="York")
    with pytest.raises(EditRefused, match="no comparable to enter"):
        verbs.add_comparables(())


def test_an_adjustment_is_one_for_each_thing_and_goes_with_its_comparable():
    record = with_two()
    record = after(record, verbs.adjust("c1", Adjusts.TIME, amount=D(50), reason="a year ago"))
    record = after(record, verbs.adjust("c1", Adjusts.TIME, percent=D(-3)))
    assert [(a.id, a.amount, a.percent) for a in record.adjustments] == [("c1-time", None, D(-3))]
    assert after(record, verbs.drop_comparable(record, "c1")).adjustments == ()
    assert after(record, verbs.adjust("c1", Adjusts.TIME)).adjustments == ()
    with pytest.raises(EditRefused, match="either an amount or a percentage"):
        verbs.adjust("c1", Adjusts.TIME, amount=D(1), percent=D(1))


def test_ids_are_free():
    assert verbs.new_comparable_id(with_two()) == "c3"
    assert verbs.new_comparable_id(blank()) == "c1"
