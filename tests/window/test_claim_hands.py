"""What is written on the page Claim is kept as it was written, or said why not; nothing that was typed is lost."""

import pytest

from tests.window.walked import fill


@pytest.fixture
def claim(house):
    house.build()
    fill(house)
    house.page("claim")
    house.settle()
    return house.window.pages["claim"]


def test_words_written_after_a_pause_follow_those_before_it(house, claim, qtbot):
    field = claim.fields["advertised"]
    house.reach(field)
    field.setFocus()
    qtbot.keyClicks(field.control, "seen in the ")
    field.commit()  # as the pause does
    qtbot.keyClicks(field.control, "barn")
    field.commit()
    assert house.record.claim.advertised == "seen in the barn"


@pytest.mark.parametrize("typed", ["12", "19533", "0000", "²", "١٩٥", "nineteen"])
def test_what_is_no_year_is_said_and_stays_to_be_mended(house, claim, typed):
    field = claim.fields["title_year"]
    field.setFocus()
    field.edit.setText(typed)
    field.commit()
    assert house.record.claim.title_year is None
    assert typed in house.told[-1]
    assert field.value() == typed
    house.type(field, "1953")
    assert house.record.claim.title_year == 1953


def test_a_line_longer_than_a_record_takes_is_said_and_stays(house, claim):
    house.press(claim.people.plus)
    house.settle()
    form = list(claim.people.forms.values())[-1]
    field, long = form.fields["name"], "a" * 501
    field.setFocus()
    field.edit.setText(long)
    field.commit()
    assert house.told
    assert house.record.people[-1].name == ""
    assert field.value() == long


def test_the_part_of_a_person_is_kept_as_one_of_the_words_for_it(house, claim):
    house.press(claim.people.plus)
    house.settle()
    form = list(claim.people.forms.values())[-1]
    house.press(form.choices["role"].key("seller"))
    assert house.record.people[-1].role.value == "seller"
    assert form.choices["role"].held() == ["seller"]


def test_from_the_end_of_the_form_one_goes_on_to_the_walk(house, claim):
    house.press(claim.onward)
    assert house.window.stack.currentWidget() is house.walk
