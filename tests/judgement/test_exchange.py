"""Amounts told in one currency by the user's dated rates."""

from decimal import Decimal

import pytest

from inspector.judgement.cost import costs
from inspector.judgement.exchange import exchange, rounded
from inspector.judgement.worth import worth
from inspector.record.money import Figures, Rate, Remedy
from tests.judgement.priced import D, amounts, failing, paid, shop, sold, way


def rates(*given, currency="GBP"):
    profile = shop({"lamp": [way("a")]})
    return exchange(profile, failing("lamp", money=paid(currency=currency, rates=[r.model_dump() for r in given])))


NO_DAY = "The rate for EUR has no day that can be read: enter one."
EURO = Rate(currency="EUR", per_one=D("0.855"), date="2025-05-01")


def test_a_rate_tells_an_amount_in_the_currency_chosen_and_says_which():
    at = rates(EURO)
    assert at.told(D(1000), "EUR") == D("855.00")
    assert at.trouble("EUR") is None
    assert str(at.words("EUR")) == "1 EUR reckoned as 0.855 GBP, the rate entered for 1 May 2025."


def test_its_own_currency_and_none_need_no_rate():
    at = rates()
    assert [at.told(D("12.345"), c) for c in ("GBP", "")] == [D("12.35")] * 2
    assert at.words("GBP") is None


@pytest.mark.parametrize(
    ("given", "says"),
    [
        ((), "No rate for EUR: enter what one EUR is in GBP, and the day of that rate."),
        ((Rate(currency="EUR", per_one=D(1)),), NO_DAY),
        ((Rate(currency="EUR", per_one=D(1), date="soon"),), NO_DAY),
    ],
)
def test_without_a_dated_rate_nothing_is_told_and_one_sentence_says_what_to_enter(given, says):
    at = rates(*given)
    assert at.told(D(1), "EUR") is None
    assert str(at.trouble("EUR")) == says
    assert at.words("EUR") is None


def test_the_profiles_currency_stands_where_the_user_chose_none():
    assert rates(currency="").currency == "GBP"


@pytest.mark.parametrize(("amount", "told"), [("0.005", "0.01"), ("2.675", "2.68"), ("-0.005", "-0.01"), ("1", "1.00")])
def test_amounts_are_rounded_half_up_to_the_hundredth(amount, told):
    # 2.675 as a binary fraction lies below and would fall to 2.67.
    assert str(rounded(D(amount))) == told


def test_a_part_priced_in_another_currency_is_named_and_not_added():
    figures = Figures(name="From abroad", parts=amounts(100, 200, 300), currency="EUR")
    given = failing("lamp", money=paid(), remedies=(Remedy(item="lamp", cost="own", figures=figures),))
    told = costs(shop({"lamp": []}), given)
    assert told.total == amounts(0, 0, 0)
    assert told.not_priced == ("From abroad",)
    assert any("No rate for EUR" in str(t) for t in told.troubles)


def test_a_price_in_another_currency_counts_only_with_a_rate():
    profile = shop({"lamp": [way("a")]})
    rows = (sold("home", 5000, currency="GBP"), sold("abroad", 6000, currency="EUR"))
    given = failing("lamp", money=paid(), comparables=rows)
    told = worth(profile, given, costs(profile, given))
    assert [r.id for r in told.rows] == ["home"]
    assert "No rate for EUR" in str(told.left_out[0].why_not)
    with_rate = given.model_copy(update={"money": paid(rates=[EURO.model_dump()])})
    told = worth(profile, with_rate, costs(profile, with_rate))
    assert [r.told for r in told.rows] == [D("5000.00"), D("5130.00")]
    assert "0.855" in str(told.rows[1].note)


def test_money_stays_decimal_through_every_answer():
    profile = shop({"lamp": [way("a")]})
    given = failing("lamp", money=paid(), comparables=(sold("x", "0.1"), sold("y", "0.2")))
    told = costs(profile, given)
    assert all(isinstance(one, Decimal) for one in (*told.total, *told.parts, told.simulated.p50))
    assert worth(profile, given, told).as_it_stands.high == D("0.20")
