"""All in, the highest bid for a limit, the price that keeps the margin, and what may be said to the seller."""

import pytest

from inspector.judgement.deal_words import NO_MARGIN, NO_PRICE
from inspector.judgement.money import money
from inspector.judgement.premium import Bought, highest
from inspector.record.finding import Photograph
from inspector.record.money import Remedy
from inspector.record.words import Evidence
from tests.judgement.make import CARBURETTOR, found, record
from tests.judgement.priced import D, amounts, paid, shop, sold, way

PARTS = (1150, 1650, 2400)
HOURS = (22, 31, 46)
PROFILE = shop({"lamp": ([way("find", parts=PARTS, hours=HOURS)], {"weight": 1}), "tank": ([], {"weight": 3})})
WORTHS = (sold("low", 8800, score=75), sold("mid", 10200, score=75, how_like=5), sold("high", 11600, score=75))


def reckoned(*rows, **fields):
    given = record(found("lamp", "fail"), found("tank", "pass"), comparables=rows or WORTHS,
                   money=paid(**{"labour_rate": "45", "percent_a_point": "0.4", **fields}))  # fmt: skip
    return money(PROFILE, given)


def test_all_in_adds_price_premium_tax_transport_fees_parts_and_labour():
    told = reckoned(price_asked="7400", premium_percent="12.5", tax_percent="20", transport="180",
                    fees=[{"name": "Papers", "amount": "55"}]).deal  # fmt: skip
    assert [(str(line.name), line.amount) for line in told.lines] == [
        ("Price asked", amounts(*["7400.00"] * 3)), ("Buyer's premium", amounts(*["925.00"] * 3)),
        ("Tax on the premium", amounts(*["185.00"] * 3)), ("Transport", amounts(*["180.00"] * 3)),
        ("Papers", amounts(*["55.00"] * 3)), ("Parts", amounts(1150, 1650, 2400)),
        ("Labour", amounts(990, 1395, 2070)),
    ]  # fmt: skip
    assert told.all_in == amounts("10885.00", "11790.00", "13215.00")


def test_the_simulated_all_in_is_that_of_putting_right_and_what_is_certain():
    told = reckoned(price_asked="7400", transport="180")
    assert told.deal.spread.p50 - told.costs.simulated.p50 == D(7580)
    assert told.deal.all_in[0] < told.deal.spread.p10 < told.deal.spread.p90 < told.deal.all_in[2]


def test_without_a_price_there_is_no_all_in_sum_and_it_is_said():
    told = reckoned().deal
    assert (told.all_in, told.spread, told.left_at_middle) == (None, None, None)
    assert NO_PRICE in told.reasons


def test_the_price_that_keeps_the_margin_is_worth_put_right_less_all_else():
    # Put right: 25 points at 0.4 % each on 8,800, 10,200 and 11,600 make 9,680, 11,220 and 12,760.
    told = reckoned(margin="1200", transport="180", price_asked="7400")
    assert (told.worth.put_right.low, told.worth.put_right.middle) == (D("9680.00"), D("11220.00"))
    keeping = told.deal.keeping
    assert (keeping.at_middle, keeping.at_low_end) == (D(11220 - 1200 - 180 - 3045), D(9680 - 1200 - 180 - 3045))
    assert 0.4 < keeping.exceeded < 0.9
    assert told.deal.left_at_middle == D(11220) - D(7400 + 180 + 3045)
    assert told.deal.left_at_low_end == D(9680) - D(7400 + 180 + 3045)
    assert "keep 595.00" in str(told.deal.left_words)
    assert "lose 945.00" in str(told.deal.left_words)


def test_how_often_the_margin_is_lost_is_the_share_of_cases_above_what_was_reckoned():
    told = reckoned(margin="1200")
    likely, spread = told.costs.total[1], told.costs.simulated
    # The likely sum lies below the 50 % point and above the 10 % point, so between half and nine tenths exceed it.
    assert spread.p10 < likely < spread.p50
    assert 0.5 < told.deal.keeping.exceeded < 0.9


def test_a_premium_lowers_the_price_that_keeps_the_margin():
    plain, dear = (reckoned(margin="1200", premium_percent=p).deal.keeping for p in ("0", "15"))
    assert dear.at_middle == (plain.at_middle / D("1.15")).to_integral_value("ROUND_FLOOR")


def test_where_no_price_keeps_the_margin_it_is_said():
    told = reckoned(margin="9000").deal.keeping
    assert (told.at_middle, told.at_low_end) == (None, None)
    assert "no price keeps your margin" in " ".join(map(str, told.words))


def test_where_nothing_is_to_be_put_right_the_price_is_set_against_the_worth_as_it_stands():
    given = record(found("lamp", "pass"), found("tank", "pass"), comparables=(sold("c1", 9000),),
                   money=paid(margin="1000", price_asked="7400"))  # fmt: skip
    told = money(PROFILE, given).deal
    assert (told.keeping.at_middle, told.keeping.exceeded) == (D(8000), None)
    assert told.left_at_middle == D(1600)
    assert "Prices are set against the worth as it stands." in [str(reason) for reason in told.reasons]


def test_no_margin_no_price_that_keeps_it():
    told = reckoned(price_asked="7400").deal
    assert told.keeping is None
    assert NO_MARGIN in told.reasons


def test_the_highest_hammer_price_leaves_room_for_all_the_rest():
    told = reckoned(limit_all_in="10000", premium_percent="15", transport="180").deal.hammer
    assert told.comes_to <= D(10000)
    step = Bought(D(15), D(0), D(180)).all_in(told.price + 1) + D(3045)
    assert step > D(10000)
    assert told.with_high == told.comes_to - D(3045) + D(4470)


def test_a_limit_used_up_before_any_price_is_said():
    told = reckoned(limit_all_in="2000").deal
    assert told.hammer is None
    assert any("used up" in str(reason) for reason in told.reasons)


@pytest.mark.parametrize("seed", range(200))
def test_one_more_never_fits(seed):
    bought = Bought(D(seed % 31) / 2, D(seed % 7) * 5, D(seed % 11) * 13)
    limit = D(500 + 37 * seed)
    price = highest(bought, limit)
    assert bought.all_in(price) <= limit < bought.all_in(price + 1)


def test_opening_target_and_walk_away_are_the_users_own_and_none_is_made_up():
    told = reckoned(opening="6000", walk_away="7100").deal
    assert (told.opening, told.target, told.walk_away) == (D(6000), None, D(7100))


def test_what_is_not_in_the_sum_is_named():
    profile = shop({"a": [way("a1", hours=None)], "b": [way("b1"), way("b2")], "c": [], "d": [way("d1", parts=None)]})
    given = record(*(found(i, "fail") for i in "abcd"), money=paid(labour_rate=None, price_asked="1"))
    assert [str(s) for s in money(profile, given).deal.not_in_it] == [
        "Labour not estimated, and not in this sum: A1.",
        "Without a price, and not in this sum: D1.",
        "To be decided first, and not in this sum: B.",
        "No way to put right is known: C.",
        "No labour rate entered: 2 hours of work are not in this sum.",
        "No transport entered.",
    ]


def talked():
    profile = shop({
        "brake": ([way("shoes", need="safety")], {"safety": "brake"}),
        "carburettor": ([way("carb-find"), way("carb-mend", kind="repair")], {"variant": CARBURETTOR}),
        "paint": [way("repaint", need="taste")],
        "seat": [],
    })  # fmt: skip
    picture = Photograph(id="p1", sha256="0" * 64, name="x.jpg", media="image/jpeg", width=1, height=1, size=1,
                         item="carburettor")  # fmt: skip
    given = record(
        found("brake", "fail", note="Drum is cracked. Seen by lamp."),
        found("carburettor", "fail", fitted="late", why=["wrong year"], evidence=(Evidence.CAST, Evidence.SHAPE)),
        found("paint", "doubt"), found("seat", "pass"),
        photographs=(picture,), money=paid(), remedies=(Remedy(item="paint", cost="repaint"),),
    )  # fmt: skip
    return money(profile, given).talking


def test_talking_points_are_split_by_safety_claim_and_taste():
    told = talked()
    assert [[p.item for p in part] for part in (told.safety, told.claim, told.taste)] == [
        ["brake"], ["carburettor"], ["paint"]]  # fmt: skip


def test_each_point_carries_its_evidence_its_sources_and_its_cost():
    told = talked()
    (brake,), (claim,), (taste,) = told.safety, told.claim, told.taste
    assert str(brake.sentence) == "Brake: fail (Drum is cracked)."
    assert str(brake.evidence[0]) == "no evidence recorded"
    assert brake.cost == amounts(20, 40, 60)
    assert "wrong year" in str(claim.sentence)
    assert [str(e) for e in claim.evidence] == ["number cast", "shape", "photographs: 1"]
    assert "Invented parts list, p. 12 (factory list)" in [str(s) for s in claim.sources]
    assert claim.cost is None
    assert "not priced before it is decided" in str(claim.cost_words)
    assert taste.cost == amounts(20, 40, 60)


def test_the_users_note_about_offers_for_parts_is_passed_on_as_written():
    assert reckoned(offered_for_parts="40 offered for the lamp, 70 hoped for").deal.offered.startswith("40 offered")


def test_nothing_entered_is_an_answer_without_figures():
    told = money(PROFILE, record())
    assert (told.deal.all_in, told.deal.hammer, told.deal.keeping) == (None, None, None)
    assert told.worth.as_it_stands is None
    assert told.costs.total == amounts(0, 0, 0)


def test_what_is_paid_is_set_against_the_worth_as_it_stands_too():
    told = reckoned(price_asked="7400", premium_percent="10", transport="180").deal
    assert told.bought == D(7400 + 740 + 180)
    # As it stands the three comparables of the same score lie at 8,800, 10,200 and 11,600.
    assert (told.stands_at_middle, told.stands_at_low_end) == (D(10200 - 8320), D(8800 - 8320))
    assert "1880.00 below the middle of its worth as it stands, 480.00 below its low end" in str(told.stands_words)
    assert reckoned().deal.bought is None


def test_two_people_are_named_where_both_found_something():
    profile = shop({"lamp": [way("find")]})
    given = record(found("lamp", "fail", note="Cracked."), found("lamp", "fail", by="ben", note="Cracked too."))
    (point,) = money(profile, given).talking.claim
    assert str(point.sentence) == "Lamp: ben: fail (Cracked too); Ann Invented: fail (Cracked)."
