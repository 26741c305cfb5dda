"""Every page is drawn in every scheme, on its own paper, and Qt has nothing to complain of."""

import pytest
from PySide6.QtGui import QColor

from inspector.window.look.inks import SCHEMES
from tests.window.walked import PAGES, fill


@pytest.mark.parametrize("scheme", ["light", "dark", "sunlight"])
def test_every_page_is_drawn_on_the_paper_of_its_scheme(house, scheme):
    house.build(scheme=scheme)
    fill(house)
    paper = QColor(SCHEMES[scheme].paper)
    for page in PAGES:
        house.window.show_page(page)
        house.settle()
        image = house.window.grab().toImage().scaled(64, 40)
        colours = [image.pixelColor(x, y) for x in range(64) for y in range(40)]
        assert colours.count(paper) > len(colours) / 4, page
        assert len({c.name() for c in colours}) > 20, page


def test_the_scheme_changes_while_a_page_is_open(house):
    house.build(scheme="light")
    fill(house)
    house.window.show_page("result")
    house.desk.look.set_scheme("dark")
    house.settle()
    image = house.window.grab().toImage().scaled(64, 40)
    colours = [image.pixelColor(x, y).name() for x in range(64) for y in range(40)]
    assert colours.count(QColor(SCHEMES["light"].paper).name()) == 0
    assert colours.count(QColor(SCHEMES["dark"].paper).name()) > len(colours) / 4
