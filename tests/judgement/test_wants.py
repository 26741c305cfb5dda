"""The parts to look for at the stalls."""

from inspector.judgement.cost import costs
from inspector.judgement.wants import wants
from tests.judgement.make import found, record
from tests.judgement.priced import amounts, paid, shop, way

FORMS = [
    {"id": "twin", "name": "Twin-float", "tell": "two bowls", "detail": "stamped 61",
     "years": {"from": 1951, "to": 1954}},
    {"id": "late", "name": "Monobloc", "tell": "one body", "years": {"from": 1955, "to": 1958}},
    {"id": "copy", "name": "New copy", "origin": "pattern part"},
]  # fmt: skip


def wanted(ways, mark="fail"):
    profile = shop({"carburettor": (ways, {"variant": FORMS})})
    given = record(found("carburettor", mark), money=paid())
    return wants(profile, given, costs(profile, given))


def test_a_wanted_part_is_told_with_what_it_is_how_to_tell_and_what_not_to_buy():
    (one,) = wanted([way("find")])
    assert one.spec == ("Twin-float (stamped 61)",)
    assert one.how_to_tell == ("two bowls",)
    assert [str(s) for s in one.not_to_buy] == ["Monobloc (factory): one body", "New copy (pattern part)"]
    assert one.fair == amounts("10.00", "20.00", "30.00")
    assert str(one.price_words) == "prices of May 2025, no source"
    assert one.decided


def test_a_copy_that_is_wanted_is_not_warned_of():
    (one,) = wanted([way("copy", kind="pattern part")])
    assert [str(s) for s in one.not_to_buy] == ["Monobloc (factory): one body"]


def test_while_nothing_is_decided_each_that_might_be_bought_is_listed_as_such():
    told = wanted([way("find"), way("copy", kind="pattern part"), way("mend", kind="repair")])
    assert [(w.looking_for, w.decided) for w in told] == [("Find", False), ("Copy", False)]


def test_a_repair_is_nothing_to_buy():
    assert wanted([way("mend", kind="repair")]) == ()
