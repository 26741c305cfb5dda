"""Parts offered, each against the price expected for it."""

import pytest

from inspector.judgement.money import money
from inspector.judgement.part_offers import part_offers
from tests.judgement.priced import D, amounts, failing, paid, shop, way

PROFILE = shop({"lamp": [way("lamp-find", parts=(100, 130, 160))], "seat": [way("seat-find", parts=None)]})


def told(rates=(), **offer):
    given = failing("lamp", money=paid(offers=[{"id": "o1", **offer}], rates=rates))
    (one,) = part_offers(PROFILE, given)
    return one


@pytest.mark.parametrize(
    ("price", "words"),
    [
        ("90", "40.00 below the likely 130.00 and below the lowest expected, 100.00."),
        ("100", "30.00 below the likely 130.00, within 100.00 to 160.00."),
        ("130", "As much as the likely 130.00, within 100.00 to 160.00."),
        ("150.50", "20.50 above the likely 130.00, within 100.00 to 160.00."),
        ("161", "31.00 above the likely 130.00 and above the highest expected, 160.00."),
    ],
)
def test_an_offer_stands_beside_the_figures_of_the_remedy_it_serves(price, words):
    one = told(part="lamp/lamp-find", price=price)
    assert str(one.words) == words
    assert (str(one.name), one.expected) == ("Lamp find (Lamp)", amounts("100.00", "130.00", "160.00"))
    assert str(one.whose) == "prices of May 2025, no source"


def test_what_the_user_expects_stands_in_place_of_the_profile():
    one = told(part="lamp/lamp-find", price="90", expected="80")
    assert str(one.words) == "10.00 above the likely 80.00."
    assert str(one.whose) == "what you expect to pay"


def test_a_part_of_which_nothing_is_expected_says_so_and_one_without_a_price_too():
    assert "Nothing is known to hold it against" in str(told(part="seat/seat-find", price="40").words)
    other = told(name="A pair of grips", price="12", by="stall 14", date="2025-06")
    assert (str(other.name), str(other.by)) == ("A pair of grips", "stall 14, June 2025")
    assert "Nothing is known" in str(other.words)
    assert "Without a price" in str(told(part="lamp/lamp-find").words)


def test_an_offer_in_another_currency_is_told_by_the_users_rate_or_asks_for_one():
    euro = told(part="lamp/lamp-find", price="100", currency="EUR")
    assert (euro.price, euro.as_entered) == (None, D(100))
    assert str(euro.words).startswith("No rate for EUR")
    rate = [{"currency": "EUR", "per_one": "0.9", "date": "2025-05-01"}]
    rated = told(part="lamp/lamp-find", price="100", currency="EUR", rates=rate)
    assert rated.price == D("90.00")
    assert "40.00 below the likely 130.00" in str(rated.words)


def test_a_remedy_that_is_gone_from_the_profile_leaves_the_offer_named_by_the_user():
    one = told(part="lamp/gone", name="A lamp", price="40")
    assert (one.part, str(one.name)) == ("", "A lamp")


def test_offers_are_part_of_the_whole_reckoning():
    given = failing("lamp", money=paid(offers=[{"id": "o1", "part": "lamp/lamp-find", "price": "90"}]))
    assert [one.id for one in money(PROFILE, given).offers] == ["o1"]
