"""The drawings that tell forms apart keep their shape, however narrow the page is."""

import pytest

from inspector.window.walk.telling import Drawn
from tests.window.walked import fill, shown

SETTINGS = [((1280, 800), 1.0), ((1110, 800), 1.3), ((800, 1280), 1.75), ((620, 900), 1.0)]


@pytest.mark.parametrize(("size", "scale"), SETTINGS)
def test_a_drawing_keeps_its_shape_and_stays_in_its_column(house, size, scale):
    house.build(size=size, scale=scale)
    fill(house)
    desk = house.desk
    item = next(i for i in desk.walk if any(v.picture for v in desk.profile.item_by_id[i].variants))
    desk.go_to(item)
    house.walk.item.drawers.open("tell")
    house.settle()
    drawings = shown(house.walk, Drawn)
    assert drawings
    for drawing in drawings:
        own = drawing._svg.defaultSize() if drawing._svg else drawing._image.size()
        assert drawing.width() / drawing.height() == pytest.approx(own.width() / own.height(), rel=0.02)
        assert drawing.geometry().right() < house.walk.item.drawers.telling.width()
