"""What one measures and what the three tools say has room, in both shapes and with the largest type."""

import pytest
from PIL import Image

from tests.window.test_room import beyond, clipped, too_small, too_wide
from tests.window.walked import begin

SETTINGS = [((1280, 800), 1.0), ((1280, 800), 1.75), ((800, 1280), 1.75)]


@pytest.fixture(params=SETTINGS, ids=lambda p: f"{p[0][0]}x{p[0][1]}-{p[1]}")
def walk(request, house):
    size, scale = request.param
    house.build(size=size, scale=scale)
    begin(house)
    house.window.show_page("walk")
    house.settle()
    return house


def faults(house):
    house.settle()
    page = house.walk
    return clipped(page) + too_small(page) + too_wide(page) + beyond(page)


def item_with(house, wanted):
    profile = house.desk.profile
    house.desk.go_to(next(i for i in house.desk.walk if wanted(profile.item_by_id[i])))
    house.settle()
    return house.walk.item.drawers


def test_two_measures_their_reasons_and_a_wrong_reading_have_room(walk):
    drawers = item_with(walk, lambda item: len(item.measures) > 1)
    drawers.open("measure")
    body = drawers.measuring
    for text in ("1.31", "1.3125", "about one"):
        body.fields[body._at].edit.setText(text)
        body.go_on()
    body.outcome.why.click()
    assert body.outcome.wrong.isVisible()
    assert len(body.outcome.reasons.widgets()) > 3
    assert faults(walk) == []


def test_what_a_part_is_made_of_has_room(walk):
    drawers = item_with(walk, lambda item: "magnet" in item.bring)
    drawers.open("how")
    told = {"magnet": "magnet sticks", "sound": "sounds of plastic", "beneath": "fibre seen underneath"}
    for look, word in told.items():
        drawers.material.keys[look].key(word).click()
    assert "do not tell of the same material" in drawers.material.beware.words
    assert faults(walk) == []


def test_each_tool_has_room_with_all_that_it_says(walk, tmp_path):
    drawers = item_with(walk, lambda item: item.safety is not None and item.safety.value == "tyre")
    Image.new("RGB", (900, 500), (60, 80, 60)).save(tmp_path / "part.png")
    walk.walk.item.photographs.take_in([tmp_path / "part.png"])
    walk.settle()
    drawers.open("can")
    tool = drawers.can.tools["tyre"]
    for field, text in ((tool.code, "317"), (tool.marked, "3.50-19")):
        field.edit.setText(text)
        field.commit()
    assert faults(walk) == []
    drawers.can.open_tool("thread")
    tool = drawers.can.tools["thread"]
    for field, text in ((tool.diameter, "6.2"), (tool.pitch, "26")):
        field.edit.setText(text)
        field.commit()
    assert tool.said.key.isVisible()
    assert faults(walk) == []
    drawers.can.open_tool("colour")
    assert faults(walk) == []
