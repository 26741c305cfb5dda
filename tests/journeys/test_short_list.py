"""The first ten minutes: only what matters most, by keys alone."""

from PySide6.QtCore import Qt

from inspector.judgement.route import first_ten

MARKS = ("pass", "doubt", "fail")


def test_the_short_list_is_done_by_keys_and_counted_right(house):
    house.build()
    house.start()
    house.page("walk")
    short = first_ten(house.desk.profile, house.record)
    assert 5 <= len(short) <= 20
    counted = dict.fromkeys(MARKS, 0)
    ten = house.walk.where.ten
    house.reach(ten)
    for n in range(len(short)):
        if n:
            ten.setFocus()
            house.key(Qt.Key.Key_Space)
        elif house.desk.item not in short:
            house.press(ten)
        assert house.desk.item in short
        house.key((Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_3)[n % 3])
        counted[MARKS[n % 3]] += 1
        labels = {name: label.word for name, label in house.walk.where.counts.items()}
        assert labels == {name: f"{count} {name}" for name, count in counted.items()}
    assert {f.item for f in house.record.findings} == set(short)
    house.press(ten)
    assert house.says() == "Every item of the first ten minutes carries a mark."
    assert house.walk.where.ten.accessibleName().endswith("done")
