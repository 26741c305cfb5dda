"""The page Result says what its figures mean, and what is open leads to its place."""

import pytest
from PySide6.QtWidgets import QWidget

from inspector.demo import put_demo
from inspector.window.look.rows import Row
from tests.window.test_room import beyond, clipped, too_small, too_wide


@pytest.fixture
def demo(house):
    """The demo machine, its result shown."""
    house.build()
    house.desk.open(put_demo(house.desk.library), "result")
    house.settle()
    return house


def result(house):
    return house.window.pages["result"]


def rows_in(column):
    return [w for w in column.widgets() if isinstance(w, Row)]


def test_seen_and_correct_stand_on_one_line_whatever_the_shape(demo):
    page = result(demo)
    for size in ((1280, 800), (800, 1280)):
        demo.window.resize(*size)
        demo.settle()
        seen, correct = (w.mapTo(page, w.rect().topLeft()) for w in (page.seen, page.correct))
        assert seen.y() == correct.y()
        assert seen.x() + page.seen.width() <= correct.x()
        safety = page.safety.mapTo(page, page.safety.rect().topLeft())
        assert safety.x() == seen.x()


def test_a_station_opens_at_its_first_item_without_a_mark(demo):
    page = result(demo)
    stations = {station.name: station for station in demo.desk.profile.stations}
    for number in range(3):
        row = rows_in(page.stations)[number]  # the rows are made anew each time the page is shown
        name = row.title
        demo.press(row)
        assert demo.desk.profile.station_of[demo.desk.item] is stations[name]
        assert demo.window.stack.currentWidget() is demo.walk
        at = demo.desk.judgement.states
        marks = [at[i.id].mark for i in stations[name].items if i.id in at]
        assert None not in marks or at[demo.desk.item].mark is None
        demo.page("result")
        demo.settle()


def test_the_number_of_open_questions_is_said_and_each_opens_its_item(demo):
    page = result(demo)
    questions = demo.desk.judgement.questions
    assert page.question_head.aside == f"{len(questions)} questions"
    first = next(n for n, q in enumerate(questions) if q.item)
    demo.press(rows_in(page.questions)[first])
    assert demo.desk.item == questions[first].item


def test_points_are_explained_counted_and_let_go_again(demo):
    points = result(demo).points
    scheme = demo.desk.profile.points
    assert scheme.name in points.what.words
    assert not points.body.widgets()
    demo.press(points.key)
    counted = demo.desk.judgement.points
    words = [w.words for w in points.body.widgets() if hasattr(w, "words")]
    assert words[0] == f"{counted.total} of {counted.full}"
    assert ("What may still be lost" in words) == bool(counted.may_lose)
    listed = [(row.title, row.aside) for row in rows_in(points.body)]
    assert listed == [(str(d.reason), f"{d.name}, −{d.lost}") for d in (*counted.deductions, *counted.may_lose)]
    demo.settle()
    demo.press(points.key)
    assert not points.body.widgets()


def test_numbers_tell_how_they_were_read_and_what_their_signs_mean(demo):
    words = [w.words for w in result(demo).numbers.widgets()]
    assert words[:-1] == [str(n.sentence) for n in demo.desk.judgement.numbers]
    assert words[-1].startswith("? is a figure")


@pytest.mark.parametrize("scale", [1.0, 1.75])
@pytest.mark.parametrize("size", [(1280, 800), (800, 1280)])
def test_the_whole_demo_has_room(house, size, scale):
    house.build(size=size, scale=scale)
    house.desk.open(put_demo(house.desk.library), "result")
    house.settle()
    page = result(house)
    page.points.key.click()
    house.settle()
    assert len(page.findChildren(QWidget)) > 100
    assert clipped(page) + too_small(page) + too_wide(page) + beyond(page) == []
