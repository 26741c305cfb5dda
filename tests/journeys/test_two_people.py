"""Two people at one machine, and a walk in an order of one's own."""

from PySide6.QtCore import Qt

from inspector.judgement.route import order
from inspector.record.verbs import set_order


def test_two_people_who_differ_at_one_item_are_both_kept(house):
    house.build()
    house.start()
    house.page("walk")
    item = house.desk.item
    assert not house.walk.facts.differences.isVisible()
    house.key(Qt.Key.Key_1)
    house.desk.session.by = "ben"
    house.key(Qt.Key.Key_3)
    assert {f.by: f.mark.value for f in house.record.findings} == {"inspector": "pass", "ben": "fail"}
    assert {f.item for f in house.record.findings} == {item}
    assert house.desk.judgement.states[item].differs
    row = house.walk.facts.differences
    house.press(row)
    result = house.window.pages["result"]
    assert house.window.stack.currentWidget() is result
    (sentence,) = (w.words for w in result.differences.widgets())
    assert house.desk.profile.item_by_id[item].name in sentence
    assert "pass" in sentence
    assert "fail" in sentence
    house.key(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert house.record.finding(item, "ben") is None
    assert house.record.finding(item, "inspector").mark.value == "pass"
    (none,) = (w.words for w in result.differences.widgets())
    assert none == "none"


def test_a_walk_in_an_order_of_ones_own_goes_on_after_closing(house):
    house.build()
    house.start()
    house.page("walk")
    plain = order(house.desk.profile, house.record)
    own = tuple(reversed(plain))
    assert house.desk.do(set_order(own))
    house.desk.go_to(own[0])
    for _ in range(3):
        house.press(house.walk.item.next)
    assert house.desk.item == own[3]
    assert "item 4 of" in house.walk.item.head.accessibleName() + house.walk.item.head._where.words
    record = house.record.id
    house.close()
    house.build()
    assert house.desk.open(record)
    assert house.desk.item == own[3]
    house.press(house.walk.item.next)
    assert house.desk.item == own[4]
    house.press(house.walk.item.back)
    house.press(house.walk.item.back)
    assert house.desk.item == own[2]
