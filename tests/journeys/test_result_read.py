"""The page Result says what its figures mean, and what is open leads to its place."""

import pytest
from PySide6.QtWidgets import QWidget

from inspector.demo import put_demo
from inspector.window.look.rows import Row
from tests.window.test_room import beyond, clipped, too_small, too_wide
from tests.window.walked import begin


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
    part, judged = result(demo).numbers, demo.desk.judgement
    labels = [row.label for row in rows_in(part)]
    assert [str(n.sentence) for n in judged.numbers] == [label for label in labels if ", read " in label]
    words = [w.words for w in part.widgets() if hasattr(w, "words")]
    assert words[0].startswith("? is a figure")
    stood = {row.label: (row.sign, row.title) for row in rows_in(part)}
    assert stood["Frame number and engine number"] == ("agree if", "agree if figure 5 is 8")
    assert [str(said) for said in judged.inquiries if str(said) in words] == [str(said) for said in judged.inquiries]


def test_years_are_a_sentence_and_a_chart_that_says_the_same(demo):
    part, years = result(demo).years, demo.desk.judgement.years
    assert f"{part.sentence.words}. {part.rest.words}" == str(years.sentence)
    rows = {row.label: row for row in part.chart.rows}
    assert list(rows) == [own.assembly.value for own in years.by_assembly]
    assert [span.kind for span in rows["tinware"].spans] == ["odd"]
    assert rows["tinware"].note == "odd one out"
    assert [(span.first, span.last, span.kind) for span in rows["frame"].spans] == [(1952, 1953, "condition")]
    assert rows["controls"].spans == ()
    assert (part.chart.claimed, part.chart.claimed_word) == (1953, "claimed")
    lines = [text.words for text in part.lines.widgets()]
    assert "Frame: 1952 if figure 5 is 3; 1953 if figure 5 is 8." in lines
    assert str(years.youngest_sentence) in lines


def test_the_weight_of_evidence_is_printed_with_what_it_assumes(demo):
    part, weight = result(demo).years, demo.desk.judgement.years.weight
    assert not part.weight.isVisible()
    demo.press(part.weight_key)
    assert part.weight.isVisible()
    table = part.weight.table
    assert [row[0] for row in table.rows] == [str(year) for year in weight.ranking]
    first = weight.ranking[0]
    assert table.rows[0][1:] == tuple(f"{w[first]:+.1f}" for w in (weight.decibans, weight.halved, weight.doubled))
    assert table.rows[table.marked][0] == "1953"
    assert part.weight.assumption.words == str(weight.assumption)
    demo.press(part.why_key)
    assert next(text.words for text in part.why.widgets()) == str(demo.desk.judgement.years.reasons[0])


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


def test_a_number_and_a_question_on_one_open_the_place_they_are_about(demo):
    page = result(demo)
    numbers = demo.window.pages["numbers"]
    standing = next(s for s in demo.desk.judgement.standings if s.raises)
    demo.press(rows_in(page.numbers)[0])
    assert numbers.shown.place == standing.places[0]
    line = next(line for line in demo.desk.judgement.numbers if line.place == "magneto")
    demo.page("result")
    demo.settle()
    demo.press(next(row for row in rows_in(page.numbers) if row.label == str(line.sentence)))
    assert numbers.shown.place == "magneto"
    demo.page("result")
    demo.settle()
    at = next(n for n, q in enumerate(demo.desk.judgement.questions) if q.place and not q.item)
    place = demo.desk.judgement.questions[at].place
    demo.press(rows_in(page.questions)[at])
    assert numbers.shown.place == place


def test_before_anything_is_entered_nothing_is_explained_that_is_not_there(house):
    house.build()
    begin(house)
    house.page("result")
    house.settle()
    page = result(house)
    assert not page.how_moved.isVisible()
    assert not page.brackets.isVisible()
    assert [row.title for row in rows_in(page.numbers)] == ["none entered"]
