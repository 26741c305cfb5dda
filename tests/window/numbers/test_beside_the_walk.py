"""Beside the walk stands what numbers, papers and parts say so far, and each line opens the page with the rest."""

import pytest

from inspector.demo import put_demo
from tests.window.walked import begin


@pytest.fixture
def demo(house):
    """The demo machine at its walk."""
    house.build()
    house.desk.open(put_demo(house.desk.library), "walk")
    house.settle()
    return house


def test_four_lines_tell_numbers_papers_years_and_the_odd_ones(demo):
    rows, judged = demo.walk.facts.identity, demo.desk.judgement
    told = [str(standing.sentence) for standing in judged.standings]
    assert any(sentence.startswith(rows.numbers.title) for sentence in told)
    assert "one slip if figure 5 is 8" in rows.papers.title
    assert rows.years.title == "1953 alone"
    assert "fuel tank" in rows.odd.title
    assert rows.odd.label == "Odd ones out"


@pytest.mark.parametrize(("line", "page"), [("numbers", "numbers"), ("years", "result")])
def test_a_line_opens_the_page_that_says_the_rest(demo, line, page):
    demo.press(getattr(demo.walk.facts.identity, line))
    assert demo.window.stack.currentWidget() is demo.window.pages[page]


def test_a_machine_without_numbers_says_so(house):
    house.build()
    begin(house)
    house.page("walk")
    rows = house.walk.facts.identity
    assert rows.numbers.title == "none entered yet"
    assert rows.years.title == "nothing shows one firmly yet"
    assert not rows.papers.isVisible()
    assert not rows.odd.isVisible()
