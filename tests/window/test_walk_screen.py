"""What is in sight when the walk of the demo machine is opened: what is unsafe, the sums, and the item."""

import pytest
from PySide6.QtCore import QPoint, QRect

from inspector.app import _demo
from inspector.record import verbs
from inspector.record.words import Mark
from tests.window.walked import begin, scrolls_of


@pytest.fixture
def demo(house):
    """Opens the demo machine, with many safety findings, in a window of this size."""

    def build(size):
        house.build(size=size)
        assert house.desk.open(_demo(house.desk.library))
        house.settle()
        assert len(house.desk.judgement.safety.findings) > 5
        return house

    return build


def in_sight(house, widget):
    """The widget is shown and all of it lies in what its page and its areas show."""
    if not widget.isVisible():
        return False
    for room in (house.walk, *(area.viewport() for area in scrolls_of(widget))):
        if not room.rect().contains(QRect(widget.mapTo(room, QPoint(0, 0)), widget.size())):
            return False
    return True


def test_upright_all_that_is_unsafe_the_sums_and_the_marks_with_their_item_are_in_the_first_screen(demo):
    house = demo((800, 1280))
    facts, item = house.walk.facts, house.walk.item
    assert in_sight(house, facts.safety)
    assert len(facts.safety.findings) == len(house.desk.judgement.safety.findings)
    assert facts.safety.mapTo(house.walk, QPoint(0, 0)).y() < house.walk.where.mapTo(house.walk, QPoint(0, 0)).y()
    assert in_sight(house, item.foot.name)
    assert item.foot.name.words == house.desk.profile.item_by_id[house.desk.item].name
    assert all(in_sight(house, key) for key in (*item.marks.keys, item.next, item.back))
    assert in_sight(house, facts.brief_seen)
    assert in_sight(house, facts.brief_correct)


def test_upright_the_next_item_comes_to_the_top_with_its_name_at_the_marks(demo):
    house = demo((800, 1280))
    item = house.walk.item
    house.press(item.next)
    house.settle()
    assert in_sight(house, item.head)
    assert item.foot.name.words == house.desk.profile.item_by_id[house.desk.item].name


def test_across_the_sums_stay_in_sight_below_what_is_unsafe(demo):
    house = demo((1280, 800))
    facts = house.walk.facts
    assert facts.safety.height() > house.walk.height()
    assert facts.safety.mapTo(house.walk, QPoint(0, 0)).y() < house.walk.height() // 4
    assert in_sight(house, facts.foot_seen)
    assert in_sight(house, facts.foot_correct)
    assert facts.foot_seen.words == f"{facts.seen.words}, {facts.left.words}"
    assert facts.foot_correct.words == f"{facts.correct.words}, {facts.band.words}"


def test_across_the_sums_are_said_once_where_all_fits(house):
    house.build()
    begin(house)
    house.page("walk")
    house.settle()
    facts = house.walk.facts
    assert in_sight(house, facts.seen)
    assert in_sight(house, facts.correct)
    assert not facts.foot.isVisible()
    assert not house.walk.item.foot.name.isVisible()


def test_what_is_unsafe_moves_over_the_page_as_it_grows_and_back_when_the_window_is_turned(house):
    house.build(size=(800, 1280))
    begin(house)
    house.page("walk")
    facts, desk = house.walk.facts, house.desk
    items = [i.id for i in desk.profile.items() if i.safety and i.id in desk.walk]
    places = []
    for n, item in enumerate(items[:4]):
        desk.go_to(item)
        assert desk.do(verbs.mark(*desk.at(), Mark.FAIL))
        assert len(desk.judgement.safety.findings) == n + 1
        places.append(facts.safety.parentWidget())
    assert places == [facts, facts, facts.above, facts.above]
    house.show((1280, 800))
    house.settle()
    assert facts.safety.parentWidget() is facts
    assert facts.safety.isVisible()
    assert facts.widgets()[1:3] == [facts.safety, facts.no_safety]
    house.show((800, 1280))
    house.settle()
    assert facts.safety.parentWidget() is facts.above
    assert in_sight(house, facts.safety)


def test_with_the_largest_type_what_is_unsafe_comes_first(house):
    house.build(size=(800, 1280), scale=1.75)
    begin(house)
    house.page("walk")
    house.settle()
    facts = house.walk.facts
    assert facts.no_safety.parentWidget() is facts.above
    assert in_sight(house, facts.no_safety)
