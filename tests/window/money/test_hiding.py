"""One key hides Money from every page, says nothing, and is remembered while the window is open."""

from PySide6.QtCore import Qt

from inspector.window.keylist import KeyList
from inspector.window.money.page import VIEWS
from tests.journeys.drive import page_name
from tests.window.money.hands import SETTINGS, figures_in, fill, words_of


def test_hidden_from_any_view_nothing_of_it_is_left(house, money):
    fill(house)
    secret = {SETTINGS[name] for name in ("price_asked", "margin", "limit_all_in", "opening")}
    for view, _ in VIEWS:
        money.open(view)
        house.settle()
        house.key(Qt.Key.Key_F9)
        told = words_of(house.window)
        assert "Money" not in told
        assert not secret & {figure.replace(",", "") for figure in figures_in(told)}
        house.key(Qt.Key.Key_F9)
        assert money.content.isVisible()


def test_the_bar_names_no_money_and_undo_says_not_what_was_done(house, money):
    fill(house)
    bar = house.window.frame
    assert "undo: " in bar.undo.accessibleName()
    house.press(money.hide_key)
    assert page_name(house.window, "money").word == "Hidden"
    assert bar.undo.accessibleName() == "undo"
    assert house.window.undo_action.text() == "Undo"
    house.window.undo()
    assert house.window.redo_action.text() == "Redo"
    assert "Money" not in house.window.windowTitle()


def test_the_list_of_keys_names_no_money_while_it_is_hidden(house, money):
    house.key(Qt.Key.Key_F9)
    dialog = house.window.list_keys()
    assert isinstance(dialog, KeyList)
    told = words_of(dialog)
    dialog.close()
    assert "Hide what is private" in told
    assert "Money" not in told
    assert "comparables" not in told


def test_it_stays_hidden_on_other_pages_and_beside_another_machine(house, money):
    house.key(Qt.Key.Key_F9)
    house.page("walk")
    record = house.record.id
    house.desk.close()
    assert house.desk.open(record, "money")
    house.settle()
    assert money.blank.isVisible()
    assert not money.content.isVisible()


def test_it_can_be_hidden_from_another_page_before_it_is_ever_shown(house, demo_library):
    house.build()
    assert house.desk.open(demo_library[1], "walk")
    house.key(Qt.Key.Key_F9)
    house.page("money")
    page = house.window.pages["money"]
    assert page.blank.isVisible()
    house.press(page.blank.key)
    house.settle()
    assert page.content.isVisible()
    assert page.view == "deal"


def test_what_is_being_typed_is_kept_and_hidden(house, money):
    money.open("figures")
    house.settle()
    field = money.views["figures"].fields["price_asked"]
    house.press(field.control)
    house.qtbot.keyClicks(field.control, "7411")
    house.key(Qt.Key.Key_F9)
    assert "7411" not in words_of(house.window)
    assert not money.content.isVisible()
    house.key(Qt.Key.Key_F9)
    assert field.value().replace(",", "") == "7411"


def test_a_sentence_that_stood_over_the_page_goes_too(house, money):
    house.desk.told.emit("Something was said.")
    assert house.says()
    house.key(Qt.Key.Key_F9)
    assert house.says() == ""
