"""The list of machines in every state has room, in both shapes and with the largest type."""

import pytest

from tests.window.test_room import SETTINGS, beyond, clipped, too_small, too_wide


@pytest.fixture(params=SETTINGS, ids=lambda p: f"{p[0][0]}x{p[0][1]}-{p[1]}")
def listed(request, house):
    size, scale = request.param
    house.build(size=size, scale=scale)
    house.start()
    for number in range(2):
        copy = house.record.model_copy(update={"id": f"COPY{number}"})
        house.desk.library.create(copy, house.desk.folder)
    house.window.show_page("machines")
    house.settle()
    return house


def test_choosing_taking_out_and_the_backups_have_room(listed):
    page = listed.window.pages["machines"]
    found = {}

    def look(name):
        listed.settle()
        found[name] = clipped(page) + too_small(page) + too_wide(page) + beyond(page)
        told = listed.window.told
        found[f"{name}, told"] = (clipped(told) + too_small(told) + beyond(told)) if told.isVisible() else []

    listed.press(page.machines.take_key)
    look("choosing")
    listed.press(page.machines.rows.widgets()[1])
    look("told")
    assert listed.window.told.act.isVisible()
    listed.press(page.machines.out)
    listed.settle()
    listed.press(page.backups.make)
    listed.settle()
    listed.press(page.backups.list)
    look("listed")
    assert {name: faults for name, faults in found.items() if faults} == {}
    assert listed.window.told.read.isVisible()


def test_the_settings_stand_beside_the_list_or_below_it_in_one_column(house):
    house.build()
    page = house.window.pages["machines"]
    for size, beside in (((1280, 800), True), ((800, 1280), False), ((1280, 800), True), ((800, 1280), False)):
        house.window.resize(*size)
        house.settle()
        settings, list_ = (w.mapTo(page, w.rect().topLeft()) for w in (page.settings, page.outline))
        assert page.settings.isVisible()
        assert page.settings.height() >= page.settings.heightForWidth(page.settings.width())
        if beside:
            assert settings.x() + page.settings.width() <= list_.x()
        else:
            assert settings.y() >= list_.y() + page.outline.height()
        assert page.beside.isVisible() is beside
        assert page.below.isVisible() is not beside
