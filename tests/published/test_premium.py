"""Premium arithmetic as auction primers work it out: 15 % on a limit of 2,000 leaves a bid of 1,739, and 12.5 % with
20 % tax on the premium is 15 %.

Source of the first: followexperts.online, "Buying a motorcycle at an auction"; the second is arithmetic.
"""

from decimal import Decimal

import pytest

from inspector.judgement.money import money
from inspector.judgement.premium import Bought, highest
from tests.judgement.make import record
from tests.judgement.priced import paid, shop

D = Decimal


# Premium and its tax are each rounded to the hundredth: 217.38 and 43.48 are a hundredth more than 15 % at once.
@pytest.mark.parametrize(
    ("bought", "comes_to"), [(Bought(D(15)), "1999.85"), (Bought(D("12.5"), D(20)), "1999.86")]
)
def test_a_limit_of_two_thousand_leaves_a_bid_of_1739(bought, comes_to):
    assert highest(bought, D(2000)) == 1739
    assert bought.all_in(D(1739)) == D(comes_to)
    assert bought.all_in(D(1740)) == D(2001)


def test_twelve_and_a_half_with_a_fifth_tax_on_it_are_fifteen_percent():
    assert Bought(D("12.5"), D(20)).percent == D(15)


def test_the_deal_says_so_from_what_was_entered():
    given = record(money=paid(limit_all_in="2000", premium_percent="12.5", tax_percent="20"))
    told = money(shop({"lamp": []}), given).deal.hammer
    assert (told.price, told.comes_to) == (D(1739), D("1999.86"))
    assert "within 2000: 1739 comes to 1999.86" in str(told.words)
