"""The walk sheet to fill in on paper."""

import pytest

from inspector.resource import sample_profiles
from inspector.sheet.compose import blank_sheet
from inspector.sheet.pdf import as_pdf
from inspector.sheet.text import as_text
from tests.sheet import made, read
from tests.sheet.test_pdf import assert_inside

SHIPPED = sorted(folder for folder in sample_profiles().iterdir() if (folder / "profile.toml").is_file())


def blank(year=1953, profile=None):
    return blank_sheet(profile or made.profile(), year, made.MADE_AT)


def test_every_item_of_the_year_has_its_question_expectation_way_to_look_and_room():
    text = as_text(blank())
    for item in made.profile().items():
        assert (item.question in text) is (item.id != "side-stand")
    assert text.count("Mark: ____  Note: ____") == 20
    assert "Expected: Front brake, early form, seam under, two bolts" in text
    assert "factory list, Parts list 1953, page 62 (grade 3)" in text
    assert "Look: By eye and by hand." in text
    assert "Width (edge to edge); should be 7 in, from 6.95 to 7.05: ____" in text


def test_without_a_year_every_item_stands():
    text = as_text(blank(None))
    assert all(item.question in text for item in made.profile().items())
    assert "Expected for every model year." in text


def test_cautions_stand_at_the_place_of_use():
    text = as_text(blank())
    assert text.index("Left side\nAsk before touching.") < text.index("1 Front wheel")
    assert "Frame; headstock, left; Never file it." in text
    assert "No ride before a qualified person has passed brakes" in text


def test_nothing_is_proposed_and_nothing_is_filled_in():
    data = as_pdf(blank())
    assert "Proposed" not in read.flat(data)
    assert read.images(data) == []


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_can_be_printed(paper):
    data = as_pdf(blank(), paper)
    text = read.flat(data)
    assert all(read.fonts(data).values())
    assert all(item.name in text for item in made.profile().items() if item.id != "side-stand")
    assert f"page 1 of {len(read.pages(data))}" in text
    assert_inside(data)


@pytest.mark.parametrize("folder", SHIPPED, ids=lambda folder: folder.name)
def test_every_profile_that_ships_makes_one(folder):
    from inspector.profile.read import read_profile

    profile = read_profile(folder).profile
    data = as_pdf(blank(profile.model_years[0], profile))
    assert profile.title.split()[0] in read.flat(data)
    assert_inside(data)
