"""What it is worth by the comparables entered: the grid, what counts, the range, the fit and what may be printed."""

from decimal import Decimal

import pytest

from inspector.judgement.cost import costs
from inspector.judgement.worth import EMPTY, NO_SLOPE, NOTHING_CHOSEN, worth, worth_of_a_point
from inspector.record.money import Adjustment, Comparable
from inspector.record.words import Adjusts, PriceKind
from tests.judgement.make import found, record
from tests.judgement.priced import D, paid, shop, sold, way

PROFILE = shop({"lamp": ([way("find")], {"weight": 1}), "tank": ([], {"weight": 3})})
NAMED = {"purpose": "buying to keep", "kind_of_value": "price between two people", "effective_date": "2025-05-17",
         "in_the_name_of": "Ann Invented"}  # fmt: skip


def valued(*rows, adjustments=(), lamp="fail", **money):
    """The worth of a machine that scores 75 and, the lamp put right, 100."""
    given = record(found("lamp", lamp), found("tank", "pass"), comparables=rows, adjustments=adjustments,
                   money=paid(**money))  # fmt: skip
    return worth(PROFILE, given, costs(PROFILE, given))


def by_hand(key, what, **figures):
    return Adjustment(id=f"{key}-{what}", comparable=key, what=Adjusts(what), reason="as seen", **figures)


def lines(row):
    return [(line.what.value if line.what else "fees", line.amount) for line in row.lines]


def test_a_price_as_entered_becomes_adjusted_with_every_change_visible():
    changes = (by_hand("c1", "condition", percent=D("-10")), by_hand("c1", "equipment", amount=D("250")))
    (row,) = valued(sold("c1", 8000), adjustments=changes).rows
    assert lines(row) == [("condition", D("-800.00")), ("equipment", D("250.00"))]
    assert (row.as_entered, row.told, row.as_it_stands) == (D(8000), D("8000.00"), D("7450.00"))
    assert [str(line.words) for line in row.lines] == ["condition: -10 %, as seen", "equipment: as seen"]
    assert [line.entry for line in row.lines] == ["c1-condition", "c1-equipment"]


def test_fees_then_time_then_the_rest_as_shares_of_that_price():
    row = sold("c1", 1000, premium_percent="15", date="2023-05-17")
    told = valued(row, adjustments=(by_hand("c1", "numbers", percent=D(10)),), percent_a_year="5", **NAMED).rows[0]
    # 1000 and 15 % are 1150; 731 days are 2.00137 years: 1150 x 1.1025 x 1.05^0.00137 = 1267.96.
    assert lines(told) == [("fees", D("150.00")), ("time", D("117.96")), ("numbers", D("126.80"))]
    assert told.as_it_stands == D("1394.76")


def test_fees_already_in_are_not_added_again():
    told = valued(sold("in", 1150, fees_in=True, premium_percent="15"), sold("private", 1150)).rows
    assert [lines(row) for row in told] == [[], []]


def test_the_index_goes_before_the_yearly_percentage_and_needs_both_years():
    index = [{"year": 2020, "value": "100"}, {"year": 2025, "value": "110"}]
    rows = (sold("c1", 1000, date="2020-06"), sold("c2", 1000, date="2021"), sold("c3", 1000))
    told = valued(*rows, index=index, **NAMED).rows
    assert [lines(row) for row in told] == [[("time", D("100.00"))], [], []]
    assert "from 2020 to 2025 by the index entered, 100 to 110" in str(told[0].lines[0].words)
    assert "has not both years" in str(told[1].note)
    assert "no date of this price" in str(told[2].note)
    both = valued(*rows, index=index, percent_a_year="2", **NAMED).rows
    assert lines(both[0]) == [("time", D("100.00"))]
    assert [what for what, _ in lines(both[1])] == ["time"]


def test_the_users_own_adjustment_for_time_stands_instead_of_the_rate():
    change = (by_hand("c1", "time", amount=D(50)),)
    (row,) = valued(sold("c1", 1000, date="2020"), adjustments=change, percent_a_year="5", **NAMED).rows
    assert lines(row) == [("time", D("50.00"))]


def test_without_an_effective_date_nothing_is_adjusted_for_time_and_it_is_said():
    (row,) = valued(sold("c1", 1000, date="2020"), percent_a_year="5").rows
    assert lines(row) == []
    assert "no effective date" in str(row.note)


def test_what_is_excluded_stays_listed_with_its_reason():
    told = valued(sold("c1", 7000), sold("peak", 40000, excluded_because="two bidders who hated each other"))
    assert [r.id for r in told.rows] == ["c1"]
    assert [(r.id, str(r.why_not)) for r in told.left_out] == [
        ("peak", "Left out: two bidders who hated each other")]  # fmt: skip
    assert told.as_it_stands.high == D("7000.00")


@pytest.mark.parametrize("kind", [PriceKind.ASKED, PriceKind.BID])
def test_only_what_was_sold_counts_unless_the_user_says_so(kind):
    rows = (sold("c1", 7000), Comparable(id="c2", kind=kind, price=D(9000)))
    without, with_it = valued(*rows), valued(*rows, also_count=[kind.value])
    assert [r.id for r in without.rows] == ["c1"]
    assert "only if you choose so" in str(without.left_out[0].why_not)
    assert [r.id for r in with_it.rows] == ["c1", "c2"]


def test_the_middle_is_weighted_by_likeness_and_the_range_is_lowest_to_highest():
    rows = [sold(f"c{n}", price, how_like=like) for n, (price, like) in enumerate([(1, 1), (2, 1), (3, 1), (9, 5)])]
    told = valued(*rows).as_it_stands
    assert (told.low, told.middle, told.high) == tuple(D(f"{n}.00") for n in (1, 9, 9))
    assert told.half == (D("2.00"), D("9.00"))
    assert told.count == 4


def test_a_point_of_correctness_moves_what_has_a_score_and_makes_put_right_differ():
    told = valued(sold("c1", 8000, score=95), sold("c2", 8000, score=55), sold("c3", 8000), percent_a_point="0.5")
    assert [lines(row) for row in told.rows] == [
        [("correctness", D("-800.00"))], [("correctness", D("800.00"))], []]  # fmt: skip
    assert [row.put_right - row.as_it_stands for row in told.rows] == [D("1000.00")] * 3
    assert "points gained" in str(told.put_right_words)


def test_an_adjustment_by_hand_for_correctness_is_stretched_to_put_right():
    # From 95 down to this machine's 75 the user takes off 800, 40 a point; put right is 25 points more.
    told = valued(sold("c1", 8000, score=95), adjustments=(by_hand("c1", "correctness", amount=D(-800)),))
    assert (told.rows[0].as_it_stands, told.rows[0].put_right) == (D("7200.00"), D("8200.00"))
    assert "in proportion" in str(told.rows[0].to_put_right.words)


@pytest.mark.parametrize(("score", "amount"), [(None, -800), (75, -800), (95, 800)])
def test_what_does_not_say_what_correctness_is_worth_gives_no_put_right(score, amount):
    told = valued(sold("c1", 8000, score=score), adjustments=(by_hand("c1", "correctness", amount=D(amount)),))
    assert told.put_right is None
    assert told.put_right_words is NO_SLOPE


def test_nothing_to_put_right_is_said():
    told = valued(sold("c1", 8000, score=95), lamp="pass", percent_a_point="1")
    assert (told.put_right, told.put_right_words) == (None, NOTHING_CHOSEN)


@pytest.mark.parametrize(
    ("missing", "says"),
    [("purpose", "purpose"), ("kind_of_value", "kind of value"), ("effective_date", "effective date"),
     ("in_the_name_of", "whose name")],
)  # fmt: skip
def test_without_purpose_kind_date_and_name_it_is_not_printable_as_a_value(missing, says):
    told = valued(sold("c1", 8000), **{**NAMED, missing: ""})
    assert not told.printable
    assert [says in str(why) for why in told.why_not_printable] == [True]


def test_with_all_four_it_is_printable_and_says_what_it_is():
    one, two = valued(sold("c1", 8000), **NAMED), valued(sold("c1", 8000), sold("c2", 1), **NAMED)
    assert one.printable
    assert str(one.headline).startswith("From one comparable entered, for buying to keep, on 17 May 2025. An ")
    assert str(two.headline).startswith("From the 2 comparables entered, for buying to keep, on 17 May 2025. An ")


@pytest.mark.parametrize(("rows", "words"), [
    ((sold("c1", 8000), sold("c2", 1), sold("c3", 9000, excluded_because="the peak")), "From 2 of the 3 comparables"),
    ((sold("c1", 8000), sold("c2", 9000, kind="asked")), "From 1 of the 2 comparables"),
])  # fmt: skip
def test_where_some_are_not_counted_it_says_how_many_of_how_many(rows, words):
    assert str(valued(*rows, **NAMED).headline).startswith(f"{words} entered, for buying to keep, on 17 May 2025.")


def test_a_date_that_is_none_does_not_print():
    assert not valued(sold("c1", 8000), **{**NAMED, "effective_date": "in spring"}).printable


def test_a_kind_of_value_that_claims_too_much_does_not_print():
    told = valued(sold("c1", 8000), **{**NAMED, "kind_of_value": "Open Market  Value"})
    assert "otherwise" in str(told.why_not_printable[0])


def test_a_purpose_that_claims_too_much_does_not_print():
    told = valued(sold("c1", 8000), **{**NAMED, "purpose": "to know the market value"})
    assert "otherwise" in str(told.why_not_printable[0])


def test_an_empty_grid_is_one_sentence():
    told = valued(**NAMED)
    assert (told.as_it_stands, told.put_right, told.fit) == (None, None, None)
    assert told.troubles == told.why_not_printable == (EMPTY,)
    assert not told.printable


def test_adjustments_that_leave_nothing_take_the_row_out_with_a_reason():
    told = valued(sold("c1", 100), adjustments=(by_hand("c1", "condition", amount=D(-500)),))
    assert told.as_it_stands is None
    assert "leave nothing" in str(told.left_out[0].why_not)


def test_an_adjustment_of_a_comparable_that_is_gone_is_named():
    told = valued(sold("c1", 100), adjustments=(by_hand("c9", "condition", amount=D(-5)),))
    assert any("no longer there" in str(t) for t in told.troubles)


def eight(scores=(60, 65, 70, 75, 80, 85, 90, 95), extra=0):
    return [sold(f"c{n}", 4000 + 50 * s + (-1) ** n * 60 + extra, score=s) for n, s in enumerate(scores)]


def test_below_eight_with_a_score_there_is_no_fit():
    told = valued(*eight()[:7], sold("c9", 8000))
    assert told.fit is None
    assert "needs 8" in str(told.fit_words)


def test_from_eight_there_is_a_fit_with_an_interval_about_its_middle():
    told = valued(*eight()).fit
    assert told.count == 8
    assert told.as_it_stands.low < told.as_it_stands.middle < told.as_it_stands.high
    assert told.as_it_stands.middle < told.put_right.middle
    assert D(7600) < told.as_it_stands.middle < D(7900)
    assert told.percent_a_point > 0


def test_beyond_the_scores_entered_it_warns_and_within_it_does_not():
    told = valued(*eight()).fit
    assert told.as_it_stands.outside is None
    assert "lies outside the 60 to 95" in str(told.put_right.outside)
    assert any("guess" in str(w) for w in told.warnings)


def test_the_sale_that_pulls_most_comes_first():
    rows = eight()
    rows[7] = sold("peak", 20000, score=95, title="The peak")
    first = valued(*rows).fit.influence[0]
    assert first.id == "peak"
    told = valued(*rows).fit
    assert first.without < told.as_it_stands.middle
    assert any("The peak pulls most" in str(w) for w in told.warnings)


def test_a_fit_that_hangs_on_one_sale_says_so():
    told = valued(*eight(scores=(70,) * 7 + (90,))).fit
    assert told.influence[0].without is None
    assert any("hangs on one sale alone" in str(w) for w in told.warnings)


def test_scores_all_the_same_give_no_fit():
    assert "all scores are the same" in str(valued(*eight(scores=(70,) * 8)).fit_words)


def test_prices_that_fall_with_the_score_are_questioned():
    rows = [sold(f"c{n}", 9000 - 50 * s, score=s) for n, s in enumerate((60, 65, 70, 75, 80, 85, 90, 95))]
    assert any("less correct machines fetch more" in str(w) for w in valued(*rows).fit.warnings)


def test_a_fit_works_on_prices_adjusted_for_all_but_correctness():
    changes = tuple(by_hand(f"c{n}", "condition", amount=D(1000)) for n in range(8))
    plain, moved = valued(*eight(extra=1000)).fit, valued(*eight(), adjustments=changes, percent_a_point="1").fit
    assert moved.as_it_stands == plain.as_it_stands


def test_what_a_point_is_worth_follows_from_the_users_entries():
    def a_point(*rows, adjustments=(), **money):
        given = record(found("lamp", "fail"), found("tank", "pass"), comparables=rows, adjustments=adjustments,
                       money=paid(**money))  # fmt: skip
        spent = costs(PROFILE, given)
        return worth_of_a_point(given, spent, worth(PROFILE, given, spent))

    assert a_point(sold("c1", 8000), percent_a_point="0.5") == D("40.00")
    by = (by_hand("c1", "correctness", amount=D(-800)),)
    assert a_point(sold("c1", 8000, score=95), adjustments=by) == D("40.00")
    assert a_point(sold("c1", 8000, score=95), sold("c2", 8000), adjustments=by) is None
    assert a_point() is None


def test_every_amount_of_the_grid_is_a_decimal():
    told = valued(*eight(), percent_a_point="0.7", percent_a_year="3.3", **NAMED)
    for row in told.rows:
        assert all(isinstance(x, Decimal) for x in (row.told, row.as_it_stands, row.put_right))
        assert row.as_it_stands == row.told + sum(line.amount for line in row.lines)


def test_an_index_beyond_all_reason_changes_nothing_and_is_said():
    index = [{"year": 2020, "value": "0.000001"}, {"year": 2025, "value": "1000000000"}]
    (row,) = valued(sold("c1", 1000, date="2020-06"), index=index, **NAMED).rows
    assert lines(row) == []
    assert "beyond all reason" in str(row.note)


def test_a_price_without_the_buyers_fees_says_that_none_were_added():
    (plain,) = valued(sold("c1", 1000)).rows
    assert "none were added" in str(plain.note)
    known = (sold("c1", 1000, fees_in=True), sold("c2", 1000, premium_percent="10"), sold("c3", 1000, kind="asked"))
    told = valued(*known, also_count=["asked"])
    assert [row.note for row in told.rows] == [None, None, None]


def test_a_rate_and_a_lacking_date_are_both_told():
    rates = [{"currency": "EUR", "per_one": "0.9", "date": "2025-05-01"}]
    (row,) = valued(sold("c1", 1000, currency="EUR", fees_in=True), rates=rates, percent_a_year="3", **NAMED).rows
    assert str(row.note) == (
        "1 EUR reckoned as 0.9 GBP, the rate entered for 1 May 2025. "
        "Not adjusted for time: no date of this price that can be read."
    )
