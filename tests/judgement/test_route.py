from inspector.judgement.route import after, before, first_ten, left_by_station, order
from inspector.record.words import Seen
from tests.judgement.make import found, item, profile, record

WALK = ("frame-number", "engine-number", "tank", "seat", "front-wheel", "front-brake", "carburettor")


def test_numbers_come_first_and_items_of_other_years_are_not_walked():
    assert order(profile(), record()) == WALK
    assert "later-lamp" in order(profile(), record(year=1956))
    assert "later-lamp" in order(profile(), record(found("later-lamp", "pass")))


def test_the_walks_own_order_passes_over_strangers_and_ends_with_what_it_left_out():
    chosen = ("seat", "nothing-such", "tank", "seat")
    assert order(profile(), record(order=chosen)) == ("seat", "tank", *(i for i in WALK if i not in chosen))


def test_one_goes_on_and_back_and_stops_at_the_ends():
    assert after(WALK, "tank") == "seat"
    assert before(WALK, "tank") == "engine-number"
    assert after(WALK, WALK[-1]) is None
    assert before(WALK, WALK[0]) is None
    assert after(WALK, "nothing-such") == WALK[0]
    assert after((), "tank") is None


def test_what_is_left_is_what_nobody_marked_or_explained():
    findings = [
        found("tank", "pass"), found("seat", note="torn"), found("front-wheel", seen=Seen.NOT_SEEN),
        found("front-brake", "pass"), found("front-brake", "fail", by="ben"),
        found("carburettor", seen=Seen.NOT_CHECKED),
    ]  # fmt: skip
    left = {s.id: s for s in left_by_station(profile(), record(*findings))}
    assert [(s.total, s.left) for s in left.values()] == [(2, 2), (2, 1), (3, 1)]
    assert (left["left"].name, left["left"].short, left["left"].items) == ("Left side", "left", ("tank", "seat"))
    assert left["front"].short == "Front"


def test_the_short_list_puts_identity_safety_and_money_first_and_keeps_the_time():
    # Minutes: the numbers 0.5 each, wheel and brake 2 each, tank 0.5, carburettor 0.5, seat 4.
    assert first_ten(profile(), record()) == WALK
    assert first_ten(profile(), record(), minutes=5.5) == tuple(i for i in WALK if i not in {"seat", "carburettor"})
    assert first_ten(profile(), record(), minutes=1) == ("frame-number", "engine-number")


def test_the_short_list_is_in_walking_order_and_within_ten_minutes():
    many = [item(f"p{n}", minutes=0.75, weight=n, money=n % 4) for n in range(40)]
    large = profile(station=[{"id": "all", "name": "All", "item": many}])
    chosen = first_ten(large, record())
    assert sum(large.item_by_id[i].minutes for i in chosen) <= 10
    assert list(chosen) == [i for i in order(large, record()) if i in chosen]
    assert chosen == ("p3", "p7", "p11", "p15", "p19", "p23", "p27", "p30", "p31", "p34", "p35", "p38", "p39")


def test_the_short_list_does_not_change_as_the_walk_goes_on():
    assert first_ten(profile(), record(found("tank", "pass"))) == first_ten(profile(), record())
